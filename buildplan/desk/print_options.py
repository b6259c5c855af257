"""What can be printed at the desk, and how."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from babel import Locale

from buildplan.design.event import EVENT_SUFFIX, read_event
from buildplan.design.reading import read_brand
from buildplan.design.translating import translated_event
from buildplan.desk.folder import Folder
from buildplan.desk.problem_data import title_of
from buildplan.desk.refusals import RefusedError
from buildplan.document.paper import PAPERS
from buildplan.language.messages import mark
from buildplan.language.voice import LOCALES, Voice
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError

PAPER_NAMES = {"a4": "A4", "letter": "Letter"}
_USUAL = ("edition", "paper", "language", "units")
_TERMS = ("customer", "address", "sender", "number", "date", "deposit", "valid")
# what is asked for one edition alone
OF_EDITION = {
    **dict.fromkeys(("large", "doors"), "crew"),
    **dict.fromkeys(("buyers", "key", "sign", "password", "brand"), "sale"),
}
KEYS, SIGNERS = ("*.key",), ("*.p12", "*.pfx")  # files of the folder that seal, that sign
# each with what is said of it, and the choices that it takes
WHATS: Mapping[str, tuple[str, str, tuple[str, ...]]] = {
    "booklet": (
        mark("Booklet"),
        mark("The steps of the work, numbered and illustrated, to build from."),
        (*_USUAL, "brand", "link", "fold", "large", "doors", "buyers", "key", "sign", "password"),
    ),
    "companion": (
        mark("Page for phones"),
        mark("The work step by step in 3D; it opens without a network."),
        ("edition", "language", "units", "brand", "buyers", "key"),
    ),
    "quote": (
        mark("Quote"),
        mark("Prices for the customer."),
        ("paper", "language", "brand", "count", "beside", *_TERMS),
    ),
    "shopping": (
        mark("Shopping list"),
        mark("The balloons to buy, in whole packs."),
        ("paper", "language", "count", "beside"),
    ),
    "gallery": (
        mark("Gallery of designs"),
        mark("Every design of this folder."),
        ("paper", "language"),
    ),
}
EVENT = "event "
EVENT_TAKES = ("paper", "language")
EDITIONS = {
    "training": mark("to learn it by"),
    "crew": mark("for a crew that knows the work"),
    "sale": mark("to be sold"),
}
UNITS = {"": mark("as in the file"), "in": mark("inches"), "cm": mark("centimetres")}


def print_options(folder: Folder, voice: Voice) -> dict[str, Any]:
    """All that can be chosen."""
    whats = [
        {"key": key, "words": voice.say(words), "about": voice.say(about), "takes": list(takes)}
        for key, (words, about, takes) in WHATS.items()
    ]
    whats += [
        {
            "key": f"{EVENT}{name}",
            "words": voice.say("Event: {name}", name=_event_words(folder, name, voice)),
            "about": voice.say("The day of all its pieces: shopping, work, load, taking down."),
            "takes": list(EVENT_TAKES),
        }
        for name in event_names(folder)
    ]
    return {
        "whats": whats,
        "editions": [_choice(key, voice.say(words)) for key, words in EDITIONS.items()],
        "papers": [_choice(key, PAPER_NAMES.get(key, key)) for key in PAPERS],
        "languages": [_choice(code, own_name(code)) for code in LOCALES],
        "units": [_choice(key, voice.say(words)) for key, words in UNITS.items()],
        "of_edition": OF_EDITION,
        "keys": [_choice(name, name) for name in _files(folder, KEYS)],
        "signers": [_choice(name, name) for name in _files(folder, SIGNERS)],
        "designs": [_choice(name, _title(folder, name)) for name in folder.names()],
        "brands": [_choice(file, words) for file, words in brands(folder).items()],
    }


def _title(folder: Folder, name: str) -> str:
    """What a design is called; its file's name where that cannot be read."""
    try:
        return title_of(folder.read(name)) or name
    except (RefusedError, OSError):
        return name


def _choice(value: str, label: str) -> dict[str, str]:
    return {"value": value, "label": label}


def own_name(language: str) -> str:
    """A language's name in itself."""
    name = Locale.parse(language).get_display_name() or language
    return name[:1].upper() + name[1:]


def event_names(folder: Folder) -> list[str]:
    """The event files of the folder, without their ending."""
    found = (path.name for path in folder.root.glob(f"*{EVENT_SUFFIX}") if path.is_file())
    return sorted(name.removesuffix(EVENT_SUFFIX) for name in found)


def _event_words(folder: Folder, name: str, voice: Voice) -> str:
    """What an event is called; its file's name where that cannot be read."""
    try:
        event = read_event(folder.root / f"{name}{EVENT_SUFFIX}")
    except (UnreadableDesignError, DesignProblemsError, OSError):
        return name
    return translated_event(event, voice.language).name


def _files(folder: Folder, patterns: Sequence[str]) -> list[str]:
    """The files of the folder that are called like one of these."""
    found = (path for pattern in patterns for path in folder.root.glob(pattern))
    return sorted(path.name for path in found if path.is_file())


def brands(folder: Folder) -> dict[str, str]:
    """The brand files in the folder and in a folder `brand` of it, with the brands' names."""
    found = {}
    for path in sorted((*folder.root.glob("*.yaml"), *folder.root.glob("brand/*.yaml"))):
        if path.name.endswith(EVENT_SUFFIX) or path.stem in folder.names():
            continue
        try:
            found[str(path.relative_to(folder.root))] = read_brand(path).name
        except (UnreadableDesignError, DesignProblemsError, OSError):
            continue
    return found
