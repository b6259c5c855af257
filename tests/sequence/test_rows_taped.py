"""What a tape says along a wall that is built lying: its rows, how far each is from the foot."""

from __future__ import annotations

import re

from sequence_pieces import BALLOONS

from buildplan.evaluation.told_figures import told_figures
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.wall import Wall, build_wall
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape


def test_a_lying_wall_is_measured_row_by_row() -> None:
    """In a grid of squares the way from the foot is as many lengths from knot to knot as there are
    rows, and the foot as many as it is wide (plain geometry)."""
    keys = Wall(across=3, up=6, layers=1, row="long", upright="long", lock="lock")
    piece = build_wall("Screen", BALLOONS, keys)
    shape = find_shape(piece)
    figures = told_figures(piece, shape, "cm")
    assert figures.flat
    steps = plan_steps(piece, reach=find_reach(piece, shape))
    checks = [one.check for one in tell_steps(steps, piece, "cm", Voice(), figures)]
    along = [one for one in checks if "A tape along the chain from knot A1 to knot A4" in one]
    assert len(along) == 1
    side_cm = 100 * BALLOONS["long"].tie_to_tie_m
    told = re.findall(r"A1 to ([B-G])1: (\d+) cm \((\d+) to (\d+)\)", " ".join(checks))
    assert [letter for letter, *_ in told] == list("BCDEFG")
    for number, (_, *lengths) in enumerate(told, 1):
        length, low, high = map(int, lengths)
        assert low <= number * side_cm <= high
        assert abs(length - number * side_cm) <= 0.05 * number * side_cm + 1
