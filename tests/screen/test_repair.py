"""Repairs, replayed on the knots of the finished piece by a reader of its own."""

from __future__ import annotations

import pytest
from screen_pieces import NAMES, book

from buildplan.framework.model import Framework
from buildplan.screen.model import ActData
from buildplan.screen.repair import knots_by_end, repairs

End = tuple[str, str]


class Piece:
    """Knots as sets of balloon ends, and the locks that are closed over them."""

    def __init__(self, name: str) -> None:
        self.framework: Framework = book(name).framework
        self.knots = {
            end: frozenset((link, str(which)) for link, which in knot.ends)
            for end, knot in (
                ((link, str(which)), knot)
                for (link, which), knot in knots_by_end(book(name).steps).items()
            )
        }
        self.locked = set(self.framework.lock_at)

    def place(self, joint: str) -> str:
        return self.framework.place(joint)


def replay(piece: Piece, burst: str, acts: list[ActData]) -> None:
    """Do a repair; refuse what hands could not do."""
    before, locks = dict(piece.knots), set(piece.locked)
    sized = closed = False
    taken: dict[str, set[str]] = {"neck": set(), "tail": set()}
    for act in acts:
        if act.act in ("undo", "tie"):
            assert piece.place(act.joint) not in piece.locked, "a lock holds the knot"
            mine = (burst, act.own_end)
            assert act.joint == getattr(piece.framework.link[burst], act.own_end)
            other = (act.link, act.end) if act.link else None
            if act.act == "undo":
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
        elif act.act == "open":
            piece.locked.remove(act.joint)
        elif act.act == "lock":
            assert act.joint not in piece.locked
            piece.locked.add(act.joint)
        elif act.act == "size":
            sized = True
            assert not any(burst == link for knot in piece.knots.values() for link, _ in knot)
        else:
            closed = True
    alone = {(burst, which): frozenset({(burst, which)}) for which in ("neck", "tail")}
    assert alone | piece.knots == alone | before, "not as it was"
    assert piece.locked == locks


@pytest.mark.parametrize("name", NAMES)
def test_every_repair_can_be_done_and_leaves_the_piece_as_it_was(name: str) -> None:
    found = repairs(book(name).framework, book(name).steps)
    assert set(found) == set(book(name).framework.link)
    for link, acts in found.items():
        replay(Piece(name), link, list(acts))


@pytest.mark.parametrize("name", NAMES)
def test_no_more_is_opened_than_the_two_places_of_the_balloon(name: str) -> None:
    framework = book(name).framework
    for link, acts in repairs(framework, book(name).steps).items():
        ends = framework.link[link]
        places = {framework.place(joint) for joint in (ends.start, ends.finish)}
        assert {act.joint for act in acts if act.act == "open"} == places & set(framework.lock_at)
        assert {a.joint for a in acts if a.act in ("undo", "tie")} == {ends.start, ends.finish}


def test_a_wrong_repair_is_found_out() -> None:
    """The replay refuses a knot that is undone under its lock."""
    acts = list(repairs(book("reading_star").framework, book("reading_star").steps)["A1-A2"])
    with pytest.raises(AssertionError):
        replay(Piece("reading_star"), "A1-A2", [act for act in acts if act.act != "open"])
    with pytest.raises(AssertionError):
        replay(Piece("reading_star"), "A1-A2", acts[:-1])
