"""Who does what when."""

from datetime import datetime, timedelta
from itertools import pairwise

import pytest
from sequence_pieces import BALLOONS, STAR, listed, tube

from buildplan.framework.assembly import build_assembly
from buildplan.framework.model import Part
from buildplan.instructions.timetables import steps_with_times, timetable_lines
from buildplan.language.voice import Voice
from buildplan.patterns.column import Column, build_column
from buildplan.patterns.wall import Wall, build_wall
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.labour import MINUTES, PER, work_minutes
from buildplan.sequence.model import Kind
from buildplan.sequence.shared_work import PORTABLE
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.timetable import (
    Timetable,
    WorkPlace,
    crew_of,
    latest_starts,
    people_at,
    timetable,
    waiting_minutes,
)

STEPS = plan_steps(tube(STAR, closed=True))
BEAM = Wall(across=4, up=1, layers=2, row="long", upright="long", between="cross", lock="lock")
WORK = work_minutes(STEPS, {})


def star(people: int, inflate_only: int = 0, in_workshop: bool = True) -> Timetable:
    return timetable(STEPS, crew_of(people, inflate_only), {}, in_workshop)


def test_every_kind_has_its_minutes_and_its_unit() -> None:
    assert set(MINUTES) == set(PER) == set(Kind)


def test_minutes_of_one_are_the_sum_of_the_work() -> None:
    assert star(1).minutes == pytest.approx(WORK)
    assert sum(part.work for part in star(1).parts) == pytest.approx(WORK)


@pytest.mark.parametrize("people", [1, 2, 3, 4, 6])
def test_no_crew_beats_the_critical_path_or_its_share_of_the_work(people: int) -> None:
    for part in star(people).parts:
        assert part.minutes >= part.critical - 1e-9
        assert part.minutes >= part.work / people - 1e-9


def test_more_hands_are_never_slower() -> None:
    """Not so for list scheduling at large (Graham 1969), but of this piece we ask it."""
    minutes = [star(people).minutes for people in (1, 2, 3, 4)]
    assert minutes == sorted(minutes, reverse=True)


@pytest.mark.parametrize(("people", "inflate_only"), [(1, 0), (2, 0), (2, 1), (4, 2)])
def test_people_are_in_one_place_at_a_time_and_all_work_is_done(
    people: int, inflate_only: int
) -> None:
    for part in star(people, inflate_only).parts:
        for person in range(people):
            mine = sorted((s.start, s.finish) for s in part.spans if s.person == person)
            assert all(a[1] <= b[0] + 1e-9 for a, b in pairwise(mine))
        assert sum(span.work for span in part.spans) == pytest.approx(part.work)


def test_who_only_inflates_ties_nothing() -> None:
    ties = {Kind.PAIR, Kind.TIE_OFF, Kind.CHAIN, Kind.BRACE, Kind.SINGLE, Kind.LOCK}
    helping = 0
    for part in star(3, inflate_only=2).parts:
        for span in part.spans:
            if span.person > 0:
                helping += 1
                assert not ties.intersection(span.kinds)
    assert helping


def test_what_can_be_carried_is_made_in_the_workshop() -> None:
    workshop, site = star(2).parts
    assert (workshop.place, site.place) == (WorkPlace.WORKSHOP, WorkPlace.SITE)
    for step in STEPS:
        part = workshop if step.kind in PORTABLE else site
        assert step.number in part.step_times
    (only,) = star(2, in_workshop=False).parts
    assert only.place is WorkPlace.SITE
    assert only.minutes <= workshop.minutes + site.minutes


def test_a_lone_builder_is_told_to_call_for_help() -> None:
    assert star(1).short_of == {STEPS[-1].number: 2}
    assert star(2).short_of == {}
    assert "call for help" in timetable_lines(Voice(), star(1))[-1]


def test_waits_say_for_whom() -> None:
    site = star(2).parts[1]
    waited = waiting_minutes(site)
    assert set(waited) == {1}
    assert all(wait.for_person == 0 for wait in site.waits)
    idle = site.minutes * 2 - site.work
    assert waited[1] == pytest.approx(idle)


def test_own_minutes_replace_remembered_ones() -> None:
    slow = timetable(STEPS, crew_of(1), {"lock": MINUTES[Kind.LOCK] + 1})
    assert slow.minutes == pytest.approx(WORK + 160)


def test_the_latest_start_leaves_room_for_the_reserve_and_the_way() -> None:
    planned = star(2)
    opening = datetime(2031, 5, 3, 18, 0)
    starts = latest_starts(planned, opening, timedelta(minutes=30), reserve=0.5)
    workshop, site = planned.parts
    assert starts[WorkPlace.SITE] == opening - timedelta(minutes=site.minutes * 1.5)
    assert starts[WorkPlace.WORKSHOP] == starts[WorkPlace.SITE] - timedelta(
        minutes=30 + workshop.minutes * 1.5
    )


def test_json_says_where_when_and_who() -> None:
    planned = star(2)
    timed = steps_with_times(steps_as_json(STEPS), planned, Voice())
    assert [step["number"] for step in timed] == [step.number for step in STEPS]
    for step in timed:
        assert step["place"] in ("workshop", "site")
        assert 0 <= step["starts"] <= step["ends"]
        assert set(step["people"]) <= {"person 1", "person 2"}
        assert step["people"]
    lay = next(step.number for step in STEPS if step.kind is Kind.LAY)
    for step in timed[lay:]:
        for needed in step["needs"]:
            before = timed[needed - 1]
            if before["place"] == "site":
                assert before["ends"] <= step["starts"] + 0.01


def test_a_listed_piece_has_a_timetable_too() -> None:
    solid = listed([(f"v{i}", f"v{j}", "long") for i in range(4) for j in range(i)], lock=None)
    assert timetable(plan_steps(solid), crew_of(2), {}).minutes > 0


def test_two_are_at_each_joint_of_a_course_that_comes_on_others() -> None:
    """One holds and one locks: so they stay at one of two columns until it stands, and four build
    both at once."""
    keys = Column(around=4, rings=3, ring="long", between="cross", lock="lock")
    alone = build_column("Post", BALLOONS, keys)
    whole = build_assembly("Two", BALLOONS, [Part("L", alone), Part("R", alone)], [], [], "lock")
    steps = plan_steps(whole)
    (part,) = timetable(steps, crew_of(2), {}, in_workshop=False).parts
    copies = [(steps[step.repeats - 1], step) for step in steps if step.repeats is not None]
    joined = [pair for pair in copies if pair[0].of_kind(Kind.JOIN)]
    held = [step.number for pair in joined[1:] for step in pair]
    assert all(people_at(part, number) == (0, 1) for number in held)
    last, first = joined[-1][0].number, joined[0][1].number
    assert part.step_times[last][1] <= part.step_times[first][0]
    (part,) = timetable(steps, crew_of(4), {}, in_workshop=False).parts
    assert part.step_times[last][1] > part.step_times[first][0]


def test_equal_parts_below_a_beam_do_not_wait_for_equal_parts_on_it() -> None:
    """What stands on a beam is built when all that carries the beam is: were two pairs of equal
    parts taken for one, some would need one another in a circle."""
    keys = Column(around=4, rings=2, ring="long", between="cross", lock="lock")
    post = build_column("Post", BALLOONS, keys)
    high = build_column("High", BALLOONS, keys.model_copy(update={"rings": 3}))
    beam = build_wall("Beam", BALLOONS, BEAM)
    parts = [Part("L", post), Part("R", post), Part("B", beam), Part("T", high), Part("U", high)]
    on_posts = [("L.B1", "B.A1"), ("R.B1", "B.A5")]
    on_beam = [("B.B1", "T.A1"), ("B.B5", "U.A1")]
    whole = build_assembly("Tower", BALLOONS, parts, [*on_posts, *on_beam], [], "lock")
    steps = plan_steps(whole)
    assert [step.part for step in steps if step.repeats] == [*"RR", *"UUU"]
    (part,) = timetable(steps, crew_of(2), {}, in_workshop=False).parts
    done = [
        max(part.step_times[step.number][1] for step in steps if step.part == name)
        for name in "LRBTU"
    ]
    assert done == sorted(done)


def test_a_crew_needs_somebody_who_can_tie() -> None:
    with pytest.raises(ValueError, match="at least one"):
        crew_of(2, inflate_only=2)
