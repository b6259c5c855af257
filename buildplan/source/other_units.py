"""What is meant by a file's `units` that are none of those a file is written in: the ones that its
sizes are in as they stand, or those that they would be converted to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from buildplan.language.messages import message
from buildplan.source.almost_numbers import unit_named
from buildplan.source.suggestions import Path, Put, Remedy, Suggestion
from buildplan.source.trade_words import INCHES, PLACES

FILE_UNITS = ("in", "cm")
BALLOON_LENGTHS = ("nominal", "inflate_to", "tie_to_tie", "chain_of_ten")
# the file's unit that another is converted to
_CONVERTED: Mapping[str, str] = {"m": "cm", "mm": "cm", "ft": "in"}
# The nominal sizes that are sold, from a little below 5 to a little above 36 inches: from memory.
LEAST_NOMINAL_IN, MOST_NOMINAL_IN = 4.5, 38.0


def units_meant(given: str, data: object) -> Suggestion | None:
    """What a file with such `units` would say, as its balloons' sizes tell; None where they say
    nothing, or the unit is no other than those of a file."""
    sizes, unit = dict(_sizes(data)), unit_named(given)
    if unit not in _CONVERTED or not sizes:
        return None
    (at, size), right = next(iter(sizes.items())), _CONVERTED[unit]
    if _sold(sizes, unit):
        scale = INCHES[unit] / INCHES[right]
        words = message(
            "write {right} and each length times {factor}: {size} for {given}",
            right=f"units: {right}",
            factor=f"{scale:.6g}",
            size=f"{at[-1]}: {size * scale:.6g}",
            given=f"{at[-1]}: {size:g}",
        )
        puts = (Put(at, round(size * scale, PLACES)) for at, size in _lengths(data))
        return Suggestion(ways=(Remedy(words, (Put(("units",), right), *puts)),))
    return Suggestion(
        ways=tuple(
            Remedy(message("write {right}", right=f"units: {one}"), (Put(("units",), one),))
            for one in FILE_UNITS
            if _sold(sizes, one)
        )
    )


def _sold(sizes: Mapping[Path, float], unit: str) -> bool:
    """Whether balloons of all these nominal sizes are sold, in such a unit."""
    return all(
        LEAST_NOMINAL_IN <= size * INCHES[unit] <= MOST_NOMINAL_IN for size in sizes.values()
    )


def _sizes(data: object) -> Iterator[tuple[Path, float]]:
    """The nominal sizes of a file's balloons."""
    return ((at, length) for at, length in _lengths(data) if at[-1] == "nominal")


def _lengths(data: object) -> Iterator[tuple[Path, float]]:
    """The lengths of a file that are numbers alone, and so in its units."""
    top = _mapping(data)
    rooms: dict[Path, tuple[str, ...]] = {
        ("balloons", key): BALLOON_LENGTHS for key in _mapping(top.get("balloons"))
    }
    rooms |= {("base",): ("width", "depth"), ("build", "letters"): ("height",)}
    for room, keys in rooms.items():
        within = top
        for step in room:
            within = _mapping(within.get(str(step)))
        for key in keys:
            length = within.get(key)
            if isinstance(length, int | float) and not isinstance(length, bool):
                yield (*room, key), float(length)


def _mapping(value: object) -> Mapping[object, object]:
    return value if isinstance(value, dict) else {}
