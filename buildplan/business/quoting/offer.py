"""A quote for one piece or several, as it is offered to a customer.

All pieces are bought for, built and brought as one job: packs are shared and the way is charged
once. The price is then shared out among the pieces so that their lines add up to it exactly.
Sums follow the European standard for invoices (EN 16931-1: BR-CO-10, 13, 15, 16, 17): lines are
rounded first and then added; tax is worked out once, on the sum, and rounded.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_FLOOR, Decimal
from math import fsum

from babel.numbers import get_currency_precision

from buildplan.business.buying.money import (
    Quote,
    QuoteItem,
    missing_prices,
    quote,
    rounded,
)
from buildplan.business.buying.shopping import ShoppedFor, ShoppingList, shopping_list
from buildplan.business.copies.buyers import name_problem, tidy, unseen_problem
from buildplan.design.model import Rates
from buildplan.evaluation.evaluating import Evaluation
from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.source.problems import DesignProblemsError

MOST_LINES, MOST_LETTERS = 6, 80  # of an address


@dataclass(frozen=True)
class QuotedPiece:
    """A piece that is priced, the file it was read from, and how many of it are built."""

    file: str
    made: Evaluation
    count: int = 1


@dataclass(frozen=True)
class PricedPiece:
    """A line of the offer: all pieces of one design, before tax."""

    piece: QuotedPiece
    amount: Decimal


@dataclass(frozen=True)
class Party:
    """Somebody that an offer is from or for: a name, and lines of address."""

    name: str = ""
    address: tuple[str, ...] = ()


def party(name: str, address: Sequence[str]) -> Party:
    """Somebody as they are written down. Raises ToldError where a page has no room for them."""
    named, lines = tidy(name), tuple(tidy(line) for line in address if line.strip())
    problem = name_problem(named) if named else None
    if problem is not None:
        raise ToldError(problem)
    unseen = next(filter(None, map(unseen_problem, lines)), None)
    if unseen is not None:
        raise ToldError(unseen)
    if len(lines) > MOST_LINES or any(len(line) > MOST_LETTERS for line in lines):
        raise ToldError(message("an address has six lines at most, of 80 letters at most"))
    return Party(named, lines)


def noted(text: str) -> str:
    """A number or a date as it is printed. Raises ToldError where a page has no room for it."""
    found = tidy(text)
    unseen = unseen_problem(found)
    if unseen is not None:
        raise ToldError(unseen)
    if len(found) > MOST_LETTERS:
        raise ToldError(
            message(
                "the number and the date of a quote have {most} letters at most", most=MOST_LETTERS
            )
        )
    return found


@dataclass(frozen=True)
class Offer:
    """What is offered to whom. `number` and `date` are as they were given; empty, they are left to
    be filled in, and so are the days that the offer holds, where they are None. `deposit_share` is
    the part of the whole that is paid when the offer is accepted. `job` is what several pieces
    are for, empty where nothing is said."""

    quote: Quote
    lines: tuple[PricedPiece, ...]
    customer: Party = Party()
    seller: Party = Party()
    number: str = ""
    date: str = ""
    valid_days: int | None = None
    deposit_share: Decimal | None = None
    job: str = ""

    @property
    def tax(self) -> Decimal:
        """The tax on the whole price."""
        return self.quote.sum(QuoteItem.TAX)

    @property
    def deposit(self) -> Decimal | None:
        """What is paid at once; None where no deposit is asked for."""
        if self.deposit_share is None:
            return None
        return rounded(self.quote.total * self.deposit_share, self.quote.currency)

    @property
    def rest(self) -> Decimal:
        """What is paid afterwards."""
        return self.quote.total - (self.deposit or Decimal(0))


def terms_of(pieces: Sequence[QuotedPiece]) -> tuple[str, Rates]:
    """The currency and the rates that all pieces are priced at. Raises DesignProblemsError for a
    piece that lacks what a price needs, ToldError where their rates differ."""
    for one in pieces:
        missing = missing_prices(one.made.design, one.made.facts.purchases)
        if missing:
            raise DesignProblemsError(one.file, missing, one.made.design.name)
    first = pieces[0]
    for one in pieces[1:]:
        if one.made.design.rates != first.made.design.rates:
            raise ToldError(
                message(
                    "{one} and {other} have different rates; one quote has one",
                    one=first.file,
                    other=one.file,
                )
            )
    currency, rates = first.made.design.currency, first.made.design.rates
    assert currency is not None, "missing_prices names it"
    assert rates is not None, "missing_prices names them"
    return currency, rates


def shared_list(pieces: Sequence[QuotedPiece]) -> ShoppingList:
    """What is bought for all pieces together. Raises DesignProblemsError where they disagree."""
    return shopping_list(
        [ShoppedFor(one.file, one.made.design, one.made.framework, one.count) for one in pieces]
    )


def priced_as_one(pieces: Sequence[QuotedPiece]) -> tuple[Quote, tuple[PricedPiece, ...]]:
    """Pieces priced as one job, at their own terms. Raises as `terms_of` and `shared_list` do."""
    currency, rates = terms_of(pieces)
    return price_together(pieces, shared_list(pieces), currency, rates)


def price_together(
    pieces: Sequence[QuotedPiece], shopping: ShoppingList, currency: str, rates: Rates
) -> tuple[Quote, tuple[PricedPiece, ...]]:
    """Price pieces as one job, and share the price out among them by what each costs alone."""
    minutes = fsum(one.count * one.made.facts.work_minutes for one in pieces)
    whole = quote(shopping.purchases, minutes, currency, rates)
    alone = [
        one.count
        * quote(one.made.facts.purchases, one.made.facts.work_minutes, currency, rates).sum(
            QuoteItem.MATERIAL, QuoteItem.WORK
        )
        for one in pieces
    ]
    amounts = shared_out(whole.price, alone, currency)
    lines = zip(pieces, amounts, strict=True)
    return whole, tuple(PricedPiece(piece, amount) for piece, amount in lines)


def shared_out(amount: Decimal, weights: Sequence[Decimal], currency: str) -> list[Decimal]:
    """An amount shared out by weights, to the currency's smallest unit, so that the shares add up
    to it: what rounding down leaves goes to the largest remainders, the first of equals first
    (Hamilton's method of apportionment)."""
    unit = Decimal(1).scaleb(-get_currency_precision(currency))
    total = sum(weights, Decimal(0))
    if not total:
        weights, total = [Decimal(1)] * len(weights), Decimal(len(weights))
    exact = [amount * weight / total for weight in weights]
    shares = [one.quantize(unit, ROUND_FLOOR) for one in exact]
    left = int((amount - sum(shares, Decimal(0))) / unit)
    by_remainder = sorted(range(len(exact)), key=lambda i: (shares[i] - exact[i], i))
    for i in by_remainder[:left]:
        shares[i] += unit
    return shares
