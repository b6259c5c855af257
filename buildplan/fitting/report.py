"""A fit in words."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.fitting.fitting import LARGEST, Fit, recommended, smallest_height_m
from buildplan.fitting.inside import WIDTH_PER_GAUGE, Inside, band_width_m
from buildplan.fitting.measuring import FARTHEST_GOAL, OVERLAP_GOAL
from buildplan.fitting.outline import Outline
from buildplan.fitting.tube_design import METRES_PER_INCH
from buildplan.language.grammar import decimal, percent, written
from buildplan.language.speaking import mark, say, say_count, spoken_voice

LEAST_WIDTHS = (8, 6, 8, 10)  # of the columns before the last, in characters


def fit_report(fits: Sequence[Fit]) -> str:
    """How close each design comes, fewest balloons first, and which is written."""
    chosen = recommended(fits)
    outline = chosen.outline
    with_holes = [say("with holes")] if outline.holes else []
    head = [say("balloons"), say("gauge"), say("overlap"), *with_holes, say("largest distance")]
    rows = [_row(fit) for fit in fits]
    widths = [
        max(least, *(len(row[i]) for row in (head, *rows)))
        for i, least in zip(range(len(head) - 1), LEAST_WIDTHS, strict=False)
    ]
    lines = [
        say(
            "{name}, {height} cm high",
            name=outline.name,
            height=round(outline.height_m * 100),
        )
    ]
    stars = ["", *("*" if fit is chosen else "" for fit in fits)]
    for star, row in zip(stars, (head, *rows), strict=True):
        cells = [cell.rjust(width) for cell, width in zip(row, widths, strict=False)]
        lines.append(f" {star:1} {'  '.join([*cells, row[-1]])}")
    lines += [f"   {line}" for line in holes_words(chosen)]
    lines += [f"   {line}" for line in _remarks(chosen)]
    return "\n".join(lines)


def _row(fit: Fit) -> list[str]:
    """One design in the table: as many words as there are columns."""
    inside = [] if fit.inside is None else [share_words(fit.inside.overlap)]
    return [
        str(fit.balloons),
        gauge_words(fit.gauge_in),
        share_words(fit.close.overlap),
        *inside,
        say(
            "{distance} links ({length} cm)",
            distance=decimal(fit.close.farthest, 2),
            length=round(fit.close.farthest_m * 100),
        ),
    ]


def gauge_words(gauge_in: float) -> str:
    """`6.5 in`, with as many places as it has."""
    return say("{length} in", length=written(f"{gauge_in:g}"))


def share_words(share: float) -> str:
    """A share to a tenth of a per cent."""
    return say("{number}%", number=decimal(share * 100, 1))


def holes_words(fit: Fit) -> list[str]:
    """What becomes of the holes of an outline, and of the other curves of its drawing."""
    outline, inside = fit.outline, fit.inside
    said = []
    if inside is not None:
        band_m = band_width_m(outline)
        tube_m = WIDTH_PER_GAUGE * fit.gauge_in * METRES_PER_INCH
        if band_m is not None:
            said.append(
                say(
                    "The outline is a band about {band} cm wide round a hole. The tube follows "
                    "its outer edge and is about {width} cm wide, so that {opening}.",
                    band=round(band_m * 100),
                    width=round(tube_m * 100),
                    opening=_opening_words(inside),
                )
            )
        else:
            said.append(
                say_count(
                    "The outline has a hole that the course does not follow: a tube follows the "
                    "outer edge alone, about {width} cm wide, and {opening}.",
                    "The outline has {number} holes that the course does not follow: a tube "
                    "follows the outer edge alone, about {width} cm wide, and {opening}.",
                    len(outline.holes),
                    width=round(tube_m * 100),
                    opening=_opening_words(inside),
                )
            )
        said.append(
            say(
                "With holes and opening counted as empty, piece and outline overlap by {share}.",
                share=percent(inside.overlap),
            )
        )
    if outline.left_out:
        said.append(
            say_count(
                "Of the file the largest closed path is followed; {number} other closed path left "
                "out. To cut a hole, make it part of the same path.",
                "Of the file the largest closed path is followed; {number} others left out. To "
                "cut a hole, make it part of the same path.",
                outline.left_out,
            )
        )
    return said


def _opening_words(inside: Inside) -> str:
    if inside.opening.is_empty:
        return say("no opening is left within it")
    left, low, right, top = inside.opening.bounds
    return say(
        "one opening of its own, {across} by {up} cm, is left within it",
        across=round((right - left) * 100),
        up=round((top - low) * 100),
    )


def _remarks(fit: Fit) -> list[str]:
    remarks = []
    if not fit.good:
        remarks.append(
            say(
                "At this size the outline cannot be had well: a good fit overlaps by {share} and "
                "is nowhere farther off than {distance} of a link.",
                share=percent(OVERLAP_GOAL),
                distance=written(f"{FARTHEST_GOAL:g}"),
            )
        )
    if fit.turned_deg:
        message = (
            mark(
                "It does not stand by itself the way it is drawn; it stands turned by {angle} "
                "degrees to the left. Fix it to a base or to a wall to keep it as drawn."
            )
            if fit.turned_deg > 0
            else mark(
                "It does not stand by itself the way it is drawn; it stands turned by {angle} "
                "degrees to the right. Fix it to a base or to a wall to keep it as drawn."
            )
        )
        remarks.append(say(message, angle=round(abs(fit.turned_deg))))
    elif fit.shape.standing.tip_angle_deg < 5:
        remarks.append(
            say(
                "It stands as drawn on a narrow foot and tips at {angle} degrees of lean: give it "
                "a base.",
                angle=round(fit.shape.standing.tip_angle_deg),
            )
        )
    remarks += [
        spoken_voice().say("Problem: {problem}", problem=one.message) for one in fit.problems
    ]
    return remarks


def larger_words(outline: Outline, gauge_in: float) -> str:
    """At which larger size an outline that cannot be had well at its own can be."""
    height_m = smallest_height_m(outline, gauge_in)
    if height_m is None:
        return say(
            "With links of {gauge} it cannot be had well at up to {times} times that.",
            gauge=gauge_words(gauge_in),
            times=f"{LARGEST:g}",
        )
    return say(
        "The smallest height at which it can be had well is about {height} cm, with links of "
        "{gauge}.",
        height=round(height_m * 100),
        gauge=gauge_words(gauge_in),
    )
