"""Keys that are known, but elsewhere in the file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from buildplan.language.messages import Message, message
from buildplan.source.mistake import Path
from buildplan.source.right_forms import Root
from buildplan.source.schema_lookup import described, types_at
from buildplan.source.suggestions import Put, Suggestion, TakeOut, change


def rightly_placed(at: Path, value: object, data: object, root: Root) -> Suggestion | None:
    """Where the key at `at`, which is unknown there, belongs: with the pattern that is built, or
    with what is said of the whole piece. None where it belongs to neither, or stands there too."""
    for place, words in _places(at, data):
        keys = described(types_at(place, root))
        if str(at[-1]) in keys and at[-1] not in _inside(data, place):
            return change(words, Put((*place, at[-1]), value), TakeOut(at))
    return None


def _places(at: Path, data: object) -> Iterator[tuple[Path, Message]]:
    if len(at) > 1:
        yield (), message("move it out to the keys of the whole piece, beside build")
        return
    build = _inside(data, ("build",))
    for pattern in build:
        if _inside(data, ("build", pattern)):
            yield ("build", pattern), message("move it to {place}", place=f"build: {pattern}:")


def _inside(data: object, place: Path) -> Mapping[str, Any]:
    """The keys at a place of the file, with their values; none where it has none."""
    for step in place:
        data = data.get(str(step)) if isinstance(data, Mapping) else None
    return data if isinstance(data, Mapping) else {}
