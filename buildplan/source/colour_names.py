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
# What balloons come in, by the name that a file is given: what it is called; all are known to
# `hex_of`.
NAMES: Mapping[str, str] = {
    "white": mark("white"),
    "ivory": mark("ivory"),
    "cream": mark("cream"),
    "linen": mark("linen"),
    "peachpuff": mark("peach"),
    "pink": mark("pink"),
    "hotpink": mark("bright pink"),
    "deeppink": mark("deep pink"),
    "lightcoral": mark("light coral"),
    "coral": mark("coral"),
    "tomato": mark("tomato red"),
    "red": mark("red"),
    "crimson": mark("crimson"),
    "maroon": mark("dark red"),
    "orange": mark("orange"),
    "darkorange": mark("deep orange"),
    "gold": mark("gold"),
    "yellow": mark("yellow"),
    "khaki": mark("pale yellow"),
    "goldenrod": mark("mustard"),
    "rose gold": mark("rose gold"),
    "palegreen": mark("pale green"),
    "limegreen": mark("lime green"),
    "leaf green": mark("leaf green"),
    "green": mark("green"),
    "darkgreen": mark("dark green"),
    "olive": mark("olive"),
    "aquamarine": mark("mint"),
    "turquoise": mark("turquoise"),
    "teal": mark("teal"),
    "lightblue": mark("light blue"),
    "sky blue": mark("sky blue"),
    "deep blue": mark("deep blue"),
    "royalblue": mark("royal blue"),
    "blue": mark("blue"),
    "navy": mark("navy"),
    "lavender": mark("lavender"),
    "plum": mark("lilac"),
    "orchid": mark("orchid"),
    "purple": mark("purple"),
    "indigo": mark("indigo"),
    "tan": mark("sand"),
    "peru": mark("caramel"),
    "saddlebrown": mark("brown"),
    "chocolate": mark("cinnamon"),
    "silver grey": mark("silver grey"),
    "grey": mark("grey"),
    "black": mark("black"),
}
_CALLED = {**NAMES, **{name: name for name in NAMES.values()}}


def called(label: str) -> str | None:
    """What a colour is called, a message, by its name or by what it is called; None for any that is
    no colour to choose."""
    return _CALLED.get(" ".join(label.lower().split()))


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
