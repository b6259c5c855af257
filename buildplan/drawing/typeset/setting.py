"""A line of text as what is drawn from left to right: plain text, and shapes of other signs.

Plain is what our own face draws sign by sign. All else (letters that join or are written from the
right, marks above and below, signs that our face has not) is shaped by HarfBuzz in runs of one
direction and one font.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby

import uharfbuzz as hb

from buildplan.drawing.typeset.font_files import (
    FontFile,
    fonts_of_machine,
    holds,
    named_fonts,
    opened,
)
from buildplan.drawing.typeset.order import as_seen, line_levels, mirrored
from buildplan.language.isolates import END, OPENING, without_isolates
from buildplan.language.told import NoSignError, no_sign

# Marks, and joiners, which are drawn with what stands before them.
WITH_BEFORE = frozenset(("Mn", "Mc", "Me", "Cf"))
UNSEEN = frozenset(("Cf", "Cc", "Zl", "Zp", "Cs"))
# Signs that choose among the forms of what stands before them (Unicode Standard, 23.4); a font that
# has one form alone draws that, and nothing for them.
SELECTORS = frozenset(map(chr, (*range(0xFE00, 0xFE10), *range(0xE0100, 0xE01F0))))


@dataclass(frozen=True)
class OwnFace:
    """A face of ours: its file, whether it is bold, and the signs that it draws one by one.
    Lines of one that is `from_right` are written from the right, whatever they begin with."""

    file: FontFile
    bold: bool
    plain: frozenset[str]
    from_right: bool = False


@dataclass(frozen=True)
class PlacedGlyph:
    """A glyph of a font and where its origin lies, in units of the font."""

    number: int
    x: int
    y: int


@dataclass(frozen=True)
class Letterform:
    """What is drawn for some signs of a text that are shaped together: `advance` in units of the
    font, `text` the signs from left to right: readers of PDF turn round sign by sign what is
    written from the right (measured with pdfium and poppler). Names with brackets or numbers they
    read otherwise than they were written; from an ActualText of the line (ISO 32000-1, 14.9.4)
    poppler reads worse, for it turns that round as well."""

    font: FontFile
    glyphs: tuple[PlacedGlyph, ...]
    advance: int
    text: str


def _unset_signs(text: str, own: OwnFace) -> tuple[str, ...]:
    """The signs of a text that no font has, each once."""
    signs = dict.fromkeys(sign for sign in text if not _is_undrawn(sign) and sign not in own.plain)
    fonts = _fonts(own) if signs else ()
    return tuple(sign for sign in signs if not any(holds(font, sign) for font in fonts))


@lru_cache(maxsize=4096)
def set_line(text: str, own: OwnFace, named: tuple[FontFile, ...]) -> tuple[str | Letterform, ...]:
    """A line as it is drawn from left to right. `named` are the fonts that are named, on which what
    is remembered rests.

    Raises NoSignError.
    """
    assert named == named_fonts()
    lost = _unset_signs(text, own)
    if lost:
        read = without_isolates(text)
        raise NoSignError(no_sign(lost, read), lost, read)
    # a sign for each letter with its mark, where there is one
    text = "".join(sign for sign in unicodedata.normalize("NFC", text) if not _is_moving(sign))
    # a space at an end parts it from what is set beside it, whichever way round the line is
    words = text.strip(" ")
    if not words:
        return (text,) if text else ()
    at = text.index(words)
    found = zip(words, line_levels(words, from_right=own.from_right), strict=True)
    drawn = [(sign, level) for sign, level in found if not _is_isolating(sign)]
    line = _pieces("".join(sign for sign, _ in drawn), [level for _, level in drawn], own)
    pieces = (text[:at], *line, text[at + len(words) :])
    return tuple(piece for piece in pieces if piece)


def set_shapes(text: str, own: OwnFace, named: tuple[FontFile, ...]) -> Iterator[Letterform]:
    """The same line with its plain text as shapes too. Raises NoSignError."""
    for piece in set_line(text, own, named):
        if isinstance(piece, str):
            yield from _shapes(piece, own.file, turned=False)
        else:
            yield piece


def _pieces(text: str, places: Sequence[int], own: OwnFace) -> Iterator[str | Letterform]:
    shaped = [sign not in own.plain for sign in text]
    for at in range(len(text) - 1, 0, -1):
        if unicodedata.category(text[at]) in WITH_BEFORE and text[at - 1] != " ":
            shaped[at - 1] = True
    run_of: dict[int, int] = {}
    runs: list[tuple[int, int]] = []
    for _, group in groupby(range(len(text)), lambda at: (shaped[at], places[at])):
        signs = list(group)
        runs.append((signs[0], signs[-1] + 1))
        run_of.update(dict.fromkeys(signs, len(runs) - 1))
    # the signs of a run lie side by side however the line is turned
    for number in dict.fromkeys(run_of[at] for at in as_seen(places)):
        first, last = runs[number]
        run, turned = text[first:last], places[first] % 2 == 1
        if shaped[first]:
            parts = list(_by_font(run, own))
            for font, part in reversed(parts) if turned else parts:
                yield from _shapes(part, font, turned=turned)
        else:
            yield "".join(map(mirrored, reversed(run))) if turned else run


def _by_font(run: str, own: OwnFace) -> Iterator[tuple[FontFile, str]]:
    """A run in parts of one font: the first that has all of it, else sign by sign."""
    fonts = _fonts(own)
    whole = next((font for font in fonts if _has(font, run)), None)
    if whole is not None:
        yield whole, run
        return
    chosen: list[FontFile] = []
    for sign in run:
        again = chosen and (_is_undrawn(sign) or unicodedata.category(sign) in WITH_BEFORE)
        fitting = (font for font in (*chosen[-1:], *fonts) if holds(font, sign))
        chosen.append(chosen[-1] if again else next(fitting, own.file))
    for font, group in groupby(range(len(run)), chosen.__getitem__):
        yield font, "".join(run[at] for at in group)


def _fonts(own: OwnFace) -> tuple[FontFile, ...]:
    further = (*named_fonts(), *fonts_of_machine())
    return (own.file, *(FontFile(font.path, font.index, own.bold) for font in further))


def _has(font: FontFile, run: str) -> bool:
    return all(_is_undrawn(sign) or holds(font, sign) for sign in run)


def _is_unseen(sign: str) -> bool:
    return unicodedata.category(sign) in UNSEEN


def _is_undrawn(sign: str) -> bool:
    return _is_unseen(sign) or sign in SELECTORS


def _is_isolating(sign: str) -> bool:
    return sign in OPENING or sign == END


def _is_moving(sign: str) -> bool:
    """Whether a sign is no part of a line: all that is unseen but the two joiners, and isolates,
    which say in what order the line is seen."""
    return _is_unseen(sign) and sign not in "\u200c\u200d" and not _is_isolating(sign)


def _shapes(run: str, font: FontFile, *, turned: bool) -> Iterator[Letterform]:
    """What is drawn of a run, from left to right."""
    buffer = hb.Buffer()
    buffer.add_str(run)
    buffer.guess_segment_properties()
    buffer.direction = "rtl" if turned else "ltr"
    hb.shape(opened(font), buffer)
    drawn = list(zip(buffer.glyph_infos, buffer.glyph_positions, strict=True))
    starts = sorted({info.cluster for info, _ in drawn})
    ends = dict(zip(starts, [*starts[1:], len(run)], strict=True))
    for start, group in groupby(drawn, lambda one: one[0].cluster):
        glyphs, pen = [], 0
        for info, place in group:
            glyphs.append(PlacedGlyph(info.codepoint, pen + place.x_offset, place.y_offset))
            pen += place.x_advance
        signs = run[start : ends[start]]
        yield Letterform(font, tuple(glyphs), pen, signs[::-1] if turned else signs)
