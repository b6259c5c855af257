"""Telling the sizing of balloons, the tying of pairs, and the balloons without a partner."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.design.measures import gauged_words, nominal_words
from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.instructions import rows
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.instructions.model import RowWords, TurnWords, Wording
from buildplan.instructions.moves import Hand
from buildplan.instructions.read_back import TAKE_LINKS, TAKE_ROUNDS
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step, Turn


@dataclass(frozen=True)
class _Sized:
    """Balloons of one kind that are sized: how many, what they are called, from what size as
    bought, and to which gauge."""

    count: int
    name: str
    nominal: str
    gauge: str


def _sizing(context: Context, step: Step) -> list[_Sized]:
    """What is sized in a step: of each kind of balloon how many, and to what."""
    counts: Counter[str] = Counter()
    for operation in step.of_kind(Kind.SIZE):
        counts[operation.balloon] += len(operation.links) + BALLOONS_PER_LOCK * len(operation.locks)
    balloons, units = context.framework.balloons, context.units
    return [
        _Sized(
            count,
            context.names[key],
            context.voice.tell(nominal_words(balloons[key].nominal_m, units)),
            context.voice.tell(gauged_words(balloons[key].gauge_m, units)),
        )
        for key, count in counts.items()
    ]


def _take_links(voice: Voice, sized: _Sized) -> str:
    return voice.say_count(
        *TAKE_LINKS,
        sized.count,
        colour=sized.name,
        nominal=sized.nominal,
        gauge=sized.gauge,
    )


def _take_rounds(voice: Voice, sized: _Sized) -> str:
    return voice.say_count(
        *TAKE_ROUNDS,
        sized.count,
        colour=sized.name,
        nominal=sized.nominal,
        gauge=sized.gauge,
    )


def _size(context: Context, step: Step) -> str:
    """How a balloon is sized, where it is new."""
    if context.teacher(Hand.SIZE, step) is not None:
        return ""
    return context.voice.say(
        "Inflate each a little past its gauge, hold it in the gauge and let air out until it just"
        " slips through."
    )


def _right(context: Context, step: Step) -> list[str]:
    """What sized and tied balloons are like, each told where its move is new."""
    voice, teacher = context.voice, context.teacher
    told = []
    if teacher(Hand.SIZE, step) is None:
        told.append(voice.say("Each slips through its gauge without being pushed."))
    if step.kind is Kind.PAIR and teacher(Hand.TIE_PAIR, step) is None:
        told.append(voice.say("Pulled gently, no knot moves."))
    if step.kind is Kind.TIE_OFF and teacher(Hand.TIE_OFF, step) is None:
        told.append(voice.say("A finger's width of neck stands free beyond each knot."))
    return told


def _two_by_two(context: Context, step: Step, mixed: bool) -> str:
    """How two balloons are tied, where it is new."""
    say, taught = context.voice.say, context.teacher(Hand.TIE_PAIR, step)
    if taught is not None:
        if mixed:
            return say("Size and tie one of each, as in step {step}.", step=taught)
        return say("As in step {step}.", step=taught)
    held = (
        say(
            "Size one of each: twist the neck of the first and hold it shut between two fingers"
            " while you size the second."
        )
        if mixed
        else say("Size one, twist its neck and hold it shut while you size the second.")
    )
    return sentences(
        held,
        say(
            "A neck in each hand, lead the first twice round the other, back under its own second"
            " turn, and pull both snug."
        ),
    )


def pair(context: Context, step: Step) -> Wording:
    """Sizing and tying pairs of links, or locks."""
    tied = step.of_kind(Kind.PAIR)
    return _pair_rounds(context, step) if tied[0].locks else _pair_links(context, step)


def _pair_links(context: Context, step: Step) -> Wording:
    voice, count = context.voice, len(step.of_kind(Kind.PAIR))
    sized = _sizing(context, step)
    return Wording(
        title=_pairs_title(context, step, count),
        text=sentences(
            *(_take_links(voice, one) for one in sized),
            _size(context, step),
            _two_by_two(context, step, mixed=len(sized) > 1),
        ),
        check=sentences(
            *_right(context, step),
            voice.say_count(
                "{number} pair; both its tails are free.",
                "{number} pairs; both tails of each are free.",
                count,
            ),
        ),
    )


def _pairs_title(context: Context, step: Step, count: int) -> str:
    """What pairs are for, and their colours where other pairs are for the same."""
    voice = context.voice
    for_long = _for_long_chains(context, step)
    alike = [
        other
        for other in context.steps
        if other.kind is Kind.PAIR
        and not other.of_kind(Kind.PAIR)[0].locks
        and _for_long_chains(context, other) == for_long
    ]
    if len(alike) > 1:
        colours = context.balloons_of(step.of_kind(Kind.PAIR)[0].links)
        return _coloured_title(voice, count, for_long, colours)
    if for_long:
        return voice.say_count(
            "Size and tie {number} pair for the long chains",
            "Size and tie {number} pairs for the long chains",
            count,
        )
    return voice.say_count(
        "Size and tie {number} pair for the braces",
        "Size and tie {number} pairs for the braces",
        count,
    )


def _for_long_chains(context: Context, step: Step) -> bool:
    return step.of_kind(Kind.PAIR)[0].links[0] in context.piece.long_links


def _coloured_title(voice: Voice, count: int, for_long: bool, colours: str) -> str:
    if for_long:
        return voice.say_count(
            "Size and tie {number} pair for the long chains: {colours}",
            "Size and tie {number} pairs for the long chains: {colours}",
            count,
            colours=colours,
        )
    return voice.say_count(
        "Size and tie {number} pair for the braces: {colours}",
        "Size and tie {number} pairs for the braces: {colours}",
        count,
        colours=colours,
    )


def _pair_rounds(context: Context, step: Step) -> Wording:
    voice, count = context.voice, len(step.of_kind(Kind.PAIR))
    return Wording(
        title=voice.say_count("Size and tie {number} lock", "Size and tie {number} locks", count),
        text=sentences(
            *(_take_rounds(voice, one) for one in _sizing(context, step)),
            _size(context, step),
            _two_by_two(context, step, mixed=False),
        ),
        check=sentences(
            *_right(context, step),
            voice.say_count(
                "{number} lock, two rounds to it.", "{number} locks, two rounds to each.", count
            ),
        ),
    )


def pair_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`80 pairs, deep blue with deep blue`."""
    tied = step.of_kind(Kind.PAIR)
    if tied[0].locks:
        return _alone(
            rows.lock_pairs(context.voice, len(tied), context.lock_name(tied[0].locks[0]))
        )
    names = sorted(context.names_of(tied[0].links))
    return _alone(rows.link_pairs(context.voice, len(tied), *names))


def _alone(row: RowWords) -> TurnWords:
    return TurnWords("", (row,))


def tie_off(context: Context, step: Step) -> Wording:
    """Sizing link balloons that have no partner, and closing their necks."""
    voice = context.voice
    links = [operation.links[0] for operation in step.of_kind(Kind.TIE_OFF)]
    count, sized = len(links), _sizing(context, step)[0]
    return Wording(
        title=voice.say_count(
            "Size {number} {colour} balloon and tie it off alone",
            "Size {number} {colour} balloons and tie each off alone",
            count,
            colour=sized.name,
        ),
        text=sentences(
            _take_links(voice, sized),
            _size(context, step),
            voice.say("Close each neck with a knot of its own."),
            *_uses(context, links),
        ),
        check=sentences(
            *_right(context, step),
            voice.say_count(
                "{number} {colour} balloon closed, neck and tail free to tie.",
                "{number} {colour} balloons closed, neck and tail free to tie.",
                count,
                colour=sized.name,
            ),
        ),
    )


def _uses(context: Context, links: Sequence[str]) -> list[str]:
    """What balloons without a partner are for, each use a sentence."""
    voice = context.voice
    alone = frozenset(context.piece.alone)
    ended = [context.odd[link] for link in links if link in context.odd]
    letters = [letter for letter in ended if letter not in alone]
    between = len(ended) - len(letters)
    singles = len(context.piece.singles.intersection(links))
    in_braces = len(links) - len(ended) - singles
    uses = []
    if letters:
        uses.append(
            voice.say_count(
                "{number} ends chain {letters}.",
                "{number} end chains {letters}, one each.",
                len(letters),
                letters=chain_letters(voice, letters),
            )
        )
    if between:
        uses.append(
            voice.say_count(
                "{number} is tied in between two joints as it is, and is called by them.",
                "{number} are tied in between two joints as they are, and are called by them.",
                between,
            )
        )
    if in_braces:
        uses.append(
            voice.say_count("{number} goes into a brace.", "{number} go into braces.", in_braces)
        )
    if singles:
        uses.append(voice.say_count("{number} is a single.", "{number} are singles.", singles))
    return uses


def tie_off_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`20 ivory balloons tied off alone`."""
    tied = step.of_kind(Kind.TIE_OFF)
    return _alone(rows.tied_off(context.voice, len(tied), context.names_of(tied[0].links)[0]))
