"""Whether the sizes of a file's balloons can be in the units that it says."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from buildplan.design.balloon_references import Balloons
from buildplan.design.size_checks import CM_PER_INCH, LEAST_FILLED
from buildplan.language.messages import message
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, listed
from buildplan.source.partial_validation import Salvaged
from buildplan.source.suggestions import Put, Remedy, Suggestion

# The smallest and the largest links that are sold, and the largest rounds that lock: about 6 and
# 24 inches, and 9. From memory, and generous.
LEAST_LINK_CM, MOST_LINK_IN, MOST_LOCK_IN = 14.0, 25.0, 10.0
CONVERTED: Mapping[str, float] = {"cm": CM_PER_INCH, "in": 1 / CM_PER_INCH}
OTHER: Mapping[str, str] = {"cm": "in", "in": "cm"}


def check_units(balloons: Balloons, units: object) -> Iterator[Mistake]:
    """Whether every balloon of a file in such `units` is of a size in others: one mistake for
    all, for they are mended together."""
    parts = {key: one.part for key, one in balloons.items() if _sized(one)}
    links = [part for part in parts.values() if part.is_strut]
    if len(parts) < len(balloons) or not links or not isinstance(units, str) or units not in OTHER:
        return
    if _all_in_others(parts, links, units):
        yield _sizes_in_others(parts, units)
    elif gauges_in_inches(balloons, units):
        yield _gauges_in_inches(parts)


def gauges_in_inches(balloons: Balloons, units: object) -> bool:
    """Whether every gauge of a file in cm hardly fills its balloon, and fills it in inches."""
    return (
        units == "cm"
        and len(balloons) > 1
        and all(_sized(one) and _gauge_in_inches(one.part) for one in balloons.values())
    )


def _sized(balloon: Salvaged[Balloon]) -> bool:
    return balloon.right("kind", "nominal", "inflate_to")


def _gauge_in_inches(part: Balloon) -> bool:
    filled = part.inflate_to / part.nominal
    return LEAST_FILLED <= CM_PER_INCH * filled <= 1.0


def _all_in_others(parts: Mapping[str, Balloon], links: list[Balloon], units: str) -> bool:
    if units == "cm":
        return all(part.nominal < LEAST_LINK_CM for part in links)
    rounds = [part for part in parts.values() if not part.is_strut]
    return all(part.nominal > MOST_LINK_IN for part in links) and all(
        part.nominal > MOST_LOCK_IN for part in rounds
    )


def _sizes_in_others(parts: Mapping[str, Balloon], units: str) -> Mistake:
    other = OTHER[units]
    in_others = Remedy(message("write {right}", right=f"units: {other}"), (Put(("units",), other),))
    key, first = next((key, part) for key, part in parts.items() if part.is_strut)
    scale = CONVERTED[units]
    sizes = tuple(
        Put(("balloons", key, name), round(scale * getattr(part, name), 1))
        for key, part in parts.items()
        for name in ("nominal", "inflate_to", "tie_to_tie", "chain_of_ten")
        if getattr(part, name) is not None
    )
    return Mistake(
        FileKind.SIZES_IN_OTHER_UNITS,
        ("balloons", key, "nominal"),
        message(
            "no link is sold of nominal size {size} {units}: the sizes look like {other}",
            size=f"{first.nominal:g}",
            units=units,
            other=other,
        ),
        Suggestion(
            ways=(
                in_others,
                Remedy(message("write the sizes of all balloons in {units}", units=units), sizes),
            )
        ),
    )


def _gauges_in_inches(parts: Mapping[str, Balloon]) -> Mistake:
    right = {key: round(CM_PER_INCH * part.inflate_to, 1) for key, part in parts.items()}
    return Mistake(
        FileKind.HARDLY_FILLED,
        ("balloons", next(iter(parts)), "inflate_to"),
        message("every gauge of this file in cm hardly fills its balloon, and fills it in inches"),
        Suggestion(
            ways=(
                Remedy(
                    message(
                        "write them in cm: {rights}",
                        rights=listed(
                            f"{key} inflate_to: {gauge:g}" for key, gauge in right.items()
                        ),
                    ),
                    tuple(
                        Put(("balloons", key, "inflate_to"), gauge) for key, gauge in right.items()
                    ),
                ),
            )
        ),
    )
