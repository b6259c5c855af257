"""The scheduler against OR-tools' CP-SAT on 30 cases: `python tests/bench/bench_scheduling.py`.

The cases are drawn with a fixed seed: 20 to 60 activities in whole minutes, each needing up to
three of those before it, some for two people at once, some that only those who tie can do; crews
of two to five, one of whom only inflates. CP-SAT (pip install 'buildplan[bench]') has ten seconds
of one worker for each, and says where its answer is the best there can be. Printed is how much
longer ours takes than that, and how many times as fast it is found; figures from one run.
"""

from __future__ import annotations

import random
import time
from collections.abc import Sequence
from statistics import mean

from ortools.sat.python import cp_model

from buildplan.sequence.network import INFLATE, TIE, Activity
from buildplan.sequence.scheduling import Person, schedule

CASES, SECONDS = 30, 10.0


def case(number: int) -> tuple[list[Activity], list[Person]]:
    """A project and a crew."""
    chance = random.Random(number)
    activities: list[Activity] = []
    for place in range(chance.randint(20, 60)):
        before = activities[max(0, place - 12) :]
        needs = chance.sample(before, min(len(before), chance.randint(0, 3)))
        activities.append(
            Activity(
                id=f"a{place}",
                minutes=float(chance.randint(1, 15)),
                needs=tuple(one.id for one in needs),
                skill=TIE if chance.random() < 0.7 else INFLATE,
                people=2 if chance.random() < 0.15 else 1,
            )
        )
    crew = [Person(number + 1) for number in range(chance.randint(2, 4))]
    return activities, [*crew, Person(len(crew) + 1, frozenset({INFLATE}))]


def best_minutes(activities: Sequence[Activity], crew: Sequence[Person]) -> tuple[float, bool]:
    """CP-SAT's shortest schedule, and whether it is proved that none is shorter.

    Everybody inflates and some tie as well: a schedule exists exactly where at no time more people
    are at work than there are, nor more at tying than can tie.
    """
    model = cp_model.CpModel()
    whole = int(sum(one.minutes for one in activities))
    start = {one.id: model.new_int_var(0, whole, one.id) for one in activities}
    span = {
        one.id: model.new_fixed_size_interval_var(start[one.id], int(one.minutes), one.id)
        for one in activities
    }
    end = model.new_int_var(0, whole, "end")
    for one in activities:
        model.add(end >= start[one.id] + int(one.minutes))
        for need in one.needs:
            took = next(int(other.minutes) for other in activities if other.id == need)
            model.add(start[one.id] >= start[need] + took)
    tying = [one for one in activities if one.skill == TIE]
    able = sum(TIE in person.skills for person in crew)
    for doing, hands in ((activities, len(crew)), (tying, able)):
        model.add_cumulative([span[one.id] for one in doing], [one.people for one in doing], hands)
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = SECONDS
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    status = solver.solve(model)
    return solver.objective_value, status == cp_model.OPTIMAL


def main() -> None:
    longer, proved = [], 0
    ours_s = theirs_s = 0.0
    for number in range(CASES):
        activities, crew = case(number)
        start = time.process_time()
        ours = schedule(activities, crew).minutes
        ours_s += time.process_time() - start
        start = time.process_time()
        best, sure = best_minutes(activities, crew)
        theirs_s += time.process_time() - start
        longer.append(ours / best)
        proved += sure
    alike = sum(one < 1 + 1e-9 for one in longer)
    print(
        f"{CASES} cases, CP-SAT's answer proved best in {proved}: ours {mean(longer) - 1:.1%} "
        f"longer on average, {max(longer) - 1:.1%} at most, as short in {alike}; found "
        f"{theirs_s / ours_s:.0f} times as fast"
    )


if __name__ == "__main__":
    main()
