"""Pictures as PNG, drawn by pdfium from their PDF."""

from __future__ import annotations

import io

import pypdfium2

from buildplan.drawing.marks import Picture
from buildplan.drawing.pdf import picture_pdf

POINTS_PER_INCH = 72


def picture_png(picture: Picture, dpi: float = 150) -> bytes:
    """The picture on white. The same picture gives the same bytes."""
    document = pypdfium2.PdfDocument(picture_pdf(picture))
    try:
        image = document[0].render(scale=dpi / POINTS_PER_INCH).to_pil()
    finally:
        document.close()
    out = io.BytesIO()
    image.save(out, format="PNG", dpi=(dpi, dpi))
    return out.getvalue()


def first_page_png(pdf: bytes, width: int) -> bytes | None:
    """The first page of a PDF on white, so many pixels wide; None where it cannot be read."""
    out = io.BytesIO()
    try:
        with pypdfium2.PdfDocument(pdf) as document:
            page = document[0]
            image = page.render(scale=width / page.get_width()).to_pil()
    except pypdfium2.PdfiumError:
        return None
    image.save(out, format="PNG")
    return out.getvalue()
