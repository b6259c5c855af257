"""Colour patterns laid on a framework: the balloons of its links, whatever pattern made it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from operator import itemgetter

from buildplan.framework.chain_roles import RING, ROW, UPRIGHT, ZIGZAG, Layer
from buildplan.framework.model import Framework
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.colour_patterns import Place, lay_colours
from buildplan.patterns.keys import Build
from buildplan.patterns.pattern_joints import row_of


@dataclass(frozen=True)
class Run:
    """Balloons that a pattern is laid along together: the links at each place, all of one
    balloon. `length` and `closed` are as for `lay_colours`."""

    places: Sequence[Place]
    links: Sequence[Sequence[str]]
    length: int
    closed: bool = False


def coloured(
    framework: Framework, build: Build, patterns: Mapping[ColouredPart, ColourOrder]
) -> Framework:
    """The framework with the balloons that `patterns` lay along its parts. A chain's own pattern
    goes before that of all long chains. The design must have been checked."""
    keys: dict[str, str] = {}
    # what is told of one chain comes after what is told of all, and stands
    for part, order in sorted(patterns.items(), key=lambda item: len(item[0]) == 1):
        for run in _runs(framework, build, part):
            laid = lay_colours(order, run.places, run.length, run.closed)
            for ids, key in zip(run.links, laid, strict=True):
                keys.update(dict.fromkeys(ids, key))
    if not keys:
        return framework
    links = (replace(link, balloon=keys.get(link.id, link.balloon)) for link in framework.links)
    return replace(framework, links=tuple(links))


def _runs(framework: Framework, build: Build, part: ColouredPart) -> Iterator[Run]:
    if build.column is not None:
        yield from _column(framework, part)
    elif build.wall is not None:
        yield from _wall(framework, build.wall.up, part)
    elif part == "brace":
        numbers = range(len(framework.braces))
        yield Run(
            [Place(number) for number in numbers],
            [brace.links for brace in framework.braces],
            len(numbers),
            framework.closed,
        )
    else:
        yield from _long_chains(framework, part)


def _long_chains(framework: Framework, part: ColouredPart) -> Iterator[Run]:
    """Each chain by itself: its balloons along it, and how far round the tube it runs."""
    for number, long in enumerate(framework.chains):
        if part in ("long", long.letter):
            links, turn = long.chain.links, Fraction(number, len(framework.chains))
            places = [Place(along, turn) for along in range(len(links))]
            yield Run(places, [[link] for link in links], len(links), long.chain.closed)


def _column(framework: Framework, part: ColouredPart) -> Iterator[Run]:
    """All rings (or all zigzags) one after another from the foot, each balloon at its place
    round: a ring is turned by half a step against the one below, and a zigzag goes up and down
    twice as often."""
    role, steps = (RING, 1) if part == "ring" else (ZIGZAG, 2)
    chains = [long.chain for long in framework.chains if long.role == role]
    places, links = [], []
    for along, chain in enumerate(chains):
        around = len(chain.links)
        for i, link in enumerate(chain.links):
            # joints are numbered clockwise seen from above, and turns count the other way
            places.append(Place(along, Fraction(-(2 * i + steps * along), 2 * around)))
            links.append([link])
    yield Run(places, links, len(chains))


def _wall(framework: Framework, up: int, part: ColouredPart) -> Iterator[Run]:
    """From the floor up, each layer by itself: the balloons of the rows by their row, those of
    the uprights by the row that they stand on."""
    length = up + 1 if part == "row" else up
    role = ROW if part == "row" else UPRIGHT
    layers: dict[Layer | None, list[tuple[int, str]]] = {}
    for long in framework.chains:
        if long.role == role:
            layer = layers.setdefault(long.layer, [])
            joints = long.chain.joints[: len(long.chain.links)]
            layer += [
                (row_of(joint, up), link)
                for joint, link in zip(joints, long.chain.links, strict=True)
            ]
    for layer in layers.values():
        layer.sort(key=itemgetter(0))
        yield Run([Place(row) for row, _ in layer], [[link] for _, link in layer], length)
