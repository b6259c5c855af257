"""How colours follow one another along the parts of a piece, as a design file says it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import ConfigDict, Discriminator, Field, Tag

from buildplan.language.messages import mark
from buildplan.source.values import KEYS_FORM, LIST_FORM, FileModel, Key, OneOf, form_of

# the parts that a pattern can be coloured by, of every pattern in `patterns.registry`
COLOURED_PARTS: dict[str, None] = {}
ColouredPart = Annotated[str, OneOf(COLOURED_PARTS)]
Stripes = Annotated[
    dict[Key, Annotated[int, Field(ge=1, le=1000)]], Field(min_length=1, max_length=60)
]


class ColourPattern(FileModel):
    """How colours follow one another: exactly one of stripes, spiral and fade."""

    model_config = ConfigDict(
        json_schema_extra={
            "oneOf": [{"required": [kind]} for kind in ("stripes", "spiral", "fade")]
        }
    )

    stripes: Stripes | None = Field(
        None,
        description=mark("how many of each balloon in turn, over and over: {blue: 3, ivory: 1}"),
    )
    spiral: Stripes | None = Field(
        None,
        description=mark(
            "how many of each balloon in turn, over and over, shifted from chain to chain "
            "(or from ring to ring) so that the colours wind round the piece: {blue: 3, ivory: 1}"
        ),
    )
    pitch: Annotated[int, Field(ge=1, le=1000)] | None = Field(
        None,
        description=mark(
            "of a spiral: how many balloons along the chains (or how many rings) one turn "
            "round takes; left out, as many as its counts add up to"
        ),
    )
    direction: Literal["left", "right"] = Field(
        "right",
        description=mark(
            "of a spiral: the way it winds; seen from outside, right climbs to the right "
            "as the thread of a screw does, left to the left"
        ),
    )
    fade: Annotated[list[Key], Field(min_length=2, max_length=10)] | None = Field(
        None,
        description=mark(
            "balloons to go over from the first to the last of, ever more of the next "
            "among the one before, spread evenly: [blue, ivory]"
        ),
    )
    there_and_back: bool | None = Field(
        None,
        description=mark(
            "of a fade: whether it returns to its first balloon; left out, it does round "
            "a closed chain and does not along an open one"
        ),
    )


ColourOrder = Annotated[
    Annotated[list[Key], Field(min_length=1, max_length=1000), Tag(LIST_FORM)]
    | Annotated[ColourPattern, Tag(KEYS_FORM)],
    Discriminator(form_of),
]
