"""A piece as data: what `buildplan export` writes and the viewer reads.

Lengths are metres, axes those of the shape: x to the right as seen from the front, y up, z
towards the viewer, the floor at y = 0. `piece.schema.json` beside this module is the JSON Schema
(draft 2020-12) of `Piece`; a change that breaks its readers raises its version.
"""

from __future__ import annotations

from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field

DIALECT = "https://json-schema.org/draft/2020-12/schema"
SCHEMA_ID = "urn:buildplan:piece:1"

Point = tuple[float, float, float]
Said = dict[str, str]  # the same words in each language, by its code


class _Data(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class BalloonData(_Data):
    """One kind of balloon. `profile` is its outline: pairs of how far along from its middle, as a
    share of the distance between its knots, and the radius there as a share of its gauge."""

    key: str
    kind: Literal["link", "round"]
    label: Said
    size: Said = Field(description="The gauge it is sized to, in words")
    letter: str = Field(description="The letter that stands beside its colour in print")
    colour: str = Field(pattern="^#[0-9A-Fa-f]{6}$")
    finish: str
    nominal_m: float
    gauge_m: float
    tie_to_tie_m: float
    count: int = Field(description="Balloons of this kind in the piece")
    spare: int = Field(description="Balloons to have by for bursts")
    profile: list[tuple[float, float]]


class JointData(_Data):
    """A joint: its label, where it is, and the links that end there."""

    label: str
    at: Point
    place: str = Field(description="What the joints tied together at one place are called")
    links: list[str]
    steps: list[int] = Field(description="Numbers of the steps whose hands touch it")


class LinkData(_Data):
    """A link balloon, its two joints in the order of its chain, and where its ends are tied.
    `moment` is when it comes into the piece, `held` when both its joints are locked there."""

    id: str
    balloon: str
    role: Literal["chain", "brace", "single"]
    start: str
    finish: str
    neck: str
    tail: str
    moment: int
    held: int


class LockData(_Data):
    """A pair of rounds twisted round a joint, and the middles of both."""

    joint: str
    balloon: str
    at: tuple[Point, Point]
    moment: int


class ChainData(_Data):
    letter: str
    joints: list[str]
    links: list[str]
    closed: bool


class BraceData(_Data):
    number: int
    section: list[str]
    links: list[str]
    shared: list[str]


class CellData(_Data):
    number: int
    name: str
    outer: int
    inner: int
    first: int
    second: int
    skipped: list[str]


class SeatData(_Data):
    """From where work is seen: the direction from it to the eye, what is drawn upwards, the
    middle of what is looked at and how much of it must be seen, in metres across."""

    to_eye: Point
    up: Point
    about: Point
    across_m: float
    lying: bool = Field(description="Whether the piece lies on the floor, its front up")


class TurnData(_Data):
    """One doing of a step: what it is called, its row of words, what comes into the piece, the
    joints where hands work, and the seat. `moment` is its place in the whole work."""

    moment: int
    name: Said
    row: Said
    joints: list[str]
    ways: list[list[str]] = Field(
        description="Joints that each new chain or balloon runs through; closed, the first again"
    )
    links: list[str]
    locks: list[str]
    readies: list[str] = Field(description="Links that are made ready for later")
    ready_locks: list[str] = Field(description="Joints whose locks are made ready for later")
    seat: SeatData


class StepData(_Data):
    """One numbered step. `needs` are earlier steps; `work` counts what its minutes are counted
    by, for each kind of work in it."""

    number: int
    stage: str
    kind: str
    title: Said
    text: Said
    refers: dict[str, list[tuple[int, int, int]]] = Field(
        description="Steps that the text names in each language: the first letter of the number "
        "in the text, how many letters (code points) it has, and the step"
    )
    check: Said
    times: int
    needs: list[int]
    adds: dict[str, int]
    prepares: dict[str, int]
    cells: list[str]
    work: dict[str, int]
    seat: SeatData
    turns: list[TurnData]


class ActData(_Data):
    """One act of a repair. `joint` is where; `link` and `end` the neighbour whose end is in the
    same knot, empty where the knot holds the burst balloon's end alone."""

    act: Literal["open", "undo", "size", "close", "tie", "lock"]
    joint: str
    own_end: Literal["", "neck", "tail"] = ""
    link: str = ""
    end: Literal["", "neck", "tail"] = ""


class Piece(_Data):
    """A whole piece: what it is made of, how it lies in space, and how it is built."""

    form: Literal["urn:buildplan:piece:1"] = Field(alias="$schema")
    version: Literal[1] = Field(description="Version of this form of data")
    design: str = Field(description="Digest of the design file: changes when the design does")
    edition: str
    name: Said
    languages: list[str]
    units: Literal["in", "cm"]
    width_m: float
    height_m: float
    depth_m: float
    draft: bool = Field(description="Whether the piece has problems that must be mended")
    balloons: list[BalloonData]
    joints: list[JointData]
    links: list[LinkData]
    locks: list[LockData]
    chains: list[ChainData]
    braces: list[BraceData]
    cells: list[CellData]
    steps: list[StepData]
    stages: dict[str, Said]
    moments: list[tuple[int, int]] = Field(
        description="The whole work in order: number of the step, and of its turn from 0"
    )
    repairs: dict[str, list[ActData]] = Field(
        description="What to do when a link balloon bursts in the finished piece"
    )


def piece_json(piece: Piece) -> str:
    """The piece as JSON text; what is empty in an act of a repair is left out."""
    return piece.model_dump_json(by_alias=True, exclude_defaults=True)


def piece_schema() -> dict[str, Any]:
    """The JSON Schema of a piece as data."""
    schema = Piece.model_json_schema(by_alias=True)
    return {"$schema": DIALECT, "$id": SCHEMA_ID, **schema, "title": "buildplan piece"}
