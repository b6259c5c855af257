"""The sale edition's cover: the seller's band, a large picture, what the piece asks for."""

from __future__ import annotations

from reportlab.lib.styles import ParagraphStyle

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import CHOKING_HAZARD
from buildplan.business.copies.brand import Branding
from buildplan.design.measures import size_words
from buildplan.design.model import Brand
from buildplan.document.paper import Paper, mm
from buildplan.document.renderer import (
    BODY,
    DISPLAY,
    HEADING,
    LEAD,
    SMALL,
    Leaf,
    Press,
    paragraph_height,
    plain,
    strong,
)
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.colours import mix
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Circle, Ink, Mark, Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.figures import minutes_words
from buildplan.evaluation.skill import NAMES, Skill, skill
from buildplan.language.speaking import say, say_in, whole

BAND = mm(34)
BAND_PAD = mm(8)
LOGO_WIDTH = mm(80)
FOOT_ROOM = mm(58)
TINT_OF_BRAND = 0.9
PLAIN_BRAND = Branding(Brand.model_validate({"name": "buildplan"}))


def branding_of(book: Book) -> Branding:
    return book.branding or PLAIN_BRAND


def sale_cover(book: Book) -> Leaf:
    """The cover: the seller's band and logo, the name, a large picture, what it asks for."""

    def draw(press: Press) -> None:
        paper, facts, brand = book.paper, book.facts, branding_of(book)
        seller_band(press, paper, brand)
        top = paper.height - BAND - mm(9)
        title = ParagraphStyle("cover", parent=DISPLAY, textColor=_readable(brand))
        top = press.paragraph(plain(facts.name), paper.left, top, paper.measure, title, "H1")
        kind = say("A freestanding piece of air-filled link balloons")
        top = press.paragraph(kind, paper.left, top - 3, paper.measure, LEAD) - mm(4)
        ground = FOOT_ROOM
        tint = mix(brand.brand.colour, "#FFFFFF", TINT_OF_BRAND)
        press.tint(0, ground, paper.width, top - ground, tint)
        with press.decoration() as canvas:
            canvas.setFillColor(brand.brand.accent)
            canvas.rect(0, ground - 3, paper.width, 3, stroke=0, fill=1)
        picture = finished_picture(
            book.framework,
            book.shape,
            CAMERAS["front"],
            paper.measure,
            top - ground - mm(8),
            patterns=book.patterns,
            alt=say(
                "Cover picture: {piece}, finished and standing, seen from the front.",
                piece=facts.name,
            ),
        )
        press.picture(picture, paper.left, ground + mm(4))
        _figures(press, book, ground - mm(6))
        _cover_foot(press, book)

    return Leaf(say("Cover"), draw)


def _readable(brand: Branding) -> str:
    """The brand's colour for type on white, where it is dark enough for it; else ink."""
    return brand.brand.colour if brand.on_colour == "#FFFFFF" else "#1A1A1A"


def seller_band(press: Press, paper: Paper, brand: Branding) -> None:
    """The seller's colour across the top of the sheet, with logo, name and contact."""
    low = paper.height - BAND
    press.tint(0, low, paper.width, BAND, brand.brand.colour)
    with press.decoration() as canvas:
        canvas.setFillColor(brand.brand.accent)
        canvas.rect(0, low - 3, paper.width, 3, stroke=0, fill=1)
    middle = paper.height - BAND / 2
    if brand.logo is not None:
        tall = BAND - 2 * BAND_PAD
        aspect = brand.logo.aspect
        wide = min(LOGO_WIDTH, tall * aspect)
        # a logo may be dark itself: it stands on white
        plate = (paper.left - 6, middle - wide / aspect / 2 - 6, wide + 12, wide / aspect + 12)
        with press.decoration() as canvas:
            canvas.setFillColor("#FFFFFF")
            canvas.roundRect(*plate, 4, stroke=0, fill=1)
        brand.logo.draw(
            press,
            paper.left,
            middle + wide / aspect / 2,
            LOGO_WIDTH,
            tall,
            say("Logo of {seller}", seller=brand.name),
        )
        x = paper.left + wide + 24
    else:
        x = paper.left
    width = paper.right - x
    name = ParagraphStyle(
        "seller", parent=HEADING, fontSize=17, leading=22, textColor=brand.on_colour
    )
    reach = ParagraphStyle("reach", parent=BODY, textColor=brand.on_colour)
    seller, contact = brand.name, brand.brand.contact
    if brand is PLAIN_BRAND:
        seller, contact = say("Build plan"), say("step by step, with counts to check")
    high = paragraph_height(plain(seller), name, width)
    low_part = paragraph_height(plain(contact), reach, width) if contact else 0.0
    y = middle + (high + low_part) / 2
    y = press.paragraph(plain(seller), x, y, width, name)
    if contact:
        press.paragraph(plain(contact), x, y, width, reach)


def _figures(press: Press, book: Book, top: float) -> None:
    paper, facts = book.paper, book.facts
    figures = (
        (say("balloons"), whole(facts.total)),
        (say_in("below a figure", "high"), size_words(facts.height_m, book.units)),
        (say_in("below a figure", "wide"), size_words(facts.width_m, book.units)),
        (say("people"), whole(facts.crew)),
        (say_in("below a figure", "work"), minutes_words(facts.crew_minutes)),
    )
    level = skill(book.framework, facts)
    words = say("skill: {level}", level=level.name)
    scale = dots(level)
    # each as wide as its words, and the rest of the line shared out between them
    wide = [
        max(text_width(figure, LEAD.fontSize, bold=True), text_width(name, SMALL.fontSize)) + 1
        for name, figure in figures
    ]
    last = min(max(scale.width, text_width(words, SMALL.fontSize) + 1), paper.measure / 3)
    gap = max(4.0, (paper.measure - sum(wide) - last) / len(figures))
    x = paper.left
    for (name, figure), column in zip(figures, wide, strict=True):
        below = press.paragraph(strong(figure), x, top, column, LEAD)
        press.paragraph(name, x, below - 1, column, SMALL)
        x += column + gap
    press.picture(scale, x, top - 15)
    press.paragraph(words, x, top - 18, paper.right - x, SMALL)


def _cover_foot(press: Press, book: Book) -> None:
    paper = book.paper
    y = press.paragraph(
        say(
            "{warning}: read the cautions on page 2 before you open a bag. Height, width and work "
            "are estimates.",
            warning=strong(say(CHOKING_HAZARD)),
        ),
        paper.left,
        mm(34),
        paper.measure,
        BODY,
    )
    if book.buyer:
        words = say("Printed for {buyer}", buyer=strong(book.buyer))
        y = press.paragraph(words, paper.left, y - 6, paper.measure, LEAD)
    words = say("Serial {serial}", serial=book.serial)
    press.paragraph(words, paper.left, y - 2, paper.measure, SMALL)


def dots(level: Skill) -> Picture:
    """A level as filled dots of five."""
    size, gap = 11.0, 15.0
    marks: list[Mark] = [
        Circle(
            (size / 2 + 1 + i * gap, size / 2 + 1),
            size / 2,
            Ink("#1A1A1A" if i < level.level else None, "#1A1A1A", 1.1),
        )
        for i in range(len(NAMES))
    ]
    words = say(
        "Skill level {level} of {levels}: {name}.",
        level=level.level,
        levels=len(NAMES),
        name=level.name,
    )
    return Picture(gap * len(NAMES), size + 2, tuple(marks), words)
