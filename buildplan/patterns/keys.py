"""The patterns of a design file: what a piece can be built as."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import ConfigDict, Discriminator, Field, Tag

from buildplan.language.messages import mark
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.source.values import (
    KEYS_FORM,
    LIST_FORM,
    ONE_LINE,
    TEXT_FORM,
    Advance,
    CellName,
    ChainLetter,
    FileModel,
    JointLabel,
    Key,
    Length,
    form_of,
)


class Repeat(FileModel):
    """A group of cells laid several times over."""

    repeat: Annotated[int, Field(ge=1, le=500)] = Field(
        1, description=mark("how many times the group is laid; left out, once")
    )
    cells: Annotated[list[CourseItem], Field(min_length=1, max_length=500)] = Field(
        description=mark("the cells of the group in order, written like those of the course")
    )


CourseItem = Annotated[
    Annotated[CellName, Tag(TEXT_FORM)]
    | Annotated[list[Advance], Field(min_length=2, max_length=2), Tag(LIST_FORM)]
    | Annotated[Repeat, Tag(KEYS_FORM)],
    Discriminator(form_of),
]
BalloonOfEachChain = dict[ChainLetter, Key]
LongChains = Annotated[
    Annotated[Key, Tag(TEXT_FORM)] | Annotated[BalloonOfEachChain, Tag(KEYS_FORM)],
    Discriminator(form_of),
]
Repeat.model_rebuild()
OneOrMoreJoints = Annotated[
    Annotated[JointLabel, Tag(TEXT_FORM)]
    | Annotated[list[JointLabel], Field(min_length=1, max_length=1000), Tag(LIST_FORM)],
    Discriminator(form_of),
]


class ExtraBalloon(FileModel):
    """A balloon more between two joints of a tube."""

    joints: Annotated[list[JointLabel], Field(min_length=2, max_length=2)] = Field(
        description=mark("the two joints that it is tied between, such as [A2, D20]")
    )
    balloon: Key = Field(description=mark("which link balloon it is"))


Extra = Annotated[
    Annotated[list[JointLabel], Field(min_length=2, max_length=2), Tag(LIST_FORM)]
    | Annotated[ExtraBalloon, Tag(KEYS_FORM)],
    Discriminator(form_of),
]


class Tube(FileModel):
    """Long chains side by side, held apart by braces, along a course of cells."""

    closed: bool = Field(
        description=mark("whether the long chains are tied into rings (true) or stay open (false)")
    )
    chains: Literal[2, 3, 4] = Field(
        description=mark(
            "how many long chains: 2 a flat ladder (A outer, B inner); 3 a triangle "
            "(A outer front, B inner, C outer back); 4 a square (A outer front, B inner front, "
            "C inner back, D outer back)"
        )
    )
    long: LongChains = Field(
        description=mark(
            "the link balloon of the long chains: one key for all, or one for each "
            "chain letter; inner chains sized smaller make straight cells a gentle curve"
        )
    )
    brace: Key = Field(description=mark("the link balloon of the braces across the chains"))
    single: Key | None = Field(
        None,
        description=mark(
            "the link balloon tied across two joints that no brace reaches "
            "(needed where a tip or dip skips a joint between front and back)"
        ),
    )
    lock: Key = Field(
        description=mark("the round balloon of the locks; a lock is a pair of them at a joint")
    )
    extra: Annotated[list[Extra], Field(max_length=200)] = Field(
        default_factory=list,
        description=mark(
            "balloons more, each tied between two joints that no other joins: [[A2, D20]], like "
            "those of the braces; or {joints: [A2, D20], balloon: its key}"
        ),
    )
    course: Annotated[list[CourseItem], Field(min_length=1, max_length=500)] = Field(
        description=mark(
            "the cells in order: straight, fan, fan_in, tip, dip, [outer, inner] "
            "advances, or a group {repeat: times, cells: [...]}"
        )
    )


class GraphBalloon(FileModel):
    """One link balloon of a piece that is listed joint by joint."""

    from_: JointLabel = Field(alias="from", description=mark("the joint at one of its ends"))
    to: JointLabel = Field(description=mark("the joint at its other end"))
    balloon: Key = Field(description=mark("which balloon it is: a key of `balloons`"))


class Graph(FileModel):
    """A piece listed one by one: joints, and the link balloon between each two."""

    joints: Annotated[list[JointLabel], Field(min_length=2, max_length=20_000)] = Field(
        description=mark("the labels of the joints, each once")
    )
    balloons: Annotated[list[GraphBalloon], Field(min_length=1, max_length=20_000)] = Field(
        description=mark("the link balloons, each with the two joints that it ties together")
    )
    lock: Key | None = Field(
        None, description=mark("the round balloon of the locks; left out, the joints get none")
    )


class Column(FileModel):
    """Rings stacked on one another, each turned by half a step against the one below, with a
    zigzag of links between two of them: every face a triangle."""

    around: Annotated[int, Field(ge=3, le=24)] = Field(
        description=mark("how many balloons go round in each ring")
    )
    rings: Annotated[int, Field(ge=2, le=100)] = Field(
        description=mark("how many rings are stacked, the lowest on the floor")
    )
    ring: Key = Field(description=mark("the link balloon of the rings"))
    between: Key = Field(description=mark("the link balloon of the zigzags between two rings"))
    lock: Key = Field(description=mark("the round balloon of the locks"))


class Opening(FileModel):
    """A rectangle of a wall that is left out, in cells."""

    along: Annotated[int, Field(ge=0, le=200)] = Field(
        description=mark("how many cells from the left it begins")
    )
    up: Annotated[int, Field(ge=0, le=200)] = Field(
        description=mark("how many cells from the floor it begins; 0 is a doorway")
    )
    wide: Annotated[int, Field(ge=1, le=200)] = Field(description=mark("how many cells wide it is"))
    high: Annotated[int, Field(ge=1, le=200)] = Field(description=mark("how many cells high it is"))


class Wall(FileModel):
    """A grid of square cells, in one layer or in two with balloons between them."""

    across: Annotated[int, Field(ge=1, le=100)] = Field(
        description=mark("how many cells wide it is")
    )
    up: Annotated[int, Field(ge=1, le=60)] = Field(description=mark("how many cells high it is"))
    layers: Literal[1, 2] = Field(description=mark("one sheet, or two with balloons between them"))
    row: Key = Field(description=mark("the link balloon of the level rows"))
    upright: Key = Field(description=mark("the link balloon of the uprights"))
    between: Key | None = Field(
        None, description=mark("the link balloon between two layers, from front to back")
    )
    lock: Key = Field(description=mark("the round balloon of the locks"))
    openings: Annotated[list[Opening], Field(max_length=40)] = Field(
        default_factory=list, description=mark("rectangles that are left out: windows and doorways")
    )


SolidName = Literal[
    "tetrahedron",
    "cube",
    "octahedron",
    "dodecahedron",
    "icosahedron",
    "cuboctahedron",
    "truncated tetrahedron",
]


class Solid(FileModel):
    """A solid by its edges, one link balloon each."""

    shape: SolidName = Field(description=mark("which solid: its name in geometry"))
    edge: Key = Field(description=mark("the link balloon of the edges"))
    lock: Key = Field(description=mark("the round balloon of the locks"))


class Globe(FileModel):
    """A globe of 80 triangles: an icosahedron with each edge in two, pushed out to a sphere.
    Two lengths, shorter about the twelve points where five balloons meet."""

    long: Key = Field(description=mark("the link balloon of the longer struts"))
    short: Key = Field(
        description=mark(
            "the link balloon of the shorter struts, 0.884 times as long "
            "(sized to 7 where the long is sized to 8)"
        )
    )
    lock: Key = Field(description=mark("the round balloon of the locks"))


class Arch(FileModel):
    """An open tube of four chains on two feet."""

    kind: Literal["square", "gabled"] = Field(
        description=mark("square (two sharp corners) or gabled (three bends of about 60 degrees)")
    )
    leg: Annotated[int, Field(ge=1, le=200)] = Field(
        description=mark("how many balloons high each leg is")
    )
    span: Annotated[int, Field(ge=1, le=200)] = Field(
        description=mark("how many balloons the inner chains take from leg to leg")
    )
    long: Key = Field(description=mark("the link balloon of the long chains"))
    brace: Key = Field(description=mark("the link balloon of the braces across the chains"))
    lock: Key = Field(description=mark("the round balloon of the locks"))


class Letters(FileModel):
    """Letters and digits as joined tubes of four chains, side by side."""

    text: Annotated[str, Field(pattern=r"^[A-Z0-9]([A-Z0-9 ]{0,30}[A-Z0-9])?$")] = Field(
        description=mark("what they say, in capitals and digits; a space becomes a low bar")
    )
    cells: Literal[5, 7, 9, 11, 13] | None = Field(
        None, description=mark("how many cells high they are: 5, 7, 9, 11 or 13")
    )
    height: Length | None = Field(
        None,
        description=mark(
            "in place of `cells`: about how high they are, in the file's units; the "
            "nearest number of cells is taken"
        ),
    )
    long: Key = Field(description=mark("the link balloon of the outlines"))
    brace: Key = Field(
        description=mark("the link balloon of the braces across, and between letters")
    )
    bar: Key | None = Field(
        None,
        description=mark(
            "the link balloon of the bars' outlines, between letters; else that of the letters'"
        ),
    )
    lock: Key = Field(description=mark("the round balloon of the locks"))


PartName = Annotated[str, Field(pattern=r"^[A-Z][A-Z0-9]{0,3}$")]
PartJoint = Annotated[str, Field(min_length=1, max_length=30, pattern=ONE_LINE)]
TiedJoints = Annotated[list[PartJoint], Field(min_length=2, max_length=6)]


class TieByBalloon(FileModel):
    """Two joints of different parts with a balloon between them."""

    joints: Annotated[list[PartJoint], Field(min_length=2, max_length=2)] = Field(
        description=mark("the two joints, each as its part's name, a dot and its own label: L.A1")
    )
    balloon: Key = Field(description=mark("the link balloon between them"))


PartsTie = Annotated[
    Annotated[TiedJoints, Tag(LIST_FORM)] | Annotated[TieByBalloon, Tag(KEYS_FORM)],
    Discriminator(form_of),
]


class AssemblyPart(FileModel):
    """One part of an assembly, once or several times over."""

    name: PartName = Field(
        description=mark("a short name in capitals, set before each of its joints: L for L.A1")
    )
    design: Annotated[str, Field(min_length=1, max_length=1000, pattern=ONE_LINE)] | None = Field(
        None, description=mark("its design file, as seen from the folder of this file")
    )
    build: Build | None = Field(None, description=mark("in place of a design file: its pattern"))
    colour_pattern: dict[ColouredPart, ColourOrder] = Field(
        default_factory=dict,
        description=mark(
            "where `build` is given: how its colours go, as `colour_pattern` of a design"
        ),
    )
    stand_on: OneOrMoreJoints | None = Field(
        None, description=mark("its own joints that it is upright on; left out, as its design says")
    )
    mirrored: bool = Field(False, description=mark("whether it is built left to right"))
    repeat: Annotated[int, Field(ge=1, le=40)] = Field(
        1, description=mark("how many there are of it; with S for a name they are S1, S2, S3 ...")
    )
    to_next: Annotated[list[PartsTie], Field(max_length=200)] = Field(
        default_factory=list,
        description=mark(
            "where it is repeated: what ties each to the next, every time a joint of the "
            "one and then a joint of the next, by their own labels"
        ),
    )


class Assembly(FileModel):
    """Parts set on or beside one another and tied at named joints."""

    parts: Annotated[list[AssemblyPart], Field(min_length=1, max_length=40)] = Field(
        description=mark("the parts, in the order in which they are built")
    )
    ties: Annotated[list[PartsTie], Field(max_length=1000)] = Field(
        default_factory=list,
        description=mark(
            "joints of different parts that are brought together and locked, such as "
            "[L.A1, T.A1]; or {joints: [L.A1, T.A1], balloon: its key} for a balloon between two"
        ),
    )
    lock: Key = Field(description=mark("the round balloon of the locks where parts are tied"))


class Build(FileModel):
    """How the piece is made: exactly one pattern."""

    model_config = ConfigDict(json_schema_extra={"minProperties": 1, "maxProperties": 1})

    tube: Tube | None = Field(
        None, description=mark("long chains side by side along a course of cells")
    )
    column: Column | None = Field(None, description=mark("stacked rings with zigzags between them"))
    wall: Wall | None = Field(None, description=mark("a grid of square cells, one layer or two"))
    solid: Solid | None = Field(
        None, description=mark("a regular or half-regular solid by its edges")
    )
    globe: Globe | None = Field(None, description=mark("a globe of triangles"))
    arch: Arch | None = Field(None, description=mark("an open tube on two feet"))
    graph: Graph | None = Field(None, description=mark("joints and balloons listed one by one"))
    letters: Letters | None = Field(None, description=mark("letters and digits as joined tubes"))
    assembly: Assembly | None = Field(None, description=mark("parts tied to one another"))


# they name classes that stand below them
AssemblyPart.model_rebuild()
Assembly.model_rebuild()
