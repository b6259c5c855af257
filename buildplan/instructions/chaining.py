"""Telling the tying of chains: long ones, and the short ones that braces are made of."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from buildplan.instructions import names, rows
from buildplan.instructions.chain_pairs import pairs_of_each, turned_pairs
from buildplan.instructions.chain_tags import waiting_tags
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import balloons, chain_letters, colours, neck_knots, tail_knots
from buildplan.instructions.model import RowWords, TurnWords, Wording
from buildplan.language.phrases import count_word, sentences
from buildplan.language.voice import Voice
from buildplan.sequence.chains import numbered_round
from buildplan.sequence.colour_order import colour_runs, is_long, sections
from buildplan.sequence.grouping import is_for_courses
from buildplan.sequence.model import Operation, Step, Turn

# Pairs tied into a run, so that counts are kept; and the longest chain that is tied without.
RUN_PAIRS = 4
FEWEST_COUNTED = 4  # joints of a ring that are told from the first to the last
LONGEST_WITHOUT_RUNS = 12


def chain(context: Context, step: Step) -> Wording:
    """Tying long chains, or the short chains of braces."""
    first = step.operations[0]
    if is_for_courses(context.piece, first) and len(step.turns) == 1:
        return _stock(context, step)
    if first.links[0] in context.piece.long_links:
        return _long_chains(context, step)
    return _short_chains(context, step)


def _stock(context: Context, step: Step) -> Wording:
    """Tying chains that are all alike, to be taken one by one later."""
    voice, links = context.voice, step.operations[0].links
    whole_pairs, odd = divmod(len(links), 2)
    letters = [context.long_of(operation).letter for operation in step.operations]
    return Wording(
        title=voice.say_count(
            "Make {number} chain of {length} ({order}): {letters}",
            "Make {number} chains of {length} ({order}): {letters}",
            step.times,
            length=len(links),
            order=_order(context, links),
            letters=chain_letters(voice, letters),
        ),
        text=sentences(
            *_long_chain(voice, step.times, whole_pairs, bool(odd)),
            waiting_tags(context, step),
            *_bagged(context, step),
        ),
        check=_long_check(voice, step.times, len(links)),
    )


def _bagged(context: Context, step: Step) -> Iterator[str]:
    """In which bag chains go that are alike, where they are for several parts."""
    voice = context.voice
    firsts = (context.long_of(operation).chain.joints[0] for operation in step.operations)
    counts = Counter(part.name for part in map(context.framework.part_at, firsts) if part)
    if len(counts) > 1:
        yield voice.say(
            "Bag them by part, its name on the bag: {counts}.",
            counts=voice.listed(
                [
                    voice.say("{count} for {part}", count=count, part=part)
                    for part, count in counts.items()
                ]
            ),
        )


def _order(context: Context, links: Sequence[str]) -> str:
    return colours(context.voice, *colour_runs(context.names_of(links)))


def _long_chains(context: Context, step: Step) -> Wording:
    voice, length = context.voice, len(step.operations[0].links)
    letters = [context.long_of(operation).letter for operation in step.operations]
    whole_pairs, odd = divmod(length, 2)
    return Wording(
        title=voice.say_count(
            "Make {number} chain of {length}: {letters}",
            "Make {number} chains of {length}: {letters}",
            len(letters),
            length=length,
            letters=chain_letters(voice, letters),
        ),
        text=sentences(
            *_long_chain(voice, len(letters), whole_pairs, bool(odd)),
            _runs(voice, whole_pairs) if length > LONGEST_WITHOUT_RUNS else "",
            _colour_order(context, step),
            *pairs_of_each(context, step),
            *turned_pairs(context, step),
            waiting_tags(context, step),
        ),
        check=_long_check(voice, len(letters), length),
    )


def _long_chain(voice: Voice, count: int, whole_pairs: int, odd: bool) -> list[str]:
    """How each of `count` long chains is tied."""
    if not whole_pairs:
        return [
            voice.say_count(
                "Take one balloon that was tied off alone.",
                "For each, take one balloon that was tied off alone.",
                count,
            )
        ]
    if whole_pairs == 1:
        made = voice.say_count("Take one pair.", "For each, take one pair.", count)
    else:
        made = voice.say_count(
            "Tie {pairs} pairs in a row, tail to tail, with a double knot.",
            "For each, tie {pairs} pairs in a row, tail to tail, with a double knot.",
            count,
            pairs=whole_pairs,
        )
    if not odd:
        return [made]
    return [
        made,
        voice.say(
            "Tie the tail of a balloon that was tied off alone to the last free tail; its closed"
            " neck stays free."
        ),
    ]


def _runs(voice: Voice, whole_pairs: int) -> str:
    full, over = divmod(whole_pairs, RUN_PAIRS)
    if over:
        return voice.say_count(
            "To keep count, first tie {number} run of {pairs} pairs and one of the rest, then tie"
            " the runs together.",
            "To keep count, first tie {number} runs of {pairs} pairs and one of the rest, then tie"
            " the runs together.",
            full,
            pairs=RUN_PAIRS,
        )
    return voice.say_count(
        "To keep count, first tie {number} run of {pairs} pairs, then tie the runs together.",
        "To keep count, first tie {number} runs of {pairs} pairs, then tie the runs together.",
        full,
        pairs=RUN_PAIRS,
    )


def _colour_order(context: Context, step: Step) -> str:
    voice = context.voice
    orders = {tuple(context.names_of(operation.links)) for operation in step.operations}
    called = context.names_of(step.operations[0].links)
    if len(orders) > 1 or is_long(called):
        return voice.say(
            "Keep to the order of colours that the rows give, from the first joint on."
        )
    runs, over = colour_runs(called)
    if len(runs) == 1:
        return ""
    return voice.say(
        "Keep to the order of colours, from joint 1: {order}.", order=colours(voice, runs, over)
    )


def _long_check(voice: Voice, count: int, length: int) -> str:
    whole_pairs, odd = divmod(length, 2)
    counts = {
        "balloons": balloons(voice, length),
        "neck_knots": neck_knots(voice, whole_pairs),
        "tail_knots": tail_knots(voice, max(whole_pairs - 1 + odd, 0)),
    }
    if odd:
        return voice.say_count(
            "The chain has {balloons}, {neck_knots} and {tail_knots}, one free tail and one free"
            " neck.",
            "Each chain has {balloons}, {neck_knots} and {tail_knots}, one free tail and one free"
            " neck.",
            count,
            **counts,
        )
    return voice.say_count(
        "The chain has {balloons}, {neck_knots} and {tail_knots}, a free tail at either end.",
        "Each chain has {balloons}, {neck_knots} and {tail_knots}, a free tail at either end.",
        count,
        **counts,
    )


def _short_chains(context: Context, step: Step) -> Wording:
    voice, links = context.voice, step.operations[0].links
    return Wording(
        title=voice.say_count(
            "Make {number} chain of {length} {colour} balloons for the braces",
            "Make {number} chains of {length} {colour} balloons for the braces",
            step.times,
            length=count_word(voice, len(links)),
            colour=context.balloons_of(links),
        ),
        text=_short_chain(voice, len(links)),
        check=_short_check(voice, step.times, len(links)),
    )


def _short_chain(voice: Voice, length: int) -> str:
    """How a short chain is tied."""
    whole_pairs, odd = divmod(length, 2)
    if whole_pairs == 1:
        return voice.say(
            "Tie a balloon that was tied off alone to a pair, tail to tail, with a double knot;"
            " its closed neck stays free."
        )
    return sentences(
        voice.say(
            "Tie {pairs} pairs in a row, tail to tail, with a double knot.",
            pairs=count_word(voice, whole_pairs),
        ),
        voice.say("Tie one balloon that was tied off alone to the end by its tail.") if odd else "",
    )


def _short_check(voice: Voice, count: int, length: int) -> str:
    if length % 2:
        return voice.say_count(
            "{number} chain, with one tail and one closed neck free.",
            "{number} chains, each with one tail and one closed neck free.",
            count,
        )
    return voice.say_count(
        "{number} chain, with both end tails free.",
        "{number} chains, each with both end tails free.",
        count,
    )


def chain_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Chain A: 40 balloons (all deep blue), joints A1 to A40 and back to A1`."""
    voice, operation, count = context.voice, turn.operations[0], len(turn.operations)
    links = operation.links
    if is_for_courses(context.piece, operation) and len(step.turns) == 1:
        row = rows.chains_in_order(voice, count, len(links), _order(context, links))
        return TurnWords("", (row,))
    if links[0] not in context.piece.long_links:
        colour = context.balloons_of(links)
        return TurnWords("", (rows.short_chains(voice, count, len(links), colour),))
    return chain_rows_of(context, operation, step.operations[0])


def chain_rows_of(context: Context, operation: Operation, first: Operation | None) -> TurnWords:
    """What a chain is made of, and its joints; a long order of colours is told of the chain
    `first` alone, with which it is alike."""
    voice, long, links = context.voice, context.long_of(operation), operation.links
    joints = long.chain.joints
    way = rows.along(operation.joints)
    counted = numbered_round(long) and len(joints) >= FEWEST_COUNTED
    if counted or context.piece.counts_along(long):
        way = rows.counted(voice, joints[0], joints[-1], joints[0] if long.chain.closed else "")
    name = names.chain_name(voice, long.letter)
    called = context.names_of(links)
    below: Sequence[RowWords] = ()
    if not is_long(called):
        order = _order(context, links)
    elif first is None or first is operation:
        order = rows.by_sections(voice)
        below = [
            rows.section(voice, name, begin, end, colours(voice, *colour_runs(part)))
            for begin, end, part in sections(called)
        ]
    else:
        order = rows.as_chain(voice, context.long_of(first).letter)
    return TurnWords(name, (rows.chain(voice, name, len(links), order, way), *below))
