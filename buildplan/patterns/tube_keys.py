"""The keys of a tube."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag

from buildplan.framework.cells import CELL_KINDS
from buildplan.language.messages import mark
from buildplan.patterns.extra_keys import Extras
from buildplan.source.values import (
    KEYS_FORM,
    LIST_FORM,
    TEXT_FORM,
    Advance,
    ChainLetter,
    FileModel,
    Key,
    OneOf,
    form_of,
)

CellName = Annotated[str, OneOf(CELL_KINDS)]


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
    extra: Extras = Field(
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
