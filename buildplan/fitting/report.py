"""A fit in words."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.fitting.fitting import LARGEST, Fit, recommended, smallest_height_m
from buildplan.fitting.inside import WIDTH_PER_GAUGE, Inside, band_width_m
from buildplan.fitting.measuring import FARTHEST_GOAL, OVERLAP_GOAL
from buildplan.fitting.outline import Outline
from buildplan.fitting.tube_design import METRES_PER_INCH


def fit_report(fits: Sequence[Fit]) -> str:
    """How close each design comes, fewest balloons first, and which is written."""
    chosen = recommended(fits)
    outline = chosen.outline
    with_holes = "  with holes" if outline.holes else ""
    lines = [
        f"{outline.name}, {outline.height_m * 100:.0f} cm high",
        f"   balloons   gauge   overlap{with_holes}  largest distance",
    ]
    for fit in fits:
        mark = "*" if fit is chosen else " "
        inside = "" if fit.inside is None else f"{fit.inside.overlap:12.1%}"
        lines.append(
            f" {mark} {fit.balloons:8}  {f'{fit.gauge_in:g} in':>6} {fit.close.overlap:9.1%}"
            f"{inside}  {fit.close.farthest:.2f} links ({fit.close.farthest_m * 100:.0f} cm)"
        )
    lines += [f"   {line}" for line in holes_words(chosen)]
    lines += [f"   {line}" for line in _remarks(chosen)]
    return "\n".join(lines)


def holes_words(fit: Fit) -> list[str]:
    """What becomes of the holes of an outline, and of the other curves of its drawing."""
    outline, inside = fit.outline, fit.inside
    said = []
    if inside is not None:
        band_m = band_width_m(outline)
        tube_m = WIDTH_PER_GAUGE * fit.gauge_in * METRES_PER_INCH
        if band_m is not None:
            said.append(
                f"The outline is a band about {band_m * 100:.0f} cm wide round a hole. The tube "
                f"follows its outer edge and is about {tube_m * 100:.0f} cm wide, so that "
                f"{_opening_words(inside)}."
            )
        else:
            holes = len(outline.holes)
            said.append(
                f"The outline has {'a hole' if holes == 1 else f'{holes} holes'} that the course "
                "does not follow: a tube follows the outer edge alone, about "
                f"{tube_m * 100:.0f} cm wide, and {_opening_words(inside)}."
            )
        said.append(
            f"With holes and opening counted as empty, piece and outline overlap by "
            f"{inside.overlap:.0%}."
        )
    if outline.left_out:
        others = "1 other closed path" if outline.left_out == 1 else f"{outline.left_out} others"
        said.append(
            f"Of the file the largest closed path is followed; {others} left out. To cut a hole, "
            "make it part of the same path."
        )
    return said


def _opening_words(inside: Inside) -> str:
    if inside.opening.is_empty:
        return "no opening is left within it"
    left, low, right, top = inside.opening.bounds
    across, up = (right - left) * 100, (top - low) * 100
    return f"one opening of its own, {across:.0f} by {up:.0f} cm, is left within it"


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
    """At which larger size an outline that cannot be had well at its own can be."""
    height_m = smallest_height_m(outline, gauge_in)
    if height_m is None:
        return (
            f"With links of {gauge_in:g} in it cannot be had well at up to {LARGEST:g} times that."
        )
    return (
        f"The smallest height at which it can be had well is about {height_m * 100:.0f} cm, with "
        f"links of {gauge_in:g} in."
    )
