"""A fit in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from shapely import Point, Polygon

from buildplan.design.measures import Units
from buildplan.evaluation.base_advice import base_way
from buildplan.fitting.fit import Fit
from buildplan.fitting.fitting import Preference, recommended
from buildplan.fitting.inside import WIDTH_PER_GAUGE, Inside, band_width_m
from buildplan.fitting.measure_words import gauge_words, height_words, share_words
from buildplan.fitting.measuring import FARTHEST_GOAL, OVERLAP_GOAL, farthest_at
from buildplan.language.messages import Message
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.whereabouts import WHERE, cell_at
from buildplan.source.suggestions import Put

TIPS_LIGHTLY_DEG = 5


def fit_report(fits: Sequence[Fit], voice: Voice, prefer: Preference = "close") -> str:
    """How close each design comes, fewest balloons first, and which is written."""
    chosen = recommended(fits, prefer)
    outline = chosen.outline
    with_holes = [voice.say("with holes")] if outline.holes else []
    head = [
        voice.say("balloons"),
        voice.say("gauge"),
        voice.say("height"),
        voice.say("overlap"),
        *with_holes,
        voice.say("largest distance"),
        voice.say("stands as drawn"),
    ]
    rows = [_row(fit, voice) for fit in fits]
    widths = [max(6, *(len(row[i]) for row in (head, *rows))) for i in range(len(head) - 1)]
    lines = [
        voice.say(
            "{name}, {height} high",
            name=outline.name,
            height=height_words(outline.height_m, chosen.gauges.units, voice),
        )
    ]
    stars = ["", *("*" if fit is chosen else "" for fit in fits)]
    for star, row in zip(stars, (head, *rows), strict=True):
        cells = [cell.rjust(width) for cell, width in zip(row, widths, strict=False)]
        lines.append(f" {star:1} {'  '.join([*cells, row[-1]])}")
    lines += [f"   {line}" for line in holes_words(chosen, voice)]
    lines += [f"   {line}" for line in _remarks(chosen, voice)]
    lines += [f"   {line}" for line in _passed_over(chosen, fits, prefer, voice)]
    return "\n".join(lines)


def _passed_over(
    chosen: Fit, fits: Sequence[Fit], prefer: Preference, voice: Voice
) -> Iterator[str]:
    """Why a design of the table that comes closer than the chosen one is not written."""
    closer = max(fits, key=lambda fit: fit.likeness)
    if closer.likeness <= chosen.likeness or prefer == "few":
        return
    if not closer.buildable:
        yield voice.say(
            "The design of {balloons} balloons comes closer, but does not stand as drawn without "
            "a problem: it is not written.",
            balloons=closer.balloons,
        )
    elif closer.is_figure and closer.as_high:
        yield voice.say(
            "The figure of {balloons} balloons comes little closer for so many more: it is not "
            "written.",
            balloons=closer.balloons,
        )
    elif not closer.as_high:
        yield voice.say(
            "The design of {balloons} balloons comes closer, but stands {height} high, not the "
            "{wanted} asked for: it is not written.",
            balloons=closer.balloons,
            height=height_words(closer.height_m, closer.gauges.units, voice),
            wanted=height_words(closer.outline.height_m, closer.gauges.units, voice),
        )


def _row(fit: Fit, voice: Voice) -> list[str]:
    """One design in the table: as many words as there are columns."""
    units = fit.gauges.units
    inside = [] if fit.inside is None else [share_words(fit.inside.overlap, voice)]
    return [
        voice.whole(fit.balloons),
        gauge_words(fit.gauges.long, units, voice),
        height_words(fit.height_m, units, voice),
        share_words(fit.close.overlap, voice),
        *inside,
        voice.say(
            "{distance} links ({length})",
            distance=voice.decimal(fit.close.farthest, 2),
            length=height_words(fit.close.farthest_m, units, voice),
        ),
        _stands_words(fit, voice),
    ]


def _stands_words(fit: Fit, voice: Voice) -> str:
    if fit.buildable:
        angle = voice.decimal(fit.shape.standing.tip_angle_deg, 1)
        return voice.say("yes, to {angle} degrees of lean", angle=angle)
    if fit.stands_as_drawn:
        return voice.say("yes, but it cannot be built so")
    if fit.design.pole:
        return voice.say("only with a pole")
    return voice.say("only on a base") if fit.as_drawn else voice.say("no, it turns over")


def holes_words(fit: Fit, voice: Voice) -> list[str]:
    """What becomes of the holes of an outline, and of the other curves of its drawing."""
    outline, inside = fit.outline, fit.inside
    said = []
    if inside is not None:
        band_m = band_width_m(outline)
        units = fit.gauges.units
        width = height_words(WIDTH_PER_GAUGE * fit.gauges.sizes.long_gauge_m, units, voice)
        if band_m is not None:
            said.append(
                voice.say(
                    "The outline is a band about {band} wide round a hole. The tube follows "
                    "its outer edge and is about {width} wide, so that {opening}.",
                    band=height_words(band_m, units, voice),
                    width=width,
                    opening=_opening_words(inside, units, voice),
                )
            )
        else:
            said.append(
                voice.say_count(
                    "The outline has a hole that the course does not follow: a tube follows the "
                    "outer edge alone, about {width} wide, and {opening}.",
                    "The outline has {number} holes that the course does not follow: a tube "
                    "follows the outer edge alone, about {width} wide, and {opening}.",
                    len(outline.holes),
                    width=width,
                    opening=_opening_words(inside, units, voice),
                )
            )
        said.append(
            voice.say(
                "With holes and opening counted as empty, piece and outline overlap by {share}.",
                share=voice.percent(inside.overlap),
            )
        )
    if outline.left_out:
        said.append(
            voice.say_count(
                "Of the file the largest closed path is followed; {number} other closed path left "
                "out. To cut a hole, make it part of the same path.",
                "Of the file the largest closed path is followed; {number} others left out. To "
                "cut a hole, make it part of the same path.",
                outline.left_out,
            )
        )
    return said


def _opening_words(inside: Inside, units: Units, voice: Voice) -> str:
    if inside.opening.is_empty:
        return voice.say("no opening is left within it")
    left, low, right, top = inside.opening.bounds
    return voice.say(
        "one opening of its own, {across} by {up}, is left within it",
        across=height_words(right - left, units, voice),
        up=height_words(top - low, units, voice),
    )


def _remarks(fit: Fit, voice: Voice) -> list[str]:
    remarks = []
    if fit.is_figure:
        remarks.append(_figure_words(fit, voice))
    elif fit.close.overlap < OVERLAP_GOAL or fit.close.farthest > FARTHEST_GOAL:
        remarks.append(_why_not_well(fit, voice))
    if fit.close.farthest > FARTHEST_GOAL:
        remarks.append(voice.say("It is farthest off {where}.", where=_farthest_off(fit)))
    if not fit.as_high:
        remarks.append(
            voice.say(
                "It stands {height} high, not the {wanted} asked for: no design nearer that height "
                "was found that stands by itself.",
                height=height_words(fit.height_m, fit.gauges.units, voice),
                wanted=height_words(fit.outline.height_m, fit.gauges.units, voice),
            )
        )
    if fit.design.pole:
        remarks.append(
            voice.say(
                "It does not hold itself up: a pole that stands by itself holds it ({right} is in "
                "its file).",
                right="pole: true",
            )
        )
    elif not fit.stands_as_drawn:
        said = _held_words(fit, voice)
        remarks.append(
            voice.say("It does not stand by itself the way it is drawn: {ways}.", ways=said)
        )
        if fit.as_drawn:
            remarks.append(_unbalanced_words(fit, voice))
    elif fit.footed:
        remarks.append(
            voice.say(
                "As it is drawn it would roll over: this design has a level foot below its weight "
                "that the outline does not have."
            )
        )
    if fit.stands_as_drawn and fit.shape.standing.tip_angle_deg < TIPS_LIGHTLY_DEG:
        remarks.append(
            voice.say(
                "It stands as drawn on a narrow foot and tips at {angle} degrees of lean: {ways}.",
                angle=voice.decimal(fit.shape.standing.tip_angle_deg, 1),
                ways=_held_words(fit, voice),
            )
        )
    remarks += [voice.say("Problem: {problem}", problem=one) for one in fit.problems]
    return remarks


def _farthest_off(fit: Fit) -> Message:
    """In which third of the outline's height and width its edges are farthest apart."""
    left, low, right, top = fit.outline.region.bounds
    x, y = farthest_at(fit.close.silhouette, fit.outline.region)
    across, up = (x - left) / (right - left), (y - low) / (top - low)
    return WHERE[cell_at(*np.clip([across, up], 0.0, 1.0))]


def _unbalanced_words(fit: Fit, voice: Voice) -> str:
    """How far its weight is beside its foot: in proportion as far at any greater height."""
    standing = fit.shape.standing
    off_m = Polygon(standing.foot_polygon_m).distance(Point(standing.centre_of_mass_m[[0, 2]]))
    return voice.say(
        "Its weight lies {distance} beside its foot, for so it is drawn, and a higher one, whose "
        "weight lies farther off, would fall as well.",
        distance=height_words(off_m, fit.gauges.units, voice),
    )


def _held_words(fit: Fit, voice: Voice) -> str:
    """What keeps it up: the base that `check` advises for it where it is as it is drawn."""
    way = base_way(fit.shape, fit.gauges.units, CONSTANTS) if fit.as_drawn else None
    if way is None:
        return voice.say("hang it, or tie it to a pole or a wall, as it is drawn")
    (put,) = way.changes
    assert isinstance(put, Put), "a base is put into the file"
    assert isinstance(put.value, Mapping), "by its keys"
    keys = ", ".join(f"{key}: {value:g}" for key, value in put.value.items())
    return voice.say(
        "{way} (write into its file: {right})",
        way=voice.tell(way.words),
        right=f"base: {{{keys}}}",
    )


def _why_not_well(fit: Fit, voice: Voice) -> str:
    """What stands in the way of a close fit: the width of a tube, or the points of an outline."""
    width = height_words(WIDTH_PER_GAUGE * fit.gauges.sizes.long_gauge_m, fit.gauges.units, voice)
    return voice.say(
        "At this size the outline cannot be had well: a good fit overlaps by {share} and is "
        "nowhere farther off than {distance} of a link. The tube is {width} wide; it rounds off "
        "what is sharper and leaves out what is narrower than that.",
        share=voice.percent(OVERLAP_GOAL),
        distance=voice.written(f"{FARTHEST_GOAL:g}"),
        width=width,
    )


def _figure_words(fit: Fit, voice: Voice) -> str:
    """What a figure is, and what stands in the way of a closer one."""
    return voice.say(
        "It is a figure: square and triangular cells with sides of {length}, braced where they "
        "meet. What is finer than a cell is left out.",
        length=height_words(fit.gauges.sizes.long_m, fit.gauges.units, voice),
    )
