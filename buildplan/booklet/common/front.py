"""The first pages: cover, cautions, how to read the booklet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import CAUTIONS, CHOKING_HAZARD, LATEX_WORDS, choking_blocks
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.manner import people_figure
from buildplan.booklet.common.phone_code import with_code_of_piece
from buildplan.booklet.common.picture_key import picture_key
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, Rule, Shown, Stack, Words, heading
from buildplan.document.layout import Boxed, Columns, Filled
from buildplan.document.links import ContentsLine
from buildplan.document.printing import Section
from buildplan.document.spare_room import Lowest
from buildplan.document.tables import Grid
from buildplan.document.text import DISPLAY, LEAD, SMALL, STRONG, plain, strong, underlined
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.seat import ACROSS
from buildplan.drawing.techniques.ends import balloon_ends
from buildplan.evaluation.figures import minutes_words
from buildplan.framework import cells as cells_of
from buildplan.framework.chain_roles import ZIGZAG
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind
from buildplan.source.problems import in_words

EDITION_NAMES: Mapping[str, str] = {
    "training": mark("Training edition"),
    "crew": mark("Crew edition"),
    "sale": mark("Plan for builders"),
}

# Trade words, as this booklet uses them.
LINK_BALLOON = (
    mark("link balloon"),
    mark("a balloon to be tied at both ends: its neck, where it is filled, and its tail"),
)
PAIR = (mark("pair"), mark("two balloons tied neck to neck"))
GAUGE = (mark("gauge"), mark("the cut-out that a balloon is sized by"))
NOZZLE = (mark("nozzle"), mark("bare rubber between body and knot"))
TIP = (mark("tip"), mark("a corner that stands out; outer joints are left out"))
DIP = (mark("dip"), mark("a notch folded in; inner joints are left out"))
PART = (mark("part"), mark("what is built by itself, then tied to others; its name comes first"))
CHAIN = (
    mark("chain"),
    mark("link balloons tied end to end; its joints are numbered: A1, A2, A3 ..."),
)
RING = (mark("ring"), mark("a chain whose two free ends are tied together"))
ROW = (mark("row"), mark("joints in their order, on a line to tick"))
ON_KNOT = (mark("knot on knot"), mark("one knot laid on the other, their nozzles crossed"))
ZIGZAG_WORD = (mark("zigzag"), mark("a chain that goes up and down between two rings"))
JOINT = (mark("joint"), mark("the place where balloon ends are knotted together"))
BRACE = (mark("brace"), mark("a short chain tied across the long chains, holding them apart"))
LOCK = (mark("lock"), mark("a pair of small rounds twisted round a joint to hold it"))
SINGLE = (mark("single"), mark("one link balloon tied across two joints that no brace reaches"))

GUIDE_SHARES = ((0.36, 0.64), (0.42, 0.58))  # of the width, to the contents and the words


def cover(book: Book, first_build: tuple[str, str]) -> Section:
    """The cover: name, picture, and the figures a builder asks for first; `first_build` is what a
    beginner's time is called, and how long it is."""
    voice, facts = book.voice, book.facts
    above: list[Flowable] = []
    if book.design.brand is not None:
        above.append(Words(strong(book.design.brand.name), after=2))
        if book.design.brand.contact:
            above.append(Words(plain(book.design.brand.contact), SMALL, after=10))
    kind = voice.say("A freestanding piece of air-filled link balloons, step by step")
    above += [
        Words(strong(facts.name), DISPLAY, "H1"),
        Words(kind, LEAD),
        Words(strong(voice.say(EDITION_NAMES[book.edition])), LEAD),
        *draft_notice(book),
    ]
    figures = (
        (voice.say("balloons"), voice.whole(facts.total)),
        (voice.say("height"), voice.tell(size_words(facts.height_m, book.units))),
        (voice.say("width"), voice.tell(size_words(facts.width_m, book.units))),
        (voice.say("people"), people_figure(book)),
        (voice.say("time, practised"), minutes_words(facts.crew_minutes, voice)),
        first_build,
    )
    columns = [
        [Words(strong(figure), LEAD, after=1), Words(name, SMALL)] for name, figure in figures
    ]
    warning = voice.say(
        "{warning} — read the cautions on page 2 before you open a bag. Height, width and "
        "time are estimates.",
        warning=strong(voice.say(CHOKING_HAZARD)),
    )
    held = [
        Words(strong(voice.say("The piece {condition}.", condition=voice.tell(one))))
        for one in book.figures.held_by
    ]
    foot = with_code_of_piece(book, [*held, Words(warning)])
    below = [Rule(), Columns(columns, gap=6.0, after=8.0), *foot]
    picture = partial(
        _front_view,
        book,
        voice.say(
            "Cover picture: {piece}, finished and standing, seen from the front.", piece=facts.name
        ),
    )
    return Section(voice.say("Cover"), [Filled(above, picture, below)], bare=True)


def _front_view(book: Book, alt: str, width: float, height: float) -> Picture:
    return finished_picture(book.framework, book.shape, CAMERAS["front"], width, height, alt=alt)


def draft_notice(book: Book) -> list[Flowable]:
    """What is wrong with a piece that is printed all the same, for its first page."""
    voice, problems = book.voice, book.facts.problems
    if not problems:
        return []
    told = tuple(plain(in_words(problem, voice)) for problem in problems)
    words = voice.say("DRAFT: do not build from this booklet. What is wrong with the piece:")
    return [Boxed([Words(plain(words), STRONG), Items(told, after=0)], pad=8.0)]


def cautions(book: Book) -> Section:
    """The cautions, the regulation's words first."""
    voice = book.voice
    rows = [
        (
            strong(voice.say(caution.signal)),
            strong(voice.say(caution.topic)),
            plain(voice.say(caution.words)),
        )
        for caution in CAUTIONS
    ]
    head = (voice.say("Signal"), voice.say("About"), voice.say("What to do"))
    blocks: list[Flowable] = [
        *choking_blocks(book.paper, voice),
        Words(strong(voice.say(LATEX_WORDS)), after=2),
        Words(
            voice.say(
                "Ask all who build, carry or stand near the piece about latex allergy first."
            ),
            after=12,
        ),
        Grid(head, rows, (72, 74, 364), pad=3, after=8),
        Words(
            voice.say(
                "WARNING: could result in death or serious injury; CAUTION: in minor or moderate "
                "injury; NOTICE: not about injury. Local codes and licensed practice come first."
            ),
            SMALL,
        ),
    ]
    return Section(voice.say("Cautions: read before you start"), blocks, titled=True)


def _word_told(word: str, meaning: str, voice: Voice) -> Words:
    """A word of the trade and what it means, both marked."""
    told = plain(voice.say(meaning))
    return Words(voice.say("{name}: {words}", name=strong(voice.say(word)), words=told), after=3)


def reading_guide(book: Book, views: Views, rest: Sequence[Section]) -> Section:
    """How to read the booklet: what follows in it, the trade's words, and how parts are drawn."""
    voice = book.voice
    pictures = [heading(voice.say("Pictures")), Items(_about_pictures(book, views))]
    first = [heading(voice.say("In this booklet")), contents(rest, voice)]
    words = [_word_told(word, meaning, voice) for word, meaning in words_used(book)]
    second = [
        heading(voice.say("Words")),
        words[0],
        Shown(balloon_ends(book.framework, voice), after=3.0),
        *words[1:],
    ]
    shapes = [
        Columns(columns, shares, gap=24.0)
        for shares in GUIDE_SHARES
        for columns in (([*first, *pictures], second), (first, [*second, *pictures]))
    ]
    title = voice.say("How to read this booklet")
    return Section(title, [Lowest(shapes), *picture_key(book, views)], titled=True)


def words_used(book: Book) -> list[tuple[str, str]]:
    """The trade's words that the booklet of a piece uses, each with its meaning: messages."""
    framework = book.framework
    has_rings = any(Kind.CLOSE_RING in step.kinds for step in book.steps)
    has_pairs = any(Kind.PAIR in step.kinds for step in book.steps)
    cells = {cell.kind for cell in framework.cells}
    return [
        LINK_BALLOON,
        GAUGE,
        *([PAIR] if has_pairs else []),
        CHAIN,
        *([RING] if has_rings else []),
        *([ZIGZAG_WORD] if any(one.role == ZIGZAG for one in framework.chains) else []),
        JOINT,
        ROW,
        *([PART] if framework.parts else []),
        *([BRACE] if framework.braces else []),
        *([NOZZLE, ON_KNOT] if framework.braces or framework.parts else []),
        *([TIP] if cells_of.TIP in cells else []),
        *([DIP] if cells_of.DIP in cells else []),
        *([LOCK] if framework.locks else []),
        *([SINGLE] if framework.singles else []),
    ]


def _about_pictures(book: Book, views: Views) -> list[str]:
    """What is said of how pictures are drawn, and of the words that stand on them."""
    voice = book.voice
    seats = {one.panel.camera.name for step in book.steps for one in views.of(step)}
    braced = bool(book.framework.braces)
    several = len(set(book.patterns.values())) > 1
    return [
        voice.say("What a step adds is in full colour; what stands is pale or cut away."),
        *([voice.say("Signs on balloons: see the table of balloons.")] if several else []),
        *([voice.say("Front up: its front faces you as it lies.")] if braced else []),
        *([voice.say("From across: straight across the corner.")] if ACROSS in seats else []),
    ]


def contents(sections: Sequence[Section], voice: Voice) -> Stack:
    """The parts of a booklet, each leading to its page."""

    def line(section: Section) -> ContentsLine:
        def words(page: int) -> str:
            return voice.say("To {title}, page {page}", title=section.title, page=page)

        return ContentsLine(section.place, lambda _: underlined(section.title), words)

    return Stack([line(section) for section in sections if section.listed], "TOC")
