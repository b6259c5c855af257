"""What the parts of a design must agree on, beyond the form of each.

Every check looks only at what it needs, so that a mistake in one part hides none in another.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from buildplan.design.money_checks import check_money
from buildplan.language.messages import Message, Value, mark, message, message_in
from buildplan.patterns.arch import as_tube
from buildplan.patterns.colour_checks import check_colours, pattern_keys
from buildplan.patterns.graph_checks import check_graph
from buildplan.patterns.keys import Tube
from buildplan.patterns.pattern_checks import (
    A_BRACE,
    A_LONG_CHAIN,
    LOCK,
    PATTERNS,
    USES,
    check_patterns,
    pattern_joints,
    pattern_words,
)
from buildplan.patterns.tube_checks import check_tube, joint_counts
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
from buildplan.source.partial_validation import Salvaged, list_in, mapping_in, salvage
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
    yield from check_patterns(build)
    yield from check_colours(as_tube(build), mapping_in(top.get("colour_pattern")))
    if build.get("tube") is not None:
        pattern = mapping_in(top.get("colour_pattern"))
        tube = salvage(Tube, build["tube"])
        yield from check_tube(tube, mapping_in(build["tube"]), balloons, pattern)
    if build.get("graph") is not None:
        yield from check_graph(mapping_in(build["graph"]))
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
    elif measured and right("kind") and part.kind == "round":
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
    build = mapping_in(top.get("build"))
    tube, graph = mapping_in(build.get("tube")), mapping_in(build.get("graph"))
    at: Path = ("build", "tube")
    long = tube.get("long")
    if isinstance(long, dict):
        for letter, key in long.items():
            yield _Reference((*at, "long", letter), key, "link", A_LONG_CHAIN)
    else:
        yield _Reference((*at, "long"), long, "link", A_LONG_CHAIN)
    yield _Reference((*at, "brace"), tube.get("brace"), "link", A_BRACE)
    yield _Reference((*at, "single"), tube.get("single"), "link", mark("a single"))
    for i, extra in enumerate(list_in(tube.get("extra"))):
        key = mapping_in(extra).get("balloon")
        yield _Reference((*at, "extra", i, "balloon"), key, "link", mark("a balloon more"))
    yield _Reference((*at, "lock"), tube.get("lock"), LOCK.kind, LOCK.use)
    at = ("build", "graph")
    for i, balloon in enumerate(list_in(graph.get("balloons"))):
        key = mapping_in(balloon).get("balloon")
        yield _Reference((*at, "balloons", i, "balloon"), key, "link", mark("a framework"))
    yield _Reference((*at, "lock"), graph.get("lock"), LOCK.kind, LOCK.use)
    for name, uses in USES.items():
        part = mapping_in(build.get(name))
        for key, kind, use in (*uses, LOCK):
            yield _Reference(("build", name, key), part.get(key), kind, use)
    for at, key in pattern_keys(mapping_in(top.get("colour_pattern"))):
        use = A_BRACE if at[1] == "brace" else A_LONG_CHAIN
        yield _Reference(at, key, "link", use)
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
        if kind is None or (balloon.right("kind") and balloon.part.kind == kind)
    ]
    if key not in balloons:
        yield Mistake(
            FileKind.NO_SUCH_BALLOON,
            reference.at,
            message("there is no balloon {key}", key=shown(key)),
            reference.leads_to(fitting or balloons),
        )
    elif balloons[key].right("kind") and key not in fitting:
        wrong = (
            mark("{key} is a round, and {use} is made of link balloons")
            if kind == "link"
            else mark("{key} is a link balloon, and {use} is made of rounds")
        )
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
    given = top.get("stand_on")
    labels: list[tuple[Path, object]]
    if isinstance(given, list):
        labels = [(("stand_on", i), label) for i, label in enumerate(given)]
    else:
        labels = [(("stand_on",), given)]
    seen: set[str] = set()
    known, these_are = joints_of(build)
    tube = build.get("tube") is not None
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
        elif known is not None and label not in known:
            guess = _meant_joint(label, known, tube)
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                at,
                message("there is no joint {joint}", joint=shown(label)),
                Suggestion(
                    (message("the joints are {names}", names=these_are),),
                    (Way(meant(guess), (Put(at, guess),)),) if guess else (),
                ),
            )
        seen.add(label)


def _meant_joint(label: str, known: Collection[str], tube: bool) -> str | None:
    """The joint that a label was most likely meant to name: `A12` for `a12` or `A 12`."""
    plain = re.sub(r"[\s_.-]+", "", label).upper()
    plain = re.sub(r"(?<=[A-Z])0+(?=[0-9])", "", plain)
    if plain in known:
        return plain
    # nearest to A99 would be A9, which tells nobody anything
    return None if tube else nearest(label, known)


def joints_of(build: Mapping[str, object]) -> tuple[Collection[str] | None, Value]:
    """The labels of the piece's joints, also in words; None if they cannot be told."""
    of_pattern = pattern_joints(build)
    if of_pattern:
        return of_pattern, _first_to_last(of_pattern[0], of_pattern[-1])
    if build.get("assembly") is not None:
        return _joints_of_parts(mapping_in(build["assembly"])), message("those of its parts")
    build = as_tube(build)
    if build.get("tube") is not None and build.get("graph") is None:
        counts = joint_counts(salvage(Tube, build["tube"]))
        if counts is None:
            return None, ""
        known = {f"{letter}{i + 1}": None for letter, n in counts.items() for i in range(n)}
        runs = (_first_to_last(f"{letter}1", f"{letter}{n}") for letter, n in counts.items())
        return known, listed(runs)
    joints = [
        j for j in list_in(mapping_in(build.get("graph")).get("joints")) if isinstance(j, str)
    ]
    return (joints, listed(map(key_in_words, joints))) if joints else (None, "")


def _first_to_last(first: str, last: str) -> Message:
    return message("{first} to {last}", first=first, last=last)


def _joints_of_parts(assembly: Mapping[str, object]) -> Collection[str] | None:
    """The joints of an assembly whose parts are all inline, each once; None for any other."""
    found: list[str] = []
    for part in map(mapping_in, list_in(assembly.get("parts"))):
        known, _ = joints_of(mapping_in(part.get("build")))
        if known is None or part.get("repeat", 1) != 1:
            return None
        found += [f"{part.get('name')}.{joint}" for joint in known]
    return found
