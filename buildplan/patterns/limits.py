"""How large a piece may be, by what working it out costs (`tests/bench/bench_big.py` prints it).

A piece of so many balloons that fits together is worked out in half a minute of one core's time.
Joints that are tied to one another at random cost far more, and have a limit of their own
(`shape/crossing.py`).
"""

from __future__ import annotations

from buildplan.language.messages import message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path
from buildplan.source.suggestions import by_hand

MOST_BALLOONS = 20_000
BALLOONS_PER_LOCK = 2


def too_many_balloons(at: Path, count: int) -> Mistake:
    """The mistake of a piece that takes more balloons than are worked on."""
    return Mistake(
        FileKind.TOO_MANY_BALLOONS,
        at,
        message("this piece takes {count} balloons", count=count),
        by_hand(
            message(
                "a piece of this pattern may have {count}; make it smaller", count=MOST_BALLOONS
            )
        ),
    )
