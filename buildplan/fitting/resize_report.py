"""The ways to another height in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.design.measures import Units, size_words
from buildplan.design.translating import translated_design
from buildplan.evaluation.measured import Measured
from buildplan.fitting.resize_options import ResizeWay
from buildplan.instructions.times import duration
from buildplan.language.isolates import without_isolates
from buildplan.language.messages import mark
from buildplan.language.phrases import capital, clauses, sentences
from buildplan.language.voice import Voice

NAMES: Mapping[str, str] = {
    "gauge": mark("by gauge"),
    "balloon": mark("by balloon size"),
    "cells": mark("by more cells"),
}


def resize_report(
    now: Measured, ways: Sequence[ResizeWay], height_m: float, units: Units, voice: Voice
) -> str:
    """A table of the ways that work, with what each costs and reaches, sizes in `units`; then why
    others do not."""
    head = (
        "",
        voice.say("height"),
        voice.say("width"),
        voice.say("balloons"),
        voice.say("work"),
        voice.say("what changes"),
    )
    rows = [head, _row(voice.say("as it is"), now, "", units, voice)]
    rows += [
        _row(_name(way, now, voice), way.measured, _changes(way, voice), units, voice)
        for way in ways
        if way.measured is not None
    ]
    widths = [max(len(row[i]) for row in rows) for i in range(len(head))]
    to_be = voice.say(
        "{piece}, to be {height} high",
        piece=translated_design(now.design, voice.language).name,
        height=size_words(height_m, units),
    )
    lines = [to_be, ""]
    for row in rows:
        cells = [word.ljust(width) for word, width in zip(row, widths, strict=True)]
        lines.append("  ".join(cells).rstrip())
    not_had = [
        voice.say(
            "{way} it cannot be had: {why}", way=capital(_name(way, now, voice)), why=way.why_not
        )
        for way in ways
        if way.why_not is not None
    ]
    if not_had:
        lines += ["", *not_had]
    lines += ["", voice.say("Sizes are those of the solved shape; sizes and times are estimates.")]
    return "\n".join(lines)


def _changes(way: ResizeWay, voice: Voice) -> str:
    """What changes, one thing after another."""
    return clauses(voice, map(voice.tell, way.words))


def _name(way: ResizeWay, now: Measured, voice: Voice) -> str:
    fewer = way.by == "cells" and way.measured and way.measured.balloons < now.balloons
    return voice.say("by fewer cells") if fewer else voice.say(NAMES[way.by])


def _row(name: str, one: Measured, words: str, units: Units, voice: Voice) -> tuple[str, ...]:
    return (
        name,
        voice.tell(size_words(one.height_m, units)),
        voice.tell(size_words(one.width_m, units)),
        str(one.balloons),
        duration(voice, one.minutes),
        words,
    )


def heading(way: ResizeWay, now: Measured, source: str, units: Units, voice: Voice) -> str:
    """What stands on top of the resized file: where it comes from, and what must be looked at
    again."""
    assert way.measured is not None
    words = voice.say(
        "{way}, from {file}: {height} high instead of {before} (buildplan resize).",
        way=capital(_name(way, now, voice)),
        file=source,
        height=size_words(way.measured.height_m, units),
        before=size_words(now.height_m, units),
    )
    prices = now.design.prices or now.design.pack_prices
    if way.by == "balloon" and prices:
        words = sentences(words, voice.say("Prices are still those of the old size."))
    return without_isolates(words)
