"""The command that makes a design larger or smaller."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, busy
from buildplan.commands.options import IN_ENGLISH, DesignArgument, HandsOption, LanguageOption
from buildplan.design.measures import Units
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from collections.abc import Sequence

    from buildplan.evaluation.measured import Measured
    from buildplan.fitting.resize_options import ResizeWay


class WayName(StrEnum):
    """What is changed to make a piece larger or smaller."""

    GAUGE = "gauge"
    BALLOON = "balloon"
    CELLS = "cells"


@app.command()
def resize(
    design: DesignArgument,
    height: Annotated[
        str,
        typer.Option(help="How high it is to be: 150cm, 2m, 60in, 7ft.", show_default=False),
    ],
    by: Annotated[
        WayName | None,
        typer.Option(
            help="Only this way: another gauge, balloons of another size, or more cells.",
            show_default=False,
        ),
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option(help="Design file to write, a .yaml; with --by.", show_default=False),
    ] = None,
    hands: HandsOption = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Make a design another height: by gauge, by balloon size, or by more cells.

    Prints what each way costs in balloons and minutes and the size that it really reaches.
    """
    from buildplan.commands.files import ProblemsFoundError, asked, refuse_ending, refuse_itself
    from buildplan.commands.pieces import tell_if_long
    from buildplan.evaluation.expected_time import seconds_to_resize
    from buildplan.evaluation.measured import measure
    from buildplan.fitting.checking import file_data
    from buildplan.fitting.resize_report import resize_report
    from buildplan.fitting.resizing import one_way, ways
    from buildplan.fitting.sources import parse_height, units_of
    from buildplan.hands.reading import built_by_hands, read_known

    voice = Voice(language)
    if out is not None and by is None:
        raise typer.BadParameter(
            voice.say("--out goes with --by: which of the ways is to be written")
        )
    refuse_ending(out, (".yaml", ".yml"), voice)
    refuse_itself(out, design, voice)
    height_m = asked(parse_height, height, voice, "--height")
    units = units_of(height)
    read = read_known(design, voice, hands)
    name = read.name
    tell_if_long(read, seconds_to_resize, voice)
    text, data = file_data(design)
    with busy(voice.say("Resizing {piece} ...", piece=name)):
        now = measure(data, design.parent, built_by_hands(design, hands))
        tried = ways(data, now, height_m) if by is None else [one_way(by, data, now, height_m)]
    answer(resize_report(now, tried, height_m, units, voice))
    if all(way.measured is None for way in tried):
        raise ProblemsFoundError
    if out is not None:
        _write(out, text, tried, now, design.name, units, voice)


def _write(
    out: Path,
    text: str,
    tried: Sequence[ResizeWay],
    now: Measured,
    source: str,
    units: Units,
    voice: Voice,
) -> None:
    """Write the design as the one way that was tried makes it, below what was done."""
    from buildplan.commands.files import write_whole
    from buildplan.fitting.resize_report import heading
    from buildplan.source.file_changes import changed_text

    head = heading(tried[0], now, source, units, voice)
    made, kept = changed_text(text, tried[0].changes)
    lost = "" if kept else f"# {voice.say('Its comments could not be kept.')}\n"
    write_whole(out, f"# {head}\n{lost}{made}".encode())
    answer(out)
