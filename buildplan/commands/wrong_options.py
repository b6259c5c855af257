"""A choice or a number that an option cannot take, told in plain words."""

from __future__ import annotations

import typing
from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any

from buildplan.language.messages import Message, Value, message

# what people write for a choice that is called otherwise
OTHER_NAMES: Mapping[str, str] = {
    **dict.fromkeys(("inch", "inches", "imperial"), "in"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters", "metric"), "cm"),
    **dict.fromkeys(("english", "englisch", "inglés"), "en"),
    **dict.fromkeys(("german", "deutsch", "alemán"), "de"),
    **dict.fromkeys(("spanish", "español", "spanisch"), "es"),
    **dict.fromkeys(("french", "français", "französisch"), "fr"),
    **dict.fromkeys(("portuguese", "português", "portugiesisch"), "pt"),
    **dict.fromkeys(("above", "plan"), "top"),
}


def wrong_value(error: Any, called: str) -> Message:
    """What is wrong with a value, by what its option or argument, so `called`, was declared to
    take: said with its place."""
    callback = getattr(getattr(error.ctx, "command", None), "callback", None)
    hints = typing.get_type_hints(callback, include_extras=True) if callback is not None else {}
    kind, option = _declared(hints.get(error.param.name))
    found: Callable[[], list[dict[str, Any]]] = getattr(error.__cause__, "errors", list)
    value = str(next(iter(found()), {}).get("input", ""))
    if isinstance(kind, type) and issubclass(kind, StrEnum):
        wrong = _no_choice(value, [str(one) for one in kind], called)
    else:
        wrong = _no_number(value, option)
    return message("{place}: {wrong}", place=called, wrong=wrong)


def _declared(hint: Any) -> tuple[Any, Any]:
    """The type that an annotated option has, but for None, and what it was declared with."""
    option = None
    if typing.get_origin(hint) is typing.Annotated:
        hint, option, *_ = typing.get_args(hint)
    kinds = [one for one in typing.get_args(hint) if one is not type(None)]
    return (kinds[0] if kinds else hint), option


def _no_choice(value: str, choices: list[str], option: str) -> Message:
    from buildplan.source.mistake import listed, most_likely, quoted

    meant = OTHER_NAMES.get(value.strip().lower(), "")
    guess = meant if meant in choices else most_likely(value.lower(), choices)
    said: Mapping[str, Value] = {"value": quoted(value), "choices": listed(choices, "or")}
    if guess is None:
        return message("{value} is not one of {choices}", **said)
    return message(
        "{value} is not one of {choices}; did you mean {guess}?", guess=f"{option} {guess}", **said
    )


def _no_number(value: str, option: Any) -> Message:
    from buildplan.source.mistake import quoted

    least, most = getattr(option, "min", None), getattr(option, "max", None)
    said, low, high = quoted(value), f"{least:g}" if least is not None else "", f"{most}"
    if least is None:
        return message("{value} is not a whole number", value=said)
    if most is None:
        return message("{value} is not a whole number of {low} or more", value=said, low=low)
    return message(
        "{value} is not a whole number from {low} to {high}", value=said, low=low, high=high
    )
