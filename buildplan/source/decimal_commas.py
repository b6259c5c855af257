"""Numbers in { } with a decimal comma, which YAML reads as a whole number and a further key."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from buildplan.language.messages import message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, key_in_words
from buildplan.source.suggestions import Put, TakeOut, change

# what is left of a number behind its comma, with its unit if it has one
AFTER_THE_COMMA = re.compile(r"([0-9]+)(?: *[£$€]|( *[a-z%\"]{1,6}))?")


def without_commas(data: object, at: Path = ()) -> tuple[object, list[Mistake]]:
    """The content of a file with such numbers made whole, and a mistake for each."""
    if isinstance(data, list):
        items = [without_commas(one, (*at, i)) for i, one in enumerate(data)]
        return [one for one, _ in items], [each for _, found in items for each in found]
    if not isinstance(data, dict):
        return data, []
    split = dict(_split(data))
    made: dict[object, object] = {}
    mistakes: list[Mistake] = []
    for key, value in data.items():
        if key in split:
            before, number = split[key]
            made[before] = number
            mistakes.append(_comma(at, before, key, data[before], number))
        else:
            made[key], found = without_commas(value, (*at, key))
            mistakes += found
    return made, mistakes


def _split(data: dict[str, object]) -> Iterator[tuple[str, tuple[str, float | str]]]:
    """Keys that are the end of the number before them: the key of that, and the number."""
    keys = list(data)
    for before, key in pairwise(keys):
        end = AFTER_THE_COMMA.fullmatch(str(key))
        if end is not None and data[key] is None and type(data[before]) is int:
            number = f"{data[before]}.{end[1]}"
            yield key, (before, f"{number}{end[2]}" if end[2] else float(number))


def _comma(at: Path, before: str, key: str, whole: object, number: float | str) -> Mistake:
    written = number if isinstance(number, str) else f"{number:g}"
    return Mistake(
        FileKind.COMMA_IN_NUMBER,
        (*at, key),
        message(
            "{number} is read as {whole} and a key {key}",
            number=f"{whole},{key}",
            whole=str(whole),
            key=str(key),
        ),
        change(
            message("write a point: {right}", right=f"{key_in_words(before)}: {written}"),
            Put((*at, before), number),
            TakeOut((*at, key)),
        ),
    )
