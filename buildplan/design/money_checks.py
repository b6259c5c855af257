"""What prices, packs and the currency must agree on."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from babel.numbers import list_currencies

from buildplan.language.messages import mark, message
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, key_in_words, one_of, shown
from buildplan.source.partial_validation import Salvaged, mapping_in
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, by_hand
from buildplan.source.values import CURRENCY


def check_money(
    top: Mapping[str, object], balloons: Mapping[str, Salvaged[Balloon]]
) -> Iterator[Mistake]:
    """Every disagreement about packs and money in `top`, a file's content as plain data."""
    yield from _check_currency(top)
    yield from _check_same_packs(top, balloons)
    prices, sizes = mapping_in(top.get("prices")), mapping_in(top.get("pack_sizes"))
    for key in mapping_in(top.get("pack_prices")):
        name = key_in_words(key)
        if key in prices:
            yield Mistake(
                FileKind.PRICED_TWICE,
                ("pack_prices", key),
                message("{name} has a price for one balloon and another for a pack", name=name),
                Suggestion(
                    (message("keep the one that you pay"),),
                    tuple(
                        Remedy(
                            message("take {key} out", key=f"{table}.{name}"),
                            (TakeOut((table, key)),),
                        )
                        for table in ("prices", "pack_prices")
                    ),
                ),
            )
        if key not in sizes:
            yield Mistake(
                FileKind.NO_PACK_SIZE,
                ("pack_prices", key),
                message("there is no telling how many balloons a pack of {name} holds", name=name),
                by_hand(message("add it: {right}, say", right=f"pack_sizes: {{{name}: 100}}")),
            )


def _check_currency(top: Mapping[str, object]) -> Iterator[Mistake]:
    """A currency that has the form of a code of ISO 4217, and is none that CLDR knows."""
    code = top.get("currency")
    if isinstance(code, str) and re.fullmatch(CURRENCY, code) and code not in list_currencies():
        yield Mistake(
            FileKind.NO_SUCH_CURRENCY,
            ("currency",),
            message("there is no currency {code}", code=shown(code)),
            one_of(
                code,
                ("EUR", "GBP", "USD", "CAD", "AUD", "MXN"),
                mark("such as: {names}"),
                ("currency",),
            ),
        )


def _check_same_packs(
    top: Mapping[str, object], balloons: Mapping[str, Salvaged[Balloon]]
) -> Iterator[Mistake]:
    """Balloons of one kind, size and colour come out of the same packs, at one price."""
    first_of: dict[tuple[str, object], str] = {}
    for key, balloon in balloons.items():
        if not balloon.right("kind", "nominal", "colour"):
            continue
        part = balloon.part
        same = f"{part.kind} {part.nominal:g} {part.colour.upper()}"
        for table in ("pack_sizes", "pack_prices", "prices"):
            values = mapping_in(top.get(table))
            if key not in values:
                continue
            first = first_of.setdefault((table, same), key)
            if values[first] != values[key]:
                yield Mistake(
                    FileKind.UNLIKE_PACKS,
                    (table, key),
                    message(
                        "{one} and {other} are the same balloon (kind, nominal size and colour), "
                        "and {table} gives {first} and {second}",
                        one=key_in_words(key),
                        other=key_in_words(first),
                        table=table,
                        first=shown(values[key]),
                        second=shown(values[first]),
                    ),
                    Suggestion(
                        ways=tuple(
                            Remedy(
                                message("give both {value}", value=shown(values[like])),
                                (Put((table, unlike), values[like]),),
                            )
                            for like, unlike in ((first, key), (key, first))
                        )
                    ),
                )
