"""How long the machine is likely to take over a piece, told beforehand where it is long.

From times of one core of a shared virtual machine of 2026 (AMD EPYC, two cores; `user` and `sys` of
whole commands, less 0.6 s to start), of walls, tubes, cubic lattices and graphs tied at random of
700 to 30,000 balloons: what takes more than 20 s was told as 4 to 42 % more than it took
(`tests/bench/bench_big.py` and `bench_limits.py` print them anew). What grows is the number of
balloons, by a power of it, and the work of factoring the matrix of what is tied to what, which is
small in all that is long or flat.
"""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.shape.crossing import factor_work, share_tied_across
from buildplan.shape.pressing import pairs_pressed

# seconds for 1,000 balloons, and the power of their number by which the time grows
WORK_OUT_S, WORK_OUT_POWER = 0.2, 1.2
TELL_S, PRINT_S, PRINT_POWER = 0.6, 2.8, 1.1
COPY_S = 0.05
# seconds for 10^9 multiplications of a factor: of what is tied to what lies beside it, which comes
# to rest in a few steps, and more where all is tied across, which does not
FITTING_S, ACROSS_S = 3.0, 8.0
# seconds for a pair of balloons that lie in one another or meet at a crowded joint, and for a part
# of an assembly, which comes to rest on those that it is tied to in many small steps
PRESSED_S, PART_S = 1.0e-4, 0.05
# seconds for a course or an outline's shape of 200 links; shares of the time to work a piece out
SHAPE_S, SHAPE_LINKS = 0.06, 200
COURSE_SHARE, RESIZE_SHARE = 1.25, 15.0
WORTH_SAYING_S = 20.0


@dataclass(frozen=True)
class PieceSize:
    """What the time goes by: balloons, multiplications of one factor of their matrix, which share
    of the links closes no short ring, pairs that are pressed into one another, and parts."""

    balloons: int
    factor: float = 0.0
    across: float = 0.0
    pressed: int = 0
    parts: int = 0


def size_of(framework: Framework) -> PieceSize:
    """How large a piece is to work out."""
    balloons = sum(balloon_counts(framework).values())
    return PieceSize(
        balloons,
        factor_work(framework),
        share_tied_across(framework),
        pairs_pressed(framework),
        len(framework.parts),
    )


def seconds_to_work_out(size: PieceSize) -> float:
    """To find the shape of a piece, examine it and plan the work."""
    of_factors = 1e-9 * size.factor * (FITTING_S + ACROSS_S * size.across)
    of_what_lies_amiss = PRESSED_S * size.pressed + PART_S * size.parts
    plain = float(WORK_OUT_S * (size.balloons / 1000) ** WORK_OUT_POWER)
    return plain + of_factors + of_what_lies_amiss


def seconds_to_tell(size: PieceSize) -> float:
    """To work a piece out, and to put its steps into words or draw it."""
    return seconds_to_work_out(size) + float(TELL_S * (size.balloons / 1000) ** PRINT_POWER)


def seconds_to_print(size: PieceSize) -> float:
    """To work a piece out, and to print a booklet."""
    return seconds_to_work_out(size) + float(PRINT_S * (size.balloons / 1000) ** PRINT_POWER)


def seconds_to_copy(copies: int) -> float:
    """To fill in so many sold copies of a booklet that has been drawn."""
    return COPY_S * copies


def seconds_to_try_courses(balloons: int, courses: int) -> float:
    """To solve so many courses near the one of a piece of so many balloons."""
    return courses * COURSE_SHARE * seconds_to_work_out(PieceSize(balloons))


def seconds_to_resize(size: PieceSize) -> float:
    """To look for every way in which a piece can be made another height."""
    return RESIZE_SHARE * seconds_to_work_out(size)


def seconds_to_fit(shapes: int, links: float) -> float:
    """To solve so many shapes of about so many links."""
    return float(shapes * SHAPE_S * (links / SHAPE_LINKS) ** WORK_OUT_POWER)
