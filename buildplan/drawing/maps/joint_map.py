"""The joint map: the flat plan of a piece, from which a builder reads which joints meet.

A tube is slit along its A chain and laid out flat: one row for each long chain, and A once
more at the foot, because there the tube closes round. The plan is cut into strips that are
stacked on sheets; a strip begins with the section that the strip before it ends with.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from buildplan.drawing.map_style import BRACE, SHARED, SINGLE
from buildplan.drawing.map_words import map_words
from buildplan.drawing.maps.face_map import face_map
from buildplan.drawing.maps.graph_map import graph_map
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.maps.strip_grid import ROW_GAPS, StripGrid, filling, strip_grid, strip_height
from buildplan.drawing.maps.strips import StripDrawing
from buildplan.drawing.marks import Inset, Picture
from buildplan.framework.model import Framework
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

PART_GAP = 16.0  # between the maps of two parts on one sheet


def joint_map(
    framework: Framework, width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """The joint map on as many sheets as it takes, each at most `width` by `height` points.

    Every joint, link, brace number and lock is drawn in full once; whatever is repeated (the
    first row at the foot, a strip's first section, the first section after the last of a
    closed tube) is pale. An assembly has the maps of its parts, one after another; a piece that
    its pattern draws flat, the front with the back behind it. One that is listed joint by joint
    gets a diagram of joints and lines instead. Type is 8 pt or larger; made for a width of 350
    points or more. The key is at the foot of every sheet; where that leaves no room for a strip,
    it is the last sheet.
    """
    if framework.parts:
        sheets = (
            (part, joint_map(part.framework, width, height, voice)) for part in framework.parts
        )
        told = [
            replace(sheet, alt=voice.say("Part {part}. {words}", part=part.name, words=sheet.alt))
            for part, pictures in sheets
            for sheet in pictures
        ]
        return tuple(_on_sheets(told, height))
    if framework.laid and framework.mirror and not framework.cells:
        return (face_map(framework, width, height, voice),)
    if not framework.cells:
        return graph_map(framework, width, height, voice)
    grid = strip_grid(framework, width, height, voice)
    items = _legend_items(grid)
    key_height, key = legend(items, width)
    apart = _leaves_no_strip(grid, height, key_height)
    grid = grid if apart else filling(grid, height - key_height)
    foot = 0.0 if apart else key_height
    seen: set[str] = set()
    pictures = []
    for sheet in range(grid.sheets):
        numbers = grid.on_sheet(sheet)
        tall = foot + grid.strip_height * len(numbers)
        marks = [] if apart else [*key]
        for i, number in enumerate(numbers):
            top = tall - grid.strip_height * i
            marks += StripDrawing(grid, number, top).marks(seen)
        strips = [grid.strips[number] for number in numbers]
        words = map_words(grid.plan, strips, sheet + 1, grid.sheets, voice)
        pictures.append(Picture(width, tall, tuple(marks), words))
    if apart:
        signs = voice.listed([told for _, told in items])
        words = voice.say("Key of the joint map: {signs}.", signs=signs)
        pictures.append(Picture(width, key_height, tuple(key), words))
    return tuple(pictures)


def _on_sheets(maps: Sequence[Picture], height: float) -> Iterator[Picture]:
    """Maps of parts on sheets `height` points high, each below the others on the first sheet that
    has room for it."""
    sheets: list[list[Picture]] = []
    for one in maps:
        for sheet in sheets:
            if _stacked_height([*sheet, one]) <= height:
                sheet.append(one)
                break
        else:
            sheets.append([one])
    yield from map(_stacked, sheets)


def _stacked_height(maps: Sequence[Picture]) -> float:
    return sum(one.height for one in maps) + PART_GAP * (len(maps) - 1)


def _stacked(maps: Sequence[Picture]) -> Picture:
    """Maps as one picture, the first at the top."""
    if len(maps) == 1:
        return maps[0]
    top = tall = _stacked_height(maps)
    insets = []
    for one in maps:
        top -= one.height
        insets.append(Inset(one, (0.0, top)))
        top -= PART_GAP
    wide = max(one.width for one in maps)
    return Picture(wide, tall, tuple(insets), sentences(*(one.alt for one in maps)))


def _leaves_no_strip(grid: StripGrid, height: float, key_height: float) -> bool:
    """Whether a strip fits on a sheet by itself, but not with the key."""
    strip = strip_height(grid.plan, grid.radius, ROW_GAPS[0])
    return strip <= height < strip + key_height


def _legend_items(grid: StripGrid) -> list[Item]:
    framework, voice = grid.framework, grid.voice
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if any(cell.skipped for cell in framework.cells):
        items.append((Sign.SKIPPED, voice.say_in("legend", "skipped joint: no brace")))
    if grid.draws_again:
        items.append((Sign.AGAIN, voice.say_in("legend", "drawn again")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [
        voice.say_in("legend", "chain {letter}", letter=chain.letter) for chain in framework.chains
    ]
    items += chain_items(framework, named, voice)
    items.append((Sign.WAY, voice.say_in("legend", "from joint 1 to joint 2")))
    items.append((BRACE, voice.say_in("legend", "brace balloon")))
    if any(brace.shared for brace in framework.braces):
        items.append((SHARED, voice.say_in("legend", "brace balloon that two braces share")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    return items
