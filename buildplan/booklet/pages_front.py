"""The first pages: cover, cautions, how to read the booklet, what you need."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.booklet.book import Book
from buildplan.booklet.cautions import (
    CAUTIONS,
    CHOKING_EUROPE,
    CHOKING_HAZARD,
    CHOKING_SIGNAL,
    CHOKING_WORDS,
    LATEX_WORDS,
)
from buildplan.booklet.paper import mm
from buildplan.booklet.press import (
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
    plain,
    strong,
    underlined,
)
from buildplan.booklet.swatches import swatch
from buildplan.booklet.words import minutes_words, weight_words
from buildplan.design.measures import length_words, size_words
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.sequence.reach import lifters

EDITION_NAMES: Mapping[str, str] = {
    "training": "Training edition",
    "crew": "Crew edition",
    "sale": "Plan for builders",
}

CONTENTS = "contents"

# Trade words, as this booklet uses them.
WORDS: Sequence[tuple[str, str]] = (
    (
        "link balloon",
        "a balloon with a tie point at both ends: the neck, where it is filled, and the tail",
    ),
    ("pair", "two balloons tied neck to neck"),
    ("chain", "link balloons tied end to end; its joints are numbered along it: A1, A2, A3 ..."),
    ("ring", "a chain whose two free ends are tied together"),
    ("joint", "the place where balloon ends are knotted together"),
    ("brace", "a short chain tied across the long chains, holding them apart"),
    ("lock", "a pair of small rounds twisted round a joint so that it cannot slip"),
    ("single", "one link balloon tied across two joints that no brace reaches"),
    ("gauge", "the template that a balloon is sized against"),
)

TOOLS: Sequence[str] = (
    "Electric inflator with a nozzle for air; a hand pump for repairs",
    "The gauges on the gauge page, cut from stiff card",
    "Paper tags or masking tape, and a marker, to label joints",
    "Blunt scissors for trimming; no pins, no knives near the piece",
    "Safety glasses for everyone; ear protection beside the inflator",
    "A tape measure",
    "Bags for waste latex, tied shut, out of the reach of children",
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
        kind = "A freestanding piece of air-filled link balloons, step by step"
        top = press.paragraph(kind, paper.left, top - 4, paper.measure, LEAD)
        top = press.paragraph(
            strong(EDITION_NAMES[book.edition]), paper.left, top - 4, paper.measure, LEAD
        )
        figures = (
            ("balloons", str(facts.total)),
            ("height", size_words(facts.height_m, book.units)),
            ("width", size_words(facts.width_m, book.units)),
            ("people", str(facts.crew)),
            ("time", minutes_words(facts.crew_minutes)),
        )
        base = paper.bottom + 46
        column = paper.measure / len(figures)
        for i, (name, figure) in enumerate(figures):
            x = paper.left + i * column
            below = press.paragraph(strong(figure), x, base + 44, column - 6, LEAD)
            press.paragraph(name, x, below - 1, column - 6, SMALL)
        press.rule(paper.left, base + 52, paper.measure)
        press.paragraph(
            f"{strong(CHOKING_SIGNAL + ' ' + CHOKING_HAZARD)} — read the cautions on page 2 "
            "before you open a bag. Height, width and time are estimates.",
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
            alt=f"Cover picture: {facts.name}, finished and standing, seen from the front.",
        )
        press.picture(picture, paper.left, base + 64)

    return Leaf("Cover", draw)


def cautions(book: Book) -> Leaf:
    """The cautions, the regulation's words first."""

    def draw(press: Press) -> None:
        paper = book.paper
        top = press.title("Cautions: read before you start")
        # the box of the regulation: signal word and hazard in capitals, words below
        box_top = top
        x, width = paper.left + 12, paper.measure - 24
        y = press.paragraph(
            strong(f"{CHOKING_SIGNAL} {CHOKING_HAZARD}"), x, box_top - 10, width, HEADING
        )
        for words in CHOKING_WORDS:
            y = press.paragraph(strong(words), x, y - 3, width, BODY)
        y -= 10
        with press.decoration() as canvas:
            canvas.setStrokeColor("#1A1A1A")
            canvas.setLineWidth(1.6)
            canvas.rect(paper.left, y, paper.measure, box_top - y, stroke=1, fill=0)
        y = press.paragraph(plain(CHOKING_EUROPE), paper.left, y - 8, paper.measure, BODY)
        y = press.paragraph(strong(LATEX_WORDS), paper.left, y - 6, paper.measure, BODY)
        y = press.paragraph(
            "Ask everyone who will build, carry or stand near the piece about latex allergy first.",
            paper.left,
            y - 2,
            paper.measure,
            BODY,
        )
        y -= 12
        rows = [["Signal", "About", "What to do"]]
        rows += [
            [strong(caution.signal), strong(caution.topic), plain(caution.words)]
            for caution in CAUTIONS
        ]
        y = press.table(rows, paper.left, y, (72, 96, paper.measure - 168))
        press.paragraph(
            "Signal words: WARNING, could result in death or serious injury; CAUTION, could "
            "result in minor or moderate injury; NOTICE, not about injury. Local codes and "
            "licensed practice come before anything in this booklet.",
            paper.left,
            y - 8,
            paper.measure,
            SMALL,
        )

    return Leaf("Cautions", draw)


def reading_guide(book: Book) -> Leaf:
    """How to read the booklet: contents, the trade's words, and how parts are drawn."""

    def draw(press: Press) -> None:
        paper = book.paper
        top = press.title("How to read this booklet")
        left_width = paper.measure * 0.36
        right_x = paper.left + left_width + 24
        right_width = paper.right - right_x
        y = press.paragraph("In this booklet", paper.left, top, left_width, HEADING, "H2") - 4
        _contents(press, paper.left, y, left_width)
        y = press.paragraph("Words", right_x, top, right_width, HEADING, "H2") - 4
        for word, meaning in WORDS:
            y = (
                press.paragraph(f"{strong(word)}: {plain(meaning)}", right_x, y, right_width, BODY)
                - 3
            )
        y = press.paragraph("Chains and joints", right_x, y - 8, right_width, HEADING, "H2") - 4
        for long in book.framework.chains[:MOST_CHAINS]:
            count = len(long.chain.links)
            joints = f"{long.chain.joints[0]} to {long.chain.joints[-1]}"
            kind = "ring" if long.chain.closed else "chain"
            y = (
                press.paragraph(
                    f"{strong(long.letter)}: {plain(long.place)} {kind}, {count} balloons, "
                    f"joints {joints}",
                    right_x,
                    y,
                    right_width,
                    BODY,
                )
                - 2
            )
        more = len(book.framework.chains) - MOST_CHAINS
        if more > 0:
            words = f"and {more} more; the steps name each, and the joint map shows them"
            y = press.paragraph(words, right_x, y, right_width, BODY) - 2
        y = press.paragraph("Pictures", right_x, y - 8, right_width, HEADING, "H2") - 4
        press.bullets(
            (
                "What a step adds is in full colour with a dark outline; what stands already "
                "is pale.",
                "Where pale work would hide something new, it is drawn as a thin outline.",
                "Joints are named the same on every page and on the joint map.",
                "Pictures show the piece from the front, standing. Where a close-up is turned, a "
                "small block in its corner shows how: F is the front. A circle on the small "
                "picture of the piece shows where it is.",
                "A sign on a balloon (a bar, a triangle ...) tells its colour without colour: "
                "see the table of balloons.",
                "Every step ends in something to check. Tick its box before you go on.",
            ),
            right_x,
            y,
            right_width,
        )

    return Leaf("How to read this booklet", draw, holds=(CONTENTS,))


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
                        words=f"To {title}, page {page}",
                        also=[row],
                    )
                press.paragraph(f"{page}", x + width - number_width, top, number_width, NUMBER)
            top = below - 3


def needs(book: Book) -> Leaf:
    """What you need: balloons with spares and packs, tools, people, room and time."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        top = press.title("What you need")
        y = press.paragraph("Balloons", paper.left, top, paper.measure, HEADING, "H2") - 4
        letters = book.colour_letters
        head = ["Colour", "Balloon", "Size to", "In the piece", "Spare", "To buy"]
        rows = [head]
        for purchase in facts.purchases:
            balloon = purchase.balloon
            buy = str(purchase.to_buy)
            if purchase.packs is not None:
                noun = "pack" if purchase.packs == 1 else "packs"
                buy = f"{purchase.packs} {noun} of {purchase.pack_size}"
            rows.append(
                [
                    strong(", ".join(letters[one.key] for one in purchase.balloons)),
                    plain(
                        f"{length_words(balloon.nominal_m, book.units)} {balloon.kind}, "
                        f"{purchase.label} ({', '.join(one.key for one in purchase.balloons)})"
                    ),
                    ", ".join(
                        dict.fromkeys(
                            length_words(one.gauge_m, book.units) for one in purchase.balloons
                        )
                    ),
                    str(purchase.needed),
                    str(purchase.spare),
                    buy,
                ]
            )
        rows.append(
            [
                "",
                strong("all together"),
                "",
                strong(str(facts.total)),
                strong(str(sum(p.spare for p in facts.purchases))),
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
            f"A lock takes two rounds: {facts.locks} locks, {2 * facts.locks} rounds. "
            f"Spares for bursts are {book.design.spare:.0%}, rounded up.",
            paper.left,
            y - 8,
            paper.measure,
            BODY,
        )
        half = (paper.measure - 24) / 2
        right = paper.left + half + 24
        y -= 14
        bottom = press.paragraph("Tools", paper.left, y, half, HEADING, "H2") - 4
        press.tick_list([plain(tool) for tool in TOOLS], paper.left, bottom, half)
        below = press.paragraph("People, room and time", right, y, half, HEADING, "H2") - 4
        room = size_words(max(facts.width_m, facts.height_m) + 2.0, book.units)
        press.bullets(
            (
                f"{strong(str(facts.crew))} people; {lifters(book.shape)} at least to lift it and "
                "stand it up",
                f"A clean, smooth floor, about {strong(room)} square: the piece is built lying "
                "flat",
                f"About {strong(minutes_words(facts.work_minutes))} of work in all, "
                f"{strong(minutes_words(facts.crew_minutes))} for "
                f"{facts.crew} people (estimate, practised hands; a first build takes about "
                "twice as long)",
                f"Weight about {strong(weight_words(facts.mass_kg))} (estimate)",
                "An even room temperature: balloons sized in the cold grow in the warm",
            ),
            right,
            below,
            half,
        )

    return Leaf("What you need", draw)
