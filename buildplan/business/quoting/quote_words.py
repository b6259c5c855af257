"""A quote in words, line by line, and as rows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from textwrap import wrap

from buildplan.business.buying.money import Line, Quote, QuoteItem, money_words
from buildplan.business.buying.shopping import packs_words, pieces_words
from buildplan.business.quoting.offer import Offer
from buildplan.design.measures import Units
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import minutes_words
from buildplan.language.messages import Message, message_in
from buildplan.language.voice import Voice
from buildplan.source.csv_text import Cell

LINE_WIDTH = 96
ITEMS: Mapping[QuoteItem, Message] = {
    QuoteItem.MATERIAL: message_in("line of a quote", "material"),
    QuoteItem.WORK: message_in("line of a quote", "work"),
    QuoteItem.DELIVERY: message_in("line of a quote", "delivery"),
    QuoteItem.MARGIN: message_in("line of a quote", "margin"),
    QuoteItem.TAX: message_in("line of a quote", "tax"),
}


def offer_lines(offer: Offer, voice: Voice) -> list[str]:
    """An offer in words: how it is made up, and for several pieces the price of each."""
    units = offer.lines[0].piece.made.units
    pieces = [(line.piece.made.facts.name, line.piece.count) for line in offer.lines]
    about = pieces_words(pieces, voice)
    lines = quote_lines(offer.quote, about, units, voice)
    currency = offer.quote.currency
    if len(offer.lines) > 1:
        lines += ["", voice.say("Of the price before tax:")]
        lines += [
            "  "
            + voice.say(
                "{name}: {words}",
                name=line.piece.made.facts.name,
                words=money_words(line.amount, currency, voice),
            )
            for line in offer.lines
        ]
    if offer.deposit is not None:
        lines += [
            "",
            voice.say(
                "On accepting {deposit}, the rest of {rest} when it stands",
                deposit=money_words(offer.deposit, currency, voice),
                rest=money_words(offer.rest, currency, voice),
            ),
        ]
    return lines


def offer_as_data(offer: Offer) -> dict[str, object]:
    """An offer for scripts; amounts are decimal numbers as text, so that none is rounded."""
    quote = offer.quote
    return {
        "number": offer.number,
        "date": offer.date,
        "customer": {"name": offer.customer.name, "address": list(offer.customer.address)},
        "valid_days": offer.valid_days,
        "currency": quote.currency,
        "hours": str(quote.hours),
        "lines": [{"item": str(line.item), "amount": str(line.amount)} for line in quote.lines],
        "pieces": [
            {
                "name": line.piece.made.facts.name,
                "file": line.piece.file,
                "count": line.piece.count,
                "amount": str(line.amount),
            }
            for line in offer.lines
        ],
        "cost": str(quote.cost),
        "price": str(quote.price),
        "tax": str(offer.tax),
        "total": str(quote.total),
        "deposit": None if offer.deposit is None else str(offer.deposit),
        "rest": str(offer.rest),
    }


def quote_lines(quote: Quote, name: str, units: Units, voice: Voice) -> list[str]:
    """The quote in words; sums stand below the lines that they add up."""
    rows = list(_rows(quote, units, voice))
    wide = max(len(words) for words, _ in rows)
    sums = [
        f"  {words:<{wide}}  {money_words(amount, quote.currency, voice):>12}"
        for words, amount in rows
    ]
    return [
        voice.say("Quote for {piece}", piece=name),
        "",
        *sums,
        "",
        *wrap(
            voice.say(
                "Material is in whole packs; work is an estimate, in quarter hours begun. The "
                "margin is a share of the price before tax. Prices and rates are those of the "
                "design file."
            ),
            LINE_WIDTH,
        ),
    ]


def _rows(quote: Quote, units: Units, voice: Voice) -> Iterator[tuple[str, Decimal]]:
    """Words and amounts: every line of the quote, and a sum after each part."""
    for line in quote.lines:
        if line.item is QuoteItem.MARGIN:
            yield voice.say("Cost"), quote.cost
        if line.item is QuoteItem.TAX:
            yield voice.say("Price before tax"), quote.price
        yield line_words(line, quote, units, voice), line.amount
    yield voice.say("Total"), quote.total


def line_words(line: Line, quote: Quote, units: Units, voice: Voice) -> str:
    """What a line is for."""
    rates = quote.rates
    match line.item:
        case QuoteItem.MATERIAL if line.purchase is not None:
            purchase, price = line.purchase, line.purchase.price or Decimal(0)
            each = money_words(price, quote.currency, voice)
            return voice.say(
                "{packs}, {balloon}, at {price}",
                packs=packs_words(purchase, voice),
                balloon=balloon_words.bought(purchase, units),
                price=each,
            )
        case QuoteItem.WORK:
            each = money_words(rates.hour or Decimal(0), quote.currency, voice)
            time = minutes_words(float(quote.hours) * 60, voice)
            return voice.say("Work, {time} at {price} an hour", time=time, price=each)
        case QuoteItem.DELIVERY:
            return voice.say("Delivery, placing and taking away")
        case QuoteItem.MARGIN:
            return voice.say("Margin, {share} of the price", share=share_words(rates.margin, voice))
        case _:
            return voice.say("Tax, {share}", share=share_words(rates.tax, voice))


def share_words(share: Decimal | None, voice: Voice) -> str:
    """A rate as it was typed, in per cent: `20 %`, `8.75 %` (Spanish `8,75 %`)."""
    per_cent = ((share or Decimal(0)) * 100).normalize()
    places = max(0, -int(per_cent.as_tuple().exponent))
    return voice.say("{share} %", share=voice.decimal(float(per_cent), places))


def quote_rows(quote: Quote, units: Units, voice: Voice) -> list[list[Cell]]:
    """The lines of the quote as rows of a table, the head first, the total last."""
    rows: list[list[Cell]] = [
        [voice.say("item"), voice.say("what"), voice.say("amount"), voice.say("currency")]
    ]
    rows += [
        [
            voice.tell(ITEMS[line.item]),
            line_words(line, quote, units, voice),
            line.amount,
            quote.currency,
        ]
        for line in quote.lines
    ]
    return [*rows, [voice.say_in("line of a quote", "total"), "", quote.total, quote.currency]]
