"""The sale edition's own pages: before you start, your colours, the licence."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.common.book import Book
from buildplan.booklet.sale.cover import branding_of, dots
from buildplan.business.copies.serial import SERIAL_LETTERS
from buildplan.business.copies.verifying import NOT_PROVED, PROVES
from buildplan.design.measures import length_words, size_words
from buildplan.document.flow import Block, Grid, Items, Words, heading, leaves_of
from buildplan.document.renderer import (
    BODY,
    HEADING,
    Leaf,
    Press,
    paragraph_height,
    plain,
    strong,
)
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.colouring import colouring_picture
from buildplan.drawing.marks import Mark, Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.figures import minutes_words, nominal_words, weight_words
from buildplan.evaluation.skill import NAMES, skill
from buildplan.language.grammar import sentences
from buildplan.language.speaking import mark, say, say_count, whole
from buildplan.sequence.reach import lifters

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


# --- before you start ----------------------------------------------------------------------


def before_you_start(book: Book) -> Leaf:
    """How hard it is and why, what it takes, and what is in the plan."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        level = skill(book.framework, facts)
        floor = size_words(max(facts.width_m, facts.height_m) + 2, book.units)
        top = press.title(say("Before you start"))
        half = (paper.measure - 24) / 2
        right = paper.left + half + 24
        y = press.paragraph(say("Skill"), paper.left, top, half, HEADING, "H2") - 6
        scale = Picture(*_as_second(dots(level)))
        press.picture(scale, paper.left, y - scale.height)
        y = press.paragraph(
            say(
                "{level} One level is added to the first for each of these:",
                level=strong(
                    say(
                        "Level {level} of {levels}: {name}.",
                        level=level.level,
                        levels=len(NAMES),
                        name=level.name,
                    )
                ),
            ),
            paper.left,
            y - scale.height - 6,
            half,
        )
        reasons = level.reasons or (say("nothing: it is a piece to begin with"),)
        first = press.bullets(reasons, paper.left, y - 4, half, 2)
        y = press.paragraph(say("Hands and time"), right, top, half, HEADING, "H2") - 4
        second = press.bullets(
            (
                say(
                    "{people} people, {lifters} at least to turn, lift and stand it up",
                    people=strong(whole(facts.crew)),
                    lifters=lifters(book.shape),
                ),
                say(
                    "About {time} for practised hands; a first build takes about twice as long",
                    time=strong(minutes_words(facts.crew_minutes)),
                ),
                say("A clean floor of {length} square", length=floor),
                say(
                    "It weighs {weight}; doors it must go through are on the page about placing it",
                    weight=weight_words(facts.mass_kg),
                ),
            ),
            right,
            y,
            half,
            3,
        )
        y = min(first, second) - 8
        done = say("What you will have done")
        y = press.paragraph(done, paper.left, y, paper.measure, HEADING, "H2")
        y = press.bullets(tuple(_done(book)), paper.left, y - 4, paper.measure, 3) - 6
        picture = finished_picture(
            book.framework,
            book.shape,
            CAMERAS["corner"],
            paper.measure,
            y - paper.bottom,
            patterns=book.patterns,
            alt=say("{piece}, finished, seen from a corner.", piece=facts.name),
        )
        press.picture(picture, paper.left, paper.bottom)

    return Leaf(say("Before you start"), draw)


def _as_second(picture: Picture) -> tuple[float, float, tuple[Mark, ...], str]:
    """The same picture with words of its own, for a second place."""
    return (
        picture.width,
        picture.height,
        picture.marks,
        sentences(picture.alt, say("The reasons follow.")),
    )


def _done(book: Book) -> list[str]:
    facts = book.facts
    chains = ", ".join(f"{letter} {whole(count)}" for letter, count in facts.chains.items())
    lines = [
        say(
            "sized {balloons} balloons against the gauges and tied {pairs} pairs",
            balloons=strong(whole(facts.total)),
            pairs=strong(whole(facts.pairs)),
        ),
        say_count(
            "tied {number} long chain ({chains} balloons)",
            "tied {number} long chains ({chains} balloons)",
            len(facts.chains),
            chains=chains,
        ),
    ]
    if facts.braces and not facts.singles:
        lines.append(say("tied in {braces} braces", braces=strong(whole(facts.braces))))
    elif facts.braces:
        lines.append(
            say(
                "tied in {braces} braces and {singles} singles",
                braces=strong(whole(facts.braces)),
                singles=facts.singles,
            )
        )
    if facts.locks:
        lines.append(
            say(
                "set {locks} locks, one at each joint that is held",
                locks=strong(whole(facts.locks)),
            )
        )
    return [*lines, say("counted after every part of the work, and ticked it off")]


# --- colours -------------------------------------------------------------------------------


def your_colours(book: Book) -> Leaf:
    """The piece in outline with a letter for each kind of balloon, and boxes to fill in."""

    def draw(press: Press) -> None:
        paper, letters = book.paper, book.colour_letters
        top = press.title(say("Choose your own colours"))
        y = press.paragraph(
            say(
                "Colour the picture in, then write your choice beside each letter. The same "
                "letters stand on every list of this plan; sizes and counts stay as they are. "
                "Balloons of one letter can take several colours, too: mark where they go."
            ),
            paper.left,
            top,
            paper.measure,
        )
        rows = [
            [
                "",
                say("Balloon"),
                say("Size to"),
                say("Count"),
                say("In this plan"),
                say("Your colour"),
            ]
        ]
        for purchase in book.facts.purchases:
            balloon = purchase.balloon
            rows.append(
                [
                    strong(letters[balloon.key]),
                    plain(
                        say(
                            "{balloon}, {parts}",
                            balloon=nominal_words(balloon, book.units),
                            parts=_part(book, balloon.key),
                        )
                    ),
                    length_words(balloon.gauge_m, book.units),
                    whole(purchase.needed),
                    plain(balloon.label),
                    "<br/><br/>",
                ]
            )
        widths = [paper.measure * share / sum(SWATCH_SHARES) for share in SWATCH_SHARES]
        height = _table_height(rows, widths)
        room = y - 12 - paper.bottom - height - 8
        picture = colouring_picture(
            book.framework,
            book.shape,
            CAMERAS["front"],
            letters,
            paper.measure,
            room,
            alt=say(
                "{piece} in outline, from the front, with the letters {letters} on its balloons, "
                "to be coloured in.",
                piece=book.facts.name,
                letters=", ".join(letters.values()),
            ),
        )
        press.picture(picture, paper.left, y - 8 - room)
        table_top = paper.bottom + height
        press.table(rows, paper.left, table_top, widths, frozenset({3}))
        _boxes(press, rows, widths, table_top, paper.left)

    return Leaf(say("Choose your own colours"), draw)


def _part(book: Book, key: str) -> str:
    """Where balloons of a key go: `long chains`, `braces and singles`, `locks`."""
    framework = book.framework
    links = {link for long in framework.chains for link in long.chain.links}
    braces = {link for brace in framework.braces for link in brace.links}
    parts = (
        (say("long chains"), any(framework.link[link].balloon == key for link in links)),
        (say("braces"), any(framework.link[link].balloon == key for link in braces)),
        (say("singles"), any(framework.link[link].balloon == key for link in framework.singles)),
        (say("locks"), any(lock.balloon == key for lock in framework.locks)),
    )
    return ", ".join(name for name, used in parts if used)


def _row_heights(rows: Sequence[Sequence[str]], widths: Sequence[float]) -> list[float]:
    pad = 4.0
    return [
        max(paragraph_height(cell, BODY, w - 2 * pad) for cell, w in zip(row, widths, strict=True))
        + 2 * pad
        for row in rows
    ]


def _table_height(rows: Sequence[Sequence[str]], widths: Sequence[float]) -> float:
    return sum(_row_heights(rows, widths))


def _boxes(
    press: Press,
    rows: Sequence[Sequence[str]],
    widths: Sequence[float],
    top: float,
    left: float,
) -> None:
    """A box to colour in and a line to write on in the last cell of each row."""
    heights = _row_heights(rows, widths)
    x = left + sum(widths[:-1]) + 6
    y = top - heights[0]
    with press.decoration() as canvas:
        canvas.setStrokeColor("#1A1A1A")
        canvas.setLineWidth(0.9)
        side = min(heights[1:]) - 9
        for height in heights[1:]:
            canvas.rect(x, y - height + 4.5, side * 1.4, side, stroke=1, fill=0)
            canvas.line(x + side * 1.4 + 8, y - height + 6, x + widths[-1] - 12, y - height + 6)
            y -= height


# --- licence -------------------------------------------------------------------------------


def licence(book: Book) -> list[Leaf]:
    """The seller's licence words, what this copy is, and what its serial proves."""
    brand = branding_of(book)
    words = [part.strip() for part in brand.brand.licence.split("\n\n") if part.strip()]
    copy = [
        (say("Plan"), plain(book.facts.name)),
        (say("For"), plain(book.buyer or say("nobody named"))),
        (say("Serial"), strong(book.serial)),
        (say("Seller"), plain(brand.name)),
        (say("Paper"), book.paper.name),
    ]
    if brand.brand.contact:
        copy.insert(4, (say("Contact"), plain(brand.brand.contact)))
    blocks: list[Block] = [
        *(Words(plain(part), after=8) for part in (words or map(say, LICENCE))),
        Grid(
            (say("This copy"), ""), tuple((strong(name), value) for name, value in copy), (20, 80)
        ),
        heading(say("How to check it")),
        Items(
            (
                say(
                    "{command} and the name of the file: it works the serial out again, and "
                    "compares every page with what was printed.",
                    command=strong("buildplan verify"),
                ),
                sentences(
                    say(PROVES),
                    say("With the seller's own key, it also proves that the seller made it."),
                ),
                say(NOT_PROVED),
                say(
                    "Typed by hand, the last of the {count} letters and digits shows whether the "
                    "serial was written down rightly.",
                    count=SERIAL_LETTERS + 1,
                ),
            )
        ),
    ]
    return leaves_of(book.paper, say("Licence"), blocks)
