"""Each mistake in a piece whose balloons are listed: its line, its path, what would be right."""

from __future__ import annotations

import pytest
from design_texts import TRIANGLE, changed, only_problem

from buildplan.language.voice import Voice
from buildplan.source.suggestions import suggestion_words

# old text, new text, line, path, message, suggestion
GRAPH = [
    ("[P, Q, R]", "[P, Q, Q, R]", 9, "build.graph.joints[2]", ["twice"], ["once"]),
    ("[P, Q, R]", "[P, Q, R, S]", 9, "build.graph.joints[3]", ['"S"', "no balloon"], ["add"]),
    ("[P, Q, R]", "[P, Q, R, 4]", 9, "build.graph.joints[3]", ["text", "4"], ['"4"']),
    ("from: P, to: Q", "from: P, to: T", 12, "build.graph.balloons[0].to", ['"T"'], ["P, Q and R"]),
    ("from: P, to: Q", "from: W, to: Q", 12, "build.graph.balloons[0].from", ['"W"'], ["P, Q"]),
    ("from: P, to: Q", "from: Q, to: Q", 12, "build.graph.balloons[0].to", ["both"], ["another"]),
    ("from: P, to: Q", "form: P, to: Q", 12, "build.graph.balloons[0].form", ["form"], ["from?"]),
    ("to: Q, balloon: edge", "to: Q, balloon: egde", 12, "build.graph.balloons[0].balloon",
     ["egde"], ["edge"]),
    ("to: Q, balloon: edge", "to: Q, balloon: lock", 12, "build.graph.balloons[0].balloon",
     ["a round"], ["use edge"]),
    ("lock: lock\n", "lock: edge\n", 10, "build.graph.lock", ["link"], ["use lock"]),
    ("units: in\n", "units: in\nstand_on: p\n", 4, "stand_on", ['"p"'], ["did you mean P?"]),
    ("units: in\n", "units: in\ncolour_pattern: {A: [edge]}\n", 4, "colour_pattern",
     ["no long chains"], ["build.graph.balloons"]),
    ("[P, Q, R]", "[P, Q, R, S, T]", 11, "build.graph.balloons", ["2 parts", "S and T"],
     ["tie the parts"]),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "line", "path", "message", "right"), GRAPH)
def test_mistake_in_a_listed_piece(
    old: str, new: str, line: int, path: str, message: list[str], right: list[str]
) -> None:
    text = changed(TRIANGLE, (old, new))
    if "T]" in new:
        text += "      - {from: S, to: T, balloon: edge}\n"
    problem = only_problem(text)
    assert (problem.line, problem.path) == (line, path)
    for word in message:
        assert word in Voice().tell(problem.message)
    for word in right:
        assert word in suggestion_words(problem.suggestion, Voice())
