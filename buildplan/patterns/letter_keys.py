"""The keys of `letters` in a design file."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from buildplan.language.messages import mark
from buildplan.patterns.extra_keys import Extras, extras_field
from buildplan.source.values import FileModel, Key, Length


def in_capitals(text: object) -> object:
    """A text in capitals, as all letters are; what is no text is left to be refused."""
    return text.upper() if isinstance(text, str) else text


class Letters(FileModel):
    """Letters and digits as joined tubes of four chains, side by side."""

    text: Annotated[
        str,
        BeforeValidator(in_capitals),
        Field(pattern=r"^[A-Z0-9]([A-Z0-9 ]{0,30}[A-Z0-9])?$"),
    ] = Field(description=mark("what they say, in capitals and digits; a space becomes a low bar"))
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
    extra: Extras = extras_field()
