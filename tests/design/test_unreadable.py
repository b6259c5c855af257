"""Files that cannot be read as a design at all: one clear reason, and its place."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from design_texts import RING, changed, problems, read, refusal

from buildplan.design.reading import read_design
from buildplan.language.voice import Voice
from buildplan.source.file_text import MOST_BYTES
from buildplan.source.problems import UnreadableDesignError
from buildplan.source.suggestions import suggestion_words
from buildplan.source.yaml_composer import MAX_ALIASED_NODES, MAX_NESTING


def test_missing_file_and_folder(tmp_path: Path) -> None:
    with pytest.raises(UnreadableDesignError, match="no-such-file"):
        read_design(tmp_path / "nowhere.yaml")
    with pytest.raises(UnreadableDesignError, match="a-folder"):
        read_design(tmp_path)
    with pytest.raises(UnreadableDesignError):
        read_design(tmp_path / "a\0b.yaml")
    (tmp_path / "file").write_text("")
    with pytest.raises(UnreadableDesignError):
        read_design(tmp_path / "file" / "below.yaml")


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read every file"
)
def test_file_that_may_not_be_read(tmp_path: Path) -> None:
    path = tmp_path / "closed.yaml"
    path.write_text(RING)
    path.chmod(0)
    with pytest.raises(UnreadableDesignError, match="not-allowed"):
        read_design(path)


@pytest.mark.parametrize(
    ("content", "line", "words"),
    [
        (b"", 1, "empty"),
        (b"# only a comment\n", 1, "empty"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", None, "not a text file"),
        ("buildplan: 1\n".encode("utf-16"), None, "UTF-16"),
        (b"buildplan: 1\nname: Caf\xe9\n", 2, "not UTF-8"),
        (b"- buildplan\n", 1, "keys with values"),
        (b"just words\n", 1, "keys with values"),
        (RING.encode() + b"#" * MOST_BYTES, None, "larger than 1024 KiB"),
        (RING.encode() + b"---\nbuildplan: 1\n", 24, "second document"),
        (b"name: a\x01b\n", 1, "cannot be printed"),
    ],
)
def test_content_that_is_no_design(content: bytes, line: int | None, words: str) -> None:
    problem = refusal(content)
    assert words in Voice().tell(problem.message)
    assert problem.line == line
    assert suggestion_words(problem.suggestion, Voice())


@pytest.mark.parametrize(
    ("old", "new", "line", "message", "right"),
    [
        ("units: in", "\tunits: in", 3, "tab", "spaces"),
        ("units: in", "units in", 3, "no colon in units in", "units: in"),
        ("closed: true", "closed true", 15, "no colon", "closed: true"),
        ("closed: true", "closed:true", 15, "no space", "closed: true"),
        ("- repeat: 6", "\u2013 repeat: 6", 21, "not a hyphen", "- repeat: 6"),
        ("units: in", "units: 'in", 3, "never closed", "same mark"),
        ("units: in", "units: a: b", 3, "key: value", "quotes"),
        ("units: in", "units: @in", 3, "keeps for itself", "quotes"),
        ("units: in", "units: - in", 3, "list item", "below its key"),
        ("units: in", 'units: "\\q"', 3, "backslash", "single quotes"),
        ("units: in", "units: !<x in", 3, "!", "quotes"),
        ("units: in", "units: *in", 3, "*in names nothing", "&in"),
        ("units: in", "units: &in [*in]", 3, "inside what it names", "in full"),
        ("chains: 4", " chains: 4", 16, "key: value", "indented like its neighbours"),
        ("    long: long", "   long: long", 17, "indented", "same number of spaces"),
        ("cross: {kind: link,", "cross: {kind: link", 11, "comma", "}"),
        ("fan]", "fan", 23, "[ ]", "]"),
        ("[straight, fan]", "[straight, fan", 23, "[ ]", "]"),
        # within braces an unquoted colour swallows the rest of its line
        ('colour: "#F7F3E8", label: ivory}', "colour: #F7F3E8, label: ivory}", 11, "colour", '"#'),
    ],
)
def test_yaml_that_does_not_parse(old: str, new: str, line: int, message: str, right: str) -> None:
    problem = refusal(changed(RING, (old, new)))
    assert problem.line == line
    assert Voice().tell(problem.message).startswith("column ")
    assert message in Voice().tell(problem.message)
    assert right in suggestion_words(problem.suggestion, Voice())


def test_byte_order_mark_and_other_line_ends_are_read() -> None:
    text = "\ufeff" + RING.replace("\n", "\r\n")
    assert read(text) == read(RING)
    (problem,) = problems(text.replace("chains: 4", "chains: 5"))
    assert problem.line == 16


def billion_laughs(levels: int) -> str:
    """Every level is ten times the one before, by aliases alone (the attack known by this
    name since 2003; CWE-776)."""
    lines = ["a0: &a0 [ha, ha, ha, ha, ha, ha, ha, ha, ha, ha]"]
    for level in range(1, levels):
        lines.append(f"a{level}: &a{level} [" + ", ".join([f"*a{level - 1}"] * 10) + "]")
    return "\n".join(lines) + "\n"


def test_alias_bomb_is_refused_before_it_swells() -> None:
    problem = refusal(billion_laughs(10))
    assert "aliases" in Voice().tell(problem.message)
    # ten to the fifth is past the limit, so nothing below that level was ever looked at
    assert problem.line is not None
    assert problem.line <= 6


def test_alias_bomb_by_merge_keys_is_refused() -> None:
    lines = ["b0: &b0 {k0: 1}"]
    lines += [f"b{i}: &b{i} {{<<: *b{i - 1}, k{i}: 1}}" for i in range(1, 400)]
    assert "aliases" in Voice().tell(refusal("\n".join(lines)).message)


def test_honest_aliases_are_read() -> None:
    text = changed(RING, ('colour: "#1F5F8B"', 'colour: &blue "#1F5F8B"'), ('"#F7F3E8"', "*blue"))
    design = read(text)
    assert design.balloons["cross"].colour == design.balloons["long"].colour == "#1F5F8B"


def test_aliases_are_read_up_to_the_limit() -> None:
    def listed(count: int) -> str:
        return "x: &x 1\ny: [" + ", ".join(["*x"] * count) + "]\n"

    assert problems(listed(MAX_ALIASED_NODES))
    assert "aliases" in Voice().tell(refusal(listed(MAX_ALIASED_NODES + 1)).message)


def test_file_of_far_too_many_values_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("buildplan.source.yaml_composer.MAX_NODES", 20)
    assert "more than 20 values" in Voice().tell(refusal(RING).message)


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? "])
def test_deep_nesting_is_refused(opening: str) -> None:
    problem = refusal(opening * 20_000)
    assert f"more than {MAX_NESTING} deep" in Voice().tell(problem.message)


def test_nesting_through_aliases_is_refused() -> None:
    half = MAX_NESTING // 2 + 1
    text = f"a: &a {'[' * half}1{']' * half}\nb: {'[' * half}*a{']' * half}\n"
    assert "deep" in Voice().tell(refusal(text).message)


def test_nothing_in_a_file_is_run(tmp_path: Path) -> None:
    mark = tmp_path / "run"
    for tag in ("!!python/object/apply:os.mkdir", "!!python/object/new:os.mkdir"):
        found = problems(changed(RING, ("units: in", f"units: {tag} ['{mark}']")))
        assert any("tag" in Voice().tell(problem.message) for problem in found)
    assert not mark.exists()
