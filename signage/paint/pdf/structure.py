"""The structure tree of tagged PDF (ISO 32000-1, section 14.7; ISO 14289-1)."""

from __future__ import annotations

from dataclasses import dataclass, field

from signage.drawing.marks import TextMark
from signage.ground.geometry import Box
from signage.paint.pdf import syntax
from signage.paint.pdf.reportlab_adapter import PdfFile

TEXT_ELEMENTS = frozenset({"P", "H1", "H2", "H3", "Lbl"})
"""Elements that hold text themselves; in all others a text becomes a paragraph of its own."""

_CHILDREN_OF_LIST = frozenset({"L", "LI", "Caption"})
_CHILDREN_OF_ITEM = frozenset({"Lbl", "LBody"})
"""What a list and its items may hold (ISO 32000-1, table 336)."""


@dataclass(slots=True, eq=False)
class Content:
    """A marked-content sequence: its page, its number there, and the text if it is text."""

    page: int
    identifier: int
    text: TextMark | None


@dataclass(slots=True, eq=False)
class Element:
    """An element of the tree. ``box`` is in points from the left bottom corner of the page."""

    kind: str
    parent: Element | None
    language: str
    alternative: str | None = None
    box: Box | None = None
    children: list[Element | Content] = field(default_factory=list)
    number: int = 0
    is_implied: bool = False

    @property
    def is_empty(self) -> bool:
        """Whether nothing on a page belongs to the element."""
        return all(isinstance(child, Element) and child.is_empty for child in self.children)


class StructureTree:
    """Elements and their content, gathered while pages are painted and written at the end."""

    def __init__(self, language: str) -> None:
        self.document = Element("Document", None, language)
        self._pages: list[list[Element]] = []

    def begin_page(self) -> int:
        """The key of a new page in the parent tree (StructParents)."""
        self._pages.append([])
        return len(self._pages) - 1

    def add_element(self, kind: str, parent: Element, language: str) -> Element:
        """A new last child of an element; an item or a body of a list that is missing between is put in."""
        home = parent
        if home.kind == "L" and kind not in _CHILDREN_OF_LIST:
            home = _add_child("LI", home, home.language, is_implied=True)
        if home.kind == "LI" and kind not in _CHILDREN_OF_ITEM:
            last = home.children[-1] if home.children else None
            if isinstance(last, Element) and last.is_implied:
                home = last
            else:
                home = _add_child("LBody", home, home.language, is_implied=True)
        return _add_child(kind, home, language)

    def add_content(self, element: Element, text: TextMark | None = None) -> int:
        """A new piece of content of an element on the page in hand; returns its identifier (MCID)."""
        page = len(self._pages) - 1
        identifier = len(self._pages[page])
        self._pages[page].append(element)
        element.children.append(Content(page, identifier, text))
        return identifier

    def write(self, file: PdfFile, pages: list[int]) -> int:
        """Write tree and parent tree; returns the number of the root. ``pages`` are object numbers."""
        self._give_texts_their_language(self.document)
        root = file.reserve()
        self._write_element(file, self.document, root, pages)
        rows = []
        for key, elements in enumerate(self._pages):
            references = syntax.array([syntax.reference(element.number) for element in elements])
            rows.append(f"{key} {syntax.reference(file.add(references))}")
        parent_tree = file.add(syntax.dictionary({"Nums": syntax.array(rows)}))
        entries = {
            "Type": "/StructTreeRoot",
            "K": syntax.array([syntax.reference(self.document.number)]),
            "ParentTree": syntax.reference(parent_tree),
            "ParentTreeNextKey": str(len(self._pages)),
        }
        file.fill(root, syntax.dictionary(entries))
        return root

    def _give_texts_their_language(self, element: Element) -> None:
        """Where an element mixes texts, each that needs words of its own gets a span."""
        texts = [child for child in element.children if isinstance(child, Content) and child.text is not None]
        for position, child in enumerate(element.children):
            if isinstance(child, Element):
                self._give_texts_their_language(child)
            elif len(texts) > 1 and child.text is not None and _needs_own_element(child.text, element):
                span = Element("Span", element, child.text.language, children=[child])
                element.children[position] = span
                self._pages[child.page][child.identifier] = span
        if len(texts) == 1 and texts[0].text is not None and element.kind in TEXT_ELEMENTS:
            element.language = texts[0].text.language

    def _write_element(self, file: PdfFile, element: Element, parent: int, pages: list[int]) -> None:
        element.number = file.reserve()
        entries = {"Type": "/StructElem", "S": f"/{element.kind}", "P": syntax.reference(parent)}
        outer = element.parent.language if element.parent is not None else ""
        if element.language != outer:
            entries["Lang"] = syntax.text_string(element.language)
        if element.alternative is not None:
            entries["Alt"] = syntax.text_string(element.alternative)
        if element.box is not None:
            box = element.box
            corners = syntax.numbers((box.x, box.y, box.right, box.bottom))
            entries["A"] = f"<</O /Layout /Placement /Block /BBox [{corners}]>>"
        words = _words_in_place_of(element)
        if words is not None:
            entries["ActualText"] = syntax.text_string(words)
        kids = []
        home = next((child.page for child in element.children if isinstance(child, Content)), None)
        if home is not None:
            entries["Pg"] = syntax.reference(pages[home])
        for child in element.children:
            if isinstance(child, Content):
                kids.append(str(child.identifier))
            elif not child.is_empty:
                self._write_element(file, child, element.number, pages)
                kids.append(syntax.reference(child.number))
        if kids:
            entries["K"] = kids[0] if len(kids) == 1 else syntax.array(kids)
        file.fill(element.number, syntax.dictionary(entries))


def _add_child(kind: str, parent: Element, language: str, is_implied: bool = False) -> Element:
    element = Element(kind, parent, language, is_implied=is_implied)
    parent.children.append(element)
    return element


def _needs_own_element(text: TextMark, element: Element) -> bool:
    return text.is_right_to_left or text.language != element.language


def _words_in_place_of(element: Element) -> str | None:
    """The text of a right-to-left paragraph, in the order of reading.

    It stands here and never in the content stream, where readers would turn it round once more.
    """
    texts = [child.text for child in element.children if isinstance(child, Content)]
    if element.alternative is not None or len(texts) != 1 or texts[0] is None:
        return None
    text = texts[0]
    if not text.is_right_to_left or not text.lines:
        return None
    return text.text[text.lines[0].start : text.lines[-1].end].strip()
