"""What stands at each moment, against the steps told one by one."""

from __future__ import annotations

import pytest
import shipped

from buildplan.booklet.common.closeups import ON_THE_PIECE, step_joints
from buildplan.booklet.common.progress import Progress
from buildplan.sequence.model import Kind, Step


def brought(steps: list[Step]) -> tuple[set[str], set[str]]:
    adding = [op for step in steps for op in step.operations if op.adds]
    return {link for op in adding for link in op.links}, {j for op in adding for j in op.locks}


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_the_piece_grows_as_the_steps_say(name: str) -> None:
    book = shipped.book_of(name)
    progress = Progress(book)
    for step in book.steps:
        scene = progress.whole(step)
        links, locks = brought([step])
        assert (scene.new_links, scene.new_locks) == (links, locks)
        links, locks = brought([s for s in book.steps if s.number < step.number])
        assert (scene.done_links, scene.done_locks) == (links, locks)
    last = progress.finished(book.steps[-1])
    assert last.new_links == set(book.framework.link)
    assert last.new_locks == set(book.framework.lock_at)


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_turns_alternate_with_their_locks(name: str) -> None:
    """Each brace is locked before the next is tied: in a turn of a brace step its own locks are
    new, and those of the turn before it are on."""
    book = shipped.book_of(name)
    progress = Progress(book)
    for step in (s for s in book.steps if s.kind is Kind.BRACE):
        for number, turn in enumerate(step.turns):
            scene = progress.turn(step, number, turn.joints)
            assert scene.new_links == {id_ for op in turn.operations for id_ in op.links}
            assert scene.new_locks == {j for op in turn.operations for j in op.locks}
            if number:
                before = {j for op in step.turns[number - 1].operations for j in op.locks}
                near = {row for row in before if row in set(scene.every_body.names)}
                assert near <= scene.done_locks


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_near_by_shows_the_same_as_the_whole(name: str) -> None:
    book = shipped.book_of(name)
    progress = Progress(book)
    for step in (s for s in book.steps if s.kind in ON_THE_PIECE):
        near, whole = progress.near(step, step_joints(step)), progress.whole(step)
        names = set(near.every_body.names)
        assert near.new_links == whole.new_links
        assert near.new_locks == whole.new_locks
        assert near.done_links == {id_ for id_ in whole.done_links if id_ in names}
        assert near.done_locks == {joint for joint in whole.done_locks if joint in names}
