"""The application that commands are added to, and who reads what it says."""

from __future__ import annotations

from dataclasses import dataclass, field

import typer

from buildplan.commands.wrong_calls import Commands
from buildplan.language.voice import Voice

app = typer.Typer(
    name="buildplan",
    cls=Commands,
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


@dataclass
class Reader:
    """Whoever reads what a call says: in English until the call has told another language."""

    voice: Voice = field(default_factory=Voice)
