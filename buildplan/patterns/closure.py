"""Whether a closed course comes round, and if not, what would bring it round."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping

from buildplan.framework.cells import CellKind
from buildplan.language.messages import Decimal, Message, message, message_count
from buildplan.patterns.course import cell_of
from buildplan.patterns.course_edits import Cells, Edit, added, as_items, mirrored, taken_out
from buildplan.patterns.turning import (
    FULL_TURN_DEG,
    SideLengths,
    comes_round,
    course_turn,
    fan_turn_deg,
    inner_gauge_that_closes,
)
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path
from buildplan.source.suggestions import Change, Put, Remedy, Suggestion, by_hand

Counts = Mapping[CellKind, int]
Sized = Callable[[float], tuple[Change, ...]]

MOST_CELLS_TO_ADD = 12


def by_hand_only(gauge: float) -> tuple[Change, ...]:
    """Where no change of the file would size the inner balloons."""
    return ()


def check_coming_round(
    cells: Cells, lengths: SideLengths, at: Path, sized: Sized = by_hand_only
) -> Iterator[Mistake]:
    """The mistake that a closed course of these cells makes, if it does not turn 360 degrees
    within tolerance. `at` is where the course stands in the file; `sized` gives the changes of
    the file that size the balloons of the inner chains to a gauge, none where there are none."""
    counts = Counter(cells)
    if comes_round(counts, lengths):
        return
    turn = course_turn(counts, lengths)
    short_deg = turn.shortfall_deg()
    least, most, full = round(turn.least_deg), round(turn.most_deg), round(FULL_TURN_DEG)
    turns = (
        message(
            "the course turns {most} degrees and a closed tube must turn {full}",
            most=most,
            full=full,
        )
        if least == most
        else message(
            "the course can turn {least} to {most} degrees and a closed tube must turn {full}",
            least=least,
            most=most,
            full=full,
        )
    )
    yield Mistake(
        FileKind.NOT_COMING_ROUND,
        at,
        message("{turns}: {short}", turns=turns, short=short_side_words(lengths, short_deg)),
        _what_would_do(cells, lengths, short_deg, at, sized),
    )


def short_side_words(lengths: SideLengths, short_deg: float) -> Message:
    """By how many balloons which side is too short."""
    link = lengths.outer if short_deg > 0 else lengths.inner
    balloons = round(abs(short_deg) / fan_turn_deg(link, lengths.brace), 1)
    one_or_more = 1 if balloons == 1 else 2
    number = Decimal(balloons, 0 if balloons.is_integer() else 1)
    if short_deg > 0:
        return message_count(
            "the outer side is about {balloons} balloon short",
            "the outer side is about {balloons} balloons short",
            one_or_more,
            balloons=number,
        )
    return message_count(
        "the inner side is about {balloons} balloon short",
        "the inner side is about {balloons} balloons short",
        one_or_more,
        balloons=number,
    )


def _what_would_do(
    cells: Cells, lengths: SideLengths, short_deg: float, at: Path, sized: Sized
) -> Suggestion:
    """Changes that would bring the course round; each has been tried on it."""
    counts = Counter(cells)
    turned = mirrored(cells)
    if comes_round(Counter(turned.cells), lengths):
        return Suggestion(ways=(_way(turned, at),))
    ways = []
    bend, corner = ("fan", "tip") if short_deg > 0 else ("fan_in", "dip")
    for name in (bend, corner):
        for number in range(1, MOST_CELLS_TO_ADD + 1):
            if comes_round(_with(counts, name, number), lengths):
                ways.append(_way(added(cells, name, number), at))
                break
    against = cell_of("fan_in" if short_deg > 0 else "fan")
    for number in range(1, counts.get(against, 0) + 1):
        if comes_round(_with(counts, against.name, -number), lengths):
            ways.append(_way(taken_out(cells, against.name, number), at))
            break
    gauge = inner_gauge_that_closes(counts, lengths)
    words: tuple[Message, ...] = ()
    if gauge is not None and gauge <= lengths.inner_nominal:
        right = message(
            "size the balloons of the inner chains to {gauge} instead of {now}",
            gauge=f"{gauge:.3g}",
            now=f"{lengths.inner_gauge:.4g}",
        )
        changes = sized(float(f"{gauge:.3g}"))
        if changes:
            ways.append(Remedy(right, changes))
        elif ways:
            words = (message("or {way}", way=right),)
        else:
            words = (right,)
    return Suggestion(words, tuple(ways)) or by_hand(
        message("fan and tip bend inward, fan_in and dip outward: change how many there are")
    )


def _way(edit: Edit, at: Path) -> Remedy:
    return Remedy(edit.words, (Put(at, as_items(edit.cells)),))


def _with(counts: Counts, name: str, number: int) -> dict[CellKind, int]:
    cell = cell_of(name)
    return {**counts, cell: counts.get(cell, 0) + number}
