"""The booklet of a wall in two layers, which is built lying on its back: words and pictures agree.

What is told is our own; the counts are those of a grid of 8 x 8 joints with a window of 3 x 2 cells
in two layers: 2 * (64 - 2) joints, and as many pairs of joints that face one another as in one
layer (from the drawing of the wall, no source).
"""

from __future__ import annotations

import re
from string import ascii_uppercase

import pytest
from shipped import DESIGNS

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import plan_views
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.framework.model import LongChain
from buildplan.instructions.printed_rows import printed
from buildplan.sequence.model import Kind

BETWEEN_LAYERS = 64 - 2


@pytest.fixture(scope="module")
def book() -> Book:
    design = read_design(DESIGNS / "gallery" / "story_wall.yaml")
    return gather_book(design, PAPERS["a4"], design.units, "training")


def test_it_is_said_once_which_side_is_up(book: Book) -> None:
    texts = [book.told(step).text for step in book.steps]
    assert sum("lying on its back, front up" in text for text in texts) == 1
    titles = [book.told(step).title for step in book.steps]
    assert not any(title.startswith("Set chain") for title in titles)
    assert "turn the piece up on its foot" in texts[-1]


def test_every_close_up_looks_down_on_its_front(book: Book) -> None:
    views = plan_views(book)
    joined = [step for step in book.steps if step.kind is Kind.JOIN]
    toward = [view.panel.camera.axes[2] for step in joined for view in views.of(step)]
    assert toward
    assert all(axis[2] > 0.8 for axis in toward)


def test_balloons_between_the_layers_are_no_chains(book: Book) -> None:
    told = next(book.told(s).text for s in book.steps if s.kind is Kind.TIE_OFF)
    assert f"{BETWEEN_LAYERS} are tied in between two joints as they are" in told
    assert "16 end chains" in told


SHARED = re.compile(
    r"Joints (?P<joints>.+?), (?:one after another|as they come): "
    r"(?:knots? of (?P<knots>.+?))?(?:; )?"
    r"(?:free ends? of (?P<ends>.+?))?; then lock it"
)


def _listed(words: str) -> list[str]:
    """`J2 to J5, B7 and C1`, or `D to F and H`, or `B2-J2 to B7-J7`, one by one."""
    found: list[str] = []
    for run in re.split(r", | and ", words):
        first, _, last = run.partition(" to ")
        found += _between(first, last or first)
    return found


def _between(first: str, last: str) -> list[str]:
    if first.isalpha():
        alphabet = [*ascii_uppercase, *(a + b for a in "AB" for b in ascii_uppercase)]
        return alphabet[alphabet.index(first) : alphabet.index(last) + 1]
    numbers = [int(re.findall(r"\d+", name)[0]) for name in (first, last)]
    return [re.sub(r"\d+", str(i), first) for i in range(numbers[0], numbers[1] + 1)]


def _at_each(words: str, count: int) -> list[list[str]]:
    """What is named of each of so many joints: chains of all, then those that come in turn."""
    found: list[list[str]] = [[] for _ in range(count)]
    in_turn = r"(?:chains|balloons) ([^;]+?), one at each in turn"
    for names in re.findall(in_turn, words):
        named = _listed(names)
        assert len(named) == count, words
        for one, name in zip(found, named, strict=True):
            one.append(name)
    for name in re.findall(r"(?:chain|balloon) ([\w-]+)", re.sub(in_turn, "", words)):
        for one in found:
            one.append(name)
    return found


def test_joints_of_a_row_share_a_line_that_says_what_meets_at_each(book: Book) -> None:
    """Read back: the chains and balloons at each joint are those of the graph that pass there and
    that end there, and every joint is told once."""
    chains = {long.letter: long for long in book.framework.chains}
    alone = book.context.piece.alone
    told: list[str] = []
    for step in book.steps:
        for line in printed(book.context, step.turns, book.told(step).turns):
            told += re.findall(r"^Joint (\w+): .*; then lock it", line)
            said = SHARED.fullmatch(line)
            if said is None:
                continue
            joints = _listed(said["joints"])
            told += joints
            knots = _at_each(said["knots"] or "", len(joints))
            ends = _at_each((said["ends"] or "").replace("free ends of ", ""), len(joints))
            for joint, passing, ending in zip(joints, knots, ends, strict=True):
                here = {one for one, long in chains.items() if joint in long.chain.joints}
                ended = {one for one in here if joint in _tips(chains[one])}
                assert set(passing) == here - ended
                assert set(ending) == {alone.get(one, one) for one in ended}
    assert sorted(told) == sorted(book.framework.joints)


def _tips(long: LongChain) -> tuple[str, ...]:
    return () if long.chain.closed else (long.chain.joints[0], long.chain.joints[-1])
