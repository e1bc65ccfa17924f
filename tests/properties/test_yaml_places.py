"""Against PyYAML's own loader: the same texts, and places at which those texts truly stand."""

import string

import yaml
from hypothesis import given
from hypothesis import strategies as st

from signage.ground.problem import with_problems
from signage.load.validation import plain
from signage.load.yaml.nodes import Sequence, Table, Text
from signage.load.yaml.reader import parse_yaml

WORDS = st.text(
    alphabet=string.ascii_letters + "äßمئ漢𝔞 -:#'\"{}[],&*!|>%@`0123456789", min_size=1, max_size=12
)
KEYS = st.text(alphabet=string.ascii_lowercase + "é漢-", min_size=1, max_size=8)
TREES = st.recursive(
    WORDS, lambda below: st.lists(below, max_size=3) | st.dictionaries(KEYS, below, max_size=3), max_leaves=12
)
ROOTS = st.dictionaries(KEYS, TREES, min_size=1, max_size=4)


def as_lists(value):
    if isinstance(value, tuple):
        return [as_lists(item) for item in value]
    return {key: as_lists(item) for key, item in value.items()} if isinstance(value, dict) else value


def texts(node):
    if isinstance(node, Text):
        yield node
    elif isinstance(node, Sequence):
        for item in node.items:
            yield from texts(item)
    elif isinstance(node, Table):
        for item in node.values.values():
            yield from texts(item)


@given(ROOTS, st.booleans())
def test_nodes_hold_what_the_reference_reader_holds(tree, is_flow):
    written = yaml.safe_dump(tree, allow_unicode=True, default_flow_style=is_flow, width=1000)
    node, problems = with_problems(parse_yaml(written.encode(), "a.yaml"))
    assert problems == ()
    assert as_lists(plain(node)) == yaml.load(written, Loader=yaml.BaseLoader) == tree  # noqa: S506


@given(ROOTS, st.booleans())
def test_at_the_place_of_every_text_stands_that_text(tree, is_flow):
    written = yaml.safe_dump(tree, allow_unicode=True, default_flow_style=is_flow, width=1000)
    node, _ = with_problems(parse_yaml(written.encode(), "a.yaml"))
    lines = written.split("\n")
    for text in texts(node):
        rest = lines[text.place.line - 1][text.place.column - 1 :]
        if text.is_plain:
            assert rest.startswith(text.text)
        else:
            assert rest[0] in "'\"|>"
