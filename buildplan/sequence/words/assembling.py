"""Sentences of the braces, singles, joints and locks, and of the finish."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.language.grammar import capital, count_word, listed, number_ranges, sentences
from buildplan.language.speaking import say
from buildplan.sequence.words.grammar import Wording, noun, several

BOTH_TAILS = "its two free tails"
TAIL_AND_NECK = "its free tail and its closed neck"

_CELL_NAMES: Mapping[str, str] = {"fan_in": "inward fan"}
_CELL_EFFECTS: Mapping[str, str] = {
    "fan": "The piece bends inward here.",
    "fan_in": "The piece bends outward here.",
    "tip": "A corner stands out there.",
    "dip": "A notch folds in there.",
}


def cell_name(name: str) -> str:
    """What a kind of cell is called; a cell given by numbers has no name of its own."""
    return "uneven cell" if "," in name else _CELL_NAMES.get(name, name)


# --- braces -------------------------------------------------------------------------------


OF_ITS_ROW = ""


def short_chain(length: int, balloons: str) -> str:
    """What a brace is tied from: `a chain of four ivory balloons`. Where the balloons are
    OF_ITS_ROW, their colour is told there."""
    if balloons == OF_ITS_ROW:
        return _short_chain_of_its_row(length)
    if length == 1:
        return f"one {balloons} balloon that was tied off alone"
    if length == 2:
        return f"a pair of {balloons} balloons"
    return f"a chain of {count_word(length)} {balloons} balloons"


def _short_chain_of_its_row(length: int) -> str:
    if length == 1:
        return say("one balloon that was tied off alone, in the colour of the row")
    if length == 2:
        return say("a pair in the colour of the row")
    return say("a chain of {length} in the colour of the row", length=count_word(length))


def lead_round(what: str, first: str, ends: str) -> str:
    """Leading a short chain right round the tube. `first` is the first joint, or empty when
    each turn has its own row."""
    at = first or "the first joint of the row"
    way = "through its joints" if first else "through the joints of its row"
    return (
        f"Take {what}. Lead it round the tube {way} in order, so that its knots lie on the knots of"
        f" the long chains, and tie {ends} together at {at}."
    )


def lead_between(
    what: str, first: str, over: Sequence[str], last: str, first_end: str, last_end: str
) -> str:
    """Tying a short chain from one joint over others to another."""
    way = f" Lead it over {listed(over)}, knot on knot." if over else ""
    return (
        f"Take {what}. Tie its {first_end} into joint {first}.{way} Tie its {last_end} into joint"
        f" {last}."
    )


def lead_between_in_row(what: str, over: bool, first_end: str, last_end: str) -> str:
    """The same, each turn with a row of its own."""
    way = ", lead it over the joints between, knot on knot, and tie" if over else " and"
    return (
        f"Take {what}. Tie its {first_end} into the first joint of its row{way} its {last_end}"
        " into the last."
    )


def end_words(neck: bool, other: bool = False) -> str:
    """A free end of a short chain."""
    if neck:
        return "closed neck"
    return "other tail" if other else "free tail"


def shares(links: Sequence[tuple[str, int]], brace: int) -> str:
    """Which balloons a brace shares with other ones."""
    if not links:
        return ""
    parts = [f"balloon {link} with brace {number}" for link, number in links]
    return f"Brace {brace} shares {listed(parts)}: no new balloon is tied there."


def shares_in_row() -> str:
    """The same, each turn with a row of its own."""
    return "Where the row names a shared balloon, no new balloon is tied."


def beside_locks(joints: Sequence[str]) -> str:
    """Joints of a brace that were locked before it came."""
    if not joints:
        return ""
    return (
        f"{listed(joints)} {noun(len(joints), 'is', 'are')} locked already: tie in close beside the"
        f" {noun(len(joints), 'lock')}."
    )


def settle(lock_step: int | None) -> str:
    """Settling a brace before it is locked."""
    then = f", then lock it (step {lock_step})" if lock_step is not None else ""
    return f"Settle the brace until knot lies on knot and the nozzles cross{then}."


def in_turn(step: int, lock_step: int, first: str, second: str, more: bool, locks: int) -> str:
    """How a step and the step of its locks are taken together; `locks` is their number in a
    turn."""
    its = noun(locks, "its lock", "its locks")
    on = "; and so on to the end" if more else ""
    return f"Do steps {step} and {lock_step} in turn: {first}, {its}; {second}, {its}{on}."


def _goes(
    side: str, letters: Sequence[str], advance: int, before: Sequence[str], after: Sequence[str]
) -> str:
    chains = f"the {side} {noun(len(letters), 'chain')} {listed(letters)}"
    if not advance:
        return f"{chains} {noun(len(letters), 'stays', 'stay')} at {listed(before)}"
    return (
        f"{chains} {noun(len(letters), 'goes', 'go')} on by {several(advance, 'balloon')},"
        f" from {listed(before)} to {listed(after)}"
    )


def cell_moves(
    name: str,
    closing: bool,
    outer: tuple[Sequence[str], int, Sequence[str], Sequence[str]],
    inner: tuple[Sequence[str], int, Sequence[str], Sequence[str]],
    skipped: Sequence[str],
) -> str:
    """What a cell that is not straight does. `outer` and `inner` are letters, advance, and
    the joints before and after it; `skipped` are joints that no brace reaches; `closing`
    says that it leads back to brace 1."""
    moves = f"{_goes('outer', *outer)}; {_goes('inner', *inner)}"
    left_out = f"No brace reaches {listed(skipped)}." if skipped else ""
    cell = f"{cell_name(name)} that closes the piece" if closing else cell_name(name)
    return sentences(f"At the {cell}, {moves}.", left_out, _CELL_EFFECTS.get(name, ""))


def brace_step(
    numbers: Sequence[int], cells: Sequence[str], moves: Sequence[str], standing: int, total: int
) -> Wording:
    """A step of one brace or of several equal ones; `cells` are kinds that are not straight."""
    names = [cell_name(name) for name in cells]
    at = listed([f"{'an' if name[0] in 'aeiou' else 'a'} {name}" for name in names])
    which = f"{noun(len(numbers), 'Brace')} {number_ranges(numbers)}"
    return Wording(
        title=f"{which}, at {at}" if at else which,
        text=sentences(*moves),
        check=f"Braces standing: {standing} of {total}.",
    )


# --- singles, joints ----------------------------------------------------------------------


def single_step(
    names: Sequence[str],
    balloon: str,
    joints: Sequence[str],
    lock_step: int | None,
    alternating: str,
    standing: int,
    total: int,
) -> Wording:
    """Singles across skipped joints; `joints` are those of a single that comes alone."""
    lock = f"Lock both ends next (step {lock_step})." if lock_step is not None else ""
    first, second = joints or ("the first joint of its row", "the second")
    return Wording(
        title=f"{noun(len(names), 'Single')} {listed(names)}",
        text=sentences(
            f"Take {short_chain(1, balloon)}. Tie its tail into {first} and its closed neck into"
            f" {second}, straight across.",
            lock,
            alternating,
        ),
        check=f"Singles in place: {standing} of {total}.",
    )


def join_step(
    names: Sequence[str], lock_step: int | None, alternating: str, standing: int, total: int
) -> Wording:
    """Joints where chains meet without a brace."""
    fast = f"Lock it next (step {lock_step})."
    if lock_step is None:
        fast = "Bind the knots fast with a strip of latex."
    return Wording(
        title=f"Bring together {noun(len(names), 'joint')} {listed(names)}",
        text=sentences(
            "Find every knot and free end tagged with the joint's name and bring them together. Tie"
            " free ends into the joint.",
            fast,
            alternating,
        ),
        check=f"Joints brought together: {standing} of {total}.",
    )


# --- locks --------------------------------------------------------------------------------


def lock_step(
    of: str,
    balloon: str,
    getting_at: Sequence[str],
    waiting: Sequence[str],
    standing: int,
    total: int,
) -> Wording:
    """Locks of the braces, singles or joints of the step before."""
    return Wording(
        title=f"Lock {of}",
        text=sentences(
            f"Take one lock, a pair of {balloon} rounds, for each joint of the row. Lay its knot on"
            " the joint, one round to either side, and twist the two rounds round the joint and"
            " past each other until every knot there is held.",
            *getting_at,
            *waiting,
        ),
        check=f"Pull gently: no joint slips. Locks so far: {standing} of {total}.",
    )


def roll() -> str:
    """Joints of the side that lies on the floor."""
    return "Roll the bundle towards you to reach the joints at the back."


def waits(joints: Sequence[str], brace: int) -> str:
    """Joints whose lock comes later."""
    wait = noun(len(joints), "waits for its lock", "wait for their locks")
    return f"{listed(joints)} {wait} until brace {brace} is tied in there."


def braces_to_lock(numbers: Sequence[int]) -> str:
    """`braces 1 to 4`."""
    return f"{noun(len(numbers), 'brace')} {number_ranges(numbers)}"


def singles_to_lock(names: Sequence[str]) -> str:
    """`both ends of single A5-D5`."""
    return f"both ends of {noun(len(names), 'single')} {listed(names)}"


def joints_to_lock(names: Sequence[str]) -> str:
    """`joints v1 and v4`."""
    return f"{noun(len(names), 'joint')} {listed(names)}"


# --- finish -------------------------------------------------------------------------------


def inspect(links: int, locks: int, mirrored: bool) -> Wording:
    """Looking the whole piece over before it is stood up."""
    counted = [several(links, "link balloon")]
    if locks:
        counted.append(several(locks, "lock"))
    return Wording(
        title="Look the piece over",
        text=sentences(
            "Go once round the whole piece.",
            "Look for a joint that has lost its lock or has two." if locks else "",
            "Replace every balloon that is soft or torn.",
            "The back must look exactly like the front." if mirrored else "",
        ),
        check=f"{capital(listed(counted))}, none soft, none torn.",
    )


def stand_up(people: int, braced: bool) -> Wording:
    """Standing the piece up."""
    grip = "round the bundle of chains at a brace" if braced else "round a joint"
    return Wording(
        title="Stand the piece up",
        text=(
            f"{capital(count_word(people))} people or more take hold on both sides, both hands"
            f" {grip}, never by one balloon. Lift together on a count, turn the piece up on its"
            " foot, and hold it until it is ballasted as its own page says."
        ),
        check="The piece stands by itself on its foot, as in the finished view.",
    )
