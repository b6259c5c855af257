"""The key of a joint map names every style of line on it, and nothing that is not there."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import networkx as nx
import pytest
from diagram_pieces import listed, pieces

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.drawing.line_art import INK, PALE, PAPER, SOFT
from buildplan.drawing.maps.blocks import joints_drawn
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.marks import Circle, Curve, Label, Picture, Point, Polyline
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

GALLERY = Path(__file__).parents[2] / "designs" / "gallery"
SHEET = (523.0, 720.0)
Stroked = Polyline | Curve | Circle
Style = tuple[str, str | None, float, tuple[float, ...]]  # form, colour, width, dashes


def graph(name: str, edges: nx.Graph) -> dict[str, Framework]:
    return {name: listed([(f"J{u}", f"J{v}") for u, v in edges.edges()])}


MAPS = {
    **pieces(),
    "letters": build_framework(read_design(GALLERY / "leo_5.yaml")),
    **graph("solid", nx.cubical_graph()),
    **graph("crowd", nx.random_regular_graph(4, 60, seed=2)),
    **graph("many chains", nx.disjoint_union_all([nx.cubical_graph()] * 4)),
}


def points(mark: Stroked) -> Iterator[Point]:
    match mark:
        case Polyline():
            yield from mark.points
        case Curve():
            yield from (mark.start, *(end for _, _, end in mark.pieces))
        case Circle():
            yield mark.centre


def styles(marks: list[Stroked]) -> set[Style]:
    return {
        (form(mark), mark.ink.stroke, mark.ink.width, mark.ink.dash)
        for mark in marks
        if mark.ink.stroke not in (None, PAPER)
    }


def form(mark: Stroked) -> str:
    if isinstance(mark, Circle):
        return "disc"
    return "outline" if mark.closed else "line"


def drawn(picture: Picture, framework: Framework) -> tuple[set[Style], set[Style]]:
    """The styles of strokes in the key and on the map above it, less those that the map itself
    names: a strip's rule under its title, and in the row that says "brace" the boxes of the
    numbers and the lines from them to their joints."""
    joints = {
        mark.at[1] - 6
        for mark in picture.marks
        if isinstance(mark, Label) and mark.bold and mark.text in framework.joints
    }
    foot = min(joints, default=picture.height)
    stroked = [mark for mark in picture.marks if isinstance(mark, Polyline | Curve | Circle)]
    key = [mark for mark in stroked if all(y < foot - 3 for _, y in points(mark))]
    shown = [mark for mark in stroked if mark not in key]
    told = {("line", PALE, 0.5, ()), ("line", SOFT, 0.6, ()), ("outline", INK, 0.8, ())}
    in_rows = any(isinstance(mark, Label) and mark.text == "brace" for mark in picture.marks)
    return styles(key), styles(shown) - (told if in_rows else set())


def named(found: set[Style]) -> set[Style | str]:
    """Styles as a reader tells them apart; pale is one of them, in whatever style it was."""
    return {style if style[1] != PALE else "pale" for style in found}


@pytest.mark.parametrize("name", MAPS)
def test_every_style_of_line_is_in_the_key(name: str) -> None:
    framework = MAPS[name]
    keys: set[Style] = set()
    maps: set[Style] = set()
    for sheet in joint_map(framework, *SHEET, Voice()):
        key, shown = drawn(sheet, framework)
        assert named(shown) <= named(key)
        keys |= key
        maps |= shown
    assert named(keys) <= named(maps)


def test_each_sheet_has_the_key_to_its_own_chains() -> None:
    """The O alone has inner chains behind: the sheets of other letters do not name their line."""
    sheets = joint_map(MAPS["letters"], *SHEET, Voice())
    told = [{mark.text for mark in one.marks if isinstance(mark, Label)} for one in sheets]
    inner = ["chain C, inner back" in words for words in told]
    assert inner == [any(joint.startswith("O.C") for joint in joints_drawn(one)) for one in sheets]
    assert inner.count(True) == 1
    assert all("chain A, outer front" in words for words in told)
