"""Changes to a file: what is not changed stays, comments too; and straight runs of a course."""

from __future__ import annotations

from collections import Counter

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from buildplan.desk.list_edits import inserted
from buildplan.framework.cells import CELL_KINDS
from buildplan.patterns.course import expand_course
from buildplan.patterns.course_runs import moved_joint, moved_place, run_changes, stretches
from buildplan.patterns.growing import scaled
from buildplan.patterns.tube_keys import Tube
from buildplan.source.file_changes import CannotChangeError, changed_data, changed_text
from buildplan.source.suggestions import Change, Put, Rename, TakeOut
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

TEXT = """\
# a comment
name: "Trial"   # quoted
sizes: {long: 8, short: 6.5}  # two
course:
  - straight
  - straight   # inside the run
  - tip
  - {repeat: 3, cells: [straight]}   # up
  - repeat: 2
    cells: [fan, straight, straight, dip]
stand_on: [A1, 'A2']
"""


def test_comments_stay_and_nothing_else_changes() -> None:
    changes = [
        Put(("name",), "Other: piece"),
        Put(("sizes", "short"), 7.25),
        Put(("course", 0), {"repeat": 4, "cells": ["straight"]}, 1),
        Put(("course", 3, "repeat"), 6),
        Put(("course", 4, "cells", 1), "straight", 2),
        Put(("stand_on", 1), "A5"),
    ]
    text, kept = changed_text(TEXT, changes)
    assert kept
    assert yaml.safe_load(text) == changed_data(yaml.safe_load(TEXT), changes)
    assert text.startswith("# a comment\n")
    for comment in ("# quoted", "# two", "# up"):
        assert comment in text
    assert "sizes: {long: 8, short: 7.25}  # two" in text
    assert "- {repeat: 6, cells: [straight]}   # up" in text
    assert "cells: [fan, straight, dip]" in text
    assert "stand_on: [A1, A5]" in text


def test_a_value_that_an_alias_shares_makes_the_file_anew() -> None:
    text = "a: &one {n: 1}  # first\nb: *one\n"
    made, kept = changed_text(text, [Put(("a", "n"), 2)])
    assert not kept
    assert yaml.safe_load(made) == {"a": {"n": 2}, "b": {"n": 1}}


ITEMS = st.recursive(
    st.one_of(st.just("straight"), st.sampled_from(sorted(CELL_KINDS)), st.just([2, 1])),
    lambda inner: st.fixed_dictionaries(
        {"repeat": st.integers(1, 5), "cells": st.lists(inner, min_size=1, max_size=4)}
    ),
    max_leaves=8,
)
COURSES = st.lists(ITEMS, min_size=1, max_size=6)


def laid(course: list[object]) -> list[str]:
    tube = {"closed": False, "chains": 4, "long": "a", "brace": "a", "lock": "k", "course": course}
    return [cell.name for cell in expand_course(Tube.model_validate(tube))]


@given(COURSES, st.floats(0.2, 4))
def test_only_straight_runs_grow_and_turns_keep_their_order(
    course: list[object], factor: float
) -> None:
    data = {"course": course}
    made = changed_data(data, run_changes(course, factor, ("course",)))["course"]
    before, after = laid(course), laid(made)
    assert [name for name in before if name != "straight"] == [
        name for name in after if name != "straight"
    ]
    told = list(stretches(course, factor))
    assert sum(stretch.before for stretch in told) == len(before)
    assert sum(stretch.after for stretch in told) == len(after)
    runs = Counter((one.before, one.after) for one in told if one.before > 1)
    assert all(now == scaled(was, factor) for was, now in runs)


@given(COURSES, st.floats(0.2, 4))
def test_joints_move_with_their_cells(course: list[object], factor: float) -> None:
    told = list(stretches(course, factor))
    outer = sum(one.outer * one.before for one in told)
    after = sum(one.outer * one.after for one in told)
    numbers = [int(moved_joint(f"A{i + 1}", told, 4)[1:]) for i in range(outer + 1)]
    assert numbers == sorted(numbers)
    assert numbers[0] == 1
    assert numbers[-1] == after + 1
    # in a course that is not scaled nothing moves
    still = list(stretches(course, 1.0))
    assert all(moved_joint(f"B{i + 1}", still, 4) == f"B{i + 1}" for i in range(20))


ANY_CHANGES = [
    [Put(("sizes", "wide"), 9)],
    [Put(("sizes", "wide"), 9), Put(("sizes", "deep"), [1, {"a b": "x: y"}])],
    [Put(("more",), {"a": True}), Put(("name",), "Other")],
    [Put(("more", "deep", "key"), 1.5)],
    [Put(("course",), ["fan", {"repeat": 2, "cells": ["tip"]}])],
    [TakeOut(("sizes", "long"))],
    [TakeOut(("sizes", "short"))],
    [TakeOut(("course", 2))],
    [TakeOut(("course", 4)), TakeOut(("course", 0))],
    [TakeOut(("course", 4, "cells", 3))],
    [TakeOut(("name",)), Rename(("stand_on",), "foot")],
    [Rename(("name",), "title"), Rename(("sizes", "long"), "a b")],
]


@pytest.mark.parametrize("changes", ANY_CHANGES)
def test_every_change_is_made_in_the_text(changes: list[Change]) -> None:
    """What PyYAML, another reader of the format, reads is what the changes ask for."""
    text, kept = changed_text(TEXT, changes)
    assert kept
    assert yaml.safe_load(text) == changed_data(yaml.safe_load(TEXT), changes)
    assert "# a comment" in text
    untouched = [line for line in TEXT.splitlines() if "fan, straight, straight" not in line]
    assert sum(line in text.splitlines() for line in untouched) >= len(untouched) - 5


def test_a_place_that_is_not_there_is_refused() -> None:
    for change in (TakeOut(("nothing",)), Rename(("nothing",), "a"), Put(("name", "a"), 1)):
        with pytest.raises(CannotChangeError):
            changed_data(yaml.safe_load(TEXT), [change])


# YAML 1.2.2, 10.3.2 (core schema): words such as `on` are text. YAML 1.1 readers take them as true
# or false, so they have quotes where they are values, which people seldom write.
def test_where_a_part_stands_is_written_as_people_write_it() -> None:
    text = "parts:\n  - {name: L}\n  - name: M\n"
    changes = [Put(("parts", 0, "on"), "M"), Put(("parts", 1, "on"), ["L", "yes"])]
    made, kept = changed_text(text, changes)
    assert kept
    assert made == 'parts:\n  - {name: L, on: M}\n  - name: M\n    on: [L, "yes"]\n'
    wanted = {"parts": [{"name": "L", "on": "M"}, {"name": "M", "on": ["L", "yes"]}]}
    assert plain(load(made, "a file").root) == wanted
    more = inserted(made, ("parts", 2), {"name": "P", "on": "L"})
    assert more == f"{made}  - {{name: P, on: L}}\n"


def test_ends_stay_ends_and_cells_move_as_far_along_their_run() -> None:
    """Of 4 cells that become 8, a corner and 4 that become 8: the corner is the ninth."""
    course = list(stretches([{"repeat": 4, "cells": ["straight"]}, "tip", *["straight"] * 4], 2.0))
    assert [moved_place(place, course, 4) for place in ("start", "finish", "ends")] == [
        *("start", "finish", "ends")
    ]
    assert [moved_place(f"cell {n}", course, 4) for n in (1, 3, 5, 6)] == [
        *("cell 1", "cell 5", "cell 9", "cell 10")
    ]
    assert moved_place("A5", course, 4) == moved_joint("A5", course, 4) == "A9"
