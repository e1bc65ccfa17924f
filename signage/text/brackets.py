"""Paired brackets of the bidirectional algorithm (Unicode Character Database, BidiBrackets.txt, 16.0)."""

from __future__ import annotations

_TABLE = (
    "() [] {} ༺༻ ༼༽ ᚛᚜ ⁅⁆ ⁽⁾ ₍₎ ⌈⌉ ⌊⌋ \u2329\u232a ❨❩ ❪❫ ❬❭ ❮❯ ❰❱ ❲❳ ❴❵ ⟅⟆ ⟦⟧ ⟨⟩ ⟪⟫ ⟬⟭ ⟮⟯ "
    "⦃⦄ ⦅⦆ ⦇⦈ ⦉⦊ ⦋⦌ \u298d\u2990 \u298f\u298e ⦑⦒ ⦓⦔ ⦕⦖ ⦗⦘ ⧘⧙ ⧚⧛ ⧼⧽ ⸢⸣ ⸤⸥ ⸦⸧ ⸨⸩ "
    "\u2e55\u2e56 \u2e57\u2e58 \u2e59\u2e5a \u2e5b\u2e5c "
    "\u3008\u3009 《》 「」 『』 【】 〔〕 〖〗 〘〙 〚〛 ﹙﹚ ﹛﹜ ﹝﹞ （） ［］ ｛｝ ｟｠ ｢｣"
)

_CANONICAL = {"\u2329": "\u3008", "\u232a": "\u3009"}
"""The two brackets that are canonically equivalent to others (UAX #9, BD14 and BD15)."""


def canonical_bracket(bracket: str) -> str:
    """The bracket itself, or the one that it is canonically equivalent to."""
    return _CANONICAL.get(bracket, bracket)


CLOSING_OF = {pair[0]: pair[1] for pair in _TABLE.split()}
"""The closing bracket of each opening one."""

CLOSING = frozenset(CLOSING_OF.values())
