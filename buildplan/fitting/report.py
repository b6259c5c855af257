"""A fit in words."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.fitting.fitting import Fit, recommended, smallest_height_m
from buildplan.fitting.measuring import FARTHEST_GOAL, OVERLAP_GOAL
from buildplan.fitting.outline import Outline


def fit_report(fits: Sequence[Fit]) -> str:
    """How close each design comes, fewest balloons first, and which is written."""
    chosen = recommended(fits)
    outline = chosen.outline
    lines = [
        f"{outline.name}, {outline.height_m * 100:.0f} cm high",
        "   balloons  gauge    overlap  largest distance",
    ]
    for fit in fits:
        mark = "*" if fit is chosen else " "
        lines.append(
            f" {mark} {fit.balloons:8}  {fit.gauge_in:g} in {fit.close.overlap:9.1%}"
            f"  {fit.close.farthest:.2f} links ({fit.close.farthest_m * 100:.0f} cm)"
        )
    lines += [f"   {line}" for line in _remarks(chosen)]
    return "\n".join(lines)


def _remarks(fit: Fit) -> list[str]:
    remarks = []
    if not fit.good:
        remarks.append(
            f"At this size the outline cannot be had well: a good fit overlaps by "
            f"{OVERLAP_GOAL:.0%} and is nowhere farther off than {FARTHEST_GOAL:g} of a link."
        )
    if fit.turned_deg:
        way = "to the left" if fit.turned_deg > 0 else "to the right"
        remarks.append(
            f"It does not stand by itself the way it is drawn; it stands turned by "
            f"{abs(fit.turned_deg):.0f} degrees {way}. Fix it to a base or to a wall to keep it "
            "as drawn."
        )
    elif fit.shape.standing.tip_angle_deg < 5:
        lean = f"{fit.shape.standing.tip_angle_deg:.0f} degrees of lean"
        remarks.append(f"It stands as drawn on a narrow foot and tips at {lean}: give it a base.")
    remarks += [f"Problem: {problem.message}" for problem in fit.problems]
    return remarks


def larger_words(outline: Outline, gauge_in: float) -> str:
    """At which larger size an outline that cannot be had at its own can be."""
    height_m = smallest_height_m(outline, gauge_in)
    if height_m is None:
        return f"   With links of {gauge_in:g} in it cannot be had at up to three times the size."
    return f"   With links of {gauge_in:g} in it can be had at {height_m * 100:.0f} cm."
