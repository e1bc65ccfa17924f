"""The forms of document control as files: words found, composed, looked at and painted."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from signage.check.blockers import reasons_not_to_print
from signage.check.registry import all_sheet_rules
from signage.check.rule import SheetSubject
from signage.compose.papers import paper_of
from signage.compose.sheet_kind import SheetOrder
from signage.compose.theme import Tone
from signage.compose.ward_forms.context import Entry, FormContext
from signage.control.recall import Cause, Recalled
from signage.drawing.marks import Sheet
from signage.ground.errors import RefusedError
from signage.ground.files import write_changed
from signage.model.copies import CopyState, Spot
from signage.model.current_sheet import CurrentSheets
from signage.model.library import Protocol
from signage.model.mark import Mark
from signage.project import Project
from signage.words.wording import MissingMessageError, Wording

FORMS_FOLDER = "forms"
"""Where forms go inside the folder for what is made."""


@dataclass(frozen=True)
class FormMaker:
    """Makes the forms of a library in one language, on a day."""

    project: Project
    tag: str
    today: date

    @property
    def _words(self) -> Wording:
        return self.project.wording(self.tag)

    def recall_list(
        self,
        protocol: Protocol | None,
        recalled: Sequence[Recalled],
        current: CurrentSheets,
        output: Path,
    ) -> Path:
        """The copies of a protocol that must come down, in walking order."""
        entries = tuple(self._entry(each.state, self._cause(each, current)) for each in recalled)
        about = self._title(protocol) if protocol else ""
        context = self._context(entries, about=about, protocol=protocol)
        name = f"recall-{protocol.id}" if protocol else "recall"
        return self._write("recall-list", context, output, name)

    def notice(self, protocol: Protocol, spot: Spot, output: Path) -> Path:
        """What hangs in a slot where nothing takes the place of a sheet."""
        context = self._context((), about=self._title(protocol), protocol=protocol, ward=self._place(spot))
        return self._write(
            "withdrawn-notice", context, output, f"withdrawn-{protocol.id}-{spot.ward}-{spot.slot}"
        )

    def audit_form(self, states: Iterable[CopyState], current: CurrentSheets, output: Path) -> Path:
        """Every copy that is out, with the code that it should bear today."""
        entries = []
        for state in states:
            sheet = current.get((state.copy.subject, state.copy.locale))
            code = sheet.code if sheet is not None and sheet.hash is not None else "–"
            entries.append(self._entry(state, self._words.code(code)))
        return self._write("audit-form", self._context(tuple(entries)), output, "audit")

    def incident_slip(self, output: Path) -> Path:
        """An empty slip."""
        return self._write("incident-slip", self._context(()), output, "incident")

    def _context(
        self,
        entries: tuple[Entry, ...],
        *,
        about: str = "",
        protocol: Protocol | None = None,
        ward: str = "",
    ) -> FormContext:
        project = self.project
        return FormContext(
            project.library,
            self._words,
            project.source,
            project.picture_set,
            "",
            Tone.MONO,
            Mark.NONE,
            made_on=self.today,
            ward=ward or self._content("library/name"),
            about=about,
            entries=entries,
            protocol=protocol,
        )

    def _entry(self, state: CopyState, told: str) -> Entry:
        copy = state.copy
        protocol = self.project.library.protocols.get(copy.subject)
        name = self._title(protocol) if protocol else copy.subject
        language = self.project.wording(copy.locale).name if copy.locale in self._tags else copy.locale
        return Entry(copy.number, self._place(state.spot), f"{name} · {language}", told)

    @property
    def _tags(self) -> Iterable[str]:
        return self.project.library.locales

    def _cause(self, recalled: Recalled, current: CurrentSheets) -> str:
        sheet = current.get((recalled.state.copy.subject, recalled.state.copy.locale))
        if recalled.cause is Cause.WITHDRAWN:
            return self._words.fixed("recall-withdrawn")
        if recalled.cause is Cause.REPLACED and sheet is not None:
            return self._words.fixed("recall-replaced", code=self._words.code(sheet.code))
        return self._words.fixed("recall-none")

    def _title(self, protocol: Protocol) -> str:
        return f"{self._words.code(protocol.code)} {self._content(f'{protocol.id}/title')}"

    def _place(self, spot: Spot) -> str:
        if spot.learner:
            return self._words.fixed("form-learner", number=self._words.code(spot.learner))
        ward = self.project.library.wards.get(spot.ward)
        slot = next((each for each in ward.slots if each.id == spot.slot), None) if ward else None
        if ward is None or slot is None:
            return self._words.code(str(spot))
        zone = self._content(f"ward/{ward.id}/zone/{slot.zone}")
        return f"{zone} · {self._words.code(slot.id)} · {self._content(f'ward/{ward.id}/name')}"

    def _content(self, context: str) -> str:
        """A text of the content; that of its authors where the language has none yet."""
        try:
            return self._words.content(context)
        except MissingMessageError:
            return self.project.source.content(context)

    def _write(self, kind_name: str, context: FormContext, output: Path, name: str) -> Path:
        """Compose, look at, paint and write; raises RefusedError where the form cannot be trusted."""
        from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the PDF library is slow to load

        kind = self.project.kinds.of(kind_name)
        paper = paper_of(kind.papers.chosen((), self.project.library.papers, is_named=True)[0])
        width, height = kind.page_size(paper)
        sheet = kind.compose(SheetOrder(context, paper, width, height))
        faults = [*reasons_not_to_print(sheet, self._words), *self._grave(sheet, context, kind_name)]
        if faults:
            raise RefusedError("\n    ".join((f"The form {name} in {self.tag} is refused:", *faults)))
        path = output / FORMS_FOLDER / f"{name}-{self.tag}.pdf"
        write_changed(path, paint_pdf(sheet))
        return path

    def _grave(self, sheet: Sheet, context: FormContext, kind: str) -> list[str]:
        subject = SheetSubject(sheet, context, self.project.kinds.of(kind))
        rules = (each for each in all_sheet_rules() if each.rule.severity == "S1")
        return [f"{p.code} {p.message}" for each in rules for p in each.find(subject)]
