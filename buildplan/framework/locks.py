"""What holds joints: a lock round one, and a tie that brings joints of different parts together."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Lock:
    """A pair of small rounds twisted round a joint."""

    joint: str
    balloon: str


@dataclass(frozen=True)
class Tie:
    """Joints of different parts that are brought together at one place and held there by a
    lock round all of them; `name` is what the place and its lock are called."""

    joints: tuple[str, ...]

    @property
    def name(self) -> str:
        """The joints' labels with a plus sign between."""
        return "+".join(self.joints)
