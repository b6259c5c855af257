"""Sentences of closing rings, tagging joints, and laying the chains."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.model import LongChain
from buildplan.language.grammar import listed, sentences
from buildplan.language.speaking import mark, say, say_count, spoken_voice
from buildplan.sequence.words.grammar import (
    Wording,
    balloons,
    chain_letters,
    neck_knots,
    tail_knots,
)

# how the two ends of a ring are tied together
TAIL_TO_TAIL = mark("tail to tail")
TAIL_TO_NECK = mark("the free tail to the closed neck")
AS_THEY_ARE = mark("tail to tail, or where a chain ends in a closed neck, tail to neck")


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


def place_of_chain(long: LongChain, on: str) -> str:
    """Where one chain is laid; `on` is the chain under it, if any."""
    letter, where = long.letter, spoken_voice().tell(long.where)
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
