"""What may mend a word that does not stay as drawn: letters held by a balloon more, other cells."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any

import numpy as np

from buildplan.evaluation.measured import Measured
from buildplan.fitting.extra_balloon import as_tied
from buildplan.framework.extras import joined_pairs
from buildplan.framework.model import Framework, Part
from buildplan.language.messages import message
from buildplan.patterns.lettering import HEIGHTS
from buildplan.shape.drawn import words_of
from buildplan.source.mistake import Path
from buildplan.source.suggestions import Change, Put, Remedy, TakeOut

Data = Mapping[str, Any]

SHORTEST, LONGEST = 0.7, 1.5  # of a link: what a balloon of the same sort can be sized to
HINGED = 1  # pairs of joints, front or back, that leave a letter free to turn about them


def word_ways(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """Balloons more that hold each letter which hangs by one joint, then other numbers of cells."""
    if piece is not None:
        yield from _held(data, piece)
    for at, letters in _letters_in(data):
        yield from _other_cells(at, letters, HEIGHTS)


def lower_letters(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """The letters of fewer cells, the highest of them first: they are narrower too."""
    for at, letters in _letters_in(data):
        now = letters.get("cells") or 0
        yield from _other_cells(at, letters, [one for one in reversed(HEIGHTS) if one < now])


def _other_cells(at: Path, letters: Data, heights: Sequence[int]) -> Iterator[Remedy]:
    for cells in heights:
        if cells != letters.get("cells"):
            words = message("make the letters {cells} cells high", cells=cells)
            clear: list[Change] = [TakeOut((*at, "height"))] if letters.get("height") else []
            yield Remedy(words, (*clear, Put((*at, "cells"), cells)))


def _letters_in(data: Data) -> Iterator[tuple[Path, Data]]:
    """Where a file has letters that are given in place."""
    build = data["build"]
    if isinstance(build.get("letters"), Mapping):
        yield ("build", "letters"), build["letters"]
    parts = (build.get("assembly") or {}).get("parts") or ()
    for i, part in enumerate(parts):
        letters = (part.get("build") or {}).get("letters")
        if isinstance(letters, Mapping):
            yield ("build", "assembly", "parts", i, "build", "letters"), letters


def _held(data: Data, piece: Measured) -> Iterator[Remedy]:
    for letters in words_of(piece.framework).values():
        pairs = [
            pair
            for one, other in pairwise(letters)
            for pair in _holding(piece.framework, one, other)
        ]
        if pairs:
            way = as_tied(data, piece, pairs)
            if way is not None:
                yield way


def _holding(
    framework: Framework, one: Part, other: Part
) -> Iterator[tuple[tuple[str, str], float]]:
    """The pair of front joints, and how far they are apart as drawn, that holds a letter best to
    the one beside it where it is hinged: the one farthest out of line with what ties them."""
    a, b = _front(one), _front(other)
    joined = joined_pairs(framework)
    tied = [(i, j) for i in a for j in b if frozenset((i, j)) in joined]
    if len(tied) != HINGED:
        return
    (hinge, _), lengths = tied[0], [x.tie_to_tie_m for x in framework.balloons.values()]
    link_m = max(lengths)
    best: tuple[float, tuple[str, str], float] | None = None
    for i, at in a.items():
        for j, there in b.items():
            along = there - at
            length = float(np.linalg.norm(along))
            if not SHORTEST * link_m < length < LONGEST * link_m or frozenset((i, j)) in joined:
                continue
            off = at - a[hinge]
            arm = abs(float(off[0] * along[1] - off[1] * along[0])) / length
            if best is None or arm > best[0] + 1e-9:
                best = arm, (i, j), length
    if best is not None:
        yield best[1], best[2]


def _front(part: Part) -> dict[str, Any]:
    """Where the front joints of a letter are drawn."""
    laid: Mapping[str, Sequence[float]] = part.framework.laid
    return {joint: np.array(laid[joint]) for joint in part.framework.joints if laid[joint][2] > 0}
