"""The recall set of the library against the formula, read from the bare list of events.

The formula is that of document control (ISO 9001:2015, 7.5.3.2 asks to prevent the unintended use of
obsolete documents): what is mounted, is not what is in force, or belongs to what is withdrawn.
"""

import demo
from hypothesis import given
from hypothesis import strategies as st
from register_samples import DAY

from signage.control.recall import outcome_of, recall_set
from signage.model.copies import Copy, Event, EventKind, Spot, states_of
from signage.model.current_sheet import CurrentSheet

_PROTOCOLS = ("clean-hands", "contact-room")
_LOCALES = ("en", "ar")
_HASHES = ("a", "b")

_copies = st.lists(
    st.tuples(st.sampled_from(_PROTOCOLS), st.sampled_from(_LOCALES), st.sampled_from(_HASHES)),
    min_size=1,
    max_size=6,
)
_histories = st.lists(st.tuples(st.integers(0, 5), st.sampled_from(EventKind)), max_size=25)
_current = st.fixed_dictionaries(
    {},
    optional={
        (protocol, locale): st.tuples(st.sampled_from((*_HASHES, None)), st.booleans())
        for protocol in _PROTOCOLS
        for locale in _LOCALES
    },
)


def _wanted(copies, happened, current, subject):
    """One copy after the other, from the end of the list."""
    found, closed = set(), set()
    for number, (protocol, locale, whole) in copies.items():
        if protocol != subject:
            continue
        in_force, is_withdrawn = current.get((protocol, locale), (None, False))
        if not is_withdrawn and whole == in_force:
            continue
        kinds = [kind.value for each, kind in happened if each == number and kind.value != "audited"]
        if not kinds:
            continue
        if kinds[-1] == "mounted":
            found.add(number)
        if "mounted" in kinds and kinds[-1] in {"removed", "destroyed", "lost"}:
            closed.add(number)
    return found, closed


@given(_copies, _histories, _current)
def test_the_recall_set_is_the_formula_on_every_history(drawn, history, current):
    copies = {f"LB-{index:04}-X": what for index, what in enumerate(drawn)}
    numbers = list(copies)
    happened = [(numbers[index % len(numbers)], kind) for index, kind in history]
    spots = (Spot("lantern-bay", "s1"), Spot("lantern-bay", "s4"), Spot(learner="L3"))
    events = [
        Event(place, number, kind, DAY, "icn", "x", spots[place % 3] if kind is EventKind.MOUNTED else Spot())
        for place, (number, kind) in enumerate(happened, start=1)
    ]
    states = states_of(
        (
            Copy(number, "s", p, tag, "c", whole, "none", DAY, "i")
            for number, (p, tag, whole) in copies.items()
        ),
        events,
    )
    sheets = {
        key: CurrentSheet(*key, hash=whole, is_withdrawn=withdrawn)
        for key, (whole, withdrawn) in current.items()
    }
    library = demo.project().library
    for subject in _PROTOCOLS:
        found, closed = _wanted(copies, happened, current, subject)
        recalled = recall_set(library, states, sheets, subject)
        assert {each.state.copy.number for each in recalled} == found
        outcome = outcome_of(library, states, events, sheets, subject)
        assert {state.copy.number for state in outcome.done} == closed
        assert found <= {state.copy.number for state in outcome.open}
