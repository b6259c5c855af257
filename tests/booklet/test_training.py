"""The training edition's lessons, practice piece, time targets and sign-off."""

from __future__ import annotations

import io
import re
from dataclasses import replace

import networkx as nx
import pikepdf
import pytest
from page_words import words_of, words_of_pages
from shipped import book_of
from sold_copies import DESIGNS, sold_book, sold_copy
from type_sizes import type_sizes

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.common.joint_moves import with_ends
from buildplan.booklet.editions import print_booklet
from buildplan.booklet.training.lessons import LESSONS
from buildplan.booklet.training.practice import practice
from buildplan.booklet.training.practice_page import practice_of, taught_by
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS, large_print
from buildplan.drawing.techniques.knots import tie_off
from buildplan.evaluation.ballast import ballast_each_kg
from buildplan.framework.chain_roles import RING, ZIGZAG
from buildplan.framework.counts import multigraph
from buildplan.sequence.labour import work_minutes
from buildplan.sequence.model import Kind
from buildplan.shape.lying import lies_built


@pytest.fixture(scope="module")
def pages() -> list[str]:
    book = replace(sold_book(), edition="training", buyer="", branding=None)
    return words_of_pages(print_booklet(book))


def test_each_technique_is_taught_once_before_its_first_step(pages: list[str]) -> None:
    whole = " ".join(pages)
    for kind in {step.kind for step in sold_book().steps}:
        lesson = LESSONS[kind]
        assert whole.count(lesson.mistake) == 1
        first = next(step for step in sold_book().steps if step.kind is kind)
        taught = whole.index(lesson.mistake)
        assert taught < whole.index(f"{first.number} {sold_book().told(first).title}", taught)


def test_every_kind_of_work_has_a_lesson() -> None:
    """Settling is told with its brace."""
    assert set(LESSONS) == set(Kind) - {Kind.SETTLE}


def test_practice_post_has_the_corner_of_the_piece() -> None:
    """The post that goes straight on is the graph product of a path of 4 and a ring of 4, with 16
    joints and 4 x 3 + 4 x 4 = 28 balloons. At a fan the two inner balloons of the middle square go,
    their joints become one each, and the two braces have one balloon in common: 14 joints and 25
    balloons (contraction of edges, graph theory)."""
    book = sold_book()
    made = practice(book.design, book.framework, book.steps, book.units, book.voice)
    assert made is not None
    product = nx.cartesian_product(nx.path_graph(4), nx.cycle_graph(4))
    for inner in (1, 2):
        product = nx.contracted_nodes(product, (1, inner), (2, inner), self_loops=False)
    assert len(product.edges) == 25
    assert nx.is_isomorphic(nx.Graph(multigraph(made.framework)), product)
    assert sum(made.counts.values()) == 25 + 2 * 14
    assert made.shape.standing.stands


def test_a_globe_practises_on_what_it_is_made_of() -> None:
    """Its courses are rings with zigzags: a ring as that about its pole, its zigzag, and a ring on
    that. Free ends, which such rings have not, are shown with the first joints of the globe."""
    book = book_of("gallery/reading_globe")
    made = practice_of(book)
    assert made is not None
    roles = [long.role for long in made.framework.chains]
    assert sorted(roles, key=str) == sorted([RING, ZIGZAG, RING], key=str)
    first = next(step for step in book.steps if step.kind is Kind.JOIN)
    pole = next(long for long in book.framework.chains if long.letter == "D")
    assert {len(long.chain.links) for long in made.framework.chains if long.role is RING} == {
        len(pole.chain.links)
    }
    taught = taught_by(book, made)
    assert Kind.JOIN in taught
    assert Kind.SINGLE not in taught
    drawn = {Kind.JOIN: (tie_off(book.framework, book.voice),)}
    assert len(with_ends(book, first, drawn, taught)[Kind.JOIN]) == 2
    solid = book_of("gallery/lamp_icosahedron")
    assert Kind.SINGLE in taught_by(solid, practice_of(solid))


def test_practice_balloons_are_not_counted_into_the_piece_but_bought(pages: list[str]) -> None:
    book = sold_book()
    page = next(text for text in pages if "of other balloons" in text)
    begun = next(n for n, text in enumerate(pages) if re.search(r"step \d+/\d+", text))
    assert pages.index(page) <= begun
    assert f"{book.facts.total} balloons" in pages[0]
    made = practice(book.design, book.framework, book.steps, book.units, book.voice)
    assert made is not None
    needs = next(text for text in pages if "What you need" in text and "To buy" in text)
    for purchase in book.facts.purchases:
        practised = made.counts[purchase.balloon.key]
        bought = purchase.needed + purchase.spare + practised
        assert f"{purchase.needed} {purchase.spare} {practised} {bought}" in needs


@pytest.mark.parametrize("name", ["reading_column", "reading_globe", "story_wall", "ribbon_arch"])
def test_practice_asks_for_no_move_that_the_piece_does_not_teach(name: str) -> None:
    design = read_design(DESIGNS / "gallery" / f"{name}.yaml")
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    made = practice(book.design, book.framework, book.steps, book.units, book.voice)
    assert made is not None
    taught = {kind for step in book.steps for kind in step.kinds}
    assert {kind for step in made.steps for kind in step.kinds} <= taught
    # as many layers, lying or standing as the piece does while it is built
    layers = [{long.layer for long in one.framework.chains} for one in (book, made)]
    assert layers[0] == layers[1]
    lies = [lies_built(one.framework, one.shape) for one in (book, made)]
    assert lies[0] == lies[1]


def test_targets_add_up_and_come_to_twice_a_practised_hand(pages: list[str]) -> None:
    page = next(text for text in pages if "Targets are for one beginner" in text)

    def minutes(told: str) -> int:
        hours, rest = re.search(r"(\d+) h", told), re.search(r"(\d+) min", told)
        return 60 * int(hours[1] if hours else 0) + int(rest[1] if rest else 0)

    *lines, total = re.findall(r"\d+ h \d+ min|\d+ h\b|\d+ min", page)
    assert f"All {total}" in page
    assert minutes(total) == sum(map(minutes, lines))
    # every line is told in five minutes begun
    practised, *lines = lines
    piece = minutes(total) - minutes(practised)
    assert 0 <= piece - 2 * work_minutes(sold_book().steps, {}) < 5 * len(lines) + 1
    assert any(f"Time: {practised} for a beginner" in text for text in pages)
    assert total in pages[0]  # on the cover too
    assert page.count("Trainee") >= 2


def test_sold_copies_have_nothing_to_sign() -> None:
    assert "Trainer" not in words_of(sold_copy())


@pytest.mark.parametrize("paper", PAPERS)
def test_large_print_says_in_large_words_what_is_on_the_gauges(paper: str) -> None:
    """The gauges stay at true size; 16 pt is the usual least for large print (from memory)."""
    design = read_design(DESIGNS / "gallery" / "slim_column.yaml")
    book = gather_book(design, large_print(PAPERS[paper]), design.units, "training")
    printed = print_booklet(book)
    texts = words_of_pages(printed)
    with pikepdf.open(io.BytesIO(printed)) as pdf:
        at = next(number for number, text in enumerate(texts) if "The gauges come next" in text)
        words = [pt for in_picture, pt in type_sizes(pdf.pages[at]) if not in_picture]
    assert min(words) >= 16.0 - 1e-6
    for balloon in book.framework.balloons.values():
        assert f"{balloon.label}, " in texts[at]
    assert "Gauges at true size: print at 100 %" in texts[at + 1]


@pytest.fixture(scope="module")
def held(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    text = (DESIGNS / "gallery" / "slim_column.yaml").read_text("utf-8")
    file = tmp_path_factory.mktemp("held") / "held.yaml"
    file.write_text(text.replace("\nbuild:", "\npole: true\nbuild:"), "utf-8")
    design = read_design(file)
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    return words_of_pages(print_booklet(book))


def test_what_holds_a_piece_is_said_on_the_pages_that_need_it(held: list[str]) -> None:
    said = "The piece is held up by a pole that stands by itself."
    pages = [number for number, text in enumerate(held) if said in text]
    assert pages[0] == 0
    assert any("Hold it until it is fastened so." in held[number] for number in pages)
    assert any("Set the pole up first" in held[number] for number in pages)


def test_a_column_is_not_stood_up(held: list[str]) -> None:
    """It stands as it was built."""
    whole = " ".join(held)
    assert "Let the piece stand" in whole
    assert "Stand the piece up" not in whole


def test_ballast_is_tied_in_the_last_step(pages: list[str]) -> None:
    """As much as the list of what to bring has, at the feet; the row stands before the check."""
    book = sold_book()
    (page,) = (text for text in pages if "Tie ballast of" in text)
    row = page[page.index("Tie ballast of") :]
    row = row[: row.index("Check")]
    assert f"{ballast_each_kg(book.examination):g} kg" in row
    assert set(re.findall(r"[A-Z]\d+", row)) == set(book.examination.wind.ballast_at)


def test_pairs_for_the_same_chains_are_told_apart_by_colour() -> None:
    design = read_design(DESIGNS / "gallery" / "dawn_column.yaml")
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    made = practice_of(book)
    assert made is not None
    for words in (book.words, made.words):
        paired = [said.title for said in words if "pairs" in said.title]
        assert len(paired) > 1
        assert len(set(paired)) == len(paired)
