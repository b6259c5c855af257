"""The forms of the trade that the sentences of the steps share."""

from __future__ import annotations

import re
from collections.abc import Sequence

from buildplan.instructions.read_back import ALL_OF, OVER_AND_OVER, RUN
from buildplan.language.phrases import number_ranges, runs_told
from buildplan.language.voice import Voice

ALONG = " – "


def colours(voice: Voice, runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """Balloons in their order: `all deep blue`, `3 deep blue, 1 ivory, over and over`."""
    if len(runs) == 1:
        return voice.say(ALL_OF, colour=runs[0][1])
    order = ", ".join(voice.say(RUN, count=count, colour=name) for count, name in runs)
    return voice.say(OVER_AND_OVER, colours=order) if over_and_over else order


def chain_letters(voice: Voice, letters: Sequence[str]) -> str:
    """`A to D and G`: the letters of chains."""
    return voice.listed(runs_told(voice, letters, [_number(letter) for letter in letters]))


def joint_names(voice: Voice, joints: Sequence[str]) -> str:
    """`B1 to B6 and C2`: joints in the order given."""
    return names_in_runs(voice, joints, joints)


def names_in_runs(voice: Voice, names: Sequence[str], joints: Sequence[str]) -> str:
    """The names of things at joints, in the order given, joined up where the joints count on."""
    split = [re.fullmatch(r"(.*?)(\d*)", joint) for joint in joints]
    stems = dict.fromkeys(found[1] for found in split if found)
    apart = {stem: place * 10**6 for place, stem in enumerate(stems)}
    numbers = [apart[found[1]] + int(found[2] or 0) for found in split if found]
    return voice.listed(runs_told(voice, names, numbers))


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


def as_in_steps(voice: Voice, known: Sequence[int]) -> str:
    """A reference to the steps that taught what is done."""
    return voice.say_count(
        "As in step {steps}.",
        "As in steps {steps}.",
        len(known),
        steps=number_ranges(voice, known),
    )
