"""A course as a design: its balloons, its chains with their sizes, its cells."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from buildplan.design.model import Design
from buildplan.fitting.cells import KINDS, Sizes
from buildplan.fitting.search import Course
from buildplan.language.speaking import say
from buildplan.patterns.build import built_as
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import TIE_TO_TIE_PER_GAUGE

METRES_PER_INCH = 0.0254
LOCK_SHARE = 0.45  # of the long link's gauge; common practice, no source: 3 1/2 inches for 8
# The sizes printed on the bags, and how far a link is inflated at most: two thirds, about.
# Common practice, no source.
NOMINAL_IN = (6.0, 12.0)
INFLATED_SHARE = 0.84
LONG, SHORT, BRACE, LOCK = "long", "short", "cross", "lock"


@dataclass(frozen=True)
class Gauges:
    """The gauges, in inches, of the long links and of the short ones."""

    long_in: float
    short_in: float

    @property
    def sizes(self) -> Sizes:
        """The same in metres, with the estimated tie-to-tie lengths."""
        long_m, short_m = self.long_in * METRES_PER_INCH, self.short_in * METRES_PER_INCH
        return Sizes(long_m, short_m, TIE_TO_TIE_PER_GAUGE * long_m, TIE_TO_TIE_PER_GAUGE * short_m)


def gauges_from(long_in: float) -> Gauges:
    """Long links of this gauge, with short ones of three quarters, to the half inch."""
    return Gauges(long_in, round(1.5 * long_in) / 2)


def _nominal_in(gauge_in: float) -> float:
    return next((size for size in NOMINAL_IN if gauge_in <= INFLATED_SHARE * size), 18.0)


def course_items(names: Sequence[str]) -> list[CourseItem]:
    """Names of cells with runs of equal ones written as repeats."""
    items: list[CourseItem] = []
    for name, run in groupby(names):
        count = len(list(run))
        plain: CourseItem = name
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


def design_of(course: Course, gauges: Gauges, name: str, stand_on: Sequence[str] = ()) -> Design:
    """The design of a closed tube of four chains along `course`."""
    pattern = _pattern(course)
    blue, ivory, sky = "#1F5F8B", "#F7F3E8", "#6FA8C9"
    balloons = {LONG: _link(gauges.long_in, blue, say("deep blue"))}
    if pattern:
        balloons[SHORT] = _link(gauges.short_in, sky, say("sky blue"))
    balloons[BRACE] = _link(gauges.long_in, ivory, say("ivory"))
    lock_in = round(LOCK_SHARE * gauges.long_in * 4) / 4
    balloons[LOCK] = Balloon(
        kind="round", nominal=5.0, inflate_to=lock_in, colour=ivory, label=say("ivory")
    )
    names = [KINDS[kind].name for kind in course.part]
    cells = course_items(names)
    if course.fold > 1:
        cells = [Repeat(repeat=course.fold, cells=cells)]
    tube = Tube(
        closed=True, chains=4, long=LONG, brace=BRACE, single=BRACE, lock=LOCK, course=cells
    )
    return Design(
        buildplan=1,
        name=_title(name),
        units="in",
        balloons=balloons,
        build=built_as("tube", tube),
        stand_on=list(stand_on) or None,
        colour_pattern=pattern,
    )


def _title(name: str) -> str:
    """The outline's name as that of a piece, on one line."""
    return " ".join(name.replace("-", " ").replace("_", " ").split()).title()[:60] or say(
        "Fitted Piece"
    )


def _link(gauge_in: float, colour: str, label: str) -> Balloon:
    return Balloon(
        kind="link",
        nominal=_nominal_in(gauge_in),
        inflate_to=gauge_in,
        colour=colour,
        label=label,
    )
