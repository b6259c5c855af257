"""More cells, or fewer, of the same balloons: what each pattern has to make longer."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from buildplan.design.model import Design
from buildplan.design.wishes import GAUGE_STEP
from buildplan.evaluation.measured import Measured, first_mistake
from buildplan.fitting.resize_options import NotHadError, ResizeWay, Trial, nearest, off_m
from buildplan.language.messages import Message, listing, message, written
from buildplan.language.phrases import FIRST_TO_LAST
from buildplan.patterns.colour_patterns import keys_of
from buildplan.patterns.pattern import AllOf
from buildplan.patterns.registry import patterns_in
from buildplan.source.file_changes import changed_data
from buildplan.source.lengths import tie_to_tie
from buildplan.source.suggestions import Put

MOST_TRIALS = 7
NEAR_ENOUGH = 0.005  # of the height: once as near as this, nothing more is tried
MOST_GAUGE_STEPS = 12
MOST_NUDGES, NUDGE = 20, 1.04

Data = Mapping[str, Any]


def by_cells(data: Data, now: Measured, height_m: float) -> ResizeWay:
    """The design with more cells of the same balloons, as near to the height as comes."""
    pattern, _ = next(patterns_in(data["build"]))
    more_cells = pattern.more_cells
    if isinstance(more_cells, AllOf):
        raise NotHadError(message(more_cells.why))
    if _has_sizes_along(now.design):
        raise NotHadError(
            message(
                "balloons of several sizes follow one another along its chains, cell by cell: fit "
                "its outline again at the new height (buildplan fit)"
            )
        )
    best: ResizeWay | None = None
    why_not = message("one cell more or fewer takes it further from the height")
    factor, reached = height_m / now.height_m, [(1.0, now.height_m)]
    seen: list[tuple[Put, ...]] = [()]
    for _ in range(MOST_TRIALS):
        changes = tuple(more_cells(data, factor))
        if len({high < height_m for _, high in reached}) == 1:
            # the height is still ahead
            factor, changes = _unseen(more_cells, data, factor, seen, now.height_m < height_m)
        if changes in seen:
            break
        seen.append(changes)
        try:
            way = nearest(
                "cells", _that_come_round(data, now, changes), data, height_m, now.built_by
            )
        except NotHadError as error:
            why_not = error.told
            factor *= NUDGE if factor > 1 else 1 / NUDGE
            continue
        assert way.measured is not None
        if best is None or off_m(way, height_m) < off_m(best, height_m):
            best = way
        if off_m(way, height_m) < NEAR_ENOUGH * height_m:
            break
        reached.append((factor, way.measured.height_m))
        factor = _between(reached, height_m)
    if best is None or off_m(best, height_m) >= abs(now.height_m - height_m):
        raise NotHadError(why_not)
    return best


def _unseen(
    change: Callable[[Data, float], Iterator[Put]],
    data: Data,
    factor: float,
    seen: Sequence[tuple[Put, ...]],
    larger: bool,
) -> tuple[float, tuple[Put, ...]]:
    """The factor, or the next one on the way to the height, whose changes have not been tried."""
    changes = tuple(change(data, factor))
    for _ in range(MOST_NUDGES):
        if changes not in seen:
            break
        factor *= NUDGE if larger else 1 / NUDGE
        changes = tuple(change(data, factor))
    return factor, changes


def _between(reached: Sequence[tuple[float, float]], height_m: float) -> float:
    """The factor at which the height would be reached, if it went on in a straight line through
    the two heights that are nearest to it."""
    near = sorted(reached, key=lambda one: abs(one[1] - height_m))[:2]
    (one, low), (other, high) = sorted(near)
    slope = (high - low) / (other - one)
    return max(0.05, one + (height_m - low) / slope) if slope > 0 else other


def _has_sizes_along(design: Design) -> bool:
    """Whether a colour pattern lays balloons of different lengths."""
    for order in design.colour_pattern.values():
        if len({tie_to_tie(design.balloons[key])[0] for key in keys_of(order)}) > 1:
            return True
    return False


def _that_come_round(data: Data, now: Measured, changes: tuple[Put, ...]) -> Iterator[Trial]:
    """The changes; where a closed course then turns too much or too little, with inner chains
    of another gauge, the nearest that brings it round."""
    words = _words(data, changes)
    inner = _inner_key(data)
    if inner and first_mistake(changed_data(data, changes)):
        gauge = now.design.balloons[inner].inflate_to
        step = GAUGE_STEP[now.design.units]
        for number in range(1, MOST_GAUGE_STEPS + 1):
            for other in (gauge + number * step, gauge - number * step):
                more = tuple(_sized(now.design, inner, other))
                if other > 0 and not first_mistake(changed_data(data, (*changes, *more))):
                    sized = message(
                        "{keys} sized to {gauge} {units}",
                        keys=inner,
                        gauge=written(f"{other:g}"),
                        units=now.design.units,
                    )
                    yield (*changes, *more), (*words, sized)
                    return
    yield changes, words


def _sized(design: Design, key: str, gauge: float) -> Iterator[Put]:
    balloon = design.balloons[key]
    yield Put(("balloons", key, "inflate_to"), gauge)
    for name in ("tie_to_tie", "chain_of_ten"):
        length = getattr(balloon, name)
        if length is not None:
            yield Put(("balloons", key, name), round(length * gauge / balloon.inflate_to, 2))


def _inner_key(data: Data) -> str:
    """The balloon of the inner chains of a closed tube, if it is theirs alone."""
    tube = data["build"].get("tube") or {}
    long = tube.get("long")
    if not tube.get("closed") or not isinstance(long, dict):
        return ""
    inner = {long[letter] for letter in ("B", "C") if letter in long}
    others = {long[letter] for letter in ("A", "D") if letter in long} | {tube["brace"]}
    return str(inner.pop()) if len(inner) == 1 and not inner & others else ""


def _words(data: Data, changes: tuple[Put, ...]) -> tuple[Message, ...]:
    """`straight runs of 3 become 4`, `rings 9 to 10`."""
    runs: dict[Message, None] = {}
    counts: dict[Message, None] = {}
    for change in changes:
        before: Any = data
        for step in change.at:
            before = before[step]
        if not {"stand_on", "top", "extra"}.isdisjoint(change.at):
            continue  # the same places, called otherwise
        if change.last is not None:
            first = change.at[-1]
            assert isinstance(first, int)
            after = change.value["repeat"] if isinstance(change.value, dict) else 1
            runs[message(FIRST_TO_LAST, first=change.last - first + 1, last=after)] = None
        elif change.at[-1] == "repeat":
            runs[message(FIRST_TO_LAST, first=str(before), last=str(change.value))] = None
        else:
            one = message(
                "{key} {before} to {after}",
                key=str(change.at[-1]),
                before=written(str(before)),
                after=written(str(change.value)),
            )
            counts[one] = None
    told = [message("straight runs from {runs}", runs=listing(runs))] if runs else []
    return (*told, *counts)
