"""Painting: balloons of a piece given another balloon of its file, as changes of the file.

A piece is painted by what a colour pattern can tell apart: the balloons of one place of one part,
such as one balloon of chain A, one brace, one ring. What is painted is written as a list of
balloons, place by place and no longer than it need be, or, where all of a part is one balloon,
as the balloon that the pattern names for the part.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.model import Design
from buildplan.framework.assembly import part_joint
from buildplan.framework.model import Framework
from buildplan.language.messages import Message, message
from buildplan.patterns.assembly_keys import Assembly
from buildplan.patterns.build import Build
from buildplan.patterns.palette import balloon_type
from buildplan.patterns.pattern import Making, Uncoloured
from buildplan.patterns.registry import pattern_of
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import Change, Path, Put, TakeOut

ALL_LONG = "long"
COLOURS = "colour_pattern"


@dataclass(frozen=True)
class PaintedPart:
    """A part that colours can be laid along: what is painted together, place by place, as links
    of the whole piece. `keys_at` is where the file gives the keys of its pattern, `colours_at`
    where it gives colour patterns."""

    part: str
    places: tuple[tuple[str, ...], ...]
    keys_at: Path
    colours_at: Path

    @property
    def links(self) -> frozenset[str]:
        """Every link of the part."""
        return frozenset(link for place in self.places for link in place)


class CannotPaintError(Exception):
    """The balloons that were asked for cannot be painted alone; says why, as a message."""

    def __init__(self, why: Message) -> None:
        super().__init__(why)
        self.why = why


@dataclass(frozen=True)
class _Canvas:
    """A pattern in the file: a whole piece, or a part of an assembly that is given in place."""

    build: Build
    name: str  # of the part; empty for a whole piece
    keys_at: Path
    colours_at: Path


def painted_parts(design: Design, data: object) -> list[PaintedPart]:
    """What can be painted in a piece; `data` is its file as plain data."""
    return [part for canvas in _canvases(design, data) for part in _parts(design, canvas)]


def unpainted(design: Design, data: object) -> tuple[Message, ...]:
    """Why balloons of a piece cannot be painted one by one, and what to do instead; nothing where
    all can."""
    found: dict[Message, None] = {}
    for canvas in _canvases(design, data):
        pattern, _ = pattern_of(canvas.build)
        if isinstance(pattern.colours, Uncoloured):
            found[message(pattern.colours.why)] = None
            found[message(pattern.colours.instead)] = None
    return tuple(found)


def paint_changes(
    parts: Sequence[PaintedPart],
    data: object,
    framework: Framework,
    links: Collection[str],
    balloon: str,
) -> list[Change]:
    """The changes of the file that make `links` of a piece the balloon of that key.

    With a balloon goes what is painted together with it. Raises CannotPaintError where a pattern
    of the file (a fade, a spiral) gives balloons of one place different colours, and for links
    that no part has.
    """
    now = {link.id: link.balloon for link in framework.links}
    changes: list[Change] = []
    if not set(links) <= {link for part in parts for link in part.links}:
        raise CannotPaintError(
            message("these balloons are of no part that a colour pattern can be laid along")
        )
    by_place: dict[Path, list[PaintedPart]] = {}
    for part in parts:
        by_place.setdefault(part.colours_at, []).append(part)
    for colours_at, group in by_place.items():
        painted = _with_what_goes_together(group, links)
        wanted = {**now, **dict.fromkeys(painted, balloon)}
        given = mapping_in(_at(data, colours_at))
        written = dict(given)
        for part in group:
            if _is_whole(part) and part.links & painted:
                changes += _painted(part, group, painted, wanted, data, written)
        changes += _colours_changed(
            colours_at, given, written, COLOURS in _holder(data, colours_at)
        )
    return changes


def _is_whole(part: PaintedPart) -> bool:
    """Whether it is all of its kind, and not one chain of several."""
    return len(part.part) > 1


def _with_what_goes_together(group: Sequence[PaintedPart], links: Collection[str]) -> set[str]:
    """Links with those that can have no other balloon than they."""
    asked = set(links)
    one_by_one = {link for part in group if not _is_whole(part) for link in part.links}
    together = {
        link
        for part in group
        if _is_whole(part)
        for place in part.places
        if asked & set(place) and not set(place) <= one_by_one
        for link in place
    }
    return together | (asked & one_by_one)


def _painted(
    part: PaintedPart,
    group: Sequence[PaintedPart],
    painted: Collection[str],
    wanted: Mapping[str, str],
    data: object,
    written: dict[str, Any],
) -> Iterator[Change]:
    """Note in `written` the colour patterns of a whole part and its chains, and change the
    balloon that its pattern names where all of it is one."""
    chains = [one for one in group if not _is_whole(one) and one.links <= part.links]
    named = _at(data, part.keys_at, part.part)
    if all(len({wanted[link] for link in place}) == 1 for place in part.places):
        for name in (part.part, *(chain.part for chain in chains)):
            written.pop(name, None)
        order = _shortest([wanted[place[0]] for place in part.places])
        if len(order) > 1 or not isinstance(named, str):
            written[part.part] = order
        elif named != order[0]:
            yield Put((*part.keys_at, part.part), order[0])
        return
    if not chains:
        raise CannotPaintError(
            message(
                "the colours of {part} follow a fade or a spiral: take it out before you paint",
                part=part.part,
            )
        )
    for chain in (chain for chain in chains if chain.links & set(painted)):
        order = _shortest([wanted[link] for (link,) in chain.places])
        written.pop(chain.part, None)
        if part.part in written or order != [named]:
            written[chain.part] = order
    if all(chain.part in written for chain in chains):
        written.pop(part.part, None)


def _shortest(order: Sequence[str]) -> list[str]:
    """The shortest list that, laid over and over, gives the same."""
    length = next(
        n
        for n in range(1, len(order) + 1)
        if all(key == order[i % n] for i, key in enumerate(order))
    )
    return list(order[:length])


def _colours_changed(
    at: Path, given: Mapping[str, Any], written: Mapping[str, Any], is_there: bool
) -> Iterator[Change]:
    if not written:
        if is_there:
            yield TakeOut(at)
    elif not is_there:
        yield Put(at, dict(written))
    else:
        for part in (part for part in written if written[part] != given.get(part)):
            yield Put((*at, part), written[part])
        for part in (part for part in given if part not in written):
            yield TakeOut((*at, part))


def _canvases(design: Design, data: object) -> Iterator[_Canvas]:
    assembly = design.build.keys_of(Assembly)
    if assembly is None:
        name, _ = design.build.given
        yield _Canvas(design.build, "", ("build", name), (COLOURS,))
        return
    inline = {part.name: part.build for part in assembly.parts}
    at: Path = ("build", "assembly", "parts")
    for i, part in enumerate(list_in(_at(data, at))):
        given = mapping_in(part)
        build = inline.get(str(given.get("name")))
        if build is not None and mapping_in(given.get("build")) and build.keys_of(Assembly) is None:
            name, _ = build.given
            yield _Canvas(build, given["name"], (*at, i, "build", name), (*at, i, COLOURS))


def _parts(design: Design, canvas: _Canvas) -> Iterator[PaintedPart]:
    pattern, keys = pattern_of(canvas.build)
    if isinstance(pattern.colours, Uncoloured):
        return
    scale = METRES_PER_UNIT[design.units]
    balloons = {key: balloon_type(key, one, scale) for key, one in design.balloons.items()}

    def no_part(build: Build, colours: object) -> Framework:
        raise AssertionError("a pattern that is coloured has no parts")

    framework = pattern.build(keys, Making(design.name, balloons, scale, no_part))
    ends = {link.id: (link.start, link.finish) for link in framework.links}
    for part in pattern.colours.parts:
        places: dict[int, list[str]] = {}
        for run in pattern.colours.runs(framework, keys, part):
            for place, links in zip(run.places, run.links, strict=True):
                places.setdefault(place.along, []).extend(
                    _in_the_whole(link, ends[link], canvas.name) for link in links
                )
        if places:
            yield PaintedPart(
                part,
                tuple(tuple(places[along]) for along in sorted(places)),
                canvas.keys_at,
                canvas.colours_at,
            )


def _in_the_whole(link: str, ends: tuple[str, str], part: str) -> str:
    """What a link of a part is called in the whole."""
    if not part:
        return link
    start, finish = (part_joint(part, joint) for joint in ends)
    own = link.removeprefix("-".join(ends))  # what tells links of the same two joints apart
    return f"{start}-{finish}{own}"


def _at(data: object, *ways: Path | str) -> Any:
    """What plain data has at a place, None if nothing."""
    found: Any = data
    for step in (step for way in ways for step in ((way,) if isinstance(way, str) else way)):
        try:
            found = found[step]
        except (KeyError, IndexError, TypeError):
            return None
    return found


def _holder(data: object, at: Path) -> Mapping[str, Any]:
    return mapping_in(_at(data, at[:-1]) if at[:-1] else data)
