"""A mistake at a place in the design file, before it is given its line."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Literal

from buildplan.language.messages import Listing, Message, Value, listing, message, message_in
from buildplan.source.problems import ProblemKind
from buildplan.source.runs import runs_words
from buildplan.source.suggestions import Change, Put, Remedy, Rename, Suggestion, by_hand
from buildplan.source.suggestions import Path as Path

Mark = tuple[int, int]
"""Line and column, both from 1."""

_PLAIN_KEY = re.compile(r"[\w-]+( [\w-]+)*")


@dataclass(frozen=True)
class Mistake:
    """What is wrong at `at`, and what would be right.

    `mark` is given only where `at` does not lead to the line (a key's second copy, say).
    """

    kind: ProblemKind
    at: Path
    message: Message
    suggestion: Suggestion
    mark: Mark | None = None


def path_in_words(path: Path) -> str:
    """`path` as people write it: `build.tube.course[3]`."""
    words = ""
    for step in path:
        if isinstance(step, int):
            words += f"[{step}]"
        else:
            name = key_in_words(step)
            words += f"[{name}]" if name.startswith('"') else f".{name}"
    return words.removeprefix(".")


def key_in_words(key: str) -> str:
    """`key` as it stands in a sentence: in quotes, and cut short, when it is no plain word."""
    return key if _PLAIN_KEY.fullmatch(key) and len(key) <= 40 else quoted(key)


def quoted(text: str) -> str:
    """`text` in quotes, as it is written in a design file, cut short if it is long."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    words = '"' + "".join(c if c.isprintable() else "?" for c in escaped) + '"'
    return words if len(words) <= 42 else words[:38] + '..."'


def shown(value: object) -> Value:
    """`value` as it is written in a design file, cut short if it is long."""
    match value:
        case None:
            return message_in("value in a design file", "nothing")
        case dict():
            return message_in("value in a design file", "a mapping")
        case list():
            return message_in("value in a design file", "a list")
        case str():
            return quoted(value)
        case bool():
            words = "true" if value else "false"
        case float():
            words = f"{value:.12g}"
        case _:
            words = str(value)
    return words if len(words) <= 42 else words[:38] + "..."


def listed(
    names: Iterable[Value], last: Literal["and", "or"] = "and", most: int = 40
) -> Listing | Message:
    """`names` as a list in words: a, b and c; of very many labels the runs."""
    all_names = list(names)
    if len(all_names) > most and all(isinstance(name, str) for name in all_names):
        return runs_words(str(name) for name in all_names)
    return listing(all_names, "or" if last == "or" else "standard")


@lru_cache(maxsize=2000)
def _nearest(name: str, known: tuple[str, ...]) -> str | None:
    by_lower = {one.lower(): one for one in reversed(known)}
    close = get_close_matches(name.lower(), by_lower, n=1, cutoff=0.55)
    return by_lower[close[0]] if close else None


def nearest(name: str, known: Iterable[str]) -> str | None:
    """The one of `known` that `name` was most likely meant to be, or None.

    Looks through no more than the first 1,000, so that a long list costs little.
    """
    return _nearest(name, tuple(known)[:1000])


def one_of(name: str, known: Iterable[str], all_of_them: str, at: Path) -> Suggestion:
    """A suggestion that leads from the value `name` at `at` to one of `known`: the nearest first,
    then all. `all_of_them` is marked, and has a place for the `{names}`.
    """
    return _led_to(name, tuple(known), all_of_them, lambda guess: Put(at, guess))


def key_of(at: Path, known: Iterable[str], all_of_them: str) -> Suggestion:
    """As `one_of`, for the key at `at`."""
    return _led_to(str(at[-1]), tuple(known), all_of_them, lambda guess: Rename(at, guess))


# what people call a key that is called otherwise here
SYNONYMS = {
    "colours": "colour_pattern",
    "colors": "colour_pattern",
    "pattern": "colour_pattern",
    "color": "colour",
    "size": "nominal",
    "gauge": "inflate_to",
    "inflate": "inflate_to",
    "people": "crew",
    "price": "prices",
    "packs": "pack_sizes",
    "notes": "text",
    "locks": "lock",
    "title": "name",
    "times": "repeat",
    "braces": "brace",
}


def most_likely(name: str, known: Iterable[str]) -> str | None:
    """As `nearest`, for a key, which people may also call otherwise."""
    keys = tuple(known)
    by_meaning = SYNONYMS.get(name.lower())
    return by_meaning if by_meaning in keys else nearest(name, keys)


def _led_to(
    name: str, known: tuple[str, ...], all_of_them: str, mended: Callable[[str], Change]
) -> Suggestion:
    if not known:
        return by_hand(message("there is none to choose from"))
    guess = most_likely(name, known) or (known[0] if len(known) == 1 else None)
    these_are = message(all_of_them, names=listed(map(key_in_words, known)))
    ways = (Remedy(meant(guess), (mended(guess),)),) if guess else ()
    return Suggestion((these_are,), ways)


def meant(guess: str) -> Message:
    """Asks whether this name was meant."""
    return message("did you mean {guess}?", guess=key_in_words(guess))


def with_ending(at: Path, name: str, folder: FilePath) -> Suggestion | None:
    """A suggestion to name the design file in `folder` that is called so but for its ending, or
    else the one that is called most alike."""
    whole = f"{name}.yaml"
    if "\0" in name or not (folder / whole).is_file():
        beside = sorted(path.name for path in folder.glob("*.yaml"))
        designs = [one for one in beside if not one.endswith(".event.yaml")]
        alike = nearest(name, designs)
        if alike is None:
            return None
        whole = alike
    return Suggestion(ways=(Remedy(meant(whole), (Put(at, whole),)),))
