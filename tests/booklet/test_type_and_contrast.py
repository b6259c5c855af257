"""Type large enough to read, and text and what is new standing out, on every shipped design.

Contrast is that of WCAG 2.2, success criterion 1.4.3; other thresholds are our own.
"""

from __future__ import annotations

import ctypes
import io
import math

import numpy as np
import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
import shipped
from type_sizes import type_sizes

from buildplan.drawing.colours import contrast
from buildplan.drawing.marks import Look, Stamp
from buildplan.drawing.symbols import look_marks

TEXT_PT, PICTURE_PT = 10.0, 8.0
LEAST_CONTRAST = 4.5

on_paper = pytest.mark.parametrize(("name", "paper"), shipped.ON_PAPER)
of_each = pytest.mark.parametrize("name", shipped.SHIPPED)


@on_paper
def test_type_is_large_enough(name: str, paper: str) -> None:
    with pikepdf.open(io.BytesIO(shipped.printed(name, paper))) as pdf:
        for number, page in enumerate(pdf.pages, start=1):
            for figure, size in type_sizes(page):
                least = PICTURE_PT if figure else TEXT_PT
                assert size >= least - 1e-6, f"page {number}: {size:.1f} pt"


def hexed(r: int, g: int, b: int) -> str:
    return f"#{r:02X}{g:02X}{b:02X}"


def texts_taken_off(page: pypdfium2.PdfPage) -> list[tuple[tuple[float, ...], str]]:
    """Take every line of text off a page; the box and the colour of each."""
    found = []
    lines = [o for o in page.get_objects(max_depth=1) if o.type == pdfium.FPDF_PAGEOBJ_TEXT]
    for line in lines:
        mode = pdfium.FPDFTextObj_GetTextRenderMode(line.raw)
        if mode == pdfium.FPDF_TEXTRENDERMODE_FILL:
            r, g, b, a = (ctypes.c_uint() for _ in range(4))
            assert pdfium.FPDFPageObj_GetFillColor(line.raw, r, g, b, a)
            found.append((line.get_bounds(), hexed(r.value, g.value, b.value)))
            page.remove_obj(line)
    return found


@of_each
def test_text_stands_out_from_its_ground(name: str) -> None:
    """WCAG 2.2, success criterion 1.4.3: 4.5:1, against what lies under the letters once they
    are taken off the page (the median of the pixels there; halos stay on)."""
    scale = 1.5
    with pypdfium2.PdfDocument(shipped.printed(name)) as pdf:
        # every kind of page is among the first and the last
        for number in (*range(22), *range(len(pdf) - 6, len(pdf))):
            page = pdf[number]
            height = page.get_height()
            lines = texts_taken_off(page)
            image = np.asarray(page.render(scale=scale).to_pil().convert("RGB"))
            for (left, low, right, high), colour in lines:
                rows = slice(int((height - high) * scale), int((height - low) * scale) + 1)
                columns = slice(int(left * scale), int(right * scale) + 1)
                ground = image[rows, columns].reshape(-1, 3)
                if not len(ground):
                    continue
                middle = hexed(*(int(v) for v in np.median(ground, axis=0)))
                ratio = contrast(colour, middle)
                assert ratio >= LEAST_CONTRAST, f"page {number + 1}: {colour} on {middle}"


def inks(look: Look) -> tuple[set[str], set[str]]:
    """Fills and lines of a look."""
    marks = look_marks(look)
    return (
        {mark.ink.fill for mark in marks if mark.ink.fill},
        {mark.ink.stroke for mark in marks if mark.ink.stroke},
    )


@of_each
def test_what_stands_is_quieter_than_what_is_new(name: str) -> None:
    """On paper white: lines of what stands have less contrast than those of any new balloon,
    and each balloon's fillings have less as it stands than when it was new."""
    looks = {
        mark.look
        for at in shipped.pictures(name)
        if at.picture.alt.startswith(("Close-up of step", "Step "))
        for mark in at.picture.marks
        if isinstance(mark, Stamp)
    }
    lines = {
        state: [
            max(contrast(line, "#FFFFFF") for line in found)
            for look in looks
            if look.state == state and look.form in ("link", "round") and (found := inks(look)[1])
        ]
        for state in ("new", "done", "outline")
    }
    assert max(lines["done"] + lines["outline"]) < 0.75 * min(lines["new"])
    for colour in {look.colour for look in looks}:
        fills = {
            state: max(
                (
                    contrast(fill, "#FFFFFF")
                    for look in looks
                    if look.colour == colour and look.state == state and look.form == "body"
                    for fill in inks(look)[0]
                ),
                default=math.nan,
            )
            for state in ("new", "done")
        }
        # a colour that is not shown in both states has nothing to compare
        assert not fills["done"] >= fills["new"]
