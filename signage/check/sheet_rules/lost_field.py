"""Something that a kind of sheet owes its reader and that is not on it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.hand_technique.layout import shared_seconds
from signage.compose.sheet_kind import RulePlace
from signage.compose.shown_fields import Duty, Shown
from signage.drawing.marks import Group, Mark, TextMark, walk
from signage.drawing.roles import GroupRole, TypeRole
from signage.drawing.themes import PAPER
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule
from signage.model.choices import ActionVerb, RuleKind
from signage.model.library import Phase, Step
from signage.model.messages import pointer_context

LOST_FIELD = Rule(
    code="SH-22",
    name="lost-field",
    severity=S1,
    what=(
        "Every field of a step or phase that its kind of sheet shows is on the sheet: headline, condition, "
        "bin, time, critical mark and stop rule on every kind; detail and caution on posters and cards; "
        "the lines that point to local documents on the pocket checklist; where cautions are left out, the "
        "sheet says where they stand."
    ),
    why="A caution, a condition or a bin that is left out unseen makes the reader do the wrong thing.",
    example="The poster has step 11 and not its caution 'Do not touch the front'.",
    cure="Report it: the layout is at fault, not the content. Until then print another kind of sheet.",
)


@dataclass(frozen=True)
class _Seen:
    """What stands in some marks: texts with ties as spaces, their contexts, groups by role and name."""

    marks: tuple[Mark, ...]

    @cached_property
    def _all(self) -> list[Mark]:
        return [mark for mark, _ in walk(self.marks)]

    @cached_property
    def texts(self) -> list[TextMark]:
        """Every text."""
        return [mark for mark in self._all if isinstance(mark, TextMark)]

    @cached_property
    def words(self) -> str:
        """All texts, one a line."""
        return "\n".join(_plain(mark.text) for mark in self.texts)

    @cached_property
    def messages(self) -> frozenset[str | None]:
        """The contexts of all texts."""
        return frozenset(mark.message for mark in self.texts)

    @cached_property
    def groups(self) -> frozenset[tuple[GroupRole, str]]:
        """Role and name of all groups."""
        return frozenset((mark.role, mark.name) for mark in self._all if isinstance(mark, Group))


def _plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u202f", " ")


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each field of a step and of a phase."""
    duties = subject.kind.shows
    if not duties:
        return
    protocol = subject.protocol_context.protocol
    sheet = _Seen(tuple(mark for page in subject.sheet.pages for mark in page.marks))
    shown = {
        mark.name: _Seen(mark.marks)
        for page in subject.sheet.pages
        for mark, _ in page.placed
        if isinstance(mark, Group) and mark.role is GroupRole.STEP
    }
    for phase in protocol.phases:
        if subject.sheet.phase and phase.id != subject.sheet.phase:
            continue
        yield from _phase_problems(subject, phase, sheet, shown)
        for step in phase.steps:
            if step.id not in shown:
                continue
            for field, is_there in _STEP_FIELDS.items():
                if duties[field] is Duty.OWED and not is_there(subject, step, shown[step.id], shown):
                    yield subject.problem(LOST_FIELD, f"the {field} of step {step.id} is missing", step.id)
    for hazard in protocol.pointers:
        line = _plain(subject.context.wording.content(pointer_context(protocol, hazard)))
        if duties[Shown.POINTERS] is Duty.OWED and line not in sheet.words:
            yield subject.problem(LOST_FIELD, f"the line of hazard {hazard.id} is missing")
    has_cautions = any(step.caution for step in protocol.steps)
    told = _plain(subject.context.wording.fixed("cautions-elsewhere"))
    if duties[Shown.CAUTION] is Duty.ELSEWHERE and has_cautions and told not in sheet.words:
        yield subject.problem(LOST_FIELD, "it leaves cautions out and does not say where they stand")


_All = dict[str, _Seen]


def _has_text(name: str) -> Callable[[SheetSubject, Step, _Seen, _All], bool]:
    def is_there(subject: SheetSubject, step: Step, seen: _Seen, _shown: _All) -> bool:
        context = f"{subject.protocol_context.protocol.id}/{step.told_as}/{name}"
        return getattr(step, name) is None or context in seen.messages

    return is_there


def _has_detail(subject: SheetSubject, step: Step, seen: _Seen, shown: _All) -> bool:
    """Its own with posture and pace, or that of an earlier rub of the sheet with the same words."""
    whole = subject.context.wording.step_text(subject.protocol_context.protocol, step, "detail")
    if whole is None or _plain(whole) in seen.words:
        return True
    words, protocol = subject.context.wording, subject.protocol_context.protocol
    texts = [words.step_text(protocol, step, field) for field in ("text", "detail")]
    headline, detail = (_plain(text or "") for text in texts)
    return step.action.verb is ActionVerb.HYGIENE and any(
        headline in other.words and detail in other.words for other in _earlier(step, shown)
    )


def _earlier(step: Step, shown: _All) -> list[_Seen]:
    names = list(shown)
    return [shown[name] for name in names[: names.index(step.id)]]


def _has_condition(subject: SheetSubject, step: Step, seen: _Seen, _shown: _All) -> bool:
    words = subject.protocol_context.condition_words(step)
    return words is None or _plain(words) in seen.words


def _has_containers(subject: SheetSubject, step: Step, seen: _Seen, _shown: _All) -> bool:
    context = subject.protocol_context
    for fixture in context.containers(step):
        name = context.container_name(fixture)
        if (GroupRole.CONTAINER, fixture.id) not in seen.groups or (name and _plain(name) not in seen.words):
            return False
    return True


def _has_time(subject: SheetSubject, step: Step, seen: _Seen, _shown: _All) -> bool:
    """In its words, beside them, or for all rubs of the sheet in one note."""
    seconds = subject.protocol_context.step_seconds(step)
    if seconds is None:
        return True
    wording = subject.context.wording
    if _plain(wording.seconds(seconds)) in seen.words:
        return True
    note = _plain(wording.fixed("every-rub", time=wording.seconds(seconds)))
    everywhere = _Seen(tuple(mark for page in subject.sheet.pages for mark in page.marks))
    return step.action.verb is ActionVerb.HYGIENE and note in everywhere.words


def _has_mark(_subject: SheetSubject, step: Step, seen: _Seen, _shown: _All) -> bool:
    """The number of a critical step is white on ink."""
    numbers = [mark for mark in seen.texts if mark.role is TypeRole.NUMBER]
    return not step.critical or any(mark.colour.upper() == PAPER.upper() for mark in numbers)


def _has_picture(_subject: SheetSubject, _step: Step, seen: _Seen, _shown: _All) -> bool:
    return any(role is GroupRole.PICTURE for role, _name in seen.groups)


_STEP_FIELDS: dict[Shown, Callable[[SheetSubject, Step, _Seen, _All], bool]] = {
    Shown.HEADLINE: _has_text("text"),
    Shown.DETAIL: _has_detail,
    Shown.WHY: _has_text("why"),
    Shown.CAUTION: _has_text("caution"),
    Shown.CONDITION: _has_condition,
    Shown.CONTAINER: _has_containers,
    Shown.TIME: _has_time,
    Shown.CRITICAL: _has_mark,
    Shown.PICTURE: _has_picture,
}


def _phase_problems(subject: SheetSubject, phase: Phase, sheet: _Seen, shown: _All) -> Iterator[Problem]:
    """The rule of the phase, its notes and the time that its movements share."""
    duties, base = subject.kind.shows, f"{subject.protocol_context.protocol.id}/phase/{phase.id}"
    field = Shown.STOP_RULE if phase.rule_kind is RuleKind.STOP else Shown.PHASE_CAUTION
    if phase.rule and duties[field] is Duty.OWED:
        places = _places_of_rule(subject, phase, sheet, shown)
        rule = _plain(subject.context.wording.phase_rule(subject.protocol_context.protocol, phase) or "")
        if not all(f"{base}/rule" in seen.messages and rule in seen.words for seen in places):
            yield subject.problem(LOST_FIELD, f"the {field} of phase {phase.id} is missing")
    seconds = shared_seconds(subject.protocol_context.protocol, phase)
    if seconds is not None and _plain(subject.context.wording.seconds(seconds)) not in sheet.words:
        yield subject.problem(LOST_FIELD, f"the time of phase {phase.id} is missing")
    for zone in phase.notes:
        if duties[Shown.NOTES] is Duty.OWED and f"{base}/note/{zone}" not in sheet.messages:
            yield subject.problem(LOST_FIELD, f"the note of phase {phase.id} for {zone} is missing")


def _places_of_rule(subject: SheetSubject, phase: Phase, sheet: _Seen, shown: _All) -> list[_Seen]:
    """Where its kind says; on steps, what stops the work stands on each and a caution on the first."""
    if subject.kind.rules is RulePlace.EVERY_PAGE:
        return [_Seen(page.marks) for page in subject.sheet.pages]
    if subject.kind.rules is RulePlace.STEPS:
        steps = phase.steps if phase.rule_kind is RuleKind.STOP else phase.steps[:1]
        return [shown[step.id] for step in steps if step.id in shown]
    return [sheet]


RULE = SheetRule(LOST_FIELD, find)
