"""How far the words of a language are, by the texts that stand on sheets and pages."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from signage.ground.errors import UnreadableInputError
from signage.ground.problem import Problem
from signage.model.status import WordCount
from signage.project import Project
from signage.words.checking import is_of_protocol

_MISSING = "WD-1"


def count_words(project: Project, tag: str, known: frozenset[str], problems: Iterable[Problem]) -> WordCount:
    """The texts with these contexts, and the fixed words, as the decision of release takes them.

    ``problems`` are the faults of the words of the language, which tell what is not there from what is
    doubtful.
    """
    try:
        wording = project.wording(tag)
    except UnreadableInputError:
        return WordCount(missing=len(known))
    missing = frozenset(each.text for each in problems if each.code == _MISSING and each.text)
    unchecked = wording.unchecked
    counts: Counter[str] = Counter()
    for context, text in wording.texts.items():
        if is_of_protocol(context, known):
            counts[_state(context, text, missing, unchecked)] += 1
    return WordCount(**counts)


def _state(context: str, text: str | None, missing: frozenset[str], unchecked: frozenset[str]) -> str:
    if text is None:
        return "missing" if context in missing else "doubtful"
    return "translated" if context in unchecked else "checked"
