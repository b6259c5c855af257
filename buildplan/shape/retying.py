"""Ties that cannot be made, or turn writing round: which joints of the same ties go together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.framework.model import Framework
from buildplan.shape.blocks import Block, Partner, Spots, blocks_of, partners_of
from buildplan.shape.meeting import UPRIGHT_ONLY, turned, turns_between
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.placing import MISFIT_SHARE, link_m, set_down

APART_M = 1e3  # what is as good as never


@dataclass(frozen=True)
class _Fit:
    """Which of the others each joint goes to, by number, and how far they miss at most."""

    order: tuple[int, ...]
    miss_m: float


def retied(framework: Framework, shapes: Sequence[Shape]) -> Mapping[str, str]:
    """For a block whose ties are wrong: what each of its tied joints is to be tied to in place of
    what it is tied to now, among the same joints, so that they meet and writing faces the front.
    Empty where no order of them does, or nothing is wrong."""
    blocks, partners = blocks_of(framework, shapes), partners_of(framework)
    a_link_m = link_m(framework)
    first = next((block for block in blocks if block.has_front), blocks[0])
    done: list[Block] = [first]
    for block in (one for one in blocks if one is not first):
        inner = {
            own: [one for one in partners.get(own, ()) if any(one[0] in b.spots for b in done)]
            for own in block.spots
        }
        ties = [one for found in inner.values() for one in found]
        if not ties:
            continue
        both = {**_within(done, partners), **inner}
        if set_down([*done, block], both, a_link_m).problems:
            placed = set_down(done, _within(done, partners), a_link_m).spots
            found = _reordered(block, ties, placed, a_link_m)
            if found:
                return found
        done.append(block)
    return {}


def _within(
    blocks: Sequence[Block], partners: Mapping[str, Sequence[Partner]]
) -> dict[str, list[Partner]]:
    """The ties of blocks to one another."""
    spots = {joint for block in blocks for joint in block.spots}
    return {
        own: [one for one in partners.get(own, ()) if one[0] in spots]
        for block in blocks
        for own in block.spots
    }


def _reordered(
    block: Block, ties: Sequence[Partner], placed: Spots, a_link_m: float
) -> Mapping[str, str]:
    own = {joint: block.spots[joint] for _, _, joint in ties}
    goals = {other: placed[other] for other, _, _ in ties}
    angles = UPRIGHT_ONLY if block.has_front else turns_between(goals, own, a_link_m)
    fits = list(_fits(block, ties, placed, angles))
    best = min(fits, key=lambda fit: fit.miss_m, default=None)
    if best is None or best.miss_m > MISFIT_SHARE * a_link_m:
        return {}
    return {
        joint: ties[other][0]
        for (now, _, joint), other in zip(ties, best.order, strict=True)
        if ties[other][0] != now
    }


def _fits(
    block: Block, ties: Sequence[Partner], placed: Spots, angles: Sequence[float]
) -> Iterator[_Fit]:
    points = np.array([block.spots[joint] for _, _, joint in ties])
    others = np.array([placed[other] for other, _, _ in ties])
    length = np.array([gap for _, gap, _ in ties])
    unlike = length[:, None] != length[None]
    headings = np.vstack([np.eye(3), -np.eye(3)]) if length.any() else np.zeros((1, 3))
    for angle in angles:
        at = points @ turned(angle).T
        for heading in headings:
            goals = others + length[:, None] * heading
            for goal in goals:
                yield _fit(at, goals, unlike, goal - at[0])


def _fit(at: FloatArray, goals: FloatArray, unlike: FloatArray, move: FloatArray) -> _Fit:
    from scipy.optimize import linear_sum_assignment  # takes longer to import than a check has

    apart = np.linalg.norm(at[:, None] + move - goals[None], axis=2) + APART_M * unlike
    _, order = linear_sum_assignment(apart)
    move = (goals[order] - at).mean(axis=0)
    miss = float(np.linalg.norm(at + move - goals[order], axis=1).max())
    return _Fit(tuple(int(one) for one in order), miss)
