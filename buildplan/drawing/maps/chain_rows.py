"""The chains of a piece written out row by row, where a diagram of it would be too crowded."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from buildplan.drawing.line_art import INK, SOFT, TYPE
from buildplan.drawing.map_style import SINGLE, LinkStyle, chain_style
from buildplan.drawing.maps.blocks import DrawnJoint, DrawnLink, MapBlock, MapNames
from buildplan.drawing.marks import Label
from buildplan.framework.model import Framework, Link
from buildplan.sequence.courses import loose_chains

ROW_GAP = 14.0
LETTER_ROOM = 26.0


@dataclass(frozen=True)
class WrittenRow:
    """A stretch of a chain: its letter (none of a balloon that is called by its joints, an empty
    one where it goes on), its style, its joints and the links between them."""

    letter: str | None
    style: LinkStyle
    joints: Sequence[str]
    links: Sequence[Link]


def row_blocks(framework: Framework, names: MapNames, width: float) -> list[MapBlock]:
    """Each chain as a row of joints, walked from end to end, short ones beside one another; a
    joint that an earlier row has shown is pale: there the two chains meet."""
    radius = names.radius(framework.joints)
    step, tall = 2 * radius + 14, 2 * radius + 4
    fit = max(2, int((width - LETTER_ROOM - 2 * radius) // step) + 1)
    seen: set[str] = set()
    blocks = []
    for line in _beside(list(_rows(framework, fit)), width, LETTER_ROOM + 2 * radius, step):
        joints: list[DrawnJoint] = []
        links: list[DrawnLink] = []
        letters: list[Label] = []
        y = tall / 2
        for start, row in line:
            if row.letter:
                letter = names.short(row.letter)
                letters.append(Label((start, y - 4), letter, 11, INK, anchor="start", bold=True))
            elif row.letter is not None:
                letters.append(Label((start, y - 3), "...", TYPE, SOFT, anchor="start"))
            xs = [start + LETTER_ROOM + radius + k * step for k in range(len(row.joints))]
            for link, (a, b) in zip(row.links, pairwise(xs), strict=True):
                links.append(DrawnLink(link, (a, y), (b, y), row.style))
            for x, joint in zip(xs, row.joints, strict=True):
                joints.append(DrawnJoint(joint, (x, y), joint in seen))
                seen.add(joint)
        blocks.append(MapBlock(width, tall, tuple(joints), tuple(links), tuple(letters)))
    return blocks


def _rows(framework: Framework, fit: int) -> Iterator[WrittenRow]:
    """Every chain, cut into stretches of so many joints; singles come last."""
    alone = loose_chains(framework)
    for number, long in enumerate(framework.chains):
        style = chain_style(number)
        walk = [*long.chain.joints, *(long.chain.joints[:1] if long.chain.closed else ())]
        links = [framework.link[id_] for id_ in long.chain.links]
        for first in range(0, len(walk) - 1, fit - 1):
            called = None if long.letter in alone else long.letter if first == 0 else ""
            joints = walk[first : first + fit]
            yield WrittenRow(called, style, joints, links[first : first + len(joints) - 1])
    for link in map(framework.link.__getitem__, framework.singles):
        yield WrittenRow(None, SINGLE, (link.start, link.finish), (link,))


def _beside(
    rows: Sequence[WrittenRow], width: float, ends: float, step: float
) -> list[list[tuple[float, WrittenRow]]]:
    """Rows put on lines, as many beside one another as there is room for, each with its left
    edge; a row is `ends` wide and a `step` more for each joint after its first."""
    lines: list[list[tuple[float, WrittenRow]]] = []
    right = math.inf
    for row in rows:
        wide = ends + step * (len(row.joints) - 1)
        if right + wide > width:
            lines.append([])
            right = 0.0
        lines[-1].append((right, row))
        right += wide + ROW_GAP
    return lines
