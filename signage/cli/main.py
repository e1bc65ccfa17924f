"""The command line: options that all commands share, errors to messages, exit codes."""

from __future__ import annotations

import sys

from signage.cli.application import application
from signage.cli.report import print_problems, say_error
from signage.ground.errors import SignageError, UnreadableInputError

_COMMANDS = ("about", "audit", "check", "draw", "explain", "pages", "rehearse", "serve", "start", "words")


def run(arguments: list[str] | None = None) -> None:
    """Run one command and leave with its exit status."""
    from importlib import import_module

    words = sys.argv[1:] if arguments is None else arguments
    try:
        for name in _COMMANDS:
            import_module(f"signage.cli.{name}")
        status = application(args=words, standalone_mode=False, prog_name="signage")
    except UnreadableInputError as unreadable:
        print_problems(unreadable.problems, is_json="json" in words, heading="The input could not be read.")
        status = unreadable.exit_status
    except SignageError as error:
        say_error(str(error))
        status = error.exit_status
    except KeyboardInterrupt:
        say_error("Stopped. Files that were finished are kept; none is half written.")
        status = 130
    except BrokenPipeError:
        status = 0
    except Exception as error:  # noqa: BLE001 - the last net: no traceback reaches a user
        status = _unexpected(error, words)
    sys.exit(status if isinstance(status, int) else 0)


def _unexpected(error: Exception, words: list[str]) -> int:
    import os

    import typer

    if isinstance(error, typer.Exit):
        return int(error.exit_code)
    if isinstance(error, typer.Abort):
        return 130
    if hasattr(error, "format_message"):  # a usage error of the command-line library
        say_error(_usage_message(error))
        return 2
    if isinstance(error, OSError):
        say_error(
            f"{error.filename or 'A file'}: {error.strerror or error}. Check that it exists and may be used."
        )
        return 2
    if os.environ.get("SIGNAGE_TRACEBACK"):
        raise error
    say_error(
        f"signage met something it did not foresee: {type(error).__name__}: {error}\n"
        f"The command was: signage {' '.join(words)}\n"
        "Nothing was half written. Please report it together with the output of 'signage about'; "
        "with the variable SIGNAGE_TRACEBACK=1 the command shows where it happened."
    )
    return 2


def _usage_message(error: object) -> str:
    message = getattr(error, "format_message", lambda: str(error))()
    context = getattr(error, "ctx", None)
    command = getattr(context, "command_path", "signage")
    return f"{message}\nSee '{command} --help' for what it takes."
