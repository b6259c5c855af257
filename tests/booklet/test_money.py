"""Money: exact, rounded once a line, and totals that are the sum of what is printed."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
from babel.numbers import get_currency_precision
from hypothesis import given, settings
from hypothesis import strategies as st
from money_pieces import balloon, need, needs

from buildplan.business.buying.money import (
    QuoteItem,
    cost,
    missing_prices,
    money_words,
    quote,
    rounded,
)
from buildplan.business.quoting.quote_words import quote_lines, quote_rows
from buildplan.design.building import build_framework
from buildplan.design.model import Rates
from buildplan.design.reading import read_design
from buildplan.evaluation.figures import quarter_hours
from buildplan.evaluation.materials import BalloonNeed, needs_of, purchases
from buildplan.language.voice import Voice

DESIGNS = Path(__file__).parent.parent.parent / "designs"
PRICED = DESIGNS / "picture_frame.yaml"
properties = settings(max_examples=150)
shares = st.decimals(0, Decimal("0.95"), places=3)
rates_of_any_kind = st.builds(
    Rates,
    hour=st.decimals(0, 100, places=2),
    margin=shares,
    delivery=st.none() | st.decimals(0, 500, places=3),
    tax=st.none() | shares,
)


@pytest.mark.parametrize(
    ("amount", "currency", "right"),
    [
        # minor units of ISO 4217: two for GBP, none for JPY, three for KWD (from memory)
        ("2.345", "GBP", "2.35"),
        ("2.344999", "GBP", "2.34"),
        ("2.5", "JPY", "3"),
        ("1.2345", "KWD", "1.235"),
        # half even, or a binary 2.675, would make 2.67 of it
        ("2.675", "EUR", "2.68"),
        ("2.665", "EUR", "2.67"),
    ],
)
def test_halves_go_up_at_the_currencys_smallest_unit(
    amount: str, currency: str, right: str
) -> None:
    assert str(rounded(Decimal(amount), currency)) == right


def test_money_is_written_with_its_sign() -> None:
    assert money_words(Decimal("1234.5"), "GBP", Voice()) == "£1,234.50"
    assert money_words(Decimal(1234), "JPY", Voice()).endswith("1,234")


def test_a_quote_worked_by_hand() -> None:
    """Three packs at 15.90 (47.70), one at 8.75, 2 h 15 min at 18.00 (40.50), delivery 12.50:
    cost 109.45. A margin of 0.35 of the price: 109.45 x 0.35 / 0.65 = 58.9346... = 58.93, so
    the price is 168.38; a fifth of it in tax is 33.676 = 33.68: 202.06 in all."""
    rates = Rates(
        hour=Decimal("18.00"),
        margin=Decimal("0.35"),
        delivery=Decimal("12.50"),
        tax=Decimal("0.2"),
    )
    bought = purchases([need("blue", 140), need("lock", 90)])
    made = quote(bought, 121.0, "GBP", rates)
    assert [(line.item, line.amount) for line in made.lines] == [
        (QuoteItem.MATERIAL, Decimal("47.70")),
        (QuoteItem.MATERIAL, Decimal("8.75")),
        (QuoteItem.WORK, Decimal("40.50")),
        (QuoteItem.DELIVERY, Decimal("12.50")),
        (QuoteItem.MARGIN, Decimal("58.93")),
        (QuoteItem.TAX, Decimal("33.68")),
    ]
    assert made.hours == Decimal("2.25")
    assert (made.cost, made.price, made.total) == (
        Decimal("109.45"),
        Decimal("168.38"),
        Decimal("202.06"),
    )


@pytest.mark.parametrize(
    ("price", "tax", "right", "total", "currency"),
    [
        # OpenPEPPOL, BIS Billing 3.0, rules/examples/base-example.xml: 1300 and a charge of 25
        ("1325", "0.25", "331.25", "1656.25", "EUR"),
        # OpenPEPPOL, BIS Billing 3.0, rules/examples/Allowance-example.xml: category S
        ("4900", "0.25", "1225.00", "6125.00", "EUR"),
        # A New Tax System (Goods and Services Tax) Act 1999 (Australia), s 9-90: of all supplies
        # together, then to the nearest cent, 0.5 cents upwards; the amounts are ours
        ("10.05", "0.10", "1.01", "11.06", "AUD"),
        ("33.45", "0.10", "3.35", "36.80", "AUD"),
        # three supplies of 127.25: 57.2625 in all, and not three times 19.09
        ("381.75", "0.15", "57.26", "439.01", "AUD"),
        # the same rule in currencies of no and of three decimals (ISO 4217); the amounts are ours
        ("1055", "0.10", "106", "1161", "JPY"),
        ("10.005", "0.10", "1.001", "11.006", "KWD"),
    ],
)
def test_tax_is_rounded_once_on_the_whole_as_on_published_invoices(
    price: str, tax: str, right: str, total: str, currency: str
) -> None:
    rates = Rates(hour=Decimal(price), margin=Decimal(0), tax=Decimal(tax))
    made = quote([], 60, currency, rates)
    assert made.price == Decimal(price)
    assert (str(made.sum(QuoteItem.TAX)), made.total) == (right, Decimal(total))
    places = {"JPY": 0, "KWD": 3}.get(currency, 2)
    written = money_words(made.total, currency, Voice())
    assert len(written.rpartition(".")[2]) == places if places else "." not in written


@given(needs, st.floats(0, 5000), rates_of_any_kind, st.sampled_from(["GBP", "JPY", "KWD"]))
@properties
def test_totals_are_the_sum_of_the_printed_lines(
    asked: list[BalloonNeed], minutes: float, rates: Rates, currency: str
) -> None:
    made = quote(purchases(asked), minutes, currency, rates)
    printed = [row[2] for row in quote_rows(made, "in", Voice())[1:]]
    assert sum(Decimal(str(amount)) for amount in printed[:-1]) == printed[-1] == made.total
    for line in made.lines:
        assert line.amount == rounded(line.amount, currency), "no line hides a part of a cent"
    smallest = Decimal(1).scaleb(-get_currency_precision(currency))
    assert rates.margin is not None
    kept = made.price - made.cost
    assert abs(kept - made.price * rates.margin) <= smallest, "the margin is a share of the price"


@given(needs)
@properties
def test_what_is_printed_multiplies_out(asked: list[BalloonNeed]) -> None:
    for purchase in purchases(asked):
        assert purchase.price is not None
        amount = cost(purchase, "GBP")
        assert amount is not None
        assert abs(amount - purchase.price * purchase.units) <= Decimal("0.005")


@pytest.mark.parametrize(("minutes", "quarters"), [(0, 1), (15, 1), (15.2, 2), (44.9, 3), (120, 8)])
def test_work_is_charged_in_quarter_hours_begun(minutes: float, quarters: int) -> None:
    assert quarter_hours(minutes) == quarters


def test_a_quote_in_words_prints_every_amount_of_its_lines_and_sums() -> None:
    design = read_design(PRICED)
    assert design.rates is not None
    made = quote(purchases(needs_of(design, build_framework(design))), 255, "GBP", design.rates)
    text = "\n".join(quote_lines(made, design.name, "in", Voice()))
    for amount in (*(line.amount for line in made.lines), made.cost, made.price, made.total):
        assert money_words(amount, "GBP", Voice()) in text


def test_each_missing_price_is_named() -> None:
    design = read_design(PRICED)
    bare = design.model_copy(
        update={"currency": None, "rates": None, "prices": {}, "pack_prices": {}}
    )
    found = missing_prices(bare, purchases(needs_of(bare, build_framework(bare))))
    assert [p.path for p in found] == [
        "currency",
        "prices.frame",
        "prices.across",
        "prices.knot",
        "rates.hour",
        "rates.margin",
    ]
    assert "leaf green 12 in link" in Voice().tell(found[1].message)
    assert not missing_prices(design, purchases(needs_of(design, build_framework(design))))
    unpriced = purchases([BalloonNeed(balloon(), 3, Fraction(0))])
    with pytest.raises(ValueError, match="no price for long"):
        quote(unpriced, 10, "GBP", Rates(hour=Decimal(1), margin=Decimal(0)))
