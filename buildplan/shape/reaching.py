"""Whether a word reaches past what carries it, or a part stands off the middle of that."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.design.measures import Units, side_words
from buildplan.framework.assembly import is_of_part, outer_part
from buildplan.framework.model import Framework, Part
from buildplan.language.messages import Measure, listing, mark, message
from buildplan.shape.drawn import words_of
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.problems import Problem
from buildplan.source.suggestions import to_try

REACHES_SHARE = 1.0  # of a link: what a letter may reach out and still stand on most of its foot


# Of a link: what stands farther from the middle than the one and nearer than the other was meant to
# stand there; and how far below the top of what carries it a part may begin.
OFF_SHARES = 0.25, 0.75
ABOVE_SHARE = 0.3
FOOT_SHARE = 0.3  # of a link: joints this near the lowest are of the foot


TO_THE_RIGHT = mark("{part} stands {off} to the right of the middle of {parts}")
TO_THE_LEFT = mark("{part} stands {off} to the left of the middle of {parts}")


@dataclass(frozen=True)
class OffMiddle:
    """A part or a word that stands `off_m` to the right of the middle of what carries it: by about
    half a link, or `far`, though it is said to stand in the middle."""

    name: str
    carriers: tuple[str, ...]
    off_m: float
    far: bool
    parts: tuple[Part, ...]


@dataclass(frozen=True)
class Overhang:
    """A word that reaches past what carries it: by how much on each side, and the letters there."""

    word: str
    carriers: tuple[str, ...]
    left_m: float
    right_m: float
    letters: tuple[Part, ...]


def reaches(framework: Framework, shape: Shape) -> Iterator[Overhang]:
    """The words that are wider than the parts they are tied to, by more than a letter may be."""
    words = words_of(framework)
    if not words:
        return
    lengths = [framework.balloons[link.balloon].tie_to_tie_m for link in framework.links]
    near_m = REACHES_SHARE * float(np.mean(lengths))
    for word, letters in words.items():
        carriers = _carriers(framework, letters)
        if not carriers:
            continue
        low, high = _across(shape, [j for part in carriers for j in part.framework.joints])
        own = [(part, *_across(shape, part.framework.joints)) for part in letters]
        left = max(0.0, low - min(at for _, at, _ in own))
        right = max(0.0, max(to for _, _, to in own) - high)
        past = [part for part, at, to in own if at < low - near_m or to > high + near_m]
        if past:
            names = tuple(dict.fromkeys(outer_part(f"{part.name}.") for part in carriers))
            yield Overhang(word, names, left, right, tuple(past))


def reaching_past(framework: Framework, shape: Shape, units: Units) -> tuple[Problem, ...]:
    """A caution for each word that reaches past what carries it, at its letters there."""
    return tuple(
        Problem(
            ShapeKind.REACHES_PAST,
            message(
                "the word {word} is wider than what carries it ({parts}): it reaches {left} "
                "past it on the left and {right} on the right",
                word=one.word.rpartition(".")[2],
                parts=listing(one.carriers),
                left=_centimetres(one.left_m, units),
                right=_centimetres(one.right_m, units),
            ),
            to_try(message("make what carries it wider, or the word smaller or shorter")),
            joints=tuple(part.framework.joints[0] for part in one.letters),
        )
        for one in reaches(framework, shape)
    )


def off_the_middle(framework: Framework, shape: Shape) -> Iterator[OffMiddle]:
    """What stands on others and about half a link from their middle: as near as joints meet.
    What stands farther off is taken to be meant so where ties alone say where it stands; else
    neither its own middle nor that of its foot is near theirs."""
    lengths = [framework.balloons[link.balloon].tie_to_tie_m for link in framework.links]
    link_m = float(np.mean(lengths))
    words = words_of(framework)
    of_words = {part.name for parts in words.values() for part in parts}
    alone = {part.name: [part] for part in framework.parts if part.name not in of_words}
    beside = _beside(framework)
    for name, parts in (*words.items(), *alone.items()):
        own = {part.name for part in parts}
        said = parts[0].on
        carriers = [
            part
            for part in framework.parts
            if part.name not in own and any(part.name in beside.get(one, ()) for one in own)
            if not said or any(part.name == on or is_of_part(part.name, on) for on in said)
        ]
        below = [joint for part in carriers for joint in part.framework.joints]
        joints = [joint for part in parts for joint in part.framework.joints]
        above_m = ABOVE_SHARE * link_m
        if not below or (not said and _lowest(shape, joints) < _highest(shape, below) - above_m):
            continue
        foot = [j for j in joints if shape.at[j][1] < _lowest(shape, joints) + FOOT_SHARE * link_m]
        middle = math.fsum(_across(shape, below)) / 2
        off, foot_off = (math.fsum(_across(shape, one)) / 2 - middle for one in (joints, foot))
        near_m, far_m = (share * link_m for share in OFF_SHARES)
        far = bool(said) and min(abs(off), abs(foot_off)) >= far_m
        if far or near_m < abs(off) < far_m:
            within = f"{name.rpartition('.')[0]}." if said else ""
            names = [outer_part(f"{part.name.removeprefix(within)}.") for part in carriers]
            yield OffMiddle(
                name.rpartition(".")[2], tuple(dict.fromkeys(names)), off, far, tuple(parts)
            )


def standing_off(framework: Framework, shape: Shape, units: Units) -> tuple[Problem, ...]:
    """A caution for each part or word that stands off the middle of what carries it."""
    return tuple(
        Problem(
            ShapeKind.OFF_THE_MIDDLE,
            message(
                TO_THE_RIGHT if one.off_m > 0 else TO_THE_LEFT,
                part=one.name,
                off=_centimetres(abs(one.off_m), units),
                parts=listing(one.carriers),
            ),
            to_try(
                message(
                    "turn it so that its middle comes down there (stand_on: its joints), or set it "
                    "on what is as wide as its foot"
                )
                if one.far
                else message("make one of them a balloon wider")
            ),
            joints=tuple(part.framework.joints[0] for part in one.parts[:1]),
        )
        for one in off_the_middle(framework, shape)
    )


def _centimetres(length_m: float, units: Units) -> Measure:
    """A length as its reader has it; scripts read centimetres."""
    return Measure(side_words(length_m, units), 100 * length_m)


def _carriers(framework: Framework, letters: Sequence[Part]) -> list[Part]:
    """The parts that ties or balloons hold to some letters, and those that hold these."""
    own, beside = {part.name for part in letters}, _beside(framework)
    reached = set(own)
    waiting = sorted(own)
    while waiting:
        for name in sorted(beside.get(waiting.pop(), set()) - reached):
            reached.add(name)
            waiting.append(name)
    return [part for part in framework.parts if part.name in reached - own]


def _beside(framework: Framework) -> Mapping[str, set[str]]:
    """The parts that ties or balloons hold to each part, itself among them."""
    part_of = {joint: part.name for part in framework.parts for joint in part.framework.joints}
    beside: dict[str, set[str]] = {}
    ends = [(link.start, link.finish) for link in framework.links]
    for together in (*ends, *(tie.joints for tie in framework.ties)):
        names = {part_of[joint] for joint in together if joint in part_of}
        for name in names:
            beside.setdefault(name, set()).update(names)
    return beside


def _lowest(shape: Shape, joints: Sequence[str]) -> float:
    return float(min(shape.at[joint][1] for joint in joints))


def _highest(shape: Shape, joints: Sequence[str]) -> float:
    return float(max(shape.at[joint][1] for joint in joints))


def _across(shape: Shape, joints: Sequence[str]) -> tuple[float, float]:
    """From where to where joints lie, from left to right, in metres."""
    x: FloatArray = np.array([shape.at[joint][0] for joint in joints])
    return float(x.min()), float(x.max())
