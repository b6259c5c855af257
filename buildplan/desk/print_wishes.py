"""What can be asked for beside: doors, buyers, the terms of a quote; read as it was written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from buildplan.business.copies.buyers import (
    COLUMN,
    Buyer,
    BuyersUnreadableError,
    buyers_in,
)
from buildplan.business.copies.page_link import page_address
from buildplan.business.quoting.offer import Offer, Party, noted, party
from buildplan.desk.page_words import PRINT
from buildplan.desk.print_task import Wishes
from buildplan.desk.refusals import RefusedError
from buildplan.evaluation.passing import Door, parse_door
from buildplan.language.messages import Message, message
from buildplan.language.told import ToldError

NOBODY = Buyer("", "")
PERCENT = Decimal(100)


def doors_of(wishes: Wishes) -> tuple[Door, ...]:
    """The doors on the way in, one on each line. Raises RefusedError for what is none."""
    try:
        return tuple(parse_door(line) for line in _lines(wishes.doors))
    except ToldError as error:
        raise RefusedError(422, error.told) from error


def link_of(wishes: Wishes) -> str | None:
    """Where printed pages lead. Raises RefusedError for what is no address of a page."""
    try:
        return page_address(wishes.link.strip()) if wishes.link.strip() else None
    except ToldError as error:
        raise RefusedError(422, error.told) from error


def buyers_of(wishes: Wishes) -> tuple[Buyer, ...]:
    """Whom copies are for, from a name on each line or a table (CSV) with a column `name`; one who
    is not named where nothing is given. Raises RefusedError where a line is no good."""
    if not wishes.buyers.strip():
        return (NOBODY,)
    text = wishes.buyers.lstrip("\ufeff").strip() + "\n"
    head = [cell.strip().strip('"').lower() for cell in _cells(text)]
    if COLUMN not in head:
        quoted = ('"' + line.replace('"', '""') + '"' for line in _lines(text))
        text = "\n".join([COLUMN, *quoted, ""])
    try:
        found, bad = buyers_in(text)
    except BuyersUnreadableError as error:
        raise RefusedError(422, error.told) from error
    if bad:
        line = bad[0].line if COLUMN in head else bad[0].line - 1
        told = message("buyers, line {line}: {problem}", line=line, problem=bad[0].why)
        raise RefusedError(422, told)
    return found


def _cells(text: str) -> Sequence[str]:
    first = text.split("\n", 1)[0]
    return first.replace(";", ",").replace("\t", ",").split(",")


def _lines(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines() if line.strip()]


def with_terms(offer: Offer, wishes: Wishes) -> Offer:
    """An offer with whom it is for and what is agreed. Raises RefusedError as `party_of`."""
    return Offer(
        offer.quote,
        offer.lines,
        party_of(wishes.customer, wishes.address),
        party_of("", wishes.sender),
        noted_as(wishes.number),
        noted_as(wishes.date),
        wishes.valid or None,
        Decimal(wishes.deposit) / PERCENT if wishes.deposit else None,
        offer.job,
    )


def party_of(name: str, address: str) -> Party:
    """Somebody with the lines of an address. Raises RefusedError where a quote has no room for
    them."""
    try:
        return party(name, address.splitlines())
    except ToldError as error:
        raise RefusedError(422, error.told) from error


def noted_as(text: str) -> str:
    """A number or a date of a quote. Raises RefusedError where a page has no room for it."""
    try:
        return noted(text)
    except ToldError as error:
        raise RefusedError(422, error.told) from error


def written_in(wishes: Wishes) -> Iterator[tuple[Message, str]]:
    """What is printed as it was written, each text with what its field is called."""
    fields = (
        ("buyers", wishes.buyers),
        ("doors", wishes.doors),
        ("customer", wishes.customer),
        ("address", wishes.address),
        ("sender", wishes.sender),
        ("number", wishes.number),
        ("date", wishes.date),
    )
    return ((message(PRINT[field]), line) for field, text in fields for line in text.splitlines())


def refuse_unfit(wishes: Wishes) -> None:
    """Raise RefusedError for the first wish that cannot be had, before any work is done."""
    doors_of(wishes)
    link_of(wishes)
    buyers_of(wishes)
    party_of(wishes.customer, wishes.address)
    party_of("", wishes.sender)
    noted_as(wishes.number)
    noted_as(wishes.date)
