"""The person at the first brace of what has chains that do not come by there."""

from __future__ import annotations

from pathlib import Path

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.people_at_braces import people_at
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.sequence.model import Kind

R = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
  letters: {text: R, cells: 7, long: a, brace: a, bar: a, lock: k}
"""


def test_a_ring_that_does_not_come_by_the_first_brace_is_lifted_elsewhere(tmp_path: Path) -> None:
    """The hole of an R has a ring of its own, and the first brace is at its leg."""
    file = tmp_path / "r.yaml"
    file.write_text(R, "utf-8")
    design = read_design(file)
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    views = plan_views(book)
    first = next(step for step in book.steps if step.kind is Kind.BRACE)
    assert people_at(book, views, first)
