"""What a design file may say, as frozen data.

These definitions are the only description of the file: the reader validates with them and
the JSON Schema is generated from them. Lengths stay in the file's own units here; the
framework converts them to metres, once.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

ChainLetter = Literal["A", "B", "C", "D"]
CellName = Literal["straight", "fan", "fan_in", "dip", "tip"]
StageName = Literal["size", "pair", "chain", "close rings", "brace", "lock joints", "finish"]

Key = Annotated[str, Field(min_length=1, max_length=40)]
JointLabel = Annotated[str, Field(min_length=1, max_length=12)]
Length = Annotated[float, Field(gt=0, allow_inf_nan=False)]
Advance = Annotated[int, Field(ge=0, le=20)]


class FileModel(BaseModel):
    """Base of every part of the file: immutable, and closed to keys it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class Balloon(FileModel):
    """One kind of balloon in the piece: its size, its colour, and how far it is inflated."""

    kind: Literal["link", "round"]
    nominal: Length = Field(description="the size printed on the bag")
    inflate_to: Length = Field(description="the gauge it is sized against")
    colour: Annotated[str, Field(pattern=r"^#[0-9A-Fa-f]{6}$")]
    label: Annotated[str, Field(min_length=1, max_length=40)]
    tie_to_tie: Length | None = Field(None, description="measured between its two knots")
    chain_of_ten: Length | None = Field(None, description="measured over ten tied links")


class Repeat(FileModel):
    """A group of cells laid several times over."""

    repeat: Annotated[int, Field(ge=1, le=500)]
    cells: Annotated[list[CourseItem], Field(min_length=1, max_length=500)]


CourseItem = CellName | Annotated[list[Advance], Field(min_length=2, max_length=2)] | Repeat


class Tube(FileModel):
    """Long chains side by side, held apart by braces, along a course of cells."""

    closed: bool
    chains: Literal[2, 3, 4]
    long: Key | dict[ChainLetter, Key]
    brace: Key
    single: Key | None = None
    lock: Key
    course: Annotated[list[CourseItem], Field(min_length=1, max_length=500)]


class GraphBalloon(FileModel):
    """One link balloon of a piece that is listed joint by joint."""

    from_: JointLabel = Field(alias="from")
    to: JointLabel
    balloon: Key


class Graph(FileModel):
    """A piece listed one by one: joints, and the link balloon between each two."""

    joints: Annotated[list[JointLabel], Field(min_length=2, max_length=20_000)]
    balloons: Annotated[list[GraphBalloon], Field(min_length=1, max_length=60_000)]
    lock: Key | None = None


class Build(FileModel):
    """How the piece is made: exactly one pattern."""

    tube: Tube | None = None
    graph: Graph | None = None


class Brand(FileModel):
    """Whose plan this is, for the cover."""

    name: Annotated[str, Field(min_length=1, max_length=80)]
    contact: Annotated[str, Field(max_length=200)] = ""


class Design(FileModel):
    """A whole design file."""

    buildplan: Literal[1]
    name: Annotated[str, Field(min_length=1, max_length=80)]
    units: Literal["in", "cm"]
    balloons: Annotated[dict[Key, Balloon], Field(min_length=1, max_length=60)]
    build: Build
    stand_on: JointLabel | list[JointLabel] | None = None
    crew: Annotated[int, Field(ge=1, le=100)] | None = None
    prices: dict[Key, Decimal] = Field(default_factory=dict)
    pack_sizes: dict[Key, Annotated[int, Field(ge=1)]] = Field(default_factory=dict)
    spare: Annotated[float, Field(ge=0, le=1)] = 0.05
    labour: dict[str, Annotated[float, Field(gt=0)]] = Field(default_factory=dict)
    brand: Brand | None = None
    text: dict[StageName, str] = Field(default_factory=dict)
    colour_pattern: dict[ChainLetter, list[Key]] = Field(default_factory=dict)
