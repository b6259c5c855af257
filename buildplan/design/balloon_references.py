"""The places of a file that name a balloon, and what can be wrong with them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.language.messages import mark, message
from buildplan.patterns.colour_checks import pattern_keys
from buildplan.patterns.registry import patterns_in
from buildplan.patterns.tube import A_BRACE, A_LONG_CHAIN
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import (
    Mistake,
    Path,
    key_in_words,
    key_of,
    listed,
    meant,
    one_of,
    shown,
)
from buildplan.source.partial_validation import Salvaged, mapping_in
from buildplan.source.suggestions import (
    NOTHING,
    Put,
    Remedy,
    Rename,
    Suggestion,
    by_hand,
    change,
)

Balloons = Mapping[str, Salvaged[Balloon]]

THE_BALLOONS = mark("the balloons are: {names}")


@dataclass(frozen=True)
class Reference:
    """A place that names a balloon by its key; `use`, a marked message, says what for, and `kind`
    what kind of balloon belongs there, if one does."""

    at: Path
    key: object
    kind: str | None
    use: str

    def leads_to(self, keys: Iterable[str], called: str | None) -> Suggestion:
        """A suggestion that leads to one of these balloons, a value or a key of the file: to the
        one that is called what is given here, if one is."""
        if called is not None:
            is_key = self.at[-1] == self.key
            mended = Rename(self.at, called) if is_key else Put(self.at, called)
            return change(meant(called), mended)
        if self.at[-1] == self.key:
            return key_of(self.at, keys, THE_BALLOONS)
        return one_of(str(self.key), keys, THE_BALLOONS, self.at)


def references(top: Mapping[str, object]) -> Iterator[Reference]:
    """Every place of the file that names a balloon."""
    for pattern, given in patterns_in(mapping_in(top.get("build"))):
        for use in pattern.uses:
            for at, key in use.named(given):
                yield Reference(("build", pattern.name, *at), key, use.kind, use.use)
    for at, key in pattern_keys(mapping_in(top.get("colour_pattern"))):
        yield Reference(at, key, "link", A_BRACE if at[1] == "brace" else A_LONG_CHAIN)
    for table in ("prices", "pack_sizes", "pack_prices"):
        for key in mapping_in(top.get(table)):
            yield Reference((table, key), key, None, table)


def kinds_wanted(places: Iterable[Reference]) -> Mapping[str, frozenset[str]]:
    """The kinds of balloon that places want of each key that they name."""
    found: dict[str, frozenset[str]] = {}
    for one in places:
        if isinstance(one.key, str) and one.kind is not None:
            found[one.key] = found.get(one.key, frozenset()) | {one.kind}
    return found


def check_reference(
    reference: Reference, balloons: Balloons, wanted: Mapping[str, frozenset[str]]
) -> Iterator[Mistake]:
    """Whether there is the balloon that is named, and it is of a kind that belongs there; `wanted`
    are the kinds that all places want of it. What all of them want otherwise is of a wrong kind
    itself, and what others want otherwise is not proposed here."""
    key, kind = reference.key, reference.kind
    if not isinstance(key, str):
        return
    fitting = [
        name
        for name, balloon in balloons.items()
        if kind is None
        or not balloon.right("kind")
        or balloon.part.is_strut == BALLOON_KINDS[kind].is_strut
    ]
    if key not in balloons:
        yield Mistake(
            FileKind.NO_SUCH_BALLOON,
            reference.at,
            message("there is no balloon {key}", key=shown(key)),
            reference.leads_to(fitting or balloons, _called(key, fitting, balloons)),
        )
    elif kind is not None and balloons[key].right("kind") and key not in fitting:
        wrong = BALLOON_KINDS[balloons[key].part.kind].words.not_for
        yield Mistake(
            FileKind.WRONG_KIND_OF_BALLOON,
            reference.at,
            message(wrong, key=shown(key), use=message(reference.use)),
            _of_kind(
                reference.at,
                key,
                kind,
                [one for one in fitting if kind in wanted.get(one, {kind})],
            )
            if wanted.get(key) == frozenset({kind})
            else _use(reference.at, fitting)
            if fitting
            else by_hand(message("add a balloon of {right}", right=f"kind: {kind}")),
        )


def _called(wanted: str, fitting: Sequence[str], balloons: Balloons) -> str | None:
    """The key of the one balloon that is called what is given in place of its key."""
    words = wanted.strip().lower()
    labels = {key: balloons[key].part.label for key in fitting if balloons[key].right("label")}
    found = [key for key, label in labels.items() if label.strip().lower() == words]
    return found[0] if len(found) == 1 else None


def _use(at: Path, fitting: Sequence[str]) -> Suggestion:
    """A suggestion to name one of these balloons at `at`; which of several, a person says."""
    words = message("use {names}", names=listed(map(key_in_words, fitting), "or"))
    return change(words, Put(at, fitting[0])) if len(fitting) == 1 else by_hand(words)


def _of_kind(at: Path, key: str, kind: str, others: Sequence[str]) -> Suggestion:
    """A suggestion to make a balloon one of that kind, or to name one of others at `at`."""
    made = message("make {key} a balloon of {right}", key=key, right=f"kind: {kind}")
    other = _use(at, others) if others else NOTHING
    return Suggestion(
        other.words, (Remedy(made, (Put(("balloons", key, "kind"), kind),)), *other.ways)
    )
