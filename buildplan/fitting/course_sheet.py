"""The sheet of the nearest courses: each finished piece from the front, with what it takes."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.design.measures import Units, size_words
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Inset, Label, Mark, Picture
from buildplan.drawing.scene import finished_picture
from buildplan.fitting.near_courses import NearCourse
from buildplan.language.voice import Voice

ACROSS = 2
CELL_PT, CAPTION_PT, GAP_PT = 300.0, 34.0, 12.0
CAPTION_SIZE, FIRST_LINE_PT, SECOND_LINE_PT = 10.0, 20.0, 6.0
FEW_LETTERS = 44


def course_sheet(courses: Sequence[NearCourse], units: Units, voice: Voice) -> Picture:
    """One picture of all courses, two in a row, numbered as they are listed."""
    across = min(ACROSS, len(courses))
    rows = -(-len(courses) // ACROSS)
    width = across * CELL_PT + (across + 1) * GAP_PT
    height = rows * (CELL_PT + CAPTION_PT) + (rows + 1) * GAP_PT
    marks: list[Mark] = []
    for i, course in enumerate(courses):
        left = GAP_PT + (i % ACROSS) * (CELL_PT + GAP_PT)
        low = height - (i // ACROSS + 1) * (CELL_PT + CAPTION_PT + GAP_PT)
        piece = course.measured
        picture = finished_picture(piece.framework, piece.shape, CAMERAS["front"], CELL_PT, CELL_PT)
        marks.append(Inset(picture, (left, low + CAPTION_PT)))
        middle = left + CELL_PT / 2
        words = f"{i + 1}. {voice.tell(course.edit.words)}"
        short = words if len(words) <= FEW_LETTERS else words[: FEW_LETTERS - 3] + "..."
        size = voice.say(
            "{count} balloons, {width} x {height}",
            count=piece.balloons,
            width=size_words(piece.width_m, units),
            height=size_words(piece.height_m, units),
        )
        marks.append(Label((middle, low + FIRST_LINE_PT), short, CAPTION_SIZE, bold=True))
        marks.append(Label((middle, low + SECOND_LINE_PT), size, CAPTION_SIZE - 1))
    alt = voice.say_count(
        "{number} course that closes and stands, from the front",
        "{number} courses that close and stand, from the front",
        len(courses),
    )
    return Picture(width, height, tuple(marks), alt)
