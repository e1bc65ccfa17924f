"""What pages say of a protocol: a draft, approved and by whom, a demonstration, withdrawn on every step."""

from dataclasses import replace
from datetime import date

import pytest
from site_samples import publication

from signage.model.sign_off import SignedBy, SignOff
from signage.pages.protocol_pages import full_view_page, step_pages
from signage.pages.publication import PageContext, PageState
from signage.pages.rendering import render_page
from signage.pages.shared_pages import contents_page, what_if_page

PROTOCOL = "clean-hands"
BY = SignOff("ward-lead", date(2026, 11, 20))
SIGNED = SignedBy(BY, BY)


def pages(tag, **changes):
    """The pages of P3 in a language as text."""
    made = replace(publication(), **changes)
    context = PageContext(made, made.library.protocols[PROTOCOL], made.words[tag])
    shown = [full_view_page(context), *step_pages(context)]
    return context, [render_page(made, page).decode() for page in shown]


def for_use():
    return replace(publication().library, is_demo=False)


@pytest.mark.parametrize("tag", ["en", "ar"])
def test_an_approved_page_says_so_and_by_whom_in_its_language(tag):
    context, texts = pages(tag, library=for_use(), approved={(PROTOCOL, tag): SIGNED})
    words = context.words
    assert context.state is PageState.APPROVED
    for text in texts:
        assert words.fixed("page-is-approved") in text
        assert "ward-lead" in text
        assert words.fixed("role-declared") in text
        assert words.fixed("draft-sentence") not in text


def test_a_withdrawn_page_says_so_on_every_step_and_names_no_signer():
    key = (PROTOCOL, "en")
    context, texts = pages("en", library=for_use(), approved={key: SIGNED}, withdrawn=frozenset({key}))
    assert len(texts) > 10
    for text in texts:
        assert context.words.fixed("page-withdrawn") in text
        assert "ward-lead" not in text
    made = context.publication
    for page in (contents_page(made, context.words), what_if_page(made, context.words)):
        assert page.state is PageState.DRAFT, "the others are drafts"


def test_in_a_demonstration_a_signed_page_says_that_it_is_one():
    _, texts = pages("en", approved={(PROTOCOL, "en"): SIGNED})
    assert all("Demonstration. Not for clinical use." in text for text in texts)


def test_two_roles_are_both_named_and_a_verified_signature_is_not_called_declared():
    other = SignOff("ipc-doctor", date(2026, 11, 21), is_verified=True)
    both = SignedBy(replace(BY, is_verified=True), other)
    _, texts = pages("en", library=for_use(), approved={(PROTOCOL, "en"): both})
    for text in texts:
        assert "Steps signed: " in text
        assert "Words signed: " in text
        assert "Role as declared" not in text
