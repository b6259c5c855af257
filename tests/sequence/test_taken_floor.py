"""Squares of the floor that are taken, against every body looked at for every spot."""

from __future__ import annotations

import numpy as np
import pytest
from awkward_pieces import grid
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.design.building import build_framework
from buildplan.evaluation.evaluating import resting_shape
from buildplan.sequence import hand_reach
from buildplan.sequence.courses import order_of
from buildplan.sequence.model import Access
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.reach import ways_to_joints
from buildplan.sequence.taken_floor import taken_floor
from buildplan.shape.model import FloatArray

HEADROOMS_M = (0.6, 1.2)


def off_runs(spots: FloatArray, starts: FloatArray, runs: FloatArray) -> FloatArray:
    """How far each spot lies from each run, (spots, bodies)."""
    away = spots[:, None] - starts
    share = np.clip((away * runs).sum(axis=2) / (runs**2).sum(axis=1), 0, 1)
    return np.asarray(np.linalg.norm(away - share[..., None] * runs, axis=2))


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 2**32 - 1), st.integers(1, 300), st.sampled_from([0.3, 0.7, 1.2, 1.5]))
def test_what_is_told_of_a_spot_is_what_every_body_tells(
    seed: int, count: int, headroom: float
) -> None:
    random = np.random.default_rng(seed)
    starts, runs = random.uniform(-1, 1, (count, 2)), random.uniform(-0.2, 0.2, (count, 2))
    kept, lowest = random.uniform(0.02, 0.2, count), random.uniform(0, 2, count)
    when, spots = random.integers(0, 9, count).astype(float), random.uniform(-2, 2, (400, 2))
    floor = taken_floor(starts, runs, kept, lowest, when, HEADROOMS_M)
    taken, free = floor.taken_and_free(spots, headroom, 4)
    there = (when <= 4) & (lowest < headroom)
    known = np.asarray(((off_runs(spots, starts, runs) <= kept) & there).any(axis=1))
    assert known[taken].all()
    assert not known[free].any()
    assert not (taken & free).any()


def test_of_most_spots_under_many_bodies_it_is_told() -> None:
    random = np.random.default_rng(3)
    starts, runs = random.uniform(-1, 1, (400, 2)), np.full((400, 2), 0.1)
    kept, zero = np.full(400, 0.2), np.zeros(400)
    floor = taken_floor(starts, runs, kept, zero, zero, HEADROOMS_M)
    spots = random.uniform(-2, 2, (1000, 2))
    taken, free = floor.taken_and_free(spots, 0.6, 0)
    assert (taken | free).mean() > 0.9
    assert taken.mean() > 0.2
    assert free.mean() > 0.5


def test_a_block_is_got_at_the_same_way_square_by_square(monkeypatch: pytest.MonkeyPatch) -> None:
    design = grid(6, 6, 6)
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    ordered = in_order(operations(framework, order_of(framework, shape.at)))
    found = []
    for many in (0, 10**9):
        monkeypatch.setattr(hand_reach, "_MANY_BODIES", many)
        found.append(ways_to_joints(framework, shape, ordered))
    assert found[0] == found[1]
    assert {Access.DIRECT, Access.STOOL} <= set(found[0].values())
