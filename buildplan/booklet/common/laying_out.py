"""The step that lays the long chains of a braced piece out on the floor: its words beside the
layers one above the other, and the plan of the floor as large as the page has room."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.coming_to_shape import LEAST, with_moments
from buildplan.booklet.common.floor_plans import floor_plan_of
from buildplan.booklet.common.known_steps import is_of_later_part
from buildplan.booklet.common.panel_rows import ABREAST_FROM
from buildplan.booklet.common.step_moves import how_to, new_moves
from buildplan.booklet.common.step_words import COLUMN_GAP, ticks, words_of
from buildplan.document.blocks import Items, Shown
from buildplan.document.layout import Columns, Filled
from buildplan.document.text import plain
from buildplan.drawing.marks import Picture
from buildplan.sequence.model import Step

LAYERS_HEIGHT = 140.0
LEAST_PLAN, MOST_PLAN = 300.0, 560.0
PLAN_BESIDE = (270.0, 250.0)
ROW_GAP, CLEAR = 3.0, 1.0  # below rows; so that no picture is made smaller for what is rounded


def laid_blocks(book: Book, views: Views, step: Step) -> list[Flowable]:
    """Words beside the layers, the plan in what is left of the page, and what is to be ticked. Of a
    part that is laid as one before it the plan alone, beside the words."""
    measure = book.paper.measure
    measured = plain(plan_measured(book, step))
    told = [*words_of(book, step), Items([*ticks(book, step), measured], True, ROW_GAP)]
    if is_of_later_part(book, step) and measure >= ABREAST_FROM:
        beside = floor_plan_of(book, views, step, *PLAN_BESIDE)
        shares = (measure - beside.width - COLUMN_GAP, beside.width)
        return [Columns((told, [Shown(beside)]), shares, gap=COLUMN_GAP, after=4.0)]
    layers = [how_to(book, step, move) for move in new_moves(book, step, LAYERS_HEIGHT)]
    wide = max(picture.width for picture in layers)
    shares = (measure - wide - COLUMN_GAP, wide)
    head = Columns((told, [Shown(one) for one in layers]), shares, gap=COLUMN_GAP, after=4.0)

    def plan(width: float, height: float) -> Picture:
        tall = height - LEAST if height >= LEAST_PLAN + LEAST else height
        drawn = floor_plan_of(book, views, step, width, min(tall, MOST_PLAN))
        room = height - drawn.height - CLEAR
        if room < LEAST:
            return drawn
        return with_moments(book, views.progress, drawn, step, room)

    return [head, Filled([], plan, least=LEAST_PLAN)]


def plan_measured(book: Book, step: Step) -> str:
    """What a tape has to say of the plan: balloons differ, and so do lengths laid out with them."""
    links = book.framework.built_with(step.operations[0].joints[0]).links
    within = max(book.framework.balloons[link.balloon].tie_within for link in links)
    return book.voice.say(
        "From knot to knot a tape confirms the plan within {share} %; locks make the piece a little"
        " larger.",
        share=book.voice.whole(round(100 * within)),
    )
