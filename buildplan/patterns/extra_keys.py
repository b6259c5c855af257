"""Balloons more, tied between two joints of a piece: their keys, and what can be wrong."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import Annotated, Any

from pydantic import Discriminator, Field, Tag

from buildplan.framework.extras import ExtraLink
from buildplan.language.messages import Value, mark, message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, listed, quoted
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import TakeOut, by_hand, change
from buildplan.source.values import KEYS_FORM, LIST_FORM, FileModel, JointLabel, Key, form_of

MOST_EXTRAS = 200


class ExtraBalloon(FileModel):
    """A balloon more between two joints."""

    joints: Annotated[list[JointLabel], Field(min_length=2, max_length=2)] = Field(
        description=mark("the two joints that it is tied between, such as [A2, D20]")
    )
    balloon: Key = Field(description=mark("which link balloon it is"))


Extra = Annotated[
    Annotated[list[JointLabel], Field(min_length=2, max_length=2), Tag(LIST_FORM)]
    | Annotated[ExtraBalloon, Tag(KEYS_FORM)],
    Discriminator(form_of),
]
Extras = Annotated[list[Extra], Field(max_length=MOST_EXTRAS)]


def extras_field() -> Any:
    """The field of a pattern's keys that lists balloons more."""
    return Field(
        default_factory=list,
        description=mark(
            "balloons more, each tied between two joints that no other joins: [[A2, B4]]; or "
            "{joints: [A2, B4], balloon: its key} for one of another kind"
        ),
    )


def extra_links(extras: Sequence[Any], usual: str) -> list[ExtraLink]:
    """Balloons more as they are built: those that name no balloon are `usual` ones."""
    found: list[ExtraLink] = []
    for one in extras:
        named = isinstance(one, ExtraBalloon)
        start, finish = one.joints if named else one
        found.append((start, finish, one.balloon if named else usual))
    return found


def check_extras(
    at: Path,
    given: object,
    labels: Collection[str],
    labels_words: Value,
    joined: Collection[frozenset[str]],
) -> Iterator[Mistake]:
    """What is wrong with balloons more at a place of the file; `labels` are the joints there are,
    `joined` the pairs of them that a balloon joins already."""
    there = set(joined)
    for i, one in enumerate(list_in(given)):
        ends = list_in(one) or list_in(mapping_in(one).get("joints"))
        place = (*at, i) if isinstance(one, list) else (*at, i, "joints")
        unknown = [end for end in ends if isinstance(end, str) and end not in labels]
        for end in unknown:
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                (*place, ends.index(end)),
                message("there is no joint {joint}", joint=quoted(end)),
                by_hand(message("the joints are {names}", names=labels_words)),
            )
        if unknown or len(ends) != 2 or not all(isinstance(end, str) for end in ends):
            continue
        pair = frozenset(map(str, ends))
        if len(pair) < 2 or pair in there:
            yield Mistake(
                FileKind.JOINED_ALREADY,
                (*at, i),
                message("{joint} cannot be tied to itself", joint=str(ends[0]))
                if len(pair) < 2
                else message("a balloon joins {joints} already", joints=listed(sorted(pair))),
                change(message("take it out, or name other joints"), TakeOut((*at, i))),
            )
        there.add(pair)
