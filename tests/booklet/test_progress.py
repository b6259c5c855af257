"""What stands at each moment, against the steps told one by one."""

from __future__ import annotations

import pytest
import shipped

from buildplan.booklet.common.progress import BuildProgress
from buildplan.sequence.model import Kind, Step


def brought(steps: list[Step]) -> tuple[set[str], set[str]]:
    adding = [op for step in steps for op in step.operations if op.adds]
    return {link for op in adding for link in op.links}, {j for op in adding for j in op.locks}


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_the_piece_grows_as_the_steps_say(name: str) -> None:
    book = shipped.book_of(name)
    progress = BuildProgress(book)
    for step in book.steps:
        scene = progress.whole(step)
        links, locks = brought([step])
        assert (set(scene.new_links), set(scene.new_locks)) == (links, locks)
        links, locks = brought([s for s in book.steps if s.number < step.number])
        assert (set(scene.done_links), set(scene.done_locks)) == (links, locks)
    last = progress.finished(book.steps[-1])
    assert last.new_links == set(book.framework.link)
    assert last.new_locks == set(book.framework.lock_at)


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_a_turn_shows_what_it_brings_and_what_stands_then(name: str) -> None:
    """Each brace is locked before the next is tied: in a turn of a brace step its own locks are
    new, and those of the turn before it are on. Nothing that comes later is there."""
    book = shipped.book_of(name)
    progress = BuildProgress(book)
    later = set(book.framework.link)
    for step in book.steps:
        for number, turn in enumerate(step.turns):
            brings = {id_ for op in turn.operations if op.adds for id_ in op.links}
            later -= brings
            if step.kind is not Kind.BRACE:
                continue
            scene = progress.at_turns(step, [number], turn.joints)
            assert scene.new_links == {id_ for op in turn.operations for id_ in op.links}
            assert scene.new_locks == {j for op in turn.operations for j in op.locks}
            assert not (scene.new_links | scene.done_links | scene.loose) & later
            assert scene.far_links <= scene.done_links
            if number:
                assert scene.every_body is not None
                before = {j for op in step.turns[number - 1].operations for j in op.locks}
                near = {row for row in before if row in set(scene.every_body.names)}
                assert near <= scene.done_locks


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_chains_that_go_on_unbraced_are_stubs(name: str) -> None:
    """A chain's balloon is drawn where it lies once both its joints are held; with one it hangs."""
    book = shipped.book_of(name)
    progress = BuildProgress(book)
    chains = {link for long in book.framework.chains for link in long.chain.links}
    held: set[str] = set()
    for step in (s for s in book.steps if s.kind is Kind.BRACE):
        for number, turn in enumerate(step.turns):
            held |= set(turn.joints)
            scene = progress.at_turns(step, [number], turn.joints)
            for joint in turn.joints:
                for link in set(book.framework.links_at[joint]) & chains:
                    found = book.framework.link[link]
                    if {found.start, found.finish} <= held:
                        assert link in scene.done_links
                    else:
                        assert link in scene.loose | scene.done_links
