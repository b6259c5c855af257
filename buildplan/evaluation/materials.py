"""What to buy: balloons by colour, kind and size, in whole packs, with spares; and the air."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from buildplan.design.model import Design
from buildplan.evaluation.figures import FINISHES
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import BalloonType, Framework
from buildplan.language.messages import Message, message
from buildplan.shape.constants import constants_with
from buildplan.shape.standing import body_volume_m3
from buildplan.source.values import ConstantRange

LITRES_PER_M3 = 1000

Product = tuple[str, int, str, str]
"""What makes balloons the same in a shop: kind, nominal size in tenths of a millimetre, colour
and finish. Balloons sized to different gauges come out of the same pack."""


@dataclass(frozen=True)
class BalloonNeed:
    """Balloons of one key that a piece takes, before anything is rounded.

    `spare` is exact. `pack_size`, `balloon_price` and `pack_price` are what the piece's file
    says of them, None where it says nothing.
    """

    balloon: BalloonType
    count: int
    spare: Fraction
    pack_size: int | None = None
    balloon_price: Decimal | None = None
    pack_price: Decimal | None = None


@dataclass(frozen=True)
class Purchase:
    """What to buy of one product: `needed` for the work, `spare` on top, in whole packs.

    `balloons` are all that come out of these packs, one for each key. `pack_size` is None when
    they are bought one by one; `price` is that of one pack (or of one balloon then), None when
    the file names none.
    """

    balloons: tuple[BalloonType, ...]
    needed: int
    spare: int
    pack_size: int | None
    price: Decimal | None

    @property
    def balloon(self) -> BalloonType:
        """The first of its balloons, for what they have in common."""
        return self.balloons[0]

    @property
    def label(self) -> str | Message:
        """What people call its colour; all the names, where designs differ; and its finish,
        unless that is the usual one."""
        names = " / ".join(dict.fromkeys(balloon.label for balloon in self.balloons))
        finish = self.balloon.finish
        if finish == "standard":
            return names
        return message("{colour}, {finish}", colour=names, finish=FINISHES[finish])

    @property
    def packs(self) -> int | None:
        """Whole packs that hold all that is needed and the spares, and not one more."""
        return self.pack_size and -(-(self.needed + self.spare) // self.pack_size)

    @property
    def units(self) -> int:
        """How many times the price is paid: packs, or balloons bought one by one."""
        return self.needed + self.spare if self.packs is None else self.packs

    @property
    def to_buy(self) -> int:
        """Balloons bought: whole packs, or exactly needed and spare."""
        return self.units * (self.pack_size or 1)


def product(balloon: BalloonType) -> Product:
    """What the balloon is in a shop."""
    size = round(balloon.nominal_m * 10_000)
    return balloon.kind.name, size, balloon.colour, balloon.finish


def needs_of(design: Design, framework: Framework, times: int = 1) -> tuple[BalloonNeed, ...]:
    """The balloons that a piece takes when it is built `times` over, in the file's order."""
    # as it was typed: 5 % of 160 is 8, and not a hair more
    rate = Fraction(str(design.spare))
    return tuple(
        BalloonNeed(
            framework.balloons[key],
            count * times,
            count * times * rate,
            design.pack_sizes.get(key),
            design.prices.get(key),
            design.pack_prices.get(key),
        )
        for key, count in balloon_counts(framework).items()
        if count
    )


def purchases(needs: Iterable[BalloonNeed]) -> tuple[Purchase, ...]:
    """What to buy for all `needs` together: one purchase for each product, in their order.

    Spares are added up exactly and rounded up once, so that together they never take more
    than apart. Raises ValueError where needs of one product differ in pack size or price
    (see `disagreements`).
    """
    return tuple(_purchase(same) for same in by_product(needs).values())


def by_product(needs: Iterable[BalloonNeed]) -> Mapping[Product, Sequence[BalloonNeed]]:
    """Needs that the same packs serve, in the order in which each product first comes."""
    found: dict[Product, list[BalloonNeed]] = {}
    for need in needs:
        found.setdefault(product(need.balloon), []).append(need)
    return found


def _purchase(needs: Sequence[BalloonNeed]) -> Purchase:
    sizes, prices = offers(needs)
    if len(sizes) > 1 or len(prices) > 1:
        raise ValueError(f"{needs[0].balloon.key}: pack sizes {sizes}, prices {prices}")
    return Purchase(
        balloons=tuple(need.balloon for need in needs),
        needed=sum(need.count for need in needs),
        spare=math.ceil(math.fsum(need.spare for need in needs)),
        pack_size=sizes[0] if sizes else None,
        price=prices[0] if prices else None,
    )


def offers(needs: Sequence[BalloonNeed]) -> tuple[list[int], list[Decimal]]:
    """The pack sizes and the prices (of a pack; of a balloon where none says a size) that
    needs of one product name. More than one of either is a contradiction."""
    sizes = dict.fromkeys(need.pack_size for need in needs if need.pack_size is not None)
    size = next(iter(sizes), 1)
    prices: dict[Decimal, None] = {}
    for need in needs:
        if need.pack_price is not None:
            prices[need.pack_price] = None
        elif need.balloon_price is not None:
            prices[need.balloon_price * size] = None
    return list(sizes), list(prices)


def volume_m3(balloon: BalloonType) -> float:
    """Air in one filled balloon, an estimate: a link is taken for a spheroid as thick as its
    gauge and as long as it is from tie to tie, a round for a sphere."""
    return body_volume_m3(balloon.gauge_m / 2, balloon.length_m)


def air_m3(framework: Framework) -> float:
    """Air in all balloons of a piece, an estimate; at the pressure inside, which is that of
    the room within a few hundredths."""
    return math.fsum(
        count * volume_m3(framework.balloons[key])
        for key, count in balloon_counts(framework).items()
    )


def pump_minutes(volume: float, constants: Mapping[str, float | ConstantRange]) -> float:
    """How long a pump runs to fill a volume in m3, an estimate. `constants` are the design's
    own; `pump_rate` in litres a minute."""
    return volume * LITRES_PER_M3 / constants_with(constants)["pump_rate"].value
