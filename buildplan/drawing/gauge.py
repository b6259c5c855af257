"""Gauges at true size, to be cut out of card, and a ruler to check the printer with.

1 inch is 25.4 mm exactly (international yard and pound agreement, 1959; from memory) and 72
points, so a gauge of d metres is d / 0.0254 * 72 points across.

A gauge takes one of four forms, the first that its paper has room for:

hole     a full circle, a `Circle` mark of exactly half the gauge's diameter
notch    two parallel jaws as far apart as the gauge, closed by a half circle: an open-sided
         caliper laid along the long side of the page. One open `Curve`, whose first and last
         points are the jaws' ends, one diameter apart.
half     half a notch, printed twice, to be taped together along a printed line: an open `Curve`
         of one jaw and a quarter circle, whose ends are half a diameter apart, square to the line
tape     too large for paper: a note of the length that a tape measure should show round it
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import product

from buildplan.design.measures import Units
from buildplan.drawing.gauge_forms import (
    JAWS,
    MM,
    WALL,
    WORDS_PT,
    Gauge,
    GaugeForm,
    GaugeWords,
    gauge_words,
    half_marks,
    hole_marks,
    notch_marks,
    points,
    tape_words,
)
from buildplan.drawing.gauge_ruler import RULER_HEIGHT, ruler_marks
from buildplan.drawing.line_art import INK, SOFT
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.evaluation import balloon_words
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice

MARGIN = 12 * MM
# How much card is left above and below a gauge, and behind it: much, where a page has room for it.
CARDS = (*(mm * MM for mm in range(20, 7, -1)), WALL)
# What is left behind a notch, and how many of the longest jaws are not tried for it: rather than
# little card its jaws are shorter.
SPINES = (*((card, 0) for card in CARDS[:-1]), (CARDS[-2], 1), (CARDS[-2], 2), (WALL, 0))


@dataclass(frozen=True)
class GaugeSheet:
    """A page of gauges at true size: print it at 100 %."""

    picture: Picture
    gauges: tuple[Gauge, ...]


@dataclass(frozen=True)
class NeededGauge:
    """A diameter that the piece sizes balloons to, and what those balloons are called."""

    diameter_m: float
    balloons: tuple[str, ...]


def needed_gauges(framework: Framework, units: Units, voice: Voice) -> list[NeededGauge]:
    """Each distinct gauge diameter that the piece uses, largest first, with its balloons."""
    used = [framework.balloons[key] for key, n in balloon_counts(framework).items() if n]
    sizes: dict[float, list[str]] = {}
    for balloon in used:
        names = sizes.setdefault(round(balloon.gauge_m, 6), [])
        if (words := voice.tell(balloon_words.coloured(balloon, units))) not in names:
            names.append(words)
    return [NeededGauge(size, tuple(names)) for size, names in sorted(sizes.items(), reverse=True)]


@dataclass
class _Page:
    """Room on a page that is being filled: how far up the left and the right column have
    been taken, and how deep they reach into the page; `arm` and `spine` are the card that is left
    about each gauge, above and below it and behind it. A hole takes a page for itself where two
    notches have room: one of `notches` has none. So many of the longest jaws are left out as
    `shorter` says."""

    width: float
    top: float
    foot: float
    arm: float = WALL
    spine: float = WALL
    notches: bool = False
    shorter: int = 0
    reach: list[float] = field(default_factory=lambda: [MARGIN, MARGIN])
    level: list[float] = field(default_factory=list)
    marks: list[Mark] = field(default_factory=list)
    gauges: list[Gauge] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.level = [self.top, self.top]

    def column_for(self, deep: float, tall: float) -> int | None:
        """The column (0 left, 1 right) with room for a gauge, if one has."""
        for side in (0, 1):
            other = self.reach[1 - side]
            if self.level[side] - tall >= self.foot and MARGIN + deep + other <= self.width:
                return side
        return None

    def take(self, side: int, deep: float, tall: float) -> tuple[float, float]:
        """Take that room: x of the page's edge on that side, and y of the gauge's middle."""
        middle = self.level[side] - tall / 2
        self.level[side] -= tall
        self.reach[side] = max(self.reach[side], MARGIN + deep)
        return (MARGIN if side == 0 else self.width - MARGIN, middle)


def gauge_sheets(
    framework: Framework,
    page_size: tuple[float, float],
    units: Units,
    voice: Voice,
    *,
    head: float = 0.0,
    foot: float = 0.0,
    words_pt: float = WORDS_PT,
) -> tuple[GaugeSheet, ...]:
    """All gauges that the piece needs, on as few pages of `page_size` points as they fit.

    Each picture is a whole page, to be placed at the page's corner at scale 1; `head` and
    `foot` are heights kept free at its top and bottom inside the margin of 12 mm. `units` is
    "in" or "cm"; what is said on the gauges is `words_pt` large.
    """
    width, height = page_size
    words = GaugeWords(units, voice, words_pt)

    def fresh(
        arm: float = WALL, spine: float = WALL, notches: bool = False, shorter: int = 0
    ) -> _Page:
        top, low = height - MARGIN - head, MARGIN + foot + RULER_HEIGHT
        return _Page(width, top, low, arm, spine, notches, shorter)

    pages = [fresh()]
    for need in needed_gauges(framework, units, voice):
        # later pages hold smaller gauges, and have more room left
        if any(_place(page, need, words) for page in reversed(pages)):
            continue
        if _beside(pages, need, fresh(notches=True), words):
            continue
        blank = fresh()
        if _place(blank, need, words):
            pages.append(blank)
        elif _place_half(fresh(), need, True, words):
            for upper in (True, False):
                if not any(_place_half(page, need, upper, words) for page in pages):
                    pages.append(fresh())
                    _place_half(pages[-1], need, upper, words)
        else:
            _note(pages[-1], need, words)
    sheets = []
    for page in (_stout(page, fresh, words) for page in pages):
        marks = (*page.marks, *ruler_marks((MARGIN, MARGIN + foot), width - MARGIN, words))
        alt = voice.say(
            "Gauges at true size. {gauges} A ruler of 100 mm and one of 4 in.",
            gauges=" ".join(gauge_words(gauge, units, voice) for gauge in page.gauges),
        )
        sheets.append(GaugeSheet(Picture(width, height, marks, alt), tuple(page.gauges)))
    return tuple(sheets)


def _beside(pages: list[_Page], need: NeededGauge, notched: _Page, words: GaugeWords) -> bool:
    """Whether a gauge goes on the last page beside what is there, all as notches; it does so."""
    together = [*_needs(pages[-1]), need]
    if not _whole(pages[-1]) or not all(_place(notched, one, words) for one in together):
        return False
    pages[-1] = notched
    return True


def _whole(page: _Page) -> bool:
    """Whether all on a page is in one piece."""
    return all(gauge.form in {GaugeForm.HOLE, GaugeForm.NOTCH} for gauge in page.gauges)


def _needs(page: _Page) -> list[NeededGauge]:
    return [NeededGauge(gauge.diameter_m, gauge.balloons) for gauge in page.gauges]


def _stout(
    page: _Page, fresh: Callable[[float, float, bool, int], _Page], words: GaugeWords
) -> _Page:
    """The same gauges on a page with as much card about them as it has room for, the arms before
    what is behind."""
    if not _whole(page):
        return page
    for arm, (spine, shorter) in product(CARDS, SPINES):
        stouter = fresh(arm, spine, page.notches, shorter)
        placed = all(_place(stouter, need, words) for need in _needs(page))
        if placed and _forms(stouter) == _forms(page):
            return stouter
    return page


def _forms(page: _Page) -> list[GaugeForm]:
    return [gauge.form for gauge in page.gauges]


def _place(page: _Page, need: NeededGauge, words: GaugeWords) -> bool:
    """Draw a gauge on the page, if it has room for it in one piece."""
    across = points(need.diameter_m)
    jaws = JAWS[page.shorter :]
    notches = [(GaugeForm.NOTCH, across / 2 + jaw + page.spine, jaw) for jaw in jaws]
    hole, tall = (GaugeForm.HOLE, across + 2 * page.arm, 0.0), across + 2 * page.arm
    for form, deep, jaw in notches if page.notches else (hole, *notches):
        side = page.column_for(deep, tall)
        if side is None:
            continue
        edge, middle = page.take(side, deep, tall)
        inward = 1.0 if side == 0 else -1.0
        if form is GaugeForm.HOLE:
            centre = (edge + inward * deep / 2, middle)
            gauge = Gauge(need.diameter_m, form, need.balloons, centre, arm=page.arm)
            page.marks += hole_marks(gauge, words)
        else:
            card = page.arm, page.spine
            gauge = Gauge(need.diameter_m, form, need.balloons, (edge, middle), jaw, *card)
            page.marks += notch_marks(gauge, inward, words)
        page.gauges.append(gauge)
        return True
    return False


def _place_half(page: _Page, need: NeededGauge, upper: bool, words: GaugeWords) -> bool:
    """Draw half a notch on the page, if it has room for it."""
    radius = points(need.diameter_m) / 2
    tall = radius + WALL + 20
    fits = ((radius + jaw + WALL, jaw) for jaw in JAWS)
    found = next(((d, j, s) for d, j in fits if (s := page.column_for(d, tall)) is not None), None)
    if found is None:
        return False
    deep, jaw, side = found
    edge, middle = page.take(side, deep, tall)
    line = middle - tall / 2 + 20 if upper else middle + tall / 2 - 20
    gauge = Gauge(need.diameter_m, GaugeForm.HALF, need.balloons, (edge, line), jaw)
    page.marks += half_marks(gauge, 1.0 if side == 0 else -1.0, upper, words)
    page.gauges.append(gauge)
    return True


def _note(page: _Page, need: NeededGauge, words: GaugeWords) -> None:
    """A gauge that no page has room for: what a tape measure shows round the balloon."""
    larger = words.size_pt / WORDS_PT
    deep, tall = page.width - 2 * MARGIN, 44.0 * larger
    page.top = min(page.level)
    page.level = [page.top - tall, page.top - tall]
    page.reach = [MARGIN, MARGIN]
    gauge = Gauge(need.diameter_m, GaugeForm.TAPE, need.balloons, (MARGIN, page.top - tall / 2))
    page.gauges.append(gauge)
    told, title, foot = tape_words(gauge, words.units, words.voice), 11 * larger, 30 * larger
    page.marks += [
        Label((MARGIN, page.top - 16 * larger), told, title, INK, "start", bold=True),
        Label(
            (MARGIN, page.top - foot),
            clauses(words.voice, need.balloons),
            words.size_pt,
            SOFT,
            "start",
        ),
        Polyline(
            ((MARGIN, page.top - tall + 6), (MARGIN + deep, page.top - tall + 6)),
            Ink(stroke=SOFT, width=0.5),
        ),
    ]
