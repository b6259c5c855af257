"""The map of a tube.

A tube is slit along its A chain and laid out flat: one row for each long chain, and A once
more at the foot, because there the tube closes round. The plan is cut into strips that are
stacked on sheets; a strip begins with the section that the strip before it ends with.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.drawing.map_style import BRACE, SHARED, SINGLE
from buildplan.drawing.map_words import map_words
from buildplan.drawing.maps.blocks import MapBlock, MapNames
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.maps.sheets import MAP_DATA, FlatPlan
from buildplan.drawing.maps.strip_grid import (
    ROW_GAPS,
    StripGrid,
    filling,
    strip_grid,
    strip_height,
)
from buildplan.drawing.maps.strips import StripDrawing
from buildplan.drawing.marks import Mark, Picture
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice


def tube_sheets(
    framework: Framework, width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """The map of a tube that is a whole piece. Every joint, link, brace number and lock is drawn in
    full once; whatever is repeated (the first row at the foot, a strip's first section, the first
    section after the last of a closed tube) is pale."""
    names = MapNames()
    grid = strip_grid(framework, names, width, height, voice)
    items = _legend_items(grid)
    key_height, key = legend(items, width)
    without_way = legend([one for one in items if one[0] is not Sign.WAY], width)[1]
    apart = _leaves_no_strip(grid, height, key_height)
    grid = grid if apart else filling(grid, height - key_height)
    foot = 0.0 if apart else key_height
    seen: set[str] = set()
    pictures = []
    for sheet in range(grid.sheets):
        numbers = grid.on_sheet(sheet)
        tall = foot + grid.strip_height * len(numbers)
        marks: list[Mark] = [] if apart else [*(without_way if sheet else key)]
        for i, number in enumerate(numbers):
            block = StripDrawing(grid, number).block(seen)
            corner = (0.0, tall - grid.strip_height * (i + 1))
            marks += block.marks(framework, names, grid.radius, corner)
        strips = [grid.strips[number] for number in numbers]
        words = map_words(grid.plan, strips, sheet + 1, grid.sheets, voice)
        pictures.append(Picture(width, tall, tuple(marks), words, MAP_DATA))
    if apart:
        signs = voice.listed([told for _, told in items])
        words = voice.say("Key of the joint map: {signs}.", signs=signs)
        pictures.append(Picture(width, key_height, tuple(key), words, MAP_DATA))
    return tuple(pictures)


def tube_plan(framework: Framework, names: MapNames, width: float, voice: Voice) -> FlatPlan:
    """The map of a tube that is a part of a piece: its strips, wherever there is room for them."""
    grid = strip_grid(framework, names, width, 0.0, voice)
    grid = replace(grid, per_sheet=len(grid.strips))
    alt = map_words(grid.plan, grid.strips, 1, 1, voice)

    def blocks(share: float, width: float, height: float) -> Sequence[MapBlock]:
        gap = ROW_GAPS[0] + share * (ROW_GAPS[1] - ROW_GAPS[0])
        drawn, seen = replace(grid, row_gap=gap), set[str]()
        return [StripDrawing(drawn, number).block(seen) for number in range(len(grid.strips))]

    return FlatPlan(framework, names, "", _legend_items(grid), alt, blocks)


def _leaves_no_strip(grid: StripGrid, height: float, key_height: float) -> bool:
    """Whether a strip fits on a sheet by itself, but not with the key."""
    strip = strip_height(grid.plan, grid.radius, ROW_GAPS[0])
    return strip <= height < strip + key_height


def _legend_items(grid: StripGrid) -> list[Item]:
    framework, voice = grid.framework, grid.voice
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if any(cell.skipped for cell in framework.cells):
        items.append((Sign.SKIPPED, voice.say_in("legend", "no brace")))
    if grid.draws_again:
        items.append((Sign.AGAIN, voice.say_in("legend", "drawn again")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [grid.names.short(chain.letter) for chain in framework.chains]
    items += chain_items(framework, named, voice)
    items.append((Sign.WAY, voice.say_in("legend", "numbers run")))
    items.append((BRACE, voice.say_in("legend", "brace")))
    if any(brace.shared for brace in framework.braces):
        items.append((SHARED, voice.say_in("legend", "shared")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    return items
