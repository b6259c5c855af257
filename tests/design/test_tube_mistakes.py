"""Mistakes about the chains and the cells of a tube."""

from __future__ import annotations

import pytest
from design_texts import RING, changed, only_problem, problems

from buildplan.language.voice import Voice
from buildplan.source.suggestions import suggestion_words

TUBE = RING[RING.index("  tube:") : RING.index("spare")]


@pytest.mark.parametrize(
    ("chains", "cell", "needed"),
    [
        # a chain has a twin to tie a single to: 4 chains on both sides, 3 outside, 2 nowhere
        (4, "tip", True), (4, "dip", True), (4, "[3, 3]", True), (4, "fan", False),
        (3, "tip", True), (3, "dip", False), (3, "[1, 4]", False),
        (2, "tip", False), (2, "dip", False),
    ],
)  # fmt: skip
def test_single_is_asked_for_only_where_a_skipped_joint_has_a_twin(
    chains: int, cell: str, needed: bool
) -> None:
    course = f"    course: [straight, straight, straight, {cell}]\n"
    text = changed(RING, ("closed: true", "closed: false"), ("chains: 4", f"chains: {chains}"))
    text = text[: text.index("    course:")] + course
    assert len(problems(text)) == needed
    if needed:
        problem = only_problem(text)
        assert problem.path == "build.tube.course[3]"
        assert "single" in Voice().tell(problem.message)
    assert not problems(changed(text, ("    lock:", "    single: cross\n    lock:")))


@pytest.mark.parametrize(
    ("chains", "letters", "right"),
    [(2, "AB", True), (3, "ABC", True), (4, "ABCD", True), (2, "ABC", False), (3, "AB", False)],
)
def test_long_names_exactly_the_chains_of_the_tube(chains: int, letters: str, right: bool) -> None:
    long = ", ".join(f"{letter}: long" for letter in letters)
    text = changed(RING, ("chains: 4", f"chains: {chains}"), ("long: long", f"long: {{{long}}}"))
    assert bool(problems(text)) is not right
    if not right:
        assert only_problem(text).path.startswith("build.tube.long")


def test_colour_pattern_only_for_chains_of_the_tube() -> None:
    text = changed(
        RING, ("chains: 4", "chains: 2"), ("spare", "colour_pattern: {C: [long]}\nspare")
    )
    problem = only_problem(text)
    assert (problem.line, problem.path) == (23, "colour_pattern.C")
    assert "A or B" in suggestion_words(problem.suggestion, Voice())
