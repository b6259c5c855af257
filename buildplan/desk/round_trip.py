"""A design's file written anew with changes, its comments, order, quotes and long lines kept."""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence
from typing import Any

from ruamel.yaml import YAML
from ruamel.yaml.comments import CommentedMap, CommentedSeq
from ruamel.yaml.error import YAMLError

from buildplan.source.file_changes import CannotChangeError
from buildplan.source.suggestions import Change, Path, Put, Rename, TakeOut

# of a line, longer than any that a design has: no line is wrapped
WIDTH = 1_000_000


def changed_round(text: str, changes: Sequence[Change]) -> str:
    """The text with changes made. Raises CannotChangeError where there is no such place."""

    def change(root: Any) -> None:
        for one in changes:
            _change(root, one)

    return _round(text, change)


def inserted_round(text: str, at: Path, value: object) -> str:
    """The text with an item more in a list."""

    def change(root: Any) -> None:
        _holder(root, at).insert(at[-1], _flow(value))

    return _round(text, change)


def moved_round(text: str, at: Path, to: int) -> str:
    """The text with an item of a list at another place of it."""

    def change(root: Any) -> None:
        holder = _holder(root, at)
        holder.insert(to, holder.pop(at[-1]))

    return _round(text, change)


def _round(text: str, change: Callable[[Any], None]) -> str:
    yaml = YAML(typ="rt")
    yaml.preserve_quotes = True
    yaml.width = WIDTH
    yaml.indent(mapping=2, sequence=4, offset=2)
    out = io.StringIO()
    try:
        root = yaml.load(text)
        change(root)
        yaml.dump(root, out)
    except (YAMLError, KeyError, IndexError, TypeError, AttributeError) as error:
        raise CannotChangeError(str(error)) from error
    return out.getvalue()


def _holder(root: Any, at: Path) -> Any:
    """What holds the place, with mappings on the way to it that are not there yet."""
    holder = root
    for step in at[:-1]:
        if isinstance(holder, CommentedMap) and holder.get(step) is None:
            holder[step] = CommentedMap()
        holder = holder[step]
    return holder


def _change(root: Any, change: Change) -> None:
    holder, step = _holder(root, change.at), change.at[-1]
    match change:
        case Put(value=value, last=last) if isinstance(step, int):
            holder[step] = _flow(value)
            for _ in range(step, step if last is None else last):
                del holder[step + 1]
        case Put(value=value):
            holder[step] = _flow(value)
        case TakeOut() if len(holder) == 1 and len(change.at) > 1:
            # what has nothing in it any more is written on the line of its key
            _holder(root, change.at[:-1])[change.at[-2]] = _flow(type(holder)())
        case TakeOut():
            del holder[step]
        case Rename(key=key):
            place = list(holder).index(step)
            holder.insert(place, key, holder.pop(step))


def _flow(value: object) -> object:
    """A value that is written on one line."""
    if isinstance(value, dict):
        keys = CommentedMap((key, _flow(one)) for key, one in value.items())
        keys.fa.set_flow_style()
        return keys
    if isinstance(value, list):
        items = CommentedSeq(map(_flow, value))
        items.fa.set_flow_style()
        return items
    return value
