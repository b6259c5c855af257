"""Another height for a design: by gauge, by balloon size, or by more cells.

Every length of a piece goes with its gauges, so that by gauge and by balloon size one factor
does; gauges have steps, though, and balloons limits. More cells make runs longer and leave the
gauges as they are (see `more_cells`). Whatever is found has been solved again, and passes the
checks that a file has to pass.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product
from math import ceil, floor
from typing import Any

from buildplan.design.measures import Units
from buildplan.design.starting import LINK_SIZES
from buildplan.design.wishes import GAUGE_STEP
from buildplan.evaluation.measured import Measured, first_mistake
from buildplan.fitting.more_cells import by_cells
from buildplan.fitting.resize_options import NotHadError, ResizeWay, Trial, nearest
from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.language.messages import Message, listing, mark, message, written
from buildplan.source.balloons import Balloon
from buildplan.source.file_changes import changed_data
from buildplan.source.suggestions import Put

# What a balloon is sized to, as a share of the size printed on its bag. From memory.
LEAST_SHARE, MOST_SHARE = 1 / 3, 0.84
IN_PROPORTION = 0.012  # that gauges may leave it by: what a course fits is lost by more
USUAL_SHARE = 2 / 3  # common practice, no source: 8 inches for a 12-inch link
# Rounds by the size printed on the bag. From memory.
ROUND_SIZES: Mapping[Units, tuple[float, ...]] = {"in": (5, 11, 16), "cm": (12, 28, 40)}


def _links(now: Measured) -> dict[str, Balloon]:
    """The link balloons, the largest gauge first."""
    links = {key: b for key, b in now.design.balloons.items() if b.is_strut}
    return dict(sorted(links.items(), key=lambda item: -item[1].inflate_to))


def _whole_design(data: Mapping[str, Any]) -> None:
    parts = (data["build"].get("assembly") or {}).get("parts", [])
    if any(part.get("design") for part in parts):
        raise NotHadError(
            message("its parts are designs of their own: resize those, and tie them again")
        )


def by_gauge(data: Mapping[str, Any], now: Measured, height_m: float) -> ResizeWay:
    """The same balloons sized larger or smaller."""
    _whole_design(data)
    links, units = _links(now), now.design.units
    factor = height_m / now.height_m
    numbers = _steps(now, factor)
    for key, balloon in links.items():
        least, most = _limits(balloon)
        numbers = [n for n in numbers if least <= balloon.inflate_to * _scale(now, n) <= most]
        if not numbers:
            raise NotHadError(
                message(
                    "{key} is a {nominal} {units} link and would be sized to {gauge} {units}; it "
                    "takes {least} to {most}",
                    key=key,
                    nominal=written(f"{balloon.nominal:g}"),
                    units=units,
                    gauge=written(f"{balloon.inflate_to * factor:.3g}"),
                    least=written(f"{least:.3g}"),
                    most=written(f"{most:.3g}"),
                )
            )
    return nearest("gauge", _gauges(data, now, numbers, {}), data, height_m, now.built_by)


def _steps(now: Measured, factor: float) -> list[int]:
    """The largest gauge times a factor, in steps of the gauge: the whole numbers of them on
    either side, the nearer first."""
    steps = _main(now) * factor / GAUGE_STEP[now.design.units]
    return sorted({max(1, floor(steps)), ceil(steps)}, key=lambda number: abs(number - steps))


def _main(now: Measured) -> float:
    """The largest gauge of a link."""
    return next(iter(_links(now).values())).inflate_to


def _scale(now: Measured, number: int) -> float:
    """The factor that brings the largest gauge to so many steps."""
    return number * GAUGE_STEP[now.design.units] / _main(now)


def _limits(balloon: Balloon) -> tuple[float, float]:
    """The gauges that a balloon takes; one that is beyond already is believed."""
    share = balloon.inflate_to / balloon.nominal
    least, most = min(LEAST_SHARE, share), max(MOST_SHARE, share)
    return least * balloon.nominal, most * balloon.nominal


def by_balloon(data: Mapping[str, Any], now: Measured, height_m: float) -> ResizeWay:
    """Balloons of another size, sized as that takes."""
    _whole_design(data)
    factor = height_m / now.height_m
    links, units = _links(now), now.design.units
    sizes = LINK_SIZES[units]
    bags: dict[str, float] = {}
    for key, balloon in links.items():
        gauge = balloon.inflate_to * factor
        fitting = [s for s in sizes if LEAST_SHARE <= gauge / s <= MOST_SHARE]
        if not fitting:
            raise NotHadError(
                message(
                    "no size of link balloon is near: {key} would be sized to {gauge} {units}, and "
                    "links are of {sizes} {units}",
                    key=key,
                    gauge=written(f"{gauge:.3g}"),
                    units=units,
                    sizes=listing(written(f"{size:g}") for size in sizes),
                )
            )
        bags[key] = min(fitting, key=lambda size: abs(gauge / size - USUAL_SHARE))
    if all(bags[key] == balloon.nominal for key, balloon in links.items()):
        raise NotHadError(message("the balloons that it has are the nearest size; see by gauge"))
    for key, balloon in now.design.balloons.items():
        if not balloon.is_strut:
            gauge = balloon.inflate_to * factor
            if not LEAST_SHARE <= gauge / balloon.nominal <= 1:
                larger = [size for size in ROUND_SIZES[units] if gauge <= size]
                bags[key] = larger[0] if larger else balloon.nominal
    trials = _gauges(data, now, _steps(now, factor), bags)
    return nearest("balloon", trials, data, height_m, now.built_by)


def _gauges(
    data: Mapping[str, Any], now: Measured, numbers: Sequence[int], bags: Mapping[str, float]
) -> Iterator[Trial]:
    """Gauges to try: the largest at so many steps, the others in proportion, to half a step where a
    whole one would change how the course curves, and, as rounding may keep a course from coming
    round, at the steps beside that."""
    balloons, step, main = now.design.balloons, GAUGE_STEP[now.design.units], _main(now)
    others = sorted({link.inflate_to for link in _links(now).values()} - {main}, reverse=True)
    shifted = sorted(product((0, 1, -1), repeat=len(others)), key=lambda way: -way.count(0))
    for number in numbers:
        scale = _scale(now, number)
        tried: list[tuple[Put, ...]] = []
        for shifts in shifted:
            rounded = {main: number * step}
            for gauge, shift in zip(others, shifts, strict=True):
                fine = _fine_step(gauge * scale, step)
                rounded[gauge] = max(1, floor(gauge * scale / fine + 0.5) + shift) * fine
            changes = [_resized(*one, rounded, scale, step, bags) for one in balloons.items()]
            changes.append(_given_height(data, scale))
            tried.append(tuple(change for of_one in changes for change in of_one))
            if not first_mistake(changed_data(data, tried[-1])):
                break
        else:
            tried = tried[:1]
        yield tried[-1], _gauge_words(balloons, tried[-1], bags, now.design.units)


def _fine_step(gauge: float, step: float) -> float:
    """The step to which a gauge keeps its proportion to the others, half of `step` at least."""
    rounded = max(1, floor(gauge / step + 0.5)) * step
    return step if abs(rounded / gauge - 1) <= IN_PROPORTION else step / 2


def _given_height(data: Mapping[str, Any], scale: float) -> Iterator[Put]:
    """A height that the file gives goes with the gauges, or the number of cells would change."""
    height = (data["build"].get("letters") or {}).get("height")
    if height is not None:
        yield Put(("build", "letters", "height"), round(height * scale, 1))


def _resized(
    key: str,
    balloon: Balloon,
    rounded: Mapping[float, float],
    factor: float,
    step: float,
    bags: Mapping[str, float],
) -> Iterator[Put]:
    bag = bags.get(key, balloon.nominal)
    at = ("balloons", key)
    if balloon.is_strut:
        gauge = rounded[balloon.inflate_to]
    else:
        gauge = min(bag, max(1, floor(balloon.inflate_to * factor / step + 0.5)) * step)
    if bag != balloon.nominal:
        yield Put((*at, "nominal"), bag)
    if gauge != balloon.inflate_to:
        yield Put((*at, "inflate_to"), gauge)
    for name in ("tie_to_tie", "chain_of_ten"):
        length = getattr(balloon, name)
        if length is not None and gauge != balloon.inflate_to:
            yield Put((*at, name), round(length * gauge / balloon.inflate_to, 2))


def _gauge_words(
    balloons: Mapping[str, Balloon],
    changes: Sequence[Put],
    bags: Mapping[str, float],
    units: Units,
) -> tuple[Message, ...]:
    """`long, cross: 8 to 8 1/2 in; lock: 3.5 to 3.75 in`."""
    alike: dict[tuple[str, str, str], list[str]] = {}
    for change in changes:
        key, name = str(change.at[1]), change.at[2]
        if change.at[0] == "balloons" and name == "inflate_to":
            bag = (balloons[key].kind, f"{bags[key]:g}") if key in bags else ("", "")
            alike.setdefault((f"{change.value:g}", *bag), []).append(key)
    told = tuple(_sized_words(keys, *sizes, units) for sizes, keys in alike.items())
    return told or (message("as it is"),)


def _sized_words(keys: Sequence[str], gauge: str, kind: str, bag: str, units: Units) -> Message:
    """`long, cross sized to 8.5 in`; with the kind of balloon and its bag's size if it is new."""
    if not kind:
        text = mark("{keys} sized to {gauge} {units}")
    else:
        text = BALLOON_KINDS[kind].words.sized_anew
    return message(
        text,
        keys=", ".join(keys),
        units=units,
        gauge=written(gauge),
        bag=written(bag) if bag else "",
    )


WAYS: Mapping[str, Callable[[Mapping[str, Any], Measured, float], ResizeWay]] = {
    "gauge": by_gauge,
    "balloon": by_balloon,
    "cells": by_cells,
}


def ways(data: Mapping[str, Any], now: Measured, height_m: float) -> list[ResizeWay]:
    """The three ways to make a design, as the plain data of its file, `height_m` high; `now` is
    the design as it stands."""
    return [one_way(by, data, now, height_m) for by in WAYS]


def one_way(by: str, data: Mapping[str, Any], now: Measured, height_m: float) -> ResizeWay:
    """One of the ways, a key of WAYS, or why it does not work."""
    try:
        return WAYS[by](data, now, height_m)
    except NotHadError as error:
        return ResizeWay(by, why_not=error.told)
