"""Changes of a course: nothing is lost, what is put in is spread, and a course is written back."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from buildplan.framework.cells import CELL_KINDS
from buildplan.language.messages import Listing
from buildplan.patterns.course import cell_of, expand_course
from buildplan.patterns.course_edits import (
    Cells,
    added,
    as_items,
    made,
    mirrored,
    spread,
    taken_out,
)
from buildplan.patterns.tube_keys import Tube

ANY = st.one_of(st.sampled_from(sorted(CELL_KINDS)), st.just([2, 1]))
COURSES = st.lists(ANY, min_size=1, max_size=30).map(lambda names: tuple(map(cell_of, names)))


def laid(items: list[object]) -> Cells:
    tube = {"closed": False, "chains": 4, "long": "a", "brace": "a", "lock": "k", "course": items}
    return tuple(expand_course(Tube.model_validate(tube)))


@given(COURSES, st.integers(1, 4))
def test_a_course_is_written_as_it_is_laid(cells: Cells, times: int) -> None:
    assert laid(as_items(cells * times)) == cells * times


@given(COURSES, st.sampled_from(sorted(CELL_KINDS)), st.integers(1, 12))
def test_cells_that_are_put_in_are_all_that_is_new(cells: Cells, name: str, number: int) -> None:
    edit = added(cells, name, number)
    assert Counter(edit.cells) == Counter(cells) + Counter({cell_of(name): number})
    places = dict(edit.words.values)["places"]
    assert isinstance(places, Listing)
    assert all(isinstance(at, int) and 1 <= at <= len(cells) for at in places.items)
    rest = iter(edit.cells)
    assert all(cell in rest for cell in cells), "the others keep their order"
    there = sum(cell == cell_of(name) for cell in edit.cells)
    back = taken_out(edit.cells, name, there)
    assert back.cells == tuple(cell for cell in cells if cell.name != name)


@given(st.integers(6, 40), st.integers(1, 6))
def test_bends_put_into_a_plain_ring_lie_evenly(length: int, number: int) -> None:
    cells = (cell_of("straight"),) * length
    edit = added(cells, "tip", number)
    at = [i for i, cell in enumerate(edit.cells) if cell.name == "tip"]
    ways = [b - a for a, b in pairwise([*at, at[0] + len(edit.cells)])]
    assert max(ways) - min(ways) <= 1
    one_more = added(edit.cells, "tip", number)
    at = [i for i, cell in enumerate(one_more.cells) if cell.name == "tip"]
    ways = [b - a for a, b in pairwise([*at, at[0] + len(one_more.cells)])]
    assert max(ways) - min(ways) <= 3


@given(COURSES)
def test_spread_and_mirrored_courses_have_the_cells_they_had(cells: Cells) -> None:
    assert Counter(spread(cells).cells) == Counter(cells)
    twice = mirrored(mirrored(cells).cells)
    assert twice.cells == cells
    straight = sum(cell.name == "straight" for cell in cells)
    if straight:
        edit = made(cells, "straight", "fan", straight)
        assert not any(cell.name == "straight" for cell in edit.cells)
        assert len(edit.cells) == len(cells)
