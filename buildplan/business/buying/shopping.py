"""One shopping list for one design or several: gathered, in words, and as rows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import fsum

from buildplan.business.buying.money import (
    MoneyKind,
    cost,
    disagreements,
    money_words,
    rounded,
)
from buildplan.design.measures import Units, nominal_number
from buildplan.design.model import Design
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import air_words
from buildplan.evaluation.materials import (
    BalloonNeed,
    Purchase,
    air_m3,
    needs_of,
    pump_minutes,
    purchases,
)
from buildplan.framework.model import Framework
from buildplan.language.isolates import isolated
from buildplan.language.messages import listing, message
from buildplan.language.voice import Voice
from buildplan.source.csv_text import Cell
from buildplan.source.problems import DesignProblemsError, Problem
from buildplan.source.suggestions import by_hand


@dataclass(frozen=True)
class ShoppedFor:
    """A design that is shopped for, as read from `file`, and how many of it are built."""

    file: str
    design: Design
    framework: Framework
    times: int = 1


@dataclass(frozen=True)
class ShoppingList:
    """What to buy for all pieces together; `pieces` are their names and how many of each.

    `currency` is None when no file names one. Air and pump time are estimates.
    """

    pieces: tuple[tuple[str, int], ...]
    units: Units
    purchases: tuple[Purchase, ...]
    currency: str | None
    air_m3: float
    pump_minutes: float

    def costs(self) -> tuple[Decimal | None, ...]:
        """What each purchase costs, where its price and the currency are known."""
        if self.currency is None:
            return (None,) * len(self.purchases)
        return tuple(cost(purchase, self.currency) for purchase in self.purchases)

    @property
    def total(self) -> Decimal | None:
        """The sum of all lines; None unless every line has its price."""
        amounts = [amount for amount in self.costs() if amount is not None]
        return sum(amounts, Decimal(0)) if len(amounts) == len(self.purchases) else None


def shopping_list(asked: Sequence[ShoppedFor], units: Units | None = None) -> ShoppingList:
    """One list for all that is `asked` for, in the units of the first.

    Raises DesignProblemsError when the files name different packs, prices or currencies for
    the same thing.
    """
    needs = _needs_by_file(asked)
    problems = disagreements(needs)
    currencies = list(dict.fromkeys(one.design.currency for one in asked if one.design.currency))
    if len(currencies) > 1:
        named = listing(
            message("{currency} in {file}", currency=one.design.currency, file=one.file)
            if one.design.currency
            else message("none in {file}", file=one.file)
            for one in asked
        )
        problems.append(
            Problem(
                MoneyKind.UNLIKE_CURRENCIES,
                message("one list has one currency, not {currencies}", currencies=named),
                by_hand(message("give the same in each")),
            )
        )
    if problems:
        raise DesignProblemsError("shopping", problems)
    return ShoppingList(
        pieces=tuple((one.design.name, one.times) for one in asked),
        units=units or asked[0].design.units,
        purchases=purchases(need for of_file in needs.values() for need in of_file),
        currency=currencies[0] if currencies else None,
        air_m3=fsum(one.times * air_m3(one.framework) for one in asked),
        pump_minutes=fsum(
            one.times * pump_minutes(air_m3(one.framework), one.design.constants) for one in asked
        ),
    )


def _needs_by_file(asked: Sequence[ShoppedFor]) -> Mapping[str, Sequence[BalloonNeed]]:
    """Needs by file; a file that is asked for twice counts twice."""
    found: dict[str, list[BalloonNeed]] = {}
    for one in asked:
        found.setdefault(one.file, []).extend(needs_of(one.design, one.framework, one.times))
    return found


def packs_words(purchase: Purchase, voice: Voice) -> str:
    """What to ask for in the shop: `4 packs of 50`, or a number of balloons."""
    if purchase.packs is None:
        return voice.whole(purchase.to_buy)
    return voice.say_count(
        "{number} pack of {size}",
        "{number} packs of {size}",
        purchase.packs,
        size=purchase.pack_size or 1,
    )


def pieces_words(pieces: Sequence[tuple[str, int]], voice: Voice) -> str:
    """`Reading Star, 2 x Picture Frame`."""
    return ", ".join(
        isolated(name) if times == 1 else voice.say("{times} x {piece}", times=times, piece=name)
        for name, times in pieces
    )


def shopping_lines(shopping: ShoppingList, voice: Voice) -> list[str]:
    """The list in words, a line each; costs where all prices are known."""
    lines = [voice.say("Shopping for {pieces}", pieces=pieces_words(shopping.pieces, voice)), ""]
    names = [
        voice.tell(balloon_words.bought(purchase, shopping.units))
        for purchase in shopping.purchases
    ]
    packs = [packs_words(purchase, voice) for purchase in shopping.purchases]
    wide, wider = max(map(len, packs)), max(map(len, names))
    for purchase, name, buy, amount in zip(
        shopping.purchases, names, packs, shopping.costs(), strict=True
    ):
        counts = voice.say(
            "{needed} needed, {left} left over",
            needed=f"{voice.whole(purchase.needed):>5}",
            left=f"{voice.whole(purchase.to_buy - purchase.needed):>4}",
        )
        line = f"  {buy:<{wide}}  {name:<{wider}}  {counts}"
        if amount is not None and shopping.currency is not None:
            line += f"  {money_words(amount, shopping.currency, voice):>12}"
        lines.append(line.rstrip())
    lines.append("")
    lines.append(total_words(shopping, voice))
    air = air_words(shopping.air_m3, shopping.pump_minutes, shopping.units, voice)
    lines.append(voice.say("Air: {air} (estimate)", air=air))
    return lines


def total_words(shopping: ShoppingList, voice: Voice) -> str:
    """What all of it costs, or what is missing to tell."""
    if shopping.total is not None and shopping.currency is not None:
        return voice.say(
            "All together: {amount}", amount=money_words(shopping.total, shopping.currency, voice)
        )
    if shopping.currency is None:
        return voice.say("No costs: no design file names a currency.")
    unpriced = [
        voice.tell(balloon_words.bought(p, shopping.units))
        for p in shopping.purchases
        if p.price is None
    ]
    return voice.say("No sum: there is no price for {balloons}.", balloons=", ".join(unpriced))


def shopping_rows(shopping: ShoppingList, voice: Voice) -> list[list[Cell]]:
    """The list as rows of a table, the head first."""
    currency = shopping.currency
    rows: list[list[Cell]] = [
        [
            voice.say_in("column", "colour"),
            voice.say_in("column", "hex"),
            voice.say_in("column", "kind"),
            voice.say_in("column", "nominal"),
            voice.say_in("column", "unit"),
            voice.say_in("column", "needed"),
            voice.say_in("column", "spare"),
            voice.say_in("column", "pack size"),
            voice.say_in("column", "packs"),
            voice.say_in("column", "balloons to buy"),
            voice.say_in("column", "price"),
            voice.say_in("column", "cost"),
            voice.say_in("column", "currency"),
        ]
    ]
    for purchase, amount in zip(shopping.purchases, shopping.costs(), strict=True):
        rows.append(
            [
                voice.tell(purchase.label),
                purchase.balloon.colour,
                voice.tell(purchase.balloon.kind.words.called),
                f"{nominal_number(purchase.balloon.nominal_m, shopping.units):.4g}",
                shopping.units,
                purchase.needed,
                purchase.spare,
                purchase.pack_size,
                purchase.packs,
                purchase.to_buy,
                _plain_price(purchase.price, currency),
                amount,
                currency if amount is not None else None,
            ]
        )
    return rows


def _plain_price(price: Decimal | None, currency: str | None) -> Decimal | None:
    """A price with the currency's decimals, unless it is finer than those: 15.90, 0.325."""
    if price is None or currency is None:
        return price
    whole = rounded(price, currency)
    return whole if whole == price else price
