"""Where a long chain runs, in words. The place itself is a name that the code goes by."""

from __future__ import annotations

from buildplan.language.speaking import say_in


def place_words(place: str) -> str:
    """The place of a long chain (`LongChain.place`) as it is called on pages and drawings."""
    names = {
        "outer": say_in("place of a chain", "outer"),
        "outer front": say_in("place of a chain", "outer front"),
        "outer back": say_in("place of a chain", "outer back"),
        "inner": say_in("place of a chain", "inner"),
        "inner front": say_in("place of a chain", "inner front"),
        "inner back": say_in("place of a chain", "inner back"),
        "ring": say_in("place of a chain", "ring"),
        "zigzag": say_in("place of a chain", "zigzag"),
        "open chain": say_in("place of a chain", "open chain"),
        "row": say_in("place of a chain", "row"),
        "row front": say_in("place of a chain", "row front"),
        "row back": say_in("place of a chain", "row back"),
        "upright": say_in("place of a chain", "upright"),
        "upright front": say_in("place of a chain", "upright front"),
        "upright back": say_in("place of a chain", "upright back"),
        "between": say_in("place of a chain", "between"),
    }
    return names[place]
