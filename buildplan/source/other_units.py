"""What is meant by a file's `units` that are none of those a file is written in: the ones that its
sizes are in as they stand, or those that they would be converted to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from buildplan.language.messages import message
from buildplan.source.almost_numbers import unit_named
from buildplan.source.suggestions import Path, Put, Remedy, Suggestion
from buildplan.source.trade_words import INCHES, PLACES

FILE_UNITS = ("in", "cm")
BALLOON_LENGTHS = ("nominal", "inflate_to", "tie_to_tie", "chain_of_ten")
# the file's unit that another is converted to
_CONVERTED: Mapping[str, str] = {"m": "cm", "mm": "cm", "ft": "in"}
# The nominal sizes that are sold, in inches: links of about 6 to 24, other balloons of about 5 to
# 36. From memory, and generous.
LINKS_SOLD_IN, SOLD_IN = (5.5, 25.0), (4.5, 38.0)


def units_meant(given: str, data: object) -> Suggestion | None:
    """What a file with such `units` would say, as its balloons' sizes tell; None where they say
    nothing, or the unit is no other than those of a file."""
    sizes, unit = [one for one in _lengths(data) if one[0][-1] == "nominal"], unit_named(given)
    if unit not in _CONVERTED or not sizes:
        return None
    (at, size), right = sizes[0], _CONVERTED[unit]
    links = [length for at, length in sizes if _value(data, (*at[:-1], "kind")) == "link"]
    others = [length for _, length in sizes]

    def sold(in_unit: str) -> bool:
        return _within(links, in_unit, LINKS_SOLD_IN) and _within(others, in_unit, SOLD_IN)

    if sold(unit):
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
            if sold(one)
        )
    )


def _within(sizes: Iterable[float], unit: str, inches: tuple[float, float]) -> bool:
    """Whether sizes in a unit are all between two of inches."""
    return all(inches[0] <= size * INCHES[unit] <= inches[1] for size in sizes)


def _lengths(data: object) -> Iterator[tuple[Path, float]]:
    """The lengths of a file that are numbers alone, and so in its units."""
    top = _mapping(data)
    rooms: dict[Path, tuple[str, ...]] = {
        ("balloons", str(key)): BALLOON_LENGTHS for key in _mapping(top.get("balloons"))
    }
    rooms |= {("base",): ("width", "depth"), ("build", "letters"): ("height",)}
    for room, keys in rooms.items():
        for key in keys:
            length = _value(data, (*room, key))
            if isinstance(length, int | float) and not isinstance(length, bool):
                yield (*room, key), float(length)


def _value(data: object, at: Path) -> object:
    """What stands at a place of a file, or None."""
    for step in at:
        data = _mapping(data).get(step)
    return data


def _mapping(value: object) -> Mapping[object, object]:
    return value if isinstance(value, dict) else {}
