"""The list of what earlier runs drew into a folder, and what of it a run takes away as outdated."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

from signage.compose.sheet_kinds import SheetKinds
from signage.ground.files import write_changed
from signage.ground.made_files import made_file, take_away
from signage.produce.draw import Drawn
from signage.produce.requests import Wanted
from signage.words.standin import STAND_INS

LIST_NAME = "drawn-files.json"
_VERSION = 1


@dataclass(frozen=True)
class DrawnFile:
    """A file of an earlier run; ``path`` is below the folder. ``of`` is the sheet that a picture shows.

    ``revision`` is the code printed on it. ``has_usual_paper`` says that nobody asked for the paper.
    ``copies`` are the numbers in it, separated by spaces: a file of numbered copies waits for its printer
    until a recall, and no run takes it away.
    """

    path: str
    sha256: str
    protocol: str
    locale: str
    kind: str
    paper: str
    tone: str
    has_usual_paper: bool
    of: str = ""
    of_sha256: str = ""
    copies: str = ""
    revision: str = ""


@dataclass(frozen=True)
class Cleared:
    """What a run took away; ``kept`` would have gone, and ``changed`` was altered since it was drawn."""

    removed: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()
    changed: tuple[str, ...] = ()


def clear_outdated(
    output: Path, wanted: Wanted, made: Iterable[Drawn], kinds: SheetKinds, *, keeps: bool = False
) -> Cleared:
    """Remove what the list names, this run's selection covers and this run did not make; renew the list.

    A file goes only if its bytes are still those that were drawn. ``keeps`` removes nothing.
    """
    now = {file.path: file for drawn in made for file in _files_of(output, drawn, wanted)}
    old = [file for file in read_list(output) if file.path not in now]
    selected = [file for file in old if _is_selected(file, wanted, kinds)]
    outdated = [file for file in selected if not _still_shows(file, now)]
    present = [file for file in outdated if made_file(output, file.path) is not None]
    same = [file for file in present if _digest(output / file.path) == file.sha256]
    changed = tuple(file.path for file in present if file not in same)
    going = () if keeps else tuple(take_away(output, (file.path for file in same)))
    gone = {file.path for file in outdated} - ({file.path for file in same} if keeps else set())
    _write_list(output, [*(file for file in old if file.path not in gone), *now.values()])
    return Cleared(going, tuple(file.path for file in same) if keeps else (), changed)


def read_list(output: Path) -> tuple[DrawnFile, ...]:
    """The files that the list of a folder names; none where it is absent, damaged or of another version."""
    try:
        content = json.loads((output / LIST_NAME).read_text(encoding="utf-8"))
        if content["version"] != _VERSION:
            return ()
        return tuple(_read_file(entry) for entry in content["files"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return ()


def _read_file(entry: dict[str, Any]) -> DrawnFile:
    file = DrawnFile(**entry)
    if not all(isinstance(value, (str, bool)) for value in asdict(file).values()):
        raise TypeError(file.path)
    return file


def _write_list(output: Path, files: Sequence[DrawnFile]) -> None:
    if not files and not (output / LIST_NAME).exists():
        return
    listed = [asdict(file) for file in sorted(files, key=lambda file: file.path)]
    text = json.dumps({"version": _VERSION, "files": listed}, ensure_ascii=False, indent=1)
    write_changed(output / LIST_NAME, f"{text}\n".encode())


def _files_of(output: Path, drawn: Drawn, wanted: Wanted) -> Iterable[DrawnFile]:
    request = drawn.request
    sheet = DrawnFile(
        drawn.path.relative_to(output).as_posix(),
        drawn.sha256,
        request.protocol,
        request.locale,
        request.kind,
        request.paper,
        request.tone,
        has_usual_paper=not wanted.papers,
        copies=" ".join(request.copies),
        revision=drawn.revision,
    )
    yield sheet
    for path in drawn.beside:
        name = path.relative_to(output).as_posix()
        yield replace(sheet, path=name, sha256=_digest(path), of=sheet.path, of_sha256=sheet.sha256)


def _is_selected(file: DrawnFile, wanted: Wanted, kinds: SheetKinds) -> bool:
    """Whether a run that was asked for this would make such a file."""
    return (
        not file.copies
        and (file.protocol in wanted.protocols if wanted.protocols else True)
        and (file.locale in wanted.locales if wanted.locales else file.locale not in STAND_INS)
        and file.kind in (wanted.kinds or kinds.usual)
        and (file.paper in wanted.papers if wanted.papers else file.has_usual_paper)
        and file.tone == wanted.tone.value
    )


def _still_shows(file: DrawnFile, now: dict[str, DrawnFile]) -> bool:
    """Whether it is a picture of a sheet that this run drew again with the same bytes."""
    return bool(file.of) and file.of in now and now[file.of].sha256 == file.of_sha256


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()
