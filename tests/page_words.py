"""The words of printed pages and where they stand, as PDFium reads them: a tenth of the time that
pypdf takes, and an outside reader as well."""

from __future__ import annotations

import ctypes
from collections.abc import Iterator
from pathlib import Path

import pypdfium2
import pypdfium2.raw as pdfium


def words_of_pages(printed: bytes | Path) -> list[str]:
    """The words of each page, white space folded."""
    with pypdfium2.PdfDocument(printed) as pdf:
        return [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]


def words_of(printed: bytes | Path) -> str:
    """All words of a document, white space folded."""
    return " ".join(words_of_pages(printed))


def origins(page: pypdfium2.PdfPage) -> Iterator[tuple[float, float]]:
    """Where each visible sign of a page stands: its origin on the baseline, in points."""
    text = page.get_textpage()
    x, y = ctypes.c_double(), ctypes.c_double()
    for at in range(text.count_chars()):
        if (
            not pdfium.FPDFText_IsGenerated(text.raw, at)
            and not chr(pdfium.FPDFText_GetUnicode(text.raw, at)).isspace()
        ):
            assert pdfium.FPDFText_GetCharOrigin(text.raw, at, x, y)
            yield x.value, y.value
