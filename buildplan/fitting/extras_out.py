"""Balloons more that break a piece: taken out of its file, each by itself and all together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from buildplan.language.messages import Message, message
from buildplan.patterns.registry import patterns_in
from buildplan.source.mistake import Path
from buildplan.source.suggestions import Remedy, TakeOut

Data = Mapping[str, Any]

EXTRA = "extra"


def without_extras(data: Data) -> Iterator[Remedy]:
    """Each balloon more taken out of the file, the last first, and all of them."""
    found = [
        (at, i, one)
        for at, extras in _extras(data["build"], ("build",))
        for i, one in enumerate(extras)
    ]
    for at, i, one in reversed(found):
        yield Remedy(_words(one), (TakeOut((*at, i)),))
    if len(found) > 1:
        places = dict.fromkeys(at for at, _, _ in found)
        words = message("take out all balloons more ({key})", key=EXTRA)
        yield Remedy(words, tuple(TakeOut(at) for at in places))


def _words(extra: Any) -> Message:
    one, other = extra["joints"] if isinstance(extra, Mapping) else extra
    return message(
        "take out the balloon more between {one} and {other} ({key})",
        one=one,
        other=other,
        key=EXTRA,
    )


def _extras(build: Data, at: Path) -> Iterator[tuple[Path, Sequence[Any]]]:
    """The places of a file's balloons more, those of parts that are given in place among them."""
    for pattern, keys in patterns_in(build):
        if keys.get(EXTRA):
            yield (*at, pattern.name, EXTRA), keys[EXTRA]
        for i, part in enumerate(keys.get("parts") or ()):
            if part.get("build"):
                yield from _extras(part["build"], (*at, pattern.name, "parts", i, "build"))
