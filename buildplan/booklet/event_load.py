"""What goes on the vehicle for an event: bags by piece, then what serves all of them, once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.booklet.csv_text import Cell
from buildplan.booklet.event_plan import Copy, EventPlan
from buildplan.booklet.flow import Block, Items, Words, heading
from buildplan.booklet.money import balloon_words
from buildplan.booklet.packing import bags
from buildplan.booklet.pages_front import TOOLS
from buildplan.booklet.press import plain, strong
from buildplan.language.speaking import say


@dataclass(frozen=True)
class Load:
    """One thing on the load list: for which piece (empty for all), under which heading, and
    how many balloons it holds."""

    piece: str
    part: str
    what: str
    balloons: int | None = None


def load_list(plan: EventPlan) -> list[Load]:
    """All that goes on the vehicle: bags by piece, then what serves all of them, once."""
    units = plan.shopping.units
    loads = [
        Load(copy.name, "Bags", f"{bag.label}: {bag.holds}", bag.balloons)
        for copy in plan.copies
        for bag in bags(copy.book.framework)
    ]
    loads += [
        Load("", "Spares, not inflated", balloon_words(purchase, units), purchase.spare)
        for purchase in plan.shopping.purchases
        if purchase.spare
    ]
    loads += [Load("", "Tools", say(tool)) for tool in TOOLS]
    loads += [
        Load(
            copy.name,
            "To hold it down",
            f"ballast and soft ties, no wire, for {_joints(copy.book.shape.standing.feet)}",
        )
        for copy in plan.copies
    ]
    papers = [
        *(f"the booklet of {name}" for name in dict.fromkeys(_names(plan.copies))),
        "these pages, and a pen",
        "first aid kit; the venue's telephone number",
    ]
    return loads + [Load("", "Papers", what) for what in papers]


def _names(copies: Sequence[Copy]) -> list[str]:
    return [copy.book.facts.name for copy in copies]


def _joints(labels: Sequence[str]) -> str:
    return f"joint {labels[0]}" if len(labels) == 1 else f"{len(labels)} joints on the floor"


def load_blocks(plan: EventPlan) -> list[Block]:
    loads = load_list(plan)
    blocks: list[Block] = [
        Words(
            "Every bag carries the name of its piece and its own label: write both on it before "
            "it is filled.",
            after=8,
        )
    ]
    for copy in plan.copies:
        own = [one for one in loads if one.piece == copy.name and one.part == "Bags"]
        balloons = sum(one.balloons or 0 for one in own)
        blocks += [
            heading(f"{copy.name}: {len(own)} bags, {balloons} balloons"),
            Items(tuple(_load_words(one) for one in own), ticked=True),
        ]
    shared = [one for one in loads if one.part != "Bags"]
    for part in dict.fromkeys(one.part for one in shared):
        these = [one for one in shared if one.part == part]
        blocks += [heading(part), Items(tuple(_load_words(one) for one in these), ticked=True)]
    return blocks


def _load_words(load: Load) -> str:
    if load.part == "Bags":
        label, _, holds = load.what.partition(": ")
        return f"{strong(label)}: {plain(holds)}"
    words = plain(load.what)
    if load.balloons is not None:
        words = f"{strong(str(load.balloons))} {words}"
    return f"{strong(load.piece)}: {words}" if load.piece else words


def load_rows(plan: EventPlan) -> list[list[Cell]]:
    """The load list as rows of a table, the head first."""
    rows: list[list[Cell]] = [["piece", "part", "what", "balloons"]]
    rows += [[one.piece, one.part, one.what, one.balloons] for one in load_list(plan)]
    return rows
