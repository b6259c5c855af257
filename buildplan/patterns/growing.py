"""What is made longer when a piece is made larger out of the same balloons."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import floor
from typing import Any

from buildplan.source.mistake import Path
from buildplan.source.suggestions import Put


def scaled(count: int, factor: float, least: int = 1) -> int:
    """A number of cells, or of anything else that is counted, made larger by a factor."""
    return max(least, floor(count * factor + 0.5))


def counts(
    data: Mapping[str, Any], at: Path, names: Mapping[str, int], factor: float
) -> Iterator[Put]:
    """Counts under a key of the file, each with the least that it may be."""
    part: Any = data
    for step in at:
        part = part[step]
    for name, least in names.items():
        number = scaled(part[name], factor, least)
        if number != part[name]:
            yield Put((*at, name), number)
