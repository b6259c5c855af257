"""What a pattern is: everything that the rest of the program asks of one."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from buildplan.framework.model import BalloonType, Framework
from buildplan.language.messages import Value, mark
from buildplan.patterns.build import Build
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.colour_runs import ColourRun
from buildplan.source.balloons import Balloon
from buildplan.source.mistake import Mistake, Path
from buildplan.source.partial_validation import Salvaged, list_in, mapping_in
from buildplan.source.suggestions import Put
from buildplan.source.values import FileModel

Keys = TypeVar("Keys", bound=FileModel)

Given = Mapping[str, Any]
"""What the file gives, as plain data, right or wrong."""

ANY = "*"


@dataclass(frozen=True)
class Use:
    """A place of a pattern's keys that names a balloon: of which kind, and for what, as a marked
    message. `*` in `at` stands for every key of a mapping, or every item of a list; a step that
    is not there, or leads into text, leads nowhere."""

    at: tuple[str, ...]
    kind: str
    use: str

    def named(self, given: object) -> Iterator[tuple[Path, object]]:
        """Where under the pattern's keys a balloon is named, and how."""
        yield from _at(given, self.at, ())


def _at(given: object, way: tuple[str, ...], at: Path) -> Iterator[tuple[Path, object]]:
    if not way:
        yield at, given
    elif way[0] == ANY:
        entries: list[tuple[str | int, Any]] = [*mapping_in(given).items()]
        for key, value in (*entries, *enumerate(list_in(given))):
            yield from _at(value, way[1:], (*at, key))
    elif way[0] in mapping_in(given):
        yield from _at(mapping_in(given)[way[0]], way[1:], (*at, way[0]))


def link(at: str, use: str) -> Use:
    """A use of a link balloon, its place as keys with dots between: `extra.*.balloon`."""
    return Use(tuple(at.split(".")), "link", use)


LOCK = Use(("lock",), "round", mark("a lock"))
EXTRA = link("extra.*.balloon", mark("a balloon more"))


@dataclass(frozen=True)
class Joints:
    """The labels of a piece's joints, each once, and as they are told. `places` are other names
    that stand for several of them: an end, a cell."""

    labels: Collection[str]
    words: Value
    places: Collection[str] = ()

    def named(self, name: str) -> bool:
        """Whether a name stands for a joint, or for several."""
        return name in self.labels or name in self.places


JointsOf = Callable[[Given], Joints | None]
"""Asks for the joints of a `build`, as plain data."""


@dataclass(frozen=True)
class Making:
    """What a framework is made of besides the keys of its pattern. `part` makes the framework of
    a part that is a piece of its own, in its colours."""

    name: str
    balloons: Mapping[str, BalloonType]
    metres_per_unit: float
    part: Callable[[Build, Mapping[ColouredPart, ColourOrder]], Framework]


@dataclass(frozen=True)
class Whole:
    """What the rest of the file gives that a pattern may have to agree with."""

    balloons: Mapping[str, Salvaged[Balloon]]
    colour_pattern: Mapping[str, object]


@dataclass(frozen=True)
class Colouring(Generic[Keys]):
    """How colours are laid along a pattern. `parts` are those that a colour pattern can be given
    for, `spirals` those that a spiral can wind over; `runs` are what is coloured together.
    `words` is a marked message that names the parts; left empty, they are listed. `rings` gives
    the chains of a part that are closed, by letter, with the balloons in each."""

    parts: tuple[str, ...]
    spirals: tuple[str, ...]
    runs: Callable[[Framework, Keys, str], Iterator[ColourRun]]
    words: str = ""
    rings: Callable[[Given, str], Mapping[str, int]] = lambda given, part: {}


@dataclass(frozen=True)
class Uncoloured:
    """Why no colours are laid along a pattern, and what to do instead: marked messages."""

    why: str
    instead: str


@dataclass(frozen=True)
class AllOf:
    """No cells to add when a piece is made higher: why, as a marked message."""

    why: str


@dataclass(frozen=True)
class PartFile:
    """What the design file of a part says of it."""

    build: Build
    units: str
    balloons: Mapping[str, Balloon]
    colour_pattern: Mapping[ColouredPart, ColourOrder]
    stand_on: str | list[str] | None


@dataclass(frozen=True)
class Around:
    """What a pattern made of parts can ask of the file that it stands in. `read` reads the design
    file of a part, named as seen from the folder of this one, and raises as `read_design` does;
    `check` finds what is wrong with plain data of a design."""

    units: str
    balloons: Mapping[str, Balloon]
    stand_on: str | list[str] | None
    read: Callable[[str], PartFile]
    check: Callable[[Given], Iterable[Mistake]]
    joints: JointsOf


@dataclass(frozen=True)
class Joined(Generic[Keys]):
    """The keys of a pattern with its parts inline, the balloons of all, and what is wrong."""

    keys: Keys
    balloons: Mapping[str, Balloon]
    mistakes: tuple[Mistake, ...]


def nothing_wrong(given: Given, whole: Whole) -> Iterator[Mistake]:
    """Checks of a pattern whose keys need not agree on anything."""
    return iter(())


@dataclass(frozen=True)
class Pattern(Generic[Keys]):
    """A pattern: a key of `build`, and everything that is asked of what stands under it.

    `about` is a marked message. `uses` are its keys that name balloons. `joints` are the labels
    of its joints, None where what the file gives cannot be built; it is told how to ask for those
    of a part that is a piece of its own. `build` makes the framework of
    keys that are right. `check` is told what the file gives, right or wrong. `more_cells` are the
    changes of a file (plain data) that make its piece about so many times as large. A piece may
    have `most_joints`; 0 leaves the limit to `check`. `join` brings parts that are pieces of their
    own inline; only a pattern that has such parts gives it. `extra_as` is the key of the balloon
    that balloons more (its key `extra`) are like; empty where it has none or ties them itself.
    """

    name: str
    about: str
    keys: type[Keys]
    uses: tuple[Use, ...]
    joints: Callable[[Given, JointsOf], Joints | None]
    build: Callable[[Keys, Making], Framework]
    colours: Colouring[Keys] | Uncoloured
    more_cells: Callable[[Given, float], Iterator[Put]] | AllOf
    check: Callable[[Given, Whole], Iterator[Mistake]] = nothing_wrong
    most_joints: int = 6000
    extra_as: str = ""
    join: Callable[[Keys, Around], Joined[Keys]] | None = None

    @property
    def coloured_parts(self) -> tuple[str, ...]:
        """The parts that a colour pattern can be given for."""
        return self.colours.parts if isinstance(self.colours, Colouring) else ()
