"""Cells that may be laid over an outline, by number, and which of them get in each other's way.

A cell is thought of once; what lies near it and what it cannot be beside is worked out then, so
that growing a figure takes little more than counting. Lengths are in links.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from buildplan.fitting.outline import ComplexArray
from buildplan.patterns.figure_cells import Ends, FigureSheet, corners_on, sides_of

BODIES_APART, JOINTS_APART = 0.97, 0.9  # at least, of what shares no joint
NEAR = 2.4  # between the middles of two cells, within which they may touch
MOST_CORNERS = 4
NOWHERE = complex(np.nan, np.nan)

IntArray = npt.NDArray[np.int_]
Group = tuple[int, ...]
"""Cells that are laid together: one, or one and its mirror image."""


class Lattice:
    """Cells by number: their corners clockwise and their sides; `near` are the cells so near that
    they may touch, `against` those that cannot be there beside it."""

    def __init__(self, axis: float | None) -> None:
        """Cells come with their image in the upright mirror axis at `axis`; None where there is
        none."""
        self.sheet, self._axis = FigureSheet(), axis
        self.corners: list[tuple[int, ...]] = []
        self.sides: list[tuple[Ends, ...]] = []
        self.near: list[list[int]] = []
        self.against: list[list[int]] = []
        self._number: dict[frozenset[int], int] = {}
        self._on: dict[Ends, tuple[Group, ...]] = {}
        self._middle: ComplexArray = np.zeros(256, complex)
        # of each cell: its joints in order, the one after each, where they are, and the middles of
        # its sides
        self._joints: IntArray = np.full((256, MOST_CORNERS), -1)
        self._following: IntArray = np.full((256, MOST_CORNERS), -1)
        self._at: ComplexArray = np.full((256, MOST_CORNERS), NOWHERE)
        self._halfway: ComplexArray = np.full((256, MOST_CORNERS), NOWHERE)

    def groups_on(self, side: Ends) -> tuple[Group, ...]:
        """A square and a triangle on a side, each with its image, that can be there by
        themselves."""
        if side not in self._on:
            cells = (corners_on(self.sheet, side, square) for square in (True, False))
            groups = map(self._with_image, cells)
            self._on[side] = tuple(one for one in groups if self._go_together(one))
        return self._on[side]

    def first_group(self) -> Group:
        """The square on the side from joint 0 at 0 to joint 1 at 1."""
        start = self.sheet.joint(0j), self.sheet.joint(1 + 0j)
        return self._with_image(corners_on(self.sheet, start, square=True))

    def middle(self, cell: int) -> complex:
        """Where the middle of a cell is."""
        return complex(self._middle[cell])

    def _go_together(self, group: Group) -> bool:
        return len(group) == 1 or group[1] not in self.against[group[0]]

    def _with_image(self, corners: tuple[int, ...]) -> Group:
        """A cell with its image, the one on the left first, or alone where it lies on the axis."""
        if self._axis is None:
            return (self._cell(corners),)
        at = self.sheet.at
        image = tuple(
            self.sheet.joint(2 * self._axis - at[joint].conjugate()) for joint in corners[::-1]
        )
        if set(image) == set(corners):
            return (self._cell(corners),)
        pair = self._cell(corners), self._cell(image)
        return pair if self.middle(pair[0]).real < self._axis else pair[::-1]

    def _cell(self, corners: tuple[int, ...]) -> int:
        key = frozenset(corners)
        if key not in self._number:
            self._number[key] = self._new(corners)
        return self._number[key]

    def _new(self, corners: tuple[int, ...]) -> int:
        cell, count = len(self.corners), len(corners)
        if cell == len(self._middle):
            self._middle = np.concatenate([self._middle, np.zeros_like(self._middle)])
            self._joints = np.concatenate([self._joints, np.full_like(self._joints, -1)])
            self._following = np.concatenate([self._following, np.full_like(self._following, -1)])
            self._at = np.concatenate([self._at, np.full_like(self._at, NOWHERE)])
            self._halfway = np.concatenate([self._halfway, np.full_like(self._halfway, NOWHERE)])
        following = (*corners[1:], corners[0])
        at, at_next = np.array([self.sheet.at[joint] for joint in (*corners, *following)]).reshape(
            2, count
        )
        self._middle[cell] = at.sum() / count
        self._joints[cell, :count], self._at[cell, :count] = corners, at
        self._following[cell, :count] = following
        self._halfway[cell, :count] = (at + at_next) / 2
        self.corners.append(corners)
        self.sides.append(tuple(sides_of(corners)))
        apart = np.abs(self._middle[:cell] - self._middle[cell])
        near = np.flatnonzero(apart < NEAR)
        against = near[self._against(cell, near, count)]
        self.near.append([cell, *near.tolist()])
        self.against.append(against.tolist())
        for other in near.tolist():
            self.near[other].append(cell)
        for other in against.tolist():
            self.against[other].append(cell)
        return cell

    def _against(self, cell: int, near: IntArray, count: int) -> npt.NDArray[np.bool_]:
        """Which of the cells near a new one it cannot be beside: they have a side that runs the
        same way, bodies that share no joint too near one another, or joints."""
        joints, following = self._joints[near], self._following[near]
        own, next_own = self._joints[cell, :count], self._following[cell, :count]
        first = joints[:, :, None] == own
        second = following[:, :, None] == next_own
        crossed = (joints[:, :, None] == next_own) | (following[:, :, None] == own)
        bodies = np.abs(self._halfway[near][:, :, None] - self._halfway[cell, :count])
        places = np.abs(self._at[near][:, :, None] - self._at[cell, :count])
        wrong = first & second
        wrong |= (bodies < BODIES_APART) & ~(first | second | crossed)
        wrong |= (places < JOINTS_APART) & ~first
        return np.asarray(wrong.any(axis=(1, 2)))
