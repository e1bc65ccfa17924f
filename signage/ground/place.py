"""Where a value stands in a file."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A file with line and column, both counted from 1; 0 means the file as a whole."""

    path: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        if not self.line:
            return self.path
        if not self.column:
            return f"{self.path}:{self.line}"
        return f"{self.path}:{self.line}:{self.column}"


NOWHERE = Place("")
