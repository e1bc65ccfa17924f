from signage.model.library import Term
from signage.words.meaning.terms import Glossary

GLOVES = Term(
    id="gloves",
    source="gloves",
    approved={"fr": ("gants",), "ar": ("القفاز",), "am": ("ጓንት",), "hi": ("दस्ताने",)},
)
OUTER = Term(
    id="outer-gloves",
    source="outer gloves",
    approved={
        "fr": ("gants externes", "gants d’extérieur"),
        "ar": ("القفاز الخارجي",),
        "hi": ("बाहरी दस्ताने",),
    },
    forbidden={"fr": ("surgants",)},
)
TERMS = (GLOVES, OUTER)


def test_the_longest_form_hides_those_inside_it():
    glossary = Glossary(TERMS, "fr")
    assert glossary.named("Retirer les gants externes") == {"outer-gloves"}
    assert glossary.named("Gants externes, puis gants") == {"outer-gloves", "gloves"}


def test_case_spaces_apostrophes_and_isolates_do_not_matter():
    glossary = Glossary(TERMS, "fr")
    assert glossary.named("GANTS\u00a0EXTERNES") == {"outer-gloves"}
    assert glossary.named("\u2068gants\u2069  d'extérieur") == {"outer-gloves"}


def test_latin_words_count_whole_only():
    glossary = Glossary((Term(id="zip", source="zip", approved={"fr": ("fermeture", "zip")}),), "fr")
    assert glossary.named("dézipper") == frozenset()
    assert glossary.named("zip.") == {"zip"}


def test_arabic_vowel_points_do_not_matter():
    assert Glossary(TERMS, "ar").named("افرك القُفّاز الخارجيّ") == {"outer-gloves"}


def test_scripts_that_attach_particles_are_searched_inside_words():
    (found,) = Glossary(TERMS, "am").find("በጓንት ላይ")
    assert found.approves == {"gloves"}
    assert not found.is_whole_word


def test_a_form_tells_what_it_approves_and_forbids():
    (found,) = Glossary(TERMS, "fr").find("surgants")
    assert (found.approves, found.forbids) == (frozenset(), {"outer-gloves"})


def test_the_source_term_is_approved_in_the_source_language_in_both_numbers():
    glossary = Glossary(TERMS, "en", is_source=True)
    assert glossary.named("An outer glove is torn") == {"outer-gloves"}
    assert Glossary(TERMS, "en").named("outer gloves") == frozenset()


def test_a_region_takes_the_forms_of_its_language():
    assert Glossary(TERMS, "fr-CH").has_forms("gloves")
    assert not Glossary(TERMS, "de").has_forms("gloves")
