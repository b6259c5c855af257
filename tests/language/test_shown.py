"""Signs that are not seen are shown in whatever leaves: messages, lines, data and refusals.

The direction signs are those of the Unicode Bidirectional Algorithm (UAX 9, table 4).
"""

from __future__ import annotations

import json
import unicodedata
from pathlib import Path

import pytest
from conftest import Call

from buildplan.language.messages import listing, message
from buildplan.language.shown import DIRECTIONS, is_unseen, shown
from buildplan.language.voice import Voice

HOSTILE = ("\u202e", "\0", "\n", "\x1b[31m", "\u2028", "\x9b", "\u2066")
DESIGN = """buildplan: 1
name: {name}
units: in
balloons:
  a: {{kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: {label}}}
  b: {{kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}}
build: {{column: {{around: 4, rings: 2, ring: a, between: a, lock: b}}}}
"""


def clean(text: str) -> bool:
    return not any(is_unseen(sign) for sign in text if sign != "\n")


def test_all_signs_of_direction_are_known() -> None:
    strange = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    marks = {"\u200e", "\u200f", "\u061c"}
    signs = map(chr, range(0x110000))
    assert {c for c in signs if unicodedata.bidirectional(c) in strange} | marks == DIRECTIONS


@pytest.mark.parametrize("sign", HOSTILE)
def test_whatever_a_message_is_filled_with_is_shown(sign: str) -> None:
    told = Voice().tell(
        message("{a} and {b}", a=f"x{sign}y", b=listing([f"{sign}z", message("{c}", c=sign)]))
    )
    assert clean(told)
    assert "\n" not in told
    assert f"<U+{ord(sign[0]):04X}>" in told
    assert shown(told) == told


@pytest.mark.parametrize("sign", ["\u202e", "\n", "\x1b[31m", "\x9b"])
def test_names_of_files_are_shown(call: Call, tmp_path: Path, sign: str) -> None:
    name = f"a{sign}b.yaml"
    (tmp_path / name).write_text("name: [", encoding="utf-8")
    for asked in (name, f"none{sign}.yaml"):
        for command in (("check",), ("booklet",), ("steps",), ("event",), ("companion",)):
            status, out, messages = call(*command, asked)
            assert status == 2
            assert clean(out + messages)
            assert f"<U+{ord(sign[0]):04X}>" in messages
    (tmp_path / name).write_text(DESIGN.format(name="Post", label="blue"), encoding="utf-8")
    status, out, _ = call("draw", name, "--out", f"a{sign}b.svg")
    assert status == 0
    assert out.splitlines() == [f"a<U+{ord(sign[0]):04X}>{sign[1:]}b.svg"]


@pytest.mark.parametrize(
    "sign", ["\\u202e", "\\0", "\\n", "\\e[31m", "\\u200f", "\\u2066", "\\x9b"]
)
def test_names_and_labels_that_hold_such_signs_are_refused(
    call: Call, tmp_path: Path, sign: str
) -> None:
    text = DESIGN.format(name=f'"Post{sign}"', label=f'"blue{sign}"')
    (tmp_path / "post.yaml").write_text(text, encoding="utf-8")
    status, out, messages = call("check", "post.yaml", "--json")
    assert status in (1, 2)
    assert clean(out + messages)
    assert len(messages.splitlines() or json.loads(out)["problems"]) == 2


def test_data_for_scripts_holds_no_such_sign_as_it_is(call: Call, tmp_path: Path) -> None:
    name = "a\u202eb.yaml"
    (tmp_path / name).write_text(DESIGN.format(name="5", label="blue"), encoding="utf-8")
    _, out, messages = call("check", name, "--json")
    assert clean(out + messages)
    assert json.loads(out)
