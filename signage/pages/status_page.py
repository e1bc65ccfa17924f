"""The status as one HTML file that prints on A4: what needs whom, then every protocol in every language."""

from __future__ import annotations

from collections.abc import Iterator

from signage.ground.errors import SignageError
from signage.ground.language import is_right_to_left, script_of
from signage.model.mark import Mark
from signage.model.status import LibraryStatus, SheetStatus
from signage.pages.embedded_font import font_style, letter_family, own_letters
from signage.pages.look import LIGHT
from signage.pages.rendering import template_named
from signage.pages.status_words import finding_words, rows_of

_TONES = {Mark.NONE: "good", Mark.DEMONSTRATION: "good", Mark.DRAFT: "plain"}


def status_page(status: LibraryStatus, language: str) -> str:
    """The HTML; the same status gives the same text. ``language`` is that of titles and names of roles."""
    return template_named("status.html").render(
        status=status,
        language=language,
        direction="rtl" if is_right_to_left(language) else "ltr",
        names={each.tag: each.name for each in status.languages},
        directions={each.tag: "rtl" if is_right_to_left(each.tag) else "ltr" for each in status.languages},
        rows=rows_of,
        findings=finding_words,
        letters=list(_letters(status)),
        families=_families(status),
        tone=_tone,
        colours=LIGHT,
    )


def _families(status: LibraryStatus) -> list[str]:
    """The fonts that the page brings for names of languages."""
    return [letter_family(script) for script in _scripts(status)]


def _letters(status: LibraryStatus) -> Iterator[str]:
    """Stylesheets with the letters of the names of languages in scripts that a device may lack."""
    for script, names in _scripts(status).items():
        try:
            yield font_style(script, names).decode()
        except SignageError:  # no font of the programme has the script: the device's own must do
            continue


def _scripts(status: LibraryStatus) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for each in status.languages:
        if own_letters(script_of(each.tag)):
            found.setdefault(script_of(each.tag), []).append(each.name)
    return found


def _tone(sheet: SheetStatus) -> str:
    """How the cell looks that says what is printed; its words say the same."""
    if sheet.is_withdrawn:
        return "bad"
    if not sheet.is_in_use:
        return "plain"
    return _TONES.get(sheet.mark, "bad")
