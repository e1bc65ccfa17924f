"""What is refused because the rehearsal finds what can hurt."""

from dataclasses import replace

import demo
import pytest
from rehearsal_edits import without_steps

from signage.build import SheetRequest, compose_request
from signage.ground.errors import RefusedError

REQUEST = SheetRequest("layered-protection", "en", "step-cards", "", "A6")


def signed_project(protocol):
    library = demo.project().library
    changed = replace(library, protocols={**library.protocols, protocol.id: protocol})
    return replace(demo.project(), library=changed, signed=frozenset({(protocol.id, "en")}))


def test_an_order_that_can_hurt_is_printed_as_a_draft_only():
    protocol = without_steps(demo.project().library.protocols["layered-protection"], "rub-after-outer")
    signed = signed_project(protocol)
    with pytest.raises(RefusedError, match=r"HH-1 in step hood-off.*signage rehearse P1"):
        compose_request(signed, REQUEST)
    assert compose_request(replace(signed, signed=frozenset()), REQUEST).is_draft


def test_a_clean_and_signed_protocol_is_no_draft_in_the_signed_language_only():
    signed = signed_project(demo.project().library.protocols["layered-protection"])
    assert not compose_request(signed, REQUEST).is_draft
    assert compose_request(signed, replace(REQUEST, locale="fr")).is_draft
