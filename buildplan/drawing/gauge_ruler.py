"""The ruler that shows whether the printer kept the size of the gauges, and how these are used."""

from __future__ import annotations

from buildplan.design.measures import Units
from buildplan.drawing.fonts import text_width, wrapped
from buildplan.drawing.gauge_forms import INCH, MM, WORDS_PT, GaugeWords
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.marks import Ink, Label, Mark, Point, Polyline
from buildplan.language.voice import Voice

RULER_HEIGHT = 54.0


def ruler_words(units: Units, voice: Voice) -> tuple[str, ...]:
    """What is done with the ruler and the gauges."""
    first, second = ("4 in", "100 mm") if units == "in" else ("100 mm", "4 in")
    return (
        voice.say("Ruler first: {first} and {second} must be true.", first=first, second=second),
        voice.say("Cut dashed and solid lines; keep the grey card."),
        voice.say("Hold it across the balloon's thickest part, neck away."),
    )


def ruler_marks(at: Point, right_edge: float, words: GaugeWords) -> list[Mark]:
    """Lines of exactly 100 mm and 4 in, one over the other, to check the printer's scale; beside
    them what is done with them, if it has room as far as `right_edge`."""
    x, y = at[0], at[1] + 22
    thin, thick = Ink(stroke=INK, width=0.5), Ink(stroke=INK, width=1.0)
    marks: list[Mark] = [
        Polyline(((x, y), (x + 100 * MM, y)), thick),
        Polyline(((x, y - 5), (x + 4 * INCH, y - 5)), thick),
    ]
    for mm in range(101):
        tall = 9 if mm % 10 == 0 else 6.5 if mm % 5 == 0 else 4
        marks.append(Polyline(((x + mm * MM, y), (x + mm * MM, y + tall)), thin))
        if mm % 20 == 0:
            marks.append(Label((x + mm * MM, y + 11), str(mm), TYPE, INK))
    for eighth in range(33):
        tall = 9 if eighth % 8 == 0 else 6.5 if eighth % 4 == 0 else 4
        top = (x + eighth * INCH / 8, y - 5)
        marks.append(Polyline((top, (top[0], top[1] - tall)), thin))
        if eighth % 8 == 0:
            marks.append(Label((top[0], y - 22), str(eighth // 8), TYPE, INK))
    right = x + 4 * INCH + 12
    marks += [
        Label((right, y + 2), "mm", TYPE, INK, "start"),
        Label((right, y - 14), "in", TYPE, INK, "start"),
    ]
    return [*marks, *_told_beside((right + 20, y), right_edge, words)]


def _told_beside(at: Point, right_edge: float, words: GaugeWords) -> list[Mark]:
    """What is done with the ruler and the gauges, in as many lines as the ruler is high; smaller,
    as far as type may be, where it takes more, and nothing where even that does not fit."""
    least = words.size_pt * TYPE / WORDS_PT
    for size in (words.size_pt, least):
        lines = [
            line
            for told in ruler_words(words.units, words.voice)
            for line in wrapped(told, right_edge - at[0], size)
        ]
        pitch = 1.2 * size
        fits = len(lines) * pitch <= RULER_HEIGHT
        if fits and max(text_width(line, size) for line in lines) <= right_edge - at[0]:
            top = at[1] + (len(lines) / 2 - 1) * pitch
            return [
                Label((at[0], top - pitch * i), line, size, INK, "start")
                for i, line in enumerate(lines)
            ]
    return []
