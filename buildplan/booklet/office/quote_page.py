"""The quote as its customer sees it: what is offered, for how much, and until when."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import LATEX_WORDS, choking_box
from buildplan.booklet.sale.seller import seller_band
from buildplan.business.buying.money import Item, Quote, money_words
from buildplan.business.copies.brand import Branding
from buildplan.business.quoting.quote_words import share_words
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, Shown, Words, heading
from buildplan.document.layout import COLUMN_GAP, Boxed, Columns, Fitting
from buildplan.document.paper import Paper, mm
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Grid
from buildplan.document.text import BODY, LEAD, TITLE, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.language.speaking import say, say_count, say_in, spoken_voice

PICTURE_SHARE = 0.42
PICTURE_HEIGHTS = (230.0, 200.0, 170.0, 140.0, 115.0, 90.0, 60.0)
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
    section = quote_section(book, offer, branding)
    author = "buildplan" if branding is None else branding.name
    return print_document(
        Document([section], book.paper, spoken_voice(), section.title, author, book.facts.name)
    )


def quote_section(book: Book, offer: Offer, branding: Branding | None) -> Section:
    """The page: the seller's band if there is a brand, the offer beside the piece, the price,
    and what the customer must know."""
    title = say("Quote for {piece}", piece=book.facts.name)

    def made(picture_height: float) -> list[Flowable]:
        blocks = [
            Words(plain(title), TITLE, "H1", after=6),
            *_offered(book, offer, picture_height),
            *_price(offer),
            *_terms(offer, book.paper),
        ]
        side = book.paper.left
        band = [] if branding is None else [seller_band(book.paper, branding, spoken_voice())]
        return [*band, Boxed(blocks, mm(4), after=0, line=None, side=side)]

    return Section(title, [Fitting(made, PICTURE_HEIGHTS, mm(10))], bare=True, whole_sheet=True)


def _offered(book: Book, offer: Offer, tall: float) -> list[Flowable]:
    """Whom it is for, and what is offered beside a picture of it, `tall` high."""
    blank = "____________________"
    whom = say("For {customer}", customer=strong(offer.customer) if offer.customer else blank)
    date = say("Date: {blank}", blank=blank)
    shares = (PICTURE_SHARE, 1 - PICTURE_SHARE)
    width = (book.paper.measure - COLUMN_GAP) * PICTURE_SHARE
    picture = finished_picture(
        book.framework,
        book.shape,
        CAMERAS["front"],
        width,
        tall,
        alt=say("{piece}, finished and standing, from the front.", piece=book.facts.name),
    )
    return [
        Columns([[Words(whom, LEAD)], [Words(date, LEAD)]], (0.6, 0.4), after=8),
        Columns([[Shown(picture)], [_what_we_offer(book, offer)]], shares),
    ]


def _what_we_offer(book: Book, offer: Offer) -> Grid:
    facts, units = book.facts, book.units
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
    return Grid(
        ("", say("What we offer")),
        [(strong(name), plain(words)) for name, words in rows],
        (30, 70),
        pad=CLOSE_ROWS,
    )


def _included(quote: Quote) -> str:
    if quote.rates.delivery is None:
        return say("building; delivery and taking away are not included")
    return say("delivery, building in its place, taking down and taking away")


def _price(offer: Offer) -> list[Flowable]:
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


def _terms(offer: Offer, paper: Paper) -> Sequence[Flowable]:
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
        choking_box(paper, spoken_voice()),
        Words(plain(say(LATEX_WORDS)), BODY, after=10),
        Words(
            say(
                "Accepted (name, date, signature): {blank}",
                blank="_" * 50,
            )
        ),
    ]
