"""The tube: long chains side by side, held apart by braces, along a course of cells."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from buildplan.framework.model import Framework
from buildplan.framework.places import ENDS, cell_place
from buildplan.framework.tube import LAYOUTS, TubePlan, build_tube
from buildplan.language.messages import listing, mark
from buildplan.patterns.colour_runs import ColourRun, tube_runs
from buildplan.patterns.course import cell_counts, expand_course
from buildplan.patterns.course_runs import moved_joint, moved_place, run_changes, stretches
from buildplan.patterns.extra_keys import extra_links
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    Colouring,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Whole,
    link,
)
from buildplan.patterns.pattern_joints import run_words
from buildplan.patterns.tube_checks import check_tube, joint_counts
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.tube_lengths import chain_letters
from buildplan.source.mistake import Mistake, Path
from buildplan.source.partial_validation import salvage
from buildplan.source.suggestions import Put


def joints_of_tube(given: Given, of_part: JointsOf) -> Joints | None:
    """The joints of a tube, chain by chain."""
    counts = joint_counts(salvage(Tube, given))
    if counts is None:
        return None
    labels = {f"{letter}{i + 1}": None for letter, n in counts.items() for i in range(n)}
    runs = (run_words(f"{letter}1", f"{letter}{n}") for letter, n in counts.items())
    part = salvage(Tube, given).part
    cells = sum(cell_counts(part.course).values())
    places = frozenset(cell_place(i + 1) for i in range(cells))
    return Joints(labels, listing(runs), places if part.closed else places | frozenset(ENDS))


def _tube_plan(tube: Tube) -> TubePlan:
    letters = [lane.letter for lane in LAYOUTS[tube.chains]]
    by_letter: dict[str, str] = (
        dict(tube.long.items())
        if isinstance(tube.long, dict)
        else dict.fromkeys(letters, tube.long)
    )
    return TubePlan(
        closed=tube.closed,
        long={letter: [by_letter[letter]] for letter in letters},
        brace=tube.brace,
        single=tube.single,
        lock=tube.lock,
        extra=extra_links(tube.extra, tube.brace),
        course=expand_course(tube),
    )


def tube_framework(tube: Tube, making: Making) -> Framework:
    """The framework of a tube."""
    return build_tube(making.name, making.balloons, _tube_plan(tube))


def _check(given: Given, whole: Whole) -> Iterator[Mistake]:
    yield from check_tube(salvage(Tube, given), given, whole.balloons, whole.colour_pattern)


def closed_chains(given: Given, part: str) -> Mapping[str, int]:
    """How many balloons a closed tube has in each long chain that a colour pattern of `part`
    goes round; none where that cannot be told."""
    tube = salvage(Tube, given)
    lengths = joint_counts(tube)
    if lengths is None or not tube.part.closed:
        return {}
    letters = chain_letters(tube.part.chains) if part == "long" else [part]
    return {letter: lengths[letter] for letter in letters if letter in lengths}


def _coloured(framework: Framework, tube: Tube, part: str) -> Iterator[ColourRun]:
    yield from tube_runs(framework, part)


def _more_cells(data: Given, factor: float) -> Iterator[Put]:
    at: Path = ("build", "tube", "course")
    yield from run_changes(data["build"]["tube"]["course"], factor, at)
    yield from moved_feet(data, data["build"]["tube"], factor)


def moved_feet(data: Given, tube: Any, factor: float) -> Iterator[Put]:
    """What it stands on or has at its top, and the joints of further balloons, where they have gone
    to."""
    course = list(stretches(tube["course"], factor))
    for i, extra in enumerate(tube.get("extra") or ()):
        at: Path = ("build", "tube", "extra", i)
        joints, at = (extra, at) if isinstance(extra, list) else (extra["joints"], (*at, "joints"))
        for end, label in enumerate(joints):
            yield Put((*at, end), moved_joint(label, course, tube["chains"]))
    for key in ("stand_on", "top"):
        given = data.get(key) or ()
        one = isinstance(given, str)
        for i, place in enumerate([given] if one else given):
            moved = moved_place(place, course, tube["chains"])
            if moved != place:
                yield Put((key,) if one else (key, i), moved)


TUBE_PARTS = ("A", "B", "C", "D", "long", "brace")
TUBE_COLOURS_WORDS = mark("use a chain's letter, long or brace")
A_LONG_CHAIN, A_BRACE = mark("a long chain"), mark("a brace")
PATTERN = Pattern(
    name="tube",
    about=mark("long chains side by side along a course of cells"),
    keys=Tube,
    uses=(
        link("long", A_LONG_CHAIN),
        link("long.*", A_LONG_CHAIN),
        link("brace", A_BRACE),
        link("single", mark("a single")),
        EXTRA,
        LOCK,
    ),
    joints=joints_of_tube,
    build=tube_framework,
    colours=Colouring(TUBE_PARTS, ("long",), _coloured, TUBE_COLOURS_WORDS, closed_chains),
    more_cells=_more_cells,
    check=_check,
    most_joints=0,
)
