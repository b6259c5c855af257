"""Several pieces at one event: one shopping list, one timetable, one load list."""

from __future__ import annotations

import csv
import io
from collections import Counter
from datetime import timedelta
from itertools import pairwise
from pathlib import Path

import pdfua
import pypdf
import pytest
from shipped import book_of

from buildplan.booklet.common.book import Book
from buildplan.booklet.office.event_booklet import print_event
from buildplan.booklet.office.event_load import load_list, load_rows
from buildplan.booklet.office.event_times import stays, timed, timetable_rows
from buildplan.business.buying.csv_text import csv_bytes
from buildplan.business.buying.money import money_words
from buildplan.business.buying.shopping import Asked, shopping_list, shopping_rows
from buildplan.business.events.event_plan import (
    EventPlan,
    labour_of,
    moment_words,
    numbered_on,
    plan_event,
)
from buildplan.design.event import Event, read_event
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.language.voice import Voice
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import RESERVE, Place

DESIGNS = Path(__file__).parent.parent.parent / "designs"
EVENT = read_event(DESIGNS / "reopening.event.yaml")


@pytest.fixture(scope="module")
def books() -> list[Book]:
    return [book_of(Path(piece.design).stem) for piece in EVENT.designs]


def planned(event: Event, books: list[Book]) -> EventPlan:
    asked = [
        Asked(piece.design, book.design, book.framework, piece.count)
        for piece, book in zip(event.designs, books, strict=True)
    ]
    return plan_event(event, books, shopping_list(asked))


@pytest.fixture(scope="module")
def plan(books: list[Book]) -> EventPlan:
    return planned(EVENT, books)


def test_every_piece_is_planned_as_often_as_the_event_says(plan: EventPlan) -> None:
    assert [copy.name for copy in plan.copies] == [
        "Reading Star",
        "Walk-through Gate",
        "Picture Frame, 1 of 2",
        "Picture Frame, 2 of 2",
    ]
    numbers = [step.number for copy in plan.copies for step in copy.steps]
    assert numbers == list(range(1, len(numbers) + 1))


def test_pieces_do_not_take_one_anothers_parts(books: list[Book]) -> None:
    steps = books[0].steps
    first, second = numbered_on(steps, 0, "piece 1"), numbered_on(steps, len(steps), "piece 2")
    made = Counter(t for s in (*first, *second) for op in s.operations for t in op.makes)
    assert set(made.values()) == {1}
    own = {t for s in second for op in s.operations for t in op.makes}
    assert all(t in own for s in second for op in s.operations for t in op.needs)
    assert all(need in {s.number for s in second} for s in second for need in s.needs)


def test_all_work_is_in_the_timetable_once(plan: EventPlan) -> None:
    jobs = [
        (one.copy.name, one.timed.job.number)
        for p in plan.timetable.parts
        for one in timed(plan, p)
    ]
    assert sorted(jobs) == sorted((c.name, job.number) for c in plan.copies for job in c.jobs)
    work = sum(part.work for part in plan.timetable.parts)
    alone = sum(copy.book.facts.work_minutes for copy in plan.copies)
    assert work >= alone - 1e-6, "lifting takes more than one person"
    for part in plan.timetable.parts:
        assert part.minutes >= max(part.work / plan.event.crew, part.critical) - 1e-6


def test_jobs_of_a_piece_come_in_their_order_on_site(plan: EventPlan) -> None:
    site = plan.timetable.parts[-1]
    assert site.place is Place.SITE
    for copy in plan.copies:
        starts = [
            (one.timed.job.number, one.timed.start) for one in timed(plan, site) if one.copy is copy
        ]
        assert [number for number, _ in starts] == sorted(number for number, _ in starts)


def test_nobody_is_at_two_pieces_at_once(plan: EventPlan) -> None:
    for part in plan.timetable.parts:
        for person in range(plan.event.crew):
            for before, after in pairwise(stays(plan, part, person)):
                assert before[2] <= after[1] + 1e-9


def test_times_count_back_from_the_opening(plan: EventPlan) -> None:
    """Each part with its reserve, and the way between: worked out backwards by hand."""
    workshop, site = plan.timetable.parts
    on_site = plan.opening - timedelta(minutes=site.minutes * (1 + RESERVE))
    assert plan.starts[Place.SITE] == on_site
    assert plan.leave == on_site - timedelta(minutes=EVENT.travel)
    start = plan.leave - timedelta(minutes=workshop.minutes * (1 + RESERVE))
    assert plan.starts[Place.WORKSHOP] == start
    assert moment_words(plan.opening, plan.opening) == "10:00"
    assert moment_words(plan.opening - timedelta(hours=11), plan.opening) == "the day before, 23:00"
    assert moment_words(plan.opening - timedelta(days=2), plan.opening) == "2 days before, 10:00"


def test_the_crews_own_times_come_first(books: list[Book]) -> None:
    slow = books[0].design.model_copy(update={"labour": {"brace": 9.0}})
    quick = books[1].design.model_copy(update={"labour": {"brace": 0.1, "lock": 0.1}})
    assert labour_of(EVENT, [slow, quick]) == {"brace": 9.0, "lock": MINUTES[Kind.LOCK]}
    own = EVENT.model_copy(update={"labour": {"brace": 2.0}})
    assert labour_of(own, [slow, quick])["brace"] == 2.0


def test_the_load_holds_every_balloon_of_every_piece(plan: EventPlan) -> None:
    loads = load_list(plan)
    for copy in plan.copies:
        bags = [one for one in loads if one.piece == copy.name and one.part == "Bags"]
        assert sum(one.balloons or 0 for one in bags) == copy.book.facts.total
        assert any(one.piece == copy.name and "hold it down" in one.part for one in loads)
    spares = [one.balloons for one in loads if one.part.startswith("Spares")]
    assert spares == [p.spare for p in plan.shopping.purchases if p.spare]
    shared = [one.what for one in loads if one.part == "Tools"]
    assert len(shared) == len(set(shared)), "tools are taken once for all pieces"


def test_tables_read_back(plan: EventPlan) -> None:
    for rows in (shopping_rows(plan.shopping, Voice()), timetable_rows(plan), load_rows(plan)):
        text = csv_bytes(rows).decode("utf-8-sig")
        back = list(csv.reader(io.StringIO(text, newline="")))
        assert back == [["" if cell is None else str(cell) for cell in row] for row in rows]
        assert len({len(row) for row in back}) == 1


def test_the_pages_say_what_the_plan_says(plan: EventPlan) -> None:
    data = print_event(plan, PAPERS["a4"])
    assert data == print_event(plan, PAPERS["a4"]), "same plan, same bytes"
    reader = pypdf.PdfReader(io.BytesIO(data))
    text = " ".join(" ".join(page.extract_text() for page in reader.pages).split())
    assert "/MarkInfo" in reader.root_object
    # 16 CFR 1500.19(b)(2); punctuation of the printed rule from memory
    assert "CHOKING HAZARD" in text
    assert "Discard broken balloons at once" in text
    for piece in EVENT.designs:
        assert read_design(DESIGNS / piece.design).name in text
    for purchase, amount in zip(plan.shopping.purchases, plan.shopping.costs(), strict=True):
        assert f"{purchase.packs} pack" in text
        assert amount is not None
        assert money_words(amount, "GBP", Voice()) in text
    assert plan.shopping.total is not None
    assert money_words(plan.shopping.total, "GBP", Voice()) in text
    assert f"{sum(copy.book.facts.total for copy in plan.copies):,}" in text


def test_the_pages_are_accessible(plan: EventPlan, tmp_path: Path) -> None:
    """pdfua (a subset of ISO 14289-1): no rule has a finding."""
    for paper in PAPERS.values():
        path = tmp_path / f"{paper.name}.pdf"
        path.write_bytes(print_event(plan, paper))
        assert not pdfua.validate(str(path)).findings


def test_a_crew_of_one_is_told_when_to_call_for_help(books: list[Book]) -> None:
    alone = planned(EVENT.model_copy(update={"crew": 1, "designs": EVENT.designs[2:]}), books[2:])
    assert alone.timetable.short_of
    reader = pypdf.PdfReader(io.BytesIO(print_event(alone, PAPERS["letter"])))
    assert "Call for help" in " ".join(page.extract_text() for page in reader.pages)
