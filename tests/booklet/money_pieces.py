"""Balloons and needs for the tests of materials and money."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from hypothesis import strategies as st

from buildplan.evaluation.materials import BalloonNeed
from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.framework.model import BalloonType

INCH_M = 0.0254


def balloon(
    key: str = "long", kind: str = "link", nominal_in: float = 12, colour: str = "#1F5F8B"
) -> BalloonType:
    """A balloon sized to two thirds of its nominal size."""
    gauge_m = nominal_in * INCH_M * 2 / 3
    return BalloonType(
        key, BALLOON_KINDS[kind], nominal_in * INCH_M, gauge_m, 1.15 * gauge_m, True, colour, key
    )


PRODUCTS = {
    name: (balloon(name, kind, size, colour), pack, Decimal(price))
    for name, kind, size, colour, pack, price in (
        ("blue", "link", 12, "#1F5F8B", 50, "15.90"),
        ("ivory", "link", 12, "#F7F3E8", 100, "29.95"),
        ("small ivory", "link", 6, "#F7F3E8", 50, "0.333"),
        ("lock", "round", 5, "#F7F3E8", 100, "8.75"),
        ("loose", "round", 5, "#000000", None, "0.085"),
    )
}


def need(name: str, count: int, rate: str = "0.05") -> BalloonNeed:
    """So many of one of PRODUCTS."""
    kind, pack, price = PRODUCTS[name]
    spare = count * Fraction(rate)
    if pack is None:
        return BalloonNeed(kind, count, spare, None, price, None)
    return BalloonNeed(kind, count, spare, pack, None, price)


needs = st.lists(
    st.builds(
        need,
        st.sampled_from(sorted(PRODUCTS)),
        st.integers(1, 5000),
        st.sampled_from(["0", "0.05", "0.1", "0.333", "1"]),
    ),
    min_size=1,
    max_size=8,
)
