"""What the data model knows at a place of the file: its types, keys and choices."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from buildplan.language.messages import Listing, Message, Value, message, message_in
from buildplan.source.mistake import Path, listed
from buildplan.source.values import FileModel, OneOf


def types_at(path: Path, root: type[FileModel]) -> list[Any]:
    """The types that a file of the form `root` has for the value at `path`, unions taken
    apart; none when it knows no such place."""
    found: list[Any] = [root]
    for step in path:
        found = [inner for kind in found for inner in _inside(kind, step)]
    return found


def _inside(kind: Any, step: str | int) -> list[Any]:
    """The types of what stands at `step` in a value of type `kind`."""
    if _is_model(kind):
        for name, about in kind.model_fields.items():
            if step == (about.alias or name):
                names = [part.names for part in about.metadata if isinstance(part, OneOf)]
                return [Literal[tuple(names[0])]] if names else _apart(about.annotation)
    elif get_origin(kind) is dict and isinstance(step, str):
        return _apart(get_args(kind)[1])
    elif get_origin(kind) is list and isinstance(step, int):
        return _apart(get_args(kind)[0])
    return []


def item_types(kind: Any) -> list[Any]:
    """The types of the items of a list of type `kind`."""
    return _apart(get_args(kind)[0])


def _apart(kind: Any) -> list[Any]:
    """`kind` without its annotations, a union as its members."""
    if get_origin(kind) is Annotated:
        names = [part.names for part in kind.__metadata__ if isinstance(part, OneOf)]
        return [Literal[tuple(names[0])]] if names else _apart(get_args(kind)[0])
    if get_origin(kind) in (Union, UnionType):
        return [part for member in get_args(kind) for part in _apart(member)]
    return [kind]


def _is_model(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, FileModel)


def described(kinds: Sequence[Any]) -> dict[str, str]:
    """The keys that a mapping of one of these types has, and what each is for (if the model
    says); none when its keys are free."""
    keys: dict[str, str] = {}
    for kind in kinds:
        if _is_model(kind):
            for name, about in kind.model_fields.items():
                keys[about.alias or name] = about.description or ""
        elif get_origin(kind) is dict:
            keys |= dict.fromkeys(choices(_apart(get_args(kind)[0])), "")
    return keys


def choices(kinds: Sequence[Any]) -> list[str]:
    """The values that the types allow when they are a choice of a few, as they are written."""
    return [str(value) for kind in kinds if get_origin(kind) is Literal for value in get_args(kind)]


def form_in_words(kinds: Sequence[Any]) -> Listing | Message:
    """What a value of one of these types looks like: `text`, `a number or a list` ..."""
    words: dict[Any, Value] = {
        bool: listed(["true", "false"], "or"),
        int: message_in("value in a design file", "a whole number"),
        float: message_in("value in a design file", "a number"),
        Decimal: message_in("value in a design file", "a number"),
        str: message_in("value in a design file", "text"),
    }
    forms: list[Value] = [*choices(kinds), *(words[kind] for kind in kinds if kind in words)]
    a_list = message_in("value in a design file", "a list")
    forms += [a_list for kind in kinds if get_origin(kind) is list]
    for kind in kinds:
        if _is_model(kind) or get_origin(kind) is dict:
            keys = described([kind])
            forms.append(
                message("a set of keys ({names})", names=listed(keys))
                if keys
                else message_in("value in a design file", "a set of keys")
            )
    return listed(forms, "or")
