"""What a builder needs: balloons, tools, people, room, and the order to write down."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import ballast_words
from buildplan.booklet.common.swatches import swatch
from buildplan.design.measures import length_words, size_words
from buildplan.document.flow import Grid, draw_column, heading, height_of
from buildplan.document.renderer import (
    BODY,
    HEADING,
    Leaf,
    Press,
    plain,
    strong,
)
from buildplan.evaluation.figures import minutes_words, nominal_words, weight_words
from buildplan.evaluation.materials import Purchase
from buildplan.language.grammar import percent, sentences
from buildplan.language.speaking import mark, say, say_count, whole
from buildplan.sequence.reach import lifters

ORDER_PAD = 7.0  # room to write by hand
TAGS = mark("Paper tags or masking tape, and a marker, to label joints")
TOOLS: Sequence[str] = (
    mark("Electric inflator with a nozzle for air; a hand pump for repairs"),
    mark("The gauges on the gauge page, cut from stiff card"),
    TAGS,
    mark("Blunt scissors for trimming; no pins, no knives near the piece"),
    mark("Safety glasses for everyone; ear protection beside the inflator"),
    mark("A tape measure"),
    mark("Bags for waste latex, tied shut, out of the reach of children"),
)


def needs(book: Book) -> Leaf:
    """What you need: balloons with spares and packs, tools, people, room and time."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        top = press.title(say("What you need"))
        y = press.paragraph(say("Balloons"), paper.left, top, paper.measure, HEADING, "H2") - 4
        letters = book.colour_letters
        head = [
            say("Colour"),
            say("Balloon"),
            say("Size to"),
            say("In the piece"),
            say("Spare"),
            say("To buy"),
        ]
        rows = [head]
        for purchase in facts.purchases:
            buy = whole(purchase.to_buy)
            if purchase.packs is not None and purchase.pack_size is not None:
                buy = say_count(
                    "{number} pack of {size}",
                    "{number} packs of {size}",
                    purchase.packs,
                    size=purchase.pack_size,
                )
            rows.append(
                [
                    strong(", ".join(letters[one.key] for one in purchase.balloons)),
                    plain(_purchase_words(book, purchase)),
                    ", ".join(
                        dict.fromkeys(
                            length_words(one.gauge_m, book.units) for one in purchase.balloons
                        )
                    ),
                    whole(purchase.needed),
                    whole(purchase.spare),
                    buy,
                ]
            )
        rows.append(
            [
                "",
                strong(say("all together")),
                "",
                strong(whole(facts.total)),
                strong(whole(sum(p.spare for p in facts.purchases))),
                "",
            ]
        )
        widths = (62, paper.measure - 62 - 300, 66, 76, 54, 104)
        swatches = {
            i: swatch(purchase.balloon, letters[key], book.patterns[key])
            for i, purchase in enumerate(facts.purchases, start=1)
            if (key := purchase.balloon.key)
        }
        y = press.table(rows, paper.left, y, widths, frozenset({3, 4, 5}), swatches)
        y = press.paragraph(
            sentences(
                say_count(
                    "A lock takes two rounds: {number} lock, {rounds} rounds.",
                    "A lock takes two rounds: {number} locks, {rounds} rounds.",
                    facts.locks,
                    rounds=2 * facts.locks,
                ),
                say(
                    "Spares for bursts are {share}, rounded up.",
                    share=percent(book.design.spare),
                ),
            ),
            paper.left,
            y - 8,
            paper.measure,
            BODY,
        )
        half = (paper.measure - 24) / 2
        right = paper.left + half + 24
        y -= 14
        bottom = press.paragraph(say("Tools"), paper.left, y, half, HEADING, "H2") - 4
        left = press.tick_list([plain(say(tool)) for tool in TOOLS], paper.left, bottom, half)
        below = press.paragraph(say("People, room and time"), right, y, half, HEADING, "H2") - 4
        room = size_words(max(facts.width_m, facts.height_m) + 2.0, book.units)
        below = press.bullets(
            (
                say(
                    "{people} people; {lifters} at least to lift it and stand it up",
                    people=strong(whole(facts.crew)),
                    lifters=lifters(book.shape),
                ),
                say(
                    "A clean, smooth floor, about {room} square: the piece is built lying flat",
                    room=strong(room),
                ),
                say(
                    "About {work} of work in all, {time} for {people} people (estimate, practised "
                    "hands; a first build takes about twice as long)",
                    work=strong(minutes_words(facts.work_minutes)),
                    time=strong(minutes_words(facts.crew_minutes)),
                    people=facts.crew,
                ),
                say("Weight about {weight} (estimate)", weight=strong(weight_words(facts.mass_kg))),
                say("An even room temperature: balloons sized in the cold grow in the warm"),
            ),
            right,
            below,
            half,
        )
        held = say("To hold it down")
        below = press.paragraph(held, right, below - 8, half, HEADING, "H2") - 4
        ballast = say(
            "Ballast, the same on each foot: {ballast}", ballast=plain(ballast_words(book))
        )
        below = press.tick_list((ballast, say("Soft ties or webbing, no wire")), right, below, half)
        _orders(press, book, min(left, below) - 8)

    return Leaf(say("What you need"), draw)


def _purchase_words(book: Book, purchase: Purchase) -> str:
    """A balloon to buy; those who have the design file find it there by its key."""
    told = {"balloon": nominal_words(purchase.balloon, book.units), "colour": purchase.label}
    if book.edition == "sale":
        return say("{balloon}, {colour}", **told)
    keys = ", ".join(one.key for one in purchase.balloons)
    return say("{balloon}, {colour} ({keys})", **told, keys=keys)


def _orders(press: Press, book: Book, top: float) -> None:
    """Where to write down what was ordered, if there is room for it."""
    paper, letters = book.paper, book.colour_letters
    head = (say("Colour"), say("Ordered from, make and its name of the colour"), say("Came on"))
    rows = [
        (strong(", ".join(letters[one.key] for one in purchase.balloons)), "", "")
        for purchase in book.facts.purchases
    ]
    grid = Grid(head, tuple(rows), (62, 330, 104), pad=ORDER_PAD)
    title = heading(say("Your order"))
    if height_of((title, grid), paper.measure) <= top - paper.bottom:
        draw_column(press, (title, grid), paper.left, top, paper.measure)
