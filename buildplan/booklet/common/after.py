"""The last pages: holding the piece down, carrying it, taking it down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import STANDING, tags_beside, where_bags_lie
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.going_down import going_down
from buildplan.booklet.common.holding import fastening
from buildplan.booklet.common.loads import joints_words, mass_words
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, Shown, heading
from buildplan.document.layout import beside, is_wide
from buildplan.document.printing import Section
from buildplan.document.spare_room import InSpareRoom
from buildplan.document.text import strong
from buildplan.document.write_on import WriteLines
from buildplan.drawing.ballast_plan import ballast_plan
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.techniques.ballast import tie_ballast
from buildplan.evaluation.ballast import ballast_each_kg
from buildplan.evaluation.figures import weight_words, wind_words
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.shape.ballasting import bag_places
from buildplan.shape.carrying import parts

VIEW_HEIGHT, SIDE_HEIGHT = 160.0, 110.0


def standing(book: Book) -> Section:
    """What holds it down, and through which doors it goes."""
    voice = book.voice
    stands = book.figures.stands
    plan = _plan_of_bags(book)
    first = [heading(voice.say("Hold it down")), Items(_holding_down(book)), *plan]
    second = [
        # what stands as it was built has been shown so with its last step
        *([] if stands or plan else [_view(book, "corner", VIEW_HEIGHT)]),
        Shown(tied) if (tied := ballast_tied(book)) else _view(book, "side", SIDE_HEIGHT),
        heading(voice.say("Carry it")),
        Items(carrying(book)),
    ]
    title = voice.say(STANDING)
    return Section(title, beside(book.paper, first, second), titled=True, runs_on=True)


def _view(book: Book, name: str, height: float) -> Shown:
    """A view of the standing piece."""
    voice, measure = book.voice, book.paper.measure
    width = (measure - 20) / 2 if is_wide(book.paper) else measure
    alt = (
        voice.say("{piece} standing, seen from a corner.", piece=book.facts.name)
        if name == "corner"
        else voice.say("{piece} standing, seen from the side.", piece=book.facts.name)
    )
    picture = finished_picture(book.framework, book.shape, CAMERAS[name], width, height, alt=alt)
    return Shown(picture)


def _holding_down(book: Book) -> list[str]:
    voice, facts = book.voice, book.facts
    lean = voice.say("{angle} degrees", angle=voice.decimal(facts.tip_angle_deg, 1))
    gust = wind_words(book.examination.wind.tips_at.value, book.units, voice)
    if book.shape.holding.fixed:
        weight = strong(weight_words(facts.mass_kg, voice))
        return [*fastening(book), voice.say("It weighs about {weight} (estimate).", weight=weight)]
    ballasted = book.examination.wind.ballast_at
    weighs = (
        mark(
            "It weighs about {weight} and goes over when it leans {angle} (estimates): add ballast "
            "indoors too."
        )
        if ballasted
        else mark("It weighs about {weight} and goes over when it leans {angle} (estimates).")
    )
    ballast = voice.say(
        "Ballast: sandbags or cans of water on the floor, {each} at each of {joints}, tied as"
        " drawn.",
        joints=strong(joints_words(ballasted, voice)),
        each=strong(mass_words(ballast_each_kg(book.examination), voice)),
    )
    return [
        *fastening(book),
        voice.say(weighs, weight=strong(weight_words(facts.mass_kg, voice)), angle=strong(lean)),
        *([sentences(ballast, where_bags_lie(book))] if ballasted else []),
        voice.say(_tips(book), gust=strong(gust)),
    ]


def ballast_tied(book: Book) -> Picture | None:
    """How ballast is tied to its first joint, of a piece that takes any."""
    at = book.examination.wind.ballast_at
    if book.shape.holding.fixed or not at:
        return None
    return tie_ballast(book.framework, at[0], book.voice)


def _plan_of_bags(book: Book) -> list[Shown]:
    """Where each bag of ballast lies, from above, of a piece that takes any."""
    at = bag_places(book.framework, book.shape)
    if not at:
        return []
    voice, measure = book.voice, book.paper.measure
    width = (measure - 20) / 2 if is_wide(book.paper) else measure
    alt = voice.say(
        "{piece} from straight above, its front below: a bag of ballast beside each of {joints},"
        " tied to it.",
        piece=book.facts.name,
        joints=joints_words(tuple(at), voice),
    )
    tags = tags_beside(book, at)
    if tags:
        beside = [
            voice.say("{joint} is next to {tag}", joint=joint, tag=tag)
            for joint, tag in tags.items()
        ]
        alt = f"{alt} {voice.say('Pale: the nearest tags; {beside}.', beside=voice.listed(beside))}"
    words = voice.say("From above, front below")
    plan = ballast_plan(book.framework, book.shape, at, width, words, alt, tags)
    return [Shown(plan, after=4.0)]


def _tips(book: Book) -> str:
    """What a gust does to a piece that nothing fixed holds."""
    if book.shape.holding.base is not None:
        return mark(
            "On its base, a gust of {gust} tips it (estimate): tie it to something as well where "
            "there is more than a draught, and keep it indoors in more than a light breeze."
        )
    return mark(
        "With nothing to hold it, a gust of {gust} tips it (estimate): tie it to something "
        "as well in a draught, and keep it indoors."
    )


def carrying(book: Book) -> list[str]:
    """How large the piece is at a door, and the longest of its parts."""
    voice, facts = book.voice, book.facts
    return [
        voice.say(
            "Upright it is {height} high, {width} wide and {depth} deep. Measure each "
            "door, lift and vehicle before you build.",
            height=strong(voice.tell(size_words(facts.height_m, book.units))),
            width=strong(voice.tell(size_words(facts.width_m, book.units))),
            depth=strong(voice.tell(size_words(facts.depth_m, book.units))),
        ),
        *_carried_apart(book),
    ]


def _carried_apart(book: Book) -> Iterator[str]:
    """How large the longest of its parts is, which go through a door one by one."""
    voice = book.voice
    if not book.framework.parts:
        return
    sizes = {
        part.name: [part.extent_m(axis) for axis in np.eye(3)]
        for part in parts(book.framework, book.shape)
    }
    longest = max(sizes, key=lambda name: max(sizes[name]))
    width, height, depth = (
        strong(voice.tell(size_words(length_m, book.units))) for length_m in sizes[longest]
    )
    yield voice.say(
        "Its parts go through a door one by one, tied together where it will stand: the longest,"
        " {part}, is {height} high, {width} wide and {depth} deep.",
        part=longest,
        height=height,
        width=width,
        depth=depth,
    )


def taking_down(book: Book, last: Sequence[Flowable] = ()) -> Section:
    """While it stands, taking down, waste; and what comes `last`."""
    voice = book.voice
    blocks = [
        heading(voice.say("While it stands")),
        Items(_while_it_stands(book)),
        heading(voice.say("Take it down")),
        Items(_down(book), ticked=True, gap=6.0),
        *last,
    ]
    return Section(voice.say("Afterwards"), blocks, titled=True, runs_on=True)


def notes(book: Book) -> Flowable:
    """A place for notes, down to the foot of the page, where one has room for it."""
    return InSpareRoom([heading(book.voice.say("Notes")), WriteLines(most=16)])


def _while_it_stands(book: Book) -> list[str]:
    voice = book.voice
    return [
        voice.say(
            "Keep the spares and a hand pump near. For one that burst, tie a new one of its gauge "
            "to its two joints."
        ),
        voice.say("Look it over each morning: locks, feet, ballast, exits."),
    ]


def _down(book: Book) -> list[str]:
    voice = book.voice
    return [
        *going_down(book),
        voice.say("Tie the bags shut and keep them from children and animals"),
        voice.say("Let no balloon go outdoors; latex waste goes where local rules say"),
    ]
