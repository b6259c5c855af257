"""How near two characters of a word stand, which of their joints face, and the bar between them."""

from __future__ import annotations

from functools import cache

import numpy as np

from buildplan.patterns.cell_outlines import Glyph
from buildplan.patterns.letter_strokes import JOINERS
from buildplan.patterns.lettering import glyph

APART = 1.9  # links: characters nearer to one another would run into one for whoever reads them
FACING = 0.08  # of a link: how far from one link apart two joints may be to face one another
STEP = 0.05  # of a link: how finely places of the next character are tried
MOST_BETWEEN = 4  # pairs of joints that are tied between two characters


@cache
def joiner(left: str, right: str, height: int) -> str:
    """The shortest bar between two characters of a height that both are tied to, and with which
    they can be told apart; the shortest of all where none is."""
    one, other = glyph(left, height), glyph(right, height)
    for bar in JOINERS:
        between = glyph(bar, height)
        (near, first), (far, second) = facing(one, between), facing(between, other)
        a, b = np.array(one.at), np.array(other.at) + near + far
        if first and second and np.abs(b[None] - a[:, None]).min() >= APART:
            return bar
    return JOINERS[0]


def facing(left: Glyph, right: Glyph) -> tuple[float, list[tuple[int, int]]]:
    """How far right of a character the next one stands, from left edge to left edge in links, and
    the pairs of joints that are then a link apart with nothing between.

    The next character comes nearer until something is in its way; it stays where most joints
    face one another. Both stand on the floor, so that there is always a pair.
    """
    a, b = np.array(left.at), np.array(right.at)
    x = float(a.real.max()) + 1
    found: tuple[float, list[tuple[int, int]]] = (x, [])
    while x > 0:
        apart = np.abs(b[None] + x - a[:, None])
        if apart.min() < 1 - FACING:
            break
        near = [(int(i), int(j)) for i, j in np.argwhere(apart < 1 + FACING)]
        pairs = _abreast(left, near)
        if len(pairs) > len(found[1]):
            found = x, pairs
        x -= STEP
    return found


def _abreast(left: Glyph, pairs: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Pairs from the lowest up, each joint in one, the lowest and the highest among them."""
    kept: list[tuple[int, int]] = []
    for i, j in sorted(pairs, key=lambda pair: left.at[pair[0]].imag):
        if all(i != a and j != b for a, b in kept):
            kept.append((i, j))
    return [*kept[: MOST_BETWEEN - 1], kept[-1]] if len(kept) > MOST_BETWEEN else kept
