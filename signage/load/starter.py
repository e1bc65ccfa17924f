"""Valid libraries, invented throughout, for somebody who begins: a small one and a long one."""

import re
from collections.abc import Sequence
from datetime import date, timedelta
from importlib.resources import files
from importlib.resources.abc import Traversable

STARTERS = {"gloves": "starter_content", "second-hospital": "second_hospital_content"}
"""What to begin from, and the folder of its files: one pair of gloves, or a suit with a hood of its own."""

_VOCABULARY = b"# Words that carry the meaning of a step"
"""Where in terms.yaml the words begin that are the same for every library."""

_REVIEW = re.compile(rb"(?m)^(review-by: )[0-9-]{10}")
_LANGUAGES = re.compile(rb"(?m)^(locales:\n(?:  [^\n]*in-use[^\n]*\n)+)(?:  [^\n]*\n?)*")
_READERS = re.compile(rb"(?m)^(readers: \{en: [0-9]+, )fr:")
_WARDS = "content/wards/"
_FRENCH_TERM = re.compile(rb"(?m)^    (?:approved|forbidden): \{fr: [^\n]*\}\n")


def starter_files(
    today: date | None = None, locales: Sequence[str] = (), like: str = "gloves"
) -> dict[str, bytes]:
    """The files of the library by their path below a new folder, such as ``content/kit.yaml``.

    Its protocols are to be reviewed one year after ``today``; None leaves the day that is written.
    ``locales`` are languages to be named as in work, in the place of the example's own. ``like`` is one of
    ``STARTERS``.
    """
    root = files("signage.load")
    found = {
        f"content/{name}": data for name, data in sorted(_files_below(root / STARTERS[like], "").items())
    }
    if like != "gloves":
        words = (root / STARTERS["gloves"] / "terms.yaml").read_bytes()
        found["content/terms.yaml"] += b"\n" + words[words.index(_VOCABULARY) :]
    if today is not None:
        review = (today + timedelta(days=365)).isoformat().encode()
        found = {name: _REVIEW.sub(rb"\g<1>" + review, data) for name, data in found.items()}
    return _in_languages(found, locales) if locales else found


def _in_languages(found: dict[str, bytes], locales: Sequence[str]) -> dict[str, bytes]:
    """The files with other languages in the place of French, wherever the example names it."""
    lines = "".join(f"  {tag}: {{owner: language lead, state: in-work}}\n" for tag in locales).encode()
    edits = {"content/library.yaml": (_LANGUAGES, rb"\g<1>" + lines)}
    if "fr" not in locales:
        readers = rb"\g<1>" + locales[0].encode() + b":"
        edits |= {name: (_READERS, readers) for name in found if name.startswith(_WARDS)}
        edits |= {"content/terms.yaml": (_FRENCH_TERM, b"")}
    return found | {name: old.sub(new, found[name]) for name, (old, new) in edits.items()}


def _files_below(folder: Traversable, prefix: str) -> dict[str, bytes]:
    """The YAML files of a folder and of the folders in it."""
    found: dict[str, bytes] = {}
    for entry in folder.iterdir():
        if entry.is_dir():
            found.update(_files_below(entry, f"{prefix}{entry.name}/"))
        elif entry.name.endswith(".yaml"):
            found[f"{prefix}{entry.name}"] = entry.read_bytes()
    return found
