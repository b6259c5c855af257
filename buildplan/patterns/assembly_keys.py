"""The keys of an assembly."""

from __future__ import annotations

from typing import Annotated, Literal, get_args

from pydantic import Discriminator, Field, Tag

from buildplan.language.messages import mark
from buildplan.patterns.build import Build
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.source.values import (
    KEYS_FORM,
    LIST_FORM,
    ONE_LINE,
    PART_NAME,
    TEXT_FORM,
    FileModel,
    Key,
    OneOrMoreJoints,
    form_of,
)

PartName = Annotated[str, Field(pattern=PART_NAME)]
OneOrMoreParts = Annotated[
    Annotated[PartName, Tag(TEXT_FORM)]
    | Annotated[list[PartName], Field(min_length=1, max_length=8), Tag(LIST_FORM)],
    Discriminator(form_of),
]
Place = Literal["on", "between", "left_of", "right_of", "in_front_of", "behind"]
PLACES: tuple[Place, ...] = get_args(Place)  # the keys that say where a part is set
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
    on: OneOrMoreParts | None = Field(
        None,
        description=mark(
            "the part that it stands on, in the middle, or those that it stands across, from left "
            "to right: `on: [L, R]`; the ties are worked out"
        ),
    )
    between: Annotated[list[PartName], Field(min_length=2, max_length=2)] | None = Field(
        None,
        description=mark(
            "the two parts that it is tied between, left and right, as high as their joints meet; "
            "the ties are worked out"
        ),
    )
    lower: Annotated[int, Field(ge=0, le=200)] = Field(
        0,
        description=mark(
            "with `between`: how many of the places at which its joints meet it is tied below the"
            " highest"
        ),
    )
    left_of: PartName | None = Field(
        None,
        description=mark(
            "the part that it is tied to the left of, both on the floor if they can be; the ties "
            "are worked out"
        ),
    )
    right_of: PartName | None = Field(
        None, description=mark("the part that it is tied to the right of, as `left_of`")
    )
    in_front_of: PartName | None = Field(
        None, description=mark("the part that it is tied in front of, as `left_of`")
    )
    behind: PartName | None = Field(
        None, description=mark("the part that it is tied behind, as `left_of`")
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

    @property
    def places(self) -> dict[Place, tuple[str, ...]]:
        """The parts that it is set on or beside, by the key that says so; one at most once it is
        checked, none where ties alone say where it goes."""
        found: dict[Place, tuple[str, ...]] = {}
        for key in PLACES:
            given: str | list[str] | None = getattr(self, key)
            if given is not None:
                found[key] = (given,) if isinstance(given, str) else tuple(given)
        return found

    @property
    def carried_by(self) -> tuple[str, ...]:
        """The parts that it is set on or beside."""
        return next(iter(self.places.values()), ())


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


def assemblies_deep(build: Build | None) -> int:
    """How many assemblies lie within one another in a build: 0 where it is none."""
    assembly = build.keys_of(Assembly) if build is not None else None
    if assembly is None:
        return 0
    return 1 + max(assemblies_deep(part.build) for part in assembly.parts)
