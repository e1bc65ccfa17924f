"""Errors that end a command, each with what the person can do."""

from collections.abc import Sequence

from signage.ground.counting import counted
from signage.ground.problem import Problem


class SignageError(Exception):
    """Base of all errors that a command reports without a traceback."""

    exit_status = 2


class UnreadableInputError(SignageError):
    """Input could not be read; carries every problem of every file."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(f"{counted(len(problems), 'problem')} in the input")
        self.problems = tuple(problems)


class WrongUsageError(SignageError):
    """The command was asked for something that does not exist or fit."""


class RefusedError(SignageError):
    """Refused because the result could hurt someone."""

    exit_status = 1


class MissingFromMachineError(SignageError):
    """The machine lacks something; the message names it and the cure."""

    exit_status = 3
