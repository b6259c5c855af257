"""Sentences of the braces, singles and joints."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.cells import cell_words
from buildplan.language.grammar import count_word, listed, number_ranges, sentences
from buildplan.language.speaking import mark, say, say_count, spoken_voice
from buildplan.sequence.words import grammar
from buildplan.sequence.words.grammar import (
    Wording,
)

# which free ends a closed short chain has
BOTH_TAILS = mark("its two free tails")
TAIL_AND_NECK = mark("its free tail and its closed neck")
# an end of a short chain that is tied in
FREE_TAIL, OTHER_TAIL, CLOSED_NECK = mark("free tail"), mark("other tail"), mark("closed neck")
OF_ITS_ROW = ""


def short_chain(length: int, balloons: str) -> str:
    """What a brace is tied from: `a chain of four ivory balloons`. Where the balloons are
    OF_ITS_ROW, their colour is told there."""
    if balloons == OF_ITS_ROW:
        return _short_chain_of_its_row(length)
    if length == 1:
        return say("one {colour} balloon that was tied off alone", colour=balloons)
    if length == 2:
        return say("a pair of {colour} balloons", colour=balloons)
    return say("a chain of {length} {colour} balloons", length=count_word(length), colour=balloons)


def _short_chain_of_its_row(length: int) -> str:
    if length == 1:
        return say("one balloon that was tied off alone, in the colour of the row")
    if length == 2:
        return say("a pair in the colour of the row")
    return say("a chain of {length} in the colour of the row", length=count_word(length))


def lead_round(what: str, first: str, ends: str) -> str:
    """Leading a short chain right round the tube. `first` is the first joint, or empty when
    each turn has its own row; `ends` is BOTH_TAILS or TAIL_AND_NECK."""
    if first:
        way = say(
            "Lead it round the tube through its joints in order, so that its knots lie on the knots"
            " of the long chains, and tie {ends} together at {joint}.",
            ends=say(ends),
            joint=first,
        )
    else:
        way = say(
            "Lead it round the tube through the joints of its row in order, so that its knots lie"
            " on the knots of the long chains, and tie {ends} together at the first joint of the"
            " row.",
            ends=say(ends),
        )
    return sentences(say("Take {what}.", what=what), way)


def lead_between(
    what: str, first: str, over: Sequence[str], last: str, first_end: str, last_end: str
) -> str:
    """Tying a short chain from one joint over others to another."""
    return sentences(
        say("Take {what}.", what=what),
        _tie_into(first_end, first),
        say("Lead it over {joints}, knot on knot.", joints=listed(over)) if over else "",
        _tie_into(last_end, last),
    )


def _tie_into(end: str, joint: str) -> str:
    return say("Tie its {end} into joint {joint}.", end=say(end), joint=joint)


def lead_between_in_row(what: str, over: bool, first_end: str, last_end: str) -> str:
    """The same, each turn with a row of its own."""
    message = mark(
        "Tie its {first_end} into the first joint of its row and its {last_end} into the last."
    )
    if over:
        message = mark(
            "Tie its {first_end} into the first joint of its row, lead it over the joints between,"
            " knot on knot, and tie its {last_end} into the last."
        )
    return sentences(
        say("Take {what}.", what=what),
        say(message, first_end=say(first_end), last_end=say(last_end)),
    )


def end_words(neck: bool, other: bool = False) -> str:
    """A free end of a short chain, marked."""
    if neck:
        return CLOSED_NECK
    return OTHER_TAIL if other else FREE_TAIL


def shares(links: Sequence[tuple[str, int]], brace: int) -> str:
    """Which balloons a brace shares with other ones."""
    if not links:
        return ""
    parts = [say("balloon {link} with brace {brace}", link=link, brace=of) for link, of in links]
    return say(
        "Brace {brace} shares {balloons}: no new balloon is tied there.",
        brace=brace,
        balloons=listed(parts),
    )


def shares_in_row() -> str:
    """The same, each turn with a row of its own."""
    return say("Where the row names a shared balloon, no new balloon is tied.")


def settle() -> str:
    """Settling a brace before it is locked."""
    return say("Settle the brace until knot lies on knot and the nozzles cross.")


# what the chains of one side do in a cell: letters, advance, and the joints before and after it
Side = tuple[Sequence[str], int, Sequence[str], Sequence[str]]


def _outer_goes(
    letters: Sequence[str], on_by: int, before: Sequence[str], after: Sequence[str]
) -> str:
    count, chains, joints = len(letters), listed(letters), listed(before)
    if not on_by:
        return say_count(
            "the outer chain {chains} stays at {joints}",
            "the outer chains {chains} stay at {joints}",
            count,
            chains=chains,
            joints=joints,
        )
    return say_count(
        "the outer chain {chains} goes on by {balloons}, from {joints} to {after}",
        "the outer chains {chains} go on by {balloons}, from {joints} to {after}",
        count,
        chains=chains,
        balloons=grammar.balloons(on_by),
        joints=joints,
        after=listed(after),
    )


def _inner_goes(
    letters: Sequence[str], on_by: int, before: Sequence[str], after: Sequence[str]
) -> str:
    count, chains, joints = len(letters), listed(letters), listed(before)
    if not on_by:
        return say_count(
            "the inner chain {chains} stays at {joints}",
            "the inner chains {chains} stay at {joints}",
            count,
            chains=chains,
            joints=joints,
        )
    return say_count(
        "the inner chain {chains} goes on by {balloons}, from {joints} to {after}",
        "the inner chains {chains} go on by {balloons}, from {joints} to {after}",
        count,
        chains=chains,
        balloons=grammar.balloons(on_by),
        joints=joints,
        after=listed(after),
    )


def cell_moves(name: str, closing: bool, outer: Side, inner: Side, skipped: Sequence[str]) -> str:
    """What a cell that is not straight does. `skipped` are joints that no brace reaches;
    `closing` says that it leads back to brace 1."""
    goes = {"outer": _outer_goes(*outer), "inner": _inner_goes(*inner)}
    kind, tell = cell_words(name), spoken_voice().tell
    cell = tell(kind.this)
    if closing:
        moves = say("At {cell} that closes the piece, {outer}; {inner}.", cell=cell, **goes)
    else:
        moves = say("At {cell}, {outer}; {inner}.", cell=cell, **goes)
    left_out = say("No brace reaches {joints}.", joints=listed(skipped)) if skipped else ""
    return sentences(moves, left_out, tell(kind.effect or ""))


def brace_step(
    numbers: Sequence[int], cells: Sequence[str], moves: Sequence[str], done: str
) -> Wording:
    """A step of one brace or of several equal ones; `cells` are kinds that are not straight."""
    count, braces = len(numbers), number_ranges(numbers)
    if cells:
        title = say_count(
            "Brace {braces}, at {cells}",
            "Braces {braces}, at {cells}",
            count,
            braces=braces,
            cells=listed([spoken_voice().tell(cell_words(name).one) for name in cells]),
        )
    else:
        title = say_count("Brace {braces}", "Braces {braces}", count, braces=braces)
    return Wording(
        title=title,
        text=sentences(*moves),
        check=done,
    )


def braces_standing(standing: int, total: int) -> str:
    return say("Braces standing: {done} of {total}.", done=standing, total=total)


def take(what: str) -> str:
    return say("Take {what}.", what=what)


def tie_across(first: str, second: str) -> str:
    """Tying in one single."""
    return say(
        "Tie its tail into {first} and its closed neck into {second}, straight across.",
        first=first,
        second=second,
    )


def single_step(
    names: Sequence[str],
    balloon: str,
    joints: Sequence[str],
    locking: Sequence[str],
    done: str,
) -> Wording:
    """Singles across skipped joints; `joints` are those of a single that comes alone."""
    if joints:
        tie = tie_across(*joints)
    else:
        tie = say(
            "Tie its tail into the first joint of its row and its closed neck into the second,"
            " straight across."
        )
    return Wording(
        title=say_count("Single {singles}", "Singles {singles}", len(names), singles=listed(names)),
        text=sentences(take(short_chain(1, balloon)), tie, *locking),
        check=done,
    )


def singles_in_place(standing: int, total: int) -> str:
    return say("Singles in place: {done} of {total}.", done=standing, total=total)


def bind() -> str:
    """Holding a joint that has no lock."""
    return say("Bind the knots fast with a strip of latex.")


def joined_so_far(standing: int, total: int) -> str:
    return say("Joints brought together: {done} of {total}.", done=standing, total=total)


def join_step(names: Sequence[str], moves: Sequence[str], done: str) -> Wording:
    """Joints where chains meet without a brace."""
    return Wording(
        title=say_count(
            "Bring together joint {joints}",
            "Bring together joints {joints}",
            len(names),
            joints=listed(names),
        ),
        text=sentences(*moves),
        check=done,
    )


def find_knots() -> str:
    """Joining joints whose chains have all come in."""
    return say(
        "Find every knot and free end tagged with the joint's name and bring them together."
        " Tie free ends into the joint."
    )
