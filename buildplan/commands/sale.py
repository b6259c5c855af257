"""Copies that are sold: their options, whom they are for, and the key that seals them."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.aside import aside
from buildplan.commands.options import Edition
from buildplan.language.messages import mark
from buildplan.language.shown import shown
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.source.bounded import bytes_within

if TYPE_CHECKING:
    from buildplan.business.copies.buyers import Buyer
    from buildplan.business.copies.signing import Signer

MOST_TOLD = 20  # bad rows of a list, each on a line
PASSWORD = "BUILDPLAN_SIGN_PASSWORD"

BrandOption = Annotated[
    Path | None,
    typer.Option(
        help="Sale edition: a brand file, in place of the design's own brand.",
        show_default=False,
    ),
]
BuyerOption = Annotated[
    str | None,
    typer.Option(
        "--for",
        metavar="NAME",
        help="Sale edition: the buyer, marked on every page.",
        show_default=False,
    ),
]
BuyersOption = Annotated[
    Path | None,
    typer.Option(
        help="Sale edition: a CSV file with a column 'name', a copy for each row.",
        show_default=False,
    ),
]
KeyOption = Annotated[
    Path | None,
    typer.Option(
        help="Sale edition: a file of your own, kept secret, that seals the copies.",
        show_default=False,
    ),
]
SignOption = Annotated[
    Path | None,
    typer.Option(
        metavar="KEY.p12",
        help="Sale edition: sign with this certificate and key, so that any PDF reader can check "
        "the copies. Asks for its password, or takes BUILDPLAN_SIGN_PASSWORD.",
        show_default=False,
    ),
]


def refuse_for_other_editions(
    edition: Edition, own: Edition, given: Mapping[str, object], voice: Voice
) -> None:
    """A wrong call where an option of one edition, its `own`, is given for another."""
    words = {
        Edition.SALE: mark("{option} is for the sale edition: add --edition sale"),
        Edition.CREW: mark("{option} is for the crew edition: add --edition crew"),
    }
    for option, value in given.items():
        if value and edition is not own:
            raise typer.BadParameter(voice.say(words[own], option=option))


def buyers_named(
    name: str | None, listed: Path | None, voice: Voice
) -> tuple[tuple[Buyer, ...], bool]:
    """Whom copies are for (nobody named when none is given), and whether rows of the list were
    no good; those are told."""
    from buildplan.business.copies.buyers import Buyer

    if name is not None and listed is not None:
        raise typer.BadParameter(voice.say("give --for or --buyers, not both"))
    if name is not None:
        return (buyer_named(name, voice),), False
    if listed is not None:
        return _buyers_in(listed, voice)
    return (Buyer("", ""),), False


def buyer_named(name: str, voice: Voice) -> Buyer:
    """The one buyer of that name."""
    from buildplan.business.copies.buyers import Buyer, name_problem, slug, tidy

    problem = name_problem(tidy(name))
    if problem is not None:
        raise typer.BadParameter(f"--for: {voice.tell(problem)}")
    return Buyer(tidy(name), slug(name))


def _buyers_in(file: Path, voice: Voice) -> tuple[tuple[Buyer, ...], bool]:
    """The buyers of a list; rows that are no good are told."""
    from buildplan.business.copies.buyers import BuyersUnreadableError, read_buyers
    from buildplan.commands.files import unreadable

    try:
        buyers, bad = read_buyers(file)
    except OSError as error:
        raise typer.BadParameter(unreadable(file, error, voice)) from error
    except BuyersUnreadableError as error:
        raise typer.BadParameter(f"{shown(str(file))}: {voice.tell(error.told)}") from error
    for row in bad[:MOST_TOLD]:
        words = voice.say(
            "{place}: {problem}; no copy printed", place=f"{file}:{row.line}", problem=row.why
        )
        aside(words)
    more = len(bad) - MOST_TOLD
    if more > 0:
        aside(voice.say_count("and {number} row more", "and {number} rows more", more))
    if not buyers:
        words = voice.say("{file}: no buyer in it, nothing printed", file=str(file))
        aside(words)
    return buyers, bool(bad) or not buyers


def signer_of(file: Path | None, voice: Voice) -> Signer | None:
    """Who signs, opened with the password that the environment holds or the user types."""
    if file is None:
        return None
    from buildplan.business.copies.signing import MOST_BYTES, Signer
    from buildplan.commands.files import unreadable

    try:
        bytes_within(file, MOST_BYTES)  # before anybody types a password for it
    except OSError as error:
        raise typer.BadParameter(unreadable(file, error, voice)) from error
    password = os.environ.get(PASSWORD)
    if password is None:
        question = voice.say("Password of {file}", file=str(file))
        password = str(typer.prompt(question, hide_input=True, default="", show_default=False))
    signer = Signer(file, password)
    try:
        signer.check()
    except ToldError as error:
        raise typer.BadParameter(voice.tell(error.told)) from error
    return signer


def secret_of(key: Path | None, voice: Voice) -> bytes:
    """The seller's key of a file; empty without one."""
    from buildplan.business.copies.secret import secret_in
    from buildplan.commands.files import unreadable

    if key is None:
        return b""
    try:
        return secret_in(key, str(key))
    except OSError as error:
        raise typer.BadParameter(unreadable(key, error, voice)) from error
    except ToldError as error:
        raise typer.BadParameter(voice.tell(error.told)) from error
