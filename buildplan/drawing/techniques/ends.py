"""The two ends of a link balloon, with their names."""

from __future__ import annotations

from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.props import (
    Strand,
    link,
    lip,
    palette,
    tail_end,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

WIDTH, HEIGHT = 210.0, 46.0


def balloon_ends(framework: Framework, voice: Voice) -> Picture:
    """A link balloon that is not tied yet: its neck with the rolled rim, its tail with a tip."""
    colour, y = palette(framework).chain, HEIGHT / 2
    neck = Strand(((80, y, 0), (64, y, 0), (46, y, 0)), colour, 6)
    tail = Strand(((130, y, 0), (146, y, 0), (162, y, 0)), colour, 5)
    marks = [*weave([neck, tail]), *link((80, y), (130, y), 40, colour)]
    marks += [*lip(neck), *tail_end(tail)]
    marks.append(words((36, y - 3), voice.say_in("end of a balloon", "neck"), "end"))
    marks.append(words((172, y - 3), voice.say_in("end of a balloon", "tail"), "start"))
    alt = voice.say("A link balloon: left its neck, with a rolled rim, right its tail.")
    return Picture(WIDTH, HEIGHT, tuple(marks), alt)
