"""The streams of the command as they are: closed, of an old encoding, or left by their reader."""

from __future__ import annotations

import os
import sys
from typing import Any

READER_LEFT = 141
"""Exit status after a reader such as ``head`` has closed the pipe: what the shell gives for SIGPIPE."""


def prepare_streams() -> None:
    r"""Make both streams fit to be written to: a closed one swallows, an old encoding never ends a command.

    Characters that the encoding lacks are written out, such as ``\xd7``.
    """
    for name in ("stdout", "stderr"):
        stream: Any = getattr(sys, name)
        if stream is None:
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: PTH123, SIM115 - until the end
        elif hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


def forget_output() -> None:
    """Send what is still to be written nowhere: the interpreter would stumble over it at its end."""
    try:
        number = sys.stdout.fileno()
    except (OSError, ValueError):
        return
    os.dup2(os.open(os.devnull, os.O_WRONLY), number)
