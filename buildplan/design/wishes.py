"""What a designer wishes for, and what of it a first file can be begun with."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from buildplan.design.measures import Units
from buildplan.language.messages import Decimal, Message, mark, message
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice

USUAL_COLOURS = ("deep blue", "ivory", "ivory")
USUAL_GAUGE: Mapping[Units, float] = {"in": 8, "cm": 20}
GAUGE_STEP: Mapping[Units, float] = {"in": 0.25, "cm": 0.5}

# Pieces whose size is their height.
TALL = ("arch", "drop", "column", "entrance", "sign")


class WishError(ToldError):
    """What is wished for cannot be had; `about` is the field of the wish that is at fault."""

    def __init__(self, told: Message, about: str) -> None:
        super().__init__(told)
        self.about = about


@dataclass(frozen=True)
class Wish:
    """What a designer starts from. `size` is the width of the piece (its height, if it is one of
    TALL) and `gauge` what the links are sized to, in `units`; `points` are those of a star.
    `colours` name those of the long chains, the braces and the locks: names, or #
    and six hex digits. `size` and `gauge` may be None for the usual."""

    name: str
    piece: str
    units: Units = "in"
    points: int = 5
    size: float | None = None
    gauge: float | None = None
    colours: tuple[str, ...] = USUAL_COLOURS


@dataclass(frozen=True)
class BuildLines:
    """What stands under `build` in a first file, line by line. `inner_gauge` and `cross_gauge`
    are those of the balloons inner and cross where they are their own, `stand_on` the joints
    of the foot where they have to be named, `top` what is to be at the top."""

    build: tuple[str, ...]
    inner_gauge: float | None = None
    cross_gauge: float | None = None
    stand_on: tuple[str, ...] = ()
    top: str = ""


def lock_line(voice: Voice) -> str:
    """The line of the locks."""
    return f"  lock: lock      # {voice.say('a pair of rounds at every joint')}"


def a_piece(piece: str) -> Message:
    """What a piece is, by its key in PIECES: `a star`, `an arch`."""
    return message(_A_PIECE[piece])


_A_PIECE: Mapping[str, str] = {
    "star": mark("a star"),
    "ring": mark("a ring"),
    "frame": mark("a frame"),
    "drop": mark("a drop"),
    "crescent": mark("a crescent"),
    "arch": mark("an arch"),
    "wall": mark("a wall"),
    "column": mark("a column"),
    "globe": mark("a globe"),
    "entrance": mark("an entrance"),
    "sign": mark("a sign"),
}


def to_gauge(length: float, units: Units) -> float:
    """The nearest that a gauge can show."""
    step = GAUGE_STEP[units]
    return max(step, round(length / step) * step)


def count_for(
    wish: Wish,
    size: float | None,
    usual: int,
    allowed: Sequence[int],
    size_at: Callable[[int], float],
) -> int:
    """The number of cells, of those allowed, that makes a piece of about `size` (in tie-to-tie
    lengths, as `size_at` gives it)."""
    wanted = size_at(usual) if size is None else size
    least, most = size_at(allowed[0]), size_at(allowed[-1])
    if not 0.95 * least <= wanted <= 1.05 * most:
        link = (wish.size or 0) / wanted
        text = (
            mark(
                "{a_piece} of these balloons can be begun about {least} to {most} {units} high, "
                "not {size}; another gauge makes it smaller or larger"
            )
            if wish.piece in TALL
            else mark(
                "{a_piece} of these balloons can be begun about {least} to {most} {units} wide, "
                "not {size}; another gauge makes it smaller or larger"
            )
        )
        raise WishError(
            message(
                text,
                a_piece=a_piece(wish.piece),
                least=Decimal(least * link, 0),
                most=Decimal(most * link, 0),
                units=wish.units,
                size=f"{wish.size:g}",
            ),
            "size",
        )
    return min(allowed, key=lambda count: abs(size_at(count) - wanted))
