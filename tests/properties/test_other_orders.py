"""Orders that share what they can with the protocol's own are judged as if they were rehearsed alone."""

from hypothesis import given, settings
from hypothesis import strategies as st
from rehearsal_edits import demo_library
from rehearsal_mutations import mutated_libraries, mutated_protocols

from signage.rehearse.rehearsal import find
from signage.rehearse.state.setting import prepare, schedule_of
from signage.rehearse.variations.walked import WalkedProtocol

SOME = settings(max_examples=60)


@st.composite
def other_orders(draw, schedule):
    """Up to three steps dropped, moved or exchanged."""
    order = list(schedule)
    for _ in range(draw(st.integers(1, 3))):
        if not order:
            break
        here, there = (draw(st.integers(0, len(order) - 1)) for _ in range(2))
        kind = draw(st.sampled_from(["drop", "move", "exchange"]))
        if kind == "exchange":
            order[here], order[there] = order[there], order[here]
        else:
            taken = order.pop(here)
            if kind == "move":
                order.insert(there, taken)
    return tuple(order)


def assert_same_everywhere(data, library, protocol):
    setting, schedule = prepare(library, protocol), schedule_of(protocol)
    walked = WalkedProtocol(setting, schedule)
    assert walked.found.findings == find(setting, schedule).findings
    for _ in range(5):
        order = data.draw(other_orders(schedule))
        assert walked.find(order) == find(setting, order)


@SOME
@given(st.data(), mutated_protocols())
def test_a_spoilt_protocol_in_other_orders(data, protocol):
    assert_same_everywhere(data, demo_library(), protocol)


@SOME
@given(st.data(), mutated_libraries(), mutated_protocols())
def test_a_spoilt_library_in_other_orders(data, library, protocol):
    assert_same_everywhere(data, library, protocol)


@SOME
@given(st.data(), st.sampled_from(sorted(demo_library().protocols)))
def test_the_demo_in_other_orders(data, name):
    assert_same_everywhere(data, demo_library(), demo_library().protocols[name])
