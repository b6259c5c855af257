"""The course and its counts, and that the design knows a tube as the framework builds it."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import get_args

import pytest
from design_texts import VALID_FILES, read
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.cells import CELL_KINDS
from buildplan.framework.chain_roles import INNER, OUTER
from buildplan.framework.tube import LAYOUTS, TWINS
from buildplan.patterns.course import (
    INNER_CHAINS,
    OUTER_CHAINS,
    cell_counts,
    expand_course,
)
from buildplan.patterns.tube_checks import joint_counts
from buildplan.patterns.tube_keys import Tube
from buildplan.sequence.model import Kind, Stage
from buildplan.source.partial_validation import salvage
from buildplan.source.values import LabourKind, StageName

items = st.recursive(
    st.sampled_from(sorted(CELL_KINDS)) | st.tuples(st.integers(0, 5), st.integers(0, 5)).map(list),
    lambda inner: st.fixed_dictionaries(
        {"repeat": st.integers(1, 4), "cells": st.lists(inner, min_size=1, max_size=4)}
    ),
    max_leaves=10,
)
tubes = st.fixed_dictionaries(
    {
        "closed": st.booleans(),
        "chains": st.sampled_from([2, 3, 4]),
        "long": st.just("long"),
        "brace": st.just("long"),
        "lock": st.just("lock"),
        "course": st.lists(items, min_size=1, max_size=5),
    }
)


@given(tubes)
@settings(max_examples=100)
def test_counted_cells_are_those_that_are_laid_out(data: dict[str, object]) -> None:
    tube = Tube.model_validate(data)
    laid = expand_course(tube)
    assert cell_counts(tube.course) == Counter(laid)
    counts = joint_counts(salvage(Tube, data))
    assert counts is not None
    end = 0 if tube.closed else 1
    assert counts["A"] == sum(cell.outer for cell in laid) + end
    assert counts["B"] == sum(cell.inner for cell in laid) + end


def test_repeats_of_repeats_are_counted_without_being_laid_out() -> None:
    course: list[object] = ["straight"]
    for _ in range(12):
        course = [{"repeat": 500, "cells": course}]
    data = {"closed": True, "chains": 4, "long": "a", "brace": "a", "lock": "b", "course": course}
    (count,) = cell_counts(Tube.model_validate(data).course).values()
    assert count == 500**12


@pytest.mark.parametrize("path", VALID_FILES, ids=lambda path: path.stem)
def test_joints_that_may_be_named_are_those_that_are_built(path: Path) -> None:
    design = read_design(path)
    framework = build_framework(design)
    if (keys := design.build.keys_of(Tube)) is not None:
        counts = joint_counts(salvage(Tube, keys.model_dump(by_alias=True)))
        assert counts is not None
        known = {f"{letter}{i + 1}" for letter, n in counts.items() for i in range(n)}
        assert known == set(framework.joints)


@pytest.mark.parametrize("chains", [2, 3, 4])
def test_chains_are_those_of_the_framework(chains: int) -> None:
    sides = {
        side: tuple(lane.letter for lane in LAYOUTS[chains] if lane.role == side)
        for side in (OUTER, INNER)
    }
    assert sides == {OUTER: OUTER_CHAINS[chains], INNER: INNER_CHAINS[chains]}
    for letters in sides.values():
        for letter in letters:
            # a chain has a twin just where two chains lie on its side
            assert (TWINS[chains][letter] != letter) == (len(letters) == 2)


def test_stages_and_kinds_of_work_are_those_of_the_sequence() -> None:
    assert list(get_args(StageName)) == [stage.value for stage in Stage]
    assert set(get_args(LabourKind)) == {kind.value for kind in Kind}


def test_a_part_that_is_right_is_salvaged_whole() -> None:
    design = read(VALID_FILES[0].read_bytes())
    keys = design.build.keys_of(Tube)
    assert keys is not None
    data = keys.model_dump()
    salvaged = salvage(Tube, data)
    assert not salvaged.wrong
    assert salvaged.part == keys
    broken = salvage(Tube, {**data, "chains": 7, "course": ["fun"]})
    assert broken.wrong == {"chains", "course"}
    assert broken.right("closed", "long")
    assert not broken.right("closed", "chains")
