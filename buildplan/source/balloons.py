"""A balloon as the file says it."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import ConfigDict, Field

from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.language.messages import mark
from buildplan.source.values import ONE_LINE, FileModel, Finish, HexColour, Length, OneOf


def _label_where_colour_is_no_name(schema: dict[str, Any]) -> None:
    """In the schema a label is asked for with a colour in hex digits alone."""
    schema["required"] = [key for key in schema["required"] if key != "label"]
    schema["if"] = {"properties": {"colour": {"pattern": "^ *#"}}}
    schema["then"] = {"required": ["label"]}


class Balloon(FileModel):
    """One kind of balloon in the piece: its size, its colour, and how far it is inflated."""

    model_config = ConfigDict(json_schema_extra=_label_where_colour_is_no_name)

    kind: Annotated[str, OneOf(BALLOON_KINDS)] = Field(
        description=mark(
            "link (a neck and a tail, one strut of the framework) or round (a neck only)"
        )
    )
    nominal: Length = Field(description=mark("the size printed on the bag, in the file's units"))
    inflate_to: Length = Field(
        description=mark("the gauge that it is sized against, in the file's units")
    )
    colour: HexColour = Field(
        description=mark(
            'its colour as # and six hex digits, in quotes ("#1F5F8B"), or by a name of CSS, or '
            "by the label of another balloon of this file"
        )
    )
    label: Annotated[str, Field(min_length=1, max_length=40, pattern=ONE_LINE)] = Field(
        description=mark("what people call it: its colour's name")
    )
    tie_to_tie: Length | None = Field(
        None,
        description=mark(
            "a link's measured length between its two knots once built, in the file's units"
        ),
    )
    tie_to_tie_within: Annotated[float, Field(ge=0, le=0.5, allow_inf_nan=False)] = Field(
        0.0,
        description=mark("the share of tie_to_tie that it may be off by: 0.02 is two in a hundred"),
    )
    chain_of_ten: Length | None = Field(
        None, description=mark("the measured length of ten tied links, in the file's units")
    )
    finish: Finish = Field(
        "standard",
        description=mark(
            "how its rubber takes the light, for the pictures: standard (plain and "
            "glossy), metallic, pearl, clear or matt"
        ),
    )

    @property
    def is_strut(self) -> bool:
        """Whether it is tied at both ends, and can be a strut of the framework."""
        return BALLOON_KINDS[self.kind].is_strut
