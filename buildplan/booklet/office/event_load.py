"""What goes on the vehicle for an event: bags by piece, then what serves all of them, once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.platypus import Flowable

from buildplan.booklet.common.needs import TOOLS
from buildplan.business.buying.csv_text import Cell
from buildplan.business.buying.money import balloon_words
from buildplan.business.buying.packing import bags
from buildplan.business.events.event_plan import Copy, EventPlan
from buildplan.document.blocks import Items, Words, heading
from buildplan.document.text import plain, strong
from buildplan.language.speaking import mark, say, say_count, say_in, spoken_voice, whole

# Headings of the load list.
BAGS, SPARES = mark("Bags"), mark("Spares, not inflated")
TOOLS_TAKEN, HOLDING_DOWN = mark("Tools"), mark("To hold it down")
PAPERS = mark("Papers")
CLOSE = 2.5


@dataclass(frozen=True)
class Load:
    """One thing on the load list: for which piece (empty for all), under which heading (a
    marked message), and how many balloons it holds. A bag has its label."""

    piece: str
    part: str
    what: str
    balloons: int | None = None
    label: str = ""


def load_list(plan: EventPlan) -> list[Load]:
    """All that goes on the vehicle: bags by piece, then what serves all of them, once."""
    units = plan.shopping.units
    loads = [
        Load(copy.name, BAGS, bag.holds, bag.balloons, bag.label)
        for copy in plan.copies
        for bag in bags(copy.book.framework, spoken_voice())
    ]
    loads += [
        Load("", SPARES, balloon_words(purchase, units, spoken_voice()), purchase.spare)
        for purchase in plan.shopping.purchases
        if purchase.spare
    ]
    loads += [Load("", TOOLS_TAKEN, say(tool)) for tool in TOOLS]
    loads += [
        Load(
            copy.name,
            HOLDING_DOWN,
            _holding_down(copy.book.shape.standing.feet),
        )
        for copy in plan.copies
    ]
    papers = [
        *(say("the booklet of {piece}", piece=n) for n in dict.fromkeys(_names(plan.copies))),
        say("these pages, and a pen"),
        say("first aid kit; the venue's telephone number"),
    ]
    return loads + [Load("", PAPERS, what) for what in papers]


def _names(copies: Sequence[Copy]) -> list[str]:
    return [copy.book.facts.name for copy in copies]


def _holding_down(feet: Sequence[str]) -> str:
    if len(feet) == 1:
        return say("ballast and soft ties, no wire, for joint {joint}", joint=feet[0])
    return say("ballast and soft ties, no wire, for {number} joints on the floor", number=len(feet))


def load_blocks(plan: EventPlan) -> list[Flowable]:
    loads = load_list(plan)
    blocks: list[Flowable] = [
        Words(
            say(
                "Every bag carries the name of its piece and its own label: write both on it "
                "before it is filled."
            ),
            after=8,
        )
    ]
    for copy in plan.copies:
        own = [one for one in loads if one.piece == copy.name and one.label]
        balloons = sum(one.balloons or 0 for one in own)
        blocks += [
            heading(
                say_count(
                    "{piece}: {number} bag, {balloons} balloons",
                    "{piece}: {number} bags, {balloons} balloons",
                    len(own),
                    piece=copy.name,
                    balloons=balloons,
                )
            ),
            Items(tuple(_load_words(one) for one in own), ticked=True, gap=CLOSE),
        ]
    shared = [one for one in loads if not one.label]
    for part in dict.fromkeys(one.part for one in shared):
        these = [one for one in shared if one.part == part]
        blocks += [heading(say(part)), Items(tuple(_load_words(one) for one in these), ticked=True)]
    return blocks


def _load_words(load: Load) -> str:
    if load.label:
        return f"{strong(load.label)}: {plain(load.what)}"
    words = plain(load.what)
    if load.balloons is not None:
        count = strong(whole(load.balloons))
        words = say("{count} {balloons}", count=count, balloons=words)
    return f"{strong(load.piece)}: {words}" if load.piece else words


def load_rows(plan: EventPlan) -> list[list[Cell]]:
    """The load list as rows of a table, the head first."""
    rows: list[list[Cell]] = [
        [
            say_in("column", "piece"),
            say_in("column", "part"),
            say_in("column", "what"),
            say_in("column", "balloons"),
        ]
    ]
    for one in load_list(plan):
        what = f"{one.label}: {one.what}" if one.label else one.what
        rows.append([one.piece, say(one.part), what, one.balloons])
    return rows
