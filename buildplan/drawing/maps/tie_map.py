"""Pairs of joints: those that a single joins where a map has no line for it, and what ties the
parts of a piece to one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import rounded_box
from buildplan.drawing.line_art import PALE, SOFT, TYPE, lock_mark
from buildplan.drawing.map_style import LOCK_RADIUS, REPEAT_FILL, SINGLE
from buildplan.drawing.maps.blocks import DrawnLink, MapBlock, MapNames, moved
from buildplan.drawing.maps.legend import Item, Sign
from buildplan.drawing.maps.sheets import FlatPlan
from buildplan.drawing.marks import Ink, Label, Mark
from buildplan.framework.model import Framework, Link
from buildplan.language.voice import Voice

PLATE_PAD, PLATE_HEIGHT = 3.5, 13.5
BAR, TOGETHER = 18.0, 11.0  # between two plates: a balloon's line; a lock
BETWEEN_ROWS, BETWEEN_COLUMNS = 5.0, 12.0


def ties_plan(framework: Framework, voice: Voice) -> FlatPlan | None:
    """The ties of an assembly and the balloons between its parts; None where there are none."""
    names = MapNames()
    within = {link.id for part in framework.parts for link in part.framework.links}
    links = [link for link in framework.links if link.id not in within]
    groups: list[Sequence[str]] = [tie.joints for tie in framework.ties]
    if not links and not groups:
        return None
    items: list[Item] = [(Sign.AGAIN, voice.say_in("legend", "drawn again"))]
    if links:
        items.append((SINGLE, voice.say_in("legend", "single")))
    if groups:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))

    def blocks(share: float, width: float, height: float) -> list[MapBlock]:
        pairs = [_joined(link, names) for link in links]
        pairs += [_together(joints, names) for joints in groups]
        return list(_stacked(pairs, width, height))

    alt = voice.say(
        "Between the parts: {joints}.",
        joints=", ".join([*(link.id for link in links), *("+".join(g) for g in groups)]),
    )
    heading = voice.say_in("title of a map", "Between the parts")
    return FlatPlan(framework, names, "", items, alt, blocks, title=heading)


def singles_blocks(
    framework: Framework, names: MapNames, width: float, height: float
) -> list[MapBlock]:
    """The singles of a piece as pairs of joints, where its map has no lines for them."""
    pairs = [_joined(framework.link[id_], names) for id_ in framework.singles]
    return list(_stacked(pairs, width, height)) if pairs else []


def _plate_width(joint: str) -> float:
    return text_width(joint, TYPE, bold=True) + 2 * PLATE_PAD


def _plate(joint: str, names: MapNames, left: float, tied: Sequence[str] = ()) -> Iterator[Mark]:
    """A joint's name on a plate, its left edge at `left`; `tied` are the joints that it is brought
    together with, for a program to read."""
    right = left + _plate_width(names.short(joint))
    ink = Ink(fill=REPEAT_FILL, stroke=PALE, width=0.8)
    yield rounded_box((left, 0.5, right, PLATE_HEIGHT - 0.5), 4.0, ink)
    at = ((left + right) / 2, PLATE_HEIGHT / 2 - TYPE * 0.36)
    label = Label(at, names.short(joint), TYPE, SOFT, bold=True)
    data = names.data(joint, again=True)
    yield replace(label, data=(*data, ("tie", " ".join(tied))) if tied else data)


def _joined(link: Link, names: MapNames) -> MapBlock:
    """Two joints with a balloon between them."""
    first, ends = _plate_width(names.short(link.start)), ("ends", f"{link.start} {link.finish}")
    start, finish = (first, PLATE_HEIGHT / 2), (first + BAR, PLATE_HEIGHT / 2)
    plates = [*_plate(link.start, names, 0.0), *_plate(link.finish, names, first + BAR)]
    plates = [
        replace(one, data=(*one.data, ends)) if isinstance(one, Label) else one for one in plates
    ]
    width = first + BAR + _plate_width(names.short(link.finish))
    return MapBlock(
        width, PLATE_HEIGHT, (), (DrawnLink(link, start, finish, SINGLE),), tuple(plates)
    )


def _together(joints: Sequence[str], names: MapNames) -> MapBlock:
    """Joints that are brought together under one lock."""
    marks: list[Mark] = []
    right = 0.0
    for number, joint in enumerate(joints):
        if number:
            middle = (right + TOGETHER / 2, PLATE_HEIGHT / 2)
            marks += lock_mark(middle, LOCK_RADIUS, -45)
            right += TOGETHER
        marks += _plate(joint, names, right, joints)
        right += _plate_width(names.short(joint))
    return MapBlock(right, PLATE_HEIGHT, (), (), tuple(marks))


def _stacked(pairs: Sequence[MapBlock], width: float, height: float) -> Iterator[MapBlock]:
    """The pairs in columns, in blocks of at most a width and a height."""
    column = max(pair.width for pair in pairs)
    across = max(1, int((width + BETWEEN_COLUMNS) / (column + BETWEEN_COLUMNS)))
    row = PLATE_HEIGHT + BETWEEN_ROWS
    down = max(1, int((height + BETWEEN_ROWS) / row))
    for first in range(0, len(pairs), across * down):
        here = pairs[first : first + across * down]
        rows = -(-len(here) // across)
        yield _block_of(here, across, rows, column + BETWEEN_COLUMNS)


def _block_of(pairs: Sequence[MapBlock], across: int, rows: int, step: float) -> MapBlock:
    links: list[DrawnLink] = []
    notes: list[Mark] = []
    tall = rows * (PLATE_HEIGHT + BETWEEN_ROWS) - BETWEEN_ROWS
    for number, pair in enumerate(pairs):
        down, along = divmod(number, across)
        at = along * step, tall - PLATE_HEIGHT - down * (PLATE_HEIGHT + BETWEEN_ROWS)
        links += [link.moved(at) for link in pair.links]
        notes += moved(pair.notes, at)
    width = min(len(pairs), across) * step - BETWEEN_COLUMNS
    return MapBlock(width, tall, (), tuple(links), tuple(notes))
