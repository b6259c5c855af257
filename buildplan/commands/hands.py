"""Commands about one's own hands: what to measure, and learning from it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app, errors
from buildplan.commands.files import ProblemsFoundError, unreadable, write_whole
from buildplan.commands.options import IN_ENGLISH, DesignArgument, LanguageOption
from buildplan.commands.pieces import bare_evaluation
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.hands.model import Measurement


@app.command()
def measure(
    design: DesignArgument,
    out: Annotated[
        Path | None,
        typer.Option(help="CSV file to write; else it is printed.", show_default=False),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Print the sheet of what to measure while a design is built, for `learn`.

    Fill in the last column of what you measured; the rest may stay empty.
    """
    from buildplan.business.buying.csv_text import csv_bytes
    from buildplan.hands.sheet import sheet_rows

    data = csv_bytes(sheet_rows(bare_evaluation(design), design.name))
    if out is None:
        typer.echo(data.decode("utf-8-sig"), nl=False)
        return
    write_whole(out, data)
    typer.echo(out)


@app.command()
def learn(
    log: Annotated[
        Path,
        typer.Argument(
            metavar="LOG.csv",
            help="A filled sheet of `measure`, or times: kind, count, minutes.",
            show_default=False,
        ),
    ],
    hands: Annotated[
        Path | None,
        typer.Option(
            help="The file that measurements gather in; else hands.yaml beside the log.",
            show_default=False,
        ),
    ] = None,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Learn lengths, stiffness and minutes of your own hands from what you measured.

    Adds the measurements to hands.yaml; designs beside it are worked out with them from then on.
    """
    from buildplan.hands.file import HANDS_FILE, gathered, hands_text, read_hands
    from buildplan.hands.learning import learn as learn_from
    from buildplan.hands.words import learned_lines

    voice = Voice(language)
    target = hands or log.parent / HANDS_FILE
    before = read_hands(target) if target.exists() else ()
    new = _measured_in(log, voice)
    known = gathered(before, new)
    write_whole(target, hands_text(known).encode())
    typer.echo(target)
    repeated = len(before) + len(new) - len(known)
    if repeated:
        words = voice.say_count(
            "{number} measurement stood there already and is not counted twice",
            "{number} measurements stood there already and are not counted twice",
            repeated,
        )
        errors.print(words, markup=False)
    typer.echo("\n".join(learned_lines(learn_from(known), voice)))


def _measured_in(log: Path, voice: Voice) -> tuple[Measurement, ...]:
    """The measurements of a log; what is wrong with it is told."""
    from buildplan.hands.sheet import LogError, read_log
    from buildplan.hands.words import bad_rows

    try:
        text = log.read_text("utf-8-sig")
        found = read_log(text, lambda name: bare_evaluation(log.parent / name))
    except UnicodeDecodeError as error:
        raise typer.BadParameter(voice.say("{file} is no text", file=str(log))) from error
    except OSError as error:
        raise typer.BadParameter(unreadable(log, error, voice)) from error
    except LogError as error:
        for line in bad_rows(error, str(log), voice):
            errors.print(line, markup=False)
        raise ProblemsFoundError from error
    if not found:
        errors.print(voice.say("{file}: nothing is measured in it", file=str(log)), markup=False)
        raise ProblemsFoundError
    return found
