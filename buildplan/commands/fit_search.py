"""The search that `fit` runs: told round by round, ended by its clock, and what it writes."""

from __future__ import annotations

import re
import time
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path
from string import ascii_lowercase
from typing import TYPE_CHECKING

from buildplan.commands.aside import answer, aside, busy
from buildplan.commands.expecting import tell_expected
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from buildplan.design.measures import Units
    from buildplan.fitting.candidates import Progress
    from buildplan.fitting.fit import Fit
    from buildplan.fitting.outline import Outline


class EffortName(StrEnum):
    """How hard it is looked for: those of `fitting.effort.EFFORTS`."""

    QUICK = "quick"
    USUAL = "usual"
    LONG = "long"


class PreferenceName(StrEnum):
    """Which of the designs is written."""

    FEW = "few"
    CLOSE = "close"


@dataclass(frozen=True)
class FitWish:
    """What is asked of a fit, read and checked."""

    outline: Outline
    gauges: Sequence[float]
    of_figures: Sequence[float]
    units: Units
    prefer: PreferenceName
    effort: EffortName
    within: str | None
    out: Path | None
    picture: Path | None


def fit_one(wish: FitWish, voice: Voice) -> None:
    """Search, print the choices, write the chosen one."""
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.fitting.fitting import recommended
    from buildplan.fitting.report import fit_report

    until = _until(wish)
    fits, clock = _searched(wish, until, voice)
    chosen = recommended(fits, wish.prefer.value)
    answer(fit_report(fits, voice, wish.prefer.value))
    _write(chosen, wish, clock, voice)
    if not chosen.well:
        _tell_larger(wish, until, voice)
    if not chosen.ready:
        raise ProblemsFoundError


def fit_side_by_side(wishes: Sequence[FitWish], voice: Voice) -> None:
    """Search for each outline of a drawing; write a design for each, and one that joins them."""
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.fitting.fitting import recommended
    from buildplan.fitting.report import fit_report
    from buildplan.fitting.side_by_side import of_one_palette

    found = [_searched(wish, _until(wish), voice) for wish in wishes]
    fits = of_one_palette([recommended(choices, wishes[0].prefer.value) for choices, _ in found])
    names = []
    for letter, fit, wish, (_, clock) in zip(ascii_lowercase, fits, wishes, found, strict=False):
        own = replace(wish, out=_beside(wish.out, letter), picture=_beside(wish.picture, letter))
        answer(fit_report([fit], voice))
        _write(fit, own, clock, voice)
        names.append(own.out.name if own.out is not None else "")
    whole = wishes[0].out
    sound = whole is None or _write_joined(whole, names, fits, voice)
    if not sound or not all(fit.ready for fit in fits):
        raise ProblemsFoundError


def _write_joined(whole: Path, names: Sequence[str], fits: Sequence[Fit], voice: Voice) -> bool:
    """Write the file that joins pieces which lie beside it; whether a check finds nothing wrong."""
    from buildplan.commands.files import write_whole
    from buildplan.fitting.side_by_side import joined

    title = whole.stem.replace("_", " ").title()
    found = joined(title, names, fits, whole.parent, voice)
    if found is None:
        aside(voice.say("no joints of these pieces face one another: tie them by hand"))
        return False
    write_whole(whole, found.text.encode())
    answer(whole)
    if found.on_pole and not found.problems:
        words = voice.say(
            "Side by side they stand with a pole that holds them: {right} is in the file.",
            right="pole: true",
        )
        answer(f"   {words}")
    for problem in found.problems:
        answer(f"   {voice.say('Problem: {problem}', problem=problem)}")
    return not found.problems


def _beside(file: Path | None, letter: str) -> Path | None:
    """The file of one of several pieces: `zoo.yaml` has `zoo_a.yaml` beside it."""
    return None if file is None else file.with_stem(f"{file.stem}_{letter}")


def _until(wish: FitWish) -> float | None:
    """When a search that begins now has to end, where the clock ends it."""
    return None if wish.within is None else time.monotonic() + seconds_of(wish.within)


def _searched(wish: FitWish, until: float | None, voice: Voice) -> tuple[tuple[Fit, ...], str]:
    """The designs that were found, and the time that the search was given, where that ended it."""
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.fitting.effort import EFFORTS
    from buildplan.fitting.fitting import expected_seconds, fit_outline

    reached: list[Progress] = []
    if wish.within is None:
        effort = EFFORTS[wish.effort]
        tell_expected(expected_seconds(wish.outline, wish.gauges, wish.units, effort, voice), voice)
    with busy(voice.say("Fitting {name} ...", name=wish.outline.name)):
        watch = _watching(until, reached, voice)
        effort = EFFORTS[wish.effort]
        fits = fit_outline(
            wish.outline, wish.gauges, wish.units, effort, voice, watch, wish.of_figures
        )
    if not fits:
        aside(
            voice.say(
                "{outline}: no closed tube follows this outline at this height",
                outline=wish.outline.name,
            )
        )
        _tell_larger(wish, until, voice)
        raise ProblemsFoundError
    return fits, "" if wish.within is None or reached[-1].share == 1 else wish.within


def _write(chosen: Fit, wish: FitWish, clock: str, voice: Voice) -> None:
    """The design file and the picture of a fit, as far as they were asked for."""
    from buildplan.commands.files import write_whole
    from buildplan.drawing.forms import FORMS
    from buildplan.fitting.fit_file import fit_text
    from buildplan.fitting.picture import fit_picture

    if wish.out is not None:
        write_whole(wish.out, fit_text(chosen, voice, clock).encode())
        answer(wish.out)
    if wish.picture is not None:
        form = FORMS[wish.picture.suffix.lower()]
        write_whole(wish.picture, form(fit_picture(chosen, voice)))
        answer(wish.picture)


def seconds_of(text: str) -> float:
    """Seconds of a time such as `30s` or `2min`. Raises ToldError."""
    from buildplan.language.messages import message
    from buildplan.language.told import ToldError

    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(s|min)\s*", text)
    if found is None or not float(found[1]):
        raise ToldError(message("{text} is not a time; write it like 30s or 2min", text=repr(text)))
    return float(found[1]) * (60 if found[2] == "min" else 1)


def _watching(
    until: float | None, reached: list[Progress], voice: Voice
) -> Callable[[Progress], bool]:
    """Prints how far the search is after every round, and ends it when its time is over."""
    from buildplan.fitting.progress_report import progress_words

    def watch(progress: Progress) -> bool:
        reached.append(progress)
        aside(f"  {progress_words(progress, voice, reached)}")
        return _time_left(until)

    return watch


def _tell_larger(wish: FitWish, until: float | None, voice: Voice) -> None:
    """At which larger size it can be had; what was asked for has been written before, if it can be
    had at all."""
    from buildplan.fitting.effort import EFFORTS
    from buildplan.fitting.heights import smallest_height
    from buildplan.fitting.larger_report import larger_words
    from buildplan.fitting.measure_words import height_words

    units, gauge, effort = wish.units, min(wish.gauges), EFFORTS[wish.effort]

    def watch(tried_m: float) -> bool:
        height = height_words(tried_m, units, voice)
        aside("  " + voice.say("not up to {height} either", height=height))
        return _time_left(until)

    if not _time_left(until):
        return
    try:
        looking = voice.say("Looking for a size at which it can be had; Ctrl-C stops that ...")
        with busy(looking):
            larger = smallest_height(wish.outline, gauge, units, effort, watch, wish.of_figures)
    except KeyboardInterrupt:
        return
    answer(f"   {larger_words(larger, gauge, units, voice)}")


def _time_left(until: float | None) -> bool:
    return until is None or time.monotonic() < until
