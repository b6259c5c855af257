"""Sentences of the steps up to the laying of the chains."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import capital, count_word, listed, sentences
from buildplan.sequence.words.grammar import Wording, noun, numbered, several

TAIL_TO_TAIL = "tail to tail"
TAIL_TO_NECK = "the free tail to the closed neck"
OF_ITS_ROWS = "as the rows say"
AS_THEY_ARE = "tail to tail, or where a chain ends in a closed neck, tail to neck"


def _against_the_gauge(gauge: str) -> str:
    return (
        f"Inflate each a little past {gauge}, hold it in the {gauge} gauge and let air out"
        " until it just slips through."
    )


def side_work(first: int) -> str:
    """Work that goes on beside the main line, until the step that first needs it."""
    return f"This is side work: others can do it meanwhile. Step {first} is the first to need it."


def size_links(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing link balloons of one kind."""
    balloons = f"{name} link {noun(count, 'balloon')}"
    says = noun(len(pair_steps), "says", "say")
    return Wording(
        title=f"Size {count} {balloons} to {gauge}",
        text=sentences(
            f"Take {count} {balloons} ({nominal}).",
            _against_the_gauge(gauge),
            f"Size two, tie them as {numbered('step', pair_steps)} {says}, then size the next two.",
        ),
        check=f"Each just touches both sides of the {gauge} gauge. {count} sized in all.",
    )


def size_rounds(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing the rounds of the locks."""
    rounds = f"{name} {noun(count, 'round')}"
    return Wording(
        title=f"Size {count} {rounds} to {gauge}",
        text=sentences(
            f"Take {count} {rounds} ({nominal}).",
            _against_the_gauge(gauge),
            f"Size two and tie them together at once ({numbered('step', pair_steps)}).",
        ),
        check=f"Each just touches both sides of the {gauge} gauge. {count} sized in all.",
    )


def _two(names: Sequence[str], of: str) -> str:
    if names[0] == names[1]:
        return f"two sized {names[0]} {of}s"
    return f"one sized {names[0]} {of} and one sized {names[1]} {of}"


_NECK_TO_NECK = "Wrap the two necks round each other twice and tie them together, neck to neck."


def pair_links(count: int, names: Sequence[str], long: bool) -> Wording:
    """Tying pairs of link balloons, for the long chains or for the braces."""
    pairs = f"{several(count, 'pair')} for the {'long chains' if long else 'braces'}"
    return Wording(
        title=f"Tie {pairs}",
        text=f"Take {_two(names, 'balloon')}. {_NECK_TO_NECK} Make {pairs}.",
        check=f"{several(count, 'pair')}, {count * 2} balloons. Both tails of each are free.",
    )


def pair_rounds(count: int, name: str) -> Wording:
    """Tying rounds two by two: each pair is a lock."""
    locks = several(count, "lock")
    return Wording(
        title=f"Tie {locks}",
        text=(
            f"Take {_two((name, name), 'round')}. {_NECK_TO_NECK} This pair of rounds is a lock."
            f" Make {locks}."
        ),
        check=f"{locks}, {count * 2} rounds, two and two.",
    )


def tie_off(
    count: int, name: str, for_chains: Sequence[str], for_braces: int, singles: int
) -> Wording:
    """Closing the necks of link balloons that have no partner."""
    uses = [f"one ends chain {letter}" for letter in for_chains]
    if for_braces:
        uses.append(f"{for_braces} {noun(for_braces, 'goes into a brace', 'go into braces')}")
    if singles:
        uses.append(f"{singles} {noun(singles, 'is a single', 'are singles')}")
    balloons = f"{name} {noun(count, 'balloon')}"
    return Wording(
        title=f"Tie off {count} {balloons} alone",
        text=sentences(
            noun(count, "This balloon has no partner.", "These balloons have no partner."),
            f"Close the neck of {noun(count, 'the', 'each')} sized balloon with a knot of its own.",
            f"{capital(listed(uses))}.",
        ),
        check=f"{count} {balloons} closed, neck and tail free to tie.",
    )


def long_chains(letters: Sequence[str], length: int, colour_order: str, run_pairs: int) -> Wording:
    """Tying long chains from pairs, tail to tail.

    `colour_order` is empty when all balloons are the same, and OF_ITS_ROWS when the rows give it;
    `run_pairs` is the number of
    pairs tied into a run before the runs are tied together (0: all in one go).
    """
    count, (pairs, odd) = len(letters), divmod(length, 2)
    each = "For each, " if count > 1 else ""
    if length == 1:
        text = capital(f"{each}take one balloon that was tied off alone.")
    elif pairs == 1:
        text = capital(f"{each}take one pair.")
    else:
        text = capital(f"{each}tie {pairs} pairs in a row, tail to tail, with a double knot.")
    if odd and pairs:
        text += (
            " Tie the tail of a balloon that was tied off alone to the last free tail; its closed"
            " neck stays free."
        )
    ends = "one free tail and one free neck" if odd else "a free tail at either end"
    return Wording(
        title=f"Make {several(count, 'chain')} of {length}: {listed(letters)}",
        text=sentences(
            text,
            _runs(pairs, run_pairs),
            _colour_order(colour_order),
        ),
        check=(
            f"{noun(count, 'The chain', 'Each chain')} has {several(length, 'balloon')},"
            f" {several(pairs, 'neck knot')} and {several(max(pairs - 1 + odd, 0), 'tail knot')},"
            f" {ends}."
        ),
    )


def _colour_order(order: str) -> str:
    if order == OF_ITS_ROWS:
        return "Keep to the order of colours that the rows give, from the first joint on."
    return f"Keep to the order of colours, from joint 1: {order}." if order else ""


def _runs(pairs: int, run_pairs: int) -> str:
    if not run_pairs:
        return ""
    full, over = divmod(pairs, run_pairs)
    rest = f" and one of {several(over, 'pair')}" if over else ""
    return (
        f"To keep count, first tie {several(full, 'run')} of {several(run_pairs, 'pair')}{rest},"
        " then tie the runs together."
    )


def short_chains(count: int, length: int, balloons: str, braces: Sequence[int]) -> Wording:
    """Tying the short chains that are led round as braces."""
    pairs, odd = divmod(length, 2)
    if pairs == 1:
        how = (
            "Tie a balloon that was tied off alone to a pair, tail to tail, with a double knot; its"
            " closed neck stays free."
        )
    else:
        how = f"Tie {count_word(pairs)} pairs in a row, tail to tail, with a double knot."
        if odd:
            how += " Tie one balloon that was tied off alone to the end by its tail."
    ends = "one tail and one closed neck free" if odd else "both end tails free"
    of = f"of {count_word(length)} {balloons} balloons"
    chains = f"{several(count, 'chain')} {of}"
    return Wording(
        title=f"Make {chains}",
        text=f"{how} Make {chains}, for {numbered('brace', braces)}.",
        check=f"{several(count, 'chain')}, {noun(count, 'with', 'each with')} {ends}.",
    )


def close_rings(
    letters: Sequence[str], how: str, counts: Sequence[tuple[int, int, int]]
) -> Wording:
    """Tying the free ends of chains together; counts are balloons, neck knots and tail knots
    of each ring."""
    many = len(letters) > 1
    balloons, necks, tails = counts[0]
    check = "Each ring has as many balloons as its row says, and no free end."
    if len(set(counts)) == 1:
        check = (
            f"{'Each' if many else 'The'} ring has {balloons} balloons,"
            f" {several(necks, 'neck knot')} and {several(tails, 'tail knot')}, and no free end."
        )
    return Wording(
        title=f"Close {noun(len(letters), 'ring')} {listed(letters)}",
        text=(
            f"Lay {'each' if many else 'the'} chain out without a twist. Tie its two free ends"
            f" together, {how}, with a double knot. This knot is joint 1 of the ring."
        ),
        check=check,
    )


def close_listed_rings(letters: Sequence[str]) -> Wording:
    """The same, for chains whose joints have names of their own."""
    many = len(letters) > 1
    return Wording(
        title=f"Close {noun(len(letters), 'ring')} {listed(letters)}",
        text=(
            f"Lay {'each' if many else 'the'} chain out without a twist. Tie its two free ends"
            " together with a double knot, at the joint of its row."
        ),
        check="Each ring has as many balloons as its row says, and no free end.",
    )


def tag_counted(closed: bool, lasts: Sequence[str], both: bool = False) -> Wording:
    """Tagging joints whose labels count along each chain; `lasts` is the last joint of each
    chain, `both` says that some chains are closed and some open."""
    start = "its closing knot" if closed else "the tail that is to be joint 1"
    end = "The knots just before joint 1 are" if closed else "The far ends are"
    if both:
        start = "its closing knot, or if it is open at the tail that is to be joint 1,"
        end = "The last joints are"
    return Wording(
        title="Tag the joints",
        text=(
            f"On each chain start at {start} and count the knots, all chains the same way round as"
            " on the joint map. Fasten a paper tag at every joint of its row. A joint without a"
            " tag is counted on from the tag before it."
        ),
        check=f"Even numbers are neck knots. {end} {listed(lasts)}.",
    )


def tag_named() -> Wording:
    """Tagging every joint of chains whose joints have names of their own."""
    return Wording(
        title="Tag the joints",
        text=(
            "Go along each chain from one end, knot by knot, and fasten a paper tag to every knot"
            " and every free end, with the names of its row in their order. A name may come more"
            " than once: those knots are brought together later."
        ),
        check="Every knot and every free end has a tag.",
    )


def lay_beside(order: Sequence[str], firsts: Sequence[str], closed: bool, layers: bool) -> Wording:
    """Laying the long chains of a tube in place, flat."""
    things = "rings" if closed else "chains"
    layered = ", the back ones first" if layers else ""
    return Wording(
        title=f"Lay the {things} in place",
        text=sentences(
            "Clear and sweep a floor larger than the piece.",
            f"Lay the {things} flat{layered}: {', then '.join(order)}.",
            "Inner chains go inside the outer ones." if closed else "",
            f"Bring joints {listed(firsts)} together. All numbers run the same way"
            f"{' round' if closed else ''}.",
        ),
        check=f"Joints {listed(firsts)} lie together, and no chain is twisted.",
    )


def place_of_chain(letter: str, place: str, on: str) -> str:
    """Where one chain is laid."""
    return f"{letter} ({place}){f' on top of {on}' if on else ''}"


def lay_apart(letters: Sequence[str]) -> Wording:
    """Laying out chains that meet at named joints."""
    return Wording(
        title=f"Lay out {noun(len(letters), 'chain')} {listed(letters)}",
        text=sentences(
            "Clear and sweep a floor larger than the piece.",
            "Lay the chains down in the order of their letters, loosely, so that knots of the same"
            " name come near one another.",
        ),
        check=f"{several(len(letters), 'chain')} on the floor, every tag in sight.",
    )
