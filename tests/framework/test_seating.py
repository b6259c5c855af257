"""Parts that say what they stand on or between: their ties worked out, written, and mended.

What meets is checked against where joints of the solved parts lie; that a ring of four beneath a
square of four is turned by 45 degrees at most is plain geometry (no source needed).
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import yaml
from seated_parts import BEAM, COLUMN, LINK_M, SIGN, TOWER, WORD, file_of, solved
from trial_file import HEAD
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.reading import read_design
from buildplan.evaluation.seating import seated
from buildplan.fitting.written_ties import written_ties
from buildplan.shape.model import Shape
from buildplan.source.problems import DesignProblemsError


def front(shape: Shape, joints: tuple[str, str]) -> float:
    """How much nearer the viewer the first of two joints is, in metres."""
    one, other = joints
    return float(shape.at[one][2] - shape.at[other][2])


ENTRANCE = (
    f"name: L, build: {COLUMN}",
    f"name: R, build: {COLUMN}",
    f"name: B, on: [L, R], build: {BEAM}",
    f"name: S, on: B, build: {SIGN}",
)


def test_a_beam_lies_across_columns_and_a_sign_stands_in_the_middle_of_it(tmp_path: Path) -> None:
    file = file_of(tmp_path, *ENTRANCE)
    ties = seated(read_design(file)).ties
    assert len(ties["B",]) == 8, "the four joints of each column's upper ring"
    framework, shape = solved(file)
    assert not shape.problems
    assert shape.standing.stands
    assert {joint.split(".")[0] for joint in shape.standing.feet} == {"L", "R"}
    x = {
        name: np.mean([shape.at[j][0] for j in framework.joints if j.startswith(f"{name}.")])
        for name in "LRBS"
    }
    assert x["L"] < x["B"] < x["R"]
    assert x["L"] - x["B"] == pytest.approx(x["B"] - x["R"], abs=0.1 * LINK_M)
    sign = [shape.at[joint][0] for joint in framework.joints if joint.startswith("S.")]
    middle = (min(sign) + max(sign)) / 2
    assert middle == pytest.approx(x["B"], abs=0.65 * LINK_M), "to the nearest joint"
    # it reads from the front: the foot of an L is to the right of its stem
    low, high = shape.at["S.A13"], shape.at["S.A6"]
    assert low[1] < high[1]
    assert low[0] > high[0]
    assert front(shape, ("S.A6", "S.B6")) == pytest.approx(LINK_M, rel=0.05)


def test_a_beam_between_towers_meets_both_as_high_as_it_can(tmp_path: Path) -> None:
    file = file_of(
        tmp_path,
        f"name: L, build: {TOWER}",
        f"name: R, build: {TOWER}",
        f"name: B, between: [L, R], build: {BEAM}",
    )
    (pairs,) = seated(read_design(file)).ties.values()
    assert {own.split(".")[1] for own, _ in pairs} == {
        *("A1", "B1", "C1", "D1"),
        *("A6", "B6", "C6", "D6"),
    }, "its joints at either end"
    _, shape = solved(file)
    assert not shape.problems
    tops = [shape.at[joint][1] for joint in ("L.D1", "R.D2", "B.B3")]
    assert np.ptp(tops) < 0.05 * LINK_M


def test_what_comes_to_lie_beside_other_parts_is_tied_to_them_too(tmp_path: Path) -> None:
    """A word longer than the beam that it stands on reaches over the towers at its ends."""
    file = file_of(
        tmp_path,
        f"name: L, build: {TOWER}",
        f"name: R, build: {TOWER}",
        f"name: B, between: [L, R], build: {BEAM.replace('across: 5', 'across: 3')}",
        f"name: S, on: B, build: {WORD}",
    )
    pairs = seated(read_design(file)).ties["S",]
    assert {other.split(".")[0] for _, other in pairs} == {"L", "B", "R"}


def test_letters_of_a_word_keep_the_places_at_which_they_are_drawn(tmp_path: Path) -> None:
    alone = tmp_path / "word.yaml"
    alone.write_text(f"{HEAD}  {WORD[1:-1]}\n", "utf-8")
    _, word = solved(alone)
    file = file_of(
        tmp_path,
        f"name: B, build: {BEAM.replace('across: 5', 'across: 9')}",
        f"name: S, on: B, build: {WORD}",
    )
    framework, whole = solved(file)
    assert not whole.problems
    joints = [joint for joint in framework.joints if joint.startswith("S.")]
    there = np.array([whole.at[joint] for joint in joints])
    here = np.array([word.at[joint.removeprefix("S.")] for joint in joints])
    apart = (there - there.mean(axis=0)) - (here - here.mean(axis=0))
    assert float(np.abs(apart).max()) < 0.2 * LINK_M


def test_a_word_wider_than_its_beam_is_told_and_what_is_told_mends_it(tmp_path: Path) -> None:
    """How far it reaches is measured on the solved joints."""
    file = file_of(
        tmp_path,
        f"name: B, build: {BEAM.replace('across: 5', 'across: 3')}",
        f"name: S, on: B, build: {WORD}",
    )
    before = checked(file)[1]
    (past,) = [one for one in before["cautions"] if one["kind"] == "reaches-past"]
    _, shape = solved(file)
    x = {joint: at[0] for joint, at in shape.at.items()}
    beam, word = (
        [at for joint, at in x.items() if joint.startswith(name)] for name in ("B.", "S.")
    )
    assert past["data"]["left"] == pytest.approx(100 * (min(beam) - min(word)), abs=0.1)
    assert past["data"]["right"] == pytest.approx(100 * (max(word) - max(beam)), abs=0.1)
    assert past["data"]["word"] == "LI"
    each_way_mends(file, past)
    assert any("across" in way["text"] for way in past["changes"])


def each_way_mends(file: Path, told: dict[str, Any]) -> None:
    """Every change that is told, made by itself, leaves the piece without what it is told for."""
    text = file.read_text("utf-8")
    assert told["changes"]
    for way in told["changes"]:
        applied(file, {"changes": [way]})
        status, after = checked(file)
        assert status == 0
        assert told["kind"] not in {one["kind"] for one in after["cautions"]}
        file.write_text(text, "utf-8")


def test_what_stands_half_a_link_off_the_middle_is_told_and_what_is_told_mends_it(
    tmp_path: Path,
) -> None:
    """How far is measured on the solved joints."""
    wide = BEAM.replace("across: 5", "across: 4")
    file = file_of(tmp_path, f"name: B, build: {wide}", f"name: T, on: B, build: {TOWER}")
    (told,) = [one for one in checked(file)[1]["cautions"] if one["kind"] == "off-the-middle"]
    _, shape = solved(file)
    middle = {
        name: np.mean([at[0] for joint, at in shape.at.items() if joint.startswith(name)])
        for name in ("B.", "T.")
    }
    assert told["data"]["off"] == pytest.approx(100 * abs(middle["T."] - middle["B."]), abs=0.1)
    assert ("right" in told["message"]) == (middle["T."] > middle["B."])
    each_way_mends(file, told)


def checked(file: Path, *options: str) -> tuple[int, dict[str, Any]]:
    found = CliRunner().invoke(app, ["check", str(file), "--json", *options])
    assert found.exit_code in (0, 1), found.output
    return found.exit_code, json.loads(found.stdout)


def test_ties_that_are_worked_out_are_written_in_their_place(tmp_path: Path) -> None:
    file = file_of(tmp_path, *ENTRANCE)
    before = checked(file)[1]
    ties = sum(map(len, seated(read_design(file)).ties.values()))
    result = CliRunner().invoke(app, ["check", str(file), "--write"])
    assert result.exit_code == 0, result.output
    parts = loaded(file)["build"]["assembly"]
    assert len(parts["ties"]) == ties
    assert not any("on" in part for part in parts["parts"])
    assert checked(file)[1]["counts"] == before["counts"]


def test_ties_are_not_written_over_what_an_editor_saved_meanwhile(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = file_of(tmp_path, *ENTRANCE)
    saved = file.read_text("utf-8") + "# saved meanwhile\n"

    def worked_out(*given: Any) -> Any:
        file.write_text(saved, "utf-8")
        return written_ties(*given)

    monkeypatch.setattr("buildplan.fitting.written_ties.written_ties", worked_out)
    result = CliRunner().invoke(app, ["check", str(file), "--write"])
    assert result.exit_code == 2
    assert "changed meanwhile: nothing was written" in result.output
    assert file.read_text("utf-8") == saved


class _Plain(yaml.SafeLoader):
    """`on` is a word, as YAML 1.2 has it (section 10.3.2), and true and false the only truths."""


_Plain.yaml_implicit_resolvers = {
    first: [(tag, form) for tag, form in known if not tag.endswith(":bool") or first in "tf"]
    for first, known in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def loaded(file: Path) -> Any:
    return yaml.load(file.read_text("utf-8"), _Plain)


def applied(file: Path, problem: dict[str, Any]) -> None:
    """What a problem suggests, done to the file by the path of each change."""
    data = loaded(file)
    for change in sorted(
        problem["changes"][0]["changes"], key=lambda one: str(one["at"]), reverse=True
    ):
        *steps, last = change["at"]
        holder = data
        for step in steps:
            holder = holder[step]
        if "put" in change:
            holder[last] = change["put"]
        else:
            del holder[last]
    file.write_text(yaml.safe_dump(data, sort_keys=False), "utf-8")


HIGH = BEAM.replace("up: 1", "up: 4")
FOUR = f"name: B, build: {BEAM}", f"name: S, build: {SIGN}"
BEHIND = "    ties: [[S.A1, B.D4], [S.A13, B.D2], [S.B1, B.B4], [S.B13, B.B2]]\n"
CROSSED = "    ties: [[S.A1, B.B4], [S.A13, B.B2], [S.B1, B.D4], [S.B13, B.D2]]\n"


@pytest.mark.parametrize(
    ("parts", "more", "kind"),
    [
        (FOUR, BEHIND, "reads-backwards"),
        (FOUR, CROSSED, "ties-cannot-meet"),
        (FOUR, "", "loose-part"),
        ((*(f"name: {name}, build: {COLUMN.replace('rings: 3', 'rings: 7')}" for name in "LR"),
          f"name: B, between: [L, R], build: {HIGH}"), "", "does-not-fit"),
        ((FOUR[0], f"name: S, between: [B, T], build: {SIGN}", f"name: T, on: B, build: {TOWER}"),
         "", "nothing-meets"),
    ],
    ids=["seen-from-behind", "crossed", "loose", "between", "nowhere"],
)  # fmt: skip
def test_what_check_says_mends_it(
    tmp_path: Path, parts: tuple[str, ...], more: str, kind: str
) -> None:
    file = file_of(tmp_path, *parts, more=more)
    status, found = checked(file)
    problems = found["problems"]
    assert isinstance(problems, list)
    assert (status, [one["kind"] for one in problems]) == (1, [kind])
    if kind == "nothing-meets":  # no other place was found, so that it is left to the hand
        assert problems[0]["by_hand"] or problems[0]["changes"]
        return
    applied(file, problems[0])
    assert checked(file)[0] == 0


def test_swaps_are_named_by_their_joints(tmp_path: Path) -> None:
    (problem,) = checked(file_of(tmp_path, *FOUR, more=BEHIND))[1]["problems"]
    for swap in ("B.D4 with B.B2", "B.D2 with B.B4"):
        assert swap in problem["suggestion"]


@pytest.mark.parametrize(
    ("part", "path", "says"),
    [
        ("name: S, on: Q", "build.assembly.parts[1].on", "names no other part"),
        ("name: S, on: S", "build.assembly.parts[1].on", "names no other part"),
        ("name: S, on: [B, B]", "build.assembly.parts[1].on[1]", "twice"),
        ("name: S, on: B, between: [B, B]", "build.assembly.parts[1]", "both"),
        ("name: S, left_of: B, behind: B", "build.assembly.parts[1]", "both"),
        ("name: S, behind: Q", "build.assembly.parts[1].behind", "names no other part"),
        ("name: S, repeat: 2, on: B", "build.assembly.parts[1].on", "one place"),
    ],
)
def test_places_that_cannot_be_are_told(tmp_path: Path, part: str, path: str, says: str) -> None:
    file = file_of(tmp_path, FOUR[0], f"{part}, build: {SIGN}")
    with pytest.raises(DesignProblemsError) as raised:
        read_design(file)
    found = raised.value.problems
    assert any(one.path == path and says in str(one.message) for one in found), found


def test_joints_are_listed_by_where_they_are_and_drawn_with_their_labels(tmp_path: Path) -> None:
    file = file_of(tmp_path, *FOUR[:1], f"name: S, on: B, build: {SIGN}")
    lines = CliRunner().invoke(app, ["check", str(file), "--joints"]).output.splitlines()
    (left,) = (line for line in lines[lines.index("B: 24 joints, B.A1 to B.D6") :][3:4])
    assert left.split("left")[1].replace(" ", "").split(",") == ["B.A1", "B.B1", "B.C1", "B.D1"]
    target = tmp_path / "labels.svg"
    result = CliRunner().invoke(app, ["draw", str(file), "--labels", "--out", str(target)])
    assert result.exit_code == 0, result.output
    drawn = (tmp_path / "labels-B.svg").read_text("utf-8")
    assert all(f">B.{letter}{number}<" in drawn for letter in "ABCD" for number in range(1, 7))
    assert (tmp_path / "labels-S.svg").exists()


ARCH = "{arch: {kind: square, leg: 2, span: 3, long: a, brace: a, lock: k}}"


def test_what_is_said_to_stand_in_the_middle_and_cannot_is_told_how_far_off_it_is(
    tmp_path: Path,
) -> None:
    """An arch on a column as wide as one of its feet: measured on the solved joints. Where ties
    alone say where it stands, it was meant to stand there."""
    file = file_of(tmp_path, f"name: C, build: {COLUMN}", f"name: T, on: C, build: {ARCH}")
    (told,) = [one for one in checked(file)[1]["cautions"] if one["kind"] == "off-the-middle"]
    _, shape = solved(file)
    x = {
        name: [at[0] for joint, at in shape.at.items() if joint.startswith(name)]
        for name in ("C.", "T.")
    }
    middle = {name: (min(at) + max(at)) / 2 for name, at in x.items()}
    off = middle["T."] - middle["C."]
    assert abs(off) > LINK_M
    assert told["data"]["off"] == pytest.approx(100 * abs(off), abs=0.1)
    assert ("right" in told["message"]) == (off > 0)
    CliRunner().invoke(app, ["check", str(file), "--write"])
    assert "off-the-middle" not in {one["kind"] for one in checked(file)[1]["cautions"]}
