"""The pictures from the builder's seat, in figures, and read back as a program reads them.

The figures' bounds are our own: Agrawala et al., "Designing Effective Step-By-Step Assembly
Instructions" (SIGGRAPH 2003) name the rules (keep one viewpoint, show what is added) and no figure.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Mapping
from itertools import pairwise

import pytest
import shipped
from random_tubes import RANDOM, random_book

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.picture_figures import figures
from buildplan.booklet.common.step_drawings import step_drawings
from buildplan.drawing.marks import Picture
from buildplan.drawing.seat import leaves_out
from buildplan.drawing.svg import picture_svg
from buildplan.framework.cells import DIP, FAN_IN, TIP
from buildplan.framework.model import Framework

Joined = frozenset[str]
CORNERS = (TIP, DIP)


def held(book: Book) -> None:
    found = figures(book, plan_views(book))
    assert found.flips == 0
    assert found.moved == 0
    assert found.least_seen >= 0.85
    assert found.crossing == 0
    assert found.least_apart >= 0.55
    assert found.across == sum(leaves_out(cell) for cell in book.framework.cells)


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_shipped_pictures_keep_their_seat(name: str) -> None:
    held(shipped.book_of(name))


@pytest.mark.parametrize("seed", RANDOM)
def test_any_tubes_pictures_keep_their_seat(seed: int) -> None:
    held(random_book(seed))


def tied(drawing: str) -> Mapping[str, tuple[set[Joined], set[str]]]:
    """What each close-up of an SVG says is tied and locked, by the name of its turn; nothing but
    the groups and their labels is read."""
    found = {}
    for group in ET.fromstring(drawing).iter():
        if group.attrib.get("data-picture") != "close-up":
            continue
        rows: dict[str, list[tuple[int, str]]] = {}
        ends: dict[str, str] = {}
        locks: set[str] = set()
        for mark in group.iter():
            at = mark.attrib
            if "data-order" in at and "data-row" in at:
                rows.setdefault(at["data-row"], []).append(
                    (int(at["data-order"]), at["data-joint"])
                )
            if "data-knot" in at:
                ends[at["data-at"]] = at["data-knot"]
            if "data-lock" in at:
                locks.add(at["data-lock"])
        joined: set[Joined] = set()
        for numbered in rows.values():
            joints = [joint for _, joint in sorted(numbered)]
            if ends.get(joints[0]) == "closing":
                joints.append(joints[0])
            joined |= {frozenset(pair) for pair in pairwise(joints)}
        found[group.attrib["data-turn"]] = (joined, locks)
    return found


def balloons(framework: Framework, links: tuple[str, ...]) -> set[Joined]:
    return {frozenset((framework.link[id_].start, framework.link[id_].finish)) for id_ in links}


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_the_braces_are_rebuilt_from_the_pictures_alone(name: str) -> None:
    book = shipped.book_of(name)
    drawn: Mapping[int, Picture] = step_drawings(book)
    rebuilt: set[Joined] = set()
    locked: set[str] = set()
    for step in (s for s in book.steps if s.kind in ("brace", "single")):
        said = tied(picture_svg(drawn[step.number]))
        for turn, words in zip(step.turns, book.told(step).turns, strict=True):
            joined, locks = said[words.name]
            links = tuple(link for op in turn.operations for link in op.links)
            assert joined == balloons(book.framework, links), words.name
            assert locks == {joint for op in turn.operations for joint in op.locks}, words.name
            rebuilt |= joined
            locked |= locks
    braces = tuple(link for brace in book.framework.braces for link in brace.links)
    assert rebuilt >= balloons(book.framework, braces)
    assert locked == set(book.framework.lock_at)


def test_a_corner_that_is_seen_straight_across_says_so() -> None:
    book = shipped.book_of("reading_star")
    drawn = step_drawings(book)
    corners = {step.number for step in book.steps if any(map(CORNERS.__contains__, step.cells))}
    said = {
        number
        for number, picture in drawn.items()
        if "from across" in "".join(ET.fromstring(picture_svg(picture)).itertext())
    }
    assert corners
    assert said == corners


def test_the_first_inward_bend_is_shown_from_both_sides() -> None:
    """What is built lies on the other side there; later ones are seen from the seat alone."""
    book = random_book(11)
    bends = [step for step in book.steps if FAN_IN in step.cells]
    shown = {
        number: [
            group
            for group in ET.fromstring(picture_svg(picture)).iter()
            if group.attrib.get("data-picture") == "other side"
        ]
        for number, picture in step_drawings(book).items()
    }
    assert len(bends) > 1
    assert [number for number, found in shown.items() if found] == [bends[0].number]
    (across,) = shown[bends[0].number]
    named = {mark.attrib["data-joint"] for mark in across.iter() if "data-joint" in mark.attrib}
    assert named >= {joint for turn in bends[0].turns for joint in turn.joints}
