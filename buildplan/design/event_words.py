"""The words of an event file in other languages."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from pydantic import Field

from buildplan.language.messages import mark, message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, key_of, shown
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.values import ONE_LINE, FileModel

Line = Annotated[str, Field(min_length=1, max_length=120, pattern=ONE_LINE)]
NAMED = ("vehicles", "doors")
THE_NAMED = mark("the vehicles and doors are: {names}")


class EventTranslation(FileModel):
    """The words of an event file in another language."""

    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] = Field(
        description=mark("the name of the event in that language")
    )
    place: Line | None = Field(None, description=mark("where it is, in that language"))
    contact: Line | None = Field(None, description=mark("who opens there, in that language"))
    names: Annotated[dict[Line, Line], Field(max_length=60)] = Field(
        default_factory=dict,
        description=mark(
            "what vehicles and doors are called in that language: {Van: Furgoneta, Lift: Ascensor}"
        ),
    )


def check_words(top: Mapping[str, Any]) -> Iterator[Mistake]:
    """Translated names that no vehicle and no door of the file has."""
    entries = [mapping_in(one) for key in NAMED for one in list_in(top.get(key))]
    known = [one["name"] for one in entries if isinstance(one.get("name"), str)]
    for language, words in mapping_in(top.get("translations")).items():
        for name in mapping_in(mapping_in(words).get("names")):
            if known and name not in known:
                at = ("translations", language, "names", name)
                told = message("no vehicle or door is called {name}", name=shown(name))
                yield Mistake(FileKind.UNKNOWN_KEY, at, told, key_of(at, known, THE_NAMED))
