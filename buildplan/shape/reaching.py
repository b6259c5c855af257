"""Whether a word reaches past what carries it: letters over its ends stand on nothing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.framework.assembly import outer_part
from buildplan.framework.model import Framework, Part
from buildplan.language.messages import Decimal, listing, message
from buildplan.shape.drawn import words_of
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.problems import Problem
from buildplan.source.suggestions import to_try

REACHES_SHARE = 1.0  # of a link: what a letter may reach out and still stand on most of its foot


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


def reaching_past(framework: Framework, shape: Shape) -> tuple[Problem, ...]:
    """A caution for each word that reaches past what carries it, at its letters there."""
    return tuple(
        Problem(
            ShapeKind.REACHES_PAST,
            message(
                "the word {word} is wider than what carries it ({parts}): it reaches {left} cm "
                "past it on the left and {right} cm on the right",
                word=one.word.rpartition(".")[2],
                parts=listing(one.carriers),
                left=Decimal(100 * one.left_m, 0),
                right=Decimal(100 * one.right_m, 0),
            ),
            to_try(message("make what carries it wider, or the word smaller or shorter")),
            joints=tuple(part.framework.joints[0] for part in one.letters),
        )
        for one in reaches(framework, shape)
    )


def _carriers(framework: Framework, letters: Sequence[Part]) -> list[Part]:
    """The parts that ties or balloons hold to some letters, and those that hold these."""
    own = {part.name for part in letters}
    part_of = {joint: part.name for part in framework.parts for joint in part.framework.joints}
    beside: dict[str, set[str]] = {}
    ends = [(link.start, link.finish) for link in framework.links]
    for together in (*ends, *(tie.joints for tie in framework.ties)):
        names = {part_of[joint] for joint in together if joint in part_of}
        for name in names:
            beside.setdefault(name, set()).update(names)
    reached = set(own)
    waiting = sorted(own)
    while waiting:
        for name in sorted(beside.get(waiting.pop(), set()) - reached):
            reached.add(name)
            waiting.append(name)
    return [part for part in framework.parts if part.name in reached - own]


def _across(shape: Shape, joints: Sequence[str]) -> tuple[float, float]:
    """From where to where joints lie, from left to right, in metres."""
    x: FloatArray = np.array([shape.at[joint][0] for joint in joints])
    return float(x.min()), float(x.max())
