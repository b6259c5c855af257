"""Where parts come to lie that are said to stand on others, or to be tied beside them.

Each part stands upright as it was found by itself. What is set on another is moved until its
lowest joints meet the highest of what carries it, in the middle; across several, these stand below
its ends and evenly between. What is tied between two meets one with its joints on the left and
the other with those on the right, as high as it can be while both stand on one floor, or so many
of such places lower. What is tied to one side of another meets the joints on that side of it, on
the floor where it can.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from buildplan.framework.assembly import is_of_part, outer_part
from buildplan.framework.locks import Tie
from buildplan.framework.model import Framework
from buildplan.shape.blocks import Block, Spots, connected, partners_of
from buildplan.shape.meeting import UPRIGHT_ONLY, Meeting, meetings, turns_between
from buildplan.shape.model import FloatArray
from buildplan.shape.placing import link_m, set_down

EDGE_SHARE = 0.3  # of a link: joints this near the highest, lowest or outermost are at that edge
FEW_SHARE = 0.75  # of the most joints that can meet: with so many a place is as good
CENTRED_SHARE = 0.25  # of a link: places are told apart by how far off they are, in such steps
LEAST_PAIRS = 2
LEAST_STEPS = 2  # of `EDGE_SHARE`: places less apart in height are one
X, Y, Z = 0, 1, 2
Rank = tuple[int, int, int, float, float]
"""How good a place is, the least the best: joints that meet, how far what carries ends below the
part, how low it comes, its turn and what joints miss one another by."""
# where a part is tied beside another: on which side of that, as an axis and a way along it
SIDES: Mapping[str, tuple[int, int]] = {
    "left_of": (X, -1),
    "right_of": (X, 1),
    "in_front_of": (Z, 1),
    "behind": (Z, -1),
}


@dataclass(frozen=True)
class Seat:
    """A part, by its name, and the parts that it is set on, from left to right, or beside: `place`
    is the key of the file that says how. What is between two is so many places `lower` than it
    could be, at most as many as there are."""

    part: str
    carriers: tuple[str, ...]
    place: str
    lower: int = 0


@dataclass(frozen=True)
class SeatPlaces:
    """An assembly with the ties that are known so far."""

    framework: Framework
    blocks: tuple[Block, ...]

    @property
    def a_link_m(self) -> float:
        return link_m(self.framework)

    def pairs(self, seat: Seat) -> Iterator[tuple[str, str]]:
        """The joints of a part that meet its carriers', with those."""
        own = self._with([seat.part])
        groups = self._groups(seat.carriers)
        spots = self._down(own)
        levels = self._levels(seat, spots, own, groups) if seat.place == "between" else []
        level = levels[min(seat.lower, len(levels) - 1)] if levels else None
        for number, group in enumerate(groups):
            share = number / (len(groups) - 1) if len(groups) > 1 else 0.5
            carriers = [name for name in seat.carriers if any(b.is_of(name) for b in group)]
            if any(group[0] is block for block in own):
                found = self._where_they_are(seat, carriers, spots)
            elif seat.place in SIDES:
                found = self._at_side(seat, spots, self._down(group), own, group)
            elif seat.place == "between":
                ranked = self._between(seat, carriers, spots, self._down(group), own, group)
                found = _at_level(ranked, level)
            else:
                found = self._below(seat, carriers, spots, self._down(group), share, own, group)
            if found is not None and len(found.pairs) >= LEAST_PAIRS:
                yield from found.pairs

    def also_met(self, seat: Seat, pairs: Sequence[tuple[str, str]]) -> Iterator[tuple[str, str]]:
        """Further joints of a part that come to lie where those of other parts are, once `pairs`
        are tied: left untied, their balloons would press on one another."""
        ties = (*self.framework.ties, *map(Tie, pairs))
        tied = SeatPlaces(replace(self.framework, ties=ties), self.blocks)
        spots = tied._down(tied._with([seat.part]))
        others = {outer_part(joint) for joint in spots} - {seat.part}
        found = tied._where_they_are(seat, sorted(others), spots)
        held: dict[str, set[str]] = {}
        for tie in ties:
            for joint in tie.joints:
                held.setdefault(joint, set()).update(map(outer_part, tie.joints))
        for own, other in found.pairs if found is not None else ():
            if outer_part(other) not in held.get(own, ()) and seat.part not in held.get(other, ()):
                yield own, other

    def _with(self, parts: Sequence[str]) -> tuple[Block, ...]:
        """The blocks of parts, with those that are tied to them."""
        start = [block for block in self.blocks if any(block.is_of(name) for name in parts)]
        return connected(start, self.blocks, partners_of(self.framework))

    def _groups(self, carriers: Sequence[str]) -> list[tuple[Block, ...]]:
        """Carriers with what is tied to them; those tied to one another are one."""
        found: dict[tuple[str, ...], tuple[Block, ...]] = {}
        for name in carriers:
            group = self._with([name])
            found[tuple(block.name for block in group)] = group
        return list(found.values())

    def _down(self, group: Sequence[Block]) -> Spots:
        """Where the joints of blocks are once they are tied, the lowest of these on the floor: each
        alone stands on it."""
        spots = set_down(group, partners_of(self.framework), self.a_link_m).spots
        floor = min(spots[joint][Y] - at[Y] for block in group for joint, at in block.spots.items())
        return {joint: at - floor * np.eye(3)[Y] for joint, at in spots.items()}

    def _angles(self, stays: Spots, moves: Spots, *groups: Sequence[Block]) -> tuple[float, ...]:
        """How what moves may be turned: at will, unless both have a front."""
        if all(any(block.has_front for block in group) for group in groups):
            return UPRIGHT_ONLY
        return turns_between(stays, moves, self.a_link_m)

    def _edge(self, spots: Spots, parts: Sequence[str], axis: int, sign: int) -> Spots:
        """The joints of each part that lie farthest one way."""
        found: Spots = {}
        for part in parts:
            own = {joint: at for joint, at in spots.items() if is_of_part(joint, part)}
            most = max(sign * at[axis] for at in own.values())
            reach = most - EDGE_SHARE * self.a_link_m
            found |= {joint: at for joint, at in own.items() if sign * at[axis] >= reach}
        return found

    def _where_they_are(self, seat: Seat, carriers: Sequence[str], spots: Spots) -> Meeting | None:
        """What meets where ties have set both already."""
        own = {joint: at for joint, at in spots.items() if is_of_part(joint, seat.part)}
        others = {j: at for j, at in spots.items() if any(is_of_part(j, name) for name in carriers)}
        within_m = EDGE_SHARE * self.a_link_m
        still = meetings(own, others, self.a_link_m, UPRIGHT_ONLY, within_m)
        return max(still, key=lambda one: len(one.pairs), default=None)

    def _below(
        self,
        seat: Seat,
        carriers: Sequence[str],
        spots: Spots,
        others: Spots,
        share: float,
        *groups: Sequence[Block],
    ) -> Meeting | None:
        """The carriers moved to below the part: their middle so far along its foot, from its left
        end to its right."""
        feet = self._edge(spots, [seat.part], 1, -1)
        tops = self._edge(others, carriers, 1, 1)
        own = np.array([at for joint, at in spots.items() if is_of_part(joint, seat.part)])
        alone = len(seat.carriers) == len(carriers)
        spread = own if alone else np.array(list(feet.values()))
        top = np.array(list(tops.values()))
        found = list(meetings(feet, tops, self.a_link_m, self._angles(feet, tops, *groups)))
        most = max((len(one.pairs) for one in found), default=0)

        def rank(one: Meeting) -> tuple[float, int, float, float]:
            moved = one.moved(top)
            low, high = _span(spread, 0)
            half = 0.0 if alone else np.ptp(moved[:, 0]) / 2
            wanted = low + half + share * (high - low - 2 * half), sum(_span(own, 2)) / 2
            middle = sum(_span(moved, 0)) / 2, sum(_span(moved, 2)) / 2
            off = float(np.hypot(middle[0] - wanted[0], middle[1] - wanted[1]))
            steps = round(off / (CENTRED_SHARE * self.a_link_m))
            return steps, -len(one.pairs), round(abs(one.angle), 2), one.miss_m

        many = [one for one in found if len(one.pairs) >= FEW_SHARE * most]
        return min(many, key=rank, default=None)

    def _between(
        self,
        seat: Seat,
        carriers: Sequence[str],
        spots: Spots,
        others: Spots,
        *groups: Sequence[Block],
    ) -> list[tuple[Rank, Meeting]]:
        """The carriers moved to the ends of the part, and how good each place is: where they meet
        it with most joints, no lower than it is high, and as low as they can."""
        left, right = seat.carriers
        ends: Spots = {}
        if left in carriers:
            ends |= self._edge(spots, [seat.part], 0, -1)
        if right in carriers:
            ends |= self._edge(spots, [seat.part], 0, 1)
        sides = {j: at for j, at in others.items() if any(is_of_part(j, name) for name in carriers)}
        own = np.array([at for joint, at in spots.items() if is_of_part(joint, seat.part)])
        low, high = _span(own, 0)
        near = EDGE_SHARE * self.a_link_m
        places = {
            name: np.array([others[j] for j in sides if is_of_part(j, name)]) for name in carriers
        }

        def outside(one: Meeting) -> bool:
            return all(
                one.moved(at)[:, 0].max() < low + near
                if name == left
                else one.moved(at)[:, 0].min() > high - near
                for name, at in places.items()
            )

        angles = self._angles(ends, sides, *groups)
        found = [one for one in meetings(ends, sides, self.a_link_m, angles) if outside(one)]

        def rank(one: Meeting) -> Rank:
            tops = [float(one.moved(at)[:, 1].max()) for at in places.values()]
            above = max(0, round((float(own[:, 1].max()) - min(tops)) / near))
            floor = round(float(one.move_m[1]) / near)
            return -len(one.pairs), above, floor, round(abs(one.angle), 2), one.miss_m

        return [(rank(one), one) for one in found]

    def lowest(self, seat: Seat) -> int:
        """How many places lower what is between two can be, at most."""
        own = self._with([seat.part])
        levels = self._levels(seat, self._down(own), own, self._groups(seat.carriers))
        return max(len(levels) - 1, 0)

    def _levels(
        self, seat: Seat, spots: Spots, own: Sequence[Block], groups: Sequence[tuple[Block, ...]]
    ) -> list[int]:
        """How low all carriers can come, in steps, and still stand on one floor, the part as high
        as it can be first and on the floor last: a higher carrier rises past it."""
        levels: list[set[int]] = []
        for group in groups:
            carriers = [name for name in seat.carriers if any(b.is_of(name) for b in group)]
            found = self._between(seat, carriers, spots, self._down(group), own, group)
            best = min((rank[:2] for rank, _ in found), default=None)
            levels.append({rank[2] for rank, _ in found if rank[:2] == best})
        apart: list[int] = []
        for level in sorted(set.intersection(*levels)):
            if level <= 0 and (not apart or level - apart[-1] >= LEAST_STEPS):
                apart.append(level)
        return apart

    def _at_side(
        self, seat: Seat, spots: Spots, others: Spots, own: Sequence[Block], group: Sequence[Block]
    ) -> Meeting | None:
        """The part moved to a side of its carrier: both on the floor if enough joints meet there,
        where most do, and in the middle of one another if that can be."""
        axis, sign = SIDES[seat.place]
        across = Z if axis == X else X
        near = EDGE_SHARE * self.a_link_m
        (name,) = seat.carriers
        moves = {joint: at for joint, at in spots.items() if is_of_part(joint, seat.part)}
        points = np.array(list(moves.values()))
        side = self._edge(others, [name], axis, sign)
        stays = np.array([at for joint, at in others.items() if is_of_part(joint, name)])
        beyond = (sign * stays[:, axis]).max() - near
        found: list[tuple[tuple[float, ...], Meeting]] = []
        for one in meetings(side, moves, self.a_link_m, self._angles(side, moves, own, group)):
            moved = one.moved(points)
            if (sign * moved[:, axis]).min() >= beyond:
                off = abs(sum(_span(moved, across)) - sum(_span(stays, across))) / 2
                floor, middle = round(abs(float(one.move_m[Y])) / near), round(off / near)
                pairs = tuple((joint, other) for other, joint in one.pairs)
                few = len(pairs) < LEAST_PAIRS
                rank = (few, floor, -len(pairs), middle, round(abs(one.angle), 2), one.miss_m)
                found.append((rank, replace(one, pairs=pairs)))
        return min(found, key=lambda each: each[0], default=(None, None))[1]


def _at_level(ranked: Sequence[tuple[Rank, Meeting]], level: int | None) -> Meeting | None:
    """The best of some places, at a level where one is given."""
    here = [one for one in ranked if level is None or one[0][2] == level]
    return min(here, key=lambda one: one[0], default=(None, None))[1]


def _span(points: FloatArray, axis: int) -> tuple[float, float]:
    return float(points[:, axis].min()), float(points[:, axis].max())
