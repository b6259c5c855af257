"""The two ends of a link balloon, and which of them is tied where along a chain."""

from __future__ import annotations

from enum import StrEnum


class End(StrEnum):
    """The two tie ends of a link balloon."""

    NECK = "neck"
    TAIL = "tail"


def start_end(place: int) -> End:
    """The end that the link at `place` along a chain, from 0, is tied by at its start: pairs are
    tied neck to neck, and pairs to one another tail to tail."""
    return End.TAIL if place % 2 == 0 else End.NECK
