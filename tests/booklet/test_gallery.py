"""The gallery: every design in it is right, and the sheets show each once."""

from __future__ import annotations

import io
from collections import Counter
from pathlib import Path

import pypdf
import pytest
from page_words import words_of_pages

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.office.gallery import Exhibit, is_design_file, print_gallery
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.evaluation.evaluating import resting_shape
from buildplan.framework.counts import balloon_counts, multigraph
from buildplan.language.voice import Voice
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.reach import find_reach
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.examining import examine

DESIGNS = Path(__file__).parent.parent.parent / "designs"
SHIPPED = sorted(file for file in DESIGNS.rglob("*.yaml") if is_design_file(file))


def test_there_are_at_least_twelve_designs() -> None:
    assert len(SHIPPED) >= 12


@pytest.mark.parametrize("file", SHIPPED, ids=lambda file: file.stem)
def test_a_shipped_design_is_right(file: Path) -> None:
    """It closes, stands, holds up, can be reached, and its steps rebuild it by the balloon."""
    design = read_design(file)
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    assert not shape.problems
    assert shape.standing.stands
    assert not examine(framework, shape).problems
    reach = find_reach(framework, shape)
    assert not reach.cautions
    steps = plan_steps(framework, reach=reach)
    rebuilt = replay(steps_as_json(steps))
    wanted = Counter(frozenset(edge[:2]) for edge in multigraph(framework).edges)
    assert Counter(frozenset(edge[:2]) for edge in rebuilt.graph.edges) == wanted
    added: Counter[str] = Counter()
    for step in steps:
        added.update(step.adds)
    counts = balloon_counts(framework)
    assert {key: added[key] for key in counts} == counts


def test_sheets_and_index_name_every_piece() -> None:
    files = [DESIGNS / "gallery" / f"{n}.yaml" for n in ("lamp_octahedron", "lamp_cuboctahedron")]
    books = [gather_book(read_design(file), PAPERS["a4"], "in", "training") for file in files]
    exhibits = [Exhibit(file.name, book) for file, book in zip(files, books, strict=True)]
    data = print_gallery(exhibits, PAPERS["a4"], "Gallery of designs", Voice())
    assert data == print_gallery(exhibits, PAPERS["a4"], "Gallery of designs", Voice())
    pages = words_of_pages(data)
    assert len(pages) == 2
    for book in books:
        assert all(book.facts.name in page for page in pages)
        assert f"{book.facts.total} balloons" in pages[1]


def test_events_and_brands_are_no_designs() -> None:
    assert not is_design_file(DESIGNS / "reopening.event.yaml")
    assert is_design_file(DESIGNS / "reading_star.yaml")


def test_a_long_index_goes_on_on_another_page() -> None:
    """No row is below the foot of a page, and rows tell the pages where their pieces are."""
    file = DESIGNS / "gallery" / "lamp_octahedron.yaml"
    book = gather_book(read_design(file), PAPERS["letter"], "in", "training")
    exhibits = [Exhibit(f"a/rather/long/name/of/a/file/{n}.yaml", book) for n in range(60)]
    data = print_gallery(exhibits, PAPERS["letter"], "Gallery of designs", Voice())
    pages = pypdf.PdfReader(io.BytesIO(data)).pages
    indexes = [page for page in pages if "a/rather/long" in page.extract_text()]
    assert len(indexes) >= 2
    assert len(pages) == len(indexes) + 10
    rows = "".join(page.extract_text() for page in indexes)
    assert all(rows.count(f"/{n}.yaml") == 1 for n in range(60))
    assert min(low for page in indexes for low in _lows(page)) >= PAPERS["letter"].bottom


def _lows(page: pypdf.PageObject) -> list[float]:
    """Where the names of files stand on a page, in points from its foot."""
    lows: list[float] = []

    def note(text: str, moved: list[float], at: list[float], _font: object, _size: object) -> None:
        if "yaml" in text:
            lows.append(moved[5] + at[5])

    page.extract_text(visitor_text=note)
    return lows
