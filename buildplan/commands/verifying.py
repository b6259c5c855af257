"""The command that checks sold copies."""

from __future__ import annotations

import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.options import IN_ENGLISH, JsonOption, LanguageOption
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.business.copies.verifying import Verified


@app.command(name="verify")
def verify_copy(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="A sold copy: .pdf or .html.", show_default=False)
    ],
    key: Annotated[
        Path | None,
        typer.Option(help="The file that sealed it, if one did.", show_default=False),
    ] = None,
    as_json: JsonOption = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Check the serial of a sold copy, and that no page of it was changed.

    A good check proves that no page was changed, added, removed or moved since the file was
    printed, and that serial, buyer and plan belong together; with the seller's key, that whoever
    has that key made it. It does not prove who has read, copied or passed on the file. A copy that
    was sealed with a key can only be judged with that key (exit status 2 without it, as where one
    is given and none sealed it).
    """
    from buildplan.business.copies.verifying import Verdict, verified_lines
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.commands.sale import secret_of

    voice = Voice(language)
    found = _verified(file, secret_of(key, voice), voice)
    if as_json:
        judged = {"good": found.good, "verdict": found.verdict}
        typer.echo(json.dumps(asdict(found) | judged, indent=2, ensure_ascii=False))
    else:
        typer.echo("\n".join(verified_lines(found, voice)))
    if found.verdict in (Verdict.NEEDS_KEY, Verdict.KEYLESS):
        raise typer.Exit(2)
    if not found.good:
        raise ProblemsFoundError


def _verified(file: Path, secret: bytes, voice: Voice) -> Verified:
    """What the check of a file finds; a wrong call where it is no sold copy."""
    from buildplan.business.copies.serial import NoSerialError
    from buildplan.business.copies.verifying import DamagedFileError, verify
    from buildplan.commands.files import unreadable
    from buildplan.screen.sold import verify_companion

    page = file.suffix.lower() in (".html", ".htm")
    try:
        return verify_companion(file, secret) if page else verify(file, secret)
    except OSError as error:
        raise typer.BadParameter(unreadable(file, error, voice)) from error
    except DamagedFileError:
        raise typer.BadParameter(
            voice.say(
                "{file} is no PDF, or a damaged one: ask the seller for another", file=str(file)
            )
        ) from None
    except NoSerialError:
        raise typer.BadParameter(
            voice.say("{file} carries no serial: only the sale edition does", file=str(file))
        ) from None
