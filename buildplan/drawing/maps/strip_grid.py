"""The measures that all strips of a joint map have in common: chosen to fill its sheets."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import fsum

from buildplan.drawing.fonts import text_width, wrapped
from buildplan.drawing.line_art import TYPE
from buildplan.drawing.map_layout import Strip, UnrolledTube
from buildplan.drawing.maps.blocks import MapNames
from buildplan.framework.model import Framework, LongChain
from buildplan.language.voice import Voice

LEFT = 60.0  # least margin for the rows' letters and places
FACE_GAPS = 6.0, 8.0  # before and after the faces' names
HEAD = 43.0  # a strip's title, cell names and brace numbers
ROW_GAPS = (29.5, 42.0)  # least and most between two rows
DISC_GAPS = (13.0, 44.0)  # least and most bare line between two discs
NARROW, NARROW_DISC_GAP = 400.0, 8.0  # discs stand closer on narrow sheets
STRIP_GAP = 14.0


@dataclass(frozen=True)
class StripGrid:
    """The measures that all strips have in common, in points."""

    framework: Framework
    names: MapNames
    voice: Voice
    plan: UnrolledTube
    strips: tuple[Strip, ...]
    width: float
    per_sheet: int
    left: float
    radius: float
    column: float
    row_gap: float

    @property
    def sheets(self) -> int:
        """How many sheets the strips take."""
        return -(-len(self.strips) // self.per_sheet)

    @property
    def strip_height(self) -> float:
        """Height of one strip with the gap below it."""
        return strip_height(self.plan, self.radius, self.row_gap)

    @property
    def draws_again(self) -> bool:
        """Whether anything is drawn a second time: the first row at the foot, or a section where
        a strip begins or a closed tube ends."""
        framework = self.framework
        return len(framework.chains) > 2 or framework.closed or len(self.strips) > 1

    def sheet_of(self, strip: int) -> int:
        """The sheet, from 0, that a strip is on."""
        return strip // self.per_sheet

    def on_sheet(self, sheet: int) -> range:
        """Numbers, from 0, of the strips on a sheet."""
        first = sheet * self.per_sheet
        return range(first, min(first + self.per_sheet, len(self.strips)))


def strip_height(plan: UnrolledTube, radius: float, row_gap: float) -> float:
    """Height of a strip with the gap below it, in points."""
    return HEAD + 2 * radius + (len(plan.rows) - 1) * row_gap + STRIP_GAP


def strip_grid(
    framework: Framework, names: MapNames, width: float, height: float, voice: Voice
) -> StripGrid:
    """Cut the plan into strips and choose measures that fill sheets `height` points high."""
    plan, radius = UnrolledTube(framework), names.radius(framework.joints)
    lines = [line for chain in framework.chains for line in place_lines(chain, voice)]
    left = max(LEFT, *(text_width(line, TYPE) + 6 for line in lines))
    faces = (text_width(face, TYPE) for face in side_names(len(framework.chains), voice))
    right = max((TYPE, *faces)) + fsum(FACE_GAPS)
    room = width - left - right - 2 * radius
    gap = DISC_GAPS[0] if width >= NARROW else NARROW_DISC_GAP
    strips = plan.strips(room / (2 * radius + gap))
    widest = max(plan.columns[strip.last] - plan.columns[strip.first] for strip in strips)
    column = min(room / widest, 2 * radius + DISC_GAPS[1])
    grid = StripGrid(
        framework, names, voice, plan, tuple(strips), width, 1, left, radius, column, ROW_GAPS[0]
    )
    return filling(grid, height)


def filling(grid: StripGrid, height: float) -> StripGrid:
    """The same strips on sheets `height` points high, as many on each and as far apart as fill
    them."""
    plan, radius, strips = grid.plan, grid.radius, len(grid.strips)
    fit = max(1, int(height // strip_height(plan, radius, ROW_GAPS[0])))
    per_sheet = -(-strips // -(-strips // fit))
    spare = height / per_sheet - strip_height(plan, radius, 0)
    row_gap = min(max(spare / (len(plan.rows) - 1), ROW_GAPS[0]), ROW_GAPS[1])
    return replace(grid, per_sheet=per_sheet, row_gap=row_gap)


def place_lines(chain: LongChain, voice: Voice) -> list[str]:
    """The place of a chain, in two lines where it is too long for the margin."""
    return list(wrapped(voice.tell(chain.where), LEFT - 6, TYPE))


def side_names(chains: int, voice: Voice) -> tuple[str, ...]:
    """What is between one row and the next: the sides of a tube of so many chains."""
    front = voice.say_in("side of the tube", "front")
    back = voice.say_in("side of the tube", "back")
    inside = voice.say_in("side of the tube", "inside")
    outside = voice.say_in("side of the tube", "outside")
    faces = {3: (front, back, outside), 4: (front, inside, back, outside)}
    return faces.get(chains, ())
