"""The command that makes a design larger or smaller."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from buildplan.commands.app import IN_ENGLISH, DesignArgument, LanguageOption, app, errors
from buildplan.design.measures import Units
from buildplan.language.speaking import say


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
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Make a design another height: by gauge, by balloon size, or by more cells.

    Prints what each way costs in balloons and minutes and the size that it really reaches.
    """
    from buildplan.commands.files import (
        ProblemsFoundError,
        asked,
        read_known,
        write_whole,
        wrong_ending,
    )
    from buildplan.evaluation.measured import measure
    from buildplan.fitting.resize_report import heading, resize_report
    from buildplan.fitting.resizing import one_way, ways
    from buildplan.fitting.sources import parse_height
    from buildplan.source.file_changes import changed_text
    from buildplan.source.trade_words import in_file_words
    from buildplan.source.yaml_nodes import plain
    from buildplan.source.yaml_source import load

    if out is not None and by is None:
        raise typer.BadParameter(say("--out goes with --by: which of the ways is to be written"))
    if out is not None and out.suffix.lower() not in (".yaml", ".yml"):
        raise typer.BadParameter(wrong_ending(out, [".yaml"]))
    height_m = asked(parse_height, height)
    units: Units = "cm" if height.rstrip().endswith("m") else "in"
    name = read_known(design).name
    text = design.read_text("utf-8-sig")
    data = in_file_words(plain(load(text, str(design)).root))
    assert isinstance(data, dict), "a design that has been read is made of keys"
    with errors.status(say("Resizing {piece} ...", piece=name)):
        now = measure(data)
        tried = ways(data, now, height_m) if by is None else [one_way(by, data, now, height_m)]
    typer.echo(resize_report(now, tried, height_m, units))
    if all(way.measured is None for way in tried):
        raise ProblemsFoundError
    if out is not None:
        head = heading(tried[0], now, design.name, units)
        made, kept = changed_text(text, tried[0].changes)
        lost = "" if kept else f"# {say('Its comments could not be kept.')}\n"
        write_whole(out, f"# {head}\n{lost}{made}".encode())
        typer.echo(out)
