"""The command that checks sold copies."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, answer_data
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

    "Good" proves that whoever has the key that you gave made the file, and that no page was
    changed, added, removed or moved since. "Whole", of a copy that was sealed without a key, says
    that nothing was changed by accident: anybody can change such a copy and seal it anew. Neither
    proves who has read, copied or passed on the file. Exit status 0 for both, 1 when something was
    changed, 2 when it cannot be judged: no key for a copy that has one, or a key for one without.
    """
    from buildplan.business.copies.verified_words import verified_lines
    from buildplan.business.copies.verifying import Verdict
    from buildplan.commands.files import ProblemsFoundError
    from buildplan.commands.sale import secret_of

    voice = Voice(language)
    found = _verified(file, secret_of(key, voice), voice)
    if as_json:
        judged = {
            "good": found.verdict is Verdict.GOOD,
            "whole": found.whole,
            "verdict": found.verdict,
        }
        answer_data(asdict(found) | judged)
    else:
        answer("\n".join(verified_lines(found, voice)))
    if found.verdict in (Verdict.NEEDS_KEY, Verdict.KEYLESS):
        raise typer.Exit(2)
    if not found.whole:
        raise ProblemsFoundError


def _page_verified(file: Path, secret: bytes) -> Verified:
    """What the check of a page for phones finds: that alone needs to know how pages are made."""
    from buildplan.screen.sold import verify_companion

    return verify_companion(file, secret)


def _verified(file: Path, secret: bytes, voice: Voice) -> Verified:
    """What the check of a file finds; a wrong call where it is no sold copy."""
    from buildplan.business.copies.serial import NoSerialError
    from buildplan.business.copies.verifying import (
        DamagedFileError,
        LockedFileError,
        PrintedAnewError,
        verify,
    )
    from buildplan.commands.files import unreadable

    page = file.suffix.lower() in (".html", ".htm")
    if file.is_dir() or (file.exists() and not page and file.suffix.lower() != ".pdf"):
        raise typer.BadParameter(
            voice.say("{file} is no sold copy; name its .pdf or .html", file=str(file))
        )
    try:
        return _page_verified(file, secret) if page else verify(file, secret)
    except OSError as error:
        raise typer.BadParameter(unreadable(file, error, voice)) from error
    except DamagedFileError:
        raise typer.BadParameter(
            voice.say(
                "{file} is no page of ours, or a damaged one: ask the seller for another",
                file=str(file),
            )
            if page
            else voice.say(
                "{file} is no PDF, or a damaged one: ask the seller for another", file=str(file)
            )
        ) from None
    except LockedFileError:
        raise typer.BadParameter(
            voice.say("{file} opens with a password: save it without one", file=str(file))
        ) from None
    except PrintedAnewError as error:
        raise typer.BadParameter(
            voice.say(
                "{file} was printed or saved anew by another program: serial {serial} stands on "
                "its pages, but its seal is gone, and it cannot be judged; ask for the file as it "
                "was sold",
                file=str(file),
                serial=error.serial,
            )
        ) from None
    except NoSerialError:
        raise typer.BadParameter(
            voice.say("{file} carries no serial: only the sale edition does", file=str(file))
        ) from None
