"""The sale edition's own pages: before you start, your colours, the licence."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.manner import people_words
from buildplan.booklet.sale.copy_words import LICENCE_BUYER, LICENCE_SERIAL
from buildplan.booklet.sale.cover import dots
from buildplan.booklet.sale.seller import branding_of
from buildplan.business.copies.serial import SERIAL_LETTERS
from buildplan.business.copies.verified_words import NOT_PROVED
from buildplan.design.measures import gauged_words, size_words
from buildplan.document.blanks import LeftFree
from buildplan.document.blocks import Items, Shown, Words, heading, paragraph_of_own, together
from buildplan.document.layout import Filled, beside
from buildplan.document.printing import Section
from buildplan.document.tables import Cell, Grid
from buildplan.document.text import BODY, STRONG, plain, strong
from buildplan.document.write_on import WriteBox
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.colouring import colouring_picture
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import minutes_words, weight_words
from buildplan.evaluation.skill import NAMES, skill
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences

# What the licence page says when the seller says nothing.
LICENCE = (
    mark(
        "This plan is licensed to the person or business that it is marked for. They may build "
        "the piece as often as they like, for themselves and for their clients."
    ),
    mark(
        "The plan itself may not be copied for others, published or sold on. Print as many copies "
        "as your own crew needs, and keep them with your crew."
    ),
    mark(
        "Whoever builds from it is responsible for the place, for the people there and for "
        "following local codes. Sizes, times and weights are estimates."
    ),
)
SWATCH_SHARES = (8, 42, 21, 20, 45, 52)
LEAST_COLOURED = 100.0  # points high


# --- before you start ----------------------------------------------------------------------


def before_you_start(book: Book) -> Section:
    """How hard it is and why, what it takes, and what is in the plan."""
    voice, facts = book.voice, book.facts
    level = skill(book.framework, facts)
    name = voice.say(
        "Level {level} of {levels}: {name}.",
        level=level.level,
        levels=len(NAMES),
        name=level.name,
    )
    scale = dots(level, voice)
    reasons = tuple(voice.tell(reason) for reason in level.reasons) or (
        voice.say("nothing: it is a piece to begin with"),
    )
    words = voice.say(
        "{level} One level is added to the first for each of these:", level=strong(name)
    )
    first: list[Flowable] = [
        heading(voice.say("Skill")),
        Shown(replace(scale, alt=f"{scale.alt} {voice.say('The reasons follow.')}")),
        Words(words),
        Items(reasons, gap=2.0),
    ]
    second = [heading(voice.say("Hands and time")), Items(_hands(book), gap=3.0)]
    above = [
        *beside(book.paper, first, second),
        heading(voice.say("What you will have done")),
        Items(_done(book), gap=3.0),
    ]
    page = Filled(above, partial(_corner_view, book))
    return Section(voice.say("Before you start"), [page], titled=True)


def _corner_view(book: Book, width: float, height: float) -> Picture:
    return finished_picture(
        book.framework,
        book.shape,
        CAMERAS["corner"],
        width,
        height,
        patterns=book.patterns,
        alt=book.voice.say("{piece}, finished, seen from a corner.", piece=book.facts.name),
    )


def _hands(book: Book) -> list[str]:
    voice, facts = book.voice, book.facts
    floor = voice.tell(size_words(max(facts.width_m, facts.height_m) + 2, book.units))
    return [
        strong(people_words(book)),
        voice.say(
            "About {time} for practised hands; a first build takes about twice as long",
            time=strong(minutes_words(facts.crew_minutes, voice)),
        ),
        voice.say("A clean floor of {length} square", length=floor),
        voice.say(
            "It weighs {weight}; doors it must go through are on the page about placing it",
            weight=weight_words(facts.mass_kg, voice),
        ),
    ]


def _done(book: Book) -> list[str]:
    voice = book.voice
    facts = book.facts
    long = {letter: count for letter, count in facts.chains.items() if count > 1}
    chains = ", ".join(f"{letter} {voice.whole(count)}" for letter, count in long.items())
    lines = [
        voice.say(
            "sized {balloons} balloons against the gauges and tied {pairs} pairs",
            balloons=strong(voice.whole(facts.total)),
            pairs=strong(voice.whole(facts.pairs)),
        ),
        voice.say_count(
            "tied {number} long chain ({chains} balloons)",
            "tied {number} long chains ({chains} balloons)",
            len(long),
            chains=chains,
        ),
    ]
    if facts.braces and not facts.singles:
        lines.append(voice.say("tied in {braces} braces", braces=strong(voice.whole(facts.braces))))
    elif facts.braces:
        lines.append(
            voice.say(
                "tied in {braces} braces and {singles} singles",
                braces=strong(voice.whole(facts.braces)),
                singles=facts.singles,
            )
        )
    if facts.locks:
        lines.append(
            voice.say(
                "set {locks} locks, one at each joint that is held",
                locks=strong(voice.whole(facts.locks)),
            )
        )
    return [*lines, voice.say("counted after every part of the work, and ticked it off")]


# --- colours -------------------------------------------------------------------------------


def your_colours(book: Book) -> Section:
    """The piece in outline with a letter for each kind of balloon, and boxes to fill in."""
    voice = book.voice
    words = voice.say(
        "Colour the picture in, then write your choice beside each letter. The same "
        "letters stand on every list of this plan; sizes and counts stay as they are. "
        "Balloons of one letter can take several colours, too: mark where they go."
    )
    page = Filled([Words(words)], partial(_colouring, book), [_choices(book)], least=LEAST_COLOURED)
    return Section(voice.say("Choose your own colours"), [page], titled=True)


def _colouring(book: Book, width: float, height: float) -> Picture:
    letters = book.colour_letters
    return colouring_picture(
        book.framework,
        book.shape,
        CAMERAS["front"],
        letters,
        width,
        height,
        alt=book.voice.say(
            "{piece} in outline, from the front, with the letters {letters} on its balloons, "
            "to be coloured in.",
            piece=book.facts.name,
            letters=", ".join(letters.values()),
        ),
    )


def _choices(book: Book) -> Grid:
    """Each kind of balloon, with a box to colour in and a line to write on."""
    voice, letters = book.voice, book.colour_letters
    head = (
        "",
        voice.say("Balloon"),
        voice.say("Size to"),
        voice.say("Count"),
        voice.say("In this plan"),
        voice.say("Your colour"),
    )
    rows = []
    for purchase in book.facts.purchases:
        balloon = purchase.balloon
        named = voice.say(
            "{balloon}, {parts}",
            balloon=balloon_words.sized(balloon, book.units),
            parts=_part(book, balloon.key),
        )
        rows.append(
            (
                strong(letters[balloon.key]),
                plain(named),
                voice.tell(gauged_words(balloon.gauge_m, book.units)),
                voice.whole(purchase.needed),
                plain(balloon.label),
                WriteBox(),
            )
        )
    return Grid(head, rows, SWATCH_SHARES, frozenset({3}))


def _part(book: Book, key: str) -> str:
    """Where balloons of a key go: `long chains`, `braces and singles`, `locks`."""
    voice = book.voice
    framework = book.framework
    links = {link for long in framework.chains for link in long.chain.links}
    braces = {link for brace in framework.braces for link in brace.links}
    parts = (
        (voice.say("long chains"), any(framework.link[link].balloon == key for link in links)),
        (voice.say("braces"), any(framework.link[link].balloon == key for link in braces)),
        (
            voice.say("singles"),
            any(framework.link[link].balloon == key for link in framework.singles),
        ),
        (voice.say("locks"), any(lock.balloon == key for lock in framework.locks)),
    )
    return ", ".join(name for name, used in parts if used)


# --- licence -------------------------------------------------------------------------------


def licence(book: Book) -> Section:
    """The seller's licence words, what this copy is, and what its serial proves."""
    voice = book.voice
    brand = branding_of(book)
    words = [part.strip() for part in brand.brand.licence.split("\n\n") if part.strip()]
    copy: list[tuple[str, Cell]] = [
        (voice.say("Plan"), plain(book.facts.name)),
        (voice.say("For"), LeftFree(LICENCE_BUYER, BODY)),
        (voice.say("Serial"), LeftFree(LICENCE_SERIAL, STRONG)),
        (voice.say("Seller"), plain(brand.name)),
        (voice.say("Paper"), book.paper.name),
    ]
    if brand.brand.contact:
        copy.insert(4, (voice.say("Contact"), plain(brand.brand.contact)))
    blocks: list[Flowable] = [
        *(paragraph_of_own(part, after=8) for part in (words or map(voice.say, LICENCE))),
        Grid(
            (voice.say("This copy"), ""),
            tuple((strong(name), value) for name, value in copy),
            (20, 80),
        ),
        heading(voice.say("How to check it")),
        Items(
            (
                voice.say(
                    "{command} and the name of the file: it works the serial out again, and "
                    "compares every page with what was printed.",
                    command=strong("buildplan verify"),
                ),
                sentences(
                    voice.say(
                        "It finds what was changed by accident; anybody with buildplan can change "
                        "a copy that has no seller's key, and seal it anew."
                    ),
                    voice.say(
                        "With the seller's own key it proves that the seller made it, and that "
                        "nothing was changed since."
                    ),
                ),
                voice.say(NOT_PROVED),
                voice.say(
                    "Typed by hand, the last of the {count} letters and digits shows whether the "
                    "serial was written down rightly.",
                    count=SERIAL_LETTERS + 1,
                ),
            )
        ),
    ]
    return Section(voice.say("Licence"), [together(*blocks)], titled=True, runs_on=True)
