"""Pages about the piece as a whole: gauges at true size, finished views, the joint map."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.map_sheets import (
    INDEX_COLUMNS,
    INDEX_GAP,
    MapSheets,
    brace_flags,
    index_columns,
    index_width,
    map_place,
    step_place,
)
from buildplan.design.measures import size_words
from buildplan.document.paper import mm
from buildplan.document.renderer import BODY, LINKED, SMALL, Leaf, Press, plain, underlined
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.dimensions import dimensioned_view
from buildplan.drawing.gauge import gauge_sheets
from buildplan.drawing.scene import finished_picture
from buildplan.framework.model import Framework
from buildplan.language.speaking import mark, say

# The small views below the front, and what is said of each.
SMALL_VIEWS: Mapping[str, str] = {
    "back": mark("From the back."),
    "side": mark("From the side."),
    "top": mark("From the top."),
    "corner": mark("From a corner."),
}
PERSON_M = 1.70


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

        title = (
            say("Gauges at true size")
            if number == 0
            else say("Gauges, sheet {number}", number=number + 1)
        )
        return Leaf(
            title,
            draw,
            running=say("Gauges at true size: print at 100 %"),
            listed=number == 0,
            headed=number == 0,
        )

    return [leaf(number) for number in range(len(sheets))]


def finished_piece(book: Book) -> Leaf:
    """The finished piece from several sides, with its size and a person for scale."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        top = press.title(say("The finished piece"))
        size = " x ".join(
            size_words(length, book.units)
            for length in (facts.width_m, facts.height_m, facts.depth_m)
        )
        person = f"{size_words(PERSON_M, 'cm')} ({size_words(PERSON_M, 'in')})"
        y = press.paragraph(
            plain(
                say(
                    "{size} (width, height, depth; an estimate from the gauges: measure your "
                    "first one). The person is {person} tall.",
                    size=size,
                    person=person,
                )
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
            person=size_words(PERSON_M, book.units),
            patterns=book.patterns,
            alt=say(
                "{piece} from the front, {size}, with a person beside it.",
                piece=facts.name,
                size=size,
            ),
        )
        y -= front.height + 8
        press.picture(front, paper.left, y)
        press.paragraph(say("From the front."), paper.left, y, paper.measure, SMALL)
        y -= caption + 8 + small
        for i, (name, words) in enumerate(SMALL_VIEWS.items()):
            x = paper.left + i * (small + 12)
            picture = finished_picture(book.framework, book.shape, CAMERAS[name], small, small)
            press.picture(picture, x, y)
            press.paragraph(say(words), x, y - 2, small, SMALL)

    return Leaf(say("The finished piece"), draw)


def joint_maps(book: Book, sheets: MapSheets) -> list[Leaf]:
    """The joint map, each sheet with the steps that tie its braces."""
    paper, pictures = book.paper, sheets.pictures

    def leaf(number: int) -> Leaf:
        def draw(press: Press) -> None:
            press.canvas.place(map_place(number), paper.height)
            title = (
                say("Joint map, sheet {number} of {total}", number=number + 1, total=len(pictures))
                if len(pictures) > 1
                else say("Joint map")
            )
            top = press.title(title)
            y = press.paragraph(
                _how_to_read(book),
                paper.left,
                top,
                paper.measure,
                BODY,
            )
            picture = pictures[number]
            y -= 6 + picture.height
            press.picture(picture, paper.left, y)
            _index(press, book, sheets, number, y)

        title = (
            say("Joint map") if number == 0 else say("Joint map, sheet {number}", number=number + 1)
        )
        return Leaf(
            title, draw, running=say("Joint map"), listed=number == 0, holds=(map_place(number),)
        )

    return [leaf(number) for number in range(len(pictures))]


def _index(press: Press, book: Book, sheets: MapSheets, sheet: int, map_low: float) -> None:
    """The steps that a sheet leads back to, listed below the map whose foot is at `map_low`."""
    steps, left = sheets.steps_on(book, sheet), book.paper.left
    if not steps:
        return
    with press.canvas.element("L"):
        for number, column in enumerate(index_columns(book, steps)):
            x = left + number * book.paper.measure / INDEX_COLUMNS
            top = map_low - INDEX_GAP
            for step in column:
                flags = [
                    (left + low_x, map_low + low_y, left + high_x, map_low + high_y)
                    for low_x, low_y, high_x, high_y in brace_flags(
                        book, sheets.pictures[sheet], step
                    )
                ]
                page = press.page_of[step_place(step)]
                found = say("step {number}, page {page}", number=step.number, page=page)
                with press.canvas.element("LI"), press.canvas.element("LBody"):
                    top = press.link(
                        f"{plain(step.title)}: {underlined(found)}",
                        step_place(step),
                        x,
                        top,
                        index_width(book),
                        LINKED,
                        words=say(
                            "To step {number}, {title}, page {page}",
                            number=step.number,
                            title=step.title,
                            page=page,
                        ),
                        also=flags,
                    )


def _how_to_read(book: Book) -> str:
    if book.framework.laid:
        return say(
            "The front as it is seen, the back behind it, up and to the right. Small numbers are "
            "those of braces; where lines meet, knots are brought together under one lock."
        )
    if any(not part.braces for part in _built_alone(book.framework)):
        return say(
            "Every disc is a joint, every line a balloon. Knots of the same name are brought "
            "together under one lock."
        )
    return say(
        "The piece unrolled flat. Each row is a long chain, each column a brace; "
        "where lines meet, knots are brought together under one lock."
    )


def _built_alone(framework: Framework) -> list[Framework]:
    """The parts of an assembly, or the piece itself."""
    return [part.framework for part in framework.parts] or [framework]
