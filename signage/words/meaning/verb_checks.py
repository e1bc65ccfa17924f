"""Whether a text says what its step does, on the hand layer and in the zone that the step names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from signage.model.choices import ActionVerb, PhaseTheme
from signage.model.library import Library, Protocol, Step
from signage.model.messages import Message, MessageRole
from signage.words.entry_checks import Fault
from signage.words.meaning.acts import Move, act_of_phase, acts_of_step, move_of_step
from signage.words.meaning.garment_checks import glossary_of_things, hand_layers
from signage.words.meaning.vocabulary import LanguageVocabulary, opposites

SKIN = "skin"
_WAYS = frozenset({"move", "enter", "leave"})
"""Acts of which any may be said of a step that goes from zone to zone."""

_FORMS_SHOWN = 5

_ABOUT_THE_LAYER = frozenset({MessageRole.HEADLINE, MessageRole.DETAIL})


class VerbCheck:
    """The rules WD-40 to WD-43 and WD-54 for one locale.

    ``names`` are the texts of the locale by context, of which those of kit and zones are read.
    """

    def __init__(
        self, library: Library, source: LanguageVocabulary, own: LanguageVocabulary, names: Mapping[str, str]
    ) -> None:
        self._library = library
        self._source = source
        self._own = own
        self._opposites = opposites(library)
        self._names = names
        gloves = {garment: f"kit/{garment}/name" for garment in hand_layers(library)}
        zones = {
            zone: f"ward/{ward.id}/zone/{zone}" for ward in library.wards.values() for zone in ward.zones
        }
        self._gloves = glossary_of_things(library, own.tag, gloves, names)
        self._zones = glossary_of_things(library, own.tag, zones, names)

    def faults_of_title(self, theme: PhaseTheme, text: str) -> Iterator[Fault]:
        """WD-40 for the title of a phase that dresses or undresses."""
        yield from self._turned(text, self._expected(act_of_phase(theme)), "the phase")

    def faults_of_headline(self, protocol: Protocol, step: Step, text: str) -> Iterator[Fault]:
        """WD-40, WD-41 and WD-54 for the headline of a step."""
        acts = acts_of_step(self._library, protocol, step)
        expected = self._expected(acts)
        found = self._own.verbs_in(text)
        move = move_of_step(protocol, step)
        zones = self._zones_in(protocol, text) if move is not None else frozenset()
        turned = [] if _is_other_end(acts, move, zones) else list(self._turned(text, expected, "the step"))
        yield from turned
        with_forms = (self._expected(_WAYS) if move is not None else expected) & self._own.forms.keys()
        if with_forms and not turned and not found & with_forms:
            shown = sorted(expected & with_forms or with_forms)
            wanted = " or ".join(f"'{self._own.verbs[verb].source}'" for verb in shown)
            forms = ", ".join(self._own.forms[shown[0]][:_FORMS_SHOWN])
            yield "WD-41", f"'{text}' has no approved form of {wanted}, such as: {forms}"
        if move is not None:
            yield from self._other_zone(protocol, move, zones, text, found)

    def faults_against_source(self, message: Message, text: str) -> Iterator[Fault]:
        """WD-40 for a translation that carries the opposite of a verb of its source text."""
        found, wanted = self._own.verbs_in(text), self._source.verbs_in(message.source)
        is_denied = self._own.negation_in(text) is not None
        for verb in sorted(wanted & self._own.forms.keys() - found):
            for other in sorted(self._opposites[verb] & found - wanted):
                if not is_denied:
                    yield self._opposite(text, other, "the source text", verb)

    def faults_of_layer(self, step: Step, role: MessageRole, text: str) -> Iterator[Fault]:
        """WD-42 and WD-43: the hand layer that headline and detail of hand hygiene name."""
        layer = next((action.layer for action in step.actions if action.verb is ActionVerb.HYGIENE), None)
        if layer is None or role not in _ABOUT_THE_LAYER:
            return
        gloves = self._gloves_in(text)
        hands = self._own.bare_hands_in(text)
        wanted = self._layer_name(layer)
        if layer == SKIN:
            others = gloves if hands is None else frozenset()
        else:
            others = frozenset() if layer in gloves else gloves - self._generic(layer)
        code = "WD-42" if role is MessageRole.HEADLINE or layer != SKIN else "WD-43"
        for other in sorted(others):
            yield code, f"'{text}' names '{self._layer_name(other)}', the step cleans '{wanted}'"
        if layer != SKIN and not gloves and hands is not None and not self._speaks_of(layer, text):
            code = "WD-42" if role is MessageRole.HEADLINE else "WD-43"
            yield code, f"'{text}' speaks of bare hands ('{hands.strip()}'), the step cleans '{wanted}'"

    def faults_of_agent(self, protocol: Protocol, step: Step, text: str) -> Iterator[Fault]:
        """WD-40 for the detail of hand hygiene: rubbing in a step that washes, and the other way round."""
        if step.action.verb is ActionVerb.HYGIENE:
            expected = self._expected(acts_of_step(self._library, protocol, step))
            yield from self._turned(text, expected, "the step")

    def _expected(self, acts: frozenset[str]) -> frozenset[str]:
        return frozenset(verb.id for verb in self._library.vocabulary.verbs if acts & frozenset(verb.acts))

    def _turned(self, text: str, expected: frozenset[str], what: str) -> Iterator[Fault]:
        """An expected verb turned round, in a text with none of those expected that can be turned round."""
        found = self._own.verbs_in(text)
        if any(self._opposites[verb] for verb in expected & found):
            return
        for verb in sorted(expected):
            for other in sorted(self._opposites[verb] & found - expected):
                yield self._opposite(text, other, what, verb)

    def _opposite(self, text: str, found: str, what: str, wanted: str) -> Fault:
        said, meant = self._own.verbs[found].source, self._own.verbs[wanted].source
        form = self._own.form_in(text, found)
        return "WD-40", f"'{form}' in '{text}' says '{said}', {what} says '{meant}'"

    def _other_zone(
        self, protocol: Protocol, move: Move, zones: frozenset[str], text: str, found: frozenset[str]
    ) -> Iterator[Fault]:
        if not zones or move.end in zones:
            return
        leaving = {verb.id for verb in self._library.vocabulary.verbs if "leave" in verb.acts}
        says_leave = found & leaving or not leaving & self._own.forms.keys()
        if zones == {move.start} and says_leave:
            return
        ward = self._library.wards[protocol.ward]
        names = " and ".join(f"'{ward.zones[zone].name}'" for zone in sorted(zones))
        yield "WD-54", f"'{text}' names {names}, the step goes to '{ward.zones[move.end].name}'"

    def _zones_in(self, protocol: Protocol, text: str) -> frozenset[str]:
        return self._zones.named(text) & self._library.wards[protocol.ward].zones.keys()

    def _gloves_in(self, text: str) -> frozenset[str]:
        return self._gloves.named(text) & hand_layers(self._library)

    def _generic(self, layer: str) -> frozenset[str]:
        """The layers whose name is a part of the layer's own name, as 'gloves' of 'inner gloves'."""
        own = self._layer_name(layer).casefold()
        return frozenset(g for g in hand_layers(self._library) if self._layer_name(g).casefold() in own)

    def _speaks_of(self, layer: str, text: str) -> bool:
        """Whether a word of the text begins as one of the layer's name does, such as 'gloved'."""
        name = self._names.get(f"kit/{layer}/name", self._layer_name(layer))
        stems = {word[:4].casefold() for word in name.split() if len(word) >= 3}
        return any(word[:4] in stems for word in text.casefold().replace("’", " ").split())

    def _layer_name(self, layer: str) -> str:
        garment = self._library.garments.get(layer)
        return garment.name if garment is not None else "bare hands"


def _is_other_end(acts: frozenset[str], move: Move | None, zones: frozenset[str]) -> bool:
    """Whether a text names the zone it enters in a step that leaves, or that it leaves in one that enters."""
    if move is None:
        return False
    return ("enter" in acts and zones == {move.start}) or ("leave" in acts and move.end in zones)
