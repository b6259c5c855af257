"""Activities that need one another, and the critical path among them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

TIE = "tie"
INFLATE = "inflate"


@dataclass(frozen=True)
class Activity:
    """Work that is not interrupted: how long it takes, what must be finished before it, the
    skill it takes and how many people at once. `block` names the work it belongs with: a
    person stays with a block where there is a choice. `piece` names the piece it is for, where
    several are built at once: people leave a piece only when there is nothing to do at it."""

    id: str
    minutes: float
    needs: tuple[str, ...] = ()
    skill: str = TIE
    people: int = 1
    block: str = ""
    piece: str = ""


@dataclass(frozen=True)
class Window:
    """When an activity can start and finish without delaying the whole (minutes)."""

    earliest_start: float
    earliest_finish: float
    latest_start: float
    latest_finish: float

    @property
    def slack(self) -> float:
        """How long it can be put off without delaying the whole."""
        return self.latest_start - self.earliest_start


@dataclass(frozen=True)
class Network:
    """Windows by activity, the length of the whole with hands enough, and one critical
    path: activities, each needing the one before, that together take the whole length."""

    windows: Mapping[str, Window]
    minutes: float
    path: tuple[str, ...]


def in_needs_order(activities: Sequence[Activity]) -> list[Activity]:
    """Activities so that each comes after what it needs, in the order given where there is a
    choice. Raises ValueError when some need one another in a circle."""
    by_id = {activity.id: activity for activity in activities}
    waiting = {activity.id: len(set(activity.needs)) for activity in activities}
    users = users_of(activities)
    ordered = [activity for activity in activities if not waiting[activity.id]]
    for activity in ordered:
        for user in users[activity.id]:
            waiting[user] -= 1
            if not waiting[user]:
                ordered.append(by_id[user])
    if len(ordered) < len(activities):
        raise ValueError("some activities need one another in a circle")
    return ordered


def users_of(activities: Sequence[Activity]) -> Mapping[str, list[str]]:
    """Ids of the activities that need each. Raises ValueError when one is needed that is not
    among them."""
    users: dict[str, list[str]] = {activity.id: [] for activity in activities}
    missing = {need for activity in activities for need in activity.needs}.difference(users)
    if missing:
        raise ValueError(f"needed, but not there: {', '.join(sorted(missing))}")
    for activity in activities:
        for need in dict.fromkeys(activity.needs):
            users[need].append(activity.id)
    return users


def critical_path(activities: Sequence[Activity]) -> Network:
    """Forward and backward pass (critical path method; Kelley and Walker 1959)."""
    ordered = in_needs_order(activities)
    users = users_of(activities)
    early: dict[str, float] = {}
    for activity in ordered:
        start = max((early[need] for need in activity.needs), default=0.0)
        early[activity.id] = start + activity.minutes
    whole = max(early.values(), default=0.0)
    late: dict[str, float] = {}
    minutes = {activity.id: activity.minutes for activity in activities}
    for activity in reversed(ordered):
        late[activity.id] = min(
            (late[user] - minutes[user] for user in users[activity.id]), default=whole
        )
    windows = {
        a.id: Window(early[a.id] - a.minutes, early[a.id], late[a.id] - a.minutes, late[a.id])
        for a in activities
    }
    return Network(windows, whole, _one_path(ordered, early))


def _one_path(ordered: Sequence[Activity], early: Mapping[str, float]) -> tuple[str, ...]:
    """Back from the activity that finishes last, always to the need that finished last."""
    needs = {activity.id: activity.needs for activity in ordered}
    path: list[str] = []
    at = max((a.id for a in ordered), key=lambda name: early[name], default=None)
    while at is not None:
        path.append(at)
        at = max(needs[at], key=lambda name: early[name], default=None)
    return tuple(reversed(path))
