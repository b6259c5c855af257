"""The crew edition: jobs, bags, poses, ballast, and the pages that print them."""

from __future__ import annotations

import io
import re
from collections import Counter
from dataclasses import replace
from pathlib import Path

import numpy as np
import pikepdf
import pypdf
import pytest
from page_words import words_of
from type_sizes import type_sizes

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.loads import joints_words
from buildplan.booklet.crew.run_lines import run_lines
from buildplan.booklet.crew.times import timed_jobs
from buildplan.booklet.editions import print_booklet
from buildplan.business.buying.money import money_words
from buildplan.business.buying.packing import bags
from buildplan.business.buying.shopping import ShoppedFor, packs_words, shopping_list
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS, large_print
from buildplan.evaluation.ballast import ballast_kg
from buildplan.evaluation.passing import Door
from buildplan.framework.counts import balloon_counts
from buildplan.instructions.jobs import job_row
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import JobKind, jobs
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import crew_of, timetable
from buildplan.shape.carrying import CarriedAs, least_lean, poses, walk_through, whole
from buildplan.shape.examining import examine

DESIGNS = Path(__file__).parent.parent.parent / "designs"


@pytest.fixture(scope="module", params=["picture_frame", "walk_through_gate"])
def book(request: pytest.FixtureRequest) -> Book:
    design = read_design(DESIGNS / f"{request.param}.yaml")
    return gather_book(design, PAPERS["a4"], design.units, "crew")


@pytest.fixture(scope="module")
def printed(book: Book) -> bytes:
    return print_booklet(book)


def test_every_step_is_in_exactly_one_job(book: Book) -> None:
    found = [step.number for job in jobs(book.steps) for step in job.steps]
    assert sorted(found) == [step.number for step in book.steps]


def test_runs_hold_every_brace_and_lock_once(book: Book) -> None:
    rows = [row for job in jobs(book.steps) for row in job.rows]
    braces = [row.brace for row in rows if row.brace is not None]
    assert braces == [brace.number for brace in book.framework.braces]
    names = [job_row(book.voice, row, book.told).name for row in rows if row.brace is not None]
    assert names == [f"Brace {number}" for number in braces]
    locks = [joint for row in rows for joint in row.locks]
    assert sorted(locks) == sorted(lock.joint for lock in book.framework.locks)


def test_runs_are_at_the_density_of_experts(book: Book) -> None:
    runs = [job for job in jobs(book.steps) if job.rows]
    sizes = [sum(row.brace is not None for row in job.rows) for job in runs]
    assert min(sizes[:-1]) >= 5
    assert max(sizes) <= 16


def test_bags_hold_the_whole_piece(book: Book) -> None:
    packed: Counter[str] = Counter()
    for bag in bags(book.framework, book.voice):
        packed.update(bag.counts)
    assert dict(packed) == {key: n for key, n in book.facts.counts.items() if n}
    labels = [bag.label for bag in bags(book.framework, book.voice)]
    assert len(set(labels)) == len(labels)


@pytest.mark.parametrize("name", ["story_wall", "dawn_column", "portal", "reading_globe"])
def test_bags_of_chains_that_come_in_with_courses_hold_the_whole_piece(name: str) -> None:
    """Each balloon in one bag, of pieces whose chains are packed by their make and length."""
    framework = build_framework(read_design(DESIGNS / "gallery" / f"{name}.yaml"))
    packed: Counter[str] = Counter()
    for bag in bags(framework, Voice()):
        packed.update(bag.counts)
    assert packed == Counter(balloon_counts(framework))


def test_the_bags_add_up_to_what_stands_below_them(book: Book, printed: bytes) -> None:
    """As printed: each is rounded up, and so must their sum not be rounded for itself."""
    text = words_of(printed)
    table = text[text.index("Bulk Packed Loaded") : text.index("Bulk is loosely filled")]
    *each, total = (int(told) for told in re.findall(r"(\d+) (?:cu ft|L)\b", table))
    assert len(each) == len(bags(book.framework, Voice()))
    assert sum(each) == total


def test_no_step_of_the_training_is_named(printed: bytes) -> None:
    """A crew has jobs."""
    assert not re.search(r"\bsteps? \d", words_of(printed))


def test_a_bag_of_balls_is_filled_as_loose_balls_fill(book: Book) -> None:
    """Random close packing of spheres fills about 0.64 of the space (from memory); the locks
    are spheres of the gauge's diameter, 4/3 pi r^3 each."""
    bag = next(bag for bag in bags(book.framework, book.voice) if bag.label == "Locks")
    (key,) = bag.counts
    radius = book.framework.balloons[key].gauge_m / 2
    volume = bag.balloons * 4 / 3 * np.pi * radius**3
    assert volume / bag.bulk_m3 == pytest.approx(0.64)


def test_extent_is_that_of_the_shape(book: Book) -> None:
    for direction, size in zip(
        np.eye(3), (book.shape.width_m, book.shape.height_m, book.shape.depth_m), strict=True
    ):
        # the floor cuts what is pressed flat, so a standing piece is a little lower
        assert whole(book.framework, book.shape).extent_m(direction) == pytest.approx(
            size, rel=0.06
        )


def test_leaning_never_makes_it_wider_than_upright(book: Book) -> None:
    _, low, _ = least_lean(whole(book.framework, book.shape))
    up = whole(book.framework, book.shape).extent_m(np.array([0.0, 1.0, 0.0]))
    across = whole(book.framework, book.shape).extent_m(np.array([1.0, 0.0, 0.0]))
    assert low <= min(up, across) + 1e-9
    # a figure of constant width is the only one that no turn makes lower; a hull's width is
    # least with one of its sides flush (Houle and Toussaint 1988, from memory)
    tried = [
        whole(book.framework, book.shape).extent_m(np.array([np.sin(a), np.cos(a), 0.0]))
        for a in np.linspace(0, np.pi, 721)
    ]
    assert low == pytest.approx(min(tried), rel=2e-3)


def test_upright_and_side_swap_width_and_height(book: Book) -> None:
    found = {pose.way: pose for pose in poses(whole(book.framework, book.shape))}
    up, side = found[CarriedAs.UPRIGHT], found[CarriedAs.ON_ITS_SIDE]
    assert (up.height_m, up.length_m) == (side.length_m, side.height_m)
    assert up.width_m == side.width_m == pytest.approx(book.shape.depth_m, rel=0.01)


@pytest.mark.parametrize("gust", [2.0, 3.3, 5.4])
def test_ballast_is_that_of_the_examination(book: Book, gust: float) -> None:
    wind = examine(book.framework, book.shape, gust_m_per_s=gust).wind
    assert wind.ballast is not None
    # half a kilogram begun at each of its places
    begun = 0.5 * len(wind.ballast_at)
    least = max(wind.ballast.high, book.constants["least_ballast"].value)
    assert -1e-6 <= ballast_kg(book.examination, gust) - least < begun + 1e-6


def test_pages_state_bags_locks_and_words_of_the_regulation(book: Book, printed: bytes) -> None:
    """16 CFR 1500.19(b)(2) by way of EDItEUR ONIX code list 143, value 02."""
    text = words_of(printed)
    flat = " ".join(re.findall(r"[a-z0-9]+", text.lower()))
    assert (
        "warning choking hazard children under 8 yrs can choke or suffocate on uninflated or "
        "broken balloons adult supervision required keep uninflated balloons from children "
        "discard broken balloons at once"
    ) in flat
    for bag in bags(book.framework, book.voice):
        assert bag.label in text
    assert f"Locks so far: {book.facts.locks} of {book.facts.locks}" in text
    assert f"{book.facts.total} balloons" in text
    told = [line for job in jobs(book.steps) for line in run_lines(book, job.rows)]
    for line in told:
        assert f"{line.joints} {line.locks}" in text


def test_the_lines_of_the_runs_say_every_brace_with_its_locks(book: Book) -> None:
    """Read as the page says to: of several braces each is one balloon further on."""
    read: dict[int, tuple[list[str], set[str]]] = {}
    for job in jobs(book.steps):
        for line in run_lines(book, job.rows):
            first, *others = (int(number) for number in line.name.split(" to "))
            tied, *singles = (part.split(", shares")[0] for part in line.joints.split("; single "))
            start = tied.split(" to ")[0].split()
            locks = set(line.locks.split())
            for further in range(others[0] - first + 1 if others else 1):
                joints = [f"{joint[0]}{int(joint[1:]) + further}" for joint in start]
                own = {j for single in singles for j in single.split()}
                if line.locks.startswith("each"):
                    read[first + further] = joints, {*joints, *own} - locks
                else:
                    read[first + further] = joints, locks & {*joints, *own}
            if others:
                assert tied.split(" to ")[1].split() == joints
    rows = [row for job in jobs(book.steps) for row in job.rows]
    numbers = [row.brace for row in rows if row.brace is not None]
    assert sorted(read) == numbers
    locked = [joint for _, locks in read.values() for joint in locks]
    assert sorted(locked) == sorted(lock.joint for lock in book.framework.locks)
    for row in rows:
        if row.brace is not None:
            (chain,) = book.framework.brace[row.brace].chains
            assert tuple(read[row.brace][0]) == chain.joints
            assert set(row.locks) <= read[row.brace][1]


def test_crew_pages_are_few(book: Book, printed: bytes) -> None:
    reader = pypdf.PdfReader(io.BytesIO(printed))
    assert len(reader.pages) <= 12
    assert print_booklet(book) == printed


def test_timetable_has_every_job_and_no_time_in_which_nobody_is_at_it(book: Book) -> None:
    work = jobs(book.steps)
    plan = timetable(book.steps, crew_of(book.facts.crew), {})
    found = [one.job.number for part in plan.parts for one in timed_jobs(part, work)]
    assert sorted(set(found)) == [job.number for job in work]
    for part in plan.parts:
        for one in timed_jobs(part, work):
            assert 0 <= one.start < one.finish <= part.minutes + 1e-9
            assert one.acts
            if one.job.kind is JobKind.LOOK_OVER:
                assert one.finish - one.start == pytest.approx(MINUTES[Kind.INSPECT])


LARGE_PT = 16.0  # the usual least for large print (from memory)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("language", ["en", "de"])
def test_large_print_is_large_in_words_and_pictures(book: Book, paper: str, language: str) -> None:
    """Everything but the gauges, which stay at true size."""
    sheet = PAPERS[paper]
    large = replace(book, paper=large_print(sheet), language=language)
    data = print_booklet(large)
    with pikepdf.open(io.BytesIO(data)) as pdf:
        gauges = len(pdf.pages)  # the last page
        for number, page in enumerate(pdf.pages, start=1):
            size = [float(edge) for edge in page.mediabox[2:]]
            assert sorted(size) == pytest.approx([sheet.width, sheet.height], abs=0.01)
            sizes = list(type_sizes(page))
            if number < gauges:
                assert min(pt for _, pt in sizes) >= LARGE_PT - 1e-6, f"page {number}"
            else:
                assert min(pt for _, pt in sizes) < LARGE_PT
        assert any(in_picture for page in pdf.pages for in_picture, _ in type_sizes(page))


def test_joints_in_a_row_are_told_in_few_words() -> None:
    assert (
        joints_words(("A24", "A25", "A26", "D1", "D2", "v"), Voice()) == "A24 to A26, D1, D2 and v"
    )
    assert joints_words(("A9", "A10", "A11", "B12"), Voice()) == "A9 to A11 and B12"
    assert joints_words(("B2", "A2", "B1", "A1", "A3", "B3"), Voice()) == "A1 to A3 and B1 to B3"
    said = joints_words([f"A{2 * number}" for number in range(500)], Voice())
    assert said == "500 in all, from A0 to A998"
    column = [f"{chain}{number}" for chain in ("Y", "Z", "AA", "AB") for number in range(1, 5)]
    assert (
        joints_words([*column, "C7"], Voice())
        == "C7, Y1 to Y4, Z1 to Z4, AA1 to AA4 and AB1 to AB4"
    )
    many = [f"{chain}{number}" for chain in "BCDEFGHIJKLMN" for number in range(1, 5)]
    assert joints_words([*many, "P2"], Voice()) == "1 to 4 of each of B to N and P2"
    apart = [f"{part}.A{2 * number}" for part in "LR" for number in range(20)]
    assert joints_words(apart, Voice()) == "20 joints of L and 20 joints of R"


def test_what_to_have_is_told_and_what_it_costs_is_not(book: Book, printed: bytes) -> None:
    """In whole packs, as the shopping list has it; a crew's pages show no money."""
    text = words_of(printed)
    listed = shopping_list([ShoppedFor("", book.design, book.framework)])
    assert listed.total is not None
    assert listed.currency is not None
    assert money_words(listed.total, listed.currency, book.voice) not in text
    for purchase, amount in zip(listed.purchases, listed.costs(), strict=True):
        assert packs_words(purchase, book.voice) in text
        assert amount is not None
        assert str(amount) not in text
        assert str(purchase.price) not in text
    for sign in ("£", listed.currency, "margin", "rate"):
        assert not re.search(rf"(?<![a-z]){sign}(?![a-z])", text), sign


def test_doors_that_are_given_are_told_with_the_pose_for_each(book: Book) -> None:
    doors = (Door("Barn", 1.2, 3.0), Door("Hatch", 0.4, 0.4))
    text = words_of(print_booklet(replace(book, doors=doors)))
    assert "Barn: Yes, as it stands, edge first" in text
    assert "Hatch: No" in text
    opening = walk_through(book.framework, book.shape)
    assert ("Walked through:" in text) == (opening is not None)
    assert (opening is not None) == (book.facts.name == "Walk-through Gate")
