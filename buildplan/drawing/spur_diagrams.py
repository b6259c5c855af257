"""A spur as line diagrams: its two rails opened out like a ladder seen from its side, and each rail
as it lies, seen from above.

A spur is a cell whose chains of one side run out and back again. Its rungs, the singles between the
rails, are end on when seen from above, and one hides the other from every seat of a builder: so
they are drawn side by side, and what goes across the spur on the rail that it is tied to.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.drawing.camera import project
from buildplan.drawing.cell_layout import newest_brace
from buildplan.drawing.colours import mix
from buildplan.drawing.line_art import INK, PAPER, SOFT, TYPE, between, link_outline, toward
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.marks import Circle, Ink, Label, Mark, Picture, Point
from buildplan.drawing.order_discs import NUMBER_RADIUS, order_discs, rows_of
from buildplan.drawing.seat import FROM_ABOVE
from buildplan.drawing.way_round import WAY, pointed
from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Cell, Framework, Link, LongChain, Role
from buildplan.language.voice import Voice
from buildplan.shape.model import Shape

TITLE_PT = 14.0
EDGE = 4.0
THICKEST, SLIMNESS = 20.0, 0.3  # of a balloon, and its share of its length
LEAST_BETWEEN_PT = 2.0  # between two discs of a rail
SPREAD, WIDEST_PT = 0.86, 48.0  # how far a folded rail spreads, of half its width, and at most
ARROW = (0.2, 0.82)  # where along a balloon the arrow of its way begins and ends


@dataclass(frozen=True)
class Spur:
    """A spur of a piece, what is known of it when it is drawn: the joints that carry locks then,
    and the singles that are tied there, in their order."""

    framework: Framework
    shape: Shape
    cell: Cell
    voice: Voice
    locked: frozenset[str] = frozenset()
    singles: tuple[str, ...] = ()

    @cached_property
    def rails(self) -> tuple[tuple[LongChain, tuple[str, ...]], ...]:
        """The chains that run out and back, those in front first, each with its joints from
        brace to brace."""
        section = self.framework.brace[self.cell.first].section
        found = []
        for long in self.framework.built_with(section[0]).chains:
            joints = long.chain.joints
            ends = [joint for joint in section if joint in joints]
            at = joints.index(ends[0])
            run = [joints[(at + step) % len(joints)] for step in range(self._links + 1)]
            if set(run[1:-1]) <= set(self.cell.skipped):
                found.append((long, tuple(run)))
        return tuple(sorted(found, key=lambda rail: rail[0].layer is Layer.BACK))

    @property
    def between(self) -> tuple[int, int]:
        """The numbers of its braces."""
        return self.cell.first, self.cell.second

    @property
    def _links(self) -> int:
        return max(self.cell.outer, self.cell.inner)

    @property
    def is_ladder(self) -> bool:
        """Whether singles go from one rail to another."""
        return any(not self.along(link) for link in self.singles)

    @property
    def crossed(self) -> tuple[LongChain, ...]:
        """The rails that singles go across."""
        return tuple(
            long
            for long, run in self.rails
            if any(set(self.ends(link)) <= set(run) for link in self.singles)
        )

    def along(self, link: str) -> bool:
        """Whether a single's joints are of one rail."""
        return any(set(self.ends(link)) <= set(run) for _, run in self.rails)

    def ends(self, name: str) -> tuple[str, str]:
        """The joints of a single, that of its tail first."""
        link = self.framework.link[name]
        return link.start, link.finish


def spur_ladder(spur: Spur, width: float, height: float) -> Picture:
    """The rails of a spur, opened out, with the rungs between them numbered in their order.
    Joints of a long spur take more room than `width` points."""
    radius = joint_radius(spur.framework)
    count = max(len(run) for _, run in spur.rails)
    column = max((width - 2 * (radius + EDGE)) / (count - 1), 2 * radius + LEAST_BETWEEN_PT)
    width = 2 * (radius + EDGE) + column * (count - 1)
    top, foot = height - TITLE_PT - radius - EDGE, radius + EDGE + NUMBER_RADIUS
    rows = np.linspace(top, foot, max(len(spur.rails), 2))
    spots = {
        joint: (radius + EDGE + column * place, float(y))
        for (_, run), y in zip(spur.rails, rows, strict=False)
        for place, joint in enumerate(run)
    }
    shown = [link for link in spur.singles if not spur.along(link)]
    words = spur.voice.say("opened out, seen from its side")
    marks = [_title(words, height), *_drawn(spur, spots, shown, radius)]
    return Picture(width, height, tuple(marks), _alt(spur, words), _data("spur ladder"))


def spur_plan(spur: Spur, letter: str, width: float, height: float) -> Picture:
    """A rail of a spur from above, its end at the top, with what goes across it; while nothing is
    tied to it, the brace that was tied last has the numbers of its order. A long spur takes more
    room than `height` points."""
    long, run = next(rail for rail in spur.rails if rail[0].letter == letter)
    radius = joint_radius(spur.framework)
    levels = len(run) // 2 + 2
    height = max(height, TITLE_PT + 2 * EDGE + levels * (2 * radius + LEAST_BETWEEN_PT))
    spots = _folded(spur, long, run, (width, height), radius)
    shown = [link for link in spur.singles if set(spur.ends(link)) <= set(run)]
    words = (
        spur.voice.say("chain {letter}, under it", letter=letter)
        if long.layer is Layer.BACK and len(spur.rails) > 1
        else spur.voice.say("chain {letter}, from above", letter=letter)
    )
    marks = [_title(words, height), *_drawn(spur, spots, shown, radius)]
    if not spur.singles:
        rows = rows_of(newest_brace(spur.framework, spur.cell))
        marks += order_discs(rows, spots, radius)
    return Picture(width, height, tuple(marks), _alt(spur, words), _data("spur plan"))


def _folded(
    spur: Spur, long: LongChain, run: Sequence[str], size: tuple[float, float], radius: float
) -> dict[str, Point]:
    """The joints of a rail, those on the way out opposite those on the way back, on the side that
    they lie on; at the foot what the braces hold of the same layer."""
    count, (width, height) = len(run), size
    half = count // 2
    section = [j for n in spur.between for j in spur.framework.brace[n].section if j not in run]
    foot = [j for j in dict.fromkeys(section) if _layer(spur, j) is long.layer]
    levels = half + count % 2 + bool(foot)
    top, low = height - TITLE_PT - radius - EDGE, radius + EDGE
    rise = (top - low) / max(levels - 1, 1)
    side = min((width / 2 - radius - EDGE) * SPREAD, WIDEST_PT)
    if _goes_out_left(spur, run):
        side = -side
    spots: dict[str, Point] = {}
    for place, joint in enumerate(run):
        back = count - 1 - place
        level = min(place, back) + bool(foot)
        across = 0.0 if place == back else side if place < back else -side
        spots[joint] = (width / 2 + across, low + rise * level)
    apart = side * 2 / (len(foot) + 1)
    for place, joint in enumerate(foot, 1):
        spots[joint] = (width / 2 + side - apart * place, low)
    return spots


def _goes_out_left(spur: Spur, run: Sequence[str]) -> bool:
    """Whether a rail goes out on the left of one who looks along it to its end, from above."""
    flat, _ = project(FROM_ABOVE, np.array([spur.shape.at[joint] for joint in run]))
    area = np.sum(flat[:, 0] * np.roll(flat[:, 1], -1) - flat[:, 1] * np.roll(flat[:, 0], -1))
    return bool(area < 0)


def _layer(spur: Spur, joint: str) -> Layer | None:
    chains = spur.framework.built_with(joint).chains
    return next(long.layer for long in chains if joint in long.chain.joints)


def _drawn(
    spur: Spur, spots: Mapping[str, Point], singles: Collection[str], radius: float
) -> list[Mark]:
    """Balloons between joints that are shown, what is tied now in full, and the joints."""
    newest = newest_brace(spur.framework, spur.cell)
    among = [link for link in spur.framework.links if {link.start, link.finish} <= spots.keys()]
    others = set(spur.framework.singles) - set(singles)
    marks: list[Mark] = []
    for link in among:
        if link.id not in others:
            new = link.id in singles or (not spur.singles and link.id in newest.links)
            marks += _balloon(spur, link, spots, radius, new)
    for joint, spot in spots.items():
        open_ = joint in spur.cell.skipped
        locked = joint in spur.locked
        marks += joint_marks(spot, radius, joint, skipped=open_, locked=locked, repeat=False)
    for link in among:
        if link.id in singles:
            marks += _way(spur, link, spots, radius)
    return marks


def _balloon(
    spur: Spur, link: Link, spots: Mapping[str, Point], radius: float, new: bool
) -> list[Mark]:
    start, finish = spots[link.start], spots[link.finish]
    ends = toward(start, finish, radius - 1), toward(finish, start, radius - 1)
    colour = spur.framework.balloons[link.balloon].colour
    thick = min(THICKEST, SLIMNESS * math.dist(start, finish))
    chain = link.role is Role.CHAIN
    ink = Ink(mix(colour, PAPER, 0.7), SOFT if chain else INK, 0.9)
    if new:
        ink = Ink(mix(colour, PAPER, 0.15), INK, 1.8)
    return [link_outline(*ends, thick, ink)]


def _way(spur: Spur, link: Link, spots: Mapping[str, Point], radius: float) -> list[Mark]:
    """The way of a single from its first joint to its second, and its number in the order."""
    start, finish = spots[link.start], spots[link.finish]
    inner = toward(start, finish, radius), toward(finish, start, radius)
    first, last = (between(*inner, share) for share in ARROW)
    middle = between(*inner)
    number = spur.singles.index(link.id) + 1
    data = (("from", link.start), ("to", link.finish), ("order", str(number)))
    foot = (middle[0], middle[1] - TYPE * 0.36)
    return [
        *pointed([first, middle, last], head_pt=4.5, width=1.2),
        Circle(middle, NUMBER_RADIUS + (0.0 if number < 10 else 1.5), Ink(WAY, PAPER, 0.8)),
        Label(foot, str(number), TYPE, PAPER, bold=True, data=data),
    ]


def _title(words: str, height: float) -> Mark:
    return Label((0.0, height - 9.0), words, TYPE, SOFT, anchor="start")


def _data(kind: str) -> tuple[tuple[str, str], ...]:
    return (("picture", kind),)


def _alt(spur: Spur, words: str) -> str:
    return spur.voice.say(
        "Spur between brace {first} and brace {second}, {seen}.",
        first=spur.cell.first,
        second=spur.cell.second,
        seen=words,
    )
