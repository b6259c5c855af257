"""Changes in a design's text: they say what was meant, and touch no line that they do not mean.

YAML 1.1 as PyYAML reads it is what says what a text holds.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from desks import EVERY_DESIGN, FILES

from buildplan.desk.calls import EditCall
from buildplan.desk.editing import Beside, edited
from buildplan.desk.refusals import RefusedError

VERSION = "0" * 64
TEXTS = [*EVERY_DESIGN, *(FILES / f"{name}.yaml" for name in ("everything", "ladder"))]
Place = list[str | int]


def changed(text: str, *edits: dict[str, object]) -> str:
    """A text with changes as the page sends them."""
    call = EditCall.model_validate({"base": VERSION, "edits": edits})
    return edited(text, call.edits, Beside(Path(), {}))


def read(text: str) -> Any:
    return yaml.load(text, yaml.CSafeLoader)


def ways_down(data: Any) -> list[tuple[Place, Any]]:
    """Every place of plain data, but of items of a list that have the same keys the last alone."""
    alike = {
        tuple(None if isinstance(step, int) else step for step in at): at for at, _ in places(data)
    }
    return [(at, at_place(data, at)) for at in alike.values()]


def places(data: Any, at: Place | None = None) -> Iterator[tuple[Place, Any]]:
    """Every place of plain data, with what is there."""
    at = at or []
    if at:
        yield at, data
    if isinstance(data, dict | list):
        for step, one in data.items() if isinstance(data, dict) else enumerate(data):
            yield from places(one, [*at, step])


def at_place(data: Any, at: Place) -> Any:
    for step in at:
        data = data[step]
    return data


def line_of(text: str, at: Place) -> tuple[int, int]:
    """The first and the last line of what stands at a place, from 0, by PyYAML's own marks."""
    node: Any = yaml.compose(text, yaml.CSafeLoader)
    key = node
    for step in at:
        if isinstance(step, int):
            key = node = node.value[step]
        else:
            key, node = next(pair for pair in node.value if pair[0].value == step)
    end = node.end_mark
    return key.start_mark.line, end.line - (1 if end.column == 0 else 0)


def lines_touched(old: str, new: str) -> list[int]:
    """Which lines of the old text the new one has not, or has others behind."""
    matcher = difflib.SequenceMatcher(None, old.splitlines(), new.splitlines(), autojunk=False)
    return [
        line
        for tag, start, end, _, _ in matcher.get_opcodes()
        if tag != "equal"
        for line in range(start, max(end, start + 1))
    ]


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_a_value_changes_in_its_own_lines(path: Path) -> None:
    text = path.read_text("utf-8")
    data = read(text)
    for at, value in ways_down(data):
        if isinstance(value, dict | list):
            continue
        other = "tried: # it's" if isinstance(value, str) else 7
        made = changed(text, {"op": "put", "path": at, "value": other})
        wanted = read(text)
        at_place(wanted, at[:-1])[at[-1]] = other
        assert read(made) == wanted
        first, last = line_of(text, at)
        assert set(lines_touched(text, made)) <= set(range(first, last + 1)), at


def insert(at: Place, place: int, value: object) -> dict[str, object]:
    return {"op": "insert", "path": [*at, place], "value": value}


def move(at: Place, place: int, to: int) -> dict[str, object]:
    return {"op": "move", "path": [*at, place], "to": to}


def take_out(at: Place, place: int) -> dict[str, object]:
    return {"op": "take_out", "path": [*at, place]}


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_lists_grow_and_shrink_and_are_ordered_anew(path: Path) -> None:
    text = path.read_text("utf-8")
    data = read(text)
    for at, value in ways_down(data):
        if not isinstance(value, list) or len(value) < 2:
            continue
        others = set(range(text.count("\n") + 1)) - set(range(*line_of(text, at)))
        others.discard(line_of(text, at)[1])
        kept = [text.splitlines()[line] for line in sorted(others) if line < text.count("\n")]
        first, *middle, last = value
        for edit, then in (
            (insert(at, 1, last), [first, last, *middle, last]),
            (insert(at, len(value), first), [*value, first]),
            (insert(at, 0, first), [first, *value]),
            (move(at, 0, len(value) - 1), [*middle, last, first]),
            (move(at, len(value) - 1, 0), [last, first, *middle]),
            (take_out(at, 0), [*middle, last]),
            (take_out(at, len(value) - 1), [first, *middle]),
        ):
            made = changed(text, edit)
            wanted = read(text)
            at_place(wanted, at[:-1])[at[-1]] = then
            assert read(made) == wanted, edit
            lines = made.splitlines()
            assert [line for line in kept if line not in lines] == [], edit


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_keys_go_and_come_back(path: Path) -> None:
    """What is taken out and put in again says the same, and every comment elsewhere is kept."""
    text = path.read_text("utf-8")
    data = read(text)
    for at, value in ways_down(data):
        if isinstance(at[-1], int):
            continue
        without = changed(text, {"op": "take_out", "path": at})
        first, last = line_of(text, at)
        if len(at) > 1 and isinstance(at[-2], int):
            last += 1  # the key below may stand behind the item's dash now
        assert set(lines_touched(text, without)) <= set(range(first, last + 1)), at
        assert read(changed(without, {"op": "put", "path": at, "value": value})) == data


WRITTEN = """\
# our own ring, as we built it in May
buildplan: 1
name: 'Ring'   # said aloud
balloons:
  # the long ones
  long: {gauge: 8, colour: "#264653"}
  brace: {gauge: 8, colour: gold}
build:
  tube:
    closed: true
    course:
      - square   # the first
      - {repeat: 3, cells: [square, tapered]}
"""


def test_comments_quotes_and_order_stay() -> None:
    made = changed(
        WRITTEN,
        {"op": "put", "path": ["name"], "value": "A ring: ours"},
        {"op": "put", "path": ["balloons", "long", "colour"], "value": "rebeccapurple"},
        {"op": "put", "path": ["build", "tube", "course", 1, "repeat"], "value": 4},
        {"op": "insert", "path": ["build", "tube", "course", 1], "value": "tapered"},
        {"op": "put", "path": ["units"], "value": "cm"},
        {"op": "rename", "path": ["balloons", "brace"], "key": "tie"},
    )
    assert (
        made
        == """\
# our own ring, as we built it in May
buildplan: 1
name: 'A ring: ours'   # said aloud
balloons:
  # the long ones
  long: {gauge: 8, colour: rebeccapurple}
  tie: {gauge: 8, colour: gold}
build:
  tube:
    closed: true
    course:
      - square   # the first
      - tapered
      - {repeat: 4, cells: [square, tapered]}
units: cm
"""
    )


def test_the_last_item_of_a_list_can_go_and_its_comments_stay() -> None:
    text = "# ours\nname: a  # said\nties:\n  # by hand\n  - [a, b]\nbuild: {}\n"
    made = changed(text, {"op": "take_out", "path": ["ties", 0]})
    assert read(made) == {"name": "a", "ties": [], "build": {}}
    assert "# ours\nname: a  # said\n" in made


def test_what_an_alias_shares_is_changed_for_all_that_share_it() -> None:
    text = "# ours\nlong: &size {gauge: 8}\nshort: *size # the same\n"
    made = changed(text, {"op": "put", "path": ["long", "gauge"], "value": 9})
    assert read(made)["long"] == {"gauge": 9}
    assert "# ours" in made


def test_a_place_that_is_not_there_is_refused() -> None:
    edits: list[dict[str, object]] = [
        {"op": "take_out", "path": ["nothing"]},
        {"op": "insert", "path": ["name", 0], "value": 1},
        {"op": "move", "path": ["build", "tube", "course", 5], "to": 0},
        {"op": "put", "path": ["build", "tube", "course", 5, "repeat"], "value": 1},
    ]
    for edit in edits:
        with pytest.raises(RefusedError) as refused:
            changed(WRITTEN, edit)
        assert refused.value.status == 422


def test_of_several_changes_all_are_made_or_none() -> None:
    with pytest.raises(RefusedError):
        changed(
            WRITTEN,
            {"op": "put", "path": ["name"], "value": "B"},
            {"op": "take_out", "path": ["nothing"]},
        )


def test_a_text_that_cannot_be_read_is_left_to_a_person() -> None:
    with pytest.raises(RefusedError) as refused:
        changed("name: [", {"op": "put", "path": ["name"], "value": "B"})
    assert refused.value.status == 422
