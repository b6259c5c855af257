"""Signs on balloons: enough to tell colours apart where eyes or a grey print cannot."""

from itertools import combinations
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.drawing.colour_vision import confusable
from buildplan.drawing.colours import contrast
from buildplan.drawing.marks import Look
from buildplan.drawing.signs import balloon_signs, touching
from buildplan.drawing.symbols import PATTERNS, look_marks
from buildplan.framework.balloon_kinds import LINK
from buildplan.framework.counts import balloon_counts
from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework

DESIGNS = Path(__file__).parents[2] / "designs"
SHIPPED = [p for p in sorted(DESIGNS.glob("*.yaml")) if not p.stem.endswith(".event")]
colours = st.integers(0, 0xFFFFFF).map(lambda value: f"#{value:06X}")


def told_apart(framework: Framework, signs: dict[str, int], pair: frozenset[str]) -> bool:
    first, second = (framework.balloons[key] for key in pair)
    if first.colour == second.colour or not confusable(first.colour, second.colour):
        return True
    return signs[first.key] != signs[second.key]


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_shipped_designs_are_told_apart_without_colour(path: Path) -> None:
    framework = build_framework(Design.model_validate(yaml.safe_load(path.read_text("utf-8"))))
    used = [key for key, count in balloon_counts(framework).items() if count]
    signs = dict(balloon_signs(framework, used))
    assert set(signs) == set(used)
    assert all(told_apart(framework, signs, pair) for pair in touching(framework))
    # and what is in another bag has another sign, of the same colour too
    for one, other in combinations(used, 2):
        assert (signs[one] == signs[other]) == (bag(framework, one) == bag(framework, other))


def bag(framework: Framework, key: str) -> tuple[str, str, float]:
    balloon = framework.balloons[key]
    return balloon.colour, balloon.kind.name, balloon.nominal_m


def necklace(shades: list[str]) -> Framework:
    """A ring of link balloons, each of its own colour, so that each touches two others."""
    balloons = {
        f"k{i}": BalloonType(f"k{i}", LINK, 0.3, 0.2, 0.23, True, shade, f"colour {i}")
        for i, shade in enumerate(shades)
    }
    joints = [f"J{i}" for i in range(len(shades))]
    links = [(joints[i], joints[(i + 1) % len(joints)], f"k{i}") for i in range(len(joints))]
    return build_listed("necklace", balloons, joints, links, None)


@settings(max_examples=60)
@given(st.lists(colours, min_size=3, max_size=24, unique=True))
def test_more_colours_than_signs_are_told_apart_where_they_touch(shades: list[str]) -> None:
    framework = necklace(shades)
    signs = dict(balloon_signs(framework, list(framework.balloons)))
    assert set(signs.values()) <= set(range(PATTERNS))
    assert len(touching(framework)) == len(shades)
    assert all(told_apart(framework, signs, pair) for pair in touching(framework))


@given(colours)
def test_signs_stand_out_from_their_balloon(colour: str) -> None:
    """WCAG 2.2, success criterion 1.4.11: 3:1 for what has to be seen."""
    drawn = set()
    for pattern in range(1, PATTERNS):
        marks = look_marks(Look("pattern", colour, "new", pattern=pattern))
        drawn.add(marks)
        for mark in marks:
            ink = mark.ink.fill or mark.ink.stroke
            assert ink is not None
            assert contrast(ink, colour) >= 3
    assert len(drawn) == PATTERNS - 1
