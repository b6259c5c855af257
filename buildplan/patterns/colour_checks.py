"""What colour patterns must agree on: with the piece that they are laid on, and in themselves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import ValidationError

from buildplan.language.messages import mark, message, message_count
from buildplan.patterns.colour_order import COLOURED_PARTS, ColourPattern
from buildplan.patterns.colour_patterns import period, pitch
from buildplan.patterns.pattern import Colouring, Given, Uncoloured
from buildplan.patterns.registry import patterns_in
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, key_in_words, listed
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, by_hand, change

AT = "colour_pattern"
KINDS = ("stripes", "spiral", "fade")
A_KIND: Mapping[str, str] = {
    "stripes": mark("stripes"),
    "spiral": mark("a spiral"),
    "fade": mark("a fade"),
}


def pattern_keys(patterns: Mapping[str, object]) -> Iterator[tuple[Path, object]]:
    """Every place of the patterns that names a balloon."""
    for part, order in patterns.items():
        for i, key in enumerate(list_in(order)):
            yield (AT, part, i), key
        given = mapping_in(order)
        for kind in ("stripes", "spiral"):
            for key in mapping_in(given.get(kind)):
                yield (AT, part, kind, key), key
        for i, key in enumerate(list_in(given.get("fade"))):
            yield (AT, part, "fade", i), key


def check_colours(build: Given, patterns: Mapping[str, object]) -> Iterator[Mistake]:
    """Every disagreement of colour patterns with the pattern of `build`, which is plain data."""
    found = next(patterns_in(build), None)
    if not patterns or found is None:
        return
    pattern, given = found
    colours = pattern.colours
    if isinstance(colours, Uncoloured):
        yield Mistake(
            FileKind.NO_COLOUR_PATTERN_HERE,
            (AT,),
            message(colours.why),
            by_hand(message(colours.instead)),
        )
        return
    for part, order in patterns.items():
        if part in COLOURED_PARTS and part not in colours.parts:
            yield _no_such_part(pattern.name, part, colours)
        try:
            laid = ColourPattern.model_validate(order)
        except ValidationError:
            continue
        at = (AT, part)
        mistakes = list(_check_form(at, mapping_in(order)))
        yield from mistakes
        if mistakes:
            continue
        if laid.spiral is not None:
            yield from _check_spiral(at, part, laid, colours)
        yield from _check_even(at, laid, colours.rings(given, part))


def _no_such_part(name: str, part: str, colours: Colouring[Any]) -> Mistake:
    return Mistake(
        FileKind.NO_SUCH_PART_TO_COLOUR,
        (AT, part),
        message(
            "{pattern}: there is no {part} to lay a colour pattern along",
            pattern=name,
            part=key_in_words(part),
        ),
        by_hand(
            message(colours.words)
            if colours.words
            else message("use {names}", names=listed(colours.parts, "or"))
        ),
    )


def _check_form(at: Path, given: Mapping[str, object]) -> Iterator[Mistake]:
    kinds = [kind for kind in KINDS if given.get(kind) is not None]
    if len(kinds) != 1:
        yield Mistake(
            FileKind.ONE_COLOUR_ORDER,
            at,
            message("this colour pattern gives {names}", names=listed(kinds))
            if kinds
            else message("this pattern has no colours"),
            by_hand(message("give one of {names}", names=listed(KINDS, "or"))),
        )
        return
    for key, belongs in (("pitch", "spiral"), ("direction", "spiral"), ("there_and_back", "fade")):
        if given.get(key) is not None and kinds != [belongs]:
            yield Mistake(
                FileKind.COLOUR_KEY_OUT_OF_PLACE,
                (*at, key),
                message(
                    "{key} belongs to {kind}, and this is {another}",
                    key=key,
                    kind=message(A_KIND[belongs]),
                    another=message(A_KIND[kinds[0]]),
                ),
                change(message("take it out"), TakeOut((*at, key))),
            )


def _as_list(at: Path, stripes: Mapping[str, int]) -> Remedy:
    """The colours of stripes one by one."""
    colours = [key for key, count in stripes.items() for _ in range(count)]
    return Remedy(
        message(
            "write the colours as a list, which is cut off where a ring closes: {right}",
            right=f"{at[-1]}: [{', '.join(map(key_in_words, colours))}]",
        ),
        (Put(at, colours),),
    )


def _check_spiral(
    at: Path, part: str, pattern: ColourPattern, colours: Colouring[Any]
) -> Iterator[Mistake]:
    if part not in colours.spirals:
        yield Mistake(
            FileKind.NO_SPIRAL_HERE,
            (*at, "spiral"),
            message(
                "a spiral winds over all long chains of a tube, or the rings or zigzags of a "
                "column, and {part} is each of one colour",
                part=part,
            )
            if part == "brace"
            else message(
                "a spiral winds over all long chains of a tube, or the rings or zigzags of a "
                "column, and {part} is but one part of them",
                part=part,
            ),
            by_hand(
                message("lay it along long, or give stripes")
                if "long" in colours.spirals
                else message("give stripes or a fade")
            ),
        )
        return
    again, turn = period(pattern) or 1, pitch(pattern)
    if turn % again:
        near = sorted({max(again, turn // again * again), (turn // again + 1) * again})
        yield Mistake(
            FileKind.UNEVEN_PITCH,
            (*at, "pitch"),
            message(
                "the pitch {pitch} is not a whole number of times the {sum} that the counts of the "
                "spiral add up to, so that its colours do not meet after a turn",
                pitch=str(turn),
                sum=str(again),
            ),
            Suggestion(
                ways=tuple(
                    Remedy(message("use {number}", number=one), (Put((*at, "pitch"), one),))
                    for one in near
                )
            ),
        )


def _check_even(at: Path, pattern: ColourPattern, lengths: Mapping[str, int]) -> Iterator[Mistake]:
    """Whether stripes come out even round closed chains."""
    again = period(pattern)
    if again is None:
        return
    uneven = {letter: length for letter, length in lengths.items() if length % again}
    if not uneven:
        return
    kind, wrong = (
        (
            "stripes",
            mark(
                "the counts of these stripes add up to {sum}, which does not come out even round "
                "the {rings}"
            ),
        )
        if pattern.stripes
        else (
            "spiral",
            mark(
                "the counts of this spiral add up to {sum}, which does not come out even round "
                "the {rings}"
            ),
        )
    )
    rings = listed(
        message_count(
            "{number} balloon of chain {chain}",
            "{number} balloons of chain {chain}",
            length,
            chain=letter,
        )
        for letter, length in uneven.items()
    )
    even = [n for n in range(2, 2 * again) if not any(length % n for length in lengths.values())]
    yield Mistake(
        FileKind.UNEVEN_ROUND_RING,
        (*at, kind),
        message(wrong, sum=again, rings=rings),
        Suggestion(
            (
                message(
                    "or let the counts add up to {numbers}", numbers=listed(map(str, even), "or")
                ),
            )
            if even
            else (),
            (_as_list(at, pattern.stripes),) if pattern.stripes else (),
        )
        or by_hand(message("change the counts, or give stripes")),
    )
