"""Telling what a tape should say: rings across, straight sides along, each with its range."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.design.measures import size_words
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.instructions.model import Side, Span
from buildplan.language.messages import Message
from buildplan.sequence.model import Operation


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


def sides_along(context: Context, braces: Sequence[Operation]) -> list[str]:
    """How long each straight side is that these braces end."""
    numbers = [brace.brace for brace in braces]
    ended = [context.figures.sides[n] for n in numbers if n in context.figures.sides]
    return [_side(context, side) for side in ended]


def _side(context: Context, side: Side) -> str:
    return context.voice.say(
        "From brace {first} to brace {last} it is {length} along the middle ({low} to {high}).",
        first=side.first,
        last=side.last,
        **_lengths(context, side.span),
    )


def _lengths(context: Context, span: Span) -> dict[str, Message]:
    units = context.units
    return {
        "length": size_words(span.length_m, units),
        "low": size_words(span.low_m, units),
        "high": size_words(span.high_m, units),
    }
