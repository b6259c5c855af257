"""The ways to another height in words."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.design.measures import Units, size_words
from buildplan.fitting.measured import Measured
from buildplan.fitting.ways import Way
from buildplan.sequence.words.times import duration

NAMES = {"gauge": "by gauge", "balloon": "by balloon size", "cells": "by more cells"}
HEAD = ("", "height", "width", "balloons", "work", "what changes")


def resize_report(now: Measured, ways: Sequence[Way], height_m: float, units: Units) -> str:
    """A table of the ways that work, with what each costs and reaches, sizes in `units`; then why
    others do not."""
    rows = [HEAD, _row("as it is", now, "", units)]
    rows += [
        _row(_name(way, now), way.measured, way.words, units)
        for way in ways
        if way.measured is not None
    ]
    widths = [max(len(row[i]) for row in rows) for i in range(len(HEAD))]
    lines = [f"{now.design.name}, to be {size_words(height_m, units)} high", ""]
    for row in rows:
        cells = [word.ljust(width) for word, width in zip(row, widths, strict=True)]
        lines.append("  ".join(cells).rstrip())
    not_had = [f"{_name(way, now)} it cannot be had: {way.why_not}" for way in ways if way.why_not]
    if not_had:
        lines += ["", *(line[:1].upper() + line[1:] for line in not_had)]
    lines += ["", "Sizes are those of the solved shape; sizes and times are estimates."]
    return "\n".join(lines)


def _name(way: Way, now: Measured) -> str:
    fewer = way.by == "cells" and way.measured and way.measured.balloons < now.balloons
    return "by fewer cells" if fewer else NAMES[way.by]


def _row(name: str, one: Measured, words: str, units: Units) -> tuple[str, ...]:
    return (
        name,
        size_words(one.height_m, units),
        size_words(one.width_m, units),
        str(one.balloons),
        duration(one.minutes),
        words,
    )


def heading(way: Way, now: Measured, source: str, units: Units) -> str:
    """What stands on top of the resized file: where it comes from, and what must be looked at
    again."""
    assert way.measured is not None
    words = (
        f"{_name(way, now).capitalize()}, from {source}: "
        f"{size_words(way.measured.height_m, units)} high instead of "
        f"{size_words(now.height_m, units)} (buildplan resize)."
    )
    prices = now.design.prices or now.design.pack_prices
    if way.by == "balloon" and prices:
        words += " Prices are still those of the old size."
    return words
