"""A lock is shown with the balloons that meet when it is made: a balloon more is tied in later."""

from __future__ import annotations

from pathlib import Path

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.common.joint_moves import most_met
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.framework.extras import before_singles
from buildplan.sequence.model import Kind

COLUMN = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: navy}
  l: {kind: link,  nominal: 16, inflate_to: 11.4, colour: coral}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: gold}
build:
  column: {around: 4, rings: 5, ring: a, between: a, lock: k,
           extra: [{joints: [C2, C4], balloon: l}]}
"""


def test_a_balloon_that_is_tied_in_later_is_not_counted_where_a_joint_is_locked(
    tmp_path: Path,
) -> None:
    """Two of the ring and two of each zigzag meet within a column (its definition)."""
    file = tmp_path / "trial.yaml"
    file.write_text(COLUMN, "utf-8")
    design = read_design(file)
    book = gather_book(design, PAPERS["a4"], design.units, "crew")
    assert len(book.framework.links_at["C2"]) == 7
    joined = [step for step in book.steps if step.kind is Kind.JOIN]
    assert max(most_met(book, step) for step in joined) == 6
    locked = next(step.number for step in book.steps if "C2" in step.locks)
    single = next(step.number for step in book.steps if step.kind is Kind.SINGLE)
    assert locked < single
    assert len(before_singles(book.framework).links_at["C2"]) == 6
