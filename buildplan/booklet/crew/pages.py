"""The crew edition: what experts need on a floor, on as few pages as can be read there."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.gauges import gauges_within
from buildplan.booklet.crew.before import loading, preparing
from buildplan.booklet.crew.bursts import bursts
from buildplan.booklet.crew.doors import does_it_fit
from buildplan.booklet.crew.front import front
from buildplan.booklet.crew.runs import assembling
from buildplan.booklet.crew.schedule import schedule
from buildplan.booklet.crew.standing import while_standing
from buildplan.booklet.crew.when import job_times
from buildplan.business.buying.packing import bags
from buildplan.document.blocks import Shown
from buildplan.document.paper import Paper, landscape
from buildplan.document.printing import Section
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.marks import Picture
from buildplan.sequence.jobs import jobs
from buildplan.sequence.timetable import crew_of, timetable

# The joint map is drawn as large as the fewest sheets allow, upright or across.
MAP_SCALES = (1.5, 1.35, 1.25, 1.15, 1.0, 0.85)
CLOSER = (0.95, 0.9, 0.85)  # of a sheet's height
MAPS_BEFORE = 3  # the part of the work that the maps stand before
UNDER_HEADINGS = 4  # the part whose headings say as much as its title


def crew_sections(book: Book) -> list[Section]:
    """The pages of the crew edition, in the order in which a crew comes to need them."""
    voice = book.voice
    work = jobs(book.steps)
    plan = timetable(
        book.steps, crew_of(book.facts.crew), {str(k): v for k, v in book.design.labour.items()}
    )
    times = job_times(work, plan)
    packed = bags(book.framework, voice)
    parts: list[tuple[str, Sequence[Flowable]]] = [
        (book.facts.name, front(book, plan)),
        (
            voice.say("Beforehand: prepare, pack and load"),
            [
                *preparing(book, work, packed, times),
                *loading(book, work),
                *does_it_fit(book, packed),
            ],
        ),
        (voice.say("Who does what when"), schedule(book, work, plan)),
        (voice.say("On the floor"), assembling(book, work, times)),
        (
            voice.say("While it stands, and taking it down"),
            while_standing(book),
        ),
        (voice.say("When a balloon bursts"), bursts(book)),
    ]
    maps = large_maps(book)
    apart = {0} if maps[-1].paper is book.paper else {0, MAPS_BEFORE}
    sections = [
        Section(title, blocks, titled=number != UNDER_HEADINGS, runs_on=number not in apart)
        for number, (title, blocks) in enumerate(parts)
    ]
    return [
        *sections[:MAPS_BEFORE],
        *maps,
        *sections[MAPS_BEFORE:],
        *gauges_within(book),
    ]


def large_maps(book: Book) -> list[Section]:
    """The joint map, drawn as large as few sheets allow, upright or across; its title is in the
    running head, to leave it the page."""
    voice = book.voice
    paper, scale, sheets = _map_sheets(book)
    scale, sheets = _close_set(book, paper, scale, sheets)
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


def _close_set(
    book: Book, paper: Paper, scale: float, sheets: tuple[Picture, ...]
) -> tuple[float, tuple[Picture, ...]]:
    """The sheets with as much room under the last of them as on so many sheets there can be, for
    more of the booklet stands there: the strips of a braced piece close to one another, the parts
    of an assembly less enlarged; and how much they are enlarged."""
    if paper is not book.paper or len(sheets) == 1:
        return scale, sheets
    tried = [(scale, share) for share in CLOSER]
    if book.framework.parts:
        tried = [(enlarged, 1.0) for enlarged in MAP_SCALES if 1.0 <= enlarged < scale]
    for enlarged, share in tried:
        room = (paper.top - paper.bottom) * share / enlarged
        measure = paper.measure / enlarged
        found = joint_map(book.framework, measure, room, book.voice, book.shape.at)
        lower = found[-1].height * enlarged < sheets[-1].height * scale
        if len(found) == len(sheets) and lower:
            scale, sheets = enlarged, found
    return scale, sheets


def _map_sheets(book: Book) -> tuple[Paper, float, tuple[Picture, ...]]:
    """The sheets, the paper they are drawn for and how much they are enlarged on it."""
    tried = []
    for enlarged in MAP_SCALES:
        for paper in (book.paper, landscape(book.paper)):
            scale = enlarged * paper.picture_scale
            room = paper.top - paper.bottom
            sheets = joint_map(
                book.framework, paper.measure / scale, room / scale, book.voice, book.shape.at
            )
            # a strip that is too high for the sheet is drawn all the same
            fits = all(sheet.height * scale <= room + 0.01 for sheet in sheets)
            # type that is too small rather than a map that is cut off
            tried.append(((not fits, enlarged < 1, len(sheets), -enlarged), (paper, scale, sheets)))
    return min(tried, key=lambda option: option[0])[1]
