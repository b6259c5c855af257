"""The way to the end of the work, and sharing it among people."""

import random
from collections.abc import Mapping, Sequence
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from buildplan.sequence.network import INFLATE, TIE, Activity, in_needs_order
from buildplan.sequence.scheduling import Person, Schedule, schedule, ways_to_the_end


def people(count: int) -> list[Person]:
    return [Person(i + 1) for i in range(count)]


def on_arrows(arcs: Mapping[tuple[int, int], float]) -> list[Activity]:
    """Activities between numbered events: each needs those that end where it starts."""
    return [
        Activity(f"{i}-{j}", minutes, tuple(f"{a}-{b}" for a, b in arcs if b == i))
        for (i, j), minutes in arcs.items()
    ]


def test_taylor_chapter_8() -> None:
    """Taylor, Introduction to Management Science, chapter 8, solution (ES EF LS LF slack),
    as read at https://ar.scribd.com/doc/47113515/TaylCh08; see checks.md 8.1."""
    times = {(1, 2): 7, (1, 3): 10, (2, 4): 6, (3, 4): 5, (3, 5): 4, (4, 5): 3, (5, 6): 2}
    left = ways_to_the_end(on_arrows(times))
    assert max(left.values()) == 20
    table = {
        "1-2": (0, 7, 2, 9, 2),
        "1-3": (0, 10, 0, 10, 0),
        "2-4": (7, 13, 9, 15, 2),
        "3-4": (10, 15, 10, 15, 0),
        "3-5": (10, 14, 14, 18, 4),
        "4-5": (15, 18, 15, 18, 0),
        "5-6": (18, 20, 18, 20, 0),
    }
    for name, (_, _, latest_start, _, _) in table.items():
        assert 20 - left[name] == latest_start, name


def test_milwaukee_paper() -> None:
    """Heizer and Render, Operations Management, 'Milwaukee Paper': times as seen in checks.md
    8.2; predecessors, answer (15 weeks by A-C-E-G-H) and slacks from memory, and they agree
    with a recomputation there."""
    times = {"A": 2, "B": 3, "C": 2, "D": 4, "E": 4, "F": 3, "G": 5, "H": 2}
    needs = {"C": "A", "D": "AB", "E": "C", "F": "C", "G": "DE", "H": "FG"}
    left = ways_to_the_end(
        [Activity(name, weeks, tuple(needs.get(name, ""))) for name, weeks in times.items()]
    )
    assert left["A"] == 15
    # what is critical starts when all before it is done; the others may wait for their slack
    soonest = {"A": 0, "B": 0, "C": 2, "D": 3, "E": 4, "F": 4, "G": 8, "H": 13}
    slack = {name: 15 - left[name] - soonest[name] for name in times}
    assert slack == {**dict.fromkeys("ACEGH", 0), "B": 1, "D": 1, "F": 6}


@st.composite
def projects(draw: st.DrawFn) -> list[Activity]:
    count = draw(st.integers(1, 25))
    activities = []
    for i in range(count):
        needs = draw(st.sets(st.integers(0, i - 1), max_size=3)) if i else set()
        minutes = draw(st.integers(1, 20))
        activities.append(Activity(f"a{i}", minutes, tuple(f"a{n}" for n in sorted(needs))))
    return activities


def assert_can_be_done(
    activities: Sequence[Activity], crew: Sequence[Person], planned: Schedule
) -> None:
    done = {one.activity: one for one in planned.assignments}
    assert set(done) == {activity.id for activity in activities}
    assert len(planned.assignments) == len(activities)
    for activity in activities:
        one = done[activity.id]
        assert one.finish == one.start + activity.minutes
        assert len(set(one.people)) == activity.people
        assert all(activity.skill in crew[person].skills for person in one.people)
        assert all(done[need].finish <= one.start for need in activity.needs)
    for person in range(len(crew)):
        mine = sorted((o.start, o.finish) for o in planned.assignments if person in o.people)
        assert all(before[1] <= after[0] for before, after in pairwise(mine))


@given(projects(), st.integers(1, 4))
def test_list_scheduling_keeps_its_bound(activities: list[Activity], count: int) -> None:
    """Graham 1969 (SIAM J. Appl. Math. 17, 416-429; from memory): with N people a list schedule
    takes at most work/N + (1 - 1/N) x critical path, so at most (2 - 1/N) times the optimum;
    and never less than either."""
    planned = schedule(activities, people(count))
    assert_can_be_done(activities, people(count), planned)
    work = sum(activity.minutes for activity in activities)
    critical = max(ways_to_the_end(activities).values())
    assert planned.minutes <= work / count + (1 - 1 / count) * critical + 1e-9
    assert planned.minutes >= max(critical, work / count) - 1e-9


@given(projects())
def test_one_person_takes_all_the_work_and_hands_enough_take_the_critical_path(
    activities: list[Activity],
) -> None:
    assert schedule(activities, people(1)).minutes == sum(a.minutes for a in activities)
    enough = schedule(activities, people(len(activities)))
    assert enough.minutes == max(ways_to_the_end(activities).values())


def test_who_cannot_tie_is_not_asked_to() -> None:
    crew = [Person(1), Person(2, frozenset({INFLATE}))]
    activities = [Activity(f"size {i}", 1, skill=INFLATE) for i in range(6)]
    activities += [Activity(f"tie {i}", 1, (f"size {i}",), TIE) for i in range(6)]
    planned = schedule(activities, crew)
    assert_can_be_done(activities, crew, planned)
    assert planned.minutes == 7  # one sized ahead, then side by side


def test_work_for_two_waits_until_two_are_free() -> None:
    activities = [Activity("a", 2), Activity("b", 5), Activity("lift", 1, ("a",), people=2)]
    planned = schedule(activities, people(2))
    lift = next(one for one in planned.assignments if one.activity == "lift")
    assert (lift.start, lift.people) == (5, (0, 1))


def test_too_few_hands_are_refused() -> None:
    with pytest.raises(ValueError, match="lift takes 2 who can tie"):
        schedule([Activity("lift", 1, people=2)], people(1))


@pytest.mark.parametrize("find", [in_needs_order, ways_to_the_end])
def test_circles_and_missing_needs_are_refused(find: object) -> None:
    assert callable(find)
    with pytest.raises(ValueError, match="circle"):
        find([Activity("a", 1, ("b",)), Activity("b", 1, ("a",))])
    with pytest.raises(ValueError, match="not there: x"):
        find([Activity("a", 1, ("x",))])


def shortest(activities: Sequence[Activity], count: int) -> float:
    """The least time in which `count` equal people can do it: every order of starting is
    tried, each activity as early as it can be (such schedules hold an optimal one: Kolisch
    1996, from memory), cut off by the longest way to the end."""
    way = ways_to_the_end(activities)
    best = sum(activity.minutes for activity in activities)

    def search(finish: dict[str, float], free: tuple[float, ...]) -> None:
        nonlocal best
        left = [a for a in activities if a.id not in finish]
        if not left:
            best = min(best, max(free))
            return
        for activity in left:
            if all(need in finish for need in activity.needs):
                start = max([free[0], *(finish[need] for need in activity.needs)])
                if start + way[activity.id] < best:
                    # the person who comes free last before that start loses least time
                    hand = max(i for i, moment in enumerate(free) if moment <= start)
                    end = start + activity.minutes
                    rest = free[:hand] + free[hand + 1 :]
                    search({**finish, activity.id: end}, tuple(sorted((*rest, end))))

    search({}, (0.0,) * count)
    return best


def test_schedules_are_within_a_twentieth_of_the_best_on_average() -> None:
    rng = random.Random(42)
    excess = []
    for case in range(50):
        activities = []
        for i in range(8):
            needs = [f"a{n}" for n in range(i) if rng.random() < 0.3]
            activities.append(Activity(f"a{i}", rng.randint(1, 9), tuple(needs)))
        count = 2 + case % 2
        planned = schedule(activities, people(count)).minutes
        excess.append(planned / shortest(activities, count) - 1)
    assert min(excess) >= 0
    assert sum(excess) / len(excess) <= 0.05


def test_people_stay_at_their_piece_while_there_is_work_at_it() -> None:
    """Two pieces of ten activities in a row each, one of them longer: by the longest way alone
    both people would go from one to the other."""
    work = [
        Activity(f"{piece}{i}", minutes, (f"{piece}{i - 1}",) if i else (), piece=piece)
        for i in range(10)
        for piece, minutes in (("star", 5.0), ("gate", 4.0))
    ]
    planned = schedule(work, [Person(1), Person(2)])
    of = {a.id: a.piece for a in work}
    for person in range(2):
        mine = [of[a.activity] for a in planned.assignments if a.people == (person,)]
        assert len(set(mine)) == 1, "nobody has to leave"
    assert planned.minutes == 50
    # nobody waits at a piece where there is nothing to do
    chain = [Activity("a", 10, piece="a"), *(Activity(f"b{i}", 10, piece="b") for i in range(3))]
    assert schedule(chain, [Person(1), Person(2)]).minutes == 20
