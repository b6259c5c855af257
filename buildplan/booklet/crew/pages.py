"""The crew edition: what experts need on a floor, on as few pages as can be read there."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import LATEX_WORDS, choking_box
from buildplan.booklet.common.front import draft_notice
from buildplan.booklet.common.gauges import gauges_within
from buildplan.booklet.common.loads import joints_words
from buildplan.booklet.common.manner import people_words
from buildplan.booklet.common.phone_code import code_of_piece
from buildplan.booklet.crew.before import loading, preparing
from buildplan.booklet.crew.bursts import bursts
from buildplan.booklet.crew.floor import assembling, times
from buildplan.booklet.crew.place import after, arriving
from buildplan.business.buying.packing import bags
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import beside
from buildplan.document.paper import Paper, landscape
from buildplan.document.printing import Section
from buildplan.document.tables import Grid
from buildplan.document.text import LEAD, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.joint_map import joint_map
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.figures import minutes_words, weight_words
from buildplan.instructions.jobs import job_title
from buildplan.language.messages import mark
from buildplan.sequence.jobs import Job, jobs
from buildplan.sequence.timetable import crew_of, timetable

WARNING = mark("WARNING")
# The cautions of cautions.py as a crew reads them again before each job.
SHORT_CAUTIONS: Sequence[tuple[str, str]] = (
    (
        WARNING,
        mark("Keep exits, stairs, extinguishers and wheelchair ways clear. Ask the venue."),
    ),
    (
        WARNING,
        mark("Keep off overhead lines, sockets and hot lamps. Wiring is for an electrician."),
    ),
    (
        WARNING,
        mark("Ladders: firm, level ground, somebody to hold it, local rules for work at height."),
    ),
    (
        WARNING,
        mark("Wind: ballast and ties that somebody competent has checked; take down in time."),
    ),
    (
        mark("CAUTION"),
        mark("Safety glasses on; ear protection beside the inflator; face away."),
    ),
    (
        mark("CAUTION"),
        mark("Two or more to lift, turn and carry. Clear the way first. Ask about latex allergy."),
    ),
    (mark("CAUTION"), mark("Air only. Never breathe gas from a balloon.")),
    (
        mark("NOTICE"),
        mark("Heat makes balloons grow and burst. Sweep grit, staples and splinters away."),
    ),
)


# The joint map is drawn as large as it can be on so many sheets.
MAP_SCALES = (1.5, 1.35, 1.25, 1.15, 1.0, 0.85)
MAP_SHEETS = 2
CLOSEST_ROWS = 1.2
MAPS_BEFORE = 4  # the part of the work that the maps stand before


def crew_sections(book: Book) -> list[Section]:
    """The pages of the crew edition, in the order in which a crew comes to need them."""
    voice = book.voice
    work = jobs(book.steps)
    plan = timetable(
        book.steps, crew_of(book.facts.crew), {str(k): v for k, v in book.design.labour.items()}
    )
    packed = bags(book.framework, voice)
    parts: list[tuple[str, Sequence[Flowable]]] = [
        (book.facts.name, front(book, work)),
        (voice.say("Beforehand: prepare and pack"), preparing(book, work, packed)),
        (voice.say("Load list"), loading(book, packed)),
        (voice.say("Who does what when"), times(book, work, plan)),
        (voice.say("On the floor"), assembling(book, work)),
        (voice.say("Arrive, place, hold down"), arriving(book, packed)),
        (voice.say("When a balloon bursts"), bursts(book)),
        (voice.say("While it stands, and taking it down"), after(book)),
    ]
    sections = [
        Section(title, blocks, titled=True, runs_on=number not in (0, MAPS_BEFORE))
        for number, (title, blocks) in enumerate(parts)
    ]
    return [
        *sections[:MAPS_BEFORE],
        *large_maps(book),
        *sections[MAPS_BEFORE:],
        *gauges_within(book),
    ]


def front(book: Book, work: Sequence[Job]) -> list[Flowable]:
    """What it is, how big, how many, how long; the regulation's words; the jobs."""
    voice = book.voice
    facts, units = book.facts, book.units
    enlarged = book.paper.picture_scale
    wide = min(book.paper.measure, 250.0)
    picture = finished_picture(
        book.framework,
        book.shape,
        CAMERAS["front"],
        wide / enlarged,
        min(wide, 220.0) / enlarged,
        patterns=book.patterns,
        alt=voice.say("{piece}, finished, from the front.", piece=facts.name),
    )
    size = " x ".join(
        voice.tell(size_words(m, units)) for m in (facts.width_m, facts.height_m, facts.depth_m)
    )
    balloons = voice.say("{count} balloons", count=strong(voice.whole(facts.total)))
    figures = [
        ", ".join([balloons, *_parts(book)]),
        voice.say(
            "{size} wide, high, deep; {weight} (estimates)",
            size=strong(size),
            weight=strong(weight_words(facts.mass_kg, voice)),
        ),
        strong(people_words(book)),
        voice.say(
            "About {time} of practised work for {people} people (estimate)",
            time=strong(minutes_words(facts.crew_minutes, voice)),
            people=facts.crew,
        ),
        voice.say(
            "Stands on {joints}",
            joints=strong(joints_words(book.shape.standing.feet, voice)),
        ),
    ]
    rows = tuple(
        (
            strong(voice.whole(job.number)),
            plain(job_title(voice, job, book.told)),
            voice.say("beforehand") if job.portable else voice.say("on site"),
        )
        for job in work
    )
    return [
        Words(strong(voice.say("Crew edition")), LEAD, after=8),
        *draft_notice(book),
        *beside(
            book.paper,
            [
                Shown(picture, enlarged),
                *code_of_piece(book),
                Words(strong(voice.say(LATEX_WORDS))),
            ],
            [
                Items(tuple(figures)),
                Grid(
                    (voice.say("Job"), "", voice.say("Where")), rows, (14, 62, 40), pad=CLOSEST_ROWS
                ),
            ],
            0.46,
        ),
        choking_box(book.paper, voice),
        Grid(
            ("", voice.say("Cautions in short; local codes and licensed practice come first")),
            tuple(
                (strong(voice.say(signal)), plain(voice.say(words)))
                for signal, words in SHORT_CAUTIONS
            ),
            (21, 100),
            pad=CLOSEST_ROWS,
        ),
    ]


def _parts(book: Book) -> list[str]:
    voice = book.voice
    facts = book.facts
    parts = (
        (facts.braces, voice.say_count("{number} brace", "{number} braces", facts.braces)),
        (facts.singles, voice.say_count("{number} single", "{number} singles", facts.singles)),
        (facts.locks, voice.say_count("{number} lock", "{number} locks", facts.locks)),
    )
    return [words for count, words in parts if count]


def large_maps(book: Book) -> list[Section]:
    """The joint map, drawn as large as few sheets allow, upright or across; its title is in the
    running head, to leave it the page."""
    voice = book.voice
    paper, scale, sheets = _map_sheets(book)
    sections = []
    for number, picture in enumerate(sheets):
        heads = voice.say("Joint map")
        if len(sheets) > 1:
            heads = voice.say(
                "Joint map, sheet {number} of {total}", number=number + 1, total=len(sheets)
            )
        title = heads if number else voice.say("Joint map")
        shown = [Shown(picture, scale)]
        sections.append(Section(title, shown, heads, listed=number == 0, headed=True, paper=paper))
    return sections


def _map_sheets(book: Book) -> tuple[Paper, float, tuple[Picture, ...]]:
    """The sheets, the paper they are drawn for and how much they are enlarged on it."""
    tried = []
    for enlarged in MAP_SCALES:
        for paper in (book.paper, landscape(book.paper)):
            scale = enlarged * paper.picture_scale
            room = paper.top - paper.bottom
            sheets = joint_map(book.framework, paper.measure / scale, room / scale, book.voice)
            # a strip that is too high for the sheet is drawn all the same
            fits = all(sheet.height * scale <= room + 0.01 for sheet in sheets)
            if fits and len(sheets) <= MAP_SHEETS and enlarged >= 1:
                return paper, scale, sheets
            # type that is too small rather than a map that is cut off
            tried.append(((not fits, enlarged < 1, len(sheets)), (paper, scale, sheets)))
    return min(tried, key=lambda option: option[0])[1]
