"""Which doors a finished piece goes through, and each of its parts, and how it is turned for it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from enum import StrEnum

from buildplan.evaluation.evaluating import Evaluation
from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.shape.carrying import Carried, CarriedPose, parts, poses, walk_through, whole
from buildplan.source.mistake import quoted
from buildplan.source.trade_words import INCHES

LEAST_DOOR_M, MOST_DOOR_M = 0.1, 100.0
METRES_PER_INCH = 0.0254  # exact
_UNIT = r"inch|inches|mm|cm|m|in|ft|\""
_DOOR = re.compile(
    r"(?:(?P<name>[^=]*\S) *= *)?"
    rf"(?P<width>\d+(?:[.,]\d+)?) *(?P<unit>{_UNIT})? *[xX×] *"
    rf"(?P<height>\d+(?:[.,]\d+)?) *(?P<last>{_UNIT})"
)
# what people write for one, and how large most doors are, to tell the unit that they meant: 40 cm
# to 5 m, from memory
_ALMOST_DOOR = re.compile(
    r"(?P<name>.*?)(?P<width>\d+(?:[.,]\d+)?) *(?P<unit>[a-z\"]*) *(?:[xX×*/]|by|,) *"
    r"(?P<height>\d+(?:[.,]\d+)?)[ x\d]*(?P<last>[a-z\"]*).*"
)
LEAST_LIKELY_M, MOST_LIKELY_M = 0.4, 5.0
LIKELY_UNITS = ("cm", "in", "m", "ft", "mm")


@dataclass(frozen=True)
class Door:
    """A way through: its clear width and height in metres, and how deep the room behind it is
    where that is small, as in a lift. One that was not named has no name."""

    name: str
    width_m: float
    height_m: float
    depth_m: float | None = None


class Ease(StrEnum):
    """How well something goes through."""

    EASILY = "easily"
    TIGHTLY = "tightly"
    NOT = "not"


@dataclass(frozen=True)
class Passage:
    """Something that is carried at a door: how well it goes through, and in which pose; for what
    does not, the pose that comes nearest."""

    carried: str
    door: Door
    fit: Ease
    pose: CarriedPose


@dataclass(frozen=True)
class WayThrough:
    """A piece at a door: as a whole, and its parts by themselves where it has any."""

    piece: Passage
    parts: tuple[Passage, ...] = ()

    @property
    def in_parts(self) -> bool:
        """Whether it does not go through as a whole, and all its parts do."""
        through = [one.fit is not Ease.NOT for one in self.parts]
        return self.piece.fit is Ease.NOT and bool(through) and all(through)


def ways(piece: Evaluation, doors: Iterable[Door]) -> tuple[WayThrough, ...]:
    """How a piece goes through each of the doors."""
    framework, shape = piece.framework, piece.shape
    room_m = piece.constants["door_room"].value
    itself, each = whole(framework, shape), parts(framework, shape)
    return tuple(
        WayThrough(passage(itself, door, room_m), tuple(passage(one, door, room_m) for one in each))
        for door in doors
    )


def passing_as_json(piece: Evaluation, doors: Iterable[Door]) -> dict[str, object]:
    """What `check --json` says of doors and of the way through a piece, in metres."""
    opening = walk_through(piece.framework, piece.shape)
    return {
        "walk_through": opening and {name: round(m, 3) for name, m in asdict(opening).items()},
        "doors": [
            {
                "door": asdict(way.piece.door),
                "goes_through": str(way.piece.fit),
                "pose": str(way.piece.pose.way),
                "needs_m": [round(way.piece.pose.width_m, 3), round(way.piece.pose.height_m, 3)],
                "in_parts": way.in_parts,
            }
            for way in ways(piece, doors)
        ],
    }


def passage(carried: Carried, door: Door, room_m: float) -> Passage:
    """How something goes through a door: in the first pose that leaves so much room on each side
    (what is carried sways, and sizes are estimates), else in the one that leaves most."""
    found = poses(carried)
    easy = [pose for pose in found if _room_m(pose, door) >= room_m]
    pose = easy[0] if easy else max(found, key=lambda one: _room_m(one, door))
    fit = Ease.EASILY if easy else Ease.TIGHTLY if _room_m(pose, door) >= 0 else Ease.NOT
    return Passage(carried.name, door, fit, pose)


def _room_m(pose: CarriedPose, door: Door) -> float:
    """What a pose leaves free on each side, where that is least; below zero it does not fit."""
    rooms = [(door.width_m - pose.width_m) / 2, (door.height_m - pose.height_m) / 2]
    if door.depth_m is not None:
        rooms.append((door.depth_m - pose.length_m) / 2)
    return min(rooms)


def parse_door(text: str) -> Door:
    """The door of `90x205cm`, `36in x 80in` or `Front door=0.9m x 2.05m`. Raises ToldError."""
    found = _DOOR.fullmatch(text.strip())
    if found is None:
        raise _no_door(text)
    unit = found["unit"] or found["last"]
    width, height = (
        _metres(number, of)
        for number, of in ((found["width"], unit), (found["height"], found["last"]))
    )
    if not all(LEAST_DOOR_M <= side <= MOST_DOOR_M for side in (width, height)):
        raise _no_door(text)
    return Door(found["name"] or "", width, height)


def _door_meant(text: str) -> str:
    """What would be a door with these numbers, of the units in which it is as large as doors are;
    nothing where no such door is found."""
    found = _ALMOST_DOOR.fullmatch(text.strip())
    if found is None:
        return ""
    name, sides = found["name"].strip(" =:-"), f"{found['width']}x{found['height']}"
    for unit in (found["last"] or found["unit"], *LIKELY_UNITS):
        if unit in INCHES and all(
            LEAST_LIKELY_M <= _metres(found[side], unit) <= MOST_LIKELY_M
            for side in ("width", "height")
        ):
            return f"{name}={sides}{unit}" if name else f"{sides}{unit}"
    return ""


def _metres(number: str, unit: str) -> float:
    return float(number.replace(",", ".")) * INCHES[unit] * METRES_PER_INCH


def _no_door(text: str) -> ToldError:
    right = _door_meant(text)
    if right:
        return ToldError(
            message("{text} is no door; write {right}", text=quoted(text), right=quoted(right))
        )
    return ToldError(
        message(
            "{text} is no door; write its clear width and height like {examples}",
            text=quoted(text),
            examples="90x205cm, 36x80in, Lift=80x200cm",
        )
    )


def bag_passes(bag_m: Sequence[float], door: Door) -> bool:
    """Whether a bag, full, goes through a door end first; it gives, so nothing is to spare."""
    narrow, middle, _ = sorted(bag_m)
    low, high = sorted((door.width_m, door.height_m))
    return narrow <= low and middle <= high
