"""Telling what a tape should say: rings across and above the floor, straight sides along, each with
its range."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import size_words
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.instructions.model import Side, Span
from buildplan.language.messages import Value, message
from buildplan.language.phrases import first_to_last
from buildplan.sequence.model import Operation, Step

# What is shorter is read from a tape in whole inches or centimetres alone.
LONGEST_BY_HAND = 1.5
EXACT = 1e-6  # of a unit: what is so near to a whole one is it


def rings_across(context: Context, letters: Sequence[str]) -> list[str]:
    """How wide rings are across their outside, those that are alike together."""
    voice, alike = context.voice, dict[Span, list[str]]()
    for letter in letters:
        if letter in context.figures.rings:
            alike.setdefault(context.figures.rings[letter], []).append(letter)
    return [
        voice.say_count(
            "Laid round, ring {letters} is {length} across its outside ({low} to {high}).",
            "Laid round, rings {letters} are {length} across their outside ({low} to {high}).",
            len(same),
            letters=chain_letters(voice, same),
            **_lengths(context, span),
        )
        for span, same in alike.items()
    ]


def rings_above_floor(context: Context, step: Step) -> list[str]:
    """How high the knots are of each ring of a column whose last joint a step joins."""
    heights = context.figures.heights
    complete = [
        letter
        for letter, number in context.last_joined.items()
        if letter in heights and number == step.number
    ]
    return [
        context.voice.say(
            "The knots of ring {letter} are {length} above the floor ({low} to {high}).",
            letter=letter,
            **_lengths(context, heights[letter]),
        )
        for letter in complete
    ]


def rows_taped(context: Context, step: Step) -> list[str]:
    """How long the rows are whose last joint a step joins, and how far from the foot; that a tape
    lies there is told of the first."""
    voice, rows, told = context.voice, context.figures.rows, list[str]()
    first = min((context.last_joined[letter] for letter in rows), default=0)
    for letter, number in context.last_joined.items():
        for one in rows.get(letter, ()) if number == step.number else ():
            said: dict[str, Value] = {"first": one.first, "last": one.last}
            said |= _lengths(context, one.span)
            tape = not told and number == first
            told.append(
                voice.say(
                    "A tape along the chain from knot {first} to knot {last} says {length} ({low}"
                    " to {high}).",
                    **said,
                )
                if tape
                else voice.say("{first} to {last}: {length} ({low} to {high}).", **said)
            )
    return told


def sides_along(context: Context, braces: Sequence[Operation]) -> list[str]:
    """How long each straight side is that these braces end."""
    numbers = [brace.brace for brace in braces]
    ended = [context.figures.sides[n] for n in numbers if n in context.figures.sides]
    return [_side(context, side) for side in ended]


def sides_together(context: Context, braces: Sequence[Operation]) -> list[str]:
    """The same, sides that are as long told together after the first of the piece."""
    numbers = [brace.brace for brace in braces]
    ended = [context.figures.sides[n] for n in numbers if n in context.figures.sides]
    alike: dict[str, list[str]] = {}
    told = []
    for side in ended:
        if _is_first(context, side):
            told.append(_side(context, side))
            continue
        said = context.voice.say("{length} ({low} to {high})", **_lengths(context, side.span))
        alike.setdefault(said, []).append(first_to_last(context.voice, *_ends(context, side)))
    for said, sides in alike.items():
        listed = context.voice.listed(sides)
        told.append(context.voice.say("{sides}: {length}.", sides=listed, length=said))
    return told


def _is_first(context: Context, side: Side) -> bool:
    return side.last == min(other.last for other in context.figures.sides.values())


def _ends(context: Context, side: Side) -> tuple[str, str]:
    """The joints of the first chain that a side is between."""
    first, last = (context.framework.brace[number] for number in (side.first, side.last))
    return first.section[0], last.section[0]


def _side(context: Context, side: Side) -> str:
    """How long a side is along its first chain; that a tape lies there is told of the first."""
    voice, (first, last) = context.voice, _ends(context, side)
    told: dict[str, Value] = {"first": first, "last": last, **_lengths(context, side.span)}
    if _is_first(context, side):
        return voice.say(
            "A tape along the chain from knot {first} to knot {last} says {length} ({low} to"
            " {high}).",
            **told,
        )
    return voice.say("{first} to {last}: {length} ({low} to {high}).", **told)


def _lengths(context: Context, span: Span) -> dict[str, Value]:
    """A length as a tape has it, and its range in whole inches or centimetres: outwards, so that
    the length itself is never at its edge."""
    units, voice = context.units, context.voice
    unit_m = METRES_PER_UNIT[units]
    length = round(span.length_m / unit_m)
    low = min(floor(span.low_m / unit_m + EXACT), length - 1)
    high = max(ceil(span.high_m / unit_m - EXACT), length + 1)
    if span.length_m > LONGEST_BY_HAND:
        return {
            "length": size_words(span.length_m, units),
            "low": size_words(low * unit_m, units),
            "high": size_words(high * unit_m, units),
        }
    told = voice.whole(length)
    return {
        "length": message("{length} in", length=told)
        if units == "in"
        else message("{length} cm", length=told),
        "low": voice.whole(low),
        "high": voice.whole(high),
    }
