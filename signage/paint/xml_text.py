"""Text for XML 1.0, which has no place for most control characters."""

from xml.sax.saxutils import escape, quoteattr

_NOT_IN_XML = dict.fromkeys([*range(0x09), 0x0B, 0x0C, *range(0x0E, 0x20), 0xFFFE, 0xFFFF])
"""Characters outside the production Char (XML 1.0, section 2.2)."""


def xml_text(text: str) -> str:
    """Text between tags."""
    return escape(text.translate(_NOT_IN_XML))


def xml_attribute(text: str) -> str:
    """The value of an attribute, with its quotation marks."""
    return quoteattr(text.translate(_NOT_IN_XML))
