"""Files that a user names: what is said of their names, and writing them whole."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from os.path import exists, samefile
from pathlib import Path
from typing import TypeVar

import typer

from buildplan.commands.aside import aside
from buildplan.language.told import ToldError
from buildplan.language.voice import ENGLISH, Voice
from buildplan.source.bounded import why_not_read
from buildplan.source.problems import Problem, in_words
from buildplan.source.whole_files import write_whole as write_whole

Given = TypeVar("Given")


Parsed = TypeVar("Parsed")


class ProblemsFoundError(Exception):
    """The design was read and has problems that have been listed."""


def asked(parse: Callable[[Given], Parsed], text: Given, voice: Voice, option: str = "") -> Parsed:
    """What a user gave, read; a wrong call, of the option if it was given by one, where it cannot
    be."""
    try:
        return parse(text)
    except ToldError as error:
        words = voice.tell(error.told)
        placed = voice.say("{name}: {words}", name=option, words=words) if option else words
        raise typer.BadParameter(placed) from error


def refuse_ending(file: Path | None, endings: Collection[str], voice: Voice) -> None:
    """A wrong call where a file that is named, if one is, has none of these endings."""
    if file is not None and file.suffix.lower() not in endings:
        raise typer.BadParameter(
            voice.say(
                "{file}: the name must end in {endings}",
                file=str(file),
                endings=voice.listed(list(endings), "or"),
            )
        )


def refuse_file_for_folder(folder: Path, voice: Voice) -> None:
    """A wrong call where a file's name is given for the folder to write to: a folder of that name
    is not what was meant."""
    if folder.suffix.lower() == ".pdf" and not folder.is_dir():
        raise typer.BadParameter(
            voice.say(
                "--out is a folder, and what is printed has a name of its own in it: not {file} "
                "but {folder}",
                file=str(folder),
                folder=str(folder.parent),
            )
        )


def refuse_itself(out: Path | None, design: Path, voice: Voice) -> None:
    """A wrong call where what is made of a design would be written over it."""
    # what cannot be looked at is no such file here, and told where it is written
    if out is not None and exists(out) and exists(design) and samefile(out, design):
        raise typer.BadParameter(
            voice.say("{file} is the design itself; name another file", file=str(out))
        )


def unreadable(file: Path | str, error: OSError, voice: Voice) -> str:
    """What is said of a file that the system does not open."""
    return voice.say(
        "{file} cannot be read ({why})", file=str(file), why=voice.tell(why_not_read(error))
    )


def list_problems(file: Path, problems: Sequence[Problem], voice: Voice) -> None:
    """Each problem of a file, on a line of the messages."""
    for problem in problems:
        aside(in_words(problem, voice, str(file)))


def without_events(paths: Sequence[Path], voice: Voice) -> list[Path]:
    """The design files of `designs/*.yaml`, which names event files too."""
    from buildplan.design.event import EVENT_SUFFIX

    events = [path for path in paths if path.name.endswith(EVENT_SUFFIX)]
    for path in events:
        words = voice.say("{file} is an event file: see buildplan event", file=str(path))
        aside(words)
    if len(events) == len(paths):
        raise typer.BadParameter(voice.say("name at least one design file"))
    return [path for path in paths if path not in events]


def in_language(stem: str, voice: Voice) -> str:
    """The stem of a printed file's name, with the language at its end where it is not English."""
    return stem if voice.language == ENGLISH else f"{stem}-{voice.language}"
