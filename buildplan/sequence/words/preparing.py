"""Sentences of the steps up to the laying of the chains."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.place_words import place_words
from buildplan.language.grammar import capital, count_word, listed, number_ranges, sentences
from buildplan.language.speaking import mark, say, say_count
from buildplan.sequence.words.grammar import (
    Wording,
    balloons,
    chain_letters,
    locks,
    neck_knots,
    pairs,
    tail_knots,
)

# how the two ends of a ring are tied together
TAIL_TO_TAIL = mark("tail to tail")
TAIL_TO_NECK = mark("the free tail to the closed neck")
AS_THEY_ARE = mark("tail to tail, or where a chain ends in a closed neck, tail to neck")
# an order of colours that the rows give
OF_ITS_ROWS = "of its rows"


def _against_the_gauge(gauge: str) -> str:
    return say(
        "Inflate each a little past {gauge}, hold it in the {gauge} gauge and let air out"
        " until it just slips through.",
        gauge=gauge,
    )


def _all_sized(gauge: str, count: int) -> str:
    return say(
        "Each just touches both sides of the {gauge} gauge. {count} sized in all.",
        gauge=gauge,
        count=count,
    )


def side_work(first: int) -> str:
    """Work that goes on beside the main line, until the step that first needs it."""
    return say(
        "This is side work: others can do it meanwhile. Step {step} is the first to need it.",
        step=first,
    )


def size_links(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing link balloons of one kind."""
    return Wording(
        title=say_count(
            "Size {number} {colour} link balloon to {gauge}",
            "Size {number} {colour} link balloons to {gauge}",
            count,
            colour=name,
            gauge=gauge,
        ),
        text=sentences(
            say_count(
                "Take {number} {colour} link balloon ({nominal}).",
                "Take {number} {colour} link balloons ({nominal}).",
                count,
                colour=name,
                nominal=nominal,
            ),
            _against_the_gauge(gauge),
            say_count(
                "Size two, tie them as step {steps} says, then size the next two.",
                "Size two, tie them as steps {steps} say, then size the next two.",
                len(pair_steps),
                steps=number_ranges(pair_steps),
            ),
        ),
        check=_all_sized(gauge, count),
    )


def size_rounds(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing the rounds of the locks."""
    return Wording(
        title=say_count(
            "Size {number} {colour} round to {gauge}",
            "Size {number} {colour} rounds to {gauge}",
            count,
            colour=name,
            gauge=gauge,
        ),
        text=sentences(
            say_count(
                "Take {number} {colour} round ({nominal}).",
                "Take {number} {colour} rounds ({nominal}).",
                count,
                colour=name,
                nominal=nominal,
            ),
            _against_the_gauge(gauge),
            say_count(
                "Size two and tie them together at once (step {steps}).",
                "Size two and tie them together at once (steps {steps}).",
                len(pair_steps),
                steps=number_ranges(pair_steps),
            ),
        ),
        check=_all_sized(gauge, count),
    )


def _neck_to_neck() -> str:
    return say("Wrap the two necks round each other twice and tie them together, neck to neck.")


def _take_two(names: Sequence[str]) -> str:
    if names[0] == names[1]:
        return say("Take two sized {colour} balloons.", colour=names[0])
    return say(
        "Take one sized {colour} balloon and one sized {other} balloon.",
        colour=names[0],
        other=names[1],
    )


def pair_links(count: int, names: Sequence[str], long: bool) -> Wording:
    """Tying pairs of link balloons, for the long chains or for the braces."""
    if long:
        made = say_count(
            "{number} pair for the long chains", "{number} pairs for the long chains", count
        )
    else:
        made = say_count("{number} pair for the braces", "{number} pairs for the braces", count)
    return Wording(
        title=say("Tie {pairs}", pairs=made),
        text=sentences(_take_two(names), _neck_to_neck(), say("Make {pairs}.", pairs=made)),
        check=say(
            "{pairs}, {balloons} balloons. Both tails of each are free.",
            pairs=pairs(count),
            balloons=count * 2,
        ),
    )


def pair_rounds(count: int, name: str) -> Wording:
    """Tying rounds two by two: each pair is a lock."""
    return Wording(
        title=say("Tie {locks}", locks=locks(count)),
        text=sentences(
            say("Take two sized {colour} rounds.", colour=name),
            _neck_to_neck(),
            say("This pair of rounds is a lock. Make {locks}.", locks=locks(count)),
        ),
        check=say("{locks}, {rounds} rounds, two and two.", locks=locks(count), rounds=count * 2),
    )


def tie_off(
    count: int, name: str, for_chains: Sequence[str], for_braces: int, singles: int
) -> Wording:
    """Closing the necks of link balloons that have no partner."""
    uses = []
    if for_chains:
        uses.append(
            say_count(
                "{number} ends chain {letters}",
                "{number} end chains {letters}, one each",
                len(for_chains),
                letters=chain_letters(for_chains),
            )
        )
    if for_braces:
        uses.append(say_count("{number} goes into a brace", "{number} go into braces", for_braces))
    if singles:
        uses.append(say_count("{number} is a single", "{number} are singles", singles))
    return Wording(
        title=say_count(
            "Tie off {number} {colour} balloon alone",
            "Tie off {number} {colour} balloons alone",
            count,
            colour=name,
        ),
        text=sentences(
            say_count("This balloon has no partner.", "These balloons have no partner.", count),
            say_count(
                "Close the neck of the sized balloon with a knot of its own.",
                "Close the neck of each sized balloon with a knot of its own.",
                count,
            ),
            f"{capital(listed(uses))}.",
        ),
        check=say_count(
            "{number} {colour} balloon closed, neck and tail free to tie.",
            "{number} {colour} balloons closed, neck and tail free to tie.",
            count,
            colour=name,
        ),
    )


def long_chains(letters: Sequence[str], length: int, colour_order: str, run_pairs: int) -> Wording:
    """Tying long chains from pairs, tail to tail.

    `colour_order` is empty when all balloons are the same, and OF_ITS_ROWS when the rows give it;
    `run_pairs` is the number of pairs tied into a run before the runs are tied together (0: all in
    one go).
    """
    count, (whole_pairs, odd) = len(letters), divmod(length, 2)
    return Wording(
        title=say_count(
            "Make {number} chain of {length}: {letters}",
            "Make {number} chains of {length}: {letters}",
            count,
            length=length,
            letters=chain_letters(letters),
        ),
        text=sentences(
            *_long_chain(count, whole_pairs, bool(odd)),
            _runs(whole_pairs, run_pairs),
            _colour_order(colour_order),
        ),
        check=_chain_check(count, length),
    )


def _long_chain(count: int, whole_pairs: int, odd: bool) -> list[str]:
    """How each of `count` long chains is tied."""
    if not whole_pairs:
        return [
            say_count(
                "Take one balloon that was tied off alone.",
                "For each, take one balloon that was tied off alone.",
                count,
            )
        ]
    if whole_pairs == 1:
        made = say_count("Take one pair.", "For each, take one pair.", count)
    else:
        made = say_count(
            "Tie {pairs} pairs in a row, tail to tail, with a double knot.",
            "For each, tie {pairs} pairs in a row, tail to tail, with a double knot.",
            count,
            pairs=whole_pairs,
        )
    if not odd:
        return [made]
    return [
        made,
        say(
            "Tie the tail of a balloon that was tied off alone to the last free tail; its closed"
            " neck stays free."
        ),
    ]


def _chain_check(count: int, length: int) -> str:
    whole_pairs, odd = divmod(length, 2)
    ends = say("one free tail and one free neck") if odd else say("a free tail at either end")
    return say_count(
        "The chain has {balloons}, {neck_knots} and {tail_knots}, {ends}.",
        "Each chain has {balloons}, {neck_knots} and {tail_knots}, {ends}.",
        count,
        balloons=balloons(length),
        neck_knots=neck_knots(whole_pairs),
        tail_knots=tail_knots(max(whole_pairs - 1 + odd, 0)),
        ends=ends,
    )


def _colour_order(order: str) -> str:
    if order == OF_ITS_ROWS:
        return say("Keep to the order of colours that the rows give, from the first joint on.")
    return say("Keep to the order of colours, from joint 1: {order}.", order=order) if order else ""


def _runs(whole_pairs: int, run_pairs: int) -> str:
    if not run_pairs:
        return ""
    full, over = divmod(whole_pairs, run_pairs)
    runs = say_count(
        "{number} run of {pairs}", "{number} runs of {pairs}", full, pairs=pairs(run_pairs)
    )
    if over:
        return say(
            "To keep count, first tie {runs} and one of {pairs}, then tie the runs together.",
            runs=runs,
            pairs=pairs(over),
        )
    return say("To keep count, first tie {runs}, then tie the runs together.", runs=runs)


def short_chains(count: int, length: int, colour: str, braces: Sequence[int]) -> Wording:
    """Tying the short chains that are led round as braces."""
    chains = chains_of(count, length, colour)
    if length % 2:
        check = say_count(
            "{number} chain, with one tail and one closed neck free.",
            "{number} chains, each with one tail and one closed neck free.",
            count,
        )
    else:
        check = say_count(
            "{number} chain, with both end tails free.",
            "{number} chains, each with both end tails free.",
            count,
        )
    return Wording(
        title=say("Make {chains}", chains=chains),
        text=sentences(
            *_short_chain(length),
            say_count(
                "Make {chains}, for brace {braces}.",
                "Make {chains}, for braces {braces}.",
                len(braces),
                chains=chains,
                braces=number_ranges(braces),
            ),
        ),
        check=check,
    )


def chains_of(count: int, length: int, colour: str) -> str:
    """`30 chains of four ivory balloons`."""
    return say_count(
        "{number} chain of {length} {colour} balloons",
        "{number} chains of {length} {colour} balloons",
        count,
        length=count_word(length),
        colour=colour,
    )


def _short_chain(length: int) -> list[str]:
    """How a short chain is tied."""
    whole_pairs, odd = divmod(length, 2)
    if whole_pairs == 1:
        return [
            say(
                "Tie a balloon that was tied off alone to a pair, tail to tail, with a double knot;"
                " its closed neck stays free."
            )
        ]
    return [
        say(
            "Tie {pairs} pairs in a row, tail to tail, with a double knot.",
            pairs=count_word(whole_pairs),
        ),
        say("Tie one balloon that was tied off alone to the end by its tail.") if odd else "",
    ]


def close_rings(
    letters: Sequence[str], how: str, counts: Sequence[tuple[int, int, int]]
) -> Wording:
    """Tying the free ends of chains together; counts are balloons, neck knots and tail knots
    of each ring."""
    number, necks, tails = counts[0]
    check = _ring_rows_check()
    if len(set(counts)) == 1:
        check = say_count(
            "The ring has {balloons}, {neck_knots} and {tail_knots}, and no free end.",
            "Each ring has {balloons}, {neck_knots} and {tail_knots}, and no free end.",
            len(letters),
            balloons=balloons(number),
            neck_knots=neck_knots(necks),
            tail_knots=tail_knots(tails),
        )
    return Wording(
        title=_close_title(letters),
        text=sentences(
            _without_a_twist(len(letters)),
            say("Tie its two free ends together, {how}, with a double knot.", how=say(how)),
            say("This knot is joint 1 of the ring."),
        ),
        check=check,
    )


def close_listed_rings(letters: Sequence[str]) -> Wording:
    """The same, for chains whose joints have names of their own."""
    return Wording(
        title=_close_title(letters),
        text=sentences(
            _without_a_twist(len(letters)),
            say("Tie its two free ends together with a double knot, at the joint of its row."),
        ),
        check=_ring_rows_check(),
    )


def _close_title(letters: Sequence[str]) -> str:
    return say_count(
        "Close ring {letters}",
        "Close rings {letters}",
        len(letters),
        letters=chain_letters(letters),
    )


def _without_a_twist(count: int) -> str:
    return say_count(
        "Lay the chain out without a twist.", "Lay each chain out without a twist.", count
    )


def _ring_rows_check() -> str:
    return say("Each ring has as many balloons as its row says, and no free end.")


def tag_counted(closed: bool, lasts: Sequence[str], both: bool = False) -> Wording:
    """Tagging joints whose labels count along each chain; `lasts` is the last joint of each
    chain, `both` says that some chains are closed and some open."""
    last_joints = listed(lasts)
    if both:
        start = say("its closing knot, or if it is open at the tail that is to be joint 1,")
        check = say(
            "Even numbers are neck knots. The last joints are {joints}.", joints=last_joints
        )
    elif closed:
        start = say("its closing knot")
        check = say(
            "Even numbers are neck knots. The knots just before joint 1 are {joints}.",
            joints=last_joints,
        )
    else:
        start = say("the tail that is to be joint 1")
        check = say("Even numbers are neck knots. The far ends are {joints}.", joints=last_joints)
    return Wording(
        title=say("Tag the joints"),
        text=say(
            "On each chain start at {start} and count the knots, all chains the same way round as"
            " on the joint map. Fasten a paper tag at every joint of its row. A joint without a"
            " tag is counted on from the tag before it.",
            start=start,
        ),
        check=check,
    )


def tag_named() -> Wording:
    """Tagging every joint of chains whose joints have names of their own."""
    return Wording(
        title=say("Tag the joints"),
        text=say(
            "Go along each chain from one end, knot by knot, and fasten a paper tag to every knot"
            " and every free end, with the names of its row in their order. A name may come more"
            " than once: those knots are brought together later."
        ),
        check=say("Every knot and every free end has a tag."),
    )


def lay_beside(order: Sequence[str], firsts: Sequence[str], closed: bool, layers: bool) -> Wording:
    """Laying the long chains of a tube in place, flat."""
    together = listed(firsts)
    if closed:
        title = say("Lay the rings in place")
        together_now = say(
            "Bring joints {joints} together. All numbers run the same way round.", joints=together
        )
    else:
        title = say("Lay the chains in place")
        together_now = say(
            "Bring joints {joints} together. All numbers run the same way.", joints=together
        )
    return Wording(
        title=title,
        text=sentences(
            _clear_the_floor(),
            say(_lay_flat(closed, layers), order=_one_after_another(order)),
            say("Inner chains go inside the outer ones.") if closed else "",
            together_now,
        ),
        check=say("Joints {joints} lie together, and no chain is twisted.", joints=together),
    )


def lay_outlines(order: Sequence[str], pairs: Sequence[tuple[str, str]]) -> Wording:
    """Laying the outlines of a letter, the back ones first; each of `pairs` is the first joint of
    an outline of the front and the one behind it."""
    on_one_another = listed([say("{front} on {back}", front=f, back=b) for f, b in pairs])
    return Wording(
        title=say("Lay the rings in place"),
        text=sentences(
            _clear_the_floor(),
            say(_lay_flat(closed=True, layers=True), order=_one_after_another(order)),
            say("Inner chains go inside the outer ones."),
            say("Lay joint on joint: {joints}, and so on round each ring.", joints=on_one_another),
        ),
        check=say(
            "Every joint of the front lies on its joint of the back, and no chain is twisted."
        ),
    )


def _clear_the_floor() -> str:
    return say("Clear and sweep a floor larger than the piece.")


def _lay_flat(closed: bool, layers: bool) -> str:
    """A marked message."""
    if closed and layers:
        return mark("Lay the rings flat, the back ones first: {order}.")
    if closed:
        return mark("Lay the rings flat: {order}.")
    if layers:
        return mark("Lay the chains flat, the back ones first: {order}.")
    return mark("Lay the chains flat: {order}.")


def _one_after_another(things: Sequence[str]) -> str:
    """`A, then B, then C`."""
    order = things[0]
    for thing in things[1:]:
        order = say("{before}, then {after}", before=order, after=thing)
    return order


def place_of_chain(letter: str, place: str, on: str) -> str:
    """Where one chain is laid; `place` is `LongChain.place`, `on` the chain under it, if any."""
    where = place_words(place)
    if on:
        return say("{letter} ({place}) on top of {other}", letter=letter, place=where, other=on)
    return f"{letter} ({where})"


def lay_apart(letters: Sequence[str]) -> Wording:
    """Laying out chains that meet at named joints."""
    return Wording(
        title=say_count(
            "Lay out chain {letters}",
            "Lay out chains {letters}",
            len(letters),
            letters=chain_letters(letters),
        ),
        text=sentences(
            _clear_the_floor(),
            say(
                "Lay the chains down in the order of their letters, loosely, so that knots of the"
                " same name come near one another."
            ),
        ),
        check=say_count(
            "{number} chain on the floor, every tag in sight.",
            "{number} chains on the floor, every tag in sight.",
            len(letters),
        ),
    )
