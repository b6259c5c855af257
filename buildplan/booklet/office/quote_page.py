"""The quote as its customer sees it: what is offered, for how much, and until when."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from reportlab.platypus import Flowable

from buildplan.booklet.common.cautions import LATEX_WORDS, choking_box
from buildplan.booklet.sale.seller import seller_band
from buildplan.business.buying.money import Quote, QuoteItem, money_words
from buildplan.business.buying.shopping import pieces_words
from buildplan.business.copies.brand import Branding
from buildplan.business.quoting.offer import Offer, PricedPiece, QuotedPiece
from buildplan.business.quoting.quote_words import share_words
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, Shown, Words, heading
from buildplan.document.blocks import title as title_block
from buildplan.document.layout import COLUMN_GAP, Columns
from buildplan.document.margins import Margins
from buildplan.document.paper import Paper, mm
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.sizing import Fitting
from buildplan.document.tables import Grid
from buildplan.document.text import BODY, LEAD, TITLE, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.typeset.font_files import with_fonts
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice
from buildplan.shape.holding import conditions

PICTURE_SHARE = 0.42
PICTURE_HEIGHTS = (230.0, 200.0, 170.0, 140.0, 115.0, 90.0, 60.0)
CLOSE_ROWS = 2.5
MOST_COLOURS = 8


def print_quote(offer: Offer, paper: Paper, branding: Branding | None, voice: Voice) -> bytes:
    """The offer as a tagged PDF: one page for one piece; for several a page of all of them with
    their prices, and one each with its picture. The same offer gives the same bytes."""
    with with_fonts(() if branding is None else branding.fonts):
        sections = [quote_section(offer, paper, branding, voice)]
        if len(offer.lines) > 1:
            sections += [_piece_section(line, offer, paper, voice) for line in offer.lines]
        author = "buildplan" if branding is None else branding.name
        return print_document(
            Document(sections, paper, voice, sections[0].title, author, _about(offer, voice))
        )


def _about(offer: Offer, voice: Voice) -> str:
    """What is offered, in a few words: `Reading Star, 2 x Picture Frame`."""
    pieces = [(line.piece.made.facts.name, line.piece.count) for line in offer.lines]
    return pieces_words(pieces, voice)


def quote_section(offer: Offer, paper: Paper, branding: Branding | None, voice: Voice) -> Section:
    """The first page: the seller's band if there is a brand, what is offered, the price, and what
    the customer must know. What it has no room for goes on on the next."""
    one = len(offer.lines) == 1
    about = offer.job or (voice.say("all pieces") if not one else _about(offer, voice))
    title = voice.say("Quote for {piece}", piece=about)
    told = voice.say("Quote for {piece}", piece=strong(about))

    def made(picture_height: float) -> list[Flowable]:
        offered = (
            _shown(offer.lines[0].piece, offer.quote, paper, picture_height, voice)
            if one
            else [_all_pieces(offer, voice)]
        )
        blocks = [
            Words(told, TITLE, "H1", after=6),
            *_who(offer, voice),
            *offered,
            *_price(offer, voice),
            *_terms(paper, voice),
        ]
        if branding is None:
            return [Margins(blocks, paper.left, paper.margin, paper.margin)]
        return [
            seller_band(paper, branding, voice),
            Margins(blocks, paper.left, mm(4), mm(14)),
        ]

    return Section(title, [Fitting(made, PICTURE_HEIGHTS)], bare=True, whole_sheet=True)


def _piece_section(line: PricedPiece, offer: Offer, paper: Paper, voice: Voice) -> Section:
    """A page of one of several pieces: its picture, and what it is."""
    title = pieces_words([(line.piece.made.facts.name, line.piece.count)], voice)
    tall = 0.45 * (paper.top - paper.bottom)
    picture = _picture(line.piece, paper.measure, tall, voice)
    blocks = [
        title_block(title),
        Shown(picture),
        _what_we_offer(line.piece, offer.quote, voice, amount=line.amount),
    ]
    return Section(title, blocks)


def _who(offer: Offer, voice: Voice) -> list[Flowable]:
    """Whom it is for and from, its number and its date."""
    blank = "____________________"
    customer = offer.customer
    to = [
        Words(
            voice.say(
                "For {customer}",
                customer=strong(customer.name) if customer.name else blank,
            ),
            LEAD,
            after=1,
        ),
        *(Words(plain(line), BODY, after=0) for line in customer.address),
    ]
    date = voice.say("Date: {blank}", blank=plain(offer.date) if offer.date else blank)
    about = [Words(date, LEAD, after=1)]
    if offer.number:
        about.append(
            Words(voice.say("Number: {number}", number=plain(offer.number)), BODY, after=0)
        )
    about += [Words(plain(line), BODY, after=0) for line in offer.seller.address]
    return [Columns([to, about], (0.6, 0.4), after=8)]


def _picture(piece: QuotedPiece, width: float, tall: float, voice: Voice) -> Picture:
    made = piece.made
    return finished_picture(
        made.framework,
        made.shape,
        CAMERAS["front"],
        width,
        tall,
        alt=voice.say("{piece}, finished and standing, from the front.", piece=made.facts.name),
    )


def _shown(
    piece: QuotedPiece, quote: Quote, paper: Paper, tall: float, voice: Voice
) -> list[Flowable]:
    """What is offered beside a picture of it, `tall` high."""
    shares = (PICTURE_SHARE, 1 - PICTURE_SHARE)
    width = (paper.measure - COLUMN_GAP) * PICTURE_SHARE
    picture = _picture(piece, width, tall, voice)
    return [Columns([[Shown(picture)], [_what_we_offer(piece, quote, voice)]], shares)]


def _all_pieces(offer: Offer, voice: Voice) -> Grid:
    """Every piece with how many of it there are and its price before tax."""
    currency = offer.quote.currency
    rows = [
        (
            plain(line.piece.made.facts.name),
            _size(line.piece, voice),
            voice.whole(line.piece.count),
            money_words(line.amount, currency, voice),
        )
        for line in offer.lines
    ]
    head = (
        voice.say("Piece"),
        voice.say_in("how large", "Size"),
        voice.say("How many"),
        voice.say("Before tax") if offer.quote.rates.tax is not None else voice.say("Price"),
    )
    return Grid(head, rows, (32, 36, 14, 18), frozenset({2, 3}), CLOSE_ROWS)


def _size(piece: QuotedPiece, voice: Voice) -> str:
    facts, units = piece.made.facts, piece.made.units
    return voice.say(
        "about {width} wide, {height} high, {depth} deep",
        width=size_words(facts.width_m, units),
        height=size_words(facts.height_m, units),
        depth=size_words(facts.depth_m, units),
    )


def _what_we_offer(
    piece: QuotedPiece, quote: Quote, voice: Voice, amount: Decimal | None = None
) -> Grid:
    facts = piece.made.facts
    colours = list(dict.fromkeys(voice.tell(purchase.label) for purchase in facts.purchases))
    if len(colours) > MOST_COLOURS:
        more = len(colours) - MOST_COLOURS
        colours[MOST_COLOURS:] = [voice.say_count("{number} more", "{number} more", more)]
    balloons = voice.say_count(
        "{number} latex balloon, filled with air",
        "{number} latex balloons, filled with air",
        facts.total,
    )
    rows = [
        (voice.say("Piece"), plain(facts.name)),
        (voice.say_in("how large", "Size"), plain(_size(piece, voice))),
        (voice.say("Balloons"), plain(balloons)),
        (voice.say("Colours"), clauses(voice, [plain(one) for one in colours])),
        (voice.say("Stands"), plain(_stands(piece, voice))),
        (voice.say("With it"), plain(_included(quote, voice))),
    ]
    if amount is not None:
        told = voice.say("Before tax") if quote.rates.tax is not None else voice.say("Price")
        rows.append((told, plain(money_words(amount, quote.currency, voice))))
    return Grid(
        ("", voice.say("What we offer")),
        [(strong(name), words) for name, words in rows],
        (30, 70),
        pad=CLOSE_ROWS,
    )


def _stands(piece: QuotedPiece, voice: Voice) -> str:
    facts = piece.made.facts
    if held := [voice.tell(one) for one in conditions(facts.holding, facts.units)]:
        return voice.listed(held)
    return voice.say("by itself on the floor, held down with ballast")


def _included(quote: Quote, voice: Voice) -> str:
    if quote.rates.delivery is None:
        return voice.say("building; delivery and taking away are not included")
    return voice.say("delivery, building in its place, taking down and taking away")


def _price(offer: Offer, voice: Voice) -> list[Flowable]:
    """The price as it is paid (before tax, the tax, all of it, and what is paid at once), and how
    long it holds."""
    quote = offer.quote
    days = offer.valid_days
    valid = (
        voice.say("Valid for {blank} days from the date above.", blank="______")
        if days is None
        else voice.say_count(
            "Valid for {number} day from the date above.",
            "Valid for {number} days from the date above.",
            days,
        )
    )
    rows: list[tuple[str, str]] = []
    if quote.rates.tax is not None:
        tax = voice.say("Tax, {share}", share=share_words(quote.rates.tax, voice))
        rows += [
            (voice.say("Price before tax"), money_words(quote.price, quote.currency, voice)),
            (tax, money_words(quote.sum(QuoteItem.TAX), quote.currency, voice)),
        ]
    currency = quote.currency
    total = voice.say("To pay, tax included") if rows else voice.say("To pay; no tax is added")
    rows.append((strong(total), strong(money_words(quote.total, currency, voice))))
    if offer.deposit is not None:
        at_once = voice.say(
            "Of it on accepting, {share}", share=share_words(offer.deposit_share, voice)
        )
        rows.append((at_once, money_words(offer.deposit, currency, voice)))
        rows.append(
            (voice.say("The rest, when it stands"), money_words(offer.rest, currency, voice))
        )
    return [Grid((voice.say("Price"), valid), tuple(rows), (42, 58), frozenset({1}), CLOSE_ROWS)]


def _terms(paper: Paper, voice: Voice) -> Sequence[Flowable]:
    """What the customer must know, and the place to accept it."""
    return [
        heading(voice.say("Please note")),
        Items(
            (
                voice.say("Ask everybody who will be near the piece about latex allergy."),
                voice.say(
                    "Exits, stairs, extinguishers and ways for wheelchairs stay clear of it."
                ),
                voice.say(
                    "Keep it from heat, sun, hot lamps and sharp edges. Nobody leans on it, climbs "
                    "it or moves it; watch children beside it."
                ),
                voice.say(
                    "Outdoors it is taken down when wind, rain or lightning come; the crew decides."
                ),
                voice.say(
                    "It is made by hand: size and shade may differ a little from the picture."
                ),
            ),
            gap=1.0,
            after=6,
        ),
        choking_box(paper, voice),
        Words(plain(voice.say(LATEX_WORDS)), BODY, after=10),
        Words(
            voice.say(
                "Accepted (name, date, signature): {blank}",
                blank="_" * 50,
            )
        ),
    ]
