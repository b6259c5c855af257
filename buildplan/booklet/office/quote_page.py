"""The quote as its customer sees it: what is offered, for how much, and until when."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import LATEX_WORDS, choking_box
from buildplan.booklet.sale.cover import BAND, seller_band
from buildplan.business.buying.money import Item, Quote, money_words
from buildplan.business.copies.brand import Branding
from buildplan.business.quoting.quote_words import share_words
from buildplan.design.measures import size_words
from buildplan.document.flow import (
    Beside,
    Block,
    Grid,
    Items,
    Shown,
    Words,
    draw_column,
    heading,
    height_of,
)
from buildplan.document.paper import Paper, mm
from buildplan.document.renderer import BODY, LEAD, TITLE, Leaf, Press, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.language.speaking import say, say_count, say_in

PICTURE_SHARE = 0.42
LEAST_PICTURE, MOST_PICTURE = 90.0, 230.0
CLOSE_ROWS = 2.5
MOST_COLOURS = 8


@dataclass(frozen=True)
class Offer:
    """A quote made to somebody (`customer` is empty when nobody is named), good for so many
    days; None leaves them to be filled in."""

    quote: Quote
    customer: str = ""
    valid_days: int | None = None


def print_quote(book: Book, offer: Offer, branding: Branding | None) -> bytes:
    """The quote as a tagged PDF of one page. The same offer gives the same bytes."""
    title = say("Quote for {piece}", piece=book.facts.name)
    return Press(book.paper, book.facts.name).print(
        [quote_leaf(book, offer, branding)],
        title=title,
        author="buildplan" if branding is None else branding.name,
    )


def quote_leaf(book: Book, offer: Offer, branding: Branding | None) -> Leaf:
    """The page: the seller's band if there is a brand, the offer beside the piece, the price,
    and what the customer must know."""
    title = say("Quote for {piece}", piece=book.facts.name)

    def draw(press: Press) -> None:
        paper = book.paper
        top = paper.height - mm(16)
        if branding is not None:
            seller_band(press, paper, branding)
            top = paper.height - BAND - mm(7)
        top = press.paragraph(plain(title), paper.left, top, paper.measure, TITLE, "H1") - 6
        below = [*_price(offer), *_terms(offer, paper)]
        room = top - paper.margin - height_of(below, paper.measure)
        blocks = [*_offered(book, offer, room), *below]
        draw_column(press, blocks, paper.left, top, paper.measure)

    return Leaf(title, draw)


def _offered(book: Book, offer: Offer, room: float) -> list[Block]:
    """Whom it is for, and what is offered beside a picture of it, `room` high at most."""
    facts, units = book.facts, book.units
    blank = "____________________"
    whom = say("For {customer}", customer=strong(offer.customer) if offer.customer else blank)
    date = say("Date: {blank}", blank=blank)
    width = (book.paper.measure - 20) * PICTURE_SHARE
    tall = min(MOST_PICTURE, max(LEAST_PICTURE, room - 45))
    picture = finished_picture(
        book.framework,
        book.shape,
        CAMERAS["front"],
        width,
        tall,
        patterns=book.patterns,
        alt=say("{piece}, finished and standing, from the front.", piece=facts.name),
    )
    colours = list(dict.fromkeys(purchase.label for purchase in facts.purchases))
    if len(colours) > MOST_COLOURS:
        more = len(colours) - MOST_COLOURS
        colours[MOST_COLOURS:] = [say_count("{number} more", "{number} more", more)]
    size = say(
        "about {width} wide, {height} high, {depth} deep",
        width=size_words(facts.width_m, units),
        height=size_words(facts.height_m, units),
        depth=size_words(facts.depth_m, units),
    )
    balloons = say_count(
        "{number} latex balloon, filled with air",
        "{number} latex balloons, filled with air",
        facts.total,
    )
    rows = (
        (say("Piece"), facts.name),
        (say_in("how large", "Size"), size),
        (say("Balloons"), balloons),
        (say("Colours"), "; ".join(colours)),
        (say("Stands"), say("by itself on the floor, held down with ballast")),
        (say("With it"), _included(offer.quote)),
    )
    table = Grid(
        ("", say("What we offer")),
        tuple((strong(name), plain(words)) for name, words in rows),
        (30, 70),
        pad=CLOSE_ROWS,
    )
    return [
        Beside((Words(whom, LEAD),), (Words(date, LEAD),), 0.6, after=8),
        Beside((Shown(picture),), (table,), PICTURE_SHARE),
    ]


def _included(quote: Quote) -> str:
    if quote.rates.delivery is None:
        return say("building; delivery and taking away are not included")
    return say("delivery, building in its place, taking down and taking away")


def _price(offer: Offer) -> list[Block]:
    """The price as it is paid (before tax, the tax, and all of it), and how long it holds."""
    quote = offer.quote
    days = offer.valid_days
    valid = (
        say("Valid for {blank} days from the date above.", blank="______")
        if days is None
        else say_count(
            "Valid for {number} day from the date above.",
            "Valid for {number} days from the date above.",
            days,
        )
    )
    rows: list[tuple[str, str]] = []
    if quote.rates.tax is not None:
        tax = say("Tax, {share}", share=share_words(quote.rates.tax))
        rows += [
            (say("Price before tax"), money_words(quote.price, quote.currency)),
            (tax, money_words(quote.sum(Item.TAX), quote.currency)),
        ]
    total = say("To pay, tax included") if rows else say("To pay; no tax is added")
    rows.append((strong(total), strong(money_words(quote.total, quote.currency))))
    return [Grid((say("Price"), valid), tuple(rows), (42, 58), frozenset({1}), CLOSE_ROWS)]


def _terms(offer: Offer, paper: Paper) -> Sequence[Block]:
    """What the customer must know, and the place to accept it."""
    return [
        heading(say("Please note")),
        Items(
            (
                say("Ask everybody who will be near the piece about latex allergy."),
                say("Exits, stairs, extinguishers and ways for wheelchairs stay clear of it."),
                say(
                    "Keep it from heat, sun, hot lamps and sharp edges. Nobody leans on it, climbs "
                    "it or moves it; watch children beside it."
                ),
                say(
                    "Outdoors it is taken down when wind, rain or lightning come; the crew decides."
                ),
                say("It is made by hand: size and shade may differ a little from the picture."),
            ),
            gap=1.0,
            after=6,
        ),
        choking_box(paper),
        Words(plain(say(LATEX_WORDS)), BODY, after=10),
        Words(
            say(
                "Accepted (name, date, signature): {blank}",
                blank="_" * 50,
            )
        ),
    ]
