"""The ways to another height in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.design.measures import Units, size_words
from buildplan.design.translating import translated_design
from buildplan.evaluation.measured import Measured
from buildplan.fitting.resize_options import Way
from buildplan.instructions.times import duration
from buildplan.language.grammar import capital, sentences
from buildplan.language.speaking import mark, say, spoken, spoken_voice

NAMES: Mapping[str, str] = {
    "gauge": mark("by gauge"),
    "balloon": mark("by balloon size"),
    "cells": mark("by more cells"),
}


def resize_report(now: Measured, ways: Sequence[Way], height_m: float, units: Units) -> str:
    """A table of the ways that work, with what each costs and reaches, sizes in `units`; then why
    others do not."""
    head = (
        "",
        say("height"),
        say("width"),
        say("balloons"),
        say("work"),
        say("what changes"),
    )
    rows = [head, _row(say("as it is"), now, "", units)]
    rows += [
        _row(_name(way, now), way.measured, way.words, units)
        for way in ways
        if way.measured is not None
    ]
    widths = [max(len(row[i]) for row in rows) for i in range(len(head))]
    to_be = say(
        "{piece}, to be {height} high",
        piece=translated_design(now.design, spoken()).name,
        height=size_words(height_m, units),
    )
    lines = [to_be, ""]
    for row in rows:
        cells = [word.ljust(width) for word, width in zip(row, widths, strict=True)]
        lines.append("  ".join(cells).rstrip())
    not_had = [
        say("{way} it cannot be had: {why}", way=capital(_name(way, now)), why=way.why_not)
        for way in ways
        if way.why_not
    ]
    if not_had:
        lines += ["", *not_had]
    lines += ["", say("Sizes are those of the solved shape; sizes and times are estimates.")]
    return "\n".join(lines)


def _name(way: Way, now: Measured) -> str:
    fewer = way.by == "cells" and way.measured and way.measured.balloons < now.balloons
    return say("by fewer cells") if fewer else say(NAMES[way.by])


def _row(name: str, one: Measured, words: str, units: Units) -> tuple[str, ...]:
    return (
        name,
        spoken_voice().tell(size_words(one.height_m, units)),
        spoken_voice().tell(size_words(one.width_m, units)),
        str(one.balloons),
        duration(spoken_voice(), one.minutes),
        words,
    )


def heading(way: Way, now: Measured, source: str, units: Units) -> str:
    """What stands on top of the resized file: where it comes from, and what must be looked at
    again."""
    assert way.measured is not None
    words = say(
        "{way}, from {file}: {height} high instead of {before} (buildplan resize).",
        way=capital(_name(way, now)),
        file=source,
        height=size_words(way.measured.height_m, units),
        before=size_words(now.height_m, units),
    )
    prices = now.design.prices or now.design.pack_prices
    if way.by == "balloon" and prices:
        return sentences(words, say("Prices are still those of the old size."))
    return words
