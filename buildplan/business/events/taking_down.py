"""Taking an event's pieces down: what is done in which order, by how many, in how many minutes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum
from math import fsum

from buildplan.business.events.event_plan import Copy, EventPlan, moment_on
from buildplan.evaluation.told_figures import told_figures
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.reach import lifters
from buildplan.sequence.timetable import RESERVE


class DownKind(StrEnum):
    """A kind of work of taking down, in the order of the work; what the event file calls it."""

    CLEAR = "clear"
    UNTIE = "untie"
    LAY = "lay"
    LET_OUT = "let out"
    SWEEP = "sweep"


class Manner(StrEnum):
    """How a piece comes down, as its booklet says: whole, untied while it is held, for its ties are
    short on both sides, and then laid flat; or its upper parts first, then one part after
    another."""

    WHOLE = "whole"
    IN_PARTS = "in parts"


# Minutes of one pair of hands, from memory; the event file's `taking_down` replaces any of them.
DOWN_MINUTES: Mapping[DownKind, float] = {
    DownKind.CLEAR: 5.0,  # of all that stands: people away, glasses on
    DownKind.UNTIE: 0.5,  # of a place where ballast or a tie is
    DownKind.LAY: 3.0,  # of a piece, with all who hold it
    DownKind.LET_OUT: 0.05,  # of a balloon: its neck snipped, and it goes into a bag
    DownKind.SWEEP: 4.0,  # of a piece: the floor looked over, the bags counted and tied shut
}


@dataclass(frozen=True)
class DownRow:
    """Work at one piece (or all, where it is None): `people` at once from `start`, both in minutes
    from when taking down begins, in the `manner` of that piece; `short` of hands, it takes more
    people than the crew has."""

    kind: DownKind
    copy: Copy | None
    people: int
    start: float
    minutes: float
    short: bool = False
    manner: Manner = Manner.WHOLE


def taking_down(plan: EventPlan) -> tuple[DownRow, ...]:
    """The rows of taking down, one after another: all clear; each piece untied, laid flat, let out
    and swept up before the next, for nothing half down is left alone.

    What takes all who lift takes as long with more hands; all other work is shared by the crew.
    The reserve of the build is held back here too.
    """
    rows = []
    start = 0.0
    for row in _rows(plan):
        rows.append(replace(row, start=start))
        start += row.minutes
    return tuple(rows)


def _rows(plan: EventPlan) -> Iterator[DownRow]:
    given = {DownKind(kind): minutes for kind, minutes in plan.event.taking_down.items()}
    each = {kind: (1 + RESERVE) * given.get(kind, DOWN_MINUTES[kind]) for kind in DownKind}
    crew = plan.event.crew
    yield DownRow(DownKind.CLEAR, None, crew, 0.0, each[DownKind.CLEAR])
    for copy in plan.copies:
        hands = hands_with(copy.book.constants)
        people, manner = lifters(copy.book.shape, hands), _manner(copy, plan)
        laid = DownRow(DownKind.LAY, copy, people, 0.0, each[DownKind.LAY], people > crew, manner)
        places = len(copy.book.examination.wind.ballast_at)
        untying = places * each[DownKind.UNTIE] / crew
        untied = DownRow(DownKind.UNTIE, copy, crew, 0.0, untying, manner=manner)
        held = [laid, untied] if manner is Manner.IN_PARTS else [untied, laid]
        yield from held if places else [laid]
        for kind, count in {DownKind.LET_OUT: copy.book.facts.total, DownKind.SWEEP: 1}.items():
            yield DownRow(kind, copy, crew, 0.0, count * each[kind] / crew, manner=manner)


def _manner(copy: Copy, plan: EventPlan) -> Manner:
    figures = told_figures(copy.book.framework, copy.book.shape, plan.units)
    return Manner.WHOLE if figures.set_up is None else Manner.IN_PARTS


def minutes_down(rows: tuple[DownRow, ...]) -> float:
    """How long taking down lasts, without the way."""
    return fsum(row.minutes for row in rows)


def away_by(plan: EventPlan) -> tuple[datetime, datetime] | None:
    """When taking down begins, and when the vehicles leave with everything: the minutes of carrying
    in are counted again for carrying out. None where the event says no time of closing."""
    if plan.event.closing is None:
        return None
    begins = moment_on(plan.event.closing)
    if begins <= plan.opening:
        begins += timedelta(days=1)
    lasts = minutes_down(taking_down(plan)) + plan.event.unloading
    return begins, begins + timedelta(minutes=lasts)
