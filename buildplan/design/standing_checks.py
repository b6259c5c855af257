"""What can be wrong with the joints that say which way up a piece is."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from string import digits

from buildplan.framework.places import CELL
from buildplan.language.messages import message
from buildplan.patterns.pattern import Joints
from buildplan.patterns.registry import joints_of
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import (
    Mistake,
    Path,
    meant,
    nearest,
    shown,
)
from buildplan.source.runs import runs_words
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, change


def check_standing(top: Mapping[str, object], build: Mapping[str, object]) -> Iterator[Mistake]:
    """Every disagreement about which way up the piece is."""
    for key in ("stand_on", "top"):
        yield from _check_named(key, top.get(key), build)
    if top.get("stand_on") is not None and top.get("top") is not None:
        yield Mistake(
            FileKind.WAY_UP_TWICE,
            ("top",),
            message("stand_on and top both say which way up the piece is"),
            Suggestion(
                ways=tuple(
                    Remedy(message("take {key} out", key=key), (TakeOut((key,)),))
                    for key in ("top", "stand_on")
                )
            ),
        )


def _check_named(key: str, given: object, build: Mapping[str, object]) -> Iterator[Mistake]:
    """Joints that `stand_on` or `top` names."""
    labels: list[tuple[Path, object]]
    if isinstance(given, list):
        labels = [((key, i), label) for i, label in enumerate(given)]
    else:
        labels = [((key,), given)]
    seen: set[str] = set()
    joints = joints_of(build)
    for at, label in labels:
        if not isinstance(label, str):
            continue
        if label in seen:
            yield Mistake(
                FileKind.LISTED_TWICE,
                at,
                message("{name} is listed twice", name=shown(label)),
                change(message("list each joint once"), TakeOut(at)),
            )
        elif joints is not None and not joints.named(label):
            several = re.split(r"[\s,;+]+", label.strip())
            if len(at) == 1 and len(several) > 1 and all(map(joints.named, several)):
                right = f"{at[-1]}: [{', '.join(several)}]"
                yield Mistake(
                    FileKind.NO_SUCH_JOINT,
                    at,
                    message("there is no joint {joint}", joint=shown(label)),
                    change(message("write it as a list: {right}", right=right), Put(at, several)),
                )
                continue
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                at,
                message("there is no joint {joint}", joint=shown(label)),
                _right_name(label, joints, at),
            )
        seen.add(label)


def _right_name(label: str, joints: Joints, at: Path) -> Suggestion:
    """What may be named instead; nothing needs to be, for a piece finds its foot by itself."""
    words = [message("the joints are {names}", names=joints.words)]
    if joints.places:
        places = runs_words(joints.places)
        words.append(message("places on its course are {names}", names=places))
    guess = _meant_joint(label, joints.labels) or _meant_cell(label, joints.places)
    if guess is not None:
        return Suggestion(tuple(words), (Remedy(meant(guess), (Put(at, guess),)),))
    if len(at) > 1:
        return Suggestion(tuple(words))
    key = str(at[-1])
    out = Remedy(message("take {key} out: it finds its foot", key=key), (TakeOut(at),))
    return Suggestion(tuple(words), (out,))


def _meant_cell(label: str, places: Collection[str]) -> str | None:
    """The cell that is next to one beyond the ends of a course: the last for `cell 99`."""
    given = re.fullmatch(r"\s*[Cc]ells?\s*([0-9]{1,6})\s*", label)
    cells = [place for place in places if place.startswith(CELL)]
    if given is None or not cells:
        return None
    asked = int(given[1])
    return min(cells, key=lambda cell: abs(int(cell.removeprefix(CELL)) - asked))


def _meant_joint(label: str, known: Collection[str]) -> str | None:
    """The joint that a label was most likely meant to name: `A12` for `a12` or `A 12`."""
    plain = re.sub(r"[\s_.-]+", "", label).upper()
    plain = re.sub(r"(?<=[A-Z])0+(?=[0-9])", "", plain)
    if plain in known:
        return plain
    guess = nearest(label, known)
    # nearest to A99 would be A9, which tells nobody anything
    further = guess is not None and plain.rstrip(digits) == guess.rstrip(digits)
    return None if further else guess
