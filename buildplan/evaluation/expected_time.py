"""How long the machine is likely to take over a piece, told beforehand where it is long.

From processor times measured on walls and tubes of 1,000 to 15,000 balloons
(`tests/bench/bench_big.py` prints them anew): by these powers of the number of balloons, and for
one core of a machine of 2026.
"""

from __future__ import annotations

# seconds for 1,000 balloons, and the power of their number by which the time grows
WORK_OUT_S, WORK_OUT_POWER = 1.0, 1.2
PRINT_S, PRINT_POWER = 3.5, 1.1
COPY_S = 0.05
# seconds for a course or an outline's shape of 200 links; shares of the time to work a piece out
SHAPE_S, SHAPE_LINKS = 0.06, 200
COURSE_SHARE, RESIZE_SHARE = 0.25, 3.0
WORTH_SAYING_S = 20.0


def seconds_to_work_out(balloons: int) -> float:
    """To find the shape of so many balloons, examine it and plan the work."""
    return float(WORK_OUT_S * (balloons / 1000) ** WORK_OUT_POWER)


def seconds_to_print(balloons: int) -> float:
    """To work them out, and to print a booklet."""
    return seconds_to_work_out(balloons) + float(PRINT_S * (balloons / 1000) ** PRINT_POWER)


def seconds_to_copy(copies: int) -> float:
    """To fill in so many sold copies of a booklet that has been drawn."""
    return COPY_S * copies


def seconds_to_try_courses(balloons: int, courses: int) -> float:
    """To solve so many courses near the one of a piece of so many balloons."""
    return courses * COURSE_SHARE * seconds_to_work_out(balloons)


def seconds_to_resize(balloons: int) -> float:
    """To look for every way in which a piece can be made another height."""
    return RESIZE_SHARE * seconds_to_work_out(balloons)


def seconds_to_fit(shapes: int, links: float) -> float:
    """To solve so many shapes of about so many links."""
    return float(shapes * SHAPE_S * (links / SHAPE_LINKS) ** WORK_OUT_POWER)
