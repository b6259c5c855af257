"""The README's tables of the numbers that stand for the craft, and of rules of thumb, are the
program's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from buildplan.business.events.loading import (
    BAG_GIVES,
    CANISTER_KG,
    CANISTER_M,
    LEAST_BAG,
    MOST_TRIPS,
    TOOLS_KG,
    TOOLS_M,
)
from buildplan.business.events.taking_down import DOWN_MINUTES
from buildplan.design.model import Design
from buildplan.evaluation.skill import MANY_BALLOONS, TALL_M, VERY_MANY_BALLOONS
from buildplan.evaluation.told_figures import KNEELING_M
from buildplan.hands.craft import CRAFT, CraftNumber
from buildplan.hands.learning import SPREADS
from buildplan.patterns.turning import FIXED_TOLERANCE_DEG, GAUGE_READING
from buildplan.sequence.hand_reach import HandReach
from buildplan.sequence.shared_work import HANDS
from buildplan.sequence.timetable import RESERVE
from buildplan.shape.advice import FALLEN_SHARE, LEANS_LIGHTLY_DEG
from buildplan.shape.ballasting import BAG_OFF_M
from buildplan.shape.holding import LEAST_M, MOST_M, STEP_M
from buildplan.shape.settings import DEFAULT

ROOT = Path(__file__).parents[2]
HEAD = "| number | value | range | unit | from | moves |"
RULES = "| rule of thumb | value | from |"


def table(head: str) -> list[str]:
    lines = (ROOT / "README.md").read_text("utf-8").splitlines()
    rows = lines[lines.index(head) + 2 :]
    return rows[: next(i for i, line in enumerate(rows) if not line.startswith("|"))]


def row(number: CraftNumber) -> str:
    low, high = (f"{one:.3g}" if one < 1000 else f"{one:.0f}" for one in (number.low, number.high))
    value, moves = f"{number.value:g}", ", ".join(number.moves)
    cells = (f"`{number.name}`", value, f"{low} to {high}", number.unit, number.source, moves)
    return "| " + " | ".join(cells) + " |"


def load(sides_m: Sequence[float], mass_kg: float) -> str:
    return " x ".join(f"{100 * one:g}" for one in sides_m) + f" cm, {mass_kg:g} kg"


def rules() -> Iterator[tuple[str, str, str]]:
    spare = Design.model_fields["spare"].default
    down = ", ".join(f"{kind} {minutes:g}" for kind, minutes in DOWN_MINUTES.items())
    yield "spare balloons, where the file says nothing", f"{100 * spare:g} %", "from memory"
    yield "tips lightly what goes over below", f"{LEANS_LIGHTLY_DEG:g} degrees", "ours"
    yield "has fallen what sinks by more than", f"{100 * FALLEN_SHARE:g} % of its height", "ours"
    yield "closes what strains no link by more than", f"{100 * DEFAULT.strain_allowed:g} %", "ours"
    overlap = f"{100 * DEFAULT.overlap_allowed:g} % of where they touch"
    yield "balloons that share no joint may press in by", overlap, "ours"
    yield "a bag gives by", f"1/{1 / BAG_GIVES:g} of a side", "from memory"
    yield "minutes of taking down", down, "from memory"
    yield "a bag that is hardly filled is as high as", f"{LEAST_BAG:g} of a full one", "from memory"
    yield "a box of tools", load(TOOLS_M, TOOLS_KG), "from memory"
    yield "a canister of ballast", load(CANISTER_M, CANISTER_KG), "from memory"
    yield "trips that a vehicle makes at most", f"{MOST_TRIPS}", "ours"
    yield "held back of a timetable, for breaks and bursts", f"{100 * RESERVE:g} %", "from memory"
    yield "who holds and who locks at a joint take, of one's minutes", f"1/{HANDS}", "from memory"
    yield "from a joint to its bag of ballast", f"{100 * BAG_OFF_M:g} cm", "from memory"
    base = ", ".join(f"{100 * one:g}" for one in (LEAST_M, MOST_M, STEP_M))
    yield "an advised base is at least, at most, in steps of", f"{base} cm", "ours"
    closes = f"{FIXED_TOLERANCE_DEG:g} degrees, and {100 * GAUGE_READING:g} % of a straight cell"
    yield "a course comes round that is off by at most", closes, "from memory"
    usual = HandReach()
    for name, postures in (("kneeling", usual.kneeling), ("standing", usual.standing)):
        heights = ", ".join(f"{100 * one.shoulder:g}" for one in postures)
        leans = ", ".join(f"{100 * one.lean:g}" for one in postures)
        yield f"shoulders, {name}", f"{heights} cm high, {leans} cm forward", "from memory"
    yield "room that somebody takes who kneels", f"{100 * KNEELING_M:g} cm", "from memory"
    many = f"{MANY_BALLOONS:g} and {VERY_MANY_BALLOONS:g} balloons, {TALL_M:g} m"
    yield "harder to build from", many, "ours"
    tape, ring, height = (100 * one for one in (SPREADS.chain_of_ten, SPREADS.ring, SPREADS.height))
    measured = f"{tape:g} % of ten, {ring:g} % of a ring, {height:g} % of a height"
    yield "what is measured is off by (standard deviation)", measured, "from memory"


def test_the_readme_s_tables_are_the_program_s() -> None:
    assert table(HEAD) == [row(number) for number in CRAFT.values()]
    assert table(RULES) == ["| " + " | ".join(cells) + " |" for cells in rules()]
