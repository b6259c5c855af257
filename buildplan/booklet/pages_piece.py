"""Pages about the piece as a whole: gauges at true size, finished views, the joint map."""

from __future__ import annotations

from buildplan.booklet.book import Book
from buildplan.booklet.map_sheets import (
    INDEX_COLUMNS,
    INDEX_GAP,
    MapSheets,
    brace_flags,
    map_place,
    step_place,
)
from buildplan.booklet.paper import mm
from buildplan.booklet.press import BODY, LINKED, SMALL, Leaf, Press, plain, underlined
from buildplan.design.measures import size_words
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.dimensions import dimensioned_view
from buildplan.drawing.gauge import gauge_sheets
from buildplan.drawing.scene import finished_picture


def gauges(book: Book) -> list[Leaf]:
    """The gauges at true size, with a ruler that shows whether the printer kept it."""
    sheets = gauge_sheets(
        book.framework,
        (book.paper.width, book.paper.height),
        book.units,
        head=mm(8),
        foot=mm(6),
    )

    def leaf(number: int) -> Leaf:
        def draw(press: Press) -> None:
            press.picture(sheets[number].picture, 0, 0)

        title = "Gauges at true size" if number == 0 else f"Gauges, sheet {number + 1}"
        return Leaf(
            title,
            draw,
            running="Gauges at true size: print at 100 %",
            listed=number == 0,
            headed=number == 0,
        )

    return [leaf(number) for number in range(len(sheets))]


def finished_piece(book: Book) -> Leaf:
    """The finished piece from several sides, with its size and a person for scale."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        top = press.title("The finished piece")
        size = " x ".join(
            size_words(length, book.units)
            for length in (facts.width_m, facts.height_m, facts.depth_m)
        )
        y = press.paragraph(
            plain(
                f"{size} (width, height, depth; an estimate from the gauges: measure your first "
                "one). The person is 1.70 m (5 ft 7 in) tall."
            ),
            paper.left,
            top,
            paper.measure,
            BODY,
        )
        small = (paper.measure - 36) / 4
        caption = 16.0
        large_height = y - paper.bottom - small - 2 * caption - 24
        front = dimensioned_view(
            book.framework,
            book.shape,
            CAMERAS["front"],
            paper.measure,
            large_height,
            across=size_words(facts.width_m, book.units),
            upright=size_words(facts.height_m, book.units),
            person="1.70 m" if book.units == "cm" else "5 ft 7 in",
            patterns=book.patterns,
            alt=f"{facts.name} from the front, {size}, with a person beside it.",
        )
        y -= front.height + 8
        press.picture(front, paper.left, y)
        press.paragraph("From the front.", paper.left, y, paper.measure, SMALL)
        y -= caption + 8 + small
        for i, name in enumerate(("back", "side", "top", "corner")):
            x = paper.left + i * (small + 12)
            picture = finished_picture(book.framework, book.shape, CAMERAS[name], small, small)
            press.picture(picture, x, y)
            words = "From a corner." if name == "corner" else f"From the {name}."
            press.paragraph(words, x, y - 2, small, SMALL)

    return Leaf("The finished piece", draw)


def joint_maps(book: Book, sheets: MapSheets) -> list[Leaf]:
    """The joint map, each sheet with the steps that tie its braces."""
    paper, pictures = book.paper, sheets.pictures

    def leaf(number: int) -> Leaf:
        def draw(press: Press) -> None:
            of = f", sheet {number + 1} of {len(pictures)}" if len(pictures) > 1 else ""
            press.canvas.place(map_place(number), paper.height)
            top = press.title(f"Joint map{of}")
            y = press.paragraph(
                "The piece unrolled flat. Each row is a long chain, each column a brace; where "
                "lines meet, knots are brought together under one lock.",
                paper.left,
                top,
                paper.measure,
                BODY,
            )
            picture = pictures[number]
            y -= 6 + picture.height
            press.picture(picture, paper.left, y)
            _index(press, book, sheets, number, y)

        title = "Joint map" if number == 0 else f"Joint map, sheet {number + 1}"
        return Leaf(
            title, draw, running="Joint map", listed=number == 0, holds=(map_place(number),)
        )

    return [leaf(number) for number in range(len(pictures))]


def _index(press: Press, book: Book, sheets: MapSheets, sheet: int, map_low: float) -> None:
    """The steps that a sheet leads back to, listed below the map whose foot is at `map_low`."""
    steps, left = sheets.steps_on(book, sheet), book.paper.left
    if not steps:
        return
    rows = -(-len(steps) // INDEX_COLUMNS)
    column = book.paper.measure / INDEX_COLUMNS
    with press.canvas.element("L"):
        for i, step in enumerate(steps):
            flags = [
                (left + low_x, map_low + low_y, left + high_x, map_low + high_y)
                for low_x, low_y, high_x, high_y in brace_flags(book, sheets.pictures[sheet], step)
            ]
            page = press.page_of[step_place(step)]
            with press.canvas.element("LI"), press.canvas.element("LBody"):
                press.link(
                    f"{plain(step.title)}: {underlined(f'step {step.number}, page {page}')}",
                    step_place(step),
                    left + (i // rows) * column,
                    map_low - INDEX_GAP - (i % rows) * BODY.leading,
                    column,
                    LINKED,
                    words=f"To step {step.number}, {step.title}, page {page}",
                    also=flags,
                )
