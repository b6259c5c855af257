"""How values and keys of a file are read, against the YAML specification."""

from __future__ import annotations

import math

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.language.voice import Voice
from buildplan.source.yaml_nodes import mark_of, plain
from buildplan.source.yaml_slips import PLAIN_SPACES
from buildplan.source.yaml_source import load


def values(text: str) -> object:
    source = load(text, "a file")
    assert not source.mistakes
    return plain(source.root)


def test_core_schema_of_yaml_1_2() -> None:
    # YAML 1.2.2, Example 10.9 "Core Tag Resolution"
    text = """\
A null: null
Also a null: # Empty
Not a null: ""
Booleans: [ true, True, false, FALSE ]
Integers: [ 0, 0o7, 0x3A, -19 ]
Floats: [ 0., -0.0, .5, +12e03, -2E+05 ]
Also floats: [ .inf, -.Inf, +.INF, .NAN ]
"""
    read = values(text)
    assert isinstance(read, dict)
    not_a_number = read["Also floats"].pop()
    assert math.isnan(not_a_number)
    assert read == {
        "A null": None,
        "Also a null": None,
        "Not a null": "",
        "Booleans": [True, True, False, False],
        "Integers": [0, 7, 0x3A, -19],
        "Floats": [0.0, 0.0, 0.5, 12000.0, -200000.0],
        "Also floats": [math.inf, -math.inf, math.inf],
    }
    assert [type(v) for v in read["Integers"] + read["Floats"]] == [int] * 4 + [float] * 5


# https://yaml.org/type/bool.html and int.html: what YAML 1.1 reads as something else
@pytest.mark.parametrize(
    "written",
    ["y", "Yes", "NO", "on", "Off", "190:20:30", "685_230", "0b1010", "2001-12-14", "=", "12:30"],
)
def test_oddities_of_yaml_1_1_are_text(written: str) -> None:
    assert values(f"a: {written}") == {"a": written}
    assert values(f"{written}: a") == {written: "a"}


@pytest.mark.parametrize("key", ["1", "007", "1.50", "true", "null", "~", "2001-12-14", "0x1F"])
def test_keys_are_text_as_written(key: str) -> None:
    assert values(f"{key}: a") == {key: "a"}


@pytest.mark.parametrize("written", ["010", "-007", "00", "08"])
def test_leading_zeros_are_refused(written: str) -> None:
    # https://yaml.org/type/int.html reads 010 as 8; YAML 1.2.2, 10.3.2 reads it as 10
    (mistake,) = load(f"a: {written}", "a file").mistakes
    assert mistake.at == ("a",)
    assert "leading zero" in Voice().tell(mistake.message)
    assert not load(f'a: "{written}"', "a file").mistakes


def test_quoted_and_block_scalars_are_text() -> None:
    assert values("a: '12'\nb: \"true\"\nc: |\n  12\nd: ! 12\n") == {
        "a": "12",
        "b": "true",
        "c": "12\n",
        "d": "12",
    }


def test_merge_key() -> None:
    # https://yaml.org/type/merge.html, the example there (its last four maps are equal)
    text = """\
- &CENTER { x: 1, y: 2 }
- &LEFT { x: 0, y: 2 }
- &BIG { r: 10 }
- &SMALL { r: 1 }
- { x: 1, y: 2, r: 10, label: center/big }
- { <<: *CENTER, r: 10, label: center/big }
- { <<: [ *CENTER, *BIG ], label: center/big }
- { <<: [ *BIG, *LEFT, *SMALL ], x: 1, label: center/big }
"""
    read = values(text)
    assert isinstance(read, list)
    assert read[4] == read[5] == read[6] == read[7]


def test_quoted_merge_key_is_a_key() -> None:
    assert values('"<<": 1') == {"<<": 1}


def test_lines_and_columns() -> None:
    text = "a:\n  b: [1,\n    {c: 2}]\n# note\nd:\n  - e\n  -\n    f: 3\n"
    root = load(text, "a file").root
    places = {
        (): (1, 1),
        ("a",): (1, 1),
        ("a", "b"): (2, 3),
        ("a", "b", 0): (2, 7),
        ("a", "b", 1): (3, 5),
        ("a", "b", 1, "c"): (3, 6),
        ("d", 0): (6, 5),
        ("d", 1, "f"): (8, 5),
        # what is not there is placed where it would belong
        ("d", 1, "missing"): (8, 5),
        ("a", "missing", 3): (1, 1),
        ("d", 9): (5, 1),
    }
    assert {path: mark_of(root, path) for path in places} == places


def test_duplicate_key_keeps_the_first_and_says_where_it_was() -> None:
    source = load("a: 1\nb: 2\na: 3\n", "a file")
    (mistake,) = source.mistakes
    assert mistake.mark == (3, 1)
    assert "line 1" in Voice().tell(mistake.message)
    assert plain(source.root) == {"a": 1, "b": 2}


# spaces that come along when text is pasted are read as plain ones, on purpose
PASTED = "".join(map(chr, PLAIN_SPACES))

plain_data = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**20), 10**20)
    | st.floats(allow_nan=False)
    | st.text(
        st.characters(
            codec="utf-8", exclude_categories=["Cc", "Cs", "Cn"], exclude_characters=PASTED
        ),
        max_size=12,
    ),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text("abcxyz <=~", min_size=1, max_size=6), inner, max_size=4)
    ),
    max_leaves=12,
)


@given(plain_data)
@settings(max_examples=200)
def test_what_a_yaml_writer_writes_is_read_back(data: object) -> None:
    """PyYAML's own writer is the reference: it quotes whatever 1.1 would misread."""
    for flow in (False, True):
        assert values(yaml.safe_dump(data, allow_unicode=True, default_flow_style=flow)) == data
