"""Copies of a booklet that was drawn once: in each, the words that differ, its serial and its seal.

A copy is made in the same way whether it is the only one or one of thousands, so it has the same
bytes.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache, partial

import pikepdf

from buildplan.business.copies.digests import ObjectName, lasting_digests, number_pages
from buildplan.business.copies.serial import SoldCopy, seal
from buildplan.document.blanks import blanks_of, fill_blanks
from buildplan.drawing.typeset.font_files import FontFile, with_fonts

# A copy takes less than a tenth of a second; to start a process for it takes longer than this many.
WORTH_PROCESSES = 64


@dataclass(frozen=True)
class Sold:
    """What a sold copy is, and the words for the blanks of its pages, by their names; the fonts
    that its seller names."""

    copy: SoldCopy
    words: Mapping[str, str]
    fonts: tuple[FontFile, ...] = ()


@dataclass(frozen=True)
class Studied:
    """What is the same in all copies of a drawn file: which objects are its blanks, and the digests
    of those that hang on no blank."""

    blanks: tuple[ObjectName, ...]
    digests: Mapping[ObjectName, str]


@lru_cache(maxsize=2)
def _studied(drawn: bytes) -> Studied:
    with pikepdf.open(io.BytesIO(drawn)) as pdf:
        number_pages(pdf)
        blanks = blanks_of(pdf)
        return Studied(blanks, lasting_digests(pdf, blanks))


def sold_copy(drawn: bytes, key: bytes, sold: Sold) -> bytes:
    """The file of one copy, sealed. Same input, same bytes."""
    known = _studied(drawn)
    with pikepdf.open(io.BytesIO(drawn)) as pdf:
        with with_fonts(sold.fonts):
            fill_blanks(pdf, known.blanks, sold.words)
        seal(pdf, sold.copy, key, known.digests)
        out = io.BytesIO()
        pdf.save(out, min_version="1.7", deterministic_id=True)
    return out.getvalue()


def sold_copies(drawn: bytes, key: bytes, all_sold: Sequence[Sold]) -> Iterator[bytes]:
    """The file of each copy, in the order given; many of them by all cores."""
    made = partial(sold_copy, drawn, key)
    if len(all_sold) < WORTH_PROCESSES:
        yield from map(made, all_sold)
        return
    from buildplan.fitting.workers import each_in_turn  # takes longer to import than a few copies

    yield from each_in_turn(made, all_sold)
