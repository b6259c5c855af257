"""What the desk shows of a piece is what the commands say of it."""

from __future__ import annotations

import errno
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml
from conftest import Call
from desks import DESIGNS, EVERY_DESIGN, AtOnce, Page, open_page, with_designs

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.desk.outcome import Made
from buildplan.desk.results import Results
from buildplan.desk.task import WAIT
from buildplan.source.whole_files import NotWrittenError

STAR, FRAME = DESIGNS / "reading_star.yaml", DESIGNS / "picture_frame.yaml"
AT_STAR = "/api/design/reading_star"


@pytest.fixture(scope="module")
def every(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    """Every design that is shipped, on one desk."""
    with open_page(with_designs(tmp_path_factory.mktemp("every"), EVERY_DESIGN)) as page:
        yield page


@pytest.fixture
def page(tmp_path: Path) -> Iterator[Page]:
    with open_page(with_designs(tmp_path / "desk", [STAR, FRAME])) as page:
        yield page


@pytest.mark.parametrize("design", EVERY_DESIGN, ids=lambda path: path.stem)
def test_figures_are_those_of_check(every: Page, call: Call, design: Path) -> None:
    facts = every.data(f"/api/design/{design.stem}/facts")
    _, out, _ = call("check", every.root / design.name, "--json")
    said = json.loads(out)
    assert facts["settled"]
    assert facts["check"] == said
    assert {one["key"]: one["count"] for one in facts["counts"]} == said["counts"]
    assert [one["message"] for one in facts["problems"]] == [p["message"] for p in said["problems"]]
    long = {one["name"]: one["m"] for one in facts["overlays"]["dimensions"]}
    size = said["size"]
    metres = 0.0254 if size["unit"] == "in" else 0.01  # of an inch, a centimetre (NIST SP 811)
    for name, length_m in long.items():
        assert length_m / metres == pytest.approx(size[name], abs=0.06)


@pytest.mark.parametrize("language", ["en", "es"])
def test_words_are_those_of_check(every: Page, call: Call, language: str) -> None:
    for name in ("reading_star", "dawn_column", "portal"):
        facts = every.data(f"/api/design/{name}/facts?language={language}")
        _, report, _ = call("check", every.root / f"{name}.yaml", "--language", language)
        said = " ".join(report.split())
        for _, words in facts["rows"]:
            assert " ".join(words.split()) in said
        for words in (*facts["sizes"].values(), facts["weight"], facts["hours"]):
            assert words in said
        for one in facts["counts"]:
            assert one["words"] in said


def test_the_piece_is_that_of_export(every: Page, call: Call, tmp_path: Path) -> None:
    """With what the picture needs beside it."""
    shown = every.data("/api/design/reading_star/piece")
    call("export", every.root / "reading_star.yaml", "--out", tmp_path / "star.json")
    whole = json.loads((tmp_path / "star.json").read_text("utf-8"))
    for same in ("joints", "links", "locks", "chains", "width_m", "moments", "repairs"):
        assert shown["piece"][same] == whole[same]
    assert len(shown["piece"]["steps"]) == len(whole["steps"])
    assert shown["beside"]["across_m"] > shown["whole"]["across_m"] > whole["height_m"]
    assert shown["person"]["foot_x"] > whole["width_m"] / 2


def test_a_design_that_nothing_can_be_made_of_says_why(page: Page) -> None:
    edit = {"op": "put", "path": ["balloons", "long", "colour"], "value": "deep bleu"}
    said = page.edit("reading_star", edit).json()
    for answer in (page.get(f"{AT_STAR}/facts"), page.get(f"{AT_STAR}/piece")):
        assert answer.status_code == 422
        (problem,) = answer.json()["problems"]
        assert problem["path"] == ["balloons", "long", "colour"]
        assert problem["line"] == 7
        assert problem["suggestion"]["can_apply"]
    assert said["version"] == page.data(AT_STAR)["version"]
    assert page.data(AT_STAR)["problems"] == [problem]


def test_it_is_said_when_figures_are_for_measured_hands(page: Page, call: Call) -> None:
    """As `check` takes them: a chain of ten that came out short makes the frame smaller."""
    at, file = "/api/design/picture_frame/facts", page.root / "hands.yaml"
    before = page.data(at)
    assert before["hands"] is None
    design = read_design(page.root / FRAME.name)
    assert design.units == "in"
    frame = design.balloons["frame"]
    nominal, gauge = (2.54 * inches for inches in (frame.nominal, frame.inflate_to))
    chain = f"{{nominal: {nominal:g}, gauge: {gauge:g}, length: {9 * gauge:g}}}"
    file.write_text(f"buildplan_hands: 1\nchains_of_ten: [{chain}]\n", "utf-8")
    now = page.data(at)
    assert "hands.yaml" in now["hands"]
    _, out, _ = call("check", page.root / FRAME.name, "--json")
    assert now["check"] == json.loads(out)
    assert now["check"]["size"]["height"] < before["check"]["size"]["height"]


def test_a_suggestion_mends_what_it_is_of(page: Page) -> None:
    """A course that does not come round, by the button beside the problem."""
    corners = ["build", "tube", "course", 0, "cells", 1]
    page.edit("picture_frame", {"op": "put", "path": corners, "value": "straight"})
    at = "/api/design/picture_frame"
    answer = page.get(f"{at}/facts")
    assert answer.status_code == 422
    (problem,) = answer.json()["problems"]
    number = {"number": problem["number"], "way": problem["suggestion"]["ways"][0]["way"]}
    assert page.edit("picture_frame", {"op": "suggestion", **number}).status_code == 200
    assert page.data(f"{at}/facts")["problems"] == []


def test_a_suggestion_of_another_version_is_refused(page: Page) -> None:
    answer = page.edit("reading_star", {"op": "suggestion", "number": 0, "way": 0})
    assert answer.status_code == 409
    assert answer.json()["message"]


def test_paint_goes_where_it_was_put(page: Page) -> None:
    parts = page.data(f"{AT_STAR}/facts")["paint"]["parts"]
    links = next(part for part in parts if part["part"] == "A")["places"][2]
    answer = page.edit("reading_star", {"op": "paint", "links": links, "balloon": "cross"})
    assert answer.status_code == 200, answer.text
    before = {link.id: link.balloon for link in build_framework(read_design(STAR)).links}
    now = build_framework(read_design(page.root / "reading_star.yaml"))
    changed = {link.id for link in now.links if link.balloon != before[link.id]}
    assert changed == set(links)


def test_paint_that_is_no_balloon_of_the_file_is_refused(page: Page) -> None:
    parts = page.data(f"{AT_STAR}/facts")["paint"]["parts"]
    links = parts[0]["places"][0]
    for edit in (
        {"op": "paint", "links": links, "balloon": "mauve"},
        {"op": "paint", "links": ["Z1-Z2"], "balloon": "cross"},
    ):
        answer = page.edit("reading_star", edit)
        assert answer.status_code == 422
        assert answer.json()["message"]
    assert yaml.safe_load(page.text("reading_star")) == yaml.safe_load(STAR.read_text("utf-8"))


def test_a_long_wait_is_told_while_the_piece_is_worked_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("buildplan.evaluation.expected_words.WORTH_SAYING_S", 0.0)
    workers = AtOnce(waits=True)
    lamp = DESIGNS / "gallery" / "lamp_octahedron.yaml"
    with open_page(with_designs(tmp_path / "desk", [lamp]), workers) as page:
        version = page.data("/api/design/lamp_octahedron")["version"]
        facts = f"/api/design/lamp_octahedron/facts?version={version}"
        assert page.get(facts).json() == {"state": "working", "words": ""}

        class FarEnoughError(Exception):
            pass

        def report(part: object) -> None:
            if part == Made(WAIT):
                raise FarEnoughError

        with pytest.raises(FarEnoughError):
            next(one.work for one in workers.asked if one.lane == "design lamp_octahedron")(report)
        answer = page.get(facts)
        assert answer.status_code == 202
        assert "24 balloons: this takes about" in answer.json()["words"]
        piece = page.get(facts.replace("/facts", "/piece"))
        assert (piece.status_code, piece.json()) == (202, answer.json())


def test_a_disk_that_is_full_is_told_as_that_and_is_no_fault_of_ours(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(self: Results, what: str, data: bytes) -> None:
        raise NotWrittenError(self.path(what), OSError(errno.ENOSPC, ""))

    monkeypatch.setattr(Results, "put", full)
    star = DESIGNS / "reading_star.yaml"
    with open_page(with_designs(tmp_path, [star]), AtOnce()) as page:
        version = page.data("/api/design/reading_star")["version"]
        answer = page.get(f"/api/design/reading_star/facts?version={version}")
        assert answer.status_code == 507  # RFC 4918, 11.5: insufficient storage
        assert "the disk is full" in answer.text
        assert "fault" not in answer.text
        (card,) = page.data("/api/home")["designs"]
        assert "the disk is full" in str(card)
        assert "NotWrittenError" not in str(card)
