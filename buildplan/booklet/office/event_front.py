"""The front page of an event: what, where, for whom, and the day by the clock."""

from __future__ import annotations

import math
from collections.abc import Iterator

from reportlab.platypus import Flowable

from buildplan.booklet.office.event_down import down_words
from buildplan.booklet.office.event_load import carried_words
from buildplan.booklet.office.event_ways import fit_words, sides_words
from buildplan.business.events.day import DayStep, Moment, day_of, five_minutes_before, moment_words
from buildplan.business.events.event_plan import Copy, EventPlan
from buildplan.business.events.loading import Load, ballast_of
from buildplan.design.measures import load_lb
from buildplan.document.blocks import Words, heading
from buildplan.document.tables import Grid
from buildplan.document.text import LEAD, SMALL, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.ballast import water_l
from buildplan.evaluation.figures import minutes_words, weight_words
from buildplan.instructions.times import duration
from buildplan.language.phrases import people_counted
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import RESERVE, WorkPlace

CLOSE_ROWS = 2.5
BLANK = "______________________"
PICTURE_WIDTH, PICTURE_HEIGHT = 62.0, 46.0
# From memory: directives on working time ask for 11 hours of rest in each 24.
LONGEST_MINUTES = 13 * 60
MOST_PICTURES = 8  # more would push the day off the page


def front_blocks(plan: EventPlan, load: Load, voice: Voice) -> list[Flowable]:
    """All of it on a page: the pieces, and when what begins."""
    return [
        Words(_in_short(plan, voice), LEAD, after=4),
        *_where(plan, voice),
        heading(voice.say("The day")),
        Grid(
            (voice.say("At the latest"), voice.say("What")),
            tuple(_moment(plan, load, moment, voice) for moment in day_of(plan)),
            (110, 350),
            pad=CLOSE_ROWS,
            after=4,
        ),
        Words(
            voice.say(
                "Work has {reserve} held back for breaks, bursts and mistakes (estimates, "
                "practised hands; first builds take about twice as long).",
                reserve=voice.percent(RESERVE),
            ),
            SMALL,
            after=4,
        ),
        *(Words(strong(one)) for one in night_words(plan, voice)),
        Words(plain(down_words(plan, voice)), after=10),
        heading(voice.say("Pieces")),
        _pieces(plan, voice),
        Words(
            voice.say(
                "Sizes, weights and ballast are estimates. Each piece is built from its own "
                "booklet."
            ),
            SMALL,
            after=8,
        ),
        Words(plain(ballast_words(plan, voice)), after=6),
        *([Words(strong(fit_words(plan, load, voice)))] if load.vehicles else []),
    ]


def people_words(plan: EventPlan, voice: Voice) -> str:
    """How many people the day takes, said the same on every page."""
    crew = plan.event.crew
    if plan.people <= crew:
        return voice.say_count("{number} person", "{number} people", crew)
    return voice.say_count(
        "{number} person; {lifters} to turn, lift and stand it up",
        "{number} people; {lifters} to turn, lift and stand it up",
        crew,
        lifters=plan.people,
    )


def ballast_words(plan: EventPlan, voice: Voice) -> str:
    """The ballast of all pieces: what it weighs, and what that fills."""
    masses = ballast_of(plan.copies)
    mass = math.fsum(masses)
    told_lb = math.fsum(  # what is told of each piece adds up
        load_lb(held, len(copy.book.examination.wind.ballast_at))
        for copy, held in zip(plan.copies, masses, strict=True)
        if held
    )
    sand = math.fsum(
        held / copy.book.constants["dry_sand"].value
        for copy, held in zip(plan.copies, masses, strict=True)
    )
    return voice.say(
        "Ballast for all pieces, against a draught indoors: {kg} kg ({lb} lb), that is {water} L "
        "of water or {sand} L of dry sand.",
        kg=math.ceil(mass),
        lb=math.ceil(told_lb),
        water=water_l(mass),
        sand=math.ceil(round(sand, 6)),
    )


def _in_short(plan: EventPlan, voice: Voice) -> str:
    total = sum(copy.book.facts.total for copy in plan.copies)
    return voice.say(
        "{pieces} pieces, {balloons} balloons; {people}; open at {time}",
        pieces=strong(voice.whole(len(plan.copies))),
        balloons=strong(voice.whole(total)),
        people=strong(people_words(plan, voice)),
        time=strong(plan.event.opening),
    )


def _where(plan: EventPlan, voice: Voice) -> list[Flowable]:
    """Where it is and who opens, or room to write it."""
    event = plan.event
    lines = (
        voice.say(
            "Place: {place}",
            place=strong(event.place) if event.place else BLANK * 2,
        ),
        voice.say(
            "Opens for us, telephone: {contact}",
            contact=strong(event.contact) if event.contact else BLANK + "____",
        ),
        voice.say("Date: {blank}", blank=BLANK),
    )
    return [Words(line, after=3) for line in lines[:-1]] + [Words(lines[-1], after=10)]


def _pieces(plan: EventPlan, voice: Voice) -> Grid:
    firsts = plan.firsts
    rows = tuple(
        (
            strong(voice.say("{number} x", number=copy.of)),
            f"{_name(copy)}<br/>{plain(_figures(plan, copy, voice))}",
            plain(_travels(copy, voice)),
            voice.whole(copy.people),
            voice.whole(copy.book.facts.total * copy.of),
        )
        for copy in firsts
    )
    total = sum(copy.book.facts.total for copy in plan.copies)
    sums = ("", strong(voice.say("all together")), "", "", strong(voice.whole(total)))
    shown = firsts if len(firsts) <= MOST_PICTURES else ()
    return Grid(
        (
            "",
            voice.say("Piece (width x height x depth)"),
            voice.say("Travels"),
            voice.say("People at once"),
            voice.say("Balloons"),
        ),
        (*rows, sums),
        (100, 190, 84, 62, 60),
        frozenset({3, 4}),
        pad=CLOSE_ROWS,
        after=4,
        pictures={number: _picture(copy, voice) for number, copy in enumerate(shown, start=1)},
    )


def _name(copy: Copy) -> str:
    return strong(copy.book.facts.name)


def _picture(copy: Copy, voice: Voice) -> Picture:
    return finished_picture(
        copy.book.framework,
        copy.book.shape,
        CAMERAS["corner"],
        PICTURE_WIDTH,
        PICTURE_HEIGHT,
        alt=voice.say("{piece}, finished, seen from a corner.", piece=copy.book.facts.name),
    )


def _figures(plan: EventPlan, copy: Copy, voice: Voice) -> str:
    facts, units = copy.book.facts, plan.units
    size = sides_words((facts.width_m, facts.height_m, facts.depth_m), units, voice)
    return voice.say("{size}; {weight}", size=size, weight=weight_words(facts.mass_kg, voice))


def _travels(copy: Copy, voice: Voice) -> str:
    return voice.say("built, whole") if copy.built else voice.say("in bags, built there")


def night_words(plan: EventPlan, voice: Voice) -> Iterator[str]:
    """A caution where the day by the clock is longer than anybody should work."""
    minutes = (plan.opening - day_of(plan)[0].at).total_seconds() / 60
    if minutes > LONGEST_MINUTES:
        yield voice.say(
            "From the first start to the opening it is {time}, too long to work at a stretch: take "
            "more people, or do the work of the workshop on the days before.",
            time=minutes_words(minutes, voice),
        )


def _moment(plan: EventPlan, load: Load, moment: Moment, voice: Voice) -> tuple[str, str]:
    at = moment_words(five_minutes_before(moment.at), plan.opening, voice)
    what = _what(plan, moment, voice)
    if plan.trips > 1 and moment.step is DayStep.LOAD:
        what = voice.say(
            "Trip {trip} of {trips}, load {boxes} boxes: {time} ({pieces})",
            trip=moment.trip,
            trips=plan.trips,
            boxes=len(load.on_trip(moment.trip)),
            time=duration(voice, moment.minutes),
            pieces=voice.listed(carried_words(plan, load, moment.trip, voice)),
        )
    return strong(at), plain(what)


def _what(plan: EventPlan, moment: Moment, voice: Voice) -> str:
    lasts = duration(voice, moment.minutes)
    match moment.step:
        case DayStep.WORKSHOP:
            return voice.say(
                "Start in the workshop: {time} for {people}, {work} of work",
                time=minutes_words(moment.minutes, voice),
                people=people_counted(voice, plan.event.crew),
                work=minutes_words(_work(plan, WorkPlace.WORKSHOP), voice),
            )
        case DayStep.LOAD:
            return voice.say("Load: {time}", time=lasts)
        case DayStep.LEAVE:
            return voice.say("Leave: {time} to the place", time=lasts)
        case DayStep.BACK:
            return voice.say("Drive back for trip {trip}: {time}", trip=moment.trip, time=lasts)
        case DayStep.UNLOAD:
            return voice.say("Arrive; park, measure the doors, carry in: {time}", time=lasts)
        case DayStep.SITE:
            return voice.say(
                "Start on site: {time} for {people}, {work} of work",
                time=minutes_words(moment.minutes, voice),
                people=people_counted(voice, plan.event.crew),
                work=minutes_words(_work(plan, WorkPlace.SITE), voice),
            )
        case _:
            return voice.say("All stands, exits clear, bags of waste tied shut")


def _work(plan: EventPlan, place: WorkPlace) -> float:
    return next(part.work for part in plan.timetable.parts if part.place is place)
