"""What an event file may say: several designs that stand at one event, as frozen data."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from buildplan.design.event_words import NAMED, EventTranslation, Line, check_words
from buildplan.design.form_reading import read_as
from buildplan.language.messages import mark, message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, shown, with_ending
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import by_hand
from buildplan.source.trade_words import length_in, units_in
from buildplan.source.values import (
    ONE_LINE,
    FileModel,
    Labour,
    Language,
    Length,
    Version,
)

EVENT_SUFFIX = ".event.yaml"
# what a length of an event file is kept in where it names no units: each then carries its own
UNITS = "cm"
# a bare number below this is more likely to be meant in metres
LIKELY_METRES = 10
# the keys of lengths, by the key that they stand under
LENGTHS: Mapping[str, tuple[str, ...]] = {
    "vehicles": ("length", "width", "height", "door_width", "door_height"),
    "doors": ("width", "height", "depth"),
    "bag": ("length", "width", "height"),
}

TimeOfDay = Annotated[str, Field(pattern=r"^([01][0-9]|2[0-3]):[0-5][0-9]$")]
Waiting = Annotated[float, Field(ge=0, le=1440, allow_inf_nan=False)]


class EventPiece(FileModel):
    """One design at an event, and how many of it are built."""

    design: Annotated[str, Field(min_length=1, max_length=400, pattern=ONE_LINE)] = Field(
        description=mark("the design file, as seen from the folder of this file")
    )
    count: Annotated[int, Field(ge=1, le=100)] = Field(
        1, description=mark("how many of it are built")
    )
    travels: Literal["in bags", "built"] = Field(
        "in bags",
        description=mark(
            "in bags, to be built at the place; or built, in the workshop, and carried whole"
        ),
    )


class Vehicle(FileModel):
    """A vehicle, and the room that it has for the load."""

    name: Line = Field(description=mark("what the vehicle is called"))
    length: Length = Field(description=mark("how long its room for the load is, such as 2.4 m"))
    width: Length = Field(description=mark("how wide its room for the load is, such as 1.7 m"))
    height: Length = Field(description=mark("how high its room for the load is, such as 1.4 m"))
    door_width: Length | None = Field(None, description=mark("how wide its loading door is"))
    door_height: Length | None = Field(None, description=mark("how high its loading door is"))
    carries: Annotated[float, Field(gt=0, le=50_000, allow_inf_nan=False)] | None = Field(
        None, description=mark("what it may carry, in kilograms")
    )


class DoorEntry(FileModel):
    """A door on the way, or a lift."""

    name: Line = Field(description=mark("what the door is called"))
    width: Length = Field(description=mark("its clear width, such as 90 cm"))
    height: Length = Field(description=mark("its clear height, such as 2.1 m"))
    depth: Length | None = Field(None, description=mark("how deep a lift is inside"))


class BagSize(FileModel):
    """The bags that balloons are carried in, full."""

    length: Length = Field(description=mark("how long a full bag is"))
    width: Length = Field(description=mark("how wide a full bag is"))
    height: Length = Field(description=mark("how high a full bag is"))


class Event(FileModel):
    """A whole event file. It names no day, so that it serves for the next time too."""

    event: Version = Field(description=mark("the version of this file format: 1"))
    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] = Field(
        description=mark("the name of the event, as it stands on the first page")
    )
    designs: Annotated[list[EventPiece], Field(min_length=1, max_length=50)] = Field(
        description=mark("the pieces: a list of {design: file.yaml, count: how many}")
    )
    crew: Annotated[int, Field(ge=1, le=100)] = Field(
        description=mark("how many people build all of it")
    )
    opening: TimeOfDay = Field(
        description=mark('the time of day by which all stands, in quotes: "10:00"')
    )
    closing: TimeOfDay | None = Field(
        None, description=mark('the time of day at which taking down begins, in quotes: "17:00"')
    )
    place: Line | None = Field(None, description=mark("where it is: the address, on one line"))
    contact: Line | None = Field(
        None, description=mark("who opens there, and their telephone number, on one line")
    )
    loading: Waiting = Field(15, description=mark("the minutes that loading the vehicles takes"))
    travel: Waiting = Field(30, description=mark("the minutes on the way to the place"))
    unloading: Waiting = Field(
        15, description=mark("the minutes from parking until all is carried in")
    )
    units: Literal["in", "cm"] | None = Field(
        None, description=mark("the units of lengths that do not carry their own: in or cm")
    )
    vehicles: Annotated[list[Vehicle], Field(max_length=20)] = Field(
        default_factory=list,
        description=mark(
            "the vehicles: a list of {name: van, length: 2.4 m, width: 1.7 m, height: 1.4 m}"
        ),
    )
    doors: Annotated[list[DoorEntry], Field(max_length=40)] = Field(
        default_factory=list,
        description=mark(
            "the doors on the way in: a list of {name: front door, width: 90 cm, height: 2.1 m}"
        ),
    )
    bag: BagSize = Field(
        default_factory=lambda: BagSize(length=60.0, width=60.0, height=90.0),
        description=mark(
            "a full bag: {length: 60 cm, width: 60 cm, height: 90 cm}, which is taken for granted"
        ),
    )
    labour: Labour = Field(
        default_factory=dict,
        description=mark(
            "the minutes that one operation takes this crew, by its kind, in place of "
            "those of the designs"
        ),
    )
    taking_down: dict[Literal["clear", "lay", "untie", "let out", "sweep"], Waiting] = Field(
        default_factory=dict,
        description=mark(
            "the minutes that taking down takes this crew: clear (once), lay (a piece), untie (a "
            "place of ballast), let out (a balloon), sweep (a piece)"
        ),
    )
    translations: dict[Language, EventTranslation] = Field(
        default_factory=dict,
        description=mark("the words of this file in other languages, by language: es"),
    )

    @model_validator(mode="before")
    @classmethod
    def _in_centimetres(cls, data: object) -> object:
        return _with_lengths(data)


def _with_lengths(data: object) -> object:
    """The content of an event file with all its lengths in centimetres, as far as they can be
    told."""
    if not isinstance(data, dict):
        return data
    made = {**data, **units_in(data)}
    units = made.get("units")
    for key, names in LENGTHS.items():
        entry = made.get(key)
        if isinstance(entry, list):
            made[key] = [_in_cm(one, names, units) for one in entry]
        elif entry is not None:
            made[key] = _in_cm(entry, names, units)
    return made


def _in_cm(entry: object, names: tuple[str, ...], units: object) -> object:
    if not isinstance(entry, dict):
        return entry
    made: dict[str, Any] = dict(entry)
    for name in names:
        value = made.get(name)
        # a bare number is in the units of the file
        text = f"{value} {units}" if _is_number(value) and units == "in" else value
        length = length_in(text, UNITS) if isinstance(text, str) else None
        made.update({} if length is None else {name: length})
    return made


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def read_event(path: Path) -> Event:
    """Read and check the event file at `path`; the designs that it names must be there. Lengths
    are in centimetres.

    Raises UnreadableDesignError when it cannot be read as an event at all, and
    DesignProblemsError with every problem of the file, in its order, when it can.
    """
    return read_as(Event, path, lambda data: _check(data, path.parent))


def _check(data: object, folder: Path) -> Iterator[Mistake]:
    top = mapping_in(data)
    yield from _designs(list_in(top.get("designs")), folder)
    for key in NAMED:
        yield from _named_once(key, list_in(top.get(key)))
    yield from check_words(top)
    if top.get("units") is None:
        yield from _without_units(top)


def _designs(designs: list[Any], folder: Path) -> Iterator[Mistake]:
    seen: set[str] = set()
    for i, piece in enumerate(designs):
        name = mapping_in(piece).get("design")
        if not isinstance(name, str) or not name.strip() or len(name) > 400:
            continue
        at = ("designs", i, "design")
        file = os.path.realpath(folder / name) if "\0" not in name else name
        if file in seen:
            yield Mistake(
                FileKind.LISTED_TWICE,
                at,
                message("{name} is listed twice", name=shown(name)),
                by_hand(message("list it once, and give its count")),
            )
        elif name.endswith(EVENT_SUFFIX):
            yield Mistake(
                FileKind.NOT_A_DESIGN_FILE,
                at,
                message("{name} is an event file", name=shown(name)),
                by_hand(message("name a design file")),
            )
        elif "\0" in name or not (folder / name).is_file():
            where = str(folder) if str(folder) != "." else message("this folder")
            yield Mistake(
                FileKind.NO_SUCH_FILE,
                at,
                message("there is no design file {name}", name=shown(name)),
                with_ending(at, name, folder)
                or by_hand(message("give its path as seen from {folder}", folder=where)),
            )
        seen.add(file)


def _named_once(key: str, entries: list[Any]) -> Iterator[Mistake]:
    seen: set[str] = set()
    for i, entry in enumerate(entries):
        name = mapping_in(entry).get("name")
        if isinstance(name, str) and name in seen:
            yield Mistake(
                FileKind.LISTED_TWICE,
                (key, i, "name"),
                message("{name} is listed twice", name=shown(name)),
                by_hand(message("give each a name of its own")),
            )
        elif isinstance(name, str):
            seen.add(name)


def _without_units(top: Mapping[str, Any]) -> Iterator[Mistake]:
    """Bare numbers where nothing says what they are in."""
    for key, names in LENGTHS.items():
        entries = top.get(key)
        placed = (
            [((key, i), one) for i, one in enumerate(entries)]
            if isinstance(entries, list)
            else [((key,), entries)]
        )
        for at, entry in placed:
            for name in names:
                value = mapping_in(entry).get(name)
                if isinstance(value, int | float) and _is_number(value):
                    likely = "m" if value < LIKELY_METRES else "cm"
                    yield Mistake(
                        FileKind.NO_UNITS,
                        (*at, name),
                        message("nothing says what {number} is in", number=shown(value)),
                        by_hand(
                            message(
                                "write its unit, say {right}, or units: cm above",
                                right=f"{value} {likely}",
                            )
                        ),
                    )
