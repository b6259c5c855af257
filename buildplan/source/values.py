"""Single values of a design file, and the base of its parts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Discriminator,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    Tag,
    WithJsonSchema,
)
from pydantic_core import CoreSchema, PydanticKnownError, core_schema

from buildplan.language.messages import mark
from buildplan.source.trade_words import LENGTH_WORDS

ChainLetter = Literal["A", "B", "C", "D"]
# the languages that the pages can be in: those of language.voice.LOCALES
Language = Literal["de", "en", "es", "fr", "pt"]
StageName = Literal["size", "pair", "chain", "close rings", "brace", "lock joints", "finish"]
LabourKind = Literal[
    "size",
    "pair",
    "tie off",
    "chain",
    "close ring",
    "tag",
    "lay",
    "brace",
    "settle",
    "single",
    "join",
    "turn over",
    "lock",
    "inspect",
    "stand up",
]
Finish = Literal["standard", "metallic", "pearl", "clear", "matt"]
# something to read, on one line
ONE_LINE = r"^[^\n\t]*\S[^\n\t]*$"
# An address of a page that a phone opens, and the most of it: a code that is still easily read.
PAGE_ADDRESS, MOST_OF_ADDRESS = r"^https?://[^\s/]+\S*$", 200
# the form of an alphabetic code of ISO 4217
CURRENCY = r"^[A-Z]{3}$"
HexColour = Annotated[
    str,
    Field(pattern=r"^#[0-9A-Fa-f]{6}$"),
    # a name is made hex digits before the model sees it
    WithJsonSchema({"type": "string", "pattern": r"^(#[0-9A-Fa-f]{6}|[^\W\d_][\w -]*)$"}),
]
Key = Annotated[str, Field(min_length=1, max_length=40, pattern=ONE_LINE)]
JointLabel = Annotated[str, Field(min_length=1, max_length=12, pattern=ONE_LINE)]
Length = Annotated[
    float,
    Field(ge=0.1, le=5000, allow_inf_nan=False),
    # a length with its unit is made a number before the model sees it
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "number", "minimum": 0.1, "maximum": 5000},
                {"type": "string", "pattern": LENGTH_WORDS},
            ]
        }
    ),
]
Advance = Annotated[int, Field(ge=0, le=20)]
Minutes = Annotated[float, Field(gt=0, le=10_000, allow_inf_nan=False)]
Labour = dict[LabourKind, Minutes]
PART_NAME = r"^[A-Z][A-Z0-9]{0,3}$"
CONSTANT_NAME = r"^[a-z][a-z0-9_]*$"
ConstantName = Annotated[str, Field(pattern=CONSTANT_NAME, max_length=60)]
ConstantValue = Annotated[float, Field(gt=0, allow_inf_nan=False)]


def _exact(value: object) -> object:
    """A number of the file as the decimal that was typed: 0.35, not 0.34999999999999997..."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return Decimal(str(value))
    return value


def _not_a_truth_value(value: object) -> object:
    # Python counts True as 1, and so does a Literal[1]
    return None if isinstance(value, bool) else value


Price = Annotated[
    Decimal,
    Field(ge=0, le=1_000_000, allow_inf_nan=False),
    BeforeValidator(_exact),
    WithJsonSchema({"type": "number", "minimum": 0, "maximum": 1_000_000}),
]
# A share of a whole, exact for money: 0.35 is 35 in a hundred.
Share = Annotated[
    Decimal,
    Field(ge=0, lt=1, allow_inf_nan=False),
    BeforeValidator(_exact),
    WithJsonSchema({"type": "number", "minimum": 0, "exclusiveMaximum": 1}),
]
Version = Annotated[Literal[1], BeforeValidator(_not_a_truth_value)]
# A value of several forms is read as the form that it looks like, so that a mistake is told
# once and not once for each form. The tags are no keys of the file: `<` marks them.
TEXT_FORM, LIST_FORM, KEYS_FORM, NUMBER_FORM = "<text>", "<list>", "<keys>", "<number>"


@dataclass(frozen=True, eq=False)
class OneOf:
    """Marks text of the file that is one of a few names, which a registry knows."""

    names: Mapping[str, object]

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_after_validator_function(self._known, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return {"enum": list(self.names), "type": "string"}

    def _known(self, name: str) -> str:
        if name in self.names:
            return name
        expected = " or ".join(map(repr, self.names))
        raise PydanticKnownError("literal_error", {"expected": expected})


def form_of(value: object) -> str | None:
    """Which form `value` has: text, list, keys (or a part that has been read already)."""
    if isinstance(value, str):
        return TEXT_FORM
    if isinstance(value, list):
        return LIST_FORM
    return KEYS_FORM if isinstance(value, dict | BaseModel) else None


class FileModel(BaseModel):
    """Base of every part of the file: immutable, and closed to keys it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, defer_build=True)


OneOrMoreJoints = Annotated[
    Annotated[JointLabel, Tag(TEXT_FORM)]
    | Annotated[list[JointLabel], Field(min_length=1, max_length=1000), Tag(LIST_FORM)],
    Discriminator(form_of),
]


class ConstantRange(FileModel):
    """A constant's likely value and the range about it."""

    value: ConstantValue = Field(description=mark("the constant's likely value"))
    low: ConstantValue = Field(description=mark("the least that it may be"))
    high: ConstantValue = Field(description=mark("the most that it may be"))


def _constant_form(value: object) -> str:
    """Keys, or else a number that it is or should be."""
    return KEYS_FORM if isinstance(value, dict | BaseModel) else NUMBER_FORM


OwnConstant = Annotated[
    Annotated[ConstantValue, Tag(NUMBER_FORM)] | Annotated[ConstantRange, Tag(KEYS_FORM)],
    Discriminator(_constant_form),
]
