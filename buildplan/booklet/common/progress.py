"""What stands at each moment of the work, as scenes for pictures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.spatial import cKDTree

from buildplan.booklet.common.book import Book
from buildplan.drawing.bodies import Bodies, Scene, every_body, link_length_m
from buildplan.drawing.closeup import REACH
from buildplan.sequence.model import Kind, Step, Turn


@dataclass(frozen=True)
class Moment:
    """When a part comes into the piece: in which step, and at which turn of the whole work."""

    step: int
    turn: int


class Progress:
    """When each link balloon and each lock comes into a piece."""

    def __init__(self, book: Book) -> None:
        self._whole = every_body(book.framework, book.shape)
        self._tree = cKDTree(self._whole.centre)
        self._link_m = link_length_m(book.framework)
        self._links: dict[str, Moment] = {}
        self._locks: dict[str, Moment] = {}
        self._turn_of: dict[tuple[int, int], int] = {}
        for count, (step, number, turn) in enumerate(_in_order(book.steps)):
            moment = Moment(step.number, count)
            self._turn_of[step.number, number] = count
            for operation in turn.operations:
                if operation.adds:
                    self._links.update(dict.fromkeys(operation.links, moment))
                    self._locks.update(dict.fromkeys(operation.locks, moment))
                if operation.kind is Kind.LAY:
                    # the chains of a part lie somewhere else until then
                    part = book.framework.built_with(operation.joints[0])
                    for long in part.chains if book.framework.parts else ():
                        self._links.update(dict.fromkeys(long.chain.links, moment))
        self._empty = Scene(
            book.framework,
            book.shape,
            patterns=book.patterns,
            every_body=self._whole,
        )

    def whole(self, step: Step) -> Scene:
        """The whole piece: what a step adds is new, what earlier steps added stands."""
        return _scene(
            self._empty,
            {name: moment.step for name, moment in self._links.items()},
            {name: moment.step for name, moment in self._locks.items()},
            step.number,
        )

    def finished(self, step: Step) -> Scene:
        """The whole piece, everything that stands after a step as if it were new."""
        return replace(
            self._empty,
            new_links=frozenset(
                n for n, moment in self._links.items() if moment.step <= step.number
            ),
            new_locks=frozenset(
                n for n, moment in self._locks.items() if moment.step <= step.number
            ),
        )

    def near(self, step: Step, joints: Sequence[str]) -> Scene:
        """As `whole`, without what is too far from the joints for a close-up of them."""
        near = self._near(joints)
        links, locks = self._moments(near)
        return _scene(
            replace(self._empty, every_body=near),
            {name: moment.step for name, moment in links.items()},
            {name: moment.step for name, moment in locks.items()},
            step.number,
        )

    def turn(self, step: Step, number: int, joints: Sequence[str]) -> Scene:
        """As `near`, for turn `number` (from 0) of a step by itself."""
        near = self._near(joints)
        links, locks = self._moments(near)
        return _scene(
            replace(self._empty, every_body=near),
            {name: moment.turn for name, moment in links.items()},
            {name: moment.turn for name, moment in locks.items()},
            self._turn_of[step.number, number],
        )

    def _near(self, joints: Sequence[str]) -> Bodies:
        at = np.array([self._empty.shape.at[joint] for joint in joints]).reshape(-1, 3)
        kept = np.zeros(len(self._whole.names), dtype=bool)
        for rows in self._tree.query_ball_point(at, REACH * self._link_m):
            kept[rows] = True
        return self._whole.some(kept)

    def _moments(self, near: Bodies) -> tuple[dict[str, Moment], dict[str, Moment]]:
        links, locks = set(near.names[near.is_link]), set(near.names[~near.is_link])
        return (
            {name: self._links[name] for name in links if name in self._links},
            {name: self._locks[name] for name in locks if name in self._locks},
        )


def _scene(empty: Scene, links: Mapping[str, int], locks: Mapping[str, int], now: int) -> Scene:
    """What comes at `now` is new, what came before stands."""
    return replace(
        empty,
        new_links=frozenset(name for name, at in links.items() if at == now),
        done_links=frozenset(name for name, at in links.items() if at < now),
        new_locks=frozenset(name for name, at in locks.items() if at == now),
        done_locks=frozenset(name for name, at in locks.items() if at < now),
    )


def _in_order(steps: Sequence[Step]) -> Iterator[tuple[Step, int, Turn]]:
    """Every turn of work in the order in which it is done, with its step and its number there."""
    for step in steps:
        for number, turn in enumerate(step.turns):
            yield step, number, turn
