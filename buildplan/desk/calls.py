"""What a page sends, as it is read."""

from __future__ import annotations

from dataclasses import fields
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field

from buildplan.desk.print_task import Wishes

Path = Annotated[list[str | int], Field(min_length=1, max_length=40)]
Count = Annotated[int, Field(ge=1, le=999)]
Version = Annotated[str, Field(pattern="^[0-9a-f]{64}$")]


class _Call(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class PutEdit(_Call):
    """Another value at a place; a key that is not there is added."""

    op: Literal["put"]
    path: Path
    value: Any


class TakeOutEdit(_Call):
    """A key or an item goes."""

    op: Literal["take_out"]
    path: Path


class InsertEdit(_Call):
    """An item more in a list, before the one that stands at its place."""

    op: Literal["insert"]
    path: Path
    value: Any


class MoveEdit(_Call):
    """An item to another place of its list, counted as it is once the item is taken out."""

    op: Literal["move"]
    path: Path
    to: Annotated[int, Field(ge=0, le=100_000)]


class RenameEdit(_Call):
    """A key is written otherwise."""

    op: Literal["rename"]
    path: Path
    key: Annotated[str, Field(min_length=1, max_length=80)]


class SuggestionEdit(_Call):
    """What a problem suggests: the problem by its number, and which of its ways."""

    op: Literal["suggestion"]
    number: Annotated[int, Field(ge=0, le=10_000)]
    way: Annotated[int, Field(ge=0, le=100)] = 0


class PaintEdit(_Call):
    """Links of the piece become another balloon of the file."""

    op: Literal["paint"]
    links: Annotated[list[Annotated[str, Field(max_length=200)]], Field(max_length=100_000)]
    balloon: Annotated[str, Field(max_length=80)]


Edit = Annotated[
    PutEdit | TakeOutEdit | InsertEdit | MoveEdit | RenameEdit | SuggestionEdit | PaintEdit,
    Field(discriminator="op"),
]


class BaseCall(_Call):
    """A call that says which version it was made from."""

    base: Version


class PutCall(BaseCall):
    """Another text."""

    text: str


class EditCall(BaseCall):
    """Changes, made one after another."""

    edits: Annotated[list[Edit], Field(min_length=1, max_length=200)]


class TitleCall(_Call):
    """A title as a person types it."""

    name: Annotated[str, Field(max_length=200)] = ""


class SeenCall(_Call):
    """The designs whose cards are in sight, from the top."""

    names: Annotated[list[Annotated[str, Field(max_length=120)]], Field(max_length=400)]


class FromPattern(_Call):
    """Begun with the usual piece of a pattern."""

    kind: Literal["pattern"]
    key: Annotated[str, Field(max_length=40)]


class FromPiece(_Call):
    """Begun with a whole piece of a folder within the desk's."""

    kind: Literal["gallery"]
    key: Annotated[str, Field(max_length=400)]


class FromWords(_Call):
    """Begun with words, in letters."""

    kind: Literal["words"]
    text: Annotated[str, Field(min_length=1, max_length=80)]
    height: Annotated[str, Field(max_length=40)] = ""


class FromOutline(_Call):
    """Begun with an outline: one that has a name, or one that was drawn, as SVG path data."""

    kind: Literal["outline"]
    key: Annotated[str, Field(max_length=40)] = ""
    path: Annotated[str, Field(max_length=500_000)] = ""
    height: Annotated[str, Field(max_length=40)]


class NewCall(_Call):
    """A new design."""

    name: Annotated[str, Field(min_length=1, max_length=80)]
    beginning: Annotated[
        FromPattern | FromPiece | FromWords | FromOutline, Field(discriminator="kind", alias="from")
    ]


class PrintCall(_Call):
    """A design is to be printed so; `units` and `brand` are empty for its own."""

    what: Annotated[str, Field(max_length=120)]
    edition: Literal["training", "crew", "sale"] = "training"
    paper: Literal["a4", "letter"] = "a4"
    language: Annotated[str, Field(pattern="^([a-z]{2})?$")] = ""
    units: Literal["", "in", "cm"] = ""
    brand: Annotated[str, Field(max_length=200)] = ""
    fold: bool = False
    large: bool = False
    doors: Annotated[str, Field(max_length=2_000)] = ""
    buyers: Annotated[str, Field(max_length=1_000_000)] = ""
    key: Annotated[str, Field(max_length=200)] = ""
    sign: Annotated[str, Field(max_length=200)] = ""
    password: Annotated[str, Field(max_length=1_000, repr=False)] = ""
    link: Annotated[str, Field(max_length=2_000)] = ""
    customer: Annotated[str, Field(max_length=200)] = ""
    address: Annotated[str, Field(max_length=1_000)] = ""
    sender: Annotated[str, Field(max_length=1_000)] = ""
    number: Annotated[str, Field(max_length=40)] = ""
    date: Annotated[str, Field(max_length=40)] = ""
    deposit: Annotated[int, Field(ge=0, le=100)] = 0
    valid: Annotated[int, Field(ge=0, le=999)] = 0
    count: Count = 1
    beside: Annotated[dict[str, Count], Field(max_length=200)] = {}

    @property
    def wishes(self) -> Wishes:
        """What is asked for beside."""
        own = {one.name: getattr(self, one.name) for one in fields(Wishes)}
        return Wishes(**{**own, "beside": tuple(self.beside.items())})
