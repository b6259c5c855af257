"""The commands. Exit status: 0 good; 1 the design was read and has problems, each listed;
2 it could not be read, or the call is wrong; 130 interrupted; 143 told to end."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated

import typer

from buildplan import __version__
from buildplan.commands import (
    checking,
    courses,
    desking,
    drawing,
    fitting,
    hands,
    printing,
    quoting,
    resizing,
    screening,
    selling,
    starting,
    verifying,
    working,
)
from buildplan.commands.app import Reader, app
from buildplan.commands.aside import aside
from buildplan.commands.files import ProblemsFoundError, list_problems, unreadable
from buildplan.commands.options import FLAG
from buildplan.language.told import NoSignError
from buildplan.source.problems import (
    DesignProblemsError,
    UnreadableDesignError,
    in_words,
)
from buildplan.source.whole_files import NotWrittenError, why_not

__all__ = ["app", "main"]

# importing a module adds its commands to the application
COMMANDS = (
    checking,
    courses,
    desking,
    drawing,
    fitting,
    hands,
    printing,
    quoting,
    resizing,
    screening,
    selling,
    starting,
    verifying,
    working,
)


# Statuses of a command that was interrupted or told to end: 128 and the number of the signal.
STOPPED = (130, 143)


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"buildplan {__version__}")
        raise typer.Exit


@app.callback()
def _options(
    version: Annotated[
        bool,
        typer.Option(
            "--version",
            metavar=FLAG,
            callback=_version,
            is_eager=True,
            help="Print the version.",
        ),
    ] = False,
) -> None:
    pass


def _answer(reader: Reader) -> None:
    """Run a command, to the last of what it says."""
    try:
        app(obj=reader)
    except NoSignError as error:
        aside(reader.voice.tell(error.told))
        sys.exit(1)
    finally:
        sys.stdout.flush()


def _say_no_more() -> None:
    """Let nothing more be written to where standard output led."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def main() -> None:
    """Run a command; every error that a user can cause ends in one clear message."""
    reader = Reader()
    try:
        _answer(reader)
    except UnreadableDesignError as error:
        aside(in_words(error.problem, reader.voice, error.file))
        sys.exit(2)
    except DesignProblemsError as error:
        list_problems(Path(error.file), error.problems, reader.voice)
        sys.exit(1)
    except ProblemsFoundError:
        sys.exit(1)
    except SystemExit as ended:
        if ended.code in STOPPED:
            aside(reader.voice.say("Stopped: what was not finished is not written."))
        raise
    except BrokenPipeError:
        # the reader of our output has gone; nothing is left to say
        _say_no_more()
        sys.exit(1)
    except NotWrittenError as error:
        why = reader.voice.tell(error.told)
        aside(reader.voice.say("cannot write {file}: {why}", file=error.filename, why=why))
        sys.exit(2)
    except OSError as error:
        if error.filename is None:
            _say_no_more()
            why = reader.voice.tell(why_not(error))
            aside(reader.voice.say("cannot write the answer: {why}", why=why))
        else:
            aside(unreadable(str(error.filename), error, reader.voice))
        sys.exit(2)
    except Exception as error:
        if os.environ.get("BUILDPLAN_DEBUG"):
            raise
        words = reader.voice.say(
            "buildplan has a fault ({error}). Please report it; BUILDPLAN_DEBUG=1 shows where it "
            "is.",
            error=f"{type(error).__name__}: {error}",
        )
        aside(words)
        sys.exit(2)
