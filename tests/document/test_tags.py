"""Tags say the truth: a figure's box is where its ink is, a head's scope is what it heads."""

from __future__ import annotations

import io
from collections.abc import Iterator

import numpy as np
import pikepdf
import pypdfium2
import pytest

from buildplan.document.blocks import PictureRow, Shown, Words
from buildplan.document.layout import Boxed, Columns, Filled
from buildplan.document.paper import PAPERS, Paper, large_print
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Grid
from buildplan.drawing.marks import Ink, Picture, Polyline
from buildplan.language.voice import Voice

RED = "#FF0000"
NEAR_PT = 1.0


def red(width: float, height: float, alt: str) -> Picture:
    """A picture that is red from edge to edge."""
    corners = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return Picture(width, height, (Polyline(corners, Ink(RED, None), closed=True),), alt)


def elements(node: pikepdf.Object, role: str) -> Iterator[pikepdf.Object]:
    if isinstance(node, pikepdf.Dictionary) and "/S" in node:
        if pikepdf.Name("/" + role) == node.S:
            yield node
        kids = node.get("/K", pikepdf.Array())
        for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
            yield from elements(kid, role)


def root(pdf: pikepdf.Pdf) -> pikepdf.Object:
    return pdf.Root.StructTreeRoot.K[0]


@pytest.mark.parametrize("paper", [PAPERS["a4"], large_print(PAPERS["letter"])])
@pytest.mark.parametrize("place", ["alone", "columns", "row", "boxed", "filled", "table"])
def test_a_figures_box_is_where_its_ink_is(paper: Paper, place: str) -> None:
    """ISO 32000-1, 14.8.5.4.3 (BBox), against the page as PDFium draws it."""
    picture = red(90.0, 60.0, "red")
    blocks = {
        "alone": Shown(picture, 1.3),
        "columns": Columns([[Words("left")], [Words("above"), Shown(picture)]]),
        "row": PictureRow([picture]),
        "boxed": Boxed([Words("within"), Shown(picture)], line=None),
        "filled": Filled([Words("above")], lambda w, h: red(w, h, "red"), [Words("below")]),
        "table": Grid(("", "b"), [("a", "b")], (1, 1), pictures={1: picture}),
    }
    section = Section("Title", [Words("first"), blocks[place]], titled=True)
    data = print_document(Document([section], paper, Voice(), "-"))
    with pikepdf.open(io.BytesIO(data)) as pdf:
        (figure,) = elements(root(pdf), "Figure")
        told = [float(v) for v in figure.A.BBox]
        assert str(figure.A.O) == "/Layout"
    with pypdfium2.PdfDocument(data) as document:
        page, scale = document[0], 4
        height = page.get_height()
        pixels = np.asarray(page.render(scale=scale).to_pil().convert("RGB")).astype(int)
    rows, columns = np.nonzero((pixels[..., 0] > 200) & (pixels[..., 1] < 60))
    found = [
        columns.min() / scale,
        height - (rows.max() + 1) / scale,
        (columns.max() + 1) / scale,
        height - rows.min() / scale,
    ]
    assert told == pytest.approx(found, abs=NEAR_PT)


@pytest.mark.parametrize("row_heads", [False, True])
def test_heads_of_columns_and_rows_have_their_own_scope(row_heads: bool) -> None:
    """ISO 32000-1, 14.8.5.7: a head's Scope says whether it heads its column or its row."""
    rows = [(f"row {n}", "value") for n in range(90)]
    grid = Grid(("First", "Second"), rows, (1, 1), row_heads=row_heads)
    document = Document([Section("-", [grid])], PAPERS["a4"], Voice(), "-")
    with pikepdf.open(io.BytesIO(print_document(document))) as pdf:
        tables = list(elements(root(pdf), "Table"))
        assert len(tables) > 1, "it runs on, and each page's table has its heads"
        for table in tables:
            head, *others = elements(table, "TR")
            assert scopes(head) == ["/Column", "/Column"]
            for row in others:
                assert scopes(row) == (["/Row"] if row_heads else [])


def scopes(row: pikepdf.Object) -> list[str]:
    return [str(cell.A.Scope) for cell in elements(row, "TH")]
