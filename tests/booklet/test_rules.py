"""Rules that research on assembly instructions gives, measured on every shipped design.

The rules: Agrawala, Phan, Heiser, Haymaker, Klingner, Hanrahan, Tversky, "Designing Effective
Step-By-Step Assembly Instructions", ACM TOG (SIGGRAPH) 2003; Heiser, Tversky, Agrawala,
Hanrahan, "Cognitive Design Principles for Visualizations", CogSci 2003; Novick and Morse,
Memory & Cognition 28(7), 2000; Tang et al., CHI 2003; Richardson et al. 2004, 2006; IEC/IEEE
82079-1. They name no figures: every threshold here is our own.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable
from itertools import combinations
from statistics import median

import numpy as np
import pytest
import shipped
from shapely.geometry import Point, Polygon, box
from shapely.ops import unary_union
from shapely.strtree import STRtree

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.common.closeups import ON_THE_PIECE, plan_views, step_joints
from buildplan.booklet.common.step_words import ticks, words_of
from buildplan.drawing.closeup import uncovered
from buildplan.drawing.labels import DOT_RADIUS, TIE_RADIUS, label_boxes
from buildplan.drawing.marks import Circle, Picture, Stamp
from buildplan.evaluation.evaluating import NEW_PARTS
from buildplan.framework.balloon_kinds import LINK
from buildplan.sequence.model import Kind

SEEN = 0.85

on_paper = pytest.mark.parametrize(("name", "paper"), shipped.ON_PAPER)
of_each = pytest.mark.parametrize("name", shipped.SHIPPED)


def pictured(name: str, paper: str) -> dict[int, set[int]]:
    """The pages, counted from 1, that have pictures of each step."""
    found: dict[int, set[int]] = {}
    for at in shipped.pictures(name, paper):
        for number in re.findall(r"\b[Ss]tep (\d+)\b", at.picture.alt.split(".")[0]):
            found.setdefault(int(number), set()).add(at.page)
    return found


def pages_of_steps(name: str, paper: str) -> dict[int, set[int]]:
    """The pages, counted from 1, that have the title of each step, or pictures of it."""
    found: dict[int, set[int]] = {}
    book, with_pictures = shipped.book_of(name), pictured(name, paper)
    for step in book.steps:
        title = re.compile(rf"(?<!\d){step.number} {re.escape(book.told(step).title)}")
        texts = enumerate(shipped.page_texts(name, paper), 1)
        found[step.number] = {
            page for page, text in texts if re.search(r"step \d+/\d+", text) and title.search(text)
        }
        found[step.number] |= with_pictures.get(step.number, set())
    return found


# -- one order, each step whole ------------------------------------------------------------


@on_paper
def test_steps_are_numbered_without_gaps_and_each_is_on_one_page(name: str, paper: str) -> None:
    steps = len(shipped.book_of(name).steps)
    where = pages_of_steps(name, paper)
    assert list(where) == list(range(1, steps + 1))
    for number, pages in where.items():
        # one page; hand moves may have the page before it, but nothing of a step comes after
        assert len(pages) <= 2
        assert max(pages) - min(pages) == len(pages) - 1
        assert max(pages) <= max(where.get(number + 1, pages))


@on_paper
def test_every_step_has_words_a_picture_and_a_check_on_its_page(name: str, paper: str) -> None:
    """A picture, unless its hand moves were shown before: then the words say where."""
    book = shipped.book_of(name, paper)
    page_of, drawn = pages_of_steps(name, paper), pictured(name, paper)
    texts = shipped.page_texts(name, paper)
    for step in book.steps:
        told = book.told(step)
        words = (f"{step.number} {told.title}", " ".join(told.text.split()[:6]), told.check)
        with_picture = [texts[number - 1] for number in page_of[step.number]]
        assert any(all(each in text for each in words) for text in with_picture)
        if step.number not in drawn:
            (shown,) = map(int, re.findall(r"[Aa]s in step (\d+)", told.text))
            assert shown in drawn
            assert book.steps[shown - 1].kind is step.kind
        assert ticks(book, step)[-1].endswith(told.check.split()[-1])
        assert words_of(book, step)


@of_each
def test_braces_come_in_order_one_group_after_the_other(name: str) -> None:
    book = shipped.book_of(name)
    brings = {link: brace.number for brace in book.framework.braces for link in brace.links}
    braces = [step for step in book.steps if step.kind is Kind.BRACE]
    tied = [brings[link] for step in braces for link in step.links if link in brings]
    assert [brace for brace, _ in Counter(tied).items()] == sorted(set(tied))
    assert tied == sorted(tied)


@of_each
def test_few_new_parts_and_few_kinds_of_step(
    name: str, record_property: Callable[[str, object], None]
) -> None:
    """More new parts than the edition's limit confuse; very many steps tire. The median and the
    number of kinds are reported (`pytest --junitxml`, and tests/bench/bench_drawing.py)."""
    book = shipped.book_of(name)
    links = {kind.key for kind in book.framework.balloons.values() if kind.kind is LINK}
    on_piece = [step for step in book.steps if step.kind in ON_THE_PIECE]
    new = [sum(count for key, count in step.adds.items() if key in links) for step in on_piece]
    assert max(new) <= NEW_PARTS
    assert all(len(step.turns) <= NEW_PARTS for step in on_piece)
    record_property("median_new_parts", median(new))
    record_property("kinds_of_step", len({step.kind for step in book.steps}))


# -- the work is seen ----------------------------------------------------------------------


@of_each
def test_new_balloons_and_tied_joints_are_seen(name: str) -> None:
    """Every balloon that a step on the piece adds is new in a close-up of it, with nothing that
    stands drawn over it, and every joint tied is there."""
    book = shipped.book_of(name)
    for step in (s for s in book.steps if s.kind in ON_THE_PIECE):
        links: set[str] = set()
        joints: set[str] = set()
        for closeup in shipped.views_of(name).closeups[step.number]:
            found = uncovered(closeup.panel)
            assert found.seen >= SEEN, f"step {step.number}, {closeup.title}: {found.seen:.2f}"
            assert found.crossing == 0
            links |= closeup.panel.scene.new_links
            joints |= set(closeup.panel.joints)
        assert set(step.links) <= links
        assert set(step.locks) <= joints  # the knots are seen before their locks hide them
        assert joints == set(step_joints(step))


@of_each
def test_what_stands_is_never_left_out(name: str) -> None:
    """Context: the picture of the piece has all that earlier steps brought, a close-up all of
    it about its joints (of the links tied there, every one)."""
    book, views = shipped.book_of(name), shipped.views_of(name)
    before: set[str] = set()
    for step in book.steps:
        if step.kind in ON_THE_PIECE:
            assert views.progress.whole(step).done_links == before
            for closeup in views.closeups[step.number]:
                scene, joints = closeup.panel.scene, set(closeup.panel.joints)
                tied = {
                    id_
                    for id_ in before
                    if joints & {book.framework.link[id_].start, book.framework.link[id_].finish}
                }
                assert tied <= scene.done_links | scene.new_links | scene.loose
        before |= {link for op in step.operations if op.adds for link in op.links}


# -- labels --------------------------------------------------------------------------------


def dots(picture: Picture) -> list[Circle]:
    """The joint dots of a close-up, without the marks in their middles."""
    return [
        mark
        for mark in picture.marks
        if isinstance(mark, Circle) and mark.radius in (DOT_RADIUS, TIE_RADIUS)
    ]


@on_paper
def test_labels_cover_neither_one_another_nor_the_edge(name: str, paper: str) -> None:
    for at in shipped.pictures(name, paper):
        picture = at.picture
        boxes = [box(*b) for each in label_boxes(picture).values() for b in each]
        frame = box(-0.01, -0.01, picture.width + 0.01, picture.height + 0.01)
        assert all(frame.contains(b) for b in boxes), picture.alt
        if not boxes:
            continue
        tree = STRtree(boxes)
        for one, other in tree.query(boxes).T:
            if one < other:
                assert boxes[one].intersection(boxes[other]).area < 0.05, picture.alt


@on_paper
def test_every_wanted_label_is_there_and_covers_no_joint(name: str, paper: str) -> None:
    book = shipped.book_of(name, paper)
    found: Counter[int] = Counter()
    for at in shipped.pictures(name, paper):
        match = re.match(r"Close-up of step (\d+)", at.picture.alt)
        if not match:
            continue
        number = int(match[1])
        closeup = shipped.views_of(name).closeups[number][found[number]]
        found[number] += 1
        boxes = label_boxes(at.picture)
        assert set(closeup.panel.joints) <= set(boxes), at.picture.alt
        assert len(dots(at.picture)) == len(closeup.panel.joints)
        for text, placed in boxes.items():
            for dot in dots(at.picture):
                clear = Point(dot.centre).distance(box(*placed[0])) > dot.radius - 0.01
                assert clear, f"{text} in: {at.picture.alt}"
    assert set(found) == {step.number for step in book.steps if step.kind in ON_THE_PIECE}


@on_paper
def test_pictures_keep_to_the_type_area_and_off_one_another(name: str, paper: str) -> None:
    sheet = shipped.book_of(name, paper).paper
    area = box(sheet.left - 1, sheet.bottom - 1, sheet.right + 1, sheet.top + 25)
    by_page: dict[int, list[Polygon]] = {}
    for at in shipped.pictures(name, paper):
        wide, high = at.picture.width * at.scale, at.picture.height * at.scale
        if (wide, high) == (sheet.width, sheet.height):
            continue  # a gauge page is one picture
        here = box(at.x, at.y, at.x + wide, at.y + high)
        assert area.contains(here), f"page {at.page}: {at.picture.alt}"
        by_page.setdefault(at.page, []).append(here)
    for page, boxes in by_page.items():
        for one, other in combinations(boxes, 2):
            assert one.intersection(other).area < 1, f"pictures overlap on page {page}"


@pytest.mark.parametrize("edition", ["crew", "sale"])
def test_a_step_has_one_number_in_all_editions(edition: str) -> None:
    """Who trains a crew, and who calls them on the phone, says a step by its number."""
    book = shipped.book_of("reading_star")
    other = gather_book(book.design, book.paper, book.units, edition)
    titles = [(step.number, book.told(step).title) for step in book.steps]
    assert [(step.number, other.told(step).title) for step in other.steps] == titles


def test_closeups_are_the_same_on_any_paper() -> None:
    name = shipped.SHIPPED[0]
    one, other = (plan_views(shipped.book_of(name, paper)).closeups for paper in ("a4", "letter"))
    assert [c.panel.camera for each in one.values() for c in each] == [
        c.panel.camera for each in other.values() for c in each
    ]


@on_paper
def test_labels_hide_little_of_what_is_new(name: str, paper: str) -> None:
    """Of the new balloons' discs tags cover 4 % at most, and of no balloon more than 0.8."""
    hidden: list[float] = []
    for at in shipped.pictures(name, paper):
        if not at.picture.alt.startswith("Close-up of step"):
            continue
        tags = unary_union([box(*b) for each in label_boxes(at.picture).values() for b in each])
        for mark in at.picture.marks:
            if isinstance(mark, Stamp) and (mark.look.form, mark.look.state) == ("body", "new"):
                a, b, _, _, x, y = mark.matrix
                disc = Point(x, y).buffer(float(np.hypot(a, b)) / 2)
                hidden.append(disc.intersection(tags).area / disc.area)
    assert max(hidden) <= 0.8
    assert np.mean(hidden) <= 0.04
