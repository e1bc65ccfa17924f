"""The command line: every error becomes a message or one JSON object, and an exit status."""

from __future__ import annotations

import errno
import os
import sys
from importlib import import_module
from typing import Any

from signage.cli.application import invoke
from signage.cli.report import print_json, print_problems, problems_json, say_error
from signage.cli.streams import READER_LEFT, forget_output, prepare_streams
from signage.ground.errors import SignageError, UnreadableInputError
from signage.ground.garbage import collect_rarely

_COMMANDS = (
    "about",
    "approvals",
    "approve",
    "audit",
    "check",
    "compare",
    "draw",
    "explain",
    "fields",
    "pages",
    "recall",
    "register",
    "rehearse",
    "serve",
    "sheets",
    "start",
    "status",
    "words",
)
_STOPPED = 130
_USAGE = 2
_LACKING = 3
_FULL = {errno.ENOSPC, errno.EDQUOT}


def run(arguments: list[str] | None = None) -> None:
    """Run one command and leave with its exit status."""
    words = sys.argv[1:] if arguments is None else arguments
    collect_rarely()
    prepare_streams()
    try:
        status = _run(words)
        sys.stdout.flush()
    except BrokenPipeError:
        forget_output()
        status = READER_LEFT
    except KeyboardInterrupt:
        status = _STOPPED
    except OSError as error:  # the last of the results could not be written
        forget_output()
        say_error(f"The results could not be written: {error.strerror or error}.")
        status = _LACKING
    sys.exit(status)


def _run(words: list[str]) -> int:
    try:
        named = [name for name in _COMMANDS if words[:1] == [name]]
        for name in named or _COMMANDS:  # the others are only needed for help, and take time to load
            import_module(f"signage.cli.{name}")
        return invoke(words)
    except BrokenPipeError:
        raise
    except UnreadableInputError as unreadable:
        return _tell_unreadable(unreadable, words)
    except SignageError as error:
        return _tell(str(error), error.exit_status, words)
    except KeyboardInterrupt:
        return _tell("Stopped. Files that were finished are kept; none is half written.", _STOPPED, words)
    except OSError as error:
        return _tell(*_of_system(error), words)
    except MemoryError:
        return _tell("The memory of this machine is not enough for this input.", _LACKING, words)
    except Exception as error:  # noqa: BLE001 - the last net: no traceback reaches a user
        return _tell_other(error, words)


def _tell(message: str, status: int, words: list[str]) -> int:
    """An error: for programmes as one object on standard output, for people on standard error."""
    from signage.cli.arguments import wants_json

    if wants_json(words):
        print_json({"error": {"message": message, "status": status}})
    else:
        say_error(message)
    return status


def _tell_unreadable(unreadable: UnreadableInputError, words: list[str]) -> int:
    from signage.cli.arguments import parsed, wants_json

    if wants_json(words):
        print_json(problems_json(unreadable.problems))
    else:
        is_whole = parsed(words).get("every") is True
        heading = "The input could not be read."
        print_problems(unreadable.problems, heading=heading, is_error=True, is_whole=is_whole)
    return unreadable.exit_status


def _of_system(error: OSError) -> tuple[str, int]:
    """What the system refused, with the file where it names one."""
    name = f"{error.filename or 'The output'}: "
    reason = error.strerror or str(error)
    if error.errno in _FULL:
        cure = "Files finished before are whole. Make room and run the command again."
        return f"{name}{reason}. {cure}", _LACKING
    if error.errno == errno.ENAMETOOLONG:
        return f"{name[:80]}…: the name is too long for this machine. Choose a shorter one.", _USAGE
    return f"{name}{reason}. Check that it exists and may be used.", _USAGE


def _tell_other(error: Exception, words: list[str]) -> int:
    import typer

    if isinstance(error, typer.Exit):
        return int(error.exit_code)
    if isinstance(error, typer.Abort):
        return _STOPPED
    if hasattr(error, "format_message"):  # a usage error of the command-line library
        return _tell_usage(error, words)
    if os.environ.get("SIGNAGE_TRACEBACK"):
        raise error
    message = (
        f"signage met something it did not foresee: {type(error).__name__}: {str(error)[:400]}\n"
        f"The command was: signage {' '.join(words)}\n"
        "Nothing was half written. Please report it together with the output of 'signage about'; "
        "with the variable SIGNAGE_TRACEBACK=1 the command shows where it happened."
    )
    return _tell(message, _USAGE, words)


def _tell_usage(error: Any, words: list[str]) -> int:
    """A fault of the arguments, with the command whose help tells more; no arguments at all ask for help."""
    context = getattr(error, "ctx", None)
    command = getattr(context, "command_path", "signage")
    message = error.format_message()
    if type(error).__name__ != "NoArgsIsHelpError":
        message = f"{message}\nSee '{command} --help' for what it takes."
    return _tell(message, _USAGE, words)
