"""Text for XML 1.0, which has no place for most control characters.

The standard library's own escaping brings a client for HTTP and TLS with it, which takes longer to load
than a sheet to paint.
"""

_NOT_IN_XML = dict.fromkeys([*range(0x09), 0x0B, 0x0C, *range(0x0E, 0x20), 0xFFFE, 0xFFFF])
"""Characters outside the production Char (XML 1.0, section 2.2)."""

_IN_TEXT = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})
_IN_ATTRIBUTE = _IN_TEXT | str.maketrans({"\n": "&#10;", "\r": "&#13;", "\t": "&#9;"})
"""Line ends and tabs of an attribute would come back as blanks (XML 1.0, section 3.3.3)."""


def xml_text(text: str) -> str:
    """Text between tags."""
    return text.translate(_NOT_IN_XML).translate(_IN_TEXT)


def xml_attribute(text: str) -> str:
    """The value of an attribute, with its quotation marks."""
    value = text.translate(_NOT_IN_XML).translate(_IN_ATTRIBUTE)
    if '"' not in value:
        return f'"{value}"'
    if "'" not in value:
        return f"'{value}'"
    return '"{}"'.format(value.replace('"', "&quot;"))
