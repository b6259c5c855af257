"""A crew's timetable, job by job: when each job begins and ends, and who does what in it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.language.phrases import clauses, sentences
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
GRIDS = (5, 10, 15, 30, 60, 120, 240, 480)
SLIVER = 4.0  # a bar as narrow has a number only where its job has no other
AT_ONCE = 0.5  # minutes: what goes on after so short a time is one bar
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


def who_words(timed: Stretch, voice: Voice) -> str:
    """`1 and 2: sizes, pairs` or `1: braces, singles; 2: locks`."""
    return act_words(timed.acts, voice)


def act_words(acts_of: Mapping[int, Sequence[Kind]], voice: Voice) -> str:
    """What each person (a place in the crew) does, who do the same together."""
    together: dict[tuple[str, ...], list[int]] = {}
    for person, kinds in acts_of.items():
        acts = tuple(dict.fromkeys(act_word(kind, voice) for kind in kinds))
        together.setdefault(acts, []).append(person + 1)
    said = (f"{_people(who, voice)}: {', '.join(acts)}" for acts, who in together.items())
    return clauses(voice, said)


def _people(numbers: Sequence[int], voice: Voice) -> str:
    if len(numbers) > 2 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return voice.say("{first} to {last}", first=numbers[0], last=numbers[-1])
    return voice.listed([voice.whole(number) for number in numbers])


Times = list[tuple[float, float]]


def bars(part: PlaceWork, timed: Iterable[Stretch], person: int) -> list[tuple[Stretch, Times]]:
    """When a person is at which job, from when till when each time. What is done for two jobs at
    once counts for the later one; of a job that has no other time the first half is its own."""
    found: list[tuple[Stretch, Times]] = []
    later: Times = []
    for one in reversed([*timed]):
        steps = {step.number for step in one.job.steps}
        spans = [s for s in part.spans if s.person == person and steps & set(s.steps)]
        # short work is told together with what follows it, across the end of a job
        times = [(max(s.start, one.start), min(s.finish, one.finish)) for s in spans]
        whole = _joined([(start, finish) for start, finish in times if finish > start])
        if not whole:
            continue
        own = _outside(whole, later)
        if not own:
            start, finish = whole[0]
            own = [(start, (start + finish) / 2)]
            found = [(other, _outside(others, own) or others) for other, others in found]
        found.append((one, own))
        later = _joined([*later, *whole])
    return found[::-1]


def _joined(times: Times) -> Times:
    """The same times without gaps too short to be drawn, in their order."""
    whole: Times = []
    for start, finish in sorted(times):
        if whole and start <= whole[-1][1] + AT_ONCE:
            whole[-1] = (whole[-1][0], max(finish, whole[-1][1]))
        else:
            whole.append((start, finish))
    return whole


def _outside(times: Times, others: Times) -> Times:
    """What of some times is in none of the `others`, and long enough to be drawn."""
    left = times
    for start, finish in others:
        left = [
            part
            for one in left
            for part in ((one[0], min(one[1], start)), (max(one[0], finish), one[1]))
            if part[1] > part[0] + AT_ONCE
        ]
    return left


def chart(part: PlaceWork, jobs: Sequence[Job], width: float, title: str, voice: Voice) -> Picture:
    """A lane for each person, a bar with its number for each job, and the clock below."""
    timed = timed_jobs(part, jobs)
    people = sorted({span.person for span in part.spans})[:MOST_LANES]
    height = LANE * len(people) + FOOT
    scale = (width - NAME - 12) / part.minutes
    every = next((g for g in GRIDS if g * scale >= 34), GRIDS[-1])
    marks: list[Mark] = []
    for i in range(int(part.minutes // every) + 1):
        x = NAME + i * every * scale
        marks.append(Polyline(((x, FOOT - 3), (x, height)), Ink(stroke=GRID, width=0.6)))
        hours, minutes = divmod(i * every, 60)
        marks.append(Label((x, 3), f"{hours}:{minutes:02}", TYPE, SOFT))
    told = []
    for lane, person in enumerate(people):
        low = height - LANE * (lane + 1) + LANE_GAP
        marks.append(Label((0, low + 5), lane_name(person, voice), TYPE, INK, anchor="start"))
        told_here, taken = [], 0.0
        numbers: list[Mark] = []
        for one, times in bars(part, timed, person):
            sides = [(NAME + start * scale, NAME + finish * scale) for start, finish in times]
            for left, right in sides:
                box = ((left, low), (right, low), (right, low + BAR), (left, low + BAR))
                fill = BARS[one.job.number % 2]
                marks.append(Polyline(box, Ink(fill, INK, 0.7), closed=True))
            number = str(one.job.number)
            wide = text_width(number, TYPE, bold=True) + 3
            longest = max(right - left for left, right in sides)
            for left, right in sides:
                at = ((left + right) / 2, low + BAR / 2 - TYPE * 0.36)
                if right - left <= wide:  # above the bar, clear of the number before it
                    if right - left < min(SLIVER, longest):
                        continue
                    at = (max(at[0], taken + wide / 2), low + BAR + 2)
                    taken = at[0] + wide / 2
                numbers.append(Label(at, number, TYPE, INK, bold=True))
            at_work = voice.say(
                "job {number} from {start} to {finish}",
                number=number,
                start=clock(times[0][0]),
                finish=clock(times[-1][1]),
            )
            told_here.append(at_work)
        marks += numbers
        told.append(lane_words(person, ", ".join(told_here), voice))
    return Picture(width, height, tuple(marks), sentences(f"{title}.", *told))


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
