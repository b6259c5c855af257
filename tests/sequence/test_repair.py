"""Repairs, replayed on the knots of the finished piece by a reader of its own: as data, and as
they are told in words."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.ends import End as Which
from buildplan.framework.model import Framework
from buildplan.instructions.repairs import ACTS, act_told
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step
from buildplan.sequence.repair import Act, Deed, knots_by_end, repairs, ways_of
from buildplan.sequence.steps import plan_steps

DESIGNS = Path(__file__).parents[2] / "designs"
# one of each way of building: a closed tube, a column, a wall, a globe, an assembly
NAMES = (
    "reading_star",
    "gallery/reading_column",
    "gallery/story_wall",
    "gallery/reading_globe",
    "gallery/portal",
)


@cache
def planned(name: str) -> tuple[Framework, tuple[Step, ...]]:
    """A shipped design's framework, and the steps that build it."""
    framework = build_framework(read_design(DESIGNS / f"{name}.yaml"))
    return framework, plan_steps(framework)


def read_back(words: str) -> Act:
    """An act from its words alone."""
    for key, text in ACTS.items():
        form = re.escape(text).replace(r"\{joint\}", "(?P<joint>[^ ]+)", 1)
        form = form.replace(r"\{link\}", "(?P<link>[^ ]+?)", 1).replace(r"\{link\}", "(?P=link)")
        found = re.fullmatch(form, words)
        if found is None:
            continue
        deed, *ends = key.split()
        own, *_, other = ends or ("neck", "alone")  # alone a new neck is closed
        told = found.groupdict()
        return Act(
            Deed(deed),
            told.get("joint", ""),
            None if deed in ("open", "size", "lock") else Which(own),
            told.get("link", ""),
            None if other == "alone" else Which(other),
        )
    raise AssertionError(f"says nothing that hands could do: {words}")


End = tuple[str, str]


class Piece:
    """Knots as sets of balloon ends, and the locks that are closed over them."""

    def __init__(self, name: str) -> None:
        self.framework, steps = planned(name)
        self.knots = {
            end: frozenset((link, str(which)) for link, which in knot.ends)
            for end, knot in (
                ((link, str(which)), knot) for (link, which), knot in knots_by_end(steps).items()
            )
        }
        self.locked = set(self.framework.lock_at)

    def place(self, joint: str) -> str:
        return self.framework.place(joint)


def replay(piece: Piece, burst: str, acts: Sequence[Act]) -> None:
    """Do a repair; refuse what hands could not do."""
    before, locks = dict(piece.knots), set(piece.locked)
    sized = closed = False
    taken: dict[str, set[str]] = {"neck": set(), "tail": set()}
    for act in acts:
        if act.deed in (Deed.UNDO, Deed.TIE):
            assert piece.place(act.joint) not in piece.locked, "a lock holds the knot"
            assert act.own_end is not None
            mine = (burst, str(act.own_end))
            assert act.joint == getattr(piece.framework.link[burst], str(act.own_end))
            other = (act.link, str(act.end)) if act.link else None
            if act.deed is Deed.UNDO:
                assert not sized
                held = before.get(mine, frozenset())  # a chain's own end hangs in no knot
                assert other in held if other else held <= {mine}, "no such partner in the knot"
                piece.knots = {
                    end: knot - {mine} for end, knot in piece.knots.items() if end != mine
                }
            else:
                assert sized, "nothing is sized yet"
                if other is None and act.own_end == "neck":
                    assert closed, "the air runs out of an open neck"
                if act.own_end == "tail":
                    assert closed or taken["neck"], "the air runs out of an open neck"
                taken[act.own_end].add(act.link)
                knot = {mine} | ({other} if other else set())
                for end in list(knot):
                    piece.knots[end] = frozenset(knot) | piece.knots.get(end, frozenset())
        elif act.deed is Deed.OPEN:
            piece.locked.remove(act.joint)
        elif act.deed is Deed.LOCK:
            assert act.joint not in piece.locked
            piece.locked.add(act.joint)
        elif act.deed is Deed.SIZE:
            sized = True
            assert not any(burst == link for knot in piece.knots.values() for link, _ in knot)
        else:
            closed = True
    alone = {(burst, which): frozenset({(burst, which)}) for which in ("neck", "tail")}
    assert alone | piece.knots == alone | before, "not as it was"
    assert piece.locked == locks


@pytest.mark.parametrize("name", NAMES)
def test_every_repair_can_be_done_and_leaves_the_piece_as_it_was(name: str) -> None:
    framework, steps = planned(name)
    found = repairs(framework, steps)
    assert set(found) == set(framework.link)
    for link, acts in found.items():
        replay(Piece(name), link, acts)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_told_of_each_way_does_the_repair(name: str) -> None:
    found = repairs(*planned(name))
    ways = ways_of(found)
    assert sorted(link for way in ways for link in way.links) == sorted(found)
    for way in ways:
        for link in way.links[:3]:
            told = [Voice().tell(act_told(act)) for act in found[link]]
            replay(Piece(name), link, [read_back(words) for words in told])


@pytest.mark.parametrize("name", NAMES)
def test_no_more_is_opened_than_the_two_places_of_the_balloon(name: str) -> None:
    framework, steps = planned(name)
    for link, acts in repairs(framework, steps).items():
        ends = framework.link[link]
        places = {framework.place(joint) for joint in (ends.start, ends.finish)}
        opened = {act.joint for act in acts if act.deed is Deed.OPEN}
        assert opened == places & set(framework.lock_at)
        tied = {act.joint for act in acts if act.deed in (Deed.UNDO, Deed.TIE)}
        assert tied == {ends.start, ends.finish}


def test_a_wrong_repair_is_found_out() -> None:
    """The replay refuses a knot that is undone under its lock, and a lock left open."""
    acts = repairs(*planned("reading_star"))["A1-A2"]
    with pytest.raises(AssertionError):
        replay(Piece("reading_star"), "A1-A2", [act for act in acts if act.deed is not Deed.OPEN])
    with pytest.raises(AssertionError):
        replay(Piece("reading_star"), "A1-A2", acts[:-1])
