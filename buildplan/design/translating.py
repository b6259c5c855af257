"""A design's own words in the language of the reader."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, TypeVar

from buildplan.design.model import Brand, Design
from buildplan.language.voice import ENGLISH, Voice
from buildplan.source.balloons import Balloon
from buildplan.source.colour_names import called
from buildplan.source.values import FileModel

if TYPE_CHECKING:
    from buildplan.design.event import Event

Form = TypeVar("Form", bound=FileModel)


def translated_design(design: Design, language: str) -> Design:
    """The design with its name, labels, notes and brand in a language, as far as its file
    translates them; a label that names a colour of ours is what that is called there."""
    brand = None if design.brand is None else translated_brand(design.brand, language)
    design = _replaced(design, {"brand": brand})
    words = design.translations.get(language)  # type: ignore[call-overload]
    labels = {} if words is None else words.labels
    balloons = {
        key: _replaced(balloon, {"label": labels.get(key) or _colour_words(balloon, language)})
        for key, balloon in design.balloons.items()
    }
    if words is None:
        return _replaced(design, {"balloons": balloons})
    text = {**design.text, **words.text}
    return _replaced(design, {"name": words.name, "balloons": balloons, "text": text})


def _colour_words(balloon: Balloon, language: str) -> str | None:
    """What the label of a balloon is in a language if it names a colour of ours."""
    name = called(balloon.label)
    return None if name is None or language == ENGLISH else Voice(language).say(name)


def translated_brand(brand: Brand, language: str) -> Brand:
    """The brand with its contact and licence in a language."""
    words = brand.translations.get(language)  # type: ignore[call-overload]
    if words is None:
        return brand
    return _replaced(brand, {"contact": words.contact, "licence": words.licence})


def translated_event(event: Event, language: str) -> Event:
    """The event with its name, its place, and what vehicles and doors are called in a language, as
    far as its file translates them."""
    words = event.translations.get(language)  # type: ignore[call-overload]
    if words is None:
        return event
    vehicles = [_replaced(one, {"name": words.names.get(one.name)}) for one in event.vehicles]
    doors = [_replaced(one, {"name": words.names.get(one.name)}) for one in event.doors]
    told = {"name": words.name, "place": words.place, "contact": words.contact}
    return _replaced(event, {**told, "vehicles": vehicles, "doors": doors})


def _replaced(part: Form, values: Mapping[str, object]) -> Form:
    """`part` with the values that are given."""
    return part.model_copy(update={k: v for k, v in values.items() if v is not None})
