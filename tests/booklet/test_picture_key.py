"""The words and the signs that a booklet explains: those it uses, and no others."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest
from shipped import DESIGNS

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.coming_to_shape import MOMENTS, moments
from buildplan.booklet.common.front import words_used
from buildplan.booklet.common.picture_key import signs_used
from buildplan.booklet.common.step_blocks import built_alike
from buildplan.booklet.common.step_pictures import StepPanels, step_panels
from buildplan.booklet.common.step_words import PLACE
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.document.undrawn import Showable, drawn
from buildplan.drawing.corner_marks import CROSS
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import Inset, Label, MarkData, Picture, Polyline
from buildplan.drawing.sign_key import PictureSign
from buildplan.sequence.model import Kind

PIECES = ["reading_star", "gallery/dawn_column", "gallery/story_wall"]
# Words of pieces that have braces.
BRACED = {"knot on knot", "brace", "nozzle", "tip", "dip", "single"}
# What close-ups say of their marks, and the sign that it stands for.
MARKED = {
    ("knot", "closing"): PictureSign.CLOSING_KNOT,
    ("knot", "end"): PictureSign.END_KNOT,
    ("hand", "from below"): PictureSign.HAND,
    ("lock", ""): PictureSign.TWIST,
    ("waits", ""): PictureSign.LOCK_LATER,
    ("order", ""): PictureSign.ORDER,
}


@cache
def book_of(name: str) -> Book:
    design = read_design(DESIGNS / f"{name}.yaml")
    return gather_book(design, PAPERS["a4"], design.units, "training")


@cache
def panels_of(name: str) -> list[StepPanels]:
    book = book_of(name)
    views = plan_views(book)
    return [
        step_panels(book, step, views, (150.0, 140.0), PLACE)
        for step in book.steps
        if views.of(step) and not built_alike(book, step)
    ]


def as_said(picture: Showable) -> Picture:
    """A picture drawn, which is as large as the page was set for."""
    found = drawn(picture)
    assert (found.width, found.height) == (picture.width, picture.height)
    return found


def data_in(picture: Picture) -> Iterator[MarkData]:
    """What marks say of themselves, and those of the pictures set in."""
    yield picture.data
    for mark in picture.marks:
        if isinstance(mark, Inset):
            yield from data_in(mark.picture)
        elif isinstance(mark, Label):
            yield mark.data


@pytest.mark.parametrize("name", PIECES)
def test_the_key_has_the_signs_that_the_pictures_show(name: str) -> None:
    """As the marks of the printed pictures say themselves."""
    said = {
        pair
        for panels in panels_of(name)
        for closeup in panels.closeups
        for data in data_in(as_said(closeup))
        for key, value in data
        for pair in ((key, value), (key, ""))
    }
    used = signs_used(book_of(name), plan_views(book_of(name)))
    assert {sign for pair, sign in MARKED.items() if pair in said} == used & set(MARKED.values())
    assert PictureSign.PLACE in used


def test_a_joint_whose_lock_waits_names_the_brace_whose_row_has_it() -> None:
    """On every picture of a brace of the star; no other joint of them goes without a lock."""
    book = book_of("reading_star")
    locked: dict[str, str] = {}
    for step in book.steps:
        for turn in book.told(step).turns:
            for line in turn.lines:
                if line.startswith("Locks: "):
                    locked |= dict.fromkeys(line.removeprefix("Locks: ").split(", "), turn.name)
    for closeups in plan_views(book).closeups.values():
        for closeup in closeups:
            panel = closeup.panel
            waits = {joint: f"Brace {number}" for joint, number in panel.later.items()}
            assert waits == {joint: locked[joint] for joint in waits}
            now = {joint for joint, turn in locked.items() if turn == closeup.title}
            assert now | waits.keys() == set(panel.joints)


@pytest.mark.parametrize(
    ("name", "without"),
    [
        ("reading_star", {"part", "zigzag"}),
        ("gallery/story_wall", {"ring", "part", "zigzag"} | BRACED),
        ("gallery/dawn_column", {"part"} | BRACED),
        ("gallery/portal", {"dip"}),
    ],
)
def test_only_words_of_the_piece_are_explained(name: str, without: set[str]) -> None:
    """A wall of open chains has no ring; neither it nor a column has braces, corners or singles."""
    told = {word for word, _ in words_used(book_of(name))}
    every = {"link balloon", "gauge", "pair", "chain", "ring", "zigzag", "joint", "row"}
    every |= {"lock", "part"} | BRACED
    assert told == every - without


@pytest.mark.parametrize("name", PIECES)
def test_several_eyes_are_numbered_as_their_close_ups(name: str) -> None:
    for panels in panels_of(name):
        where = as_said(panels.where)
        eyes = [data for data in data_in(where) if ("eye", "builder") in data]
        numbers = [text for text in label_boxes(where) if text[0].isdigit()]
        titles = [str(n) for n, _ in enumerate(panels.closeups, 1)]
        if len(eyes) == 1:
            assert not numbers
            continue
        assert len(numbers) == len(eyes)
        for title, closeup in zip(titles, panels.closeups, strict=True):
            insets = [mark for mark in as_said(closeup).marks if isinstance(mark, Inset)]
            plates = [inset for inset in insets if inset.picture.alt == title]
            assert len(plates) == 1


def test_a_joint_with_a_single_has_a_sign_of_its_own() -> None:
    """Every joint that a corner of the star leaves out carries a single: nothing is crossed out,
    and each is in a square on its picture and on its diagram."""
    used = signs_used(book_of("reading_star"), plan_views(book_of("reading_star")))
    assert PictureSign.OF_SINGLE in used
    assert PictureSign.SKIPPED not in used
    corners = [panels for panels in panels_of("reading_star") if panels.corner]
    assert len(corners) == 10
    for panels in corners:
        for picture in (*panels.closeups, panels.corner):
            assert picture is not None
            marks = [mark for mark in as_said(picture).marks if isinstance(mark, Polyline)]
            assert sum(mark.ink == CROSS and len(mark.points) == 4 for mark in marks) == 2
            assert not any(mark.ink == CROSS and len(mark.points) == 2 for mark in marks)


def test_a_star_comes_to_its_shape_at_its_first_tip_and_dip_and_its_last_brace() -> None:
    """As its titles say."""
    book = book_of("reading_star")
    laid = next(step for step in book.steps if step.kind is Kind.LAY)
    titles = [book.told(step).title for step in moments(book, laid)]
    braced = [book.told(step).title for step in book.steps if step.kind is Kind.BRACE]
    tip, dip = (next(one for one in braced if one.endswith(kind)) for kind in ("a tip", "a dip"))
    assert [titles[0], titles[1], titles[-1]] == [tip, dip, braced[-1]]
    assert len(titles) == MOMENTS
