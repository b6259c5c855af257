"""The order in which the signs of a line are seen (UAX 9), each at the level of `embedding.py`."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from bidi.mirror import MIRRORED

from buildplan.drawing.typeset.embedding import levels
from buildplan.language.isolates import END, FROM_LEFT, OPENING, begins_from_right


def line_levels(text: str, *, from_right: bool = False) -> list[int]:
    """The embedding level of each sign of a line: from the right where it is said so, or where its
    own first letter is. An isolate that only ends on it has begun from the left on the line before
    (those from the right are set by themselves, `document/paragraphs.py`)."""
    begun = FROM_LEFT * _ends_alone(text)
    line = begun + text
    found = levels(line, from_right=from_right or begins_from_right(line))
    return found[len(begun) :]


def _ends_alone(text: str) -> int:
    """How many isolates end on a line that do not begin on it."""
    alone = opened = 0
    for sign in text:
        if sign in OPENING:
            opened += 1
        elif sign == END and opened:
            opened -= 1
        elif sign == END:
            alone += 1
    return alone


def as_seen(places: Sequence[int]) -> list[int]:
    """The numbers of a line's signs from left to right, of their levels (rule L2)."""
    order = list(range(len(places)))
    for level in range(max(places, default=0), 0, -1):
        runs = groupby(order, lambda at, level=level: places[at] >= level)  # type: ignore[misc]
        parts = [(high, list(run)) for high, run in runs]
        order = [at for high, run in parts for at in (reversed(run) if high else run)]
    return order


def mirrored(sign: str) -> str:
    """A sign as it is drawn from the right (rule L4)."""
    return str(MIRRORED.get(sign, sign))
