"""The regulation's own words stand on the pages in every language."""

from __future__ import annotations

import pytest
from page_words import words_of_pages

from buildplan.booklet.common.cautions import CHOKING_HAZARD, CHOKING_WORDS, choking_box
from buildplan.document.paper import PAPERS
from buildplan.document.printing import Document, Section, print_document
from buildplan.language.voice import LOCALES, Voice

PAPER = PAPERS["a4"]


@pytest.mark.parametrize("language", LOCALES)
def test_the_regulations_own_words_stand_in_every_language(language: str) -> None:
    """16 CFR 1500.19(b)(2): the statement itself, whatever else is said beside it."""
    voice = Voice(language)
    section = Section("-", [choking_box(PAPER, voice)])
    pdf = print_document(Document([section], PAPER, voice, "-"))
    read = words_of_pages(pdf)[0]
    for words in (CHOKING_HAZARD, *CHOKING_WORDS):
        assert words in read
