"""Crew pages for the floor: who does what when, and the runs of braces."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.book import Book
from buildplan.booklet.crew_times import chart, clock, timed_jobs, who_words
from buildplan.booklet.flow import (
    COLUMN_GAP,
    Block,
    Grid,
    Items,
    Shown,
    Words,
    beside,
    heading,
    is_wide,
)
from buildplan.booklet.jobs import Job, Row
from buildplan.booklet.press import SMALL, plain, strong
from buildplan.booklet.words import minutes_words
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import step_picture
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.timetable import RESERVE, Part, Place, Timetable
from buildplan.sequence.words.times import duration

RUN_PICTURE = 250.0
TABLE_SHARE = 0.7
CLOSE_ROWS = 2.5


def times(book: Book, work: Sequence[Job], plan: Timetable) -> list[Block]:
    """Each part of the work as a chart by person and a table by job."""
    blocks: list[Block] = []
    for part in plan.parts:
        blocks += _part(book, work, part)
    blocks.append(
        Words(
            "Times are estimates for practised hands, from the start of each part; "
            f"{RESERVE:.0%} are held back for breaks, bursts and mistakes where it says latest. "
            "A person who waits holds the work, hands on locks and picks up.",
            SMALL,
        )
    )
    return blocks


def _part(book: Book, work: Sequence[Job], part: Part) -> list[Block]:
    in_workshop = part.place is Place.WORKSHOP
    name = "Beforehand, in the workshop" if in_workshop else "On site"
    rows = tuple(
        (
            strong(str(one.job.number)),
            plain(one.job.title),
            f"{clock(one.start)} – {clock(one.finish)}",
            plain(who_words(one)),
            "",
        )
        for one in timed_jobs(part, work)
    )
    latest = minutes_words(part.minutes * (1 + RESERVE))
    before = "the vehicle leaves" if in_workshop else "it must stand"
    return [
        heading(f"{name}: {duration(part.minutes)} for {book.facts.crew} people"),
        Words(f"Begin at the latest {strong(latest)} before {before}. We begin at: ____________"),
        Shown(chart(part, work, book.paper.measure, f"{name}, by person")),
        Grid(
            ("Job", "", "From – to", "Person: what", "Done at"),
            rows,
            (14, 46, 32, 66, 22),
        ),
    ]


def assembling(book: Book, work: Sequence[Job]) -> list[Block]:
    """The jobs on site: each run of braces a table beside one picture."""
    blocks: list[Block] = []
    for job in work:
        if job.portable:
            continue
        blocks.append(heading(f"Job {job.number}: {job.title}  ({_steps(job)})"))
        if job.rows:
            blocks += _run(book, job)
        else:
            blocks.append(Items(tuple(_floor_lines(job.steps)), ticked=True))
    return blocks


def _steps(job: Job) -> str:
    first, last = job.steps[0].number, job.steps[-1].number
    return f"step {first}" if first == last else f"steps {first} to {last}"


def _floor_lines(steps: Sequence[Step]) -> list[str]:
    lines = []
    for step in steps:
        lines.append(
            f"{strong(step.title)}. {plain(step.text if step.kind is Kind.LAY else '')} "
            f"{plain(step.check)}"
        )
        if len(step.turns) > 1:
            lines += [plain(row) for turn in step.turns for row in turn.words.splitlines()]
    return lines


def _run(book: Book, job: Job) -> tuple[Block, ...]:
    with_locks = any(row.locks for row in job.rows)
    rows = tuple(
        (
            f"{strong(_short_name(row))} {plain(row.cell)}".strip(),
            plain(_tersely(row)),
            *((plain(" ".join(row.locks)),) if with_locks else ()),
            "",
        )
        for row in job.rows
    )
    ties = any(row.name.startswith(("Brace", "Single")) for row in job.rows)
    head = (
        "",
        "Joints in order" if ties else "Knots that meet",
        *(("Then lock",) if with_locks else ()),
        "Done",
    )
    shares = (36, 78, *((60,) if with_locks else ()), 24)
    checks = [step.check for step in job.steps]
    # the last word of each kind of count: braces, singles, locks
    last: dict[str, str] = {}
    for check in checks:
        for sentence in check.split(". "):
            if " of " in sentence:
                last[sentence.split(":")[0]] = sentence.rstrip(".")
    picture = _run_picture(book, job)
    table: list[Block] = [
        Grid(head, rows, shares, pad=CLOSE_ROWS, after=5),
        Words(f"{strong('Check')} {plain('; '.join(last.values()))}."),
    ]
    if not is_wide(book.paper):
        return (Shown(picture), *table)
    return beside(book.paper, table, [Shown(picture)], TABLE_SHARE)


def _short_name(row: Row) -> str:
    # the joints of a single stand beside it
    return "Single" if row.name.startswith("Single ") else row.name


def _tersely(row: Row) -> str:
    """A row without what goes without saying: a brace closes where it began."""
    joints, *more = row.words.split(", ")
    said = [word.split(" with ")[0] for word in more if not word.startswith("closed at")]
    return ", ".join([joints.replace(" – ", " "), *said])


def _brought(steps: Sequence[Step]) -> tuple[frozenset[str], frozenset[str]]:
    adding = [op for step in steps for op in step.operations if op.adds]
    links = frozenset(link for op in adding for link in op.links)
    return links, frozenset(joint for op in adding for joint in op.locks)


def _run_picture(book: Book, job: Job) -> Picture:
    first = job.steps[0].number
    done_links, done_locks = _brought([s for s in book.steps if s.number < first])
    links, locks = _brought(job.steps)
    scene = Scene(
        book.framework,
        book.shape,
        new_links=links,
        done_links=done_links,
        new_locks=locks,
        done_locks=done_locks,
        patterns=book.patterns,
    )
    measure = book.paper.measure
    wide = (measure - COLUMN_GAP) * (1 - TABLE_SHARE) if is_wide(book.paper) else measure
    facts = book.facts
    tall = min(RUN_PICTURE, max(120.0, wide * facts.height_m / max(facts.width_m, 0.1)))
    rows = "; ".join(f"{row.name}: {row.words}; locks {' '.join(row.locks)}" for row in job.rows)
    return step_picture(
        scene,
        CAMERAS["front"],
        wide,
        tall,
        labels=_corners(book, job),
        alt=f"Job {job.number} on the whole piece, from the front. {rows}.",
    )


def _corners(book: Book, job: Job) -> tuple[str, ...]:
    """Joints that tell where a run is: the front ones at its first and last brace."""
    joints = [row.words for row in job.rows if row.name.startswith("Brace")]
    ends = [words.split(",")[0].split(" – ") for words in (joints[0], joints[-1])] if joints else []
    letters = [long.letter for long in book.framework.chains if "back" not in long.place]
    named = [j for end in ends for j in end if j in book.shape.at and j[0] in letters]
    return tuple(dict.fromkeys(named))
