"""A crew's timetable, job by job: when each job begins and ends, and who does what in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job
from buildplan.sequence.model import Kind
from buildplan.sequence.stretches import Stretch, stretches
from buildplan.sequence.timetable import PlaceWork, WorkPlace

INK, SOFT, GRID = "#1A1A1A", "#595959", "#D8D6CF"
# Two tones, so that one bar ends where the next begins in grey as well.
BARS = ("#D5DEE6", "#F0EBDD")
LANE, BAR, NAME, TYPE, FOOT = 30.0, 16.0, 62.0, 9.0, 17.0
LANE_GAP = 3.0  # below a bar; a number may stand above it
LESSER = frozenset({Kind.SINGLE, Kind.TAG, Kind.LAY, Kind.SETTLE})  # done on the way
GRIDS = (5, 10, 15, 30, 60, 120, 240, 480)
BAR_HIGH, LEAST_APART = 12.0, 38.0  # of a job's own line; of the times above it
HELPED_HIGH = 5.0  # of the dark line in a bar
MOST_LANES = 12


def act_word(kind: Kind, voice: Voice) -> str:
    """What somebody does in a kind of work, in a word: `sizes`, `braces`; settling a brace is
    part of tying it."""
    words = {
        Kind.SIZE: voice.say_in("what somebody does", "sizes"),
        Kind.PAIR: voice.say_in("what somebody does", "pairs"),
        Kind.TIE_OFF: voice.say_in("what somebody does", "pairs"),
        Kind.CHAIN: voice.say_in("what somebody does", "chains"),
        Kind.CLOSE_RING: voice.say_in("what somebody does", "closes"),
        Kind.TAG: voice.say_in("what somebody does", "tags"),
        Kind.LAY: voice.say_in("what somebody does", "lays"),
        Kind.BRACE: voice.say_in("what somebody does", "braces"),
        Kind.SETTLE: voice.say_in("what somebody does", "braces"),
        Kind.SINGLE: voice.say_in("what somebody does", "singles"),
        Kind.JOIN: voice.say_in("what somebody does", "joins"),
        Kind.LOCK: voice.say_in("what somebody does", "locks"),
        Kind.TURN_OVER: voice.say_in("what somebody does", "turns over"),
        Kind.INSPECT: voice.say_in("what somebody does", "looks over"),
        Kind.STAND_UP: voice.say_in("what somebody does", "stands up"),
    }
    return words[kind]


def timed_jobs(part: PlaceWork, jobs: Sequence[Job]) -> tuple[Stretch, ...]:
    """The jobs of a part by the time at which they begin: each as often as it is taken up."""
    return stretches(part, [jobs])


def worked_at(some: Sequence[Stretch]) -> list[tuple[float, float]]:
    """When a job is worked at, each time once."""
    found: list[tuple[float, float]] = []
    for one in sorted(some, key=lambda one: one.start):
        if found and one.start <= found[-1][1]:
            found[-1] = found[-1][0], max(found[-1][1], one.finish)
        else:
            found.append((one.start, one.finish))
    return found


def who_words(acts_of: Mapping[int, Sequence[Kind]], voice: Voice) -> str:
    """Who is at a job: `1 and 2`, or `1: braces; 2: locks` where they do not do the same."""
    chief = {person: _chief(kinds) for person, kinds in acts_of.items()}
    if len({frozenset(kinds) for kinds in chief.values()}) == 1:
        return _people([person + 1 for person in acts_of], voice)
    return act_words(chief, voice)


def _chief(kinds: Sequence[Kind]) -> Sequence[Kind]:
    """Some kinds of work less what is done on the way to them; rings are closed on the way to where
    they are joined."""
    lesser = LESSER | ({Kind.CLOSE_RING} if Kind.JOIN in kinds else set())
    return [kind for kind in kinds if kind not in lesser] or kinds


def act_words(acts_of: Mapping[int, Sequence[Kind]], voice: Voice) -> str:
    """What each person (a place in the crew) does, who do the same together."""
    together: dict[tuple[str, ...], list[int]] = {}
    for person, kinds in acts_of.items():
        acts = tuple(dict.fromkeys(act_word(kind, voice) for kind in kinds))
        together.setdefault(acts, []).append(person + 1)
    said = (
        voice.say("{name}: {words}", name=_people(who, voice), words=", ".join(acts))
        for acts, who in together.items()
    )
    return clauses(voice, said)


def _people(numbers: Sequence[int], voice: Voice) -> str:
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return voice.say("{first} to {last}", first=numbers[0], last=numbers[-1])
    return voice.listed([voice.whole(number) for number in numbers])


Times = Sequence[tuple[float, float]]


def axis(part: PlaceWork, width: float) -> Picture:
    """The clock above the bars of a part."""
    ticks = _ticks(part, width)
    marks = [
        Label((x, 2), clock(minutes), TYPE, SOFT, anchor=anchor) for minutes, x, anchor in ticks
    ]
    return Picture(width, TYPE + 3, tuple(marks), ", ".join(clock(at) for at, *_ in ticks))


def job_bar(
    part: PlaceWork, times: Times, width: float, number: int, voice: Voice, helped: Times = ()
) -> Picture:
    """When a job is worked at, on a line as long as the part, with a dark line in the bar while it
    takes more people than the crew has (`helped`)."""
    scale = width / part.minutes
    marks: list[Mark] = [
        Polyline(((x, 0), (x, BAR_HIGH)), Ink(stroke=GRID, width=0.6))
        for _, x, _ in _ticks(part, width)
    ]
    for start, finish in times:
        left, right = start * scale, max(finish * scale, start * scale + 1.5)
        box = ((left, 1), (right, 1), (right, BAR_HIGH - 1), (left, BAR_HIGH - 1))
        marks.append(Polyline(box, Ink(BARS[0], INK, 0.7), closed=True))
    for start, finish in helped:
        left, right = start * scale, max(finish * scale, start * scale + 1.5)
        box = ((left, 1), (right, 1), (right, HELPED_HIGH), (left, HELPED_HIGH))
        marks.append(Polyline(box, Ink(INK), closed=True))
    told = [
        voice.say(
            "job {number} from {start} to {finish}",
            number=number,
            start=clock(start),
            finish=clock(finish),
        )
        for start, finish in times
    ]
    return Picture(width, BAR_HIGH, tuple(marks), ", ".join(told))


def _ticks(part: PlaceWork, width: float) -> list[tuple[float, float, str]]:
    """Round times on the clock of a part: minutes, how far along they are, and where their words
    are held."""
    scale = width / part.minutes
    every = next((g for g in GRIDS if g * scale >= LEAST_APART), GRIDS[-1])
    ticks = [(i * every, i * every * scale) for i in range(int(part.minutes // every) + 1)]
    return [
        (minutes, x, "start" if not x else "end" if x + LEAST_APART / 2 > width else "middle")
        for minutes, x in ticks
    ]


def place_name(place: WorkPlace, voice: Voice) -> str:
    """Where a part of the work is done, as its heading says."""
    if place is WorkPlace.WORKSHOP:
        return voice.say("Beforehand, in the workshop")
    return voice.say("On site")


def place_word(place: WorkPlace, voice: Voice) -> str:
    """Where work is done, in a word."""
    if place is WorkPlace.WORKSHOP:
        return voice.say_in("where work is done", "workshop")
    return voice.say_in("where work is done", "site")


def lane_name(person: int, voice: Voice) -> str:
    """What stands at a lane: the person's number, from 1."""
    return voice.say("person {number}", number=person + 1)


def lane_words(person: int, told: str, voice: Voice) -> str:
    """What a lane shows, in words."""
    return voice.say("Person {number}: {told}.", number=person + 1, told=told)


def clock(minutes: float) -> str:
    """Time since the start: `0:05`, `2:31`."""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours}:{rest:02}"
