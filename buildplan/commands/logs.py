"""Reading a log of measurements that a user names."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import typer

from buildplan.commands.aside import aside
from buildplan.commands.files import ProblemsFoundError, unreadable
from buildplan.commands.pieces import bare_evaluation
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.source.bounded import bytes_within
from buildplan.source.file_text import MOST_BYTES

if TYPE_CHECKING:
    from buildplan.hands.model import Measurement


def measured_in(log: Path, voice: Voice) -> tuple[Measurement, ...]:
    """The measurements of a log; what is wrong with it is told."""
    from buildplan.hands.log import LogError, is_unfilled, read_log
    from buildplan.hands.words import bad_rows

    if log.suffix.lower() in (".yaml", ".yml"):
        raise typer.BadParameter(
            voice.say(
                "{file} is no log; for a design, {command} writes one to fill in",
                file=str(log),
                command=f"buildplan measure {log} --out log.csv",
            )
        )
    try:
        text = bytes_within(log, MOST_BYTES).decode("utf-8-sig")
        found = read_log(text, lambda name: bare_evaluation(log.parent / name))
    except UnicodeDecodeError as error:
        raise typer.BadParameter(voice.say("{file} is no text", file=str(log))) from error
    except OSError as error:
        raise typer.BadParameter(unreadable(log, error, voice)) from error
    except LogError as error:
        for line in bad_rows(error, str(log), voice):
            aside(line)
        raise ProblemsFoundError from error
    if not found:
        words = (
            message(
                "{file}: no row has a number yet; write what you measured into the last column, "
                "measured, and leave the other rows empty",
                file=str(log),
            )
            if is_unfilled(text)
            else message(
                "{file}: nothing is measured in it; write a row for each measurement, with its "
                "number in the last column",
                file=str(log),
            )
        )
        aside(voice.tell(words))
        raise ProblemsFoundError
    return found


def keep_what_is_measured(sheet: Path, voice: Voice) -> None:
    """A wrong call where a sheet would be written over a file that is no empty sheet."""
    from buildplan.hands.log import is_unfilled

    try:
        text = bytes_within(sheet, MOST_BYTES).decode("utf-8-sig", errors="replace")
    except OSError:
        return  # nothing is there, or writing tells what is
    if not is_unfilled(text):
        raise typer.BadParameter(
            voice.say(
                "{file} is there already and is no empty sheet; learn from it first, or choose "
                "another with --out",
                file=str(sheet),
            )
        )
