"""The chains of a piece written out row by row, where a diagram of it would be too crowded."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from buildplan.drawing.line_art import INK, SOFT, TYPE
from buildplan.drawing.map_style import (
    SINGLE,
    chain_style,
    joint_marks,
    joint_radius,
    link_marks,
)
from buildplan.drawing.marks import Label, Mark, Picture
from buildplan.framework.model import Framework
from buildplan.sequence.courses import built_pieces, loose_chains

# a chain's letter (None of a balloon that is called by its joints), its number, its joints
ChainRow = tuple[str | None, int, Sequence[str]]
ROW_GAP = 14.0
LINE_GAPS = (16.0, 12.0, 9.0)  # between two lines of discs: the widest that takes no more sheets


OF_SINGLES = -1  # in place of a chain's number


def _beside(
    rows: Sequence[ChainRow], width: float, ends: float, step: float
) -> list[list[tuple[float, ChainRow]]]:
    """Rows put on lines, as many beside one another as there is room for, each with its left
    edge; a row is `ends` wide and a `step` more for each joint after its first."""
    lines: list[list[tuple[float, ChainRow]]] = []
    right = math.inf
    for row in rows:
        wide = ends + step * (len(row[2]) - 1)
        if right + wide - ROW_GAP > width:
            lines.append([])
            right = 0.0
        lines[-1].append((right, row))
        right += wide
    return lines


def chain_rows(
    framework: Framework,
    width: float,
    height: float,
    key: tuple[float, list[Mark]],
    alt: str,
) -> tuple[Picture, ...]:
    """Each chain as a row of joints, walked from end to end, short ones beside one another; a
    joint that an earlier row has shown is pale: there the two chains meet. Singles come last.
    The `key` (its height and marks) stands at the foot of each sheet."""
    radius = joint_radius(framework)
    left, step = 26.0, 2 * radius + 14
    fit = max(2, int((width - left - 2 * radius) // step) + 1)
    rows: list[ChainRow] = []
    alone = {letter for _, own in built_pieces(framework) for letter in loose_chains(own)}
    for number, long in enumerate(framework.chains):
        walk = [*long.chain.joints, *(long.chain.joints[:1] if long.chain.closed else ())]
        for first in range(0, len(walk) - 1, fit - 1):
            called = None if long.letter in alone else long.letter if first == 0 else ""
            rows.append((called, number, walk[first : first + fit]))
    for link in (framework.link[one] for one in framework.singles):
        rows.append((None, OF_SINGLES, [link.start, link.finish]))
    key_height, signs = key
    lines = _beside(rows, width, left + 2 * radius + ROW_GAP, step)
    fits = [max(1, int((height - key_height - 8) // (2 * radius + gap))) for gap in LINE_GAPS]
    sheets = -(-len(lines) // max(fits))
    per_sheet, gap = next(
        (many, gap)
        for many, gap in zip(fits, LINE_GAPS, strict=True)
        if -(-len(lines) // many) == sheets
    )
    line = 2 * radius + gap
    seen: set[str] = set()
    pictures = []
    for sheet in range(sheets):
        here = lines[sheet * per_sheet : (sheet + 1) * per_sheet]
        tall = key_height + 8 + line * len(here)
        placed = [(i, x, row) for i, one in enumerate(here) for x, row in one]
        marks: list[Mark] = [*signs]
        for i, start, (letter, number, joints) in placed:
            y = tall - line * (i + 0.5)
            if letter:
                marks.append(Label((start, y - 4), letter, 11, INK, anchor="start", bold=True))
            elif letter is not None:
                marks.append(Label((start, y - 3), "...", TYPE, SOFT, anchor="start"))
            xs = [start + left + radius + k * step for k in range(len(joints))]
            for a, b in pairwise(xs):
                style = SINGLE if number == OF_SINGLES else chain_style(number)
                marks += link_marks((a, y), (b, y), style)
            for x, joint in zip(xs, joints, strict=True):
                locked = joint in framework.lock_at
                marks += joint_marks(
                    (x, y), radius, joint, skipped=False, locked=locked, repeat=joint in seen
                )
                seen.add(joint)
        pictures.append(Picture(width, tall, tuple(marks), alt))
    return tuple(pictures)
