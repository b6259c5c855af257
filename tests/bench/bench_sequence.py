"""Sequence and replay of large pieces: `python tests/bench/bench_sequence.py`.

A wall listed joint by joint and a long tube, up to some 10,000 balloons; prints seconds, and
the power of the size by which they grow. Wanted: 10 s for 10,000 and a power of at most 1.2.
"""

from __future__ import annotations

import math
import time

from buildplan.framework.balloon_kinds import LINK, ROUND
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.tube import TubePlan, build_tube
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.timetable import crew_of, timetable

BALLOONS = {
    "long": BalloonType("long", LINK, 0.3, 0.2, 0.23, False, "#1F5F8B", "blue"),
    "lock": BalloonType("lock", ROUND, 0.13, 0.09, 0.09, True, "#F7F3E8", "ivory"),
}


def wall(side: int) -> Framework:
    """A square net of `side` by `side` cells."""

    def joint(i: int, j: int) -> str:
        return f"w{i}.{j}"

    across = [(joint(i, j), joint(i + 1, j)) for i in range(side) for j in range(side + 1)]
    along = [(joint(i, j), joint(i, j + 1)) for i in range(side + 1) for j in range(side)]
    joints = [joint(i, j) for i in range(side + 1) for j in range(side + 1)]
    ties = [(one, other, "long") for one, other in across + along]
    return build_listed("Wall", BALLOONS, joints, ties, "lock")


def tube(cells: int) -> Framework:
    """A closed tube of four chains."""
    plan = TubePlan(
        closed=True,
        long={letter: ["long"] for letter in "ABCD"},
        brace="long",
        single=None,
        lock="lock",
        course=[STRAIGHT] * cells,
    )
    return build_tube("Tube", BALLOONS, plan)


def seconds(framework: Framework) -> float:
    """Best of two runs of planning, replaying and sharing the work."""
    best = math.inf
    for _ in range(2):
        start = time.perf_counter()
        steps = plan_steps(framework)
        replay(steps_as_json(steps))
        timetable(steps, crew_of(4), {})
        best = min(best, time.perf_counter() - start)
    return best


def main() -> None:
    """Print sizes, seconds and growth."""
    for name, pieces in (
        ("wall", [wall(side) for side in (18, 35, 70)]),
        ("tube", [tube(cells) for cells in (80, 310, 1250)]),
    ):
        times = [(len(piece.links), seconds(piece)) for piece in pieces]
        for size, taken in times:
            print(f"{name:5} {size:6} balloons {taken:6.2f} s")
        (small, first), (large, last) = times[0], times[-1]
        print(f"{name:5} grows as n^{math.log(last / first) / math.log(large / small):.2f}")


if __name__ == "__main__":
    main()
