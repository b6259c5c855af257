"""The application that commands are added to, and the options that several share."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer
from rich.console import Console

from buildplan.language.speaking import speak

app = typer.Typer(
    name="buildplan",
    help=(
        "Design a freestanding link-balloon piece once, in a small text file; get its counts, "
        "its shape and whether it stands, the order of work, and a printed, illustrated "
        "booklet.\n\nStart with: buildplan check designs/reading_star.yaml"
    ),
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


errors = Console(stderr=True, highlight=False, soft_wrap=True)


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


class View(StrEnum):
    """Where the piece is seen from."""

    FRONT = "front"
    BACK = "back"
    SIDE = "side"
    TOP = "top"
    CORNER = "corner"


class LanguageName(StrEnum):
    """Language of what is printed: those of `language.speaking.LOCALES`."""

    ENGLISH = "en"
    SPANISH = "es"


def _speak(language: str) -> str:
    """Speak the language until `main` ends, so that what a command ends with is said too."""
    speak(language)
    return language


LanguageOption = Annotated[
    LanguageName,
    typer.Option(
        help="Language of all that is printed.", envvar="BUILDPLAN_LANGUAGE", callback=_speak
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
