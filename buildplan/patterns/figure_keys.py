"""The keys of a figure."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag

from buildplan.language.messages import mark
from buildplan.patterns.extra_keys import Extras, extras_field
from buildplan.source.values import KEYS_FORM, TEXT_FORM, FileModel, Key, OneOf, form_of

MOST_STROKES, MOST_CELLS = 60, 200


class FigureCell(StrEnum):
    """A cell of a figure, as whoever goes along its stroke sees it: a square that is left straight
    on, by its left or by its right side, or a triangle that is left by its left or right side."""

    STRAIGHT = "straight"
    CORNER_LEFT = "corner_left"
    CORNER_RIGHT = "corner_right"
    FAN_LEFT = "fan_left"
    FAN_RIGHT = "fan_right"


Side = Literal["left", "ahead", "right"]
CellName = Annotated[str, OneOf(tuple(FigureCell))]


class FigureRun(FileModel):
    """Cells of a stroke laid several times over."""

    repeat: Annotated[int, Field(ge=1, le=MOST_CELLS)] = Field(
        1, description=mark("how many times the group is laid; left out, once")
    )
    cells: Annotated[list[CellName], Field(min_length=1, max_length=MOST_CELLS)] = Field(
        description=mark("the cells of the group in order")
    )


FigureItem = Annotated[
    Annotated[CellName, Tag(TEXT_FORM)] | Annotated[FigureRun, Tag(KEYS_FORM)],
    Discriminator(form_of),
]


class FigureStroke(FileModel):
    """A stroke: cells one after another, from a side of a cell of an earlier stroke."""

    stroke: Annotated[int, Field(ge=1, le=MOST_STROKES)] | None = Field(
        None,
        description=mark("the earlier stroke that it sets out from, from 1 on; the first has none"),
    )
    cell: Annotated[int, Field(ge=1, le=MOST_CELLS)] | None = Field(
        None, description=mark("the cell of that stroke, 1 for its first")
    )
    side: Side | None = Field(
        None,
        description=mark(
            "the side of that cell, as whoever goes along its stroke sees it: left, right, or "
            "ahead (of a square)"
        ),
    )
    cells: Annotated[list[FigureItem], Field(min_length=1, max_length=MOST_CELLS)] = Field(
        description=mark(
            "its cells in order: straight, corner_left and corner_right (squares left straight on "
            "or by a side), fan_left and fan_right (triangles), or a group {repeat: times, "
            "cells: [...]}"
        )
    )


class Figure(FileModel):
    """A flat figure drawn in strokes, as letters are: tubes of square and triangular cells."""

    strokes: Annotated[list[FigureStroke], Field(min_length=1, max_length=MOST_STROKES)] = Field(
        description=mark(
            "the strokes, each from a side of a cell of one before; sides that come to lie on one "
            "another are one"
        )
    )
    heading: Annotated[float, Field(ge=-360, le=360)] = Field(
        90,
        description=mark("which way the first stroke sets out, in degrees: 0 to the right, 90 up"),
    )
    long: Key = Field(description=mark("the link balloon of the outlines"))
    brace: Key = Field(description=mark("the link balloon of the braces across"))
    lock: Key = Field(description=mark("the round balloon of the locks"))
    extra: Extras = extras_field()
