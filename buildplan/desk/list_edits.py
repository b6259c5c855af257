"""An item more in a list of a design's text, or an item at another place of it."""

from __future__ import annotations

from buildplan.desk.round_trip import inserted_round, moved_round
from buildplan.source.file_changes import (
    CannotChangeError,
    Lines,
    spans_of,
    written_value,
)
from buildplan.source.problems import UnreadableDesignError
from buildplan.source.suggestions import Path
from buildplan.source.yaml_nodes import NodeItems, node_at, plain
from buildplan.source.yaml_source import load


def inserted(text: str, at: Path, value: object) -> str:
    """The text with an item put before the one at `at`, or behind the last. Raises
    CannotChangeError where there is no such list."""
    holder, step = _list_of(text, at)
    items = plain(holder)
    assert isinstance(items, list)
    if not 0 <= step <= len(items):
        raise CannotChangeError(str(at))
    items.insert(step, value)
    made = _inserted(Lines(text), holder, step, value)
    if made is not None and _has(made, at[:-1], items):
        return made
    return inserted_round(text, at, value)


def moved(text: str, at: Path, to: int) -> str:
    """The text with an item of a list at place `to` of what it is then. Raises as `inserted`."""
    holder, step = _list_of(text, at)
    items = plain(holder)
    assert isinstance(items, list)
    if not (0 <= step < len(items) and 0 <= to < len(items)):
        raise CannotChangeError(str(at))
    items.insert(to, items.pop(step))
    made = _moved(Lines(text), holder, step, to)
    if _has(made, at[:-1], items):
        return made
    return moved_round(text, at, to)


def _list_of(text: str, at: Path) -> tuple[NodeItems, int]:
    holder = node_at(load(text, "").root, at[:-1])
    if not isinstance(holder, NodeItems) or not isinstance(at[-1], int):
        raise CannotChangeError(str(at))
    return holder, at[-1]


def _has(text: str, at: Path, items: list[object]) -> bool:
    """Whether a text has these items in the list at a place."""
    try:
        found = node_at(load(text, "").root, at)
    except UnreadableDesignError:
        return False
    return found is not None and plain(found) == items


def _inserted(lines: Lines, holder: NodeItems, step: int, value: object) -> str | None:
    text, spans = lines.text, list(spans_of(lines, holder))
    if not spans:
        return None
    if holder.flow:
        if step < len(spans):
            place, written = spans[step][0], f"{written_value(value)}, "
        else:
            place, written = spans[-1][1], f", {written_value(value)}"
        return text[:place] + written + text[place:]
    indent = " " * (holder.mark[1] - 1)
    written = f"{indent}- {written_value(value)}\n"
    if step == 0:
        place = lines.line_start(spans[0][0])
        if text[place : spans[0][0]].strip() != "-":
            return None  # the list begins on the line of its key or of an item above
    else:
        place = lines.line_end(spans[step - 1][1])
        if not text[:place].endswith("\n"):
            written = f"\n{written}"
    return text[:place] + written + text[place:]


def _moved(lines: Lines, holder: NodeItems, step: int, to: int) -> str:
    text, spans = lines.text, list(spans_of(lines, holder))
    if holder.flow:
        order = list(range(len(spans)))
        order.insert(to, order.pop(step))
        for place in range(len(spans) - 1, -1, -1):
            (start, end), (first, last) = spans[place], spans[order[place]]
            text = text[:start] + lines.text[first:last] + text[end:]
        return text
    whole = [(lines.line_start(start), lines.line_end(end)) for start, end in spans]
    start, end = whole[step]
    taken = text[start:end] if text[start:end].endswith("\n") else text[start:end] + "\n"
    rest = text[:start] + text[end:]
    place = whole[to][0] if to < step else whole[to][1] - (end - start)
    if not rest[:place].endswith("\n") and place:
        taken = f"\n{taken}"
    return rest[:place] + taken + rest[place:]
