"""Every sentence of the sequence, as plain functions of plain values.

Nothing here looks into a framework: whoever tells a step (telling.py) works out names,
numbers and joints, and this module puts them into words. Short, imperative, one action.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
ALONG = " – "


@dataclass(frozen=True)
class Wording:
    """What a step says: its heading, what to do, and what to count when it is done."""

    title: str
    text: str
    check: str


# --- small change -------------------------------------------------------------------------


def count_word(number: int) -> str:
    """Small numbers as words: `chain of four`, `two pairs`."""
    return _SMALL[number] if 0 <= number < len(_SMALL) else str(number)


def several(number: int, one: str, many: str = "") -> str:
    """A number and its noun: `1 pair`, `20 pairs`."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def noun(number: int, one: str, many: str = "") -> str:
    """The noun alone, in the number that is meant."""
    return one if number == 1 else many or one + "s"


def listed(items: Sequence[str], last: str = "and") -> str:
    """`A`, `A and B`, `A, B and C`."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def number_ranges(numbers: Sequence[int]) -> str:
    """`1 to 4, 6 and 9`: runs of three or more are joined up."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    parts: list[str] = []
    for run in runs:
        parts += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(n) for n in run]
    return listed(parts)


def steps_in_words(numbers: Sequence[int]) -> str:
    """`step 4`, `steps 4 to 6`."""
    return f"{noun(len(numbers), 'step')} {number_ranges(numbers)}"


def _sentences(*parts: str) -> str:
    return " ".join(part for part in parts if part)


def _upper(text: str) -> str:
    return text[:1].upper() + text[1:]


# --- size ---------------------------------------------------------------------------------


def size_links(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing link balloons of one kind."""
    balloons = noun(count, "link balloon")
    return Wording(
        title=f"Size {count} {name} {balloons} to {gauge}",
        text=_sentences(
            f"Take {count} {name} {balloons} ({nominal}). Inflate each a little past {gauge},"
            f" hold it in the {gauge} hole of the gauge and let air out until it just slips"
            " through.",
            f"Size two, tie them as {steps_in_words(pair_steps)} "
            f"{noun(len(pair_steps), 'says', 'say')}, then size the next two.",
        ),
        check=f"{count} {name} {balloons}, each just touching the sides of the {gauge} hole.",
    )


def size_rounds(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing the rounds of the locks."""
    rounds = noun(count, "round")
    return Wording(
        title=f"Size {count} {name} {rounds} to {gauge}",
        text=_sentences(
            f"Take {count} {name} {rounds} ({nominal}). Inflate each a little past {gauge},"
            f" hold it in the {gauge} hole of the gauge and let air out until it just slips"
            " through.",
            f"Size two and tie them together at once ({steps_in_words(pair_steps)}).",
        ),
        check=f"{count} {name} {rounds}, each just touching the sides of the {gauge} hole.",
    )


# --- pair ---------------------------------------------------------------------------------


def pair_links(count: int, names: Sequence[str], long: bool) -> Wording:
    """Tying pairs of link balloons, for the long chains or for the braces."""
    purpose = "the long chains" if long else "the braces"
    take = f"two sized {names[0]} balloons"
    if names[0] != names[1]:
        take = f"one sized {names[0]} balloon and one sized {names[1]} balloon"
    return Wording(
        title=f"Tie {several(count, 'pair')} for {purpose}",
        text=(
            f"Take {take}. Wrap the two necks round each other twice and tie them together, neck"
            f" to neck. Make {several(count, 'pair')} for {purpose}."
        ),
        check=f"{several(count, 'pair')}, {count * 2} balloons. Both tails of each are free.",
    )


def tie_off(
    count: int, name: str, for_long: Sequence[str], for_braces: int, for_singles: int
) -> Wording:
    """Closing the necks of link balloons that have no partner."""
    uses = [f"one ends {noun(1, 'chain')} {letter}" for letter in for_long]
    if for_braces:
        uses.append(f"{for_braces} {noun(for_braces, 'is', 'are')} for braces")
    if for_singles:
        uses.append(f"{for_singles} {noun(for_singles, 'is a single', 'are singles')}")
    balloons = noun(count, "balloon")
    return Wording(
        title=f"Tie off {count} {name} {balloons} alone",
        text=_sentences(
            f"{_upper(noun(count, 'this balloon has', 'these balloons have'))} no partner. Close"
            f" the neck of {noun(count, 'the', 'each')} sized {name} balloon with a knot of its"
            " own.",
            f"{_upper(listed(uses))}." if uses else "",
        ),
        check=f"{count} {name} {balloons} closed, each with neck and tail free to tie.",
    )


def pair_rounds(count: int, names: Sequence[str]) -> Wording:
    """Tying the rounds two by two: each pair is a lock."""
    return Wording(
        title=f"Tie {several(count, 'lock')}",
        text=(
            f"Take two sized {listed(names)} rounds. Wrap the two necks round each other twice and"
            f" tie them together. This pair of rounds is a lock. Make {several(count, 'lock')}."
        ),
        check=f"{several(count, 'lock')}, {count * 2} rounds, two and two.",
    )


# --- chain --------------------------------------------------------------------------------


def long_chains(
    letters: Sequence[str],
    length: int,
    pairs: int,
    odd: bool,
    colours: str,
    run_pairs: int,
) -> Wording:
    """Tying long chains from pairs. `run_pairs` is the number of pairs tied into a run before
    the runs are tied together (0: all in one go)."""
    count = len(letters)
    title = f"Make {several(count, 'chain')} of {length}: {listed(letters)}"
    if length == 1:
        return Wording(
            title=f"Lay out chain {letters[0]}: one balloon",
            text=f"Chain {listed(letters)} is a single balloon, tied off alone.",
            check=f"{several(count, 'balloon')} laid out.",
        )
    each = "For each, tie" if count > 1 else "Tie"
    join = f"{each} {several(pairs, 'pair')} in a row, tail to tail, with a double knot."
    if pairs == 1:
        join = f"{each.replace('tie', 'take').replace('Tie', 'Take')} one pair."
    last = (
        "Tie the tail of a balloon that was tied off alone to the last free tail; its closed neck"
        " stays free."
        if odd
        else ""
    )
    runs = ""
    if run_pairs:
        full, over = divmod(pairs, run_pairs)
        rest = f" and one of {several(over, 'pair')}" if over else ""
        runs = (
            f"To keep count, first tie {several(full, 'run')} of {several(run_pairs, 'pair')}"
            f"{rest}, then tie the runs together."
        )
    neck, tail = pairs, pairs - 1 + odd
    return Wording(
        title=title,
        text=_sentences(join, last, runs, colours),
        check=(
            f"{noun(count, 'The chain', 'Each chain')} has {length} balloons,"
            f" {several(neck, 'neck knot')} and {several(tail, 'tail knot')}."
        ),
    )


def colour_order(runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """The order of colours along a chain, from its joint 1."""
    if len(runs) == 1:
        return ""
    order = ", ".join(f"{count} {name}" for count, name in runs)
    start = "Colours in order from joint 1"
    return f"{start}, over and over: {order}." if over_and_over else f"{start}: {order}."


def short_chains(count: int, length: int, braces: str) -> Wording:
    """Tying the short chains that are led round as braces."""
    pairs, odd = divmod(length, 2)
    if odd and pairs == 1:
        how = (
            "Tie a balloon that was tied off alone to a pair, tail to tail, with a double knot. Its"
            " closed neck stays free."
        )
    else:
        how = f"Tie {count_word(pairs)} pairs in a row, tail to tail, with a double knot."
        if odd:
            how += " Tie one balloon that was tied off alone to the end by its tail."
    ends = "one tail and one closed neck are free" if odd else "both end tails are free"
    chains = noun(count, "chain")
    return Wording(
        title=f"Make {count} {chains} of {count_word(length)} for braces",
        text=f"{how} Make {count} {chains} of {count_word(length)}, for {braces}.",
        check=f"{count} {chains} of {count_word(length)}; at each, {ends}.",
    )


# --- close rings --------------------------------------------------------------------------


def close_rings(
    letters: Sequence[str], how: str, counts: Sequence[tuple[int, int, int]]
) -> Wording:
    """Tying free ends of chains together; counts are balloons, neck and tail knots by ring."""
    many = len(letters) > 1
    alike = len(set(counts)) == 1
    balloons, necks, tails = counts[0]
    check = (
        f"{'Each ring' if many else 'The ring'} has {balloons} balloons,"
        f" {several(necks, 'neck knot')} and {several(tails, 'tail knot')}, and no free end."
        if alike
        else "Each ring has as many balloons as its row says, and no free end."
    )
    return Wording(
        title=f"Close {noun(len(letters), 'ring')} {listed(letters)}",
        text=(
            f"{'Lay each chain' if many else 'Lay the chain'} out without a twist. Tie its two free"
            f" ends together, {how}, with a double knot. This knot is joint 1 of the ring."
        ),
        check=check,
    )


TAIL_TO_TAIL = "tail to tail"
TAIL_TO_NECK = "the free tail to the closed neck"
AS_THEY_ARE = "tail to tail, or where a chain ends in a closed neck, tail to neck"


def tag_counted(closed: bool) -> Wording:
    """Tagging joints whose labels count along each chain."""
    start = "its closing knot" if closed else "the end that is joint 1"
    return Wording(
        title="Tag the joints",
        text=(
            f"On each chain start at {start} and count the knots, all chains the same way round as"
            " on the joint map. Fasten a paper tag at every joint of its row. A joint without a"
            " tag is counted on from the tag before it."
        ),
        check="Odd numbers are tail knots, even numbers neck knots.",
    )


def tag_named() -> Wording:
    """Tagging every joint of chains whose joints have names of their own."""
    return Wording(
        title="Tag the joints",
        text=(
            "Go along each chain, knot by knot, and fasten a paper tag with the joint's name to"
            " every knot and free end, in the order of its row. A name may come more than once:"
            " those knots are brought together later."
        ),
        check="Every knot and every free end has a tag; each row ends where its chain ends.",
    )


def lay_beside(order: Sequence[str], firsts: Sequence[str], closed: bool) -> Wording:
    """Laying the long chains of a tube in place, flat."""
    things = "rings" if closed else "chains"
    return Wording(
        title=f"Lay the {things} in place",
        text=_sentences(
            f"Clear a clean floor, larger than the piece. Lay the {things} flat, the back ones"
            f" first: {', then '.join(order)}.",
            f"Bring joints {listed(firsts)} side by side. All numbers run the same way"
            f"{' round' if closed else ''}.",
        ),
        check=f"Joints {listed(firsts)} lie side by side, and no chain is twisted.",
    )


def place_of_chain(letter: str, place: str, on: str) -> str:
    """Where one chain is laid."""
    return f"{letter} ({place}){f' on top of {on}' if on else ''}"


def lay_apart(letters: Sequence[str]) -> Wording:
    """Laying out chains that meet at named joints."""
    return Wording(
        title=f"Lay out {noun(len(letters), 'chain')} {listed(letters)}",
        text=(
            "Clear a clean floor, larger than the piece. Lay the chains down in the order of their"
            " letters, loosely, so that knots with the same name come near one another."
        ),
        check=f"{several(len(letters), 'chain')} on the floor, every tag in sight.",
    )


# --- brace --------------------------------------------------------------------------------


def lead_round(length: int, first: str, ends: str) -> str:
    """Leading a short chain right round the tube. `first` is the first joint, or empty when
    each turn has its own."""
    at = f"at {first}" if first else "at the first joint of the row"
    row = "" if first else " of its row"
    return (
        f"Take a chain of {count_word(length)}. Lead it round the tube through the joints{row} in"
        f" order, so that its knots lie on the chains' knots, and tie {ends} together {at}."
    )


BOTH_TAILS = "its two free tails"
TAIL_AND_NECK = "its free tail and its closed neck"


def lead_between(
    what: str, first: str, over: Sequence[str], last: str, first_end: str, last_end: str
) -> str:
    """Tying a short chain from one joint over others to another."""
    way = f" Lead it over {listed(over)}." if over else ""
    return (
        f"Take {what}. Tie its free {first_end} into joint {first}.{way} Tie its"
        f" {last_end} into joint {last}."
    )


def lead_row(what: str, first_end: str, last_end: str) -> str:
    """The same, each turn with a row of its own."""
    return (
        f"Take {what}. Tie its free {first_end} into the first joint of the row, lead it over the"
        f" joints between, and tie its {last_end} into the last."
    )


def chain_name(length: int) -> str:
    """What a short chain of `length` balloons is called."""
    if length == 1:
        return "a balloon that was tied off alone"
    return "a pair" if length == 2 else f"a chain of {count_word(length)}"


FREE_END = {"neck": "closed neck", "tail": "tail"}


def shares(links: Sequence[tuple[str, int]], brace: int) -> str:
    """Which balloons a brace shares with earlier ones."""
    if not links:
        return ""
    parts = [f"balloon {link} with brace {number}" for link, number in links]
    return f"Brace {brace} shares {listed(parts)}: no new balloon is tied there."


def shares_row() -> str:
    """The same, each turn with a row of its own."""
    return "Where the row names a shared balloon, no new balloon is tied."


def settle(lock_step: int | None) -> str:
    """Settling a brace before it is locked."""
    then = f", then lock it (step {lock_step})" if lock_step is not None else ""
    return f"Settle the brace until knot lies on knot and the nozzles cross{then}."


def in_turn(step: int, lock_step: int, first: str, second: str) -> str:
    """How a step and the step of its locks are taken together."""
    return (
        f"Do steps {step} and {lock_step} in turn: {first}, its locks; {second}, its locks; and so"
        " on."
    )


def cell_moves(
    name: str,
    outer: Sequence[str],
    inner: Sequence[str],
    advance: tuple[int, int],
    stays: Sequence[str],
    skipped: Sequence[str],
) -> str:
    """What a cell that is not straight does, and which joints it leaves out."""

    def goes(place: str, letters: Sequence[str], balloons: int) -> str:
        chains = f"the {place} {noun(len(letters), 'chain')} {listed(letters)}"
        if balloons:
            verb = noun(len(letters), "goes", "go")
            return f"{chains} {verb} on by {several(balloons, 'balloon')}"
        return f"{chains} {noun(len(letters), 'stays', 'stay')} at {listed(stays)}"

    moves = f"{goes('outer', outer, advance[0])}, {goes('inner', inner, advance[1])}"
    effect = {
        "fan": " The piece bends inward here.",
        "fan_in": " The piece bends outward here.",
        "tip": " The corner stands out there.",
        "dip": " The notch folds in there.",
    }.get(name, "")
    left_out = f" No brace reaches {listed(skipped)}." if skipped else ""
    head = {"fan_in": "At the inward fan"}.get(name, f"At the {name}")
    if "," in name:
        head = "In this cell"
    return f"{head}, {moves}.{left_out}{effect}"


def brace_step(
    numbers: Sequence[int], at: str, moves: Sequence[str], standing: int, total: int
) -> Wording:
    """A step of one brace or of several equal ones."""
    which = f"{noun(len(numbers), 'Brace')} {number_ranges(numbers)}"
    return Wording(
        title=f"{which}{f', {at}' if at else ''}",
        text=_sentences(*moves),
        check=f"Braces standing: {standing} of {total}.",
    )


def at_cells(names: Sequence[str]) -> str:
    """Where a brace stands, for the heading."""
    called = {"fan_in": "inward fan"}
    return listed([f"at a {called.get(n, n)}" if "," not in n else "at a cell" for n in names])


def single_step(
    names: Sequence[str],
    balloon: str,
    lock_step: int | None,
    alternating: str,
    standing: int,
    total: int,
) -> Wording:
    """Singles across skipped joints."""
    lock = f" Lock both ends next (step {lock_step})." if lock_step is not None else ""
    return Wording(
        title=f"{noun(len(names), 'Single')} {listed(names)}",
        text=_sentences(
            f"Take one {balloon} balloon that was tied off alone. Tie its tail into the first joint"
            f" of the row and its closed neck into the second, straight across.{lock}",
            alternating,
        ),
        check=f"Singles in place: {standing} of {total}.",
    )


def join_step(
    names: Sequence[str], lock_step: int | None, alternating: str, standing: int, total: int
) -> Wording:
    """Joints where chains meet without a brace."""
    lock = f" Lock it next (step {lock_step})." if lock_step is not None else ""
    fast = "" if lock_step is not None else " Bind them fast with a strip of balloon."
    return Wording(
        title=f"Bring together {noun(len(names), 'joint')} {listed(names)}",
        text=_sentences(
            "Find every knot tagged with the joint's name and bring them together. Tie any free"
            f" end with this name into the joint.{fast}{lock}",
            alternating,
        ),
        check=f"Joints brought together: {standing} of {total}.",
    )


# --- lock joints --------------------------------------------------------------------------


def lock_step(of: str, waiting: str, standing: int, total: int) -> Wording:
    """Locks of the braces, singles or joints of the step before."""
    return Wording(
        title=f"Lock {of}",
        text=_sentences(
            "Take one lock for each joint of the row. Lay its knot on the joint, one round to"
            " either side, and twist the two rounds round the joint and past each other until"
            " every knot there is held.",
            waiting,
        ),
        check=(
            f"Locks so far: {standing} of {total}. Pull gently: no joint slips, and the nozzles"
            " still cross."
        ),
    )


def waits(joints: Sequence[str], brace: int) -> str:
    """Joints whose lock comes later."""
    wait = noun(len(joints), "waits for its lock", "wait for their locks")
    return f"{listed(joints)} {wait} until brace {brace} is tied in there."


# --- finish -------------------------------------------------------------------------------


def inspect(links: int, locks: int, mirrored: bool) -> Wording:
    """Looking the whole piece over before it is stood up."""
    alike = "The back must look exactly like the front." if mirrored else ""
    lock_words = f" and {several(locks, 'lock')}" if locks else ""
    return Wording(
        title="Look the piece over",
        text=_sentences(
            "Go once round the whole piece."
            + (" Look for a joint without a lock or with two." if locks else ""),
            "Replace every balloon that is soft or torn.",
            alike,
        ),
        check=f"{several(links, 'link balloon')}{lock_words}.",
    )


def stand_up() -> Wording:
    """Standing the piece up."""
    return Wording(
        title="Stand the piece up",
        text=(
            "Two people or more take hold on either side, each with both hands round the bundle of"
            " chains at a brace, never by one balloon. Lift together on a count, turn the piece up"
            " on its foot, and hold it until it is ballasted as its own page says."
        ),
        check="The piece stands by itself on its foot, as in the finished view.",
    )


# --- rows ---------------------------------------------------------------------------------


def brace_row(name: str, ways: Sequence[tuple[Sequence[str], bool]], shared: str) -> str:
    """`Brace 3: A3 – B3 – C3 – D3, closed at A3`."""
    parts = [
        ALONG.join(joints) + (f", closed at {joints[0]}" if closed else "")
        for joints, closed in ways
    ]
    return f"{name}: {'; and '.join(parts)}{f', shares {shared}' if shared else ''}"


def shared_row(links: Sequence[tuple[str, int]]) -> str:
    """`B4-C4 with brace 4`."""
    return listed([f"{link} with brace {number}" for link, number in links])


def single_row(name: str, joints: Sequence[str]) -> str:
    """`Single A5-D5: A5 – D5`."""
    return f"{name}: {ALONG.join(joints)}"


def lock_row(of: str, joints: Sequence[str], waiting: str = "") -> str:
    """`Brace 4: A4, D4`."""
    return f"{of}: {', '.join(joints)}{f' ({waiting})' if waiting else ''}"


def join_row(name: str, passing: Sequence[str], ends: Sequence[str]) -> str:
    """`Joint v4: knots of chain A (twice) and chain B; free end of chain C`."""
    parts = []
    if passing:
        parts.append(f"{noun(len(passing), 'knot')} of {listed(passing)}")
    if ends:
        parts.append(f"free {noun(len(ends), 'end')} of {listed(ends)}")
    return f"{name}: {'; '.join(parts)}"


def of_chain(letter: str, times: int) -> str:
    """One chain, and how often it passes."""
    return f"chain {letter}" if times == 1 else f"chain {letter} ({times} times)"


def chain_row(letter: str, way: str, length: int, closed: bool, colours: str) -> str:
    """`Chain A: 40 balloons, joints A1 to A40, then closed at A1`."""
    kind = f"{several(length, 'balloon')}, {way}"
    return f"Chain {letter}: {kind}{', to be closed' if closed else ''}; {colours}"


def colours_in_row(runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """Colours of a chain in a row: `all deep blue`, `over and over 3 deep blue, 1 ivory`."""
    if len(runs) == 1:
        return f"all {runs[0][1]}"
    order = ", ".join(f"{count} {name}" for count, name in runs)
    return f"over and over {order}" if over_and_over else order


def lay_row(joints: Sequence[str]) -> str:
    """Joints that come together when the chains are laid."""
    return f"Side by side: {', '.join(joints)}"


def way_counted(first: str, last: str, back_to: str) -> str:
    """Joints that count along a chain."""
    return f"joints {first} to {last}" + (f" and back to {back_to}" if back_to else "")


def way_listed(joints: Sequence[str]) -> str:
    """Joints one by one."""
    return f"joints {ALONG.join(joints)}"


def ring_row(letter: str, joint: str, length: int) -> str:
    """`Ring A: closed at A1, 40 balloons`."""
    return f"Ring {letter}: closed at {joint}, {several(length, 'balloon')}"


def tag_row(letter: str, joints: Sequence[str]) -> str:
    """`Chain A: A1, A5, A10`."""
    return f"Chain {letter}: {', '.join(joints)}"


def bulk_row(count: int, what: str) -> str:
    """`80 pairs of deep blue`."""
    return f"{count} {what}"
