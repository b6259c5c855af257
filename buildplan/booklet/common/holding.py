"""What holds a piece where it stands: what to bring for it, and how it is fastened."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.high_work import fastened_high
from buildplan.booklet.common.loads import joints_words, mass_words
from buildplan.design.measures import Units, side_words
from buildplan.document.text import plain, strong
from buildplan.evaluation.ballast import ballast_each_kg, ballast_kg
from buildplan.instructions.coming import coming
from buildplan.instructions.model import Doing
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step
from buildplan.shape.model import Base, Holding


def held_words(book: Book) -> list[str]:
    """On what the piece stands or hangs, a sentence each; none for one that stands by itself."""
    voice = book.voice
    return [
        voice.say("The piece {condition}.", condition=voice.tell(one))
        for one in book.figures.held_by
    ]


def fastening(book: Book) -> list[str]:
    """How a piece that does not stand by itself is fastened to what holds it."""
    voice, holding = book.voice, book.shape.holding
    told = [strong(one) for one in held_words(book)]
    if holding.base is not None:
        told.append(_to_the_base(book, holding.base))
    if holding.pole:
        told.append(_to_the_pole(book))
    if holding.hung or holding.tied_to_wall:
        told.append(
            voice.say(
                "Use two soft ties or more, each to an anchor that somebody licensed has judged for"
                " this load; local codes come first."
            )
        )
    return [*told, *fastened_high(book)]


def while_it_grows(book: Book, step: Step) -> list[Doing]:
    """What is made fast before what stands can fall: a pole before anything is built, a base once
    the lowest course lies; nothing in other steps, or of a piece that is stood up in the end."""
    holding, brings = book.shape.holding, bool(coming(book.context, step))
    if not book.figures.stands or book.framework.parts or not brings:
        return []
    before = [other for other in book.steps[: step.number - 1] if coming(book.context, other)]
    if holding.pole and not before:
        return [Doing(_to_the_pole(book))]
    if holding.base is not None and len(before) == 1:
        return [Doing(_to_the_base(book, holding.base))]
    return []


def _to_the_pole(book: Book) -> str:
    return book.voice.say(
        "Set the pole up first; tie the piece to it low, half way up and at the top."
    )


def _to_the_base(book: Book, base: Base) -> str:
    if base.count == 1:
        return book.voice.say("Tie its foot to the middle of the base before anybody lets go.")
    return book.voice.say("Tie each foot to the middle of its base before anybody lets go.")


def holders(holding: Holding, units: Units, voice: Voice) -> Iterator[str]:
    """What to bring to hold a piece that does not stand by itself."""
    base = holding.base
    if base is not None:
        yield voice.say_count(
            "A base, {width} wide and {depth} deep, of {weight}",
            "{number} bases, {width} wide and {depth} deep, of {weight} each",
            base.count,
            width=voice.tell(side_words(base.width_m, units)),
            depth=voice.tell(side_words(base.depth_m, units)),
            weight=mass_words(base.weight_kg, voice),
        )
    if holding.pole:
        yield voice.say("A pole that stands by itself, as high as the piece")
    if holding.hung:
        yield voice.say("Lines to hang it from above, and anchors that are judged for it")
    if holding.tied_to_wall:
        yield voice.say("Ties to the wall behind it, and anchors that are judged for them")


def to_hold_it_down(book: Book) -> Iterator[str]:
    """What to bring to hold the piece: what it stands on or hangs from, ballast, ties."""
    voice, found = book.voice, book.examination
    yield from (strong(one) for one in holders(book.shape.holding, book.units, voice))
    if found.wind.ballast_at:
        yield plain(
            voice.say(
                "Ballast: {mass}, {each} at each of {joints}",
                mass=mass_words(ballast_kg(found), voice, len(found.wind.ballast_at)),
                each=mass_words(ballast_each_kg(found), voice),
                joints=joints_words(found.wind.ballast_at, voice),
            )
        )
    yield voice.say("Soft ties or webbing, no wire")
