"""Resizing: what each way gives, checked by solving again, and the command."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest
import yaml
from conftest import Call

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.design.wishes import GAUGE_STEP
from buildplan.evaluation.measured import Measured, measure
from buildplan.fitting.resize_options import ResizeWay
from buildplan.fitting.resizing import WAYS, one_way
from buildplan.framework.counts import balloon_counts
from buildplan.language.voice import Voice
from buildplan.patterns.course import expand_course
from buildplan.patterns.tube_keys import Tube
from buildplan.source.file_changes import changed_data, changed_text

ROOT = Path(__file__).parent.parent.parent
DESIGNS = ROOT / "designs"
FRAME, ARCH = DESIGNS / "picture_frame.yaml", DESIGNS / "walk_through_gate.yaml"


HEAD = """\
# an invented piece
buildplan: 1
name: Trial
units: in
balloons:
  long:  {kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  inner: {kind: link, nominal: 12, inflate_to: 6, colour: "#7FB7DA", label: sky}
  lock:  {kind: round, nominal: 5, inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
"""
TUBE = """\
  tube:
    {closed: %s, chains: 4, long: %s, brace: long, single: long, lock: lock, course: %s}
"""
SMALL = {
    "frame": TUBE % ("true", "long", "[{repeat: 4, cells: [straight, straight, straight, tip]}]"),
    "star": TUBE
    % (
        "true",
        "long",
        "[{repeat: 5, cells: [straight, straight, tip, straight, straight, dip]}]",
    ),
    "ring": TUBE
    % (
        "true",
        "{A: long, B: inner, C: inner, D: long}",
        "[{repeat: 25, cells: [straight]}]",
    ),
    "arch": "  arch: {kind: square, leg: 4, span: 3, long: long, brace: long, lock: lock}\n",
    "column": "  column: {around: 5, rings: 5, ring: long, between: long, lock: lock}\n",
    "wall": "  wall: {across: 3, up: 3, layers: 2, row: long, upright: long, between: long, "
    "lock: lock}\n",
}


def resized(text: str, by: str, factor: float) -> tuple[Measured, ResizeWay]:
    data: Any = yaml.safe_load(text)
    now = measure(data)
    return now, one_way(by, data, now, now.height_m * factor)


@pytest.mark.parametrize("piece", ["frame", "arch", "column"])
def test_by_gauge_every_length_goes_with_the_gauge(piece: str) -> None:
    """Scaling all rest lengths of struts and of contacts by one factor scales the shape of least
    energy by it (similarity: each energy is quadratic in lengths)."""
    now, way = resized(HEAD + SMALL[piece], "gauge", 0.75)
    made = way.measured
    assert made is not None
    before, after = now.design.balloons, made.design.balloons
    links = [key for key, balloon in before.items() if balloon.kind == "link"]
    assert all(after[key].inflate_to == 0.75 * before[key].inflate_to for key in links)
    assert made.height_m == pytest.approx(0.75 * now.height_m, rel=0.01)
    assert made.width_m == pytest.approx(0.75 * now.width_m, rel=0.01)
    assert distances(made) == pytest.approx(0.75 * distances(now), rel=0.02, abs=0.01)
    assert balloon_counts(made.framework) == balloon_counts(now.framework)
    assert made.minutes == pytest.approx(now.minutes, rel=0.02)


def test_small_gauges_keep_their_proportion_to_large_ones() -> None:
    """By the same similarity: at 15/16 of 8 and 6 inches links are of 7 1/2 and 5 5/8, which no
    whole step of a quarter is, and the piece keeps its form."""
    now, way = resized(HEAD + SMALL["ring"], "gauge", 15 / 16)
    made = way.measured
    assert made is not None
    sizes = [made.design.balloons[key].inflate_to for key in ("long", "inner")]
    assert sizes == [7.5, 5.625]
    assert distances(made) == pytest.approx(15 / 16 * distances(now), rel=0.02, abs=0.01)


def distances(one: Measured) -> np.ndarray:
    places = one.shape.positions_m
    return np.asarray(np.linalg.norm(places[:, None] - places[None], axis=2))


def test_half_the_height_takes_the_smaller_link() -> None:
    text = (DESIGNS / "gallery" / "reading_globe.yaml").read_text("utf-8")
    now, way = resized(text, "balloon", 0.5)
    assert way.measured is not None
    sizes = {b.nominal for b in way.measured.design.balloons.values() if b.kind == "link"}
    assert sizes == {6}
    assert way.measured.height_m == pytest.approx(now.height_m / 2, rel=0.01)
    assert way.measured.balloons == now.balloons


@pytest.mark.parametrize("piece", SMALL)
def test_by_cells_it_comes_near_keeps_its_gauge_and_passes(piece: str, tmp_path: Path) -> None:
    text = HEAD + SMALL[piece]
    now, way = resized(text, "cells", 1.4)
    made = way.measured
    assert made is not None, way.why_not
    wanted = 1.4 * now.height_m
    assert abs(made.height_m - wanted) < abs(now.height_m - wanted)
    assert made.height_m == pytest.approx(wanted, rel=0.1)
    assert made.design.balloons["long"] == now.design.balloons["long"]
    file = tmp_path / "made.yaml"
    file.write_text(changed_text(text, way.changes)[0], "utf-8")
    assert read_design(file) == made.design
    # counts are those of the graph that the file makes
    assert sum(balloon_counts(build_framework(read_design(file))).values()) == made.balloons
    tube = now.design.build.keys_of(Tube)
    made_tube = made.design.build.keys_of(Tube)
    if tube is not None and made_tube is not None:
        turns = [
            [cell.name for cell in expand_course(one) if cell.name != "straight"]
            for one in (tube, made_tube)
        ]
        assert turns[0] == turns[1]


def test_an_arch_still_stands_on_its_ends() -> None:
    now, way = resized(ARCH.read_text("utf-8"), "cells", 1.3)
    assert now.framework.chains[0].chain.joints[-1] == "A26"
    assert way.measured is not None
    ends = [
        joint
        for long in way.measured.framework.chains
        for joint in (long.chain.joints[0], long.chain.joints[-1])
    ]
    assert sorted(way.measured.design.stand_on or []) == sorted(ends)


BOW = """\
  tube:
    closed: false
    chains: 4
    long: long
    brace: long
    single: long
    lock: lock
    course: [{repeat: 4, cells: [straight]}, tip, {repeat: 4, cells: [straight]}]
"""


@pytest.mark.parametrize(
    ("place", "moved"),
    [
        ("stand_on: ends", "stand_on: ends"),
        ("top: cell 5", "top: cell 10"),
        ("top: A6", "top: A11"),
    ],
)
def test_a_bow_of_more_cells_stands_as_it_did(place: str, moved: str) -> None:
    """Its tip, the fifth cell of four, one and four, is the tenth of nine, one and nine."""
    text = f"{HEAD}{BOW}{place}\n"
    now, way = resized(text, "cells", 1.75)
    assert way.measured is not None, way.why_not
    made = changed_text(text, way.changes)[0].replace('"', "")
    assert made.count("repeat: 9") == 2
    assert moved in made
    assert way.measured.height_m > 1.5 * now.height_m


@pytest.mark.parametrize(
    ("file", "by", "factor", "says"),
    [
        ("picture_frame", "gauge", 2.0, "would be sized to 16"),
        ("picture_frame", "balloon", 2.0, "no size of link balloon is near"),
        ("picture_frame", "balloon", 1.1, "see by gauge"),
        ("gallery/lamp_octahedron", "cells", 1.2, "one balloon to an edge"),
        ("gallery/reading_globe", "cells", 1.2, "80 triangles"),
        ("gallery/rain_drop", "cells", 1.3, "fit its outline again"),
    ],
)
def test_why_a_way_does_not_work(file: str, by: str, factor: float, says: str) -> None:
    _, way = resized((DESIGNS / f"{file}.yaml").read_text("utf-8"), by, factor)
    assert way.measured is None
    assert way.why_not is not None
    assert says in Voice().tell(way.why_not)


def test_measured_lengths_go_with_the_gauge() -> None:
    text = FRAME.read_text("utf-8")
    data: Any = yaml.safe_load(text)
    key = next(key for key, balloon in data["balloons"].items() if balloon["kind"] == "link")
    gauge = data["balloons"][key]["inflate_to"]
    data["balloons"][key]["tie_to_tie"] = 1.2 * gauge
    now = measure(data)
    way = one_way("gauge", data, now, 0.8 * now.height_m)
    made = changed_data(data, way.changes)["balloons"][key]
    assert made["tie_to_tie"] / made["inflate_to"] == pytest.approx(1.2, rel=0.002)
    assert (made["inflate_to"] / GAUGE_STEP["in"]).is_integer()


def test_parts_that_are_tied_still_meet() -> None:
    """An assembly scales like any piece: its parts come out of one hand at every gauge."""
    text = (DESIGNS / "gallery" / "portal.yaml").read_text("utf-8")
    now, way = resized(text, "gauge", 1.18)
    assert way.measured is not None, way.why_not
    assert way.measured.height_m == pytest.approx(1.18 * now.height_m, rel=0.02)


def test_every_way_has_a_name_for_the_command() -> None:
    assert list(WAYS) == ["gauge", "balloon", "cells"]


def test_the_command_prints_a_table_and_writes_a_file_that_passes(
    call: Call, tmp_path: Path
) -> None:
    out = tmp_path / "larger.yaml"
    status, said, messages = call(
        "resize", FRAME, "--height", "240cm", "--by", "cells", "--out", out
    )
    assert status == 0, messages
    lines = said.splitlines()
    assert lines[0] == "Picture Frame, to be 2.40 m high"
    assert any(line.startswith("by more cells") for line in lines)
    assert lines[-1] == str(out)
    text = out.read_text("utf-8")
    assert text.startswith("# By more cells, from picture_frame.yaml")
    comments = [line for line in FRAME.read_text("utf-8").splitlines() if line.startswith("#")]
    assert all(comment in text for comment in comments)
    assert read_design(out).name == "Picture Frame"


def test_wrong_calls_and_ways_that_fail_end_clearly(call: Call, tmp_path: Path) -> None:
    for wrong in (
        ["--height", "tall"],
        ["--height", "2m", "--out", str(tmp_path / "a.yaml")],
        ["--height", "2m", "--by", "gauge", "--out", str(tmp_path / "a.txt")],
    ):
        status, _, messages = call("resize", FRAME, *wrong)
        assert status == 2
        assert "Traceback" not in messages
    lamp = DESIGNS / "gallery" / "lamp_octahedron.yaml"
    out = tmp_path / "a.yaml"
    status, said, _ = call("resize", lamp, "--height", "2m", "--by", "cells", "--out", out)
    assert status == 1
    assert "one balloon to an edge" in said
    assert not out.exists()
