"""The framework of a text: each character a flat piece.

The characters of a word are parts of an assembly, with low bars between them and balloons wherever
two joints face one another.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from buildplan.framework.assembly import Spacer, build_assembly, part_joint
from buildplan.framework.model import BalloonType, Framework, Part
from buildplan.patterns.cell_outlines import Glyph
from buildplan.patterns.flat_frames import build_flat, labelled
from buildplan.patterns.letter_keys import Letters
from buildplan.patterns.letter_rows import characters
from buildplan.patterns.letter_spacing import facing
from buildplan.patterns.letter_strokes import BARS
from buildplan.patterns.lettering import glyph


def build_letters(
    name: str, balloons: Mapping[str, BalloonType], letters: Letters, height: int
) -> Framework:
    """Build the framework of a text, `height` cells high: one character, or a word as an
    assembly."""
    row = characters(letters.text, height)
    names, drawn = list(row), [glyph(one, height) for one in row.values()]
    if len(drawn) == 1:
        return build_flat(name, balloons, letters, drawn[0], 0.0, reads=True)
    parts: list[Part] = []
    spacers: list[Spacer] = []
    x = 0.0
    for i, one in enumerate(drawn):
        if i:
            gap, pairs = facing(drawn[i - 1], one)
            x += gap
            spacers += _spacers((names[i - 1], drawn[i - 1]), (names[i], one), pairs, letters)
        inked = _as_bar(letters) if row[names[i]] in BARS else letters
        framework = build_flat(names[i], balloons, inked, one, x, reads=True)
        parts.append(Part(names[i], framework, drawing=letters.text))
    whole = build_assembly(name, balloons, parts, [], spacers, letters.lock)
    laid = {joint: at for part in whole.parts for joint, at in part.framework.laid.items()}
    return replace(whole, laid=laid)


def _as_bar(letters: Letters) -> Letters:
    """The balloons of a bar, which is no letter and may be told from them by its colour."""
    return letters.model_copy(update={"long": letters.bar or letters.long})


def _spacers(
    left: tuple[str, Glyph],
    right: tuple[str, Glyph],
    pairs: list[tuple[int, int]],
    letters: Letters,
) -> Iterator[Spacer]:
    one, other = labelled(left[1]), labelled(right[1])
    for i, j in pairs:
        for start, finish in ((one.front[i], other.front[j]), (one.back[i], other.back[j])):
            ends = part_joint(left[0], start), part_joint(right[0], finish)
            yield Spacer(*ends, letters.brace)
