"""The sale edition's cover: the seller's band, a large picture, what the piece asks for."""

from __future__ import annotations

from functools import partial

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import CHOKING_HAZARD
from buildplan.booklet.common.front import draft_notice
from buildplan.booklet.common.manner import people_figure
from buildplan.booklet.common.phone_code import with_code_of_piece
from buildplan.booklet.sale.copy_words import COVER_BUYER, COVER_SERIAL
from buildplan.booklet.sale.seller import branding_of, seller_band
from buildplan.business.copies.brand import Branding
from buildplan.design.measures import size_words
from buildplan.document.blanks import LeftFree
from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import Boxed, Columns, Filled
from buildplan.document.paper import mm
from buildplan.document.printing import Section
from buildplan.document.text import DISPLAY, INK, LEAD, SMALL, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.colours import mix
from buildplan.drawing.fonts import BOLD
from buildplan.drawing.marks import Circle, Ink, Mark, Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.figures import minutes_words
from buildplan.evaluation.skill import NAMES, Skill, skill
from buildplan.language.voice import Voice

TINT_OF_BRAND = 0.9
GROUND_PAD = 8.0
FOOT = mm(8)
FOR_BUYER = ParagraphStyle("for buyer", parent=LEAD, fontName=BOLD)


def sale_cover(book: Book) -> Section:
    """The cover: the seller's band and logo, the name, a large picture, what it asks for."""
    voice, brand, paper = book.voice, branding_of(book), book.paper
    title = ParagraphStyle("cover", parent=DISPLAY, textColor=_readable(brand))
    name = [
        Words(strong(book.facts.name), title, "H1", after=3),
        Words(voice.say("A freestanding piece of air-filled link balloons"), LEAD),
        *draft_notice(book),
    ]
    above = [
        seller_band(paper, brand, voice),
        Boxed(name, GROUND_PAD, after=0, line=None, side=paper.left),
    ]
    foot = [_figures(book), *with_code_of_piece(book, _foot(book))]
    below = [Boxed(foot, FOOT, after=0, line=None, side=paper.left)]
    tint = mix(brand.brand.colour, "#FFFFFF", TINT_OF_BRAND)
    page = Filled(
        above,
        partial(_front_view, book),
        below,
        ground=(tint, brand.brand.accent),
        side=paper.left,
    )
    return Section(voice.say("Cover"), [page], bare=True, whole_sheet=True)


def _front_view(book: Book, width: float, height: float) -> Picture:
    alt = book.voice.say(
        "Cover picture: {piece}, finished and standing, seen from the front.",
        piece=book.facts.name,
    )
    return finished_picture(book.framework, book.shape, CAMERAS["front"], width, height, alt=alt)


def _readable(brand: Branding) -> str:
    """The brand's colour for type on white, where it is dark enough for it; else ink."""
    return brand.brand.colour if brand.on_colour == "#FFFFFF" else INK


def _figures(book: Book) -> Columns:
    """What a builder asks first, each figure above its name; the skill it asks for last."""
    voice, facts = book.voice, book.facts
    height, width = (
        voice.tell(size_words(side, book.units)) for side in (facts.height_m, facts.width_m)
    )
    figures = (
        (voice.say("balloons"), voice.whole(facts.total)),
        (
            voice.say_in("below a figure", "high"),
            height,
        ),
        (voice.say_in("below a figure", "wide"), width),
        (voice.say("people"), people_figure(book)),
        (voice.say_in("below a figure", "work"), minutes_words(facts.crew_minutes, voice)),
    )
    columns: list[list[Flowable]] = [
        [Words(strong(figure), LEAD, after=1), Words(name, SMALL)] for name, figure in figures
    ]
    level = skill(book.framework, facts)
    words = voice.say("skill: {level}", level=level.name)
    columns.append([Shown(dots(level, voice), after=4), Words(words, SMALL)])
    return Columns(columns, (0.9, 1, 0.9, 1.1, 1, 1.6), gap=8.0, after=10.0)


def _foot(book: Book) -> list[Flowable]:
    voice = book.voice
    warning = voice.say(
        "{warning}: read the cautions on page 2 before you open a bag. Height, width and work "
        "are estimates.",
        warning=strong(voice.say(CHOKING_HAZARD)),
    )
    words: list[Flowable] = [Words(warning, after=6)]
    if book.buyer:
        words.append(LeftFree(COVER_BUYER, FOR_BUYER, after=2, lines=2))
    return [*words, LeftFree(COVER_SERIAL, SMALL, after=0)]


def dots(level: Skill, voice: Voice) -> Picture:
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
    words = voice.say(
        "Skill level {level} of {levels}: {name}.",
        level=level.level,
        levels=len(NAMES),
        name=level.name,
    )
    return Picture(gap * len(NAMES), size + 2, tuple(marks), words)
