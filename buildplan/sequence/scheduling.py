"""Sharing activities among people: list scheduling by the longest way to the end.

Whenever somebody is free, they take, of what could be started and they are able to do, first
what the fewest of the crew can do, then the activity with the longest work still behind it
(Hu 1961; Graham 1969 for the bound: with N equal people never longer than (2 - 1/N) times the
best possible). Where several pieces are built at once, what can be done at a piece that somebody
free is at already goes before all that, so that people do not run from piece to piece.
"""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from buildplan.sequence.network import INFLATE, TIE, Activity, in_needs_order, users_of


@dataclass(frozen=True)
class Person:
    """Somebody of the crew, by number from 1, and what they are able to do."""

    number: int
    skills: frozenset[str] = frozenset({TIE, INFLATE})


@dataclass(frozen=True)
class Assignment:
    """An activity done by people (places in the crew) from start to finish, in minutes."""

    activity: str
    people: tuple[int, ...]
    start: float
    finish: float


@dataclass(frozen=True)
class Schedule:
    """Who does what when; `minutes` is when the last activity ends."""

    assignments: tuple[Assignment, ...]
    minutes: float


def schedule(
    activities: Sequence[Activity], crew: Sequence[Person], grain: float = 0.0
) -> Schedule:
    """Share `activities` among `crew`. Where the ways to the end of two differ by less than
    about `grain` minutes, the one listed first goes first, so that people change their work
    less often. Raises ValueError when an activity takes more people of a skill than there
    are, or when activities need one another in a circle."""
    for activity in activities:
        able = sum(1 for person in crew if activity.skill in person.skills)
        if able < activity.people:
            raise ValueError(f"{activity.id} takes {activity.people} who can {activity.skill}")
    return _Floor(activities, crew, grain).run()


def ways_to_the_end(activities: Sequence[Activity]) -> Mapping[str, float]:
    """Minutes of the longest way from the start of each activity to the end of the whole."""
    users = users_of(activities)
    way: dict[str, float] = {}
    for activity in reversed(in_needs_order(activities)):
        way[activity.id] = activity.minutes + max((way[u] for u in users[activity.id]), default=0)
    return way


class _Floor:
    """The state of the work while time goes on."""

    def __init__(
        self, activities: Sequence[Activity], crew: Sequence[Person], grain: float
    ) -> None:
        self.activities = {activity.id: activity for activity in activities}
        self.crew = crew
        self.users = users_of(activities)
        self.waiting = {activity.id: len(set(activity.needs)) for activity in activities}
        way = ways_to_the_end(activities)
        if grain:
            way = {name: minutes // grain for name, minutes in way.items()}
        self.rank = {a.id: (-way[a.id], place) for place, a in enumerate(activities)}
        # what can be started, by what it takes: a few heaps, so that nobody who can only
        # inflate has to look through all the tying
        self.ready: dict[tuple[str, int, str], list[tuple[tuple[float, int], str]]] = {}
        self.able = Counter(skill for person in crew for skill in person.skills)
        self.idle = set(range(len(crew)))
        self.block = [""] * len(crew)
        self.piece = [""] * len(crew)
        self.running: list[tuple[float, int, Assignment]] = []
        self.done: list[Assignment] = []

    def run(self) -> Schedule:
        for name, count in self.waiting.items():
            if not count:
                self._make_ready(name)
        now = 0.0
        self._start_what_can_be(now)
        while self.running:
            now = self.running[0][0]
            while self.running and self.running[0][0] <= now:
                self._finish(heapq.heappop(self.running)[2])
            self._start_what_can_be(now)
        return Schedule(tuple(self.done), now)

    def _make_ready(self, name: str) -> None:
        activity = self.activities[name]
        heap = self.ready.setdefault((activity.skill, activity.people, activity.piece), [])
        heapq.heappush(heap, (self.rank[name], name))

    def _finish(self, assignment: Assignment) -> None:
        self.idle.update(assignment.people)
        for user in self.users[assignment.activity]:
            self.waiting[user] -= 1
            if not self.waiting[user]:
                self._make_ready(user)

    def _start_what_can_be(self, now: float) -> None:
        while self.idle:
            startable = [
                (self._nobody_at(piece, skill), self.able[skill], heap[0], heap)
                for (skill, people, piece), heap in self.ready.items()
                if heap and len(self._idle_and_able(skill)) >= people
            ]
            if not startable:
                return
            *_, heap = min(startable, key=lambda entry: entry[:3])
            _, name = heapq.heappop(heap)
            self._start(self.activities[name], now)

    def _idle_and_able(self, skill: str) -> list[int]:
        return [i for i in self.idle if skill in self.crew[i].skills]

    def _nobody_at(self, piece: str, skill: str) -> bool:
        return all(self.piece[i] != piece for i in self._idle_and_able(skill))

    def _start(self, activity: Activity, now: float) -> None:
        """Whoever is able to do the least else goes first, then whoever is at that piece, then
        whoever is at that work."""

        def preference(i: int) -> tuple[int, bool, bool, int]:
            elsewhere = self.piece[i] != activity.piece
            return len(self.crew[i].skills), elsewhere, self.block[i] != activity.block, i

        people = tuple(
            sorted(sorted(self._idle_and_able(activity.skill), key=preference)[: activity.people])
        )
        assignment = Assignment(activity.id, people, now, now + activity.minutes)
        self.idle.difference_update(people)
        for i in people:
            self.block[i] = activity.block
            self.piece[i] = activity.piece
        self.done.append(assignment)
        heapq.heappush(self.running, (assignment.finish, len(self.done), assignment))
