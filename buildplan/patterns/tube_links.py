"""Which joints of a tube a balloon joins, and what is wrong with further ones."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.language.messages import message
from buildplan.patterns.course import INNER_CHAINS, OUTER_CHAINS, expand_course
from buildplan.patterns.tube_keys import Tube
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, listed, quoted
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import TakeOut, by_hand, change

AT: Path = ("build", "tube", "extra")


def joined(tube: Tube) -> set[frozenset[str]]:
    """Pairs of joints that a long chain, a brace or a single of a checked tube joins."""
    letters = sorted([*OUTER_CHAINS[tube.chains], *INNER_CHAINS[tube.chains]])
    cells = expand_course(tube)
    total = {True: sum(c.outer for c in cells), False: sum(c.inner for c in cells)}
    outside: dict[str, bool] = {letter: letter in OUTER_CHAINS[tube.chains] for letter in letters}

    def label(letter: str, index: int) -> str:
        return f"{letter}{(index % total[outside[letter]] if tube.closed else index) + 1}"

    found: set[frozenset[str]] = set()
    for letter in letters:
        for i in range(total[outside[letter]]):
            found.add(frozenset((label(letter, i), label(letter, i + 1))))
    # braces go all round; a ladder's go across
    around = list(zip(letters, [*letters[1:], letters[0]], strict=True))
    reached = {True: 0, False: 0}
    for advance in [(0, 0), *((c.outer, c.inner) for c in cells)]:
        before = dict(reached)
        reached = {True: reached[True] + advance[0], False: reached[False] + advance[1]}
        for one, other in around:
            found.add(
                frozenset(
                    (label(one, reached[outside[one]]), label(other, reached[outside[other]]))
                )
            )
            if outside[one] == outside[other]:  # twins, with a single at what is skipped
                for skipped in range(before[outside[one]] + 1, reached[outside[one]]):
                    found.add(frozenset((label(one, skipped), label(other, skipped))))
    return found


def check_extra(tube: Tube, joints: dict[str, int], given: object) -> Iterator[Mistake]:
    """What is wrong with the further balloons of a tube whose chains have so many joints each."""
    there = joined(tube)
    labels = {f"{letter}{i + 1}": None for letter, count in joints.items() for i in range(count)}
    for i, one in enumerate(list_in(given)):
        ends = list_in(one) or list_in(mapping_in(one).get("joints"))
        at = (*AT, i) if isinstance(one, list) else (*AT, i, "joints")
        unknown = [end for end in ends if isinstance(end, str) and end not in labels]
        for end in unknown:
            place = (*at, ends.index(end))
            runs = listed(
                message("{first} to {last}", first=f"{letter}1", last=f"{letter}{count}")
                for letter, count in joints.items()
            )
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                place,
                message("there is no joint {joint}", joint=quoted(end)),
                by_hand(message("the joints are {names}", names=runs)),
            )
        if unknown or len(ends) != 2:
            continue
        pair = frozenset(ends)
        if len(pair) < 2 or pair in there:
            yield Mistake(
                FileKind.JOINED_ALREADY,
                (*AT, i),
                message("{joint} cannot be tied to itself", joint=str(ends[0]))
                if len(pair) < 2
                else message("a balloon joins {joints} already", joints=listed(sorted(pair))),
                change(message("take it out, or name other joints"), TakeOut((*AT, i))),
            )
        there.add(pair)
