"""Which joints of a tube a balloon joins, and what is wrong with further ones."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.language.messages import message
from buildplan.patterns.course import INNER_CHAINS, OUTER_CHAINS, expand_course
from buildplan.patterns.extra_keys import check_extras
from buildplan.patterns.tube_keys import Tube
from buildplan.source.mistake import Mistake, Path, listed

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
    labels = {f"{letter}{i + 1}": None for letter, count in joints.items() for i in range(count)}
    runs = listed(
        message("{first} to {last}", first=f"{letter}1", last=f"{letter}{count}")
        for letter, count in joints.items()
    )
    yield from check_extras(AT, given, labels, runs, joined(tube))
