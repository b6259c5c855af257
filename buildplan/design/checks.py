"""What the parts of a design must agree on, beyond the form of each.

Every check looks only at what it needs, so that a mistake in one part hides none in another.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from string import digits

from buildplan.design.money_checks import check_money
from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.language.messages import mark, message, message_in
from buildplan.patterns.colour_checks import check_colours, pattern_keys
from buildplan.patterns.pattern import Whole
from buildplan.patterns.registry import (
    PATTERNS,
    check_patterns,
    joints_of,
    pattern_words,
    patterns_in,
)
from buildplan.patterns.tube import A_BRACE, A_LONG_CHAIN
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.lengths import LEAST_PER_GAUGE, MOST_PER_GAUGE, likely, tie_to_tie
from buildplan.source.mistake import (
    Mistake,
    Path,
    key_in_words,
    key_of,
    listed,
    meant,
    nearest,
    one_of,
    shown,
)
from buildplan.source.partial_validation import Salvaged, mapping_in, salvage
from buildplan.source.suggestions import Put, Suggestion, TakeOut, Way, by_hand, change
from buildplan.source.trade_words import in_file_words

Balloons = Mapping[str, Salvaged[Balloon]]
_FEW_IN_WORDS = {2: message_in("number", "two"), 3: message_in("number", "three")}
THE_BALLOONS = mark("the balloons are: {names}")


def check(data: object, known_constants: Collection[str] | None = None) -> Iterator[Mistake]:
    """Every disagreement in `data`, a file's content as plain data.

    `known_constants` are the names that `constants` may use; None lets any name pass.
    """
    top = mapping_in(in_file_words(data))
    build = mapping_in(top.get("build"))
    balloons = {
        key: salvage(Balloon, value) for key, value in mapping_in(top.get("balloons")).items()
    }
    for key, balloon in balloons.items():
        yield from _check_sizes(("balloons", key), balloon)
    if balloons:
        for reference in _references(top):
            yield from _check_reference(reference, balloons)
    if "build" in top:
        yield from _check_pattern(build)
    colours = mapping_in(top.get("colour_pattern"))
    yield from check_patterns(build, Whole(balloons, colours))
    yield from check_colours(build, colours)
    yield from _check_standing(top, build)
    yield from check_money(top, balloons)
    yield from _check_translations(top, balloons)
    if known_constants is not None:
        for name in mapping_in(top.get("constants")):
            if name not in known_constants:
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


def _check_sizes(at: Path, balloon: Salvaged[Balloon]) -> Iterator[Mistake]:
    part, right = balloon.part, balloon.right
    if right("nominal", "inflate_to") and part.inflate_to > part.nominal:
        yield Mistake(
            FileKind.GAUGE_OVER_NOMINAL,
            (*at, "inflate_to"),
            message(
                "inflate_to {gauge} is more than the balloon's nominal size {nominal}",
                gauge=f"{part.inflate_to:g}",
                nominal=f"{part.nominal:g}",
            ),
            change(
                message(
                    "size it to {nominal} or less (common practice for a link: about two thirds, "
                    "{two_thirds})",
                    nominal=f"{part.nominal:g}",
                    two_thirds=f"{part.nominal * 2 / 3:.3g}",
                ),
                Put((*at, "inflate_to"), float(f"{part.nominal * 2 / 3:.3g}")),
            ),
        )
    measured = [
        name
        for name in ("tie_to_tie", "chain_of_ten")
        if right(name) and getattr(part, name) is not None
    ]
    if len(measured) == 2:
        yield Mistake(
            FileKind.MEASURED_TWICE,
            (*at, "chain_of_ten"),
            message("tie_to_tie and chain_of_ten are both given, and say the same thing twice"),
            Suggestion(
                (message("keep the one that you measured"),),
                tuple(_left_out(at, name) for name in measured),
            ),
        )
    elif measured and right("kind") and not part.is_strut:
        yield Mistake(
            FileKind.ROUND_HAS_NO_LENGTH,
            (*at, measured[0]),
            message("a round is tied at its neck only and has no {key}", key=measured[0]),
            Suggestion(
                ways=(
                    _left_out(at, measured[0]),
                    Way(
                        message("make it {right}", right="kind: link"),
                        (Put((*at, "kind"), "link"),),
                    ),
                )
            ),
        )
    elif measured and right("kind", "inflate_to") and not likely(part):
        links = 10 if measured == ["chain_of_ten"] else 1
        least, most = (links * part.inflate_to * r for r in (LEAST_PER_GAUGE, MOST_PER_GAUGE))
        yield Mistake(
            FileKind.UNLIKELY_LENGTH,
            (*at, measured[0]),
            message(
                "{key} {length} cannot be right for a link sized to {gauge}",
                key=measured[0],
                length=f"{tie_to_tie(part)[0] * links:g}",
                gauge=f"{part.inflate_to:g}",
            ),
            by_hand(
                message(
                    "measure again: between {least} and {most} is likely",
                    least=f"{least:.4g}",
                    most=f"{most:.4g}",
                )
            ),
        )


def _left_out(at: Path, key: str) -> Way:
    return Way(message("take {key} out", key=key), (TakeOut((*at, key)),))


@dataclass(frozen=True)
class _Reference:
    """A place that names a balloon by its key; `use`, a marked message, says what for, and `kind`
    what kind of balloon belongs there, if one does."""

    at: Path
    key: object
    kind: str | None
    use: str

    def leads_to(self, keys: Iterable[str]) -> Suggestion:
        """A suggestion that leads to one of these balloons, a value or a key of the file."""
        if self.at[-1] == self.key:
            return key_of(self.at, keys, THE_BALLOONS)
        return one_of(str(self.key), keys, THE_BALLOONS, self.at)


def _references(top: Mapping[str, object]) -> Iterator[_Reference]:
    """Every place of the file that names a balloon."""
    for pattern, given in patterns_in(mapping_in(top.get("build"))):
        for use in pattern.uses:
            for at, key in use.named(given):
                yield _Reference(("build", pattern.name, *at), key, use.kind, use.use)
    for at, key in pattern_keys(mapping_in(top.get("colour_pattern"))):
        yield _Reference(at, key, "link", A_BRACE if at[1] == "brace" else A_LONG_CHAIN)
    for table in ("prices", "pack_sizes", "pack_prices"):
        for key in mapping_in(top.get(table)):
            yield _Reference((table, key), key, None, table)


def _check_reference(reference: _Reference, balloons: Balloons) -> Iterator[Mistake]:
    key, kind = reference.key, reference.kind
    if not isinstance(key, str):
        return
    fitting = [
        name
        for name, balloon in balloons.items()
        if kind is None
        or (balloon.right("kind") and balloon.part.is_strut == BALLOON_KINDS[kind].is_strut)
    ]
    if key not in balloons:
        yield Mistake(
            FileKind.NO_SUCH_BALLOON,
            reference.at,
            message("there is no balloon {key}", key=shown(key)),
            reference.leads_to(fitting or balloons),
        )
    elif balloons[key].right("kind") and key not in fitting:
        wrong = BALLOON_KINDS[balloons[key].part.kind].words.not_for
        yield Mistake(
            FileKind.WRONG_KIND_OF_BALLOON,
            reference.at,
            message(wrong, key=shown(key), use=message(reference.use)),
            _use(reference.at, fitting)
            if fitting
            else by_hand(message("add a balloon of {right}", right=f"kind: {kind}")),
        )


def _use(at: Path, fitting: Sequence[str]) -> Suggestion:
    """A suggestion to name one of these balloons at `at`; which of several, a person says."""
    words = message("use {names}", names=listed(map(key_in_words, fitting), "or"))
    return change(words, Put(at, fitting[0])) if len(fitting) == 1 else by_hand(words)


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


def _check_standing(top: Mapping[str, object], build: Mapping[str, object]) -> Iterator[Mistake]:
    for key in ("stand_on", "top"):
        yield from _check_named(key, top.get(key), build)
    if top.get("stand_on") is not None and top.get("top") is not None:
        yield Mistake(
            FileKind.WAY_UP_TWICE,
            ("top",),
            message("stand_on and top both say which way up the piece is"),
            Suggestion(
                ways=tuple(
                    Way(message("take {key} out", key=key), (TakeOut((key,)),))
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
            guess = _meant_joint(label, joints.labels)
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                at,
                message("there is no joint {joint}", joint=shown(label)),
                Suggestion(
                    (message("the joints are {names}", names=joints.words),),
                    (Way(meant(guess), (Put(at, guess),)),) if guess else (),
                ),
            )
        seen.add(label)


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
