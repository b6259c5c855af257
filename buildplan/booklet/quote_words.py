"""A quote in words, line by line, and as rows."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from buildplan.booklet.csv_text import Cell
from buildplan.booklet.money import Item, Line, Quote, balloon_words, money_words
from buildplan.booklet.shopping import packs_words
from buildplan.booklet.words import minutes_words
from buildplan.design.measures import Units


def quote_lines(quote: Quote, name: str, units: Units) -> list[str]:
    """The quote in words; sums stand below the lines that they add up."""
    rows = list(_rows(quote, units))
    wide = max(len(words) for words, _ in rows)
    sums = [
        f"  {words:<{wide}}  {money_words(amount, quote.currency):>12}" for words, amount in rows
    ]
    return [
        f"Quote for {name}",
        "",
        *sums,
        "",
        "Material is in whole packs; work is an estimate, in quarter hours begun. The margin is "
        "a share",
        "of the price before tax. Prices and rates are those of the design file.",
    ]


def _rows(quote: Quote, units: Units) -> Iterator[tuple[str, Decimal]]:
    """Words and amounts: every line of the quote, and a sum after each part."""
    for line in quote.lines:
        if line.item is Item.MARGIN:
            yield "Cost", quote.cost
        if line.item is Item.TAX:
            yield "Price before tax", quote.price
        yield line_words(line, quote, units), line.amount
    yield "Total", quote.total


def line_words(line: Line, quote: Quote, units: Units) -> str:
    """What a line is for."""
    rates = quote.rates
    match line.item:
        case Item.MATERIAL if line.purchase is not None:
            purchase, price = line.purchase, line.purchase.price or Decimal(0)
            each = money_words(price, quote.currency)
            return f"{packs_words(purchase)}, {balloon_words(purchase, units)}, at {each}"
        case Item.WORK:
            each = money_words(rates.hour or Decimal(0), quote.currency)
            return f"Work, {minutes_words(float(quote.hours) * 60)} at {each} an hour"
        case Item.DELIVERY:
            return "Delivery, placing and taking away"
        case Item.MARGIN:
            return f"Margin, {_percent(rates.margin)} of the price"
        case _:
            return f"Tax, {_percent(rates.tax)}"


def _percent(share: Decimal | None) -> str:
    return f"{float((share or Decimal(0)) * 100):g} %"


def quote_rows(quote: Quote, units: Units) -> list[list[Cell]]:
    """The lines of the quote as rows of a table, the head first, the total last."""
    rows: list[list[Cell]] = [["item", "what", "amount", "currency"]]
    rows += [
        [str(line.item), line_words(line, quote, units), line.amount, quote.currency]
        for line in quote.lines
    ]
    return [*rows, ["total", "", quote.total, quote.currency]]
