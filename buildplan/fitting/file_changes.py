"""Changes to a design file: made in its plain data, and in its text with the comments kept."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import yaml

from buildplan.design.source.mistake import Path
from buildplan.design.source.yaml_source import Items, Keys, Node, Scalar, load, plain
from buildplan.language.speaking import say


@dataclass(frozen=True)
class Change:
    """Another `value` at a place of the file. With `last`, the place is the first of several
    items of a list, up to item `last`, that one value takes the place of."""

    at: Path
    value: object
    last: int | None = None


def changed_data(data: object, changes: Iterable[Change]) -> Any:
    """The plain data of a file with the changes made."""
    made = copy.deepcopy(data)
    for change in _from_behind(changes):
        holder: Any = made
        for step in change.at[:-1]:
            holder = holder[step]
        step = change.at[-1]
        if change.last is not None and isinstance(step, int):
            holder[step : change.last + 1] = [change.value]
        else:
            holder[step] = change.value
    return made


def changed_text(text: str, changes: Sequence[Change], heading: str) -> str:
    """The text of a file with the changes made, under one more comment on top of it.

    What is not changed stays as it is written, comments too. Where the changes cannot be made
    in the text (a value that an alias shares, say), the file is written anew from its data, and
    the comment on top says that its own comments are lost.
    """
    root = load(text, "").root
    data = plain(root)
    wanted = changed_data(data, changes)
    made = _edited(text, root, changes)
    if made is not None and plain(load(made, "").root) == wanted:
        return f"# {heading}\n{made}"
    anew = yaml.safe_dump(wanted, sort_keys=False, allow_unicode=True, width=96)
    return f"# {heading}\n# {say('Its comments could not be kept.')}\n{anew}"


def _from_behind(changes: Iterable[Change]) -> list[Change]:
    """Changes in an order in which none moves the place of another."""

    def place(change: Change) -> list[tuple[str, int]]:
        return [("", step) if isinstance(step, int) else (step, 0) for step in change.at]

    return sorted(changes, key=place, reverse=True)


def _node(root: Node, at: Path) -> Node | None:
    node: Node | None = root
    for step in at:
        if isinstance(node, Keys) and isinstance(step, str):
            node = node.nodes.get(step)
        elif isinstance(node, Items) and isinstance(step, int) and step < len(node.nodes):
            node = node.nodes[step]
        else:
            return None
    return node


def _edited(text: str, root: Node, changes: Iterable[Change]) -> str | None:
    """The text with each changed value written over the old one; None where one cannot be."""
    begins = [0]
    for line in text.splitlines(keepends=True):
        begins.append(begins[-1] + len(line))
    edits: dict[tuple[int, int], str] = {}
    for change in changes:
        nodes = [_node(root, change.at)]
        if change.last is not None:
            nodes.append(_node(root, (*change.at[:-1], change.last)))
        spans = [_span(text, begins, node) for node in nodes]
        if None in spans:
            return None
        known = [span for span in spans if span is not None]
        edits[known[0][0], known[-1][1]] = _written(change.value)
    for (start, end), value in sorted(edits.items(), reverse=True):
        text = text[:start] + value + text[end:]
    return text


def _span(text: str, begins: Sequence[int], node: Node | None) -> tuple[int, int] | None:
    """Where a value stands in the text, quotes and all."""
    if not isinstance(node, Scalar):
        return None
    line, column = node.mark
    start = begins[line - 1] + column - 1
    for quote in ("", '"', "'"):
        if text.startswith(f"{quote}{node.written}{quote}", start):
            return start, start + len(node.written) + 2 * len(quote)
    return None


def _written(value: object) -> str:
    match value:
        case dict():
            return "{" + ", ".join(f"{key}: {_written(v)}" for key, v in value.items()) + "}"
        case list():
            return "[" + ", ".join(map(_written, value)) + "]"
        case float():
            return f"{value:.6g}"
        case str() if value.replace("_", "a").isalnum() and not value[0].isdigit():
            return value
    return json.dumps(value, ensure_ascii=False)
