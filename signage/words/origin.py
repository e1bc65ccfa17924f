"""Which text a line on a sheet was made from."""

from __future__ import annotations

import re
from collections.abc import Mapping

_UNSEEN = re.compile("[\u2066-\u2069\u200b]")
_GAPS = re.compile(r"\s+")
_PLACEHOLDER = re.compile(r"\\\{[a-z_]+\\\}")
_SHORTEST_PART = 4
"""Characters that a text must have to be recognised inside a longer line."""


class TextOrigins:
    """Finds the text of a locale behind a line as it was set: values filled, ties and isolates in it."""

    def __init__(self, texts: Mapping[str, str]) -> None:
        self._whole: dict[str, list[str]] = {}
        self._patterns: list[tuple[re.Pattern[str], str]] = []
        for context, text in texts.items():
            plain = _plain(text)
            self._whole.setdefault(plain, []).append(context)
            pattern = _PLACEHOLDER.sub("(.+)", re.escape(plain))
            if pattern != re.escape(plain):
                self._patterns.append((re.compile(pattern, re.DOTALL), context))

    def context_of(self, line: str, protocol: str = "") -> str | None:
        """The context of the text, such as ``glove-exchange/title``; None where no text is like the line.

        Texts of the protocol come before others that read the same. A line that holds more than one text
        gives the longest.
        """
        plain = _plain(line)
        if not plain:
            return None
        found = self._whole.get(plain) or [c for pattern, c in self._patterns if pattern.fullmatch(plain)]
        if not found:
            inside = [text for text in self._whole if len(text) >= _SHORTEST_PART and text in plain]
            found = self._whole[max(inside, key=len)] if inside else []
        own = [context for context in found if context.startswith(f"{protocol}/")]
        return next(iter(own or found), None)


def _plain(text: str) -> str:
    return _GAPS.sub(" ", _UNSEEN.sub("", text)).strip()
