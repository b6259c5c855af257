"""The map of a grid of rows and uprights: each layer as it is seen from the front.

A balloon between two layers is a short dotted line at its joint in front, with the name of its
joint at the back. What is too wide or too high for a sheet is cut into tiles, each of which begins
with the joints with which the tile before it ends.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import fsum

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, SOFT, TYPE
from buildplan.drawing.map_style import SINGLE, LinkStyle
from buildplan.drawing.map_words import all_chains_words
from buildplan.drawing.maps.blocks import DrawnJoint, DrawnLink, MapBlock, MapNames, end_letter
from buildplan.drawing.maps.cutting import cut_evenly
from buildplan.drawing.maps.legend import Item, Sign, role_items
from buildplan.drawing.maps.sheets import FlatPlan
from buildplan.drawing.maps.tie_map import singles_blocks
from buildplan.drawing.marks import Label, Mark, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import BETWEEN, ROW, UPRIGHT, Layer
from buildplan.framework.model import Framework, LongChain
from buildplan.language.voice import Voice

ROW_LINE, UPRIGHT_LINE = LinkStyle(2.2), LinkStyle(1.6, (8, 2.5))
BETWEEN_LINE = LinkStyle(1.3, (1.6, 2.2))
HEAD, FOOT = 17.0, 16.0  # a layer's name over it; the letters of uprights below it
BESIDE, BEHIND = 3.0, 14.0  # from a disc to a row's letter, and to the middle of a name behind it
PITCHES = (20.0, 46.0)  # least and most bare line between two joints of a row
ROW_GAPS = (28.0, 52.0)

Spot = tuple[int, int]  # column from the left, row from the foot


def is_grid(framework: Framework) -> bool:
    """Whether a piece is rows and uprights in layers, and what is between those."""
    roles = {long.role for long in framework.chains}
    return bool(framework.laid) and ROW in roles and roles <= {ROW, UPRIGHT, BETWEEN}


def grid_plan(framework: Framework, names: MapNames, voice: Voice) -> FlatPlan:
    """The map of a grid."""
    grids = Grids(framework, names, voice)
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    items += role_items(framework.chains, {ROW: ROW_LINE, UPRIGHT: UPRIGHT_LINE}, names, voice)
    if grids.behind:
        told = voice.say_in("legend", "balloon to this joint of the back")
        items.append((BETWEEN_LINE, told))
    items.append((Sign.WAY, voice.say_in("legend", "numbers run")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    layers = voice.say(
        "Each layer is drawn as it is seen from the front, the back layer through the front one."
    )
    told = layers if len(grids.layers) > 1 else voice.say("As seen from the front.")
    return FlatPlan(framework, names, told, items, all_chains_words(framework, voice), grids.blocks)


@dataclass(frozen=True)
class Grids:
    """Where the joints of a grid lie, in columns and rows of each layer."""

    framework: Framework
    names: MapNames
    voice: Voice

    @cached_property
    def spot(self) -> Mapping[str, Spot]:
        """The column and the row of each joint."""
        columns, rows = (self._steps(axis) for axis in (0, 1))
        laid = self.framework.laid
        return {j: (columns[round(x, 6)], rows[round(y, 6)]) for j, (x, y, _) in laid.items()}

    def _steps(self, axis: int) -> Mapping[float, int]:
        values = sorted({round(at[axis], 6) for at in self.framework.laid.values()})
        return {value: i for i, value in enumerate(values)}

    @cached_property
    def layers(self) -> Mapping[Layer | None, Sequence[LongChain]]:
        """The rows and uprights of each layer, the front first."""
        found: dict[Layer | None, list[LongChain]] = {}
        for long in self.framework.chains:
            if long.role != BETWEEN:
                found.setdefault(long.layer, []).append(long)
        return found

    @cached_property
    def behind(self) -> Mapping[str, str]:
        """The balloon that leads from a joint in front to the back."""
        return {
            long.chain.joints[0]: long.chain.links[0]
            for long in self.framework.chains
            if long.role == BETWEEN
        }

    @cached_property
    def sides(self) -> tuple[float, float]:
        """Room at the left for the letters of rows, at the right for names of joints behind."""
        short = self.names.short
        letters = (text_width(short(long.letter), 9, True) for long in self.framework.chains)
        behind = (
            text_width(short(self.framework.link[x].finish), TYPE) for x in self.behind.values()
        )
        return BESIDE + max(letters) + 1, BEHIND + max(behind, default=0.0) / 2 + 1

    def blocks(self, share: float, width: float, height: float) -> list[MapBlock]:
        """The tiles of each layer, at most so wide and so high. Two layers of one tile each that
        fit on a sheet together are drawn so large that they do."""
        radius = self.names.radius(self.framework.joints)
        steps = [max(spot[axis] for spot in self.spot.values()) for axis in (0, 1)]
        side = fsum(self.sides) + 2 * radius
        high = HEAD + FOOT + 2 * radius
        columns = cut_evenly(steps[0], max(1, int((width - side) / (2 * radius + PITCHES[0]))))
        rows = cut_evenly(steps[1], max(1, int((height - high) / ROW_GAPS[0])))
        pitch, gap = (
            low + share * (most - low)
            for low, most in ((2 * radius + PITCHES[0], 2 * radius + PITCHES[1]), ROW_GAPS)
        )
        pitch = min(pitch, (width - side) / max(b - a for a, b in columns))
        gap = min(gap, (height - high) / max(b - a for a, b in rows))
        seen: set[str] = set()
        tiles = [
            GridTile(self, layer, across, up, radius, (pitch, gap)).block(seen)
            for layer in self.layers
            for up in rows
            for across in columns
        ]
        return [*tiles, *singles_blocks(self.framework, self.names, width, height)]


@dataclass(frozen=True)
class GridTile:
    """A stretch of one layer: its first and last column and row, and its measures in points."""

    grids: Grids
    layer: Layer | None
    across: tuple[int, int]
    up: tuple[int, int]
    radius: float
    steps: tuple[float, float]  # from column to column, from row to row

    def block(self, seen: set[str]) -> MapBlock:
        """The tile. `seen` names the joints and links that other tiles have drawn, and takes in
        those that this one draws."""
        links = [*self._lines(seen), *self._to_the_back(seen)]
        joints = list(self._joints(seen))
        width = (
            fsum(self.grids.sides)
            + 2 * self.radius
            + (self.across[1] - self.across[0]) * self.steps[0]
        )
        height = HEAD + FOOT + 2 * self.radius + (self.up[1] - self.up[0]) * self.steps[1]
        notes = (self._title(height), *self._letters(), *self._names_behind())
        return MapBlock(width, height, tuple(joints), tuple(links), notes, tuple(self._way()))

    @cached_property
    def _chains(self) -> Sequence[LongChain]:
        return self.grids.layers[self.layer]

    def _at(self, joint: str) -> Point:
        column, row = self.grids.spot[joint]
        x = self.grids.sides[0] + self.radius + (column - self.across[0]) * self.steps[0]
        return x, FOOT + self.radius + (row - self.up[0]) * self.steps[1]

    def _has(self, joint: str) -> bool:
        column, row = self.grids.spot[joint]
        return self.across[0] <= column <= self.across[1] and self.up[0] <= row <= self.up[1]

    def _title(self, height: float) -> Label:
        voice = self.grids.voice
        words = {
            None: "",
            Layer.FRONT: voice.say_in("layer of the map", "Front"),
            Layer.BACK: voice.say_in("layer of the map", "Back"),
        }
        return Label((0, height - 10), words[self.layer], 10, INK, anchor="start", bold=True)

    def _joints(self, seen: set[str]) -> Iterator[DrawnJoint]:
        for joint in dict.fromkeys(j for long in self._chains for j in long.chain.joints):
            if self._has(joint):
                yield DrawnJoint(joint, self._at(joint), joint in seen)
                seen.add(joint)

    def _lines(self, seen: set[str]) -> Iterator[DrawnLink]:
        for long in self._chains:
            style = ROW_LINE if long.role == ROW else UPRIGHT_LINE
            for link in (self.grids.framework.link[id_] for id_ in long.chain.links):
                if self._has(link.start) and self._has(link.finish):
                    ends = self._at(link.start), self._at(link.finish)
                    yield DrawnLink(link, *ends, style, link.id in seen)
                    seen.add(link.id)

    def _fronts(self) -> Iterator[str]:
        """Joints from which balloons lead to the back."""
        own = {joint for long in self._chains for joint in long.chain.joints}
        yield from (j for j in self.grids.behind if j in own and self._has(j))

    def _name_at(self, joint: str) -> Point:
        """Where the name of the joint behind another is written: its middle."""
        x, y = self._at(joint)
        return x + self.radius + BEHIND, y - min(self.steps[1] / 2, self.radius + 9)

    def _to_the_back(self, seen: set[str]) -> Iterator[DrawnLink]:
        for joint in self._fronts():
            link = self.grids.framework.link[self.grids.behind[joint]]
            if link.id not in seen:
                (x, y) = self._name_at(joint)
                half = text_width(self.grids.names.short(link.finish), TYPE) / 2
                yield DrawnLink(link, self._at(joint), (x - half - 0.8, y + 1), BETWEEN_LINE)
                seen.add(link.id)

    def _names_behind(self) -> Iterator[Label]:
        names = self.grids.names
        for joint in self._fronts():
            link = self.grids.framework.link[self.grids.behind[joint]]
            x, y = self._name_at(joint)
            data = names.data(link.finish, again=True)
            label = Label((x, y - TYPE * 0.36), names.short(link.finish), TYPE, SOFT)
            yield replace(label, data=data)

    def _letters(self) -> Iterator[Label]:
        """Each chain's letter where it begins in the tile: left of a row, below an upright."""
        for long in self._chains:
            here = [joint for joint in long.chain.joints if self._has(joint)]
            if len(here) < 2:
                continue
            letter = self.grids.names.short(long.letter)
            (x, y), again = self._at(here[0]), here[0] != long.chain.joints[0]
            if long.role == ROW:
                yield end_letter((x - self.radius - BESIDE, y), letter, "end", again=again)
            else:
                yield end_letter((x, y - self.radius - 6), letter, "middle", again=again)

    def _way(self) -> Iterator[Mark]:
        """The way the numbers run: from joint 1 to joint 2 of the lowest row and first upright."""
        for role in (ROW, UPRIGHT):
            long = next((one for one in self._chains if one.role == role), None)
            if long is None or not all(map(self._has, long.chain.joints[:2])):
                continue
            (x, y), (to_x, to_y) = (self._at(joint) for joint in long.chain.joints[:2])
            reach = self.radius + 1.5
            along = (reach, 0.0) if role == ROW else (0.0, reach)
            yield from pointed([(x + along[0], y + along[1]), (to_x - along[0], to_y - along[1])])
