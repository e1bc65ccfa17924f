"""The metadata packet (ISO 16684-1) that says what the file is and that it is PDF/UA-1."""

from datetime import datetime

from signage.paint.xml_text import xml_attribute, xml_text

_PACKET = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" \
xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" \
xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li><rdf:li xml:lang={tag}>{title}</rdf:li>\
</rdf:Alt></dc:title>
<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<pdf:Producer>{producer}</pdf:Producer>
<pdfuaid:part>1</pdfuaid:part>
<xmp:CreateDate>{date}</xmp:CreateDate>
<xmp:ModifyDate>{date}</xmp:ModifyDate>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""


def metadata_packet(title: str, language: str, producer: str, date: datetime) -> bytes:
    """The packet in UTF-8. ``date`` has a time zone."""
    return _PACKET.format(
        title=xml_text(title),
        tag=xml_attribute(language),
        language=xml_text(language),
        producer=xml_text(producer),
        date=date.isoformat(timespec="seconds"),
    ).encode()
