"""The crew edition: what experts need on a floor, on as few pages as can be read there."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.book import Book
from buildplan.booklet.cautions import LATEX_WORDS, choking_box, law_words
from buildplan.booklet.crew_words import joints_words
from buildplan.booklet.flow import (
    Block,
    Grid,
    Items,
    Shown,
    Words,
    beside,
    flow,
)
from buildplan.booklet.jobs import Job, jobs
from buildplan.booklet.packing import bags
from buildplan.booklet.pages_crew_before import loading, preparing
from buildplan.booklet.pages_crew_floor import assembling, times
from buildplan.booklet.pages_crew_place import after, arriving
from buildplan.booklet.pages_gauges import gauges_within
from buildplan.booklet.paper import Paper, landscape
from buildplan.booklet.press import LEAD, Leaf, Press, plain, strong
from buildplan.booklet.words import minutes_words, weight_words
from buildplan.design.measures import size_words
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.joint_map import joint_map
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.sequence.timetable import crew_of, timetable

# The cautions of cautions.py as a crew reads them again before each job.
SHORT_CAUTIONS: Sequence[tuple[str, str]] = (
    ("WARNING", "Keep exits, stairs, extinguishers and wheelchair ways clear. Ask the venue."),
    ("WARNING", "Keep off overhead lines, sockets and hot lamps. Wiring is for an electrician."),
    (
        "WARNING",
        "Ladders: firm, level ground, somebody to hold it, local rules for work at height.",
    ),
    ("WARNING", "Wind: ballast and ties that somebody competent has checked; take down in time."),
    ("CAUTION", "Safety glasses on; ear protection beside the inflator; face away."),
    (
        "CAUTION",
        "Two or more to lift, turn and carry. Clear the way first. Ask about latex allergy.",
    ),
    ("CAUTION", "Air only. Never breathe gas from a balloon."),
    ("NOTICE", "Heat makes balloons grow and burst. Sweep grit, staples and splinters away."),
)


# The joint map is drawn as large as it can be on so many sheets.
MAP_SCALES = (1.5, 1.35, 1.25, 1.15, 1.0)
MAP_SHEETS = 2
CLOSEST_ROWS = 1.2


def crew_leaves(book: Book) -> list[Leaf]:
    """The pages of the crew edition, in the order in which a crew comes to need them."""
    work = jobs(book.steps)
    plan = timetable(
        book.steps, crew_of(book.facts.crew), {str(k): v for k, v in book.design.labour.items()}
    )
    packed = bags(book.framework)
    return [
        *flow(book, book.facts.name, front(book, work)),
        *flow(book, "Beforehand: prepare and pack", preparing(book, work, packed)),
        *flow(book, "Load list", loading(book, packed)),
        *flow(book, "Who does what when", times(book, work, plan)),
        *large_maps(book),
        *flow(book, "On the floor", assembling(book, work)),
        *flow(book, "Arrive, place, hold down", arriving(book, packed)),
        *flow(book, "While it stands, and taking it down", after(book)),
        *gauges_within(book),
    ]


def front(book: Book, work: Sequence[Job]) -> list[Block]:
    """What it is, how big, how many, how long; the regulation's words; the jobs."""
    facts, units = book.facts, book.units
    wide = min(book.paper.measure, 250.0)
    picture = finished_picture(
        book.framework,
        book.shape,
        CAMERAS["front"],
        wide,
        min(wide, 220.0),
        patterns=book.patterns,
        alt=f"{facts.name}, finished, from the front.",
    )
    size = " x ".join(size_words(m, units) for m in (facts.width_m, facts.height_m, facts.depth_m))
    figures = [
        ", ".join([f"{strong(str(facts.total))} balloons", *_parts(book)]),
        f"{strong(size)} wide, high, deep; {strong(weight_words(facts.mass_kg))} (estimates)",
        f"{strong(str(facts.crew))} people, about "
        f"{strong(minutes_words(facts.crew_minutes))} of practised work (estimate)",
        f"Stands on {strong(joints_words(book.shape.standing.feet))}",
    ]
    rows = tuple(
        (
            strong(str(job.number)),
            plain(job.title),
            "beforehand" if job.portable else "on site",
        )
        for job in work
    )
    return [
        Words(strong("Crew edition"), LEAD, after=8),
        *beside(
            book.paper,
            [Shown(picture)],
            [
                Items(tuple(figures)),
                Grid(("Job", "", "Where"), rows, (14, 62, 40), pad=CLOSEST_ROWS),
            ],
            0.46,
        ),
        choking_box(),
        Words(strong(law_words(LATEX_WORDS))),
        Grid(
            ("", "Cautions in short; local codes and licensed practice come first"),
            tuple((strong(signal), plain(words)) for signal, words in SHORT_CAUTIONS),
            (21, 100),
            pad=CLOSEST_ROWS,
        ),
    ]


def _parts(book: Book) -> list[str]:
    facts = book.facts
    counts = {"braces": facts.braces, "singles": facts.singles, "locks": facts.locks}
    return [f"{count} {name}" for name, count in counts.items() if count]


def large_maps(book: Book) -> list[Leaf]:
    """The joint map, drawn as large as few sheets allow, upright or across."""
    tried = [
        (paper, scale, _map_sheets(book, paper, scale))
        for scale in MAP_SCALES
        for paper in (book.paper, landscape(book.paper))
    ]
    few = [option for option in tried if len(option[2]) <= MAP_SHEETS]
    paper, scale, sheets = few[0] if few else min(tried, key=lambda option: len(option[2]))

    def leaf(number: int) -> Leaf:
        def draw(press: Press) -> None:
            of = f", sheet {number + 1} of {len(sheets)}" if len(sheets) > 1 else ""
            top = press.title(f"Joint map{of}")
            picture = sheets[number]
            press.picture(picture, paper.left, top - picture.height * scale, scale)

        title = "Joint map" if number == 0 else f"Joint map, sheet {number + 1}"
        return Leaf(title, draw, running="Joint map", listed=number == 0, paper=paper)

    return [leaf(number) for number in range(len(sheets))]


def _map_sheets(book: Book, paper: Paper, scale: float) -> tuple[Picture, ...]:
    room = paper.top - paper.bottom - 40
    return joint_map(book.framework, paper.measure / scale, room / scale)
