"""An offer for several pieces: lines, tax, deposit, and how they add up."""

from __future__ import annotations

from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest
from conftest import Call
from hypothesis import given
from hypothesis import strategies as st

from buildplan.business.buying.money import Line, Quote, QuoteItem, rounded
from buildplan.business.quoting.offer import (
    Offer,
    QuotedPiece,
    price_together,
    shared_list,
    shared_out,
)
from buildplan.design.model import Rates
from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import evaluate

DESIGNS = Path(__file__).parents[2] / "designs"
RATES = Rates(hour=Decimal(18), margin=Decimal("0.35"), delivery=Decimal(40), tax=Decimal("0.2"))


@cache
def piece(name: str, count: int = 1) -> QuotedPiece:
    design = read_design(DESIGNS / f"{name}.yaml")
    return QuotedPiece(f"{name}.yaml", evaluate(design, design.units, 12), count)


def test_pieces_together_share_packs_and_the_way() -> None:
    pieces = [piece("reading_star"), piece("picture_frame", 2)]
    whole, lines = price_together(pieces, shared_list(pieces), "GBP", RATES)
    alone = sum(
        (price_together([one], shared_list([one]), "GBP", RATES)[0].total for one in pieces),
        Decimal(0),
    )
    assert whole.total < alone
    assert whole.sum(QuoteItem.DELIVERY) == 40
    # EN 16931-1, BR-CO-10: the sum of the lines is the total without tax
    assert sum(line.amount for line in lines) == whole.price
    # BR-CO-17: tax is the taxable amount times the rate, rounded to two decimals
    assert whole.sum(QuoteItem.TAX) == rounded(whole.price * Decimal("0.2"), "GBP")
    # BR-CO-15: total with tax is total without tax and the tax
    assert whole.total == whole.price + whole.sum(QuoteItem.TAX)


@given(
    st.decimals(0, 10_000, places=2),
    st.lists(st.decimals(0, 500, places=2), min_size=1, max_size=8),
    st.sampled_from(["GBP", "JPY", "KWD"]),
)
def test_shares_add_up_and_none_is_off_by_a_unit(
    amount: Decimal, weights: list[Decimal], currency: str
) -> None:
    amount = rounded(amount, currency)
    shares = shared_out(amount, weights, currency)
    assert sum(shares) == amount
    total = sum(weights)
    unit = {"GBP": Decimal("0.01"), "JPY": Decimal(1), "KWD": Decimal("0.001")}[currency]
    for share, weight in zip(shares, weights, strict=True):
        exact = amount * weight / total if total else amount / len(weights)
        assert abs(share - exact) < unit


def quoted(price: str, tax: str) -> Quote:
    lines = (Line(QuoteItem.WORK, Decimal(price)), Line(QuoteItem.TAX, Decimal(tax)))
    return Quote("GBP", Rates(tax=Decimal("0.2")), Decimal(1), lines)


@pytest.mark.parametrize(
    ("price", "tax", "share", "deposit", "rest"),
    [
        ("100.00", "20.00", "0.3", "36.00", "84.00"),
        ("33.33", "6.67", "0.25", "10.00", "30.00"),
        ("10.05", "2.01", "0.5", "6.03", "6.03"),
        ("10.04", "2.01", "0.5", "6.03", "6.02"),
    ],
)
def test_deposit_and_rest_are_the_whole(
    price: str, tax: str, share: str, deposit: str, rest: str
) -> None:
    """EN 16931-1, BR-CO-16: what is due is the total less what has been paid. Worked by hand."""
    offer = Offer(quoted(price, tax), (), deposit_share=Decimal(share))
    assert (str(offer.deposit), str(offer.rest)) == (deposit, rest)
    assert offer.rest + (offer.deposit or 0) == offer.quote.total


@pytest.mark.parametrize("option", ["--for", "--address", "--from", "--number", "--date"])
def test_a_sign_that_cannot_be_seen_is_refused_wherever_it_is_written(
    call: Call, option: str
) -> None:
    file = str(DESIGNS / "picture_frame.yaml")
    status, _, messages = call("quote", file, "--pdf", "quote.pdf", option, "a\u202eb")
    assert status == 2
    assert "U+202E RIGHT-TO-LEFT OVERRIDE" in messages
    assert "\u202e" not in messages
    assert not Path("quote.pdf").exists()


@pytest.mark.parametrize("option", ["--number", "--date"])
def test_a_number_that_no_page_has_room_for_is_refused(call: Call, option: str) -> None:
    file = str(DESIGNS / "picture_frame.yaml")
    status, _, messages = call("quote", file, "--pdf", "quote.pdf", option, "9" * 81)
    assert status == 2
    assert "80 letters" in messages
    assert call("quote", file, "--pdf", "quote.pdf", option, "9" * 80)[0] == 0
