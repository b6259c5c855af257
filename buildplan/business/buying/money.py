"""Money: decimals throughout, rounded once a line, so that every total is the sum of its lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum, auto

from babel.numbers import format_currency, get_currency_precision

from buildplan.design.model import Design, Rates
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import quarter_hours
from buildplan.evaluation.materials import BalloonNeed, Purchase, by_product, offers
from buildplan.language.isolates import isolated
from buildplan.language.messages import listing, mark, message
from buildplan.language.voice import Voice
from buildplan.source.mistake import key_in_words
from buildplan.source.problems import Problem, ProblemKind
from buildplan.source.suggestions import by_hand


def rounded(amount: Decimal, currency: str) -> Decimal:
    """`amount` to the currency's smallest unit, a half up: to the cent, to the whole yen.

    The number of decimals is that of ISO 4217 as the Unicode CLDR has it.
    """
    return amount.quantize(Decimal(1).scaleb(-get_currency_precision(currency)), ROUND_HALF_UP)


def money_words(amount: Decimal, currency: str, voice: Voice) -> str:
    """An amount with the sign of its currency, as the locale writes it: `£1,234.50` (Spanish
    `1.234,50 £`)."""
    return str(format_currency(amount, currency, locale=voice.locale))


def cost(purchase: Purchase, currency: str) -> Decimal | None:
    """What a purchase costs; None when no price is known. Rounded here, once."""
    if purchase.price is None:
        return None
    return rounded(purchase.price * purchase.units, currency)


class MoneyKind(ProblemKind):
    """What is wrong with prices, packs and rates."""

    NO_CURRENCY = auto()
    NO_PRICE = auto()
    NO_HOURLY_RATE = auto()
    NO_MARGIN = auto()
    UNLIKE_PACK_SIZES = auto()
    UNLIKE_PRICES = auto()
    UNLIKE_CURRENCIES = auto()


class QuoteItem(StrEnum):
    """What a line of a quote is for."""

    MATERIAL = "material"
    WORK = "work"
    DELIVERY = "delivery"
    MARGIN = "margin"
    TAX = "tax"


@dataclass(frozen=True)
class Line:
    """One line of a quote. `purchase` is what a line of material buys."""

    item: QuoteItem
    amount: Decimal
    purchase: Purchase | None = None


@dataclass(frozen=True)
class Quote:
    """From material and work to a price. Every sum is that of the lines above it.

    `hours` is the work that is charged, in quarter hours begun.
    """

    currency: str
    rates: Rates
    hours: Decimal
    lines: tuple[Line, ...]

    def sum(self, *items: QuoteItem) -> Decimal:
        """The sum of all lines of these items."""
        return sum((line.amount for line in self.lines if line.item in items), Decimal(0))

    @property
    def cost(self) -> Decimal:
        """Material, work and delivery."""
        return self.sum(QuoteItem.MATERIAL, QuoteItem.WORK, QuoteItem.DELIVERY)

    @property
    def price(self) -> Decimal:
        """Cost and margin: the price before tax."""
        return self.cost + self.sum(QuoteItem.MARGIN)

    @property
    def total(self) -> Decimal:
        """All that is to be paid."""
        return self.price + self.sum(QuoteItem.TAX)


def quote(purchases: Sequence[Purchase], work_minutes: float, currency: str, rates: Rates) -> Quote:
    """Price a piece. The margin is a share of the price: price = cost / (1 - margin).

    Raises ValueError when a price is missing; `missing_prices` names it before.
    """
    hours = Decimal(quarter_hours(work_minutes)) / 4
    if rates.hour is None or rates.margin is None:
        raise ValueError("a quote needs the rates hour and margin")
    lines = []
    for purchase in purchases:
        amount = cost(purchase, currency)
        if amount is None:
            raise ValueError(f"no price for {purchase.balloon.key}")
        lines.append(Line(QuoteItem.MATERIAL, amount, purchase))
    lines.append(Line(QuoteItem.WORK, rounded(hours * rates.hour, currency)))
    if rates.delivery is not None:
        lines.append(Line(QuoteItem.DELIVERY, rounded(rates.delivery, currency)))
    costs = sum((line.amount for line in lines), Decimal(0))
    kept = rounded(costs * rates.margin / (1 - rates.margin), currency)
    lines.append(Line(QuoteItem.MARGIN, kept))
    if rates.tax is not None:
        lines.append(Line(QuoteItem.TAX, rounded((costs + kept) * rates.tax, currency)))
    return Quote(currency, rates, hours, tuple(lines))


def missing_prices(design: Design, purchases: Iterable[Purchase]) -> list[Problem]:
    """All that a quote of the design needs and its file does not say."""
    problems = []
    if design.currency is None:
        problems.append(
            Problem(
                MoneyKind.NO_CURRENCY,
                message("a quote needs a currency"),
                by_hand(message("add {right}, say", right="currency: GBP")),
                path="currency",
            )
        )
    for purchase in purchases:
        if purchase.price is None:
            key = key_in_words(purchase.balloon.key)
            what = balloon_words.bought(purchase, design.units)
            one, pack = f"prices: {{{key}: ...}}", f"pack_prices: {{{key}: ...}}"
            problems.append(
                Problem(
                    MoneyKind.NO_PRICE,
                    message("a quote needs the price of {balloon}", balloon=what),
                    by_hand(
                        message("add what you pay for one: {one}, or {pack}", one=one, pack=pack)
                        if purchase.pack_size
                        else message("add what you pay for one: {one}", one=one)
                    ),
                    path=f"prices.{key}",
                )
            )
    rates = design.rates
    if rates is None or rates.hour is None:
        problems.append(
            Problem(
                MoneyKind.NO_HOURLY_RATE,
                message("a quote needs what an hour of work costs"),
                by_hand(message("add it: {right}", right="rates: {hour: ...}")),
                path="rates.hour",
            )
        )
    if rates is None or rates.margin is None:
        problems.append(
            Problem(
                MoneyKind.NO_MARGIN,
                message("a quote needs a margin"),
                by_hand(
                    message(
                        "add the part of the price that you keep: {right}, or 0 for none",
                        right="rates: {margin: ...}",
                    )
                ),
                path="rates.margin",
            )
        )
    return problems


def disagreements(needs_of: Mapping[str, Sequence[BalloonNeed]]) -> list[Problem]:
    """Where designs that are bought for together name different packs or prices for the same
    balloon. `needs_of` are the needs by the name of the file."""
    problems = []
    file_of = {id(need): file for file, needs in needs_of.items() for need in needs}
    everything = [need for needs in needs_of.values() for need in needs]
    for same in by_product(everything).values():
        sizes, prices = offers(same)
        balloon = same[0].balloon
        what = message(balloon.kind.words.coloured, colour=balloon.label)
        files = ", ".join(dict.fromkeys(isolated(file_of[id(need)]) for need in same))
        if len(sizes) > 1:
            problems.append(
                Problem(
                    MoneyKind.UNLIKE_PACK_SIZES,
                    message(
                        "a pack of {balloon} holds {sizes}, as {files} have it",
                        balloon=what,
                        sizes=listing([str(size) for size in sizes], "or"),
                        files=files,
                    ),
                    by_hand(message("give the same pack_sizes in each")),
                )
            )
        elif len(prices) > 1:
            wrong = (
                mark("a pack of {balloon} costs {prices}, as {files} have it")
                if sizes
                else mark("one of {balloon} costs {prices}, as {files} have it")
            )
            named = listing([f"{price:f}" for price in prices], "or")
            problems.append(
                Problem(
                    MoneyKind.UNLIKE_PRICES,
                    message(wrong, balloon=what, prices=named, files=files),
                    by_hand(message("give the same price in each")),
                )
            )
    return problems
