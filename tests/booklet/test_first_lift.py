"""The booklet says when a piece that only its locks keep in shape may first be lifted."""

from __future__ import annotations

from dataclasses import replace

import pytest
from page_words import words_of_pages
from shipped import book_of, page_texts

from buildplan.booklet.editions import print_booklet
from buildplan.design.measures import size_words
from buildplan.sequence.jobs import jobs
from buildplan.shape.kinds import ShapeKind

NOTICE, TICKED = "Do not stand it up or carry it", "All of it is tied and locked"


@pytest.mark.parametrize("edition", ["training", "crew"])
def test_a_star_is_not_lifted_before_its_last_lock(edition: str) -> None:
    book = replace(book_of("reading_star"), edition=edition)
    assert ShapeKind.KEPT_BY_ITS_LOCKS in {one.kind for one in book.examination.cautions}
    if edition == "crew":
        pages = words_of_pages(print_booklet(book))
    else:
        pages = [*page_texts("reading_star")]
    (told,) = [page for page in pages if NOTICE in page]
    length = book.voice.tell(size_words(book.examination.folds_unlocked_m, book.units))
    last = max(step.number for step in book.steps if any(step.adds.values()))
    if edition == "crew":  # which goes by jobs
        job = next(job for job in jobs(book.steps) if last in [step.number for step in job.steps])
        assert f"before job {job.number} is done" in told
    else:
        assert f"before step {last} is done" in told
    assert f"fold by {length} or more" in told
    assert sum(TICKED in page for page in pages) == (edition == "training")


def test_what_keeps_its_shape_says_nothing_of_it() -> None:
    book = book_of("picture_frame")
    assert ShapeKind.KEPT_BY_ITS_LOCKS not in {one.kind for one in book.examination.cautions}
    text = " ".join(page_texts("picture_frame"))
    assert NOTICE not in text
    assert TICKED not in text
