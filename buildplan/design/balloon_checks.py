"""What can be wrong with the sizes of a balloon, and with the places that name one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.language.messages import mark, message
from buildplan.patterns.colour_checks import pattern_keys
from buildplan.patterns.registry import (
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
    TakeOut,
    by_hand,
    change,
)

Balloons = Mapping[str, Salvaged[Balloon]]

CM_PER_INCH = 2.54


THE_BALLOONS = mark("the balloons are: {names}")


# A link sized to less of its nominal size is hardly filled: more likely the two are in different
# units. From memory.
SLIPPED = 3  # a gauge so many times the nominal size: a point of that slipped
LEAST_FILLED = 0.3


def check_sizes(
    at: Path, balloon: Salvaged[Balloon], units: object, given: Mapping[str, object]
) -> Iterator[Mistake]:
    """What the sizes of a balloon, in the file's `units`, must agree on; `given` is what the file
    says of it as it stands there."""
    part, right = balloon.part, balloon.right
    if right("nominal", "inflate_to") and part.inflate_to > part.nominal:
        yield _gauge_over_nominal(at, part, units, given)
    elif right("kind", "nominal", "inflate_to") and _is_hardly_filled(part):
        yield _hardly_filled(at, part, units, given)
    measured = [
        name
        for name in ("tie_to_tie", "chain_of_ten")
        if right(name) and getattr(part, name) is not None
    ]
    if len(measured) == 2:
        yield _measured_twice(at, measured)
    elif measured and right("kind") and not part.is_strut:
        yield _round_with_length(at, measured[0])
    elif measured and right("kind", "inflate_to") and not likely(part):
        yield _unlikely_length(at, part, measured[0])


def _is_hardly_filled(part: Balloon) -> bool:
    return part.is_strut and part.inflate_to < LEAST_FILLED * part.nominal


def _as_given(given: Mapping[str, object], key: str, length: float) -> str:
    """A length as the file says it: with the unit that it names, if it does."""
    said = given.get(key)
    return said.strip() if isinstance(said, str) else f"{length:g}"


def _in_other_units(
    at: Path, part: Balloon, units: object, given: Mapping[str, object], key: str
) -> Iterator[Remedy]:
    """One of the two sizes of a balloon read as one in the other unit, where the file names no unit
    beside it and it then fills, or is filled, as a balloon is."""
    size = getattr(part, key)
    read = {"cm": CM_PER_INCH * size, "in": size / CM_PER_INCH}.get(str(units))
    if read is None or isinstance(given.get(key), str):
        return
    right = round(read, 1)
    filled = right / part.nominal if key == "inflate_to" else part.inflate_to / right
    if LEAST_FILLED <= filled <= 1.0:
        words = (
            message("{gauge} in are {cm} cm: write {cm}", gauge=f"{size:g}", cm=f"{right:g}")
            if units == "cm"
            else message(
                "{cm} cm are {inches} in: write {inches}", cm=f"{size:g}", inches=f"{right:g}"
            )
        )
        yield Remedy(words, (Put((*at, key), right),))


def _gauge_over_nominal(
    at: Path, part: Balloon, units: object, given: Mapping[str, object]
) -> Mistake:
    larger = ceil(1.5 * part.inflate_to)
    two_thirds = float(f"{part.nominal * 2 / 3:.3g}")
    other_bag = Remedy(
        message("use a balloon of nominal size {nominal}", nominal=f"{larger:g}"),
        (Put((*at, "nominal"), larger),),
    )
    other_gauge = Remedy(
        message(
            "size it to {nominal} or less (common practice for a link: about two "
            "thirds, {two_thirds})",
            nominal=f"{part.nominal:g}",
            two_thirds=f"{two_thirds:g}",
        ),
        (Put((*at, "inflate_to"), two_thirds),),
    )
    slipped = part.inflate_to > SLIPPED * part.nominal
    # a gauge in centimetres of a file in inches, or a bag in inches of one in centimetres
    slip = "inflate_to" if units == "in" else "nominal"
    in_others = _in_other_units(at, part, units, given, slip)
    return Mistake(
        FileKind.GAUGE_OVER_NOMINAL,
        (*at, "inflate_to"),
        message(
            "inflate_to {gauge} is more than the balloon's nominal size {nominal}",
            gauge=_as_given(given, "inflate_to", part.inflate_to),
            nominal=_as_given(given, "nominal", part.nominal),
        ),
        Suggestion(
            ways=(
                *in_others,
                *((other_bag, other_gauge) if slipped else (other_gauge, other_bag)),
            )
        ),
    )


def _hardly_filled(at: Path, part: Balloon, units: object, given: Mapping[str, object]) -> Mistake:
    """A gauge in inches on a balloon in centimetres, or the like."""
    usual = float(f"{part.nominal * 2 / 3:.3g}")
    two_thirds = Remedy(
        message("size it to {usual} (common practice: about two thirds)", usual=f"{usual:g}"),
        (Put((*at, "inflate_to"), usual),),
    )
    slip = "inflate_to" if units == "cm" else "nominal"
    return Mistake(
        FileKind.HARDLY_FILLED,
        (*at, "inflate_to"),
        message(
            "inflate_to {gauge} hardly fills a balloon of nominal size {nominal}",
            gauge=_as_given(given, "inflate_to", part.inflate_to),
            nominal=_as_given(given, "nominal", part.nominal),
        ),
        Suggestion(ways=(*_in_other_units(at, part, units, given, slip), two_thirds)),
    )


def _measured_twice(at: Path, measured: Sequence[str]) -> Mistake:
    return Mistake(
        FileKind.MEASURED_TWICE,
        (*at, "chain_of_ten"),
        message("tie_to_tie and chain_of_ten are both given, and say the same thing twice"),
        Suggestion(
            (message("keep the one that you measured"),),
            tuple(_left_out(at, name) for name in measured),
        ),
    )


def _round_with_length(at: Path, key: str) -> Mistake:
    return Mistake(
        FileKind.ROUND_HAS_NO_LENGTH,
        (*at, key),
        message("a round is tied at its neck only and has no {key}", key=key),
        Suggestion(
            ways=(
                _left_out(at, key),
                Remedy(
                    message("make it {right}", right="kind: link"),
                    (Put((*at, "kind"), "link"),),
                ),
            )
        ),
    )


def _unlikely_length(at: Path, part: Balloon, key: str) -> Mistake:
    links = 10 if key == "chain_of_ten" else 1
    least, most = (links * part.inflate_to * r for r in (LEAST_PER_GAUGE, MOST_PER_GAUGE))
    return Mistake(
        FileKind.UNLIKELY_LENGTH,
        (*at, key),
        message(
            "{key} {length} cannot be right for a link sized to {gauge}",
            key=key,
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


def _left_out(at: Path, key: str) -> Remedy:
    return Remedy(message("take {key} out", key=key), (TakeOut((*at, key)),))


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
