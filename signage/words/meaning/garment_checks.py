"""Whether headlines name the garment that the step puts on, takes off or cleans."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from signage.model.choices import ActionVerb
from signage.model.library import Library, Step, Term
from signage.words.entry_checks import Fault
from signage.words.meaning.terms import Glossary
from signage.words.placeholders import placeholder_names
from signage.words.step_values import garments_of_step

_DRESSING = frozenset({ActionVerb.DON, ActionVerb.DOFF})
_CLEANING = frozenset({ActionVerb.HYGIENE})


class GarmentCheck:
    """The rule WD-57 for one locale; ``names`` are its texts by context, of which those of kit are read."""

    def __init__(self, library: Library, tag: str, names: Mapping[str, str]) -> None:
        self._library = library
        contexts = {garment: f"kit/{garment}/name" for garment in library.garments}
        self._names = {garment: names.get(context, "").casefold() for garment, context in contexts.items()}
        self._things = glossary_of_things(library, tag, contexts, names)

    def faults_of_headline(self, step: Step, text: str) -> Iterator[Fault]:
        """Other garments than those of the step, in a headline that names none of its own.

        Hand layers of hand hygiene are left to WD-42.
        """
        verbs = {action.verb for action in step.actions}
        if not verbs & (_DRESSING | _CLEANING) or placeholder_names(text)["item"]:
            return
        own = garments_of_step(self._library, step)
        known_elsewhere = frozenset() if verbs & _DRESSING else hand_layers(self._library)
        for form in self._things.find(text):
            named = form.approves & self._library.garments.keys()
            if named & own or any(self._is_part_of(one, other) for one in named for other in own):
                return
        names = [f"'{self._library.garments[garment].name}'" for garment in sorted(own)]
        wanted = " and ".join(names) or "bare hands"
        for other in sorted((self._things.named(text) & self._library.garments.keys()) - known_elsewhere):
            yield (
                "WD-57",
                f"'{text}' names '{self._library.garments[other].name}', the step is about {wanted}",
            )

    def _is_part_of(self, one: str, other: str) -> bool:
        """Whether a garment is called by a part of the other's name, as 'gloves' of 'inner gloves'."""
        return bool(self._names[one]) and self._names[one] in self._names[other]


def hand_layers(library: Library) -> frozenset[str]:
    """The garments that lie on the hands."""
    return frozenset(g.id for g in library.garments.values() if g.kind == "glove" or "hands" in g.covers)


def glossary_of_things(
    library: Library, tag: str, contexts: Mapping[str, str], names: Mapping[str, str]
) -> Glossary:
    """The names of things: from the glossary where it has the thing, and as the locale calls them.

    ``contexts`` gives the context of the name of each thing, ``names`` the texts of the locale by context.
    """
    known = {term.id: term for term in library.terms}
    terms = []
    for thing in dict.fromkeys((*contexts, *known)):
        term = known.get(thing)
        name = names.get(contexts.get(thing, ""), "")
        forms = (*((name,) if name else ()), *(term.approved.get(tag, ()) if term is not None else ()))
        terms.append(Term(id=thing, source=term.source if term else name, approved={tag: forms}))
    return Glossary([term for term in terms if term.source], tag, tag == library.source_locale)
