"""Parts that stand beside one another and that balloons between them hold, and no knots."""

from __future__ import annotations

from piece_advice import assembly, part
from trial_pieces import COLUMN

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.document.paper import PAPERS
from buildplan.evaluation.measured import measure
from buildplan.sequence.model import Kind


def test_what_stands_is_set_side_by_side_where_balloons_alone_tie_it() -> None:
    ties = [
        {"joints": ["L.A1", "R.A3"], "balloon": "a"},
        {"joints": ["L.A2", "R.A4"], "balloon": "a"},
    ]
    data = assembly(part("L", COLUMN), part("R", COLUMN), ties=ties)
    book = gather_book(measure(data).design, PAPERS["a4"], "in", "training")
    (step,) = [step for step in book.steps if step.kind is Kind.SINGLE]
    told = book.told(step).text
    assert "upright on the floor" in told
    assert "Lay parts" not in told
    assert print_booklet(book).startswith(b"%PDF")
