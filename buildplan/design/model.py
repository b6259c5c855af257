"""What a design file may say, as frozen data.

These definitions are the only description of the file: the reader validates with them and
the JSON Schema is generated from them. Lengths stay in the file's own units here; the
framework converts them to metres, once.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Discriminator,
    Field,
    Tag,
    WithJsonSchema,
)

from buildplan.language.speaking import mark

ChainLetter = Literal["A", "B", "C", "D"]
CellName = Literal["straight", "fan", "fan_in", "dip", "tip"]
# the languages that the pages can be in: those of language.speaking.LOCALES
Language = Literal["en", "es"]
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
# the form of an alphabetic code of ISO 4217
CURRENCY = r"^[A-Z]{3}$"

Key = Annotated[str, Field(min_length=1, max_length=40, pattern=ONE_LINE)]
JointLabel = Annotated[str, Field(min_length=1, max_length=12, pattern=ONE_LINE)]
Length = Annotated[float, Field(ge=0.1, le=5000, allow_inf_nan=False)]
Advance = Annotated[int, Field(ge=0, le=20)]
Minutes = Annotated[float, Field(gt=0, le=10_000, allow_inf_nan=False)]
Labour = dict[LabourKind, Minutes]
ConstantName = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]*$", max_length=60)]
ConstantValue = Annotated[float, Field(allow_inf_nan=False)]


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
TEXT_FORM, LIST_FORM, KEYS_FORM = "<text>", "<list>", "<keys>"


def form_of(value: object) -> str | None:
    """Which form `value` has: text, list, keys (or a part that has been read already)."""
    if isinstance(value, str):
        return TEXT_FORM
    if isinstance(value, list):
        return LIST_FORM
    return KEYS_FORM if isinstance(value, dict | BaseModel) else None


class FileModel(BaseModel):
    """Base of every part of the file: immutable, and closed to keys it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class Balloon(FileModel):
    """One kind of balloon in the piece: its size, its colour, and how far it is inflated."""

    kind: Literal["link", "round"] = Field(
        description=mark(
            "link (a neck and a tail, one strut of the framework) or round (a neck only)"
        )
    )
    nominal: Length = Field(description=mark("the size printed on the bag, in the file's units"))
    inflate_to: Length = Field(
        description=mark("the gauge that it is sized against, in the file's units")
    )
    colour: Annotated[str, Field(pattern=r"^#[0-9A-Fa-f]{6}$")] = Field(
        description=mark('its colour as # and six hex digits, in quotes: "#1F5F8B"')
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


class Repeat(FileModel):
    """A group of cells laid several times over."""

    repeat: Annotated[int, Field(ge=1, le=500)] = Field(
        description=mark("how many times the group is laid")
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


ColouredPart = Literal["A", "B", "C", "D", "long", "brace", "ring", "between", "row", "upright"]
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

AssemblyPart.model_rebuild()
Assembly.model_rebuild()
Build.model_rebuild()

HexColour = Annotated[str, Field(pattern=r"^#[0-9A-Fa-f]{6}$")]


class BrandTranslation(FileModel):
    """The words of a brand in another language; what is not given stays as it is."""

    contact: Annotated[str, Field(max_length=200, pattern=r"^[^\n\t]*$")] | None = Field(
        None, description=mark("how to reach them, in that language")
    )
    licence: Annotated[str, Field(max_length=6000)] | None = Field(
        None, description=mark("the words of the licence page in that language")
    )


class Brand(FileModel):
    """Whose plan this is: what the seller's own pages look like and say."""

    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] = Field(
        description=mark("the name on the cover")
    )
    contact: Annotated[str, Field(max_length=200, pattern=r"^[^\n\t]*$")] = Field(
        "", description=mark("how to reach them, in one line")
    )
    colour: HexColour = Field(
        "#24405A", description=mark("the brand's main colour, of the cover: # and six hex digits")
    )
    accent: HexColour = Field(
        "#C9A227", description=mark("the brand's second colour, for lines and marks")
    )
    logo: Annotated[str, Field(min_length=1, max_length=1000, pattern=ONE_LINE)] | None = Field(
        None,
        description=mark("the logo, a .png or .svg file, as seen from the folder of this file"),
    )
    licence: Annotated[str, Field(max_length=6000)] = Field(
        "", description=mark("the words of the licence page; an empty line parts paragraphs")
    )
    translations: dict[Language, BrandTranslation] = Field(
        default_factory=dict, description=mark("these words in other languages, by language: es")
    )


class Rates(FileModel):
    """What a quote adds to the material. All of it is the user's own; nothing is assumed."""

    hour: Price | None = Field(None, description=mark("what an hour of one person's work costs"))
    margin: Share | None = Field(
        None,
        description=mark(
            "the part of the price before tax that is kept, as a fraction: 0.35 is 35 of "
            "every 100, so that 65 of cost make a price of 100"
        ),
    )
    delivery: Price | None = Field(
        None, description=mark("one sum for bringing the piece, placing it and taking it away")
    )
    tax: Share | None = Field(
        None,
        description=mark(
            "the tax on top of the price, as a fraction of it: 0.2 is 20 in a hundred"
        ),
    )


class Translation(FileModel):
    """The words of a design file in another language; what is not given stays as it is."""

    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] | None = Field(
        None, description=mark("the name of the piece in that language")
    )
    labels: dict[Key, Annotated[str, Field(min_length=1, max_length=40, pattern=ONE_LINE)]] = Field(
        default_factory=dict, description=mark("what people call each balloon, by its key")
    )
    text: dict[StageName, Annotated[str, Field(max_length=2000)]] = Field(
        default_factory=dict, description=mark("the notes of the stages, by the stage")
    )


class Design(FileModel):
    """A whole design file: a freestanding piece of link balloons, from which its counts, its
    shape, the order of work and the booklet are made."""

    buildplan: Version = Field(description=mark("the version of this file format: 1"))
    name: Annotated[str, Field(min_length=1, max_length=80, pattern=ONE_LINE)] = Field(
        description=mark("the name of the piece, as it stands on the cover")
    )
    units: Literal["in", "cm"] = Field(description=mark("the unit of every length in this file"))
    balloons: Annotated[dict[Key, Balloon], Field(min_length=1, max_length=60)] = Field(
        description=mark("the kinds of balloon, each under a key that the rest of the file uses")
    )
    build: Build = Field(description=mark("how the piece is made: exactly one pattern"))
    stand_on: OneOrMoreJoints | None = Field(
        None, description=mark("the joint, or the list of joints, that the piece stands on")
    )
    crew: Annotated[int, Field(ge=1, le=100)] | None = Field(
        None, description=mark("how many people build it, for the timetable")
    )
    prices: dict[Key, Price] = Field(
        default_factory=dict, description=mark("the price of one balloon, by its key")
    )
    pack_sizes: dict[Key, Annotated[int, Field(ge=1, le=100_000)]] = Field(
        default_factory=dict,
        description=mark("how many balloons a bought pack holds, by the balloon's key"),
    )
    pack_prices: dict[Key, Price] = Field(
        default_factory=dict,
        description=mark(
            "the price of a whole pack, by the balloon's key, in place of that of one balloon"
        ),
    )
    currency: Annotated[str, Field(pattern=CURRENCY)] | None = Field(
        None, description=mark("the currency of all prices, as its three letters of ISO 4217: GBP")
    )
    rates: Rates | None = Field(
        None, description=mark("what work costs and what is added to it, for a quote")
    )
    spare: Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)] = Field(
        0.05, description=mark("the extra balloons to take, as a fraction: 0.05 is 5 in a hundred")
    )
    labour: Labour = Field(
        default_factory=dict, description=mark("the minutes that one operation takes, by its kind")
    )
    brand: Brand | None = Field(None, description=mark("whose plan this is, for the cover"))
    text: dict[StageName, Annotated[str, Field(max_length=2000)]] = Field(
        default_factory=dict, description=mark("your own note to print with a stage, by the stage")
    )
    colour_pattern: dict[ColouredPart, ColourOrder] = Field(
        default_factory=dict,
        description=mark(
            "how colours follow one another, by part: a long chain of a tube or an arch "
            "by its letter, or all of them as `long`; `brace`, each of one colour; `ring` and "
            "`between` of a column; `row` and `upright` of a wall. A list of balloons laid in "
            "turn, over and over, or stripes, a spiral or a fade; what has none is all of its one "
            "balloon"
        ),
    )
    translations: dict[Language, Translation] = Field(
        default_factory=dict,
        description=mark("the words of this file in other languages, by language: es"),
    )
    constants: dict[ConstantName, ConstantValue] = Field(
        default_factory=dict,
        description=mark("your own values for constants that are otherwise remembered, by name"),
    )
