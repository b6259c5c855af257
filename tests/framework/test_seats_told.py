"""Parts that say what they stand on or between: what is told, what mends it, and ties written."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import yaml
from seated_parts import BEAM, COLUMN, ENTRANCE, FOUR, LINK_M, SIGN, TOWER, WORD, file_of, solved
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.reading import read_design
from buildplan.evaluation.seating import seated
from buildplan.fitting.written_ties import written_ties
from buildplan.shape.placing import link_m


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


def test_a_word_off_the_middle_names_what_carries_it(tmp_path: Path) -> None:
    wide = BEAM.replace("across: 5", "across: 12")
    word = WORD.replace("LI", "'18'")
    file = file_of(tmp_path, f"name: B, build: {wide}", f"name: S, on: B, build: {word}")
    (told,) = [one for one in checked(file)[1]["cautions"] if one["kind"] == "off-the-middle"]
    assert told["message"].endswith("of the middle of B")
    each_way_mends(file, told)


def test_how_long_a_link_is_goes_by_those_that_are_there(tmp_path: Path) -> None:
    """A balloon that a file names and no part has does not say whether parts meet."""
    file = file_of(tmp_path, *ENTRANCE)
    framework, _ = solved(file)
    spare = "  spare: {kind: link, nominal: 36, inflate_to: 30, colour: navy, label: spare}\n"
    text = file.read_text("utf-8").replace("balloons:\n", f"balloons:\n{spare}", 1)
    file.write_text(text, "utf-8")
    with_spare, _ = solved(file)
    assert link_m(with_spare) == link_m(framework) == pytest.approx(LINK_M)


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
