"""The gallery: every design in it is right, and the sheets show each once."""

from __future__ import annotations

import io
from collections import Counter
from pathlib import Path

import pypdf
import pytest

from buildplan.booklet.book import gather_book, resting_shape
from buildplan.booklet.gallery import Exhibit, is_design_file, print_gallery
from buildplan.booklet.paper import PAPERS
from buildplan.design.reading import read_design
from buildplan.framework.build import build_framework
from buildplan.framework.counts import balloon_counts, multigraph
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.reach import find_reach
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps

DESIGNS = Path(__file__).parent.parent.parent / "designs"
GALLERY = sorted((DESIGNS / "gallery").glob("*.yaml"))


def test_there_are_at_least_twelve_designs() -> None:
    assert len([file for file in DESIGNS.rglob("*.yaml") if is_design_file(file)]) >= 12


@pytest.mark.parametrize("file", GALLERY, ids=lambda file: file.stem)
def test_a_design_of_the_gallery_is_right(file: Path) -> None:
    """It closes, stands, can be reached, and its steps rebuild it, balloon for balloon."""
    design = read_design(file)
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    assert not shape.problems
    assert shape.standing.stands
    reach = find_reach(framework, shape)
    assert not reach.problems
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
    data = print_gallery(exhibits, PAPERS["a4"], "Gallery of designs")
    assert data == print_gallery(exhibits, PAPERS["a4"], "Gallery of designs")
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(data)).pages]
    assert len(pages) == 2
    for book in books:
        assert all(book.facts.name in page for page in pages)
        assert f"{book.facts.total} balloons" in pages[1]


def test_events_and_brands_are_no_designs() -> None:
    assert not is_design_file(DESIGNS / "reopening.event.yaml")
    assert is_design_file(DESIGNS / "reading_star.yaml")
