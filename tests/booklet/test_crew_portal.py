"""The crew edition of an assembly that is put together standing: two columns and an arch."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from page_words import words_of_pages
from shipped import book_of

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.needs import tags_of
from buildplan.booklet.common.tags_off import tags_off
from buildplan.booklet.editions import print_booklet
from buildplan.instructions.company import people_of_steps
from buildplan.instructions.setting_up import is_tying


@pytest.fixture(scope="module")
def book() -> Book:
    return book_of("gallery/portal")


def test_a_crew_reads_an_equal_part_once(book: Book) -> None:
    """The rows of the first column stand there, and one line for the second."""
    crew = replace(book, edition="crew")
    text = " ".join(words_of_pages(print_booklet(crew)))
    assert not re.search(r"\bsteps? \d", text), "a crew has jobs"
    assert "Parts L and R are alike: do as jobs" in text
    assert "read R for L" in text
    assert "before the next: L.B1 L.B2 L.B3 L.B4" in text
    assert "before the next: R.B1" not in text
    # how parts come together, which no table says, in the order of the work
    order = [
        text.index(words)
        for words in ("face the front", "Tie ballast", "people take it at both sides")
    ]
    assert order == sorted(order)
    # the ties stand under pictures from the side from which they are tied
    ties = text[text.index("Tie in this order") : text.index("Ties between parts: 8 of 8")]
    sides = re.findall(r"From the (front|back)\.", ties)
    assert sorted(sides) == ["back", "back", "front", "front"]
    assert all(" + ".join(tie.joints) in ties for tie in crew.framework.ties)
    # a job has the times of its bar at its head
    told = text[: text.index("Estimates for practised")].split("Begin at the latest")[-1]
    bars = re.findall(r"(?<![\d:])(\d+) [A-Z][^–]*? (\d+:\d\d – \d+:\d\d)", told)
    assert len(bars) == 11
    alike = {9, 10, 11}  # of the second column
    for number, times in bars:
        named = re.search(rf"Job {number}: [^–]*? (\d+:\d\d – \d+:\d\d)", text)
        assert (named is None) == (int(number) in alike)
        assert named is None or named[1] == times


def test_a_job_of_several_ties_is_called_by_its_first_and_its_last(book: Book) -> None:
    text = " ".join(words_of_pages(print_booklet(replace(book, edition="crew"))))
    titles = re.findall(r"Job \d+: (Tie [^–]*?) \d+:\d\d", text)
    assert titles
    assert all(re.fullmatch(r"Tie \S+(\+\S+)+ to \S+(\+\S+)+", title) for title in titles), titles


def test_one_more_holds_the_stool_of_who_ties(book: Book) -> None:
    """Beside those who hold what is tied on (common practice, no source)."""
    told = book.figures.set_up
    assert told is not None
    high = replace(told, high=frozenset(tie.name for tie in book.framework.ties))
    context = replace(book.context, figures=replace(book.figures, set_up=high))
    people = people_of_steps(context)
    for step in filter(is_tying, book.steps):
        assert people[step.number - 1] == book.people[step.number - 1] + 1


def test_parts_that_rise_out_of_reach_come_up_without_their_tags(book: Book) -> None:
    """But with those of their ties; the arch of the portal stays within reach, so it is made higher
    here."""
    told = book.figures.set_up
    assert told is not None
    assert not told.rising
    high = replace(told, rising=frozenset({"T"}))
    framework = book.framework
    rising = replace(book, design=book.design)
    rising.__dict__["figures"] = replace(book.figures, set_up=high)
    first = next(filter(is_tying, rising.steps))
    assert "take off their tags" in rising.told(first).text
    assert "take off their tags" not in book.told(first).text
    tags = tags_of(book.steps)
    gone = [tag for tag in tags if tag.startswith("T.") and tag not in framework.tie_of]
    gone = [tag for tag in gone if framework.part_at(tag) is not None]
    assert gone
    (left,) = tags_off(rising, rising.steps[-1])
    assert f"the other {len(tags) - len(gone)} tags" in left
