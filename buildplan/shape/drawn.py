"""Whether the letters of a word stay where they are drawn: upright, in a row, tied together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from scipy.spatial.transform import Rotation

from buildplan.framework.model import Framework, Part
from buildplan.language.messages import Decimal, Message, listing, message, message_count
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray
from buildplan.source.problems import Problem
from buildplan.source.suggestions import to_try

# Words that hold stay within 4 degrees and a tenth of a link of their drawing; what is hinged on
# one joint falls by 30 degrees and more.
LEANS_DEG = 8.0
MOVED_SHARE = 0.5  # of a link
MOST_NAMED = 4  # letters


def words_of(framework: Framework) -> Mapping[str, tuple[Part, ...]]:
    """The letters of each word of an assembly, bars among them, by the name of the word."""
    found: dict[str, tuple[Part, ...]] = {}
    for part in framework.parts:
        if part.drawing:
            found[part.drawing] = (*found.get(part.drawing, ()), part)
    return found


def not_as_drawn(framework: Framework, positions_m: FloatArray) -> Problem | None:
    """The problem of letters that nothing ties to their word, or that lean, turn or sink away from
    where they are drawn; `positions_m` are (places, 3), y up."""
    for letters in words_of(framework).values():
        loose = _loose(framework, letters)
        if loose:
            said: Message = message_count(
                "the word is not one piece: nothing ties {letters} to the letters beside it",
                "the word is not one piece: nothing ties {letters} to the letters beside them",
                len(loose),
                letters=listing([part.name for part in loose]),
            )
            return _problem(said, loose)
        off = sorted(_off(framework, letters, positions_m), key=lambda one: -round(one[1], 1))
        moved = dict(off[:MOST_NAMED])
        if moved:
            lean = max(moved.values())
            said = message_count(
                "the word does not stay as drawn: {letters} goes out of place (by up to {angle} "
                "degrees)",
                "the word does not stay as drawn: {letters} go out of place (by up to {angle} "
                "degrees)",
                len(moved),
                letters=listing(list(moved)),
                angle=Decimal(lean, 0),
            )
            named = {part.name: part for part in letters}
            return _problem(said, [named[name] for name in moved])
    return None


def _problem(said: Message, letters: Sequence[Part]) -> Problem:
    """It is told at the lowest front joint of each letter."""
    return Problem(
        ShapeKind.NOT_AS_DRAWN,
        said,
        to_try(
            message(
                "hold those letters to the ones beside them by balloons more (extra), or choose "
                "other letters or another number of cells"
            )
        ),
        joints=tuple(part.framework.joints[0] for part in letters[:MOST_NAMED]),
    )


def _loose(framework: Framework, letters: Sequence[Part]) -> list[Part]:
    """The letters that no balloon and no tie joins to the first, by way of others or not."""
    part_of = {joint: part.name for part in letters for joint in part.framework.joints}
    beside: dict[str, set[str]] = {part.name: set() for part in letters}
    ends = [(link.start, link.finish) for link in framework.links]
    for together in (*ends, *(tie.joints for tie in framework.ties)):
        names = {part_of[joint] for joint in together if joint in part_of}
        for name in names:
            beside[name] |= names
    reached, waiting = {letters[0].name}, [letters[0].name]
    while waiting:
        for name in sorted(beside[waiting.pop()] - reached):
            reached.add(name)
            waiting.append(name)
    return [part for part in letters if part.name not in reached]


def _off(
    framework: Framework, letters: Sequence[Part], positions_m: FloatArray
) -> Iterator[tuple[str, float]]:
    """The letters that are not where they are drawn, and how far each leans, in degrees."""
    lengths = [framework.balloons[one.balloon].tie_to_tie_m for one in framework.links]
    link_m = float(np.mean(lengths))
    drawn = [_drawn(part) for part in letters]
    now = [
        positions_m[[framework.place_number[joint] for joint in part.framework.joints]]
        for part in letters
    ]
    every, there = np.vstack(drawn), np.vstack(now)
    whole = _turn(every, there)
    for part, own, at in zip(letters, drawn, now, strict=True):
        turn = _turn(own, at)
        upright = float(turn.apply([0.0, 1.0, 0.0])[1])
        lean = float(np.degrees(np.arccos(np.clip(upright, -1, 1))))
        away = float(np.degrees((turn * whole.inv()).magnitude()))
        goal = whole.apply(own.mean(axis=0) - every.mean(axis=0)) + there.mean(axis=0)
        moved = float(np.linalg.norm(at.mean(axis=0) - goal))
        if max(lean, away) > LEANS_DEG or moved > MOVED_SHARE * link_m:
            yield part.name, max(lean, away)


def _drawn(part: Part) -> FloatArray:
    return np.array([part.framework.laid[joint] for joint in part.framework.joints])


def _turn(before: FloatArray, after: FloatArray) -> Rotation:
    """The rotation that best takes points (n, 3) about their middle to others about theirs."""
    turn, _ = Rotation.align_vectors(after - after.mean(axis=0), before - before.mean(axis=0))
    return turn
