"""Each mistake in a design file: its line, its path, and that what would be right is named."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from design_texts import LAST_LINE, RING, changed, only_problem, problems, read, refusal
from mistake_cases import AGREEMENT, FORM, YAML

from buildplan.design.reading import read_design
from buildplan.language.voice import Voice
from buildplan.source.kinds import FileKind
from buildplan.source.problems import DesignProblemsError, in_words
from buildplan.source.suggestions import suggestion_words


@pytest.mark.parametrize(
    ("old", "new", "line", "path", "message", "right"), FORM + AGREEMENT + YAML
)
def test_mistake_is_told_with_its_place_and_what_would_be_right(
    old: str, new: str, line: int, path: str, message: list[str], right: list[str]
) -> None:
    problem = only_problem(changed(RING, (old, new)))
    assert (problem.line, problem.path) == (line, path)
    for word in message:
        assert word in Voice().tell(problem.message)
    for word in right:
        assert word in suggestion_words(problem.suggestion, Voice())


def test_two_patterns_and_none() -> None:
    graph = "  graph:\n    joints: [P, Q]\n    balloons: [{from: P, to: Q, balloon: long}]\n"
    two = only_problem(changed(RING, ("spare", f"{graph}spare")))
    assert (two.line, two.path) == (23, "build.graph")
    assert "two patterns" in Voice().tell(two.message)
    # what the second lacks is nothing to whoever keeps the first
    begun = only_problem(changed(RING, ("spare", "  graph:\n    joints: [P, Q]\nspare")))
    assert begun.kind == two.kind
    none = only_problem(RING[: RING.index("  tube:")].replace("build:", "build: {}"))
    assert (none.line, none.path) == (13, "build")
    assert "tube" in suggestion_words(none.suggestion, Voice())


EIGHT_MISTAKES = [
    (("units: in", "units: inn"), 3, "units"),
    (("nominal: 12", "nominal: twelve"), 7, "balloons.long.nominal"),
    (("    label: deep blue", "    labell: deep blue"), 10, "balloons.long.labell"),
    (("inflate_to: 3.5", "inflate_to: 35"), 12, "balloons.lock.inflate_to"),
    (("brace: cross", "brace: crosss"), 18, "build.tube.brace"),
    (("cells: [straight, fan]", "cells: [straight, fun]"), 22, "build.tube.course[0].cells[1]"),
    (("spare: 0.05", "spare: 0.05\nspare: 0.06"), 24, "spare"),
    (("spare: 0.06", "spare: 0.06\nprices: {look: 0.1}"), 25, "prices.look"),
]


def test_all_mistakes_are_told_at_once_in_the_order_of_the_file() -> None:
    found = problems(changed(RING, *(change for change, _, _ in EIGHT_MISTAKES)))
    assert [(p.line, p.path) for p in found] == [(line, path) for _, line, path in EIGHT_MISTAKES]


def test_one_mistake_hides_no_other_check() -> None:
    # the colour is wrong and so is the turning, which does not depend on it
    text = changed(RING, ('"#1F5F8B"', "bluu"), ("repeat: 6", "repeat: 5"))
    assert [p.path for p in problems(text)] == ["balloons.long.colour", "build.tube.course"]


def test_the_error_carries_the_name_of_the_piece() -> None:
    with pytest.raises(DesignProblemsError) as caught:
        read(changed(RING, ("units: in", "units: mm")))
    assert caught.value.name == "Ring"


def test_in_words_names_file_line_path_and_remedy() -> None:
    problem = only_problem(changed(RING, ("long: long", "long: lng")))
    words = in_words(problem, Voice(), "ring.yaml")
    assert words.startswith("ring.yaml:17: build.tube.long: ")
    assert words.endswith("the balloons are: long and cross")


def test_whole_numbers_do_for_lengths_and_prices_are_exact() -> None:
    design = read(changed(RING, ("spare: 0.05", "prices: {long: 0.35, cross: 1, lock: 0.1}")))
    assert design.balloons["long"].nominal == 12.0
    assert design.prices["long"] == Decimal("0.35")
    assert design.prices["long"] * 3 == Decimal("1.05")
    assert str(design.prices["lock"]) == "0.1"


def test_constants_are_checked_against_the_names_that_are_given(tmp_path: Path) -> None:
    path = tmp_path / "ring.yaml"
    path.write_text(RING + "constants: {drgg: 1.3}\n")
    assert read_design(path).constants == {"drgg": 1.3}
    with pytest.raises(DesignProblemsError) as caught:
        read_design(path, known_constants={"drag", "gravity"})
    (problem,) = caught.value.problems
    assert (problem.line, problem.path) == (LAST_LINE + 1, "constants.drgg")
    assert "did you mean drag?" in suggestion_words(problem.suggestion, Voice())


def test_a_file_that_is_wrong_throughout_is_cut_short() -> None:
    found = problems("".join(f"key{i}: 1\n" for i in range(5000)))
    assert len(found) == 1001
    assert "more problems" in Voice().tell(found[-1].message)


def test_a_design_without_its_first_key_is_no_brand_file() -> None:
    """Both have a name; a file with keys of a design beside it has forgotten `buildplan: 1`."""
    (told,) = problems(RING.replace("buildplan: 1\n", ""))
    assert (told.kind, told.path) == (FileKind.KEY_MISSING, "buildplan")
    assert refusal("name: Lantern Street\ncontact: here\n").kind is FileKind.ANOTHER_KIND_OF_FILE


def test_a_balloon_that_is_wrong_itself_is_still_the_one_that_was_meant() -> None:
    """Its key is there, whatever else is wrong with it."""
    text = changed(
        RING, ("cross: {kind: link", "cross: {kind: links"), ("brace: cross", "brace: cros")
    )
    named = next(one for one in problems(text) if one.kind is FileKind.NO_SUCH_BALLOON)
    assert "did you mean cross?" in suggestion_words(named.suggestion, Voice())


def test_a_label_is_not_missed_where_the_colour_that_tells_it_is_misspelt() -> None:
    text = RING.replace('colour: "#1F5F8B"\n    label: deep blue', "color: deep blue")
    assert [one.path for one in problems(text)] == ["balloons.long.color"]
