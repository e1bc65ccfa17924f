"""Sizes, line distances and reading heights that differ from script to script."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from signage.ground.glyphs import FontKey
from signage.text.font_set import BUNDLED_FONTS, FontSet
from signage.text.script_extents import letters_in, measure_letters
from signage.text.script_ink import ScriptInk


@dataclass(frozen=True, slots=True)
class ScriptMetrics:
    """How a script is set beside Latin. Lengths in ems of the size that results from ``size_factor``.

    ``size_factor`` times the nominal size makes scripts look equally large. ``ascent`` and ``descent``
    place a text box by its first and last baseline. Leadings are distances of baselines. ``middle`` is the
    share of the descent that is left out when text is centred by height. ``reference_height`` is the letter
    height for reading distance.
    """

    size_factor: float
    ascent: float
    descent: float
    headline_leading: float
    body_leading: float
    middle: float
    reference_height: float


_LATIN = ScriptMetrics(1.0, 0.715, 0.24, 1.12, 1.26, 0.8, 0.536)
"""Reference height: sxHeight of the font (OpenType OS/2), which Greek and Cyrillic share."""

_NORMAL_WEIGHT = 400
_APART = 0.02
_LOOSER = 0.12
_LEAST_LEADING = 1.22
_LIKE_LATIN = 1.05
_TALL = 0.70
_LOWERED = 0.94
_MOST_RAISED = 1.08

_METRICS = {
    "Latn": _LATIN,
    "Grek": _LATIN,
    "Cyrl": _LATIN,
    # Chosen by eye for the design system; the reference height is measured like that of the others.
    "Arab": ScriptMetrics(1.08, 0.8, 0.4, 1.22, 1.34, 0.25, 0.443),
    "Deva": ScriptMetrics(1.04, 0.82, 0.36, 1.22, 1.34, 0.5, 0.62),
    "Ethi": ScriptMetrics(0.94, 0.8, 0.22, 1.22, 1.34, 0.7, 0.62),
    # Measured, see below.
    "Hebr": ScriptMetrics(1, 0.76, 0.18, 1.12, 1.26, 0.59, 0.593),
    "Beng": ScriptMetrics(1, 0.93, 0.25, 1.22, 1.34, 0.39, 0.62),
    "Guru": ScriptMetrics(1, 0.9, 0.2, 1.22, 1.34, 0.74, 0.62),
    "Gujr": ScriptMetrics(1, 0.9, 0.27, 1.22, 1.34, 0.78, 0.603),
    "Orya": ScriptMetrics(1, 0.93, 0.29, 1.24, 1.36, 0.58, 0.62),
    "Taml": ScriptMetrics(1, 0.85, 0.32, 1.22, 1.34, 0.25, 0.554),
    "Telu": ScriptMetrics(1.07, 0.87, 0.47, 1.36, 1.48, 0.48, 0.5),
    "Knda": ScriptMetrics(1, 0.81, 0.49, 1.32, 1.44, 0.52, 0.564),
    "Mlym": ScriptMetrics(1, 0.85, 0.24, 1.22, 1.34, 0.51, 0.566),
    "Sinh": ScriptMetrics(1, 0.96, 0.32, 1.3, 1.42, 0.16, 0.612),
    "Thai": ScriptMetrics(1, 1.04, 0.27, 1.33, 1.45, 0.57, 0.558),
    "Laoo": ScriptMetrics(1, 1.16, 0.3, 1.48, 1.6, 0.34, 0.558),
    "Khmr": ScriptMetrics(1, 0.93, 0.53, 1.48, 1.6, 0.49, 0.586),
    "Mymr": ScriptMetrics(1, 1.01, 0.47, 1.49, 1.61, 0.39, 0.546),
    "Geor": ScriptMetrics(1, 0.77, 0.25, 1.12, 1.26, 0, 0.546),
    "Armn": ScriptMetrics(1.07, 0.76, 0.25, 1.12, 1.26, 0.03, 0.502),
    "Hani": ScriptMetrics(0.94, 0.86, 0.1, 1.12, 1.26, 0, 0.62),
    "Jpan": ScriptMetrics(0.94, 0.85, 0.09, 1.12, 1.26, 0, 0.62),
    "Kore": ScriptMetrics(0.94, 0.84, 0.09, 1.12, 1.26, 0.03, 0.62),
}
"""Rows by script (ISO 15924).

Measured rows are what ``metrics_from`` gives for ``signage.text.reference_letters.measure_script``. For the
three scripts chosen by eye the middle would be .29, .56 and .67.
"""

_HIGHEST = max(row.ascent for row in _METRICS.values())
_DEEPEST = max(row.descent for row in _METRICS.values())
_WITHOUT_A_ROW = ScriptMetrics(
    size_factor=1.0,
    ascent=_HIGHEST,
    descent=_DEEPEST,
    headline_leading=_HIGHEST + _DEEPEST + _APART,
    body_leading=_HIGHEST + _DEEPEST + _APART + _LOOSER,
    middle=0.5,
    reference_height=min(row.reference_height for row in _METRICS.values()),
)
"""For scripts that no font shows: the most room that any bundled script takes. Their letters are gaps, so
nothing of them is printed."""

_SAME_AS = {
    "Aran": "Arab", "Latf": "Latn", "Latg": "Latn", "Cyrs": "Cyrl", "Hans": "Hani", "Hant": "Hani",
    "Hanb": "Hani", "Bopo": "Hani", "Hira": "Jpan", "Kana": "Jpan", "Hang": "Kore", "Jamo": "Kore",
    "Syre": "Syrc", "Syrj": "Syrc", "Syrn": "Syrc",
}  # fmt: skip


def metrics_of(script: str, fonts: FontSet = BUNDLED_FONTS) -> ScriptMetrics:
    """The metrics of a script (ISO 15924) in the fonts of a library.

    A script that no bundled font shows is measured in the font of the library that has most of its letters.
    """
    script = _SAME_AS.get(script, script)
    row = _METRICS.get(script)
    if row is not None:
        return row
    return _of_own_font(script, fonts) if fonts.own else _WITHOUT_A_ROW


@lru_cache(maxsize=64)
def _of_own_font(script: str, fonts: FontSet) -> ScriptMetrics:
    keys = [FontKey(font.file, _NORMAL_WEIGHT, font) for font in fonts.own]
    best = max(keys, key=lambda key: letters_in(key, script))
    return metrics_from(measure_letters(best, script)) if letters_in(best, script) else _WITHOUT_A_ROW


def metrics_from(ink: ScriptInk) -> ScriptMetrics:
    """How a script is set of which this ink was measured; all but the size factor to the hundredth.

    Ascent and descent are the farthest ink. The headline leading keeps these .02 em apart, at least 1.22
    (1.12 where the script needs hardly more room than Latin), and the body leading adds .12, at least 1.34
    (1.26). Middle is 1 − mean depth ÷ depth. The size factor raises letters lower than Latin's x-height to
    it, by 8 % at most, and takes 6 % from letters taller than .70 em, as for Ethiopic.
    """
    needed = round(ink.top + ink.depth + _APART, 2)
    like_latin = needed <= _LIKE_LATIN
    raised = min(_LATIN.reference_height / ink.letter_height, _MOST_RAISED)
    return ScriptMetrics(
        size_factor=_LOWERED if ink.letter_height > _TALL else round(max(1.0, raised), 2),
        ascent=round(ink.top, 2),
        descent=round(ink.depth, 2),
        headline_leading=_LATIN.headline_leading if like_latin else max(_LEAST_LEADING, needed),
        body_leading=_LATIN.body_leading if like_latin else round(max(_LEAST_LEADING, needed) + _LOOSER, 2),
        middle=round(1 - ink.mean_depth / ink.depth, 2) if ink.depth else 0.0,
        reference_height=round(ink.reference_height, 3),
    )
