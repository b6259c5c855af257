"""Activities that need one another."""

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
