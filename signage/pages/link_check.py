"""Whether every QR code leads to a page of the built site, in every language."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import unquote, urlsplit

from signage.ground.problem import Problem
from signage.pages import address
from signage.pages.rules import DEAD_LINK

_ANCHOR = re.compile(rb'\bid="([^"]*)"')


@dataclass(frozen=True)
class Payload:
    """What a QR code says, and on which sheet in which language."""

    text: str
    sheet: str
    locale: str


def link_problems(
    payloads: Iterable[Payload], files: Mapping[str, bytes], training_address: str
) -> Iterator[Problem]:
    """One problem for each code that leads outside the address, to no page or to no place in its page.

    ``files`` are those of the site by path.
    """
    anchors: dict[str, Collection[str]] = {}
    for payload in payloads:
        reason = _reason(payload.text, files, training_address, anchors)
        if reason is not None:
            message = f"The code '{payload.text}' {reason}."
            yield DEAD_LINK.problem(message, locale=payload.locale, sheet=payload.sheet)


def _reason(
    text: str, files: Mapping[str, bytes], training_address: str, anchors: dict[str, Collection[str]]
) -> str | None:
    base = training_address.rstrip("/")
    if not text.startswith(f"{base}/"):
        return f"does not begin with the training address '{base}/'"
    parts = urlsplit(text.removeprefix(base))
    path = unquote(parts.path).removeprefix("/")
    if path and not path.endswith("/"):
        return "leads to a path that does not end in a slash, which not every server completes"
    file = address.file_of(path)
    if file not in files:
        return f"leads to '{path}', and the site has no {file}"
    if parts.fragment:
        if file not in anchors:
            anchors[file] = {found.decode() for found in _ANCHOR.findall(files[file])}
        if unquote(parts.fragment) not in anchors[file]:
            return f"leads to '#{parts.fragment}', and {file} has no such place"
    return None
