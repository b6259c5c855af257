"""What may mend a piece of any pattern: balloons of another size, another foot, something that
holds it, a layer or a cell more."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from buildplan.evaluation.measured import Measured
from buildplan.fitting.extra_balloon import one_more_balloon
from buildplan.fitting.word_mending import lower_letters, word_ways
from buildplan.framework.places import BOTH
from buildplan.language.messages import message, written
from buildplan.patterns.pattern import AllOf
from buildplan.patterns.registry import patterns_in
from buildplan.shape.kinds import ShapeKind
from buildplan.source.problems import ProblemKind
from buildplan.source.suggestions import Change, Put, Remedy, TakeOut

Data = Mapping[str, Any]
Ways = Callable[[Data, Measured | None], Iterator[Remedy]]

USUAL_GAUGE = 2 / 3  # of a link's nominal size; common practice, no source
# The shorter strut of a two-frequency geodesic sphere over its longer one (0.54653 / 0.61803, as
# published tables of chord factors have them): what the two balloons of a globe keep to.
GLOBE_RATIO = 0.884
STEP: Mapping[str, float] = {"in": 0.25, "cm": 0.5}  # of a gauge
MOST_SIZES = 6  # other sizes that are tried for one problem
LARGER = (1.35, 1.8)  # how many times as large a piece that runs into itself is tried


def piece_ways(kind: ProblemKind, data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """Ways that a problem of a shape may have, the likeliest first; none of them is tried yet.
    There is no piece yet where its parts do not meet."""
    for make in WAYS.get(kind, ()):
        yield from make(data, piece)


def _sizes(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """One balloon in another size: as large as another link of the piece, as is usual for it, or
    as the struts of a globe are to one another; what is nearest to the usual size first."""
    used = None if piece is None else {link.balloon for link in piece.framework.links}
    given = {
        key: one
        for key, one in data["balloons"].items()
        if one["kind"] == "link" and (used is None or key in used) and _can_be_resized(one)
    }
    found: dict[tuple[str, float], float] = {}
    for key, one in given.items():
        usual = USUAL_GAUGE * one["nominal"]
        others = [other["inflate_to"] for name, other in given.items() if name != key]
        globe = [g * factor for g in others for factor in (GLOBE_RATIO, 1 / GLOBE_RATIO)]
        for size in (*others, usual, *(globe if "globe" in data["build"] else ())):
            gauge = _on_gauge(size, data["units"])
            if gauge != one["inflate_to"] and 0 < gauge <= one["nominal"]:
                found[key, gauge] = abs(gauge - usual) / usual
    for key, gauge in sorted(found, key=lambda one: (round(found[one], 6), one))[:MOST_SIZES]:
        words = message(
            "size {balloon} to {gauge} instead of {now}",
            balloon=key,
            gauge=written(f"{gauge:g}"),
            now=written(f"{given[key]['inflate_to']:g}"),
        )
        yield Remedy(words, (Put(("balloons", key, "inflate_to"), gauge),))


def _can_be_resized(balloon: Data) -> bool:
    """Whether it is its gauge that says how long a balloon is."""
    return balloon.get("tie_to_tie") is None and balloon.get("chain_of_ten") is None


def _on_gauge(size: float, units: str) -> float:
    return round(round(size / STEP[units]) * STEP[units], 2)


def _larger(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """More cells of the same balloons."""
    pattern, _ = next(patterns_in(data["build"]))
    if isinstance(pattern.more_cells, AllOf):
        return
    for factor in LARGER:
        changes = tuple(pattern.more_cells(data, factor))
        numbers = [one for one in changes if isinstance(one.value, int | float)]
        if not numbers or len(numbers) < len(changes):
            continue  # a course of other cells is looked for by itself
        said = ", ".join(f"{one.at[-1]}: {one.value}" for one in numbers)
        yield Remedy(message("make it larger: {keys}", keys=said), changes)


def _front_and_back(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """The same balloons at the front and behind it: in the chains, and in their colours."""
    tube = data["build"].get("tube")
    if not isinstance(tube, Mapping):
        return
    twins = TWINS.get(tube["chains"], {})
    words = message("use the same balloons for each front chain and the back chain behind it")
    for at, now in ((("build", "tube", "long"), tube["long"]), (COLOURS, data.get(COLOURS[0]))):
        if isinstance(now, Mapping):
            pairs = [(back, front) for back, front in twins.items() if {back, front} & now.keys()]
            alike = {
                one: now.get(front, now.get(back)) for back, front in pairs for one in (back, front)
            }
            yield Remedy(words, (Put(at, {**now, **alike}),))


def _held(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """What holds up a piece that does not hold itself."""
    yield Remedy(message("give it a pole: {right}", right="pole: true"), (Put(("pole",), True),))
    yield Remedy(message("hang it: {right}", right="hung: true"), (Put(("hung",), True),))


def _other_foot(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """The foot that the piece finds by itself, in place of the one that the file names."""
    named = [key for key in ("stand_on", "top") if data.get(key) is not None]
    for key in named:
        changes: tuple[Change, ...] = (TakeOut((key,)),)
        yield Remedy(message("take {key} out: it finds its foot", key=key), changes)


def _on_its_ends(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """An open tube that was given no foot, set on both of its ends."""
    tube = data["build"].get("tube")
    named = any(data.get(key) is not None for key in ("stand_on", "top"))
    if isinstance(tube, Mapping) and not tube.get("closed") and not named:
        words = message("set it on both of its ends: {right}", right=f"stand_on: {BOTH}")
        yield Remedy(words, (Put(("stand_on",), BOTH),))


def _two_layers(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """A wall of one sheet as one of two."""
    wall = data["build"].get("wall")
    if not isinstance(wall, Mapping) or wall["layers"] != 1:
        return
    between = wall.get("between") or wall["upright"]
    right = f"layers: 2, between: {between}"
    changes = (
        Put(("build", "wall", "layers"), 2),
        Put(("build", "wall", "between"), between),
    )
    yield Remedy(message("make the wall of two layers: {right}", right=right), changes)


def _four_chains(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """A flat tube of two chains as one of four, whose back is like its front."""
    tube = data["build"].get("tube")
    if not isinstance(tube, Mapping) or tube["chains"] != 2:
        return
    at, long, single = ("build", "tube"), tube["long"], tube.get("single") or tube["brace"]
    changes = [Put((*at, "chains"), 4), Put((*at, "single"), single)]
    if isinstance(long, Mapping):
        changes.append(Put((*at, "long"), {**long, "C": long["B"], "D": long["A"]}))
    right = f"chains: 4, single: {single}"
    yield Remedy(message("build it of four chains: {right}", right=right), tuple(changes))


COLOURS = ("colour_pattern",)
TWINS = {3: {"C": "A"}, 4: {"D": "A", "C": "B"}}
WAYS: Mapping[ProblemKind, tuple[Ways, ...]] = {
    ShapeKind.NOT_AT_REST: (_sizes,),
    ShapeKind.DOES_NOT_FIT: (_sizes, _larger),
    ShapeKind.DOES_NOT_CLOSE: (_sizes,),
    ShapeKind.RUNS_INTO_ITSELF: (_sizes, _larger),
    ShapeKind.AMBIGUOUS: (_two_layers, _four_chains, one_more_balloon, _sizes),
    ShapeKind.DOES_NOT_STAND: (_other_foot, _on_its_ends, _two_layers, _four_chains),
    ShapeKind.UNLIKE_BACK: (_front_and_back,),
    ShapeKind.TIES_CANNOT_MEET: (_sizes,),
    ShapeKind.NOTHING_MEETS: (_sizes,),
    ShapeKind.NOT_AS_DRAWN: (_sizes, word_ways, one_more_balloon),
    ShapeKind.REACHES_PAST: (lower_letters,),
    ShapeKind.FOLDS: (_two_layers, _four_chains, one_more_balloon, _sizes, _held),
    ShapeKind.DOES_NOT_HOLD_ITSELF: (_two_layers, _four_chains, _sizes, _held),
    ShapeKind.NOT_FOUND_TO_HOLD: (_two_layers, _four_chains, _held),
}
"""The ways of each kind of problem, the likeliest first."""
