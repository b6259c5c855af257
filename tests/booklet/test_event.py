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
from page_words import words_of
from shipped import book_of

from buildplan.booklet.common.book import Book
from buildplan.booklet.office.event_booklet import print_event
from buildplan.booklet.office.event_chart import chart, stays
from buildplan.booklet.office.event_load import load_lines, load_rows, shared_lists
from buildplan.booklet.office.event_times import timed, timetable_rows
from buildplan.booklet.office.event_ways import fit_words
from buildplan.business.buying.money import money_words
from buildplan.business.buying.shopping import ShoppedFor, shopping_list, shopping_rows
from buildplan.business.events.day import DayStep, day_of, moment_words
from buildplan.business.events.event_plan import EventPlan, labour_of, numbered_on, plan_event
from buildplan.business.events.loading import Load, LoadKind, ballast_of, load_of
from buildplan.business.events.stowing import volume_m3
from buildplan.design.event import Event, Vehicle, read_event
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.drawing.marks import Label, Polyline
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import JobKind
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import RESERVE, SHORT, WorkPlace
from buildplan.source.csv_text import csv_bytes

DESIGNS = Path(__file__).parent.parent.parent / "designs"
EVENT = read_event(DESIGNS / "reopening.event.yaml")
VOICE = Voice()


@pytest.fixture(scope="module")
def books() -> list[Book]:
    return [book_of(Path(piece.design).stem) for piece in EVENT.designs]


def planned(event: Event, books: list[Book]) -> EventPlan:
    asked = [
        ShoppedFor(piece.design, book.design, book.framework, piece.count)
        for piece, book in zip(event.designs, books, strict=True)
    ]
    return plan_event(event, books, shopping_list(asked), VOICE)


@pytest.fixture(scope="module")
def plan(books: list[Book]) -> EventPlan:
    return planned(EVENT, books)


@pytest.fixture(scope="module")
def load(plan: EventPlan) -> Load:
    return load_of(plan, VOICE)


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
    rows = [one for part in plan.timetable.parts for one in timed(plan, part)]
    jobs = {(one.copy.name, one.stretch.job.number) for one in rows if one.turn == 1}
    assert sorted(jobs) == sorted((c.name, job.number) for c in plan.copies for job in c.jobs)
    assert [one.number for one in rows] == list(range(1, len(rows) + 1))
    work = sum(part.work for part in plan.timetable.parts)
    alone = sum(copy.book.facts.work_minutes for copy in plan.copies)
    assert work >= alone - 1e-6, "lifting takes more than one person"
    for part in plan.timetable.parts:
        assert part.minutes >= max(part.work / plan.event.crew, part.critical) - 1e-6


def test_a_row_is_worked_at_from_its_beginning_to_its_end(plan: EventPlan) -> None:
    """No moment of a row's time passes, but for a change of hands, without somebody at the job:
    ten minutes of looking over are ten minutes on the clock."""
    for part in plan.timetable.parts:
        for row in timed(plan, part):
            steps = {step.number for step in row.stretch.job.steps}
            at = sorted((s.start, s.finish) for s in part.spans if steps & set(s.steps))
            reached = row.stretch.start
            for start, finish in at:
                if start <= reached + SHORT:
                    reached = max(reached, finish)
            assert reached >= row.stretch.finish - 1e-6, row
    site = plan.timetable.parts[-1]
    looked = [one.stretch for one in timed(plan, site) if one.stretch.job.kind is JobKind.LOOK_OVER]
    assert len(looked) == len(plan.copies)
    for stretch in looked:
        assert stretch.finish - stretch.start == pytest.approx(MINUTES[Kind.INSPECT])


def test_jobs_of_a_piece_come_in_their_order_on_site(plan: EventPlan) -> None:
    site = plan.timetable.parts[-1]
    assert site.place is WorkPlace.SITE
    for copy in plan.copies:
        numbers = [one.stretch.job.number for one in timed(plan, site) if one.copy is copy]
        assert numbers == sorted(numbers)


def test_every_bar_of_the_chart_has_its_number_and_none_lies_on_another(plan: EventPlan) -> None:
    for part in plan.timetable.parts:
        for width in (510.0, 300.0):
            marks = chart(plan, part, width, VOICE).marks
            bars = [one for one in marks if isinstance(one, Polyline) and one.closed]
            bold = [one for one in marks if isinstance(one, Label) and one.bold]
            assert len(bars) == len(bold)
            on_line: dict[float, list[float]] = {}
            for label in bold:
                on_line.setdefault(label.at[1], []).append(label.at[0])
            gaps = [after - before for xs in on_line.values() for before, after in pairwise(xs)]
            assert min(gaps) > 5, "numbers of two bars would touch"


def test_nobody_is_at_two_pieces_at_once(plan: EventPlan) -> None:
    for part in plan.timetable.parts:
        for person in range(plan.event.crew):
            for before, after in pairwise(stays(plan, part, person)):
                assert before[2] <= after[1] + 1e-9


def test_times_count_back_from_the_opening(plan: EventPlan) -> None:
    """Each part with its reserve, and the way between: worked out backwards by hand."""
    workshop, site = plan.timetable.parts
    on_site = plan.opening - timedelta(minutes=site.minutes * (1 + RESERVE))
    assert plan.starts[WorkPlace.SITE] == on_site
    at = {moment.step: moment.at for moment in day_of(plan)}
    assert at[DayStep.UNLOAD] == on_site - timedelta(minutes=EVENT.unloading)
    assert at[DayStep.LEAVE] == at[DayStep.UNLOAD] - timedelta(minutes=EVENT.travel)
    assert at[DayStep.LOAD] == at[DayStep.LEAVE] - timedelta(minutes=EVENT.loading)
    start = at[DayStep.LOAD] - timedelta(minutes=workshop.minutes * (1 + RESERVE))
    assert plan.starts[WorkPlace.WORKSHOP] == at[DayStep.WORKSHOP] == start
    assert list(at) == [step for step in DayStep if step is not DayStep.BACK], "as the day goes"
    day, eve = timedelta(days=1), timedelta(hours=11)
    assert moment_words(plan.opening, plan.opening, VOICE) == "10:00"
    assert moment_words(plan.opening - eve, plan.opening, VOICE) == "the day before, 23:00"
    assert moment_words(plan.opening - 2 * day, plan.opening, VOICE) == "2 days before, 10:00"


def test_the_crews_own_times_come_first(books: list[Book]) -> None:
    slow = books[0].design.model_copy(update={"labour": {"brace": 9.0}})
    quick = books[1].design.model_copy(update={"labour": {"brace": 0.1, "lock": 0.1}})
    assert labour_of(EVENT, [slow, quick]) == {"brace": 9.0, "lock": MINUTES[Kind.LOCK]}
    own = EVENT.model_copy(update={"labour": {"brace": 2.0}})
    assert labour_of(own, [slow, quick])["brace"] == 2.0


def test_the_load_holds_every_balloon_of_every_piece(plan: EventPlan, load: Load) -> None:
    for number, copy in enumerate(plan.copies):
        bags = [item.bag for item in load.items if item.piece == number and item.bag]
        assert sum(bag.balloons for bag in bags) == copy.book.facts.total
    assert len([item for item in load.items if item.kind is LoadKind.TOOLS]) == 1
    lines = load_lines(plan, load, load.boxes, VOICE)
    assert sum(line.balloons for line in lines) == sum(c.book.facts.total for c in plan.copies)
    # two frames alike are one line a label, their four chains of two lengths two lines
    frame = [line for line in lines if line.design == 2]
    assert [line.what for line in frame][:2] == ["Chains A and D", "Chains B and C"]
    assert frame[0].boxes == 4
    lists = dict(shared_lists(plan, VOICE))
    assert len(lists["Spares, not inflated"]) == sum(p.spare > 0 for p in plan.shopping.purchases)
    assert len(set(lists["Tools"])) == len(lists["Tools"]), "tools are taken once for all pieces"


def test_bags_and_ballast_take_the_room_of_what_is_in_them(plan: EventPlan, load: Load) -> None:
    for item in load.items:
        if item.bag is not None:
            room = sum(box.volume_m3 for box in item.boxes)
            assert room >= item.bag.bulk_m3 - 1e-9
            assert room <= max(item.bag.bulk_m3, 0.2 * 0.324) + 1e-6
    for number, mass in enumerate(ballast_of(plan.copies)):
        canisters = [i for i in load.items if i.piece == number and i.kind is LoadKind.BALLAST]
        assert 0 <= canisters[0].mass_kg - mass < 10


def with_vehicles(books: list[Book], *vehicles: Vehicle, **changes: object) -> Load:
    event = EVENT.model_copy(update={"vehicles": list(vehicles), **changes})
    return load_of(planned(event, books), VOICE)


def test_a_load_that_fits_has_a_place_for_everything(books: list[Book]) -> None:
    van = Vehicle(name="van", length=420, width=180, height=190)
    small = Vehicle(name="car", length=120, width=100, height=80, carries=30)
    fits = with_vehicles(books, van)
    assert fits.fits
    assert len(fits.aboard(0)) == len(fits.boxes)
    over = with_vehicles(books, small)
    assert not over.fits
    assert over.mass_kg(0) <= 30
    assert len(over.aboard(0)) + len(over.stowed.left) == len(over.boxes)
    both = with_vehicles(books, small, van)
    assert both.fits
    assert len(both.aboard(0)) + len(both.aboard(1)) == len(both.boxes)
    slit = Vehicle(name="slit", length=420, width=180, height=190, door_width=30, door_height=190)
    assert all(min(box.size_m) <= 0.3 for box in with_vehicles(books, slit).aboard(0))


def test_a_piece_that_is_built_beforehand_is_only_stood_up_on_site(books: list[Book]) -> None:
    frames = EVENT.designs[2].model_copy(update={"travels": "built"})
    plan = planned(EVENT.model_copy(update={"designs": [*EVENT.designs[:2], frames]}), books)
    site = plan.timetable.parts[-1]
    built = [copy for copy in plan.copies if copy.built]
    assert len(built) == 2
    for copy in built:
        on_site = [one.stretch.job.kind for one in timed(plan, site) if one.copy is copy]
        assert on_site == [JobKind.STAND_UP]
        rows = [one.stretch for one in timed(plan, plan.timetable.parts[0]) if one.copy is copy]
        made = max(row.finish for row in rows if row.job.portable)
        assert min(row.start for row in rows if not row.job.portable) >= made - SHORT
    wholes = [item for item in load_of(plan, VOICE).items if item.kind is LoadKind.WHOLE]
    assert [item.piece for item in wholes] == [2, 3]
    facts = books[2].facts
    sides = (facts.width_m, facts.height_m, facts.depth_m)
    assert sorted(wholes[0].boxes[0].size_m) == pytest.approx(sorted(sides), rel=0.06)


def test_tables_read_back(plan: EventPlan, load: Load) -> None:
    tables = (shopping_rows(plan.shopping, VOICE), timetable_rows(plan, VOICE))
    for rows in (*tables, load_rows(plan, load, VOICE)):
        text = csv_bytes(rows).decode("utf-8-sig")
        back = list(csv.reader(io.StringIO(text, newline="")))
        assert back == [["" if cell is None else str(cell) for cell in row] for row in rows]
        assert len({len(row) for row in back}) == 1


def test_the_pages_say_what_the_plan_says(plan: EventPlan) -> None:
    data = print_event(plan, PAPERS["a4"], VOICE)
    assert data == print_event(plan, PAPERS["a4"], VOICE), "same plan, same bytes"
    text = words_of(data)
    assert "/MarkInfo" in pypdf.PdfReader(io.BytesIO(data)).root_object
    # 16 CFR 1500.19(b)(2); punctuation of the printed rule from memory
    assert "CHOKING HAZARD" in text
    assert "Discard broken balloons at once" in text
    for piece in EVENT.designs:
        assert read_design(DESIGNS / piece.design).name in text
    for purchase, amount in zip(plan.shopping.purchases, plan.shopping.costs(), strict=True):
        assert f"{purchase.packs} pack" in text
        assert amount is not None
        assert money_words(amount, "GBP", VOICE) not in text
    assert "£" not in text, "the pages go with the crew: no costs"
    assert f"{sum(copy.book.facts.total for copy in plan.copies):,}" in text
    for mass in ballast_of(plan.copies):
        assert f"{mass:g} kg" in text


def test_the_pages_are_accessible(plan: EventPlan, tmp_path: Path) -> None:
    """pdfua (a subset of ISO 14289-1): no rule has a finding."""
    for paper in PAPERS.values():
        path = tmp_path / f"{paper.name}.pdf"
        path.write_bytes(print_event(plan, paper, VOICE))
        assert not pdfua.validate(str(path)).findings


def test_a_crew_of_one_is_told_when_to_call_for_help(books: list[Book]) -> None:
    alone = planned(EVENT.model_copy(update={"crew": 1, "designs": EVENT.designs[2:]}), books[2:])
    assert alone.timetable.short_of
    text = words_of(print_event(alone, PAPERS["letter"], VOICE))
    assert ("Call for help" in text, " 1 people" in text) == (True, False)
    assert "1 person; 2 to turn, lift and stand it up" in text, "the first page says so too"


def test_where_no_place_is_found_the_words_do_not_say_that_it_cannot_fit(
    plan: EventPlan, books: list[Book]
) -> None:
    small = Vehicle(name="Cart", length=100.0, width=60.0, height=60.0)
    assert "It does not fit: the boxes take more room" in fit_words(
        plan, with_vehicles(books, small), VOICE
    )
    boxes = with_vehicles(books, small).boxes
    whole_cm = 100 * (volume_m3(boxes) * 1.001) ** (1 / 3)
    cube = Vehicle(name="Cube", length=whole_cm, width=whole_cm, height=whole_cm)
    assert "may still fit" in fit_words(plan, with_vehicles(books, cube), VOICE)
