"""Each mistake in a design file: its line, its path, and that what would be right is named.

Longer than 300 lines for its tables of cases.
"""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from design_texts import LAST_LINE, RING, changed, only_problem, problems, read, refusal

from buildplan.design.reading import read_design
from buildplan.language.voice import Voice
from buildplan.source.kinds import FileKind
from buildplan.source.problems import DesignProblemsError, in_words
from buildplan.source.suggestions import suggestion_words

TUBE = RING[RING.index("  tube:") : RING.index("spare")]
# old text, new text, line, path, words of the message, words of the suggestion
FORM = [
    ("name: Ring", "nmae: Ring", 2, "nmae", ["unknown key", "nmae"], ["name"]),
    (
        "  long:\n",
        "  long:\n    glow: 1\n",
        6,
        "balloons.long.glow",
        ["unknown"],
        ["kind", "label"],
    ),
    ('    colour: "', '    color: "', 9, "balloons.long.color", ["unknown key"], ["colour"]),
    ("    closed:", "    closd:", 15, "build.tube.closd", ["unknown key"], ["closed"]),
    ("units: in\n", "", 1, "units", ["missing"], ["unit"]),
    ("    lock: lock\n", "", 14, "build.tube.lock", ["missing"], ["round"]),
    ("    nominal: 12\n", "", 5, "balloons.long.nominal", ["missing"], ["bag"]),
    ("buildplan: 1", "buildplan: 2", 1, "buildplan", ["must be 1", "2"], ["version"]),
    ("buildplan: 1", "buildplan: true", 1, "buildplan", ["must be 1", "true"], ["version"]),
    ("name: Ring", "name: 12", 2, "name", ["text", "12"], ['name: "12"']),
    ("name: Ring", "name:", 2, "name", ["empty"], ["cover"]),
    ("name: Ring", 'name: "  "', 2, "name", ["blank"], ["cover"]),
    ("name: Ring", 'name: "Ring\\ntwo"', 2, "name", ["one line"], ["cover"]),
    ("name: Ring", f"name: {'x' * 81}", 2, "name", ["81"], ["80"]),
    (
        TUBE,
        "  letters: {text: NIÑO, cells: 5, long: long, brace: cross, lock: lock}\n",
        14,
        "build.letters.text",
        ["NIÑO", "signs"],
        ["capitals from A to Z"],
    ),
    ("units: in", "units: inn", 3, "units", ["in or cm", "inn"], ["in"]),
    ("kind: link", "kind: lnk", 6, "balloons.long.kind", ["link or round"], ["link"]),
    ("nominal: 12", 'nominal: "12"', 7, "balloons.long.nominal", ["text"], ["nominal: 12"]),
    ("nominal: 12", "nominal: 12 ins", 7, "balloons.long.nominal", ["12 ins"], ["nominal: 12 in"]),
    ("nominal: 12", "nominal: 12,5", 7, "balloons.long.nominal", ["text"], ["nominal: 12.5"]),
    ("nominal: 12", "nominal: true", 7, "balloons.long.nominal", ["number", "true"], ["bag"]),
    ("nominal: 12", "nominal: .inf", 7, "balloons.long.nominal", ["ordinary number"], ["bag"]),
    ("nominal: 12", "nominal: .nan", 7, "balloons.long.nominal", ["ordinary number"], ["bag"]),
    ("nominal: 12", "nominal: -12", 7, "balloons.long.nominal", ["at least", "-12"], ["bag"]),
    ("to: 8", "to: 0", 8, "balloons.long.inflate_to", ["at least", "0"], ["gauge"]),
    ('"#1F5F8B"', "bluu", 9, "balloons.long.colour", ["bluu", "not a colour"], ["mean blue?"]),
    ('"#1F5F8B"', "#1F5F8B", 9, "balloons.long.colour", ["comment"], ["quotes", '"#1F5F8B"']),
    ("closed: true", "closed: yes", 15, "build.tube.closed", ["yes"], ["closed: true"]),
    ("closed: true", "closed: off", 15, "build.tube.closed", ["off"], ["closed: false"]),
    ("closed: true", "closed: 1", 15, "build.tube.closed", ["true or false"], ["rings"]),
    ("chains: 4", "chains: 5", 16, "build.tube.chains", ["2, 3 or 4"], ["square"]),
    ("chains: 4", 'chains: "4"', 16, "build.tube.chains", ["text"], ["chains: 4"]),
    ("long: long", "long: 3", 17, "build.tube.long", ["text", "3"], ['long: "3"']),
    ("long: long", "long: [long]", 17, "build.tube.long", ["a list"], ["chain letter"]),
    ("repeat: 6", "repeat: 0", 21, "build.tube.course[0].repeat", ["at least 1"], ["times"]),
    ("repeat: 6", "repeat: -2", 21, "build.tube.course[0].repeat", ["at least 1"], ["times"]),
    ("repeat: 6", "repeat: 6.5", 21, "build.tube.course[0].repeat", ["whole"], ["repeat: 6"]),
    ("fan]", "fann]", 22, "build.tube.course[0].cells[1]", ["fann"], ["fan?"]),
    ("fan]", "7]", 22, "build.tube.course[0].cells[1]", ["7"], ["cells"]),
    ("fan]", "[1]]", 22, "build.tube.course[0].cells[1]", ["two advances"], ["[outer, inner]"]),
    ("fan]", "[1, 0, 1]]", 22, "build.tube.course[0].cells[1]", ["two"], ["[outer, inner]"]),
    ("fan]", "[1, -1]]", 22, "build.tube.course[0].cells[1][1]", ["at least 0"], ["0 to 20"]),
    ("fan]", "[1, x]]", 22, "build.tube.course[0].cells[1][1]", ["whole number"], ["0 to 20"]),
    ("[straight, fan]", "[]", 22, "build.tube.course[0].cells", ["empty"], ["at least 1"]),
    ("[straight, fan]", "fan", 22, "build.tube.course[0].cells", ["list"], ["cells: [fan]"]),
    ("  tube:\n", "  tub:\n", 14, "build.tub", ["unknown key"], ["tube"]),
    ("build:\n", "bild:\n", 13, "bild", ["unknown key"], ["build"]),
    ("spare: 0.05", "spare: 5", 23, "spare", ["at most 1"], ["0.05"]),
    ("spare: 0.05", "spare: 5%", 23, "spare", ["number"], ["spare: 0.05"]),
    ("spare: 0.05", "crew: 0", 23, "crew", ["at least 1"], ["people"]),
    ("spare: 0.05", "prices: {long: -0.3}", 23, "prices.long", ["at least 0"], ["price"]),
    ("spare: 0.05", 'prices: {long: "1"}', 23, "prices.long", ["text"], ["long: 1"]),
    ("spare: 0.05", "pack_sizes: {lock: 0}", 23, "pack_sizes.lock", ["at least 1"], ["pack"]),
    ("spare: 0.05", "labour: {pairs: 1}", 23, "labour.pairs", ["unknown"], ["pair?", "stand up"]),
    ("spare: 0.05", "labour: {pair: 0}", 23, "labour.pair", ["more than 0"], ["minutes"]),
    ("spare: 0.05", "brand: Lantern", 23, "brand", ["keys (name, contact, colour"], ["cover"]),
    ("spare: 0.05", "text: {lock: x}", 23, "text.lock", ["unknown key"], ["lock joints"]),
    ("spare: 0.05", "colour_pattern: {A: []}", 23, "colour_pattern.A", ["empty"], ["1"]),
    ("spare: 0.05", "colour_pattern: {E: [long]}", 23, "colour_pattern.E", ["E"], ["A, B, C"]),
    ("spare: 0.05", "constants: {Drag: 1}", 23, "constants.Drag", ["Drag"], ["small letters"]),
    ("spare: 0.05", "constants: {drag: 0}", 23, "constants.drag", ["more than 0"], ["own values"]),
    ("spare: 0.05", "stand_on: []", 23, "stand_on", ["empty"], ["1"]),
    ("spare: 0.05", "stand_on: 3", 23, "stand_on", ["text"], ['stand_on: "3"']),
]
AGREEMENT = [
    ("long: long", "long: lng", 17, "build.tube.long", ['"lng"'], ["did you mean long?"]),
    ("brace: cross", "brace: crss", 18, "build.tube.brace", ['"crss"'], ["cross"]),
    ("    lock: lock", "    lock: lok", 19, "build.tube.lock", ['"lok"'], ["lock"]),
    ("brace: cross", "brace: lock", 18, "build.tube.brace", ["a round", "link"], ["long or cross"]),
    ("    lock: lock", "    lock: cross", 19, "build.tube.lock", ["link balloon"], ["use lock"]),
    (
        "    lock: lock",
        "    single: crs\n    lock: lock",
        19,
        "build.tube.single",
        ['"crs"'],
        ["cross"],
    ),
    ("to: 8\n", "to: 12.5\n", 8, "balloons.long.inflate_to", ["12.5", "12"], ["12 or less"]),
    (
        "label: deep blue",
        "tie_to_tie: 9\n    chain_of_ten: 90\n    label: deep blue",
        11,
        "balloons.long.chain_of_ten",
        ["tie_to_tie", "both"],
        ["keep the one"],
    ),
    (
        "label: deep",
        "tie_to_tie: 6.3\n    label: deep",
        10,
        "balloons.long.tie_to_tie",
        ["6.3"],
        ["6.4", "16"],
    ),
    (
        "label: deep",
        "chain_of_ten: 161\n    label: deep",
        10,
        "balloons.long.chain_of_ten",
        ["161"],
        ["64", "160"],
    ),
    (
        "inflate_to: 3.5",
        "inflate_to: 3.5, tie_to_tie: 4",
        12,
        "balloons.lock.tie_to_tie",
        ["round", "neck only"],
        ["take tie_to_tie out"],
    ),
    (
        "long: long\n",
        "long: {A: long, B: long}\n",
        17,
        "build.tube.long",
        ["C and D"],
        ["C: long", "D: long"],
    ),
    (
        "long: long\n",
        "long: {A: long, B: long, C: lnog, D: long}\n",
        17,
        "build.tube.long.C",
        ["lnog"],
        ["long"],
    ),
    (
        "straight, fan]",
        "straight, [0, 0], fan]",
        22,
        "build.tube.course[0].cells[1]",
        ["[0, 0]"],
        ["take it out"],
    ),
    (
        "straight, fan]",
        "straight, fan, tip, dip]",
        22,
        "build.tube.course[0].cells[2]",
        ["skips a joint", "outer", "A and D"],
        ["single: cross"],
    ),
    (
        "straight, fan]",
        "straight, fan, dip, tip]",
        22,
        "build.tube.course[0].cells[2]",
        ["skips a joint", "inner", "B and C"],
        ["single: cross"],
    ),
    (
        "cells: [straight, fan]",
        "cells: [fan]",
        20,
        "build.tube.course",
        ["inner", "0 balloons"],
        ["straight"],
    ),
    (
        "fan]",
        "{repeat: 500, cells: [straight]}]",
        20,
        "build.tube.course",
        ["48,096 balloons"],
        ["20,000"],
    ),
    ("spare: 0.05", "stand_on: A99", 23, "stand_on", ["A99"], ["A1 to A12", "B1 to B6"]),
    ("spare: 0.05", "stand_on: [A1, E1]", 23, "stand_on[1]", ["E1"], ["D1 to D12"]),
    ("spare: 0.05", "stand_on: [A1, A1]", 23, "stand_on[1]", ["twice"], ["once"]),
    ("spare: 0.05", "prices: {lnog: 1}", 23, "prices.lnog", ["lnog"], ["long"]),
    ("spare: 0.05", "pack_sizes: {crss: 5}", 23, "pack_sizes.crss", ["crss"], ["cross"]),
    (
        "spare: 0.05",
        "colour_pattern: {A: [long, lok]}",
        23,
        "colour_pattern.A[1]",
        ["lok"],
        ["long and cross"],
    ),
    (
        "spare: 0.05",
        "colour_pattern: {A: [long, lock]}",
        23,
        "colour_pattern.A[1]",
        ["a round"],
        ["long or cross"],
    ),
]
YAML = [
    ("units: in\n", "units: in\nunits: in\n", 4, "units", ["twice", "line 3"], ["one"]),
    ("nominal: 12\n", "nominal: 012\n", 7, "balloons.long.nominal", ["012"], ["12"]),
    ("units: in", "units: !!str in", 3, "units", ["!!str"], ["leave the tag out"]),
    ("name: Ring", 'name: "Ring\\a"', 2, "name", ["cannot be printed"], ["take them out"]),
    ("spare: 0.05", "? [spare]\n: 1\nspare: 0.05", 23, "", ["cannot be a key"], ["word"]),
    ("spare: 0.05", "<<: 5\nspare: 0.05", 23, '["<<"]', ["mappings only"], ["<<: *name"]),
    ("spare: 0.05", "yes: 1\nspare: 0.05", 23, "yes", ["unknown key", "yes"], ["name"]),
]


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
