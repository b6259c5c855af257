"""The forms that the sentences of the steps share."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.voice import Voice

ALONG = " – "


def sentences(*parts: str) -> str:
    """The parts that say something, one after another."""
    return " ".join(part for part in parts if part)


def first_to_last(voice: Voice, first: str, last: str) -> str:
    """A run of things in their order, named by its ends: `A24 to A32`."""
    return voice.say("{first} to {last}", first=first, last=last)


def count_word(voice: Voice, number: int) -> str:
    """Small numbers as words: `chain of four`, `two pairs`."""
    say_in = voice.say_in
    small = (
        say_in("number", "no"),
        say_in("number", "one"),
        say_in("number", "two"),
        say_in("number", "three"),
        say_in("number", "four"),
        say_in("number", "five"),
        say_in("number", "six"),
        say_in("number", "seven"),
        say_in("number", "eight"),
        say_in("number", "nine"),
        say_in("number", "ten"),
    )
    return small[number] if 0 <= number < len(small) else voice.whole(number)


def colours(voice: Voice, runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """Balloons in their order: `all deep blue`, `3 deep blue, 1 ivory, over and over`."""
    if len(runs) == 1:
        return voice.say("all {colour}", colour=runs[0][1])
    order = ", ".join(
        voice.say("{count} {colour}", count=count, colour=name) for count, name in runs
    )
    return voice.say("{colours}, over and over", colours=order) if over_and_over else order


def runs_told(voice: Voice, names: Sequence[str], numbers: Sequence[int]) -> list[str]:
    """Names with their numbers: `A1 to A8`, `A12`; runs of three or more are joined up."""
    runs: list[list[int]] = []
    for place, number in enumerate(numbers):
        if runs and number == numbers[runs[-1][-1]] + 1:
            runs[-1].append(place)
        else:
            runs.append([place])
    told: list[str] = []
    for run in runs:
        if len(run) > 2:
            told.append(first_to_last(voice, names[run[0]], names[run[-1]]))
        else:
            told += [names[place] for place in run]
    return told


def number_ranges(voice: Voice, numbers: Sequence[int]) -> str:
    """`1 to 4, 6 and 9`."""
    return voice.listed(runs_told(voice, [voice.whole(number) for number in numbers], numbers))


def chain_letters(voice: Voice, letters: Sequence[str]) -> str:
    """`A to D and G`: the letters of chains."""
    return voice.listed(runs_told(voice, letters, [_number(letter) for letter in letters]))


def _number(letters: str) -> int:
    """A is 1, Z 26, AA 27; letters of another kind follow nothing."""
    number = 0
    for letter in letters:
        number = 26 * number + ord(letter) - ord("A") + 1
    return number if letters.isascii() and letters.isupper() else -1


def balloons(voice: Voice, number: int) -> str:
    """`1 balloon`, `20 balloons`."""
    return voice.say_count("{number} balloon", "{number} balloons", number)


def neck_knots(voice: Voice, number: int) -> str:
    """`1 neck knot`, `20 neck knots`."""
    return voice.say_count("{number} neck knot", "{number} neck knots", number)


def tail_knots(voice: Voice, number: int) -> str:
    """`1 tail knot`, `20 tail knots`."""
    return voice.say_count("{number} tail knot", "{number} tail knots", number)
