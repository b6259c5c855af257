"""Blocks of a map put on sheets, each with the key at its foot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Protocol

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK
from buildplan.drawing.map_style import LinkStyle
from buildplan.drawing.maps.blocks import MapBlock, MapNames
from buildplan.drawing.maps.legend import Item, Sign, legend
from buildplan.drawing.marks import Curve, Label, Mark, MarkData, Picture, Polyline
from buildplan.drawing.way_round import WAY
from buildplan.framework.assembly import part_joint
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

# How large blocks are tried, from the largest that helps to the smallest that can be read.
SHARES = (1.0, 0.7, 0.4, 0.2, 0.0)
HALVINGS = 3  # of the step between the largest that takes the fewest sheets and the next
GAP = 16.0  # between blocks
TITLE, TITLE_ROOM = 11.0, 18.0
MAP_DATA: MarkData = (("picture", "joint map"),)


class LaidOut(Protocol):
    """Lays a piece out in blocks of at most a width and a height in points; a share of 1 asks for
    the largest that helps, of 0 for the smallest that can be read."""

    def __call__(self, share: float, width: float, height: float) -> Sequence[MapBlock]: ...


@dataclass(frozen=True)
class FlatPlan:
    """How one piece, or equal parts, are laid out flat: what the key says of it (`told` in words,
    `items` by signs), what the map says to those who cannot see it, its blocks, and the title that
    stands over them."""

    framework: Framework
    names: MapNames
    told: str
    items: Sequence[Item]
    alt: str
    blocks: LaidOut
    title: str = ""

    @cached_property
    def radius(self) -> float:
        """Radius of its joints' discs."""
        return self.names.radius(self.framework.joints)


@dataclass(frozen=True)
class PlacedBlock:
    """A block on a sheet: its left edge, and its top from the top of the sheet, the title over
    it."""

    plan: FlatPlan
    block: MapBlock
    left: float
    top: float

    @property
    def head(self) -> float:
        """Height of its title."""
        return TITLE_ROOM if self.plan.title else 0.0


def flat_sheets(
    plans: Sequence[FlatPlan], width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """The plans on as few sheets as can be read, drawn as large as those allow, each with the key
    to what is on it. Where the key to all would leave no room for a block, it is a sheet of its
    own."""
    items = list(dict.fromkeys(item for plan in plans for item in plan.items))
    key_height, key = legend(items, width, _told(plans, voice))
    room = height - key_height
    apart = any(
        one.block.height + one.head > room + 0.01
        for sheet in _packed(plans, 0.0, width, room)
        for one in sheet
    )
    room = height if apart else room
    best = _largest(plans, width, room)
    keys = [_key_of(sheet, width, voice) for sheet in best]
    keys = [own if own[0] <= key_height else (key_height, key) for own in keys]
    if apart:
        keys = [(0.0, [])] * len(best)
    pictures = [
        _picture(sheet, width, foot, own, voice)
        for sheet, (foot, own) in zip(best, keys, strict=True)
    ]
    if apart:
        signs = voice.listed([words for _, words in items])
        alt = voice.say("Key of the joint map: {signs}.", signs=signs)
        pictures.append(Picture(width, key_height, tuple(key), alt, MAP_DATA))
    return tuple(pictures)


def _key_of(sheet: Sequence[PlacedBlock], width: float, voice: Voice) -> tuple[float, list[Mark]]:
    """The key to the signs and styles of line that a sheet has: its height, and its marks."""
    plans = {id(one.plan): one.plan for one in sheet}
    found: dict[Item, None] = {}
    for plan in plans.values():
        blocks = [one.block for one in sheet if one.plan is plan]
        found |= dict.fromkeys(item for item in plan.items if _is_on(item[0], plan, blocks))
    return legend(list(found), width, _told(list(plans.values()), voice))


def _is_on(sign: Sign | LinkStyle, plan: FlatPlan, blocks: Sequence[MapBlock]) -> bool:
    """Whether a sign of a plan, or a style of line, is on some of its blocks."""
    # pairs of joints that are tied, without a place of their own, are pale, with a lock between
    joints = [joint for block in blocks for joint in block.joints]
    links = [link for block in blocks for link in block.links]
    notes = [mark for block in blocks for mark in (*block.notes, *block.over)]
    if isinstance(sign, LinkStyle):
        lines = [mark.ink for mark in notes if isinstance(mark, Polyline) and not mark.closed]
        styled = any((ink.width, ink.dash) == (sign.width, sign.dash) for ink in lines)
        return any(link.style == sign for link in links) or (styled and not sign.double)
    match sign:
        case Sign.JOINT:
            return any(not joint.skipped and not joint.again for joint in joints)
        case Sign.SKIPPED:
            return any(joint.skipped for joint in joints)
        case Sign.AGAIN | Sign.SHOWN_BEFORE:
            again = any(joint.again for joint in joints) or any(link.again for link in links)
            return again or not joints
        case Sign.LOCK:
            return not joints or any(joint.joint in plan.framework.lock_at for joint in joints)
        case Sign.WAY:
            return any(isinstance(mark, Curve) and mark.ink.stroke == WAY for mark in notes)
        case _:
            return True


def _told(plans: Sequence[FlatPlan], voice: Voice) -> list[str]:
    """What is told in words of each plan, with its title where there are several: plans that are
    told alike together; and what joints of parts are called in the steps."""
    named = next((plan.names for plan in plans if plan.names.parts), None)
    if named is None:
        return _told_of_each(plans, voice)
    called = voice.say(
        "Joints are called by their part in the steps: A1 under {part} is {joint}.",
        part=named.parts[0],
        joint=part_joint(named.parts[0], "A1"),
    )
    return [*_told_of_each(plans, voice), called]


def _told_of_each(plans: Sequence[FlatPlan], voice: Voice) -> list[str]:
    titles: dict[str, list[str]] = {}
    for plan in plans:
        if plan.told:
            titles.setdefault(plan.told, []).append(plan.title)
    if len(plans) == 1:
        return list(titles)
    return [
        voice.say("{name}: {words}", name=voice.listed(names), words=words) if all(names) else words
        for words, names in titles.items()
    ]


def _largest(plans: Sequence[FlatPlan], width: float, room: float) -> list[list[PlacedBlock]]:
    """The blocks packed, as large as they come on the fewest sheets."""
    tried = {share: _packed(plans, share, width, room) for share in SHARES}
    fewest = min(map(len, tried.values()))
    best = max(share for share, sheets in tried.items() if len(sheets) == fewest)
    larger = min((share for share in SHARES if share > best), default=best)
    for _ in range(HALVINGS if larger > best else 0):
        middle = (best + larger) / 2
        tried[middle] = _packed(plans, middle, width, room)
        if len(tried[middle]) == fewest:
            best = middle
        else:
            larger = middle
    return tried[best]


def _packed(
    plans: Sequence[FlatPlan], share: float, width: float, room: float
) -> list[list[PlacedBlock]]:
    """Blocks side by side in rows, rows below one another on sheets: each in the first row that
    has room for it, those of several parts from the highest to the lowest."""
    blocks = [
        (plan, block, block.height + (TITLE_ROOM if plan.title else 0.0))
        for plan in plans
        for block in plan.blocks(share, width, room - (TITLE_ROOM if plan.title else 0.0))
    ]
    if len(plans) > 1:
        blocks.sort(key=lambda one: -round(one[2], 3))
    sheets: list[list[_Row]] = []
    for plan, block, high in blocks:
        wide = max(block.width, text_width(plan.title, TITLE, bold=True))
        row = _row_for(sheets, wide, high, width, room)
        row.blocks.append((plan, block, row.used))
        row.used += wide + GAP
    return [
        [
            PlacedBlock(plan, block, left + (width - row.used + GAP) / 2, row.top)
            for row in sheet
            for plan, block, left in row.blocks
        ]
        for sheet in sheets
    ]


@dataclass
class _Row:
    """A row of blocks on a sheet: its top from that of the sheet, its height, how much of the width
    is used, and its blocks with their left edges."""

    top: float
    height: float
    used: float = 0.0
    blocks: list[tuple[FlatPlan, MapBlock, float]] = field(default_factory=list)


def _row_for(sheets: list[list[_Row]], wide: float, high: float, width: float, room: float) -> _Row:
    """The first row with room for a block, or a new one, on a new sheet if need be."""
    for sheet in sheets:
        for row in sheet:
            if high <= row.height + 0.01 and row.used + wide <= width + 0.01:
                return row
        top = sheet[-1].top + sheet[-1].height + GAP
        if top + high <= room + 0.01:
            sheet.append(_Row(top, high))
            return sheet[-1]
    sheets.append([_Row(0.0, high)])
    return sheets[-1][0]


def _picture(
    sheet: Sequence[PlacedBlock], width: float, foot: float, key: Sequence[Mark], voice: Voice
) -> Picture:
    tall = foot + max(one.top + one.head + one.block.height for one in sheet)
    marks: list[Mark] = [*key]
    for one in sheet:
        plan, y = one.plan, tall - one.top
        if plan.title:
            at = (one.left, y - TITLE)
            marks.append(Label(at, plan.title, TITLE, INK, anchor="start", bold=True))
        corner = (one.left, y - one.head - one.block.height)
        marks += one.block.marks(plan.framework, plan.names, plan.radius, corner)
    shown = {id(one.plan): one.plan for one in sheet}.values()
    alt = " ".join(_said(plan, voice) for plan in shown)
    return Picture(width, tall, tuple(marks), alt, MAP_DATA)


def _said(plan: FlatPlan, voice: Voice) -> str:
    if not plan.names.parts:
        return plan.alt
    return voice.say("Part {part}. {words}", part=voice.listed(plan.names.parts), words=plan.alt)
