"""Looking at a design again at each save: a picture beside the file, and its figures in short."""

from __future__ import annotations

import time
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from buildplan.design.building import build_framework
from buildplan.design.measures import size_words, units_read
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.evaluating import resting_shape
from buildplan.evaluation.figures import weight_words
from buildplan.evaluation.seating import read_whole
from buildplan.framework.counts import balloon_counts, ring_lengths
from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError, in_words

PREVIEW_POINTS = 440
# Seconds between looks at the file: shorter than a hand takes from the editor to the picture.
PAUSE = 0.15
SETTLING = 0.05


@dataclass(frozen=True)
class Glance:
    """What one look at a design file found: lines to print, and a picture when there is a piece
    to draw."""

    lines: tuple[str, ...]
    picture: Picture | None


def preview_path(path: Path) -> Path:
    """Where the picture of a design file goes: `star.yaml` has `star.preview.png` beside it."""
    return path.with_suffix(".preview.png")


def glance(path: Path, voice: Voice, known_constants: Collection[str] | None = None) -> Glance:
    """Look at a design file, whatever state it is in.

    What takes long, how it gives and bears the wind, is left to `check`.
    """
    try:
        design = read_whole(path, known_constants)
        framework = build_framework(design)
        shape = resting_shape(design, framework)
    except UnreadableDesignError as error:
        return Glance((in_words(error.problem, voice, error.file),), None)
    except DesignProblemsError as error:
        return Glance(
            tuple(in_words(problem, voice, error.file) for problem in error.problems), None
        )
    counts = balloon_counts(framework)
    of_each = ", ".join(f"{count} {key}" for key, count in counts.items() if count)
    size = " x ".join(
        voice.tell(size_words(length, units_read(voice, design.units)))
        for length in (shape.width_m, shape.height_m, shape.depth_m)
    )
    lines = [
        voice.say(
            "{piece}: {number} balloons ({of_each})",
            piece=design.name,
            number=sum(counts.values()),
            of_each=of_each,
        ),
        voice.say(
            "{size} (width x height x depth), {weight}: estimates",
            size=size,
            weight=weight_words(shape.mass_kg, voice),
        ),
        _tied(framework, voice),
        voice.say(
            "closes: {closes}; stands: {stands}",
            closes=_yes_or_no(shape.closes, voice),
            stands=_yes_or_no(shape.standing.stands, voice),
        ),
        *(f"- {in_words(problem, voice)}" for problem in shape.problems),
    ]
    lines[1:] = [f"  {line}" for line in lines[1:]]
    picture = finished_picture(framework, shape, CAMERAS["front"], PREVIEW_POINTS, PREVIEW_POINTS)
    return Glance(tuple(lines), picture)


def _tied(framework: Framework, voice: Voice) -> str:
    """How many braces, singles and locks there are, and how long the rings."""
    rings = ring_lengths(framework)
    return voice.say(
        mark("{braces} braces, {singles} singles, {locks} locks, rings of {numbers}")
        if rings
        else mark("{braces} braces, {singles} singles, {locks} locks"),
        braces=len(framework.braces),
        singles=len(framework.singles),
        locks=len(framework.locks),
        numbers=", ".join(map(voice.whole, rings)),
    )


def _yes_or_no(holds: bool, voice: Voice) -> str:
    return voice.say("yes") if holds else voice.say("no")


def watch(
    path: Path,
    changes: Iterable[object],
    show: Callable[[Glance], None],
    voice: Voice,
    known_constants: Collection[str] | None = None,
) -> None:
    """Show a glance at the file for each of `changes`, and go on through whatever is wrong
    with it, as long as there are changes."""
    for _ in changes:
        try:
            seen = glance(path, voice, known_constants)
        except Exception as error:  # noqa: BLE001 - a fault of ours must not end an afternoon
            fault = voice.say(
                "{file}: buildplan has a fault ({fault})",
                file=str(path),
                fault=f"{type(error).__name__}: {error}",
            )
            seen = Glance((fault,), None)
        show(seen)


def saves(
    path: Path, pause: Callable[[float], None] = time.sleep
) -> Iterator[tuple[int, int] | None]:
    """The file's state (time of change and size; None when it is not there), once at first and
    then whenever it has changed and come to rest: an editor that empties a file before it
    writes it is waited for. Never ends."""
    last: object = saves
    while True:
        state = _state(path)
        if state == last:
            pause(PAUSE)
            continue
        while True:
            pause(SETTLING)
            settled, state = state, _state(path)
            if settled == state:
                break
        if state != last:
            last = state
            yield state


def _state(path: Path) -> tuple[int, int] | None:
    try:
        about = path.stat()
    except OSError:
        return None
    return about.st_mtime_ns, about.st_size
