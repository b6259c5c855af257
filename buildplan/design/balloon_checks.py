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
from buildplan.source.suggestions import Put, Remedy, Rename, Suggestion, TakeOut, by_hand, change

Balloons = Mapping[str, Salvaged[Balloon]]

CM_PER_INCH = 2.54


THE_BALLOONS = mark("the balloons are: {names}")


# A link sized to less of its nominal size is hardly filled: more likely the two are in different
# units. From memory.
SLIPPED = 3  # a gauge so many times the nominal size: a point of that slipped
LEAST_FILLED = 0.3


def check_sizes(at: Path, balloon: Salvaged[Balloon], units: object) -> Iterator[Mistake]:
    """What the sizes of a balloon, in the file's `units`, must agree on."""
    part, right = balloon.part, balloon.right
    if right("nominal", "inflate_to") and part.inflate_to > part.nominal:
        yield _gauge_over_nominal(at, part)
    elif right("kind", "nominal", "inflate_to") and _is_hardly_filled(part):
        yield _hardly_filled(at, part, units)
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


def _gauge_over_nominal(at: Path, part: Balloon) -> Mistake:
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
    return Mistake(
        FileKind.GAUGE_OVER_NOMINAL,
        (*at, "inflate_to"),
        message(
            "inflate_to {gauge} is more than the balloon's nominal size {nominal}",
            gauge=f"{part.inflate_to:g}",
            nominal=f"{part.nominal:g}",
        ),
        Suggestion(ways=(other_bag, other_gauge) if slipped else (other_gauge, other_bag)),
    )


def _hardly_filled(at: Path, part: Balloon, units: object) -> Mistake:
    """A gauge in inches on a balloon in centimetres, or the like."""
    gauge, nominal = f"{part.inflate_to:g}", f"{part.nominal:g}"
    usual = float(f"{part.nominal * 2 / 3:.3g}")
    in_cm, in_inches = round(CM_PER_INCH * part.inflate_to, 1), round(part.nominal / CM_PER_INCH, 1)
    ways = [
        Remedy(
            message("size it to {usual} (common practice: about two thirds)", usual=f"{usual:g}"),
            (Put((*at, "inflate_to"), usual),),
        )
    ]
    if units == "cm" and LEAST_FILLED * part.nominal <= in_cm <= part.nominal:
        words = message("{gauge} in are {cm} cm: write {cm}", gauge=gauge, cm=f"{in_cm:g}")
        ways.insert(0, Remedy(words, (Put((*at, "inflate_to"), in_cm),)))
    if units == "in" and part.inflate_to <= in_inches:
        words = message(
            "{cm} cm are {inches} in: write {inches}", cm=nominal, inches=f"{in_inches:g}"
        )
        ways.insert(0, Remedy(words, (Put((*at, "nominal"), in_inches),)))
    return Mistake(
        FileKind.HARDLY_FILLED,
        (*at, "inflate_to"),
        message(
            "inflate_to {gauge} hardly fills a balloon of nominal size {nominal}",
            gauge=gauge,
            nominal=nominal,
        ),
        Suggestion(ways=tuple(ways)),
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


def check_reference(reference: Reference, balloons: Balloons) -> Iterator[Mistake]:
    """Whether there is the balloon that is named, and it is of a kind that belongs there."""
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
            reference.leads_to(fitting or balloons, _called(key, fitting, balloons)),
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
