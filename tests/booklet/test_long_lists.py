"""Pieces of many short chains: their lists run on from page to page, and nothing runs off one."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

import pypdfium2
import pytest

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.instructions.grammar import chain_letters
from buildplan.language.voice import Voice
from buildplan.sequence.ordering import natural

WALL = """
buildplan: 1
name: Long Wall
units: in
balloons:
  row:     {kind: link,  nominal: 12, inflate_to: 8,   colour: "#B65A92", label: pink}
  upright: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#F3E9CF", label: cream}
  lock:    {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
  wall: {across: 11, up: 4, layers: 2, row: row, upright: upright, between: upright, lock: lock}
"""
RUN = re.compile(
    r"Balloons (?P<one>[A-Z])(?P<first>\d+)-(?P<other>[A-Z])(?P<second>\d+) to "
    r"(?P=one)(?P<last>\d+)-(?P=other)\d+ \(cream\): tail at the joint named (?P<named>\w+)"
)
BETWEEN = 12 * 5  # a chain of one balloon for each joint of a layer of 11 by 4 cells
# a rule's zero stands before its first mark; a last line may hang a little below the type area
SLACK_PT, HANGING_PT = 12.0, 9.0


Wall = tuple[Book, pypdfium2.PdfDocument]


@pytest.fixture(scope="module", params=["training", "crew"])
def wall(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Wall:
    file = tmp_path_factory.mktemp("wall") / "wall.yaml"
    file.write_text(WALL, "utf-8")
    book = gather_book(read_design(file), PAPERS["letter"], "in", request.param)
    return book, pypdfium2.PdfDocument(print_booklet(book))


def test_no_text_runs_off_a_page(wall: Wall) -> None:
    """Every run of text, as PDFium finds it, is between the margins and on the sheet."""
    book, document = wall
    said = []
    for page in document:
        width, height = page.get_size()
        text = page.get_textpage()
        said.append(text.get_text_bounded())
        foot = book.paper.bottom if width == book.paper.width else 0
        for i in range(text.count_rects()):
            left, low, right, top = text.get_rect(i)
            words = text.get_text_bounded(left, low, right, top)
            assert left >= book.paper.left - SLACK_PT, words
            assert right <= width - book.paper.left + SLACK_PT, words
            assert low > 0, words
            assert top < height, words
            # below the type area there is only the foot of the page
            assert low >= foot - HANGING_PT or top <= foot, words
    last = "to E12-J12" if book.edition == "training" else "E12-J12"
    rows = ["hain Z", "hain AA", last]
    assert all(any(row in page for page in said) for row in rows)


def test_every_balloon_between_the_layers_is_told_once(wall: Wall) -> None:
    book, document = wall
    if book.edition != "training":
        return
    pages = [page.get_textpage().get_text_bounded() for page in document]
    # the practice piece, of other balloons, has joints of the same names
    first = next(i for i, page in enumerate(pages) if re.search(r"step \d+/\d+", page))
    text = " ".join(" ".join(pages[first:]).split())
    chains = (long.chain for long in book.framework.chains)
    short = [chain.links[0] for chain in chains if len(chain.links) == 1]
    assert len(short) == BETWEEN
    ends = Counter((link.tail, link.neck) for link in map(book.framework.link.__getitem__, short))
    assert Counter(balloons_told(text)) == ends


def balloons_told(text: str) -> Iterator[tuple[str, str]]:
    """The joints of the tails and the necks of balloons that are told in runs."""
    for run in RUN.finditer(text):
        one, first, other, second, last = run.group("one", "first", "other", "second", "last")
        for step in range(int(last) - int(first) + 1):
            joints = f"{one}{int(first) + step}", f"{other}{int(second) + step}"
            yield joints if run["named"] == "first" else (joints[1], joints[0])


def test_chains_are_told_by_their_first_and_last() -> None:
    assert chain_letters(Voice(), ["A", "B", "C", "D", "G"]) == "A to D and G"
    assert chain_letters(Voice(), ["Y", "Z", "AA", "AB"]) == "Y to AB"
    assert chain_letters(Voice(), ["A", "B"]) == "A and B"


def test_chain_z_comes_before_chain_aa() -> None:
    names = ["chain AA", "chain Z", "chain B", "chain A"]
    assert sorted(names, key=natural) == ["chain A", "chain B", "chain Z", "chain AA"]
    assert sorted(["A10", "A2", "AA1"], key=natural) == ["A2", "A10", "AA1"]
