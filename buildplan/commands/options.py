"""The options and arguments that several commands share."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from buildplan.commands.app import Reader
from buildplan.language.voice import Voice


class Edition(StrEnum):
    """Who the booklet is for."""

    TRAINING = "training"
    CREW = "crew"
    SALE = "sale"


class PaperName(StrEnum):
    """Paper the booklet is printed on."""

    A4 = "a4"
    LETTER = "letter"


class UnitsName(StrEnum):
    """Units in words and on gauges."""

    INCHES = "in"
    CENTIMETRES = "cm"


class ViewName(StrEnum):
    """Where the piece is seen from."""

    FRONT = "front"
    BACK = "back"
    SIDE = "side"
    TOP = "top"
    CORNER = "corner"


class LanguageName(StrEnum):
    """Language of what is printed: those of `language.voice.LOCALES`."""

    ENGLISH = "en"
    GERMAN = "de"
    SPANISH = "es"
    FRENCH = "fr"
    PORTUGUESE = "pt"


def _read_in(context: typer.Context, language: str) -> str:
    """What the call ends with, in `cli`, is said in this language too."""
    context.ensure_object(Reader).voice = Voice(language)
    return language


LanguageOption = Annotated[
    LanguageName,
    typer.Option(
        help="Language of all that is printed.", envvar="BUILDPLAN_LANGUAGE", callback=_read_in
    ),
]
IN_ENGLISH = LanguageName.ENGLISH


DesignArgument = Annotated[
    Path, typer.Argument(metavar="DESIGN", help="The design file, a .yaml.", show_default=False)
]


DesignsArgument = Annotated[
    list[Path],
    typer.Argument(metavar="DESIGN...", help="One or more design files.", show_default=False),
]


HandsOption = Annotated[
    Path | None,
    typer.Option(
        help="Measurements of your own hands; else hands.yaml beside the design.",
        show_default=False,
    ),
]


DoorOption = Annotated[
    list[str] | None,
    typer.Option(
        metavar="SIZE",
        help="A door on the way in, clear width x height, as 90x205cm or Lift=80x200cm; again for "
        "each.",
        show_default=False,
    ),
]


# how an option that is yes or no shows in --help: it takes no value
FLAG = "yes if given"

JsonOption = Annotated[
    bool,
    typer.Option(
        "--json",
        metavar=FLAG,
        help="Print plain data for scripts, not words.",
    ),
]

UnitsOption = Annotated[
    UnitsName | None, typer.Option(help="Inches or centimetres; else as in the file.")
]
PaperOption = Annotated[PaperName, typer.Option(help="Paper size.")]
FolderOption = Annotated[Path, typer.Option(help="Folder to write to; made if it is not there.")]
OUTPUT = Path("output")
CsvOption = Annotated[
    Path | None,
    typer.Option("--csv", help="Write a table for spreadsheets too.", show_default=False),
]
