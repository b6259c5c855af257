"""What an event file may say: several designs that stand at one event, as frozen data."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Annotated

from pydantic import Field

from buildplan.design.reading import read_as
from buildplan.language.messages import mark, message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, shown
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import by_hand
from buildplan.source.values import ONE_LINE, FileModel, Labour, Language, Version

EVENT_SUFFIX = ".event.yaml"


class Piece(FileModel):
    """One design at an event, and how many of it are built."""

    design: Annotated[str, Field(min_length=1, max_length=400, pattern=ONE_LINE)] = Field(
        description=mark("the design file, as seen from the folder of this file")
    )
    count: Annotated[int, Field(ge=1, le=100)] = Field(
        1, description=mark("how many of it are built")
    )


class EventTranslation(FileModel):
    """The words of an event file in another language."""

    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] = Field(
        description=mark("the name of the event in that language")
    )


class Event(FileModel):
    """A whole event file. It names no day, so that it serves for the next time too."""

    event: Version = Field(description=mark("the version of this file format: 1"))
    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] = Field(
        description=mark("the name of the event, as it stands on the first page")
    )
    designs: Annotated[list[Piece], Field(min_length=1, max_length=50)] = Field(
        description=mark("the pieces: a list of {design: file.yaml, count: how many}")
    )
    crew: Annotated[int, Field(ge=1, le=100)] = Field(
        description=mark("how many people build all of it")
    )
    opening: Annotated[str, Field(pattern=r"^([01][0-9]|2[0-3]):[0-5][0-9]$")] = Field(
        description=mark('the time of day by which all stands, in quotes: "10:00"')
    )
    travel: Annotated[float, Field(ge=0, le=1440, allow_inf_nan=False)] = Field(
        30, description=mark("the minutes from the workshop to the place, loading included")
    )
    labour: Labour = Field(
        default_factory=dict,
        description=mark(
            "the minutes that one operation takes this crew, by its kind, in place of "
            "those of the designs"
        ),
    )
    translations: dict[Language, EventTranslation] = Field(
        default_factory=dict,
        description=mark("the words of this file in other languages, by language: es"),
    )


def read_event(path: Path) -> Event:
    """Read and check the event file at `path`; the designs that it names must be there.

    Raises UnreadableDesignError when it cannot be read as an event at all, and
    DesignProblemsError with every problem of the file, in its order, when it can.
    """
    return read_as(Event, path, lambda data: _check(data, path.parent))


def _check(data: object, folder: Path) -> Iterator[Mistake]:
    seen: set[str] = set()
    for i, piece in enumerate(list_in(mapping_in(data).get("designs"))):
        name = mapping_in(piece).get("design")
        if not isinstance(name, str) or not name.strip() or len(name) > 400:
            continue
        at = ("designs", i, "design")
        if name in seen:
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
                by_hand(message("give its path as seen from {folder}", folder=where)),
            )
        seen.add(name)
