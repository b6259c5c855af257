"""A reportlab canvas that marks what it draws, and the structure tree made from the marks.

Route: ISO 32000-1, 14.6 (marked content), 14.7 (logical structure), 14.8 (tagged PDF) and
12.5.6.5 (links). The canvas writes the marks; `finish` adds with pikepdf what reportlab
cannot write.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal

import pikepdf
from pikepdf import Array, Dictionary, Name, String
from reportlab.lib.colors import Color, toColor
from reportlab.pdfgen.canvas import Canvas

from buildplan.drawing.marks import Box

# The standard structure types that are used (ISO 32000-1, 14.8.4).
Role = Literal[
    "Document",
    "Sect",
    "P",
    "H1",
    "H2",
    "H3",
    "L",
    "LI",
    "Lbl",
    "LBody",
    "Table",
    "TR",
    "TH",
    "TD",
    "TOC",
    "TOCI",
    "Reference",
    "Link",
    "Figure",
]
Scope = Literal["Column", "Row"]
# What tells a form that is to be filled in: a key of our own in its dictionary (annex E).
BLANK = "/BPLN_Blank"


@dataclass(frozen=True)
class Content:
    """A marked piece of a page: page index from 0, marked-content number on that page."""

    page: int
    mcid: int


@dataclass(frozen=True)
class Hotspot:
    """A box on a page (index from 0) that leads to a named place; `words` say where to."""

    page: int
    box: Box
    target: str
    words: str


@dataclass(frozen=True)
class LinkTarget:
    """A place that links lead to: page index from 0, and how far up the page."""

    page: int
    top: float


@dataclass
class Element:
    """A structure element while the document is drawn; a table's head has a scope."""

    role: Role
    alt: str = ""
    box: Box | None = None
    scope: Scope | None = None
    kids: list[Element | Content | Hotspot] = field(default_factory=list)


@lru_cache(maxsize=1024)
def _colour(name: str) -> Color:
    return toColor(name)


class TaggedCanvas(Canvas):  # type: ignore[misc]
    """A canvas on which everything is either content of a structure element or an artifact."""

    def __init__(self, target: io.BytesIO, page_size: tuple[float, float], font: str) -> None:
        # not compressed here: `finish` saves, and compresses, all of it once more
        super().__init__(
            target, pagesize=page_size, invariant=1, pageCompression=0, initialFontName=font
        )
        self.room = page_size[1]  # the height that a page has for what is set on it
        self.titles = 0.0  # the height of those above what is parted: they come along to any page
        self.root = Element("Document")
        self.places: dict[str, LinkTarget] = {}
        self.blanks: dict[str, pikepdf.Object] = {}  # forms to be filled in later, by their names
        self._open = [self.root]
        self._page = 0
        self._next_mcid = 0
        self._marking = False

    def setFillColor(  # noqa: N802 (reportlab's)
        self, colour: Color | str, alpha: float | None = None
    ) -> None:
        """A colour is looked up once: reportlab takes as long for each as for a line."""
        super().setFillColor(_colour(colour) if isinstance(colour, str) else colour, alpha)

    def setStrokeColor(  # noqa: N802 (reportlab's)
        self, colour: Color | str, alpha: float | None = None
    ) -> None:
        """As `setFillColor`."""
        super().setStrokeColor(_colour(colour) if isinstance(colour, str) else colour, alpha)

    @property
    def room_below(self) -> float:
        """The height that a page has below the titles that come along."""
        return self.room - self.titles

    @contextmanager
    def element(
        self, role: Role, alt: str = "", box: Box | None = None, scope: Scope | None = None
    ) -> Iterator[None]:
        """Open a structure element; elements opened within become its kids."""
        made = Element(role, alt, box and self.on_sheet(box), scope)
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

    def hotspot(self, box: Box, target: str, words: str) -> None:
        """Let a box of the sheet lead to a named place, as part of the innermost element,
        which must be a Link."""
        assert self._open[-1].role == "Link"
        self._open[-1].kids.append(Hotspot(self._page, box, target, words))

    def place(self, name: str, top: float) -> None:
        """Name a place of this page for links to lead to."""
        assert name not in self.places, f"two places are called {name}"
        self.places[name] = LinkTarget(self._page, self.absolutePosition(0, top)[1])

    def on_sheet(self, box: Box) -> Box:
        """A box where it lies on the sheet, which may be larger than the grid it is set on."""
        return (*self.absolutePosition(*box[:2]), *self.absolutePosition(*box[2:]))

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


def finish(drawn: bytes, canvas: TaggedCanvas, *, title: str, language: str) -> bytes:
    """Add to a drawn document its structure tree, links, title and language.

    The same input gives the same bytes. KeyError when a link leads to no named place.
    """
    with pikepdf.open(io.BytesIO(drawn)) as pdf:
        tree = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
        writer = _TreeWriter(pdf, canvas.places)
        tree.K = Array([writer.element(canvas.root, tree)])
        writer.write_parents(tree)
        _mark_blanks(pdf, canvas.blanks)
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


def _mark_blanks(pdf: pikepdf.Pdf, blanks: Mapping[str, pikepdf.Object]) -> None:
    for page in pdf.pages if blanks else ():
        forms = page.obj.Resources.get("/XObject", Dictionary())
        for name, what in blanks.items():
            if f"/{name}" in forms:
                forms[f"/{name}"][BLANK] = what


class _TreeWriter:
    """Writes structure elements, and keeps for the parent tree what belongs to which."""

    def __init__(self, pdf: pikepdf.Pdf, places: Mapping[str, LinkTarget]) -> None:
        self._pdf = pdf
        self._pages = [page.obj for page in pdf.pages]
        self._places = places
        self._owners: list[list[pikepdf.Object]] = [[] for _ in self._pages]
        self._links: list[pikepdf.Object] = []

    def element(self, element: Element, parent: pikepdf.Object) -> pikepdf.Object:
        """The structure element for `element` and all below it."""
        made = self._pdf.make_indirect(
            Dictionary(Type=Name.StructElem, S=Name("/" + element.role), P=parent)
        )
        if element.alt:
            made.Alt = String(element.alt)
        if element.box is not None:
            made.A = Dictionary(O=Name.Layout, BBox=Array([round(v, 2) for v in element.box]))
        if element.scope is not None:
            made.A = Dictionary(O=Name.Table, Scope=Name("/" + element.scope))
        page = next((kid.page for kid in element.kids if isinstance(kid, Content)), None)
        if page is not None:
            made.Pg = self._pages[page]
        kids: list[object] = []
        for kid in element.kids:
            if isinstance(kid, Content):
                assert kid.page == page, "an element's own content stays on one page"
                kids.append(kid.mcid)
                self._owners[kid.page].append(made)
            elif isinstance(kid, Hotspot):
                kids.append(self._link(kid, made))
            else:
                kids.append(self.element(kid, made))
        if kids:
            made.K = kids[0] if len(kids) == 1 else Array(kids)
        return made

    def _link(self, spot: Hotspot, element: pikepdf.Object) -> pikepdf.Object:
        """A reference to the link annotation for `spot` (ISO 32000-1, 14.7.4.3)."""
        page, place = self._pages[spot.page], self._places[spot.target]
        to = Array([self._pages[place.page], Name.XYZ, 0, round(place.top, 2), 0])
        annotation = self._pdf.make_indirect(
            Dictionary(
                Type=Name.Annot,
                Subtype=Name.Link,
                Rect=Array([round(v, 2) for v in spot.box]),
                Border=Array([0, 0, 0]),
                F=4,
                Contents=String(spot.words),
                Dest=to,
                StructParent=len(self._pages) + len(self._links),
            )
        )
        if Name.Annots not in page:
            page.Annots = Array()
        page.Annots.append(annotation)
        self._links.append(element)
        return Dictionary(Type=Name.OBJR, Obj=annotation, Pg=page)

    def write_parents(self, tree: pikepdf.Object) -> None:
        """The parent tree: which elements each page's marks, and each link, belong to."""
        nums = Array()
        for index, (page, owners) in enumerate(zip(self._pages, self._owners, strict=True)):
            page.StructParents = index
            page.Tabs = Name.S
            nums.append(index)
            nums.append(self._pdf.make_indirect(Array(owners)))
        for index, element in enumerate(self._links, start=len(self._pages)):
            nums.append(index)
            nums.append(element)
        tree.ParentTree = self._pdf.make_indirect(Dictionary(Nums=nums))
        tree.ParentTreeNextKey = len(self._pages) + len(self._links)
