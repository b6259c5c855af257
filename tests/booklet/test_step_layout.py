"""What stands on the step pages, read back from the printed booklets."""

from __future__ import annotations

import re

import pytest
import shipped

from buildplan.booklet.common.closeups import MOST_JOINTS
from buildplan.booklet.training.practice_page import practice_of
from buildplan.document.text import plain, strong

JOINT = re.compile(r"\b[A-Z]\d+\b")
# Numbers and their units, a dash and what it follows: not to be parted by a line end. ISO 80000-1
# keeps a number and its unit together (the rule from memory).
KEPT = ("3 1/2", "1/2 in", "5 ft", "ft 7", "7 in", "88.9 mm", "2 h", "h 45", "45 min", "1.5 kg")


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_the_diagram_of_a_corner_leaves_out_what_the_words_leave_out(name: str) -> None:
    """The brace that closes a ring too, which ends two cells, one straight and one a corner."""
    diagrams = {
        int(found.group(1)): shown.picture.alt
        for shown in shipped.pictures(name)
        if (found := re.match(r"Diagram of step (\d+)\.", shown.picture.alt))
    }
    corners = 0
    book = shipped.book_of(name)
    for step in book.steps:
        told = book.told(step)
        said = re.search(r"No brace reaches ([^.]*)\.", told.text) or re.search(
            r"^Single: (.*)$", "\n".join(told.rows), re.MULTILINE
        )  # a known corner's joints are named by the row of the single that is tied there
        if said:
            corners += 1
            drawn = re.search(r"Skipped: ([^.]*)\.", diagrams[step.number])
            assert drawn
            assert set(JOINT.findall(drawn.group(1))) == set(JOINT.findall(said.group(1)))
    framework = book.framework
    assert corners == sum(bool(cell.skipped) for cell in framework.cells)


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_a_close_up_names_few_joints(name: str) -> None:
    views = shipped.views_of(name)
    for step in shipped.book_of(name).steps:
        for closeup in views.of(step):
            if step.kind == "join":
                assert len(closeup.panel.joints) <= MOST_JOINTS
            else:  # a section, and what a single of its corner reaches
                assert len(closeup.panel.joints) <= 6


def test_numbers_keep_their_units() -> None:
    text = "past 3 1/2 in, 5 ft 7 in (88.9 mm), 2 h 45 min, 1.5 kg: A1 – B1, closed at A1"
    for markup in (plain(text), strong(text)):
        parts = re.sub("<[^>]*>", "", markup).split(" ")
        for kept in (*KEPT, "A1 –", "at A1"):
            assert any(kept in part.replace("\N{NO-BREAK SPACE}", " ") for part in parts)
        assert "closed" in parts


def test_the_diagram_of_the_first_brace_shows_the_locks_of_its_step() -> None:
    """Neither those that wait for the last brace, nor those of the next. A trainee sees it at the
    practice piece, which comes first."""
    book = shipped.book_of("reading_star")
    (told,) = (
        shown.picture.alt
        for shown in shipped.pictures("reading_star")
        if re.match(r"Brace 1,", shown.picture.alt)
    )
    made = practice_of(book)
    assert made is not None
    step = next(step for step in made.steps if step.kind == "brace")
    (locks,) = (row for row in made.words[step.number - 1].turns[0].lines if "Locks" in row)
    drawn = re.search(r"A lock at each of ([^.]*)\.", told)
    assert drawn
    assert JOINT.findall(drawn[1]) == JOINT.findall(locks)
