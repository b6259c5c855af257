"""A reportlab canvas that marks what it draws, and the structure tree made from the marks.

Route: ISO 32000-1, 14.6 (marked content), 14.7 (logical structure) and 14.8 (tagged PDF).
The canvas writes the marks; `finish` adds with pikepdf what reportlab cannot write.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field

import pikepdf
from pikepdf import Array, Dictionary, Name, String
from reportlab.pdfgen.canvas import Canvas

Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Content:
    """A marked piece of a page: page index from 0, marked-content number on that page."""

    page: int
    mcid: int


@dataclass
class Element:
    """A structure element while the document is drawn."""

    role: str
    alt: str = ""
    box: Box | None = None
    kids: list[Element | Content] = field(default_factory=list)


class TaggedCanvas(Canvas):  # type: ignore[misc]
    """A canvas on which everything is either content of a structure element or an artifact."""

    def __init__(self, target: io.BytesIO, page_size: tuple[float, float], font: str) -> None:
        super().__init__(
            target, pagesize=page_size, invariant=1, pageCompression=1, initialFontName=font
        )
        self.root = Element("Document")
        self._open = [self.root]
        self._page = 0
        self._next_mcid = 0
        self._marking = False

    @contextmanager
    def element(self, role: str, alt: str = "", box: Box | None = None) -> Iterator[None]:
        """Open a structure element; elements opened within become its kids."""
        made = Element(role, alt, box)
        self._open[-1].kids.append(made)
        self._open.append(made)
        try:
            yield
        finally:
            self._open.pop()

    @contextmanager
    def content(self) -> Iterator[None]:
        """Mark what is drawn within as content of the innermost open element."""
        element = self._open[-1]
        element.kids.append(Content(self._page, self._next_mcid))
        with self._mark(f"/{element.role} <</MCID {self._next_mcid}>> BDC"):
            yield
        self._next_mcid += 1

    @contextmanager
    def artifact(self) -> Iterator[None]:
        """Mark what is drawn within as decoration that no reader needs read out."""
        with self._mark("/Artifact BMC"):
            yield

    @contextmanager
    def _mark(self, begin: str) -> Iterator[None]:
        assert not self._marking, "marked content does not nest"
        self._marking = True
        self._code.append(begin)
        yield
        self._code.append("EMC")
        self._marking = False

    def showPage(self) -> None:  # noqa: N802 (reportlab's name)
        """End the page."""
        super().showPage()
        self._page += 1
        self._next_mcid = 0


def finish(drawn: bytes, root: Element, *, title: str, language: str) -> bytes:
    """Add to a drawn document its structure tree, title and language.

    The same input gives the same bytes.
    """
    with pikepdf.open(io.BytesIO(drawn)) as pdf:
        parents: dict[int, list[pikepdf.Object]] = {i: [] for i in range(len(pdf.pages))}
        tree = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
        tree.K = Array([_structure(pdf, root, tree, parents)])
        nums = Array()
        for index, owners in parents.items():
            nums.append(index)
            nums.append(pdf.make_indirect(Array(owners)))
            page = pdf.pages[index].obj
            page.StructParents = index
            page.Tabs = Name.S
        tree.ParentTree = pdf.make_indirect(Dictionary(Nums=nums))
        tree.ParentTreeNextKey = len(pdf.pages)
        pdf.Root.StructTreeRoot = tree
        pdf.Root.MarkInfo = Dictionary(Marked=True)
        pdf.Root.Lang = String(language)
        pdf.Root.ViewerPreferences = Dictionary(DisplayDocTitle=True)
        with pdf.open_metadata(set_pikepdf_as_editor=False) as meta:
            meta["dc:title"] = title
            meta["dc:language"] = {language}
            meta["pdfuaid:part"] = "1"
        out = io.BytesIO()
        pdf.save(out, min_version="1.7", deterministic_id=True)
    return out.getvalue()


def _structure(
    pdf: pikepdf.Pdf,
    element: Element,
    parent: pikepdf.Object,
    parents: dict[int, list[pikepdf.Object]],
) -> pikepdf.Object:
    made = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name("/" + element.role), P=parent))
    if element.alt:
        made.Alt = String(element.alt)
    if element.box is not None:
        made.A = Dictionary(O=Name.Layout, BBox=Array([round(v, 2) for v in element.box]))
    if element.role == "TH":
        made.A = Dictionary(O=Name.Table, Scope=Name.Column)
    kids = Array()
    for kid in element.kids:
        if isinstance(kid, Content):
            page = pdf.pages[kid.page].obj
            kids.append(Dictionary(Type=Name.MCR, Pg=page, MCID=kid.mcid))
            parents[kid.page].append(made)
        else:
            kids.append(_structure(pdf, kid, made, parents))
    made.K = kids
    return made
