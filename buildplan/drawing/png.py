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
