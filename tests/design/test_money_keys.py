"""What a design file says about money, and what it must not say."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from babel.numbers import list_currencies
from design_texts import RING, changed, only_problem, problems, read

from buildplan.language.voice import Voice
from buildplan.source.suggestions import suggestion_words
from buildplan.source.values import CURRENCY


def test_money_is_read_as_the_decimal_that_was_typed() -> None:
    rates = "rates: {hour: 18.10, margin: 0.35, delivery: 40, tax: 0.2}\ncurrency: GBP"
    design = read(changed(RING, ("spare: 0.05", rates)))
    assert design.rates is not None
    assert (design.rates.hour, design.rates.margin) == (Decimal("18.1"), Decimal("0.35"))
    assert design.currency == "GBP"


def test_codes_have_the_form_of_iso_4217() -> None:
    """ISO 4217: an alphabetic code is three capital letters (from memory); checked on every
    code of the Unicode CLDR, as babel has it."""
    codes = list_currencies()
    assert len(codes) > 150
    assert all(re.fullmatch(CURRENCY, code) for code in codes)


@pytest.mark.parametrize(
    ("new", "path", "message", "suggestion"),
    [
        ("currency: gbp", "currency", "not the code of a currency", "GBP"),
        ('currency: "£"', "currency", "not the code of a currency", "GBP"),
        ("currency: GBQ", "currency", 'no currency "GBQ"', "GBP"),
        ("rates: {margin: 35}", "rates.margin", "less than 1", "0.35"),
        ("rates: {margin: 1}", "rates.margin", "less than 1", "65 of cost"),
        ("rates: {hour: -1}", "rates.hour", "at least 0", "hour"),
        ("rates: {profit: 0.1}", "rates.profit", "unknown key", "margin"),
        ("pack_prices: {long: 9}", "pack_prices.long", "how many", "pack_sizes: {long: 100}"),
        (
            "pack_prices: {long: 9}\npack_sizes: {long: 50}\nprices: {long: 0.2}",
            "pack_prices.long",
            "for one balloon and another for a pack",
            "keep",
        ),
    ],
)
def test_each_mistake_about_money(new: str, path: str, message: str, suggestion: str) -> None:
    problem = only_problem(changed(RING, ("spare: 0.05", new)))
    assert problem.path == path
    assert message in Voice().tell(problem.message)
    assert suggestion in suggestion_words(problem.suggestion, Voice())


def test_a_price_of_a_pack_that_is_no_balloon() -> None:
    found = problems(changed(RING, ("spare: 0.05", "pack_prices: {lnog: 9}")))
    assert [p.path for p in found] == ["pack_prices.lnog"] * 2
    assert "long" in suggestion_words(found[0].suggestion, Voice())


def test_the_same_balloon_comes_out_of_the_same_packs() -> None:
    small = 'lock:  {kind: link, nominal: 12, inflate_to: 6, colour: "#1f5f8b", label: blue}'
    text = changed(
        RING,
        ("  cross:", f"  small: {small.partition(':')[2].strip()}\n  cross:"),
        ("spare: 0.05", "pack_sizes: {long: 50, small: 100}\nprices: {long: 1, small: 1.0}"),
    )
    problem = only_problem(text)
    assert problem.path == "pack_sizes.small"
    assert "100 and 50" in Voice().tell(problem.message)
