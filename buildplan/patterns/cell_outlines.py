"""Cells of a flat piece that share their sides: its outlines as rings, and the braces between."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import fsum


@dataclass(frozen=True)
class Glyph:
    """The front of a flat piece, drawn with links of length 1, its lowest joint at height 0.

    Joints are numbers into `at`. `loops` are its outlines as rings of joints, clockwise, the
    outer one first; `rungs` the sides that two cells share, in the order of the cells.
    """

    at: tuple[complex, ...]
    loops: tuple[tuple[int, ...], ...]
    rungs: tuple[tuple[int, int], ...]


def outlined(at: Sequence[complex], cells: Sequence[Sequence[int]]) -> Glyph:
    """The outlines and rungs of cells: sides of one cell, and of two.

    `at` are places of joints, `cells` the numbers of each one's corners, clockwise.
    """
    count: dict[tuple[int, int], int] = {}
    for corners in cells:
        for side in zip(corners, [*corners[1:], corners[0]], strict=True):
            count[side] = count.get(side, 0) + 1
    rungs: list[tuple[int, int]] = []
    for a, b in count:
        if (b, a) in count and (b, a) not in rungs:
            rungs.append((a, b))
    following = {a: b for a, b in count if (b, a) not in count}
    kept = sorted({joint for side in count for joint in side})
    low = min(at[joint].imag for joint in kept)
    left = min(at[joint].real for joint in kept)
    number = {joint: i for i, joint in enumerate(kept)}
    places = tuple(at[joint] - complex(left, low) for joint in kept)
    loops = sorted(_loops(following, number, places), key=lambda loop: -_area(loop, places))
    return Glyph(
        places,
        tuple(loops),
        tuple((number[a], number[b]) for a, b in rungs),
    )


def _loops(
    following: Mapping[int, int], number: Mapping[int, int], at: Sequence[complex]
) -> Iterator[tuple[int, ...]]:
    """Rings of joints, each from its lowest joint on the left."""
    left = dict(following)
    while left:
        start = next(iter(left))
        ring = [start]
        joint = left.pop(start)
        while joint != start:
            ring.append(joint)
            joint = left.pop(joint)
        numbers = [number[joint] for joint in ring]
        first = min(
            range(len(ring)),
            key=lambda i: (round(at[numbers[i]].imag, 3), round(at[numbers[i]].real, 3)),
        )
        yield (*numbers[first:], *numbers[:first])


def _area(loop: Sequence[int], at: Sequence[complex]) -> float:
    """The area within a ring that runs clockwise; of a hole, less than 0 (shoelace formula)."""
    ends = zip(loop, (*loop[1:], loop[0]), strict=True)
    return -0.5 * fsum((at[a].conjugate() * at[b]).imag for a, b in ends)
