"""Changes to a design file: made in its plain data, and in its text with the comments kept."""

from __future__ import annotations

import copy
import json
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import yaml

from buildplan.source.mistake import Mark, Path
from buildplan.source.problems import UnreadableDesignError
from buildplan.source.suggestions import Change, Put, Rename, TakeOut
from buildplan.source.yaml_nodes import Keys, Node, NodeItems, node_at, plain
from buildplan.source.yaml_source import load

WIDTH = 96  # of a line of a file that is written anew


class CannotChangeError(Exception):
    """The file has no such place as a change names."""


def changed_data(data: object, changes: Iterable[Change]) -> Any:
    """The plain data of a file with the changes made. Mappings on the way to a place that are
    not there are added. Raises CannotChangeError where there is no such place."""
    made = copy.deepcopy(data)
    for change in _from_behind(changes):
        try:
            _change(made, change)
        except (KeyError, IndexError, TypeError) as error:
            raise CannotChangeError(str(change.at)) from error
    return made


def _change(made: Any, change: Change) -> None:
    holder = made
    for step in change.at[:-1]:
        if isinstance(holder, dict) and holder.get(str(step)) is None:
            holder[step] = {}
        holder = holder[step]
    step = change.at[-1]
    match change:
        case Put(value=value, last=last) if isinstance(step, int):
            holder[step : (step if last is None else last) + 1] = [value]
        case Put(value=value):
            holder[step] = value
        case TakeOut():
            del holder[step]
        case Rename(key=key):
            if step not in holder:
                raise KeyError(step)
            items = [(key if name == step else name, value) for name, value in holder.items()]
            holder.clear()
            holder.update(items)


def changed_text(text: str, changes: Sequence[Change]) -> tuple[str, bool]:
    """The text of a file with the changes made, and whether its comments are kept.

    What is not changed stays as it is written. Where the changes cannot be made in the text (a
    value that an alias shares, say), the file is written anew from its data, without comments.
    Raises CannotChangeError where there is no such place.
    """
    wanted = changed_data(plain(load(text, "").root), changes)
    made = edited_text(text, changes)
    if made is not None:
        return made, True
    return yaml.safe_dump(wanted, sort_keys=False, allow_unicode=True, width=WIDTH), False


def edited_text(text: str, changes: Sequence[Change]) -> str | None:
    """The text of a file with the changes made in their places and nothing else touched; None
    where that cannot be done. Raises as `changed_text` does."""
    root = load(text, "").root
    wanted = changed_data(plain(root), changes)
    made = _edited(text, root, changes)
    return made if made is not None and holds(made, wanted) else None


def holds(text: str, wanted: object) -> bool:
    """Whether a text says this, as plain data."""
    try:
        return plain(load(text, "").root) == wanted
    except UnreadableDesignError:
        return False


def _from_behind(changes: Iterable[Change]) -> list[Change]:
    """Changes in an order in which none moves the place of another."""

    def place(change: Change) -> list[tuple[str, int]]:
        return [("", step) if isinstance(step, int) else (step, 0) for step in change.at]

    return sorted(changes, key=place, reverse=True)


@dataclass(frozen=True)
class _Edit:
    """`text` in place of what stands from `start` up to `end`."""

    start: int
    end: int
    text: str


def _edited(text: str, root: Node, changes: Iterable[Change]) -> str | None:
    """The text with each change made in its place; None where one cannot be."""
    lines = Lines(text)
    edits: list[_Edit] = []
    for change in changes:
        edit = _edit(lines, root, change)
        if edit is None:
            return None
        edits.append(edit)
    # of keys that are added at one place the last goes in first, and so stands last
    edits.sort(key=lambda one: one.start)
    for edit in reversed(edits):
        text = text[: edit.start] + edit.text + text[edit.end :]
    return text


@dataclass(frozen=True)
class Lines:
    """A text by its lines."""

    text: str

    def at(self, mark: Mark) -> int:
        """The place of a mark in the text."""
        line, column = mark
        return self.begins[line - 1] + column - 1

    @cached_property
    def begins(self) -> list[int]:
        """Where each line begins."""
        return [0, *(found.end() for found in re.finditer("\n", self.text))]

    def line_start(self, place: int) -> int:
        return self.text.rfind("\n", 0, place) + 1

    def line_end(self, place: int) -> int:
        """Where the next line begins."""
        found = self.text.find("\n", place)
        return len(self.text) if found < 0 else found + 1


def _edit(lines: Lines, root: Node, change: Change) -> _Edit | None:
    holder, step = node_at(root, change.at[:-1]), change.at[-1]
    match change:
        case Put(at, value, last):
            first, behind = node_at(root, at), node_at(root, (*at[:-1], last or 0))
            if first is None:
                return _added(lines, root, at, value)
            end = first.end if last is None or behind is None else behind.end
            if last is None and isinstance(first, NodeItems) and not first.flow:
                written = _block_items(first, value)
            else:
                written = _written_like(lines.text[lines.at(first.mark) : lines.at(end)], value)
            return _Edit(lines.at(first.mark), lines.at(end), written)
        case Rename(at, key) if isinstance(holder, Keys) and step in holder.key_marks:
            start = lines.at(holder.key_marks[str(step)])
            for quote in ("", '"', "'"):
                old = f"{quote}{step}{quote}"
                if lines.text.startswith(old, start):
                    return _Edit(start, start + len(old), _written_key(key))
        case TakeOut(at):
            return _taken_out(lines, holder, step)
    return None


def _added(lines: Lines, root: Node, at: Path, value: object) -> _Edit | None:
    """A key that is added at the end of its mapping; with those above it that are missing."""
    for depth in range(len(at) - 1, -1, -1):
        holder = node_at(root, at[:depth])
        if holder is None:
            continue
        if not isinstance(holder, Keys) or not holder.nodes:
            return None
        for step in reversed(at[depth + 1 :]):
            value = {str(step): value}
        entry = f"{_written_key(str(at[depth]))}: {written_value(value)}"
        if holder.flow:
            place = lines.at(holder.end) - 1
            return _Edit(place, place, f", {entry}")
        place = lines.line_end(lines.at(holder.end))
        ended = "" if lines.text[:place].endswith("\n") else "\n"
        indent = " " * (holder.mark[1] - 1)
        if isinstance(value, list) and len(indent) + len(entry) > WIDTH:
            items = "".join(f"\n{indent}  - {written_value(item)}" for item in value)
            entry = f"{_written_key(str(at[depth]))}:{items}"
        return _Edit(place, place, f"{ended}{indent}{entry}\n")
    return None


def _taken_out(lines: Lines, holder: Node | None, step: str | int) -> _Edit | None:
    if not isinstance(holder, Keys | NodeItems):
        return None
    spans = list(spans_of(lines, holder))
    names: list[str | int] = [*holder.nodes] if isinstance(holder, Keys) else [*range(len(spans))]
    if step not in names:
        return None
    if len(names) == 1:
        nothing = "{}" if isinstance(holder, Keys) else "[]"
        return _Edit(lines.at(holder.mark), lines.at(holder.end), nothing)
    place = names.index(step)
    start, end = spans[place]
    # the first key of an item stands behind the dash of the item
    behind_a_dash = place == 0 and lines.text[lines.line_start(start) : start].strip() != ""
    if not holder.flow and not (behind_a_dash and isinstance(holder, Keys)):
        return _Edit(lines.line_start(start), lines.line_end(end), "")
    if place + 1 < len(spans):
        return _Edit(start, spans[place + 1][0], "")
    return _Edit(spans[place - 1][1], end, "")


def spans_of(lines: Lines, holder: Keys | NodeItems) -> Iterator[tuple[int, int]]:
    """Where each entry of a list or mapping begins and ends."""
    if isinstance(holder, Keys):
        for key, node in holder.nodes.items():
            yield lines.at(holder.key_marks[key]), lines.at(node.end)
    else:
        for node in holder.nodes:
            yield lines.at(node.mark), lines.at(node.end)


def _block_items(old: NodeItems, value: object) -> str:
    """A list in place of one that is written an item a line."""
    if not isinstance(value, list) or not value:
        return written_value(value)
    return f"\n{' ' * (old.mark[1] - 1)}".join(f"- {written_value(item)}" for item in value)


def written_value(value: object) -> str:
    """A value as a design file has it, on one line."""
    match value:
        case dict():
            entries = (
                f"{_written_key(str(key))}: {written_value(one)}" for key, one in value.items()
            )
            return "{" + ", ".join(entries) + "}"
        case list():
            return "[" + ", ".join(map(written_value, value)) + "]"
        case float():
            return f"{value:.6g}"
        case str() if _is_plain(value):
            return value
    return json.dumps(value, ensure_ascii=False)


def _written_key(key: str) -> str:
    """A key as a design file has it: `on` of a part is a word (YAML 1.2.2, 10.3.2), as design files
    are read and as people write them."""
    return key if key.lower() in _OF_YAML_1_1 else written_value(key)


def _written_like(old: str, value: object) -> str:
    """A value in place of another; what needs quotes has those that were there."""
    if isinstance(value, str) and old and value and not _is_plain(value):
        if old[0] == "'" and value.isprintable():
            return "'" + value.replace("'", "''") + "'"
        words = value.split(" ")
        if old[0] not in "'\"[{|>&*!" and all(words) and all(map(_is_plain, words)):
            return value
    return written_value(value)


def _is_plain(text: str) -> bool:
    """Whether a text may stand without quotes."""
    word = text.replace("_", "a").replace(".", "a")
    return word.isalnum() and not text[0].isdigit() and text.lower() not in _OF_YAML


_OF_YAML_1_1 = ("yes", "no", "on", "off", "y", "n")
_OF_YAML = ("true", "false", "null", *_OF_YAML_1_1)
