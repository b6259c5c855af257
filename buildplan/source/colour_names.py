"""Colours by name: those of CSS, and a few of our own that it has not."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from buildplan.language.messages import mark

HEX = r"#[0-9A-Fa-f]{6}"
# names that CSS does not know; the hexadecimal values are our own
OWN: Mapping[str, str] = MappingProxyType(
    {
        "cream": "#F3E9CF",
        "deep blue": "#1F5F8B",
        "leaf green": "#3F7F4C",
        "rose gold": "#C98E86",
        "silver grey": "#A9AEB3",
    }
)
# what is offered to choose by; all others are taken too
OFFERED = (
    mark("ivory"),
    mark("white"),
    mark("cream"),
    mark("gold"),
    mark("orange"),
    mark("red"),
    mark("pink"),
    mark("purple"),
    mark("deep blue"),
    mark("sky blue"),
    mark("leaf green"),
    mark("grey"),
    mark("black"),
)


def hex_of(name: str) -> str | None:
    """The hex digits of a colour by its name (CSS Color Module Level 4, section 6.1, with or
    without spaces, or one of OWN); None for any other."""
    plain = " ".join(name.lower().split())
    if plain in OWN:
        return OWN[plain]
    return _of_css().get(re.sub(r"[ -]", "", plain))


@cache
def _of_css() -> Mapping[str, str]:
    import webcolors  # only where a colour is given by name

    names = webcolors.names(webcolors.CSS3)
    found = {name: webcolors.name_to_hex(name).upper() for name in names}
    return {**found, "rebeccapurple": "#663399"}  # the one that Level 4 adds


def known_names() -> tuple[str, ...]:
    """Every name that `hex_of` knows."""
    return (*OWN, *_of_css())
