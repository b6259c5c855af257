"""The first pages: cover, cautions, how to read the booklet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import (
    CAUTIONS,
    CHOKING_HAZARD,
    LATEX_WORDS,
    choking_blocks,
)
from buildplan.design.measures import size_words
from buildplan.document.flow import Block, Grid, Words, leaves_of
from buildplan.document.paper import mm
from buildplan.document.renderer import (
    BODY,
    DISPLAY,
    HEADING,
    LEAD,
    LINKED,
    NUMBER,
    SMALL,
    Leaf,
    Press,
    page_name,
    paragraph_height,
    plain,
    strong,
    underlined,
)
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.figures import minutes_words
from buildplan.framework.model import LongChain
from buildplan.language.speaking import mark, say, spoken_voice, whole

EDITION_NAMES: Mapping[str, str] = {
    "training": mark("Training edition"),
    "crew": mark("Crew edition"),
    "sale": mark("Plan for builders"),
}

CONTENTS = "contents"

# Trade words, as this booklet uses them.
WORDS: Sequence[tuple[str, str]] = (
    (
        mark("link balloon"),
        mark("a balloon with a tie point at both ends: the neck, where it is filled, and the tail"),
    ),
    (mark("pair"), mark("two balloons tied neck to neck")),
    (
        mark("chain"),
        mark("link balloons tied end to end; its joints are numbered along it: A1, A2, A3 ..."),
    ),
    (mark("ring"), mark("a chain whose two free ends are tied together")),
    (mark("joint"), mark("the place where balloon ends are knotted together")),
    (mark("brace"), mark("a short chain tied across the long chains, holding them apart")),
    (mark("lock"), mark("a pair of small rounds twisted round a joint so that it cannot slip")),
    (mark("single"), mark("one link balloon tied across two joints that no brace reaches")),
    (mark("gauge"), mark("the template that a balloon is sized against")),
)


# chains told one by one on the page that explains the words
MOST_CHAINS = 8


def cover(book: Book) -> Leaf:
    """The cover: name, picture, and the figures a builder asks for first."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        top = paper.height - mm(22)
        if book.design.brand is not None:
            top = (
                press.paragraph(
                    strong(book.design.brand.name), paper.left, top, paper.measure, BODY
                )
                - 2
            )
            if book.design.brand.contact:
                top = press.paragraph(
                    plain(book.design.brand.contact), paper.left, top, paper.measure, SMALL
                )
            top -= 10
        top = press.paragraph(plain(facts.name), paper.left, top, paper.measure, DISPLAY, "H1")
        kind = say("A freestanding piece of air-filled link balloons, step by step")
        top = press.paragraph(kind, paper.left, top - 4, paper.measure, LEAD)
        top = press.paragraph(
            strong(say(EDITION_NAMES[book.edition])), paper.left, top - 4, paper.measure, LEAD
        )
        figures = (
            (say("balloons"), whole(facts.total)),
            (say("height"), size_words(facts.height_m, book.units)),
            (say("width"), size_words(facts.width_m, book.units)),
            (say("people"), whole(facts.crew)),
            (say("time"), minutes_words(facts.crew_minutes)),
        )
        base = paper.bottom + 46
        column = paper.measure / len(figures)
        for i, (name, figure) in enumerate(figures):
            x = paper.left + i * column
            below = press.paragraph(strong(figure), x, base + 44, column - 6, LEAD)
            press.paragraph(name, x, below - 1, column - 6, SMALL)
        press.rule(paper.left, base + 52, paper.measure)
        press.paragraph(
            say(
                "{warning} — read the cautions on page 2 before you open a bag. Height, width and "
                "time are estimates.",
                warning=strong(say(CHOKING_HAZARD)),
            ),
            paper.left,
            base - 8,
            paper.measure,
            BODY,
        )
        height = top - (base + 52) - 24
        picture = finished_picture(
            book.framework,
            book.shape,
            CAMERAS["front"],
            paper.measure,
            height,
            alt=say(
                "Cover picture: {piece}, finished and standing, seen from the front.",
                piece=facts.name,
            ),
        )
        press.picture(picture, paper.left, base + 64)

    return Leaf(say("Cover"), draw)


def cautions(book: Book) -> list[Leaf]:
    """The cautions, the regulation's words first."""
    rows = tuple(
        (strong(say(caution.signal)), strong(say(caution.topic)), plain(say(caution.words)))
        for caution in CAUTIONS
    )
    shares = (72, 74, book.paper.measure - 146)
    blocks: list[Block] = [
        *choking_blocks(book.paper),
        Words(strong(say(LATEX_WORDS)), after=2),
        Words(
            say(
                "Ask everyone who will build, carry or stand near the piece about latex allergy "
                "first."
            ),
            after=12,
        ),
        Grid((say("Signal"), say("About"), say("What to do")), rows, shares, pad=3, after=8),
        Words(
            say(
                "Signal words: WARNING, could result in death or serious injury; CAUTION, could "
                "result in minor or moderate injury; NOTICE, not about injury. Local codes and "
                "licensed practice come before anything in this booklet."
            ),
            SMALL,
        ),
    ]
    first, *more = leaves_of(book.paper, say("Cautions: read before you start"), blocks)
    return [replace(first, title=say("Cautions"), running=say("Cautions")), *more]


def reading_guide(book: Book) -> Leaf:
    """How to read the booklet: contents, the trade's words, and how parts are drawn."""

    def draw(press: Press) -> None:
        paper = book.paper
        top = press.title(say("How to read this booklet"))
        left_width = paper.measure * 0.36
        right_x = paper.left + left_width + 24
        right_width = paper.right - right_x
        y = press.paragraph(say("In this booklet"), paper.left, top, left_width, HEADING, "H2") - 4
        _contents(press, paper.left, y, left_width)
        y = press.paragraph(say("Words"), right_x, top, right_width, HEADING, "H2") - 4
        for word, meaning in WORDS:
            words = f"{strong(say(word))}: {plain(say(meaning))}"
            y = press.paragraph(words, right_x, y, right_width, BODY) - 3
        y = (
            press.paragraph(say("Chains and joints"), right_x, y - 8, right_width, HEADING, "H2")
            - 4
        )
        told = _chains_told(book, right_width)
        for words in told:
            y = press.paragraph(words, right_x, y, right_width, BODY) - 2
        more = len(book.framework.chains) - len(told)
        if more > 0:
            words = say(
                "and {number} more; the steps name each, and the joint map shows them", number=more
            )
            y = press.paragraph(words, right_x, y, right_width, BODY) - 2
        y = press.paragraph(say("Pictures"), right_x, y - 8, right_width, HEADING, "H2") - 4
        press.bullets(
            (
                say(
                    "What a step adds is in full colour with a dark outline; what stands already "
                    "is pale."
                ),
                say("Where pale work would hide something new, it is drawn as a thin outline."),
                say("Joints are named the same on every page and on the joint map."),
                say(
                    "Pictures show the piece from the front, standing. Where a close-up is turned, "
                    "a small block in its corner shows how: F is the front. A circle on the small "
                    "picture of the piece shows where it is."
                ),
                say(
                    "A sign on a balloon (a bar, a triangle ...) tells its colour without colour: "
                    "see the table of balloons."
                ),
                say("Every step ends in something to check. Tick its box before you go on."),
            ),
            right_x,
            y,
            right_width,
        )

    return Leaf(say("How to read this booklet"), draw, holds=(CONTENTS,))


def _chain_words(long: LongChain) -> str:
    """A long chain in a line, as markup."""
    message = (
        mark("{chain}: {place} ring, {count} balloons, joints {first} to {last}")
        if long.chain.closed
        else mark("{chain}: {place} chain, {count} balloons, joints {first} to {last}")
    )
    return say(
        message,
        chain=strong(long.letter),
        place=plain(spoken_voice().tell(long.where)),
        count=len(long.chain.links),
        first=long.chain.joints[0],
        last=long.chain.joints[-1],
    )


def _chains_told(book: Book, width: float) -> list[str]:
    """The first chains, as many as there is room for."""
    told, lines = [], 0.0
    for long in book.framework.chains[:MOST_CHAINS]:
        words = _chain_words(long)
        lines += paragraph_height(words, BODY, width) / BODY.leading
        if lines > MOST_CHAINS + 0.5:
            break
        told.append(words)
    return told


def _contents(press: Press, x: float, top: float, width: float) -> None:
    """The parts of the booklet that follow, each leading to its page."""
    number_width = 30.0
    with press.canvas.element("TOC"):
        for title, page in press.contents:
            if page <= press.page_of[CONTENTS]:
                continue
            with press.canvas.element("TOCI"):
                row = (x, top - LINKED.leading, x + width, top)
                with press.canvas.element("Reference"):
                    below = press.link(
                        underlined(title),
                        page_name(page),
                        x,
                        top,
                        width - number_width - 4,
                        LINKED,
                        words=say("To {title}, page {page}", title=title, page=page),
                        also=[row],
                    )
                press.paragraph(f"{page}", x + width - number_width, top, number_width, NUMBER)
            top = below - 3
