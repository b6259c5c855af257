"""What a design file may say, as frozen data.

These definitions are the only description of the file: the reader validates with them and
the JSON Schema is generated from them. Lengths stay in the file's own units here; the
framework converts them to metres, once.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from buildplan.language.messages import mark
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.registry import Build, holding
from buildplan.source.balloons import Balloon
from buildplan.source.trade_words import in_file_words, with_colours
from buildplan.source.values import (
    CURRENCY,
    MOST_OF_ADDRESS,
    ONE_LINE,
    PAGE_ADDRESS,
    ConstantName,
    FileModel,
    HexColour,
    Key,
    Labour,
    Language,
    Length,
    OneOrMoreJoints,
    OwnConstant,
    Price,
    Share,
    StageName,
    Version,
)


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

    @model_validator(mode="before")
    @classmethod
    def _in_file_words(cls, data: object) -> object:
        return with_colours(data, ("colour", "accent")) if isinstance(data, dict) else data

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
    font: Annotated[str, Field(min_length=1, max_length=1000, pattern=ONE_LINE)] | None = Field(
        None,
        description=mark(
            "a font file for signs that the booklet's own type has not (.ttf, .otf or .ttc), as "
            "seen from the folder of this file"
        ),
    )
    licence: Annotated[str, Field(max_length=6000)] = Field(
        "", description=mark("the words of the licence page; an empty line parts paragraphs")
    )
    link: Annotated[str, Field(max_length=MOST_OF_ADDRESS, pattern=PAGE_ADDRESS)] | None = Field(
        None,
        description=mark(
            "the address of the page for phones, for the code on printed pages; {piece} in it "
            "stands for the name of the design's file"
        ),
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


class GivenBase(FileModel):
    """A weighted base that the foot of the piece is tied to; of feet that it does not reach
    under, each has one of its own."""

    width: Length = Field(description=mark("how wide the base is from side to side"))
    depth: Length = Field(description=mark("how deep the base is from front to back"))
    weight: Annotated[float, Field(gt=0, le=2000, allow_inf_nan=False)] = Field(
        description=mark("what the base weighs, in kilograms")
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


@holding
class Design(FileModel):
    """A whole design file: a freestanding piece of link balloons, from which its counts, its
    shape, the order of work and the booklet are made."""

    @model_validator(mode="before")
    @classmethod
    def _in_file_words(cls, data: object) -> object:
        return in_file_words(data)

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
        None,
        description=mark(
            "the joint, or the list of joints, that the piece stands on; of a tube also start, "
            "finish, ends, or a cell by its number: cell 12"
        ),
    )
    top: OneOrMoreJoints | None = Field(
        None,
        description=mark(
            "in place of stand_on: the joint, or the joints, that are to be at the top"
        ),
    )
    base: GivenBase | None = Field(
        None, description=mark("the weighted base that its foot is tied to: {width, depth, weight}")
    )
    pole: bool = Field(
        False, description=mark("whether a pole that stands by itself holds it up: true or false")
    )
    hung: bool = Field(False, description=mark("whether it hangs from above: true or false"))
    tied_to_wall: bool = Field(
        False, description=mark("whether it is tied to a wall behind it: true or false")
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
    constants: dict[ConstantName, OwnConstant] = Field(
        default_factory=dict,
        description=mark(
            "your own values for constants that are otherwise remembered, by name: a number, or "
            "value, low and high"
        ),
    )
