"""How full the pages of a printed booklet are, and how many words stand on them."""

from __future__ import annotations

import io
from dataclasses import dataclass

import numpy as np
import pypdfium2

HALF = 0.5
# The foot of a page, and its head: neither counts as filled. Shares of the sheet's height.
FOOT, HEAD = 0.06, 0.08


@dataclass(frozen=True)
class PageFill:
    """How far down each page there is ink, as a share of what is between head and foot; the
    numbers of those that are less than half full, the last page of a part aside; all words."""

    filled: tuple[float, ...]
    short: tuple[int, ...]
    words: int


def page_fill(printed: bytes) -> PageFill:
    """Of a booklet as it was printed."""
    with pypdfium2.PdfDocument(io.BytesIO(printed)) as pdf:
        pages = list(pdf)  # each is read once: that is what takes the time
        texts = [page.get_textpage() for page in pages]
        filled = [_filled(page) for page in pages]
        heads = [_head(page, text) for page, text in zip(pages, texts, strict=True)]
        whole = [str(text.get_text_range()) for text in texts]
    # a part begins with a page: its title stands below the head, which is empty, or, of what has a
    # sheet of its own (maps, gauges), in the head, and not on the page before
    begins = [
        not head or head not in before for head, before in zip(heads[1:], whole, strict=False)
    ]
    ends, words = [*begins, True], sum(len(text.split()) for text in whole)
    short = [
        number
        for number, (full, end) in enumerate(zip(filled, ends, strict=True), 1)
        if full < HALF and not end
    ]
    return PageFill(tuple(filled), tuple(short), words)


def _filled(page: pypdfium2.PdfPage) -> float:
    """How far down a page there is ink, as a share of what is between head and foot."""
    ink = np.asarray(page.render(scale=0.25, grayscale=True).to_pil().convert("L")) < 250
    rows = np.flatnonzero(ink.any(axis=1)) / ink.shape[0]
    within = rows[(rows > HEAD) & (rows < 1 - FOOT)]
    return float((within.max() - HEAD) / (1 - HEAD - FOOT)) if len(within) else 0.0


def _head(page: pypdfium2.PdfPage, text: pypdfium2.PdfTextPage) -> str:
    width, height = page.get_size()
    return str(text.get_text_bounded(0, height * (1 - 0.06), width * 0.5, height)).strip()
