"""What can be wrong with the sizes of a balloon."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import ceil

from buildplan.language.messages import message
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.lengths import LEAST_PER_GAUGE, MOST_PER_GAUGE, likely, tie_to_tie
from buildplan.source.mistake import Mistake, Path
from buildplan.source.partial_validation import Salvaged
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, by_hand

CM_PER_INCH = 2.54

SLIPPED = 3  # a gauge so many times the nominal size: a point of that slipped
# A link sized to less of its nominal size is hardly filled: more likely the two are in different
# units. From memory.
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
