"""Colour patterns on whole pieces: the graph's own balloons, ring by ring and row by row."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from trial_file import HEAD

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.chain_roles import RING, ROW, UPRIGHT, ZIGZAG, Layer
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework, Role
from buildplan.shape.finding import find_shape

COLUMN = "  column: {around: 8, rings: 9, ring: a, between: a, lock: k}\n"
WALL = "  wall: {across: 6, up: 5, layers: 2, row: a, upright: a, between: a, lock: k, openings: "
WALL += "[{along: 2, up: 2, wide: 2, high: 2}]}\n"
WORD = "  letters: {text: LO, cells: 5, long: a, brace: a, bar: b, lock: k}\n"
ARCH = "  arch: {kind: gabled, leg: 8, span: 4, long: a, brace: a, lock: k}\n"


def built(folder: Path, build: str, pattern: str = "") -> Framework:
    file = folder / "trial.yaml"
    more = f"colour_pattern: {pattern}\n" if pattern else ""
    file.write_text(HEAD + build + more, "utf-8")
    return build_framework(read_design(file))


def keys(framework: Framework, links: tuple[str, ...]) -> list[str]:
    return [framework.link[link].balloon for link in links]


@pytest.mark.parametrize(
    ("build", "pattern"),
    [
        (COLUMN, "{ring: {fade: [a, b]}, between: {spiral: {a: 4, b: 4}, pitch: 8}}"),
        (WALL, "{row: {fade: [a, b]}, upright: {stripes: {a: 2, b: 1}}}"),
        (ARCH, "{long: {spiral: {a: 2, b: 6}}, A: [b], brace: {fade: [a, b, a]}}"),
    ],
)
def test_only_colours_change(tmp_path: Path, build: str, pattern: str) -> None:
    plain, laid = built(tmp_path, build), built(tmp_path, build, pattern)
    assert replace(laid, links=plain.links) == plain
    assert [replace(link, balloon="a") for link in laid.links] == list(plain.links)
    counts, all_of_one = balloon_counts(laid), balloon_counts(plain)
    assert counts["a"] + counts["b"] == all_of_one["a"]
    assert 0 < counts["b"] < all_of_one["a"]


def test_rings_of_a_column_fade_by_one_balloon_a_ring(tmp_path: Path) -> None:
    framework = built(tmp_path, COLUMN, "{ring: {fade: [a, b]}}")
    rings = [long.chain.links for long in framework.chains if long.role == RING]
    counted = [Counter(keys(framework, ring)) for ring in rings]
    assert [count["b"] for count in counted] == list(range(9))
    assert {
        framework.link[i].balloon
        for long in framework.chains
        if long.role == ZIGZAG
        for i in long.chain.links
    } == {"a"}


def test_rows_of_a_wall_fade_from_the_floor_up_and_the_back_is_like_the_front(
    tmp_path: Path,
) -> None:
    framework = built(tmp_path, WALL, "{row: {fade: [a, b]}, upright: {stripes: {a: 2, b: 1}}}")
    rows: dict[tuple[Layer | None, str], Counter[str]] = {}
    for long in framework.chains:
        if long.role == ROW:
            row = long.chain.joints[0].rstrip("0123456789")
            rows.setdefault((long.layer, row), Counter()).update(keys(framework, long.chain.links))
    front = [count for (layer, _), count in rows.items() if layer is Layer.FRONT]
    back = [count for (layer, _), count in rows.items() if layer is Layer.BACK]
    assert front == back
    shares = [count["b"] / count.total() for count in front]
    assert shares == sorted(shares)
    assert (shares[0], shares[-1]) == (0, 1)
    whole = next(c for c in framework.chains if (c.role, c.layer) == (UPRIGHT, Layer.FRONT))
    assert keys(framework, whole.chain.links) == ["a", "a", "b", "a", "a"]


@pytest.mark.parametrize(("direction", "sign"), [("right", 1), ("left", -1)])
def test_a_spiral_is_a_screw_of_the_hand_that_it_is_named_for(
    tmp_path: Path, direction: str, sign: int
) -> None:
    """A right-handed screw turns anticlockwise, seen from ahead, as it comes on (common
    definition of a right-handed helix)."""
    pattern = f"{{long: {{spiral: {{b: 2, a: 6}}, direction: {direction}}}}}"
    framework = built(tmp_path, ARCH, pattern)
    shape = find_shape(framework)
    place = dict(zip(shape.joints, shape.positions_m, strict=True))
    # the ribbon on the first leg: middle of its balloons on each chain, and the axis of the leg
    at = []
    for long in framework.chains:
        links = long.chain.links[:8]
        mine = [framework.link[i] for i in links if framework.link[i].balloon == "b"]
        at.append(np.mean([(place[x.start] + place[x.finish]) / 2 for x in mine], axis=0))
    ahead = place["A8"] - place["A1"]
    middle = np.mean(at, axis=0)
    for one, after in pairwise(at):
        # the chains themselves go round anticlockwise
        assert np.cross(one - middle, after - middle) @ ahead > 0
    climbs = [sign * float((after - one) @ ahead) > 0 for one, after in pairwise(at)]
    assert climbs.count(True) >= 2  # one step may wrap round to the next ribbon


@pytest.mark.parametrize(
    "size", ["around: 4, rings: 5", "around: 6, rings: 6", "around: 5, rings: 8"]
)
@pytest.mark.parametrize(("direction", "sign"), [("right", 1), ("left", -1)])
def test_a_spiral_of_rings_is_a_screw_too(
    tmp_path: Path, size: str, direction: str, sign: int
) -> None:
    column = f"  column: {{{size}, ring: a, between: a, lock: k}}\n"
    spiral = f"{{spiral: {{b: 3, a: 9}}, direction: {direction}}}"
    framework = built(tmp_path, column, f"{{ring: {spiral}}}")
    shape = find_shape(framework)
    place = dict(zip(shape.joints, shape.positions_m, strict=True))
    middles: list[np.ndarray] = []
    for ring in (long.chain for long in framework.chains if long.role == RING):
        mine = [framework.link[i] for i in ring.links if framework.link[i].balloon == "b"]
        if mine:
            centre = np.mean([place[joint] for joint in ring.joints], axis=0)
            ends = [place[end] for link in mine for end in (link.start, link.finish)]
            middles.append(np.mean(ends, axis=0) - centre)
    # going up, round by round, anticlockwise seen from above is right-handed
    turns = [float(np.cross(one, after)[1]) for one, after in pairwise(middles)]
    assert sum(sign * turn for turn in turns) > 0


def test_braces_have_each_one_colour(tmp_path: Path) -> None:
    framework = built(tmp_path, ARCH, "{brace: {stripes: {a: 2, b: 1}}}")
    for number, brace in enumerate(framework.braces):
        assert set(keys(framework, brace.links)) == {"b" if number % 3 == 2 else "a"}


def test_letters_are_striped_from_the_floor_up(tmp_path: Path) -> None:
    """By how high the middle of each balloon lies on the solved word."""
    word = built(tmp_path, WORD, "{long: {stripes: {a: 2, b: 3}}, brace: {stripes: {b: 1, a: 4}}}")
    shape = find_shape(word)
    low = min(at[1] for at in shape.at.values())
    link_m = word.balloons["a"].tie_to_tie_m
    letters = {
        joint for part in word.parts if len(part.name) == 1 for joint in part.framework.joints
    }
    for link in word.links:
        if link.start in letters and link.finish in letters:
            height = (shape.at[link.start][1] + shape.at[link.finish][1]) / 2 - low
            row = int(height / link_m + 0.1)
            first = ("a", "b", 2) if link.role is Role.CHAIN else ("b", "a", 1)
            assert link.balloon == (first[0] if row < first[2] else first[1]), link.id
    # its parts are built from the same balloons as the whole
    assert {link for part in word.parts for link in part.framework.links} <= set(word.links)


def test_letters_are_coloured_one_after_another(tmp_path: Path) -> None:
    word = built(tmp_path, WORD, "{letter: [b, a]}")
    used = {
        part.name: {link.balloon for link in part.framework.links if link.role is Role.CHAIN}
        for part in word.parts
    }
    assert used == {"L": {"b"}, "BAR": {"b"}, "O": {"a"}}
    alone = built(tmp_path, WORD.replace("LO", "L"), "{letter: [b, a]}")
    assert {link.balloon for link in alone.links} == {"b"}
