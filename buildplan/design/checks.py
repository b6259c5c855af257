"""What the parts of a design must agree on, beyond the form of each.

Every check looks only at what it needs, so that a mistake in one part hides none in another.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping

from buildplan.design.balloon_references import (
    THE_BALLOONS,
    Balloons,
    check_reference,
    kinds_wanted,
    references,
)
from buildplan.design.money_checks import check_money
from buildplan.design.size_checks import check_sizes
from buildplan.design.standing_checks import check_standing
from buildplan.design.unit_checks import check_units
from buildplan.language.messages import mark, message, message_in
from buildplan.patterns.colour_checks import check_colours
from buildplan.patterns.pattern import Whole
from buildplan.patterns.registry import (
    PATTERNS,
    check_patterns,
    pattern_words,
)
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import (
    Mistake,
    key_of,
    listed,
    shown,
)
from buildplan.source.partial_validation import mapping_in, salvage
from buildplan.source.suggestions import by_hand
from buildplan.source.trade_words import in_file_words
from buildplan.source.values import CONSTANT_NAME

_FEW_IN_WORDS = {2: message_in("number", "two"), 3: message_in("number", "three")}


def check(data: object, known_constants: Collection[str] | None = None) -> Iterator[Mistake]:
    """Every disagreement in `data`, a file's content as plain data.

    `known_constants` are the names that `constants` may use; None lets any name pass.
    """
    top = mapping_in(in_file_words(data))
    build = mapping_in(top.get("build"))
    balloons = {
        key: salvage(Balloon, value) for key, value in mapping_in(top.get("balloons")).items()
    }
    as_given = mapping_in(mapping_in(data).get("balloons"))
    yield from _check_balloons(balloons, top.get("units"), as_given)
    if balloons:
        places = list(references(top))
        wanted = kinds_wanted(places)
        for reference in places:
            yield from check_reference(reference, balloons, wanted)
    if "build" in top:
        yield from _check_pattern(build)
    colours = mapping_in(top.get("colour_pattern"))
    yield from check_patterns(build, Whole(balloons, colours))
    yield from check_colours(build, colours)
    yield from check_standing(top, build)
    yield from check_money(top, balloons)
    yield from _check_translations(top, balloons)
    if known_constants is not None:
        for name in mapping_in(top.get("constants")):
            if name not in known_constants and re.match(CONSTANT_NAME, name):
                yield Mistake(
                    FileKind.NO_SUCH_CONSTANT,
                    ("constants", name),
                    message("there is no constant {key}", key=shown(name)),
                    key_of(
                        ("constants", name),
                        sorted(known_constants),
                        mark("the constants are: {names}"),
                    ),
                )


def _check_balloons(
    balloons: Balloons, units: object, as_given: Mapping[str, object]
) -> Iterator[Mistake]:
    together = list(check_units(balloons, units))
    told_of_all = {one.kind for one in together}
    yield from together
    for key, balloon in balloons.items():
        for one in check_sizes(("balloons", key), balloon, units, mapping_in(as_given.get(key))):
            if one.kind not in told_of_all:
                yield one


def _check_translations(top: Mapping[str, object], balloons: Balloons) -> Iterator[Mistake]:
    for language, words in mapping_in(top.get("translations")).items():
        for key in mapping_in(mapping_in(words).get("labels")):
            if balloons and key not in balloons:
                yield Mistake(
                    FileKind.NO_SUCH_BALLOON,
                    ("translations", language, "labels", key),
                    message("there is no balloon {key}", key=shown(key)),
                    key_of(("translations", language, "labels", key), balloons, THE_BALLOONS),
                )


def _check_pattern(build: Mapping[str, object]) -> Iterator[Mistake]:
    patterns = [name for name in PATTERNS if build.get(name) is not None]
    if len(patterns) > 1:
        yield Mistake(
            FileKind.SEVERAL_PATTERNS,
            ("build", list(build)[-1]),
            message(
                "build gives {number} patterns, {names}",
                number=_FEW_IN_WORDS[len(patterns)],
                names=listed(patterns),
            )
            if len(patterns) in _FEW_IN_WORDS
            else message("build gives several patterns, {names}", names=listed(patterns)),
            by_hand(message("keep one of them; a piece has exactly one")),
        )
    elif not any(value is not None for value in build.values()):
        yield Mistake(
            FileKind.NO_PATTERN,
            ("build",),
            message("build gives no pattern"),
            by_hand(message("add {names}, with its keys beneath it", names=pattern_words())),
        )
