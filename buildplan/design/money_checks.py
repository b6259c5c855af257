"""What prices, packs and the currency must agree on."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from babel.numbers import list_currencies

from buildplan.design.mistake import Mistake, key_in_words, one_of, shown
from buildplan.design.model import CURRENCY
from buildplan.design.salvage import mapping_in


def check_money(top: Mapping[str, object]) -> Iterator[Mistake]:
    """Every disagreement about money in `top`, a file's content as plain data."""
    yield from check_currency(top)
    prices, sizes = mapping_in(top.get("prices")), mapping_in(top.get("pack_sizes"))
    for key in mapping_in(top.get("pack_prices")):
        name = key_in_words(key)
        if key in prices:
            yield Mistake(
                ("pack_prices", key),
                f"{name} has a price for one balloon and another for a pack",
                "keep the one that you pay",
            )
        if key not in sizes:
            yield Mistake(
                ("pack_prices", key),
                f"there is no telling how many balloons a pack of {name} holds",
                f"add it: pack_sizes: {{{name}: 100}}, say",
            )


def check_currency(top: Mapping[str, object]) -> Iterator[Mistake]:
    """A currency that has the form of a code of ISO 4217, and is none that CLDR knows."""
    code = top.get("currency")
    if isinstance(code, str) and re.fullmatch(CURRENCY, code) and code not in list_currencies():
        yield Mistake(
            ("currency",),
            f"there is no currency {shown(code)}",
            one_of(code, ("EUR", "GBP", "USD", "CAD", "AUD", "MXN"), "such as"),
        )
