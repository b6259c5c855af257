"""A course as a design: its balloons, its chains with their sizes, its cells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.design.starting import LINK_SIZES
from buildplan.design.wishes import GAUGE_STEP
from buildplan.fitting.cells import KINDS, Sizes
from buildplan.fitting.courses import Course
from buildplan.language.voice import Voice
from buildplan.patterns.build import built_as
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.extra_keys import Extra, ExtraBalloon
from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import TIE_TO_TIE_PER_GAUGE
from buildplan.source.values import FileModel

ENGLISH = Voice()

LOCK_SHARE = 0.45  # of the long link's gauge; common practice, no source: 3 1/2 inches for 8
SHORT_SHARE = 0.75  # of the long link's gauge
MOST_RESIZED = 1.25  # how many times as large gauges may become for a height
FINEST_MISS = 0.025  # of a height, that a step of the gauge may leave it off
# How far a link is inflated at most, of the size printed on its bag, and the printed sizes of
# rounds for locks and of links beyond the usual. Common practice, no source.
INFLATED_SHARE = 0.84
LOCK_NOMINAL: Mapping[Units, float] = {"in": 5.0, "cm": 12.0}
LARGEST_NOMINAL: Mapping[Units, float] = {"in": 18.0, "cm": 45.0}
LONG, SHORT, BRACE, LOCK = "long", "short", "cross", "lock"


@dataclass(frozen=True)
class Gauges:
    """The gauges of the long links and of the short ones, in the units of the file."""

    long: float
    short: float
    units: Units = "in"

    @property
    def sizes(self) -> Sizes:
        """The same in metres, with the estimated tie-to-tie lengths."""
        metres = METRES_PER_UNIT[self.units]
        long_m, short_m = self.long * metres, self.short * metres
        return Sizes(long_m, short_m, TIE_TO_TIE_PER_GAUGE * long_m, TIE_TO_TIE_PER_GAUGE * short_m)


def gauges_from(long: float, units: Units = "in") -> Gauges:
    """Long links of this gauge, with short ones of three quarters, to two steps of the gauge."""
    step = 2 * GAUGE_STEP[units]
    return Gauges(long, round(SHORT_SHARE * long / step) * step, units)


def gauges_for_height(gauges: Gauges, factor: float) -> Gauges:
    """Gauges so many times as large, to whole steps, or where those are too coarse for the height
    to halves of them; the short links in proportion. The same where they would become others
    altogether: what they were searched for lies in another way."""
    if not 1 / MOST_RESIZED <= factor <= MOST_RESIZED:
        return gauges
    step = GAUGE_STEP[gauges.units]
    if step / 2 > FINEST_MISS * gauges.long * factor:
        step /= 2
    long = round(gauges.long * factor / step) * step
    return Gauges(long, round(gauges.short * long / gauges.long / step) * step, gauges.units)


def _nominal(gauge: float, units: Units) -> float:
    sizes = (size for size in LINK_SIZES[units] if gauge <= INFLATED_SHARE * size)
    return next(sizes, LARGEST_NOMINAL[units])


def course_items(cells: Sequence[str | list[int]]) -> list[CourseItem]:
    """Cells with runs of equal ones written as repeats."""
    items: list[CourseItem] = []
    for cell, run in groupby(cells):
        count = len(list(run))
        plain: CourseItem = cell
        items += [Repeat(repeat=count, cells=[plain])] if count > 3 else [plain] * count
    return items


def _chains(course: Course) -> tuple[list[str], list[str]]:
    """The balloons along the outer and along the inner chains, over one part."""
    keys = {"L": LONG, "s": SHORT}
    outer = [keys[key] for kind in course.part for key in KINDS[kind].outer]
    inner = [keys[key] for kind in course.part for key in KINDS[kind].inner]
    return outer, inner


def _pattern(course: Course) -> dict[ColouredPart, ColourOrder]:
    """The links laid along each chain that has short ones, front and back alike."""
    outer, inner = _chains(course)
    sides: dict[ColouredPart, list[str]] = {"A": outer, "B": inner, "C": inner, "D": outer}
    return {
        letter: keys if LONG in keys else [SHORT] for letter, keys in sides.items() if SHORT in keys
    }


def _rungs(course: Course) -> list[Extra]:
    """The balloons across each spur, each between two joints of a chain: those in front, then those
    at the back, of one size after another, as they are best tied in."""
    keys, ends, reached = {"L": BRACE, "s": SHORT}, list[tuple[int, int, str]](), 0
    outer = sum(len(KINDS[kind].outer) for kind in course.part) * course.fold
    for kind in course.part * course.fold:
        links = len(KINDS[kind].outer)
        for step, key in enumerate(KINDS[kind].rungs, 1):
            one, other = ((reached + at) % outer + 1 for at in (step, links - step))
            ends.append((one, other, keys[key]))
        reached += links
    return [
        _rung([f"{letter}{one}", f"{letter}{other}"], key)
        for letter in "AD"
        for one, other, key in sorted(ends, key=lambda rung: rung[2])
    ]


def _rung(joints: list[str], key: str) -> Extra:
    return joints if key == BRACE else ExtraBalloon(joints=joints, balloon=key)


def design_of(
    course: Course, gauges: Gauges, name: str, stand_on: Sequence[str] = (), voice: Voice = ENGLISH
) -> Design:
    """The design of a closed tube of four chains along `course`."""
    pattern, rungs = _pattern(course), _rungs(course)
    shorter = bool(pattern) or any(isinstance(rung, ExtraBalloon) for rung in rungs)
    named = [KINDS[kind].item for kind in course.part]
    cells = course_items(named)
    if course.fold > 1:
        cells = [Repeat(repeat=course.fold, cells=cells)]
    tube = Tube(
        closed=True,
        chains=4,
        long=LONG,
        brace=BRACE,
        single=BRACE,
        lock=LOCK,
        extra=rungs,
        course=cells,
    )
    design = design_with("tube", tube, gauges, name, stand_on, voice, shorter=shorter)
    return design.model_copy(update={"colour_pattern": pattern})


def design_with(
    pattern: str,
    keys: FileModel,
    gauges: Gauges,
    name: str,
    stand_on: Sequence[str],
    voice: Voice,
    *,
    shorter: bool = False,
) -> Design:
    """The design of a piece of one pattern, with the balloons of these gauges; the short links too
    where it is `shorter` somewhere."""
    units = gauges.units
    blue, ivory, sky = "#1F5F8B", "#F7F3E8", "#6FA8C9"
    balloons = {LONG: _link(gauges.long, units, blue, voice.say("deep blue"))}
    if shorter:
        balloons[SHORT] = _link(gauges.short, units, sky, voice.say("sky blue"))
    balloons[BRACE] = _link(gauges.long, units, ivory, voice.say("ivory"))
    step = GAUGE_STEP[units]
    balloons[LOCK] = Balloon(
        kind="round",
        nominal=LOCK_NOMINAL[units],
        inflate_to=round(LOCK_SHARE * gauges.long / step) * step,
        colour=ivory,
        label=voice.say("ivory"),
    )
    return Design(
        buildplan=1,
        name=_title(name) or voice.say("Fitted Piece"),
        units=units,
        balloons=balloons,
        build=built_as(pattern, keys),
        stand_on=list(stand_on) or None,
    )


def _title(name: str) -> str:
    """The outline's name as that of a piece, on one line; empty where it has none."""
    return " ".join(name.replace("-", " ").replace("_", " ").split()).title()[:60]


def _link(gauge: float, units: Units, colour: str, label: str) -> Balloon:
    return Balloon(
        kind="link",
        nominal=_nominal(gauge, units),
        inflate_to=gauge,
        colour=colour,
        label=label,
    )
