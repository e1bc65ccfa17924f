"""A page of marks to a content stream with marked content (ISO 32000-1, sections 8 to 9 and 14.6)."""

from __future__ import annotations

from dataclasses import dataclass

from signage.drawing.marks import FormMark, Group, Mark, Page, PathMark, Structure, TextMark, walk
from signage.ground.geometry import IDENTITY, Affine, Box, path_box
from signage.ground.length import POINTS_PER_MM
from signage.paint.pdf import syntax
from signage.paint.pdf.operators import OperatorList
from signage.paint.pdf.resources import Resources
from signage.paint.pdf.structure import TEXT_ELEMENTS, Element, StructureTree
from signage.paint.pdf.text_operators import show_text


@dataclass(frozen=True, slots=True)
class _Surroundings:
    """Where a mark stands: its units, the element round it, and whether that is one piece.

    ``element`` is None inside an artefact. Everything inside a figure or an artefact is one piece of
    marked content, whatever the groups in it say.
    """

    transform: Affine
    element: Element | None
    is_one_piece: bool = False

    def within(self, transform: Affine) -> _Surroundings:
        """The same with the units of a group."""
        return _Surroundings(self.transform @ transform, self.element, self.is_one_piece)


class PagePainter:
    """Paints one page; the structure tree and the resources grow on the way."""

    def __init__(self, page: Page, tree: StructureTree, resources: Resources) -> None:
        self._page = page
        self._tree = tree
        self._resources = resources
        self._to_points = Affine(POINTS_PER_MM, 0, 0, -POINTS_PER_MM, 0, page.height * POINTS_PER_MM)
        self._transform = self._to_points
        self._operators = OperatorList(lambda dots: resources.pattern(dots, self._transform))
        self._is_artefact_open = False

    def paint(self) -> bytes:
        """The operators of the page."""
        self._operators.code.append(f"{syntax.matrix(self._to_points)} cm")
        self._paint_all(self._page.marks, _Surroundings(self._to_points, self._tree.document))
        self._close_artefact()
        return "\n".join([*self._operators.code, ""]).encode()

    def _paint_all(self, marks: tuple[Mark, ...], surroundings: _Surroundings) -> None:
        for mark in marks:
            if isinstance(mark, Group):
                self._paint_group(mark, surroundings)
            elif isinstance(mark, TextMark):
                self._paint_text(mark, surroundings)
            else:
                self._paint_drawing(mark, surroundings)

    def _paint_group(self, group: Group, surroundings: _Surroundings) -> None:
        if group.structure is None or surroundings.is_one_piece:
            self._paint_members(group, surroundings)
        elif group.structure is Structure.ARTEFACT:
            self._open_artefact()
            self._paint_members(group, _Surroundings(surroundings.transform, None, is_one_piece=True))
        else:
            self._close_artefact()
            self._paint_element(group, surroundings)

    def _paint_element(self, group: Group, surroundings: _Surroundings) -> None:
        assert group.structure is not None
        assert surroundings.element is not None
        kind = group.structure.value
        language = group.language or surroundings.element.language
        element = self._tree.add_element(kind, surroundings.element, language)
        if group.structure is not Structure.FIGURE:
            self._paint_members(group, _Surroundings(surroundings.transform, element))
            return
        element.alternative = group.alternative
        element.box = self._box_in_points(group, surroundings.transform)
        self._begin_content(element)
        self._paint_members(group, _Surroundings(surroundings.transform, element, is_one_piece=True))
        self._operators.code.append("EMC")

    def _paint_members(self, group: Group, surroundings: _Surroundings) -> None:
        if group.transform == IDENTITY and group.clip is None:
            self._paint_all(group.marks, surroundings)
            return
        if not surroundings.is_one_piece:
            self._close_artefact()
        self._operators.save(None if group.transform == IDENTITY else group.transform)
        if group.clip is not None:
            self._operators.clip(group.clip)
        self._paint_all(group.marks, surroundings.within(group.transform))
        if not surroundings.is_one_piece:
            self._close_artefact()
        self._operators.restore()

    def _paint_text(self, mark: TextMark, surroundings: _Surroundings) -> None:
        if not any(run.glyphs for line in mark.lines for run in line.runs):
            return
        if surroundings.is_one_piece:
            show_text(self._operators, mark, self._resources.font)
            return
        self._close_artefact()
        element = surroundings.element
        assert element is not None
        if element.kind not in TEXT_ELEMENTS:
            element = self._tree.add_element("P", element, mark.language)
        self._begin_content(element, mark)
        show_text(self._operators, mark, self._resources.font)
        self._operators.code.append("EMC")

    def _paint_drawing(self, mark: PathMark | FormMark, surroundings: _Surroundings) -> None:
        """Lines and shapes speak only inside a figure; elsewhere they are decoration."""
        if not surroundings.is_one_piece:
            self._open_artefact()
        self._transform = surroundings.transform
        if isinstance(mark, PathMark):
            self._operators.paint(mark)
            return
        name = self._resources.form(mark.form)
        self._operators.save(mark.transform)
        self._operators.code.append(f"/{name} Do")
        self._operators.restore()

    def _begin_content(self, element: Element, text: TextMark | None = None) -> None:
        identifier = self._tree.add_content(element, text)
        self._operators.code.append(f"/{element.kind} <</MCID {identifier}>> BDC")

    def _open_artefact(self) -> None:
        if not self._is_artefact_open:
            self._is_artefact_open = True
            self._operators.code.append("/Artifact BMC")

    def _close_artefact(self) -> None:
        if self._is_artefact_open:
            self._is_artefact_open = False
            self._operators.code.append("EMC")

    def _box_in_points(self, group: Group, transform: Affine) -> Box | None:
        box = group.box if group.box is not None else _bounds(group.marks)
        return None if box is None else (transform @ group.transform).box(box)


def _bounds(marks: tuple[Mark, ...]) -> Box | None:
    """The box round marks, for a figure that does not tell its own."""
    bounds: Box | None = None
    for mark, transform in walk(marks):
        if isinstance(mark, PathMark):
            box = transform.box(path_box(mark.path))
        elif isinstance(mark, FormMark):
            box = (transform @ mark.transform).box(Box(0, 0, mark.form.size, mark.form.size))
        elif isinstance(mark, TextMark):
            box = transform.box(mark.box)
        else:
            continue
        bounds = box if bounds is None else bounds.union(box)
    return bounds
