"""The looks of the pages (light, dark, strong contrast) and the sizes of scripts, as one stylesheet.

Light is the look of the sheets. Every look keeps letters at a contrast of 7 to 1 or more on their ground
(WCAG 2.2, success criterion 1.4.6) and edges of controls at 3 to 1 (1.4.11); a test holds them to it.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib import resources

from signage.drawing.themes import CARE, DOFF, DON, INK, INK_2, PAPER, PLAIN
from signage.pages.embedded_font import letter_family, own_letters
from signage.text.metrics import ScriptMetrics

Look = dict[str, str]

LIGHT: Look = {
    "ground": PAPER,
    "card": PAPER,
    "ink": INK,
    "ink-2": INK_2,
    "line": "#7B8995",
    "link": DON.deep,
    "filled": DON.deep,
    "on-filled": PAPER,
    "open": DOFF.deep,
    "care": CARE.deep,
    "care-ground": CARE.tint,
    "plain": PLAIN.deep,
    "dirty": "#F3EDE6",
    "clean": "#EEF3F5",
    "key": INK,
    "on-key": PAPER,
    "good": "#0B5A2A",
    "bad": "#8E0F1F",
}

DARK: Look = {
    "ground": "#0D151D",
    "card": "#16212C",
    "ink": "#F2F6F9",
    "ink-2": "#C6D1DB",
    "line": "#7E8E9C",
    "link": "#9CCBF5",
    "filled": "#0A4A7E",
    "on-filled": PAPER,
    "open": "#F2A15A",
    "care": "#86DCE2",
    "care-ground": "#0F3136",
    "plain": "#C6D1DB",
    "dirty": "#231D16",
    "clean": "#142029",
    "key": "#F2F6F9",
    "on-key": "#0D151D",
    "good": "#8FE0A8",
    "bad": "#FFB3B8",
}

CONTRAST: Look = {
    **dict.fromkeys(LIGHT, "#000000"),
    **dict.fromkeys(("ground", "card", "on-filled", "care-ground", "dirty", "clean", "on-key"), "#FFFFFF"),
}

LOOKS = {"light": LIGHT, "dark": DARK, "contrast": CONTRAST}

_CHOSEN = ":root[data-look={name}]"
_UNCHOSEN = ":root:not([data-look])"


def stylesheet(scripts: Mapping[str, ScriptMetrics]) -> bytes:
    """The stylesheet of the site for the scripts (ISO 15924) of its languages, with how each is set."""
    written = (resources.files("signage.pages") / "assets" / "site.css").read_text(encoding="utf-8")
    parts = [*_look_rules(), *(_script_rule(script, scripts[script]) for script in sorted(scripts)), written]
    return "\n".join(parts).encode()


def _look_rules() -> list[str]:
    rules = [_rule(":root", LIGHT)]
    rules += [
        f"@media screen and (prefers-color-scheme:dark){{{_rule(_UNCHOSEN, DARK)}}}",
        f"@media screen and (prefers-contrast:more){{{_rule(_UNCHOSEN, CONTRAST)}}}",
    ]
    chosen = [_rule(_CHOSEN.format(name=name), look) for name, look in LOOKS.items()]
    rules.append(f"@media screen{{{''.join(chosen)}}}")
    rules.append(f"@media (prefers-contrast:more){{{_dark_items('')}}}")
    rules.append(f"@media screen{{{_dark_items(_CHOSEN.format(name='contrast'))}}}")
    return rules


def _dark_items(root: str) -> str:
    """The item and the motion of a step's picture in the deep colour of its theme."""
    return "".join(
        f"{root} .picture.{theme.name} :is(.accent,.mark){{fill:{theme.deep}}}".lstrip()
        for theme in (DON, DOFF, CARE, PLAIN)
    )


def _rule(selector: str, look: Look) -> str:
    scheme = "dark" if look is DARK else "light"
    declarations = "".join(f"--{name}:{colour};" for name, colour in look.items())
    return f"{selector}{{{declarations}color-scheme:{scheme}}}"


def _script_rule(script: str, metrics: ScriptMetrics) -> str:
    """Sizes and line distances of the script, as on the sheets."""
    family = f'--own-font:"{letter_family(script)}";' if own_letters(script) else ""
    return (
        f"[data-script={script}]{{--script-size:{metrics.size_factor:g};"
        f"--headline-leading:{metrics.headline_leading:g};--body-leading:{metrics.body_leading + 0.12:g};"
        f"{family}}}"
    )
