from xml.dom.minidom import parseString
from xml.sax.saxutils import escape, quoteattr

from hypothesis import given
from hypothesis import strategies as st

from signage.paint.xml_text import xml_attribute, xml_text


@given(
    st.text(
        st.one_of(st.sampled_from("\"'&<>\n\r\t"), st.characters(codec="utf-8", exclude_categories=["Cc"]))
    )
)
def test_the_standard_library_escapes_alike(text):
    text = text.translate({0xFFFE: None, 0xFFFF: None})
    assert (xml_text(text), xml_attribute(text)) == (escape(text), quoteattr(text))


@given(st.text(st.characters(codec="utf-8")))
def test_any_text_gives_well_formed_xml(text):
    document = parseString(f"<a b={xml_attribute(text)}>{xml_text(text)}</a>")  # noqa: S318  our own text
    assert document.documentElement.hasAttribute("b")


def test_signs_of_markup_come_back():
    text = "Rub <20 s> & \"dry\" 'well'"
    root = parseString(f"<a b={xml_attribute(text)}>{xml_text(text)}</a>").documentElement  # noqa: S318
    assert root.getAttribute("b") == root.firstChild.data == text


def test_characters_that_xml_forbids_are_left_out():
    """XML 1.0, section 2.2, production Char."""
    assert xml_text("a\x00b\x0bc\x1f\ufffed\te") == "abcd\te"
