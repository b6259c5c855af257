"""What the buttons say that mend a problem: the page's own words, never a key of the file."""

from __future__ import annotations

import pytest

from buildplan.desk.mend_words import mend_words
from buildplan.desk.whole_file import WholeFile
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.source.suggestions import Change, Put, Remedy, TakeOut

DATA = {"units": "in", "balloons": {"inner": {"kind": "link", "nominal": 12, "label": "ivory"}}}


@pytest.mark.parametrize(
    ("changes", "english", "german"),
    [
        (
            (Put(("balloons", "inner", "inflate_to"), 8),),
            "ivory, sized to 8 in",
            "ivory, gemessen auf 8 in",
        ),
        (
            (Put(("balloons", "inner", "nominal"), 16),),
            "ivory, Size on the bag: 16 in",
            "ivory, Größe auf dem Beutel: 16 in",
        ),
        ((Put(("pole",), True),), "Held by a pole", "Von einer Stange gehalten"),
        ((TakeOut(("base",)),), "Leave out: Weighted base", None),
        # of more than one change the words are those of the advice
        ((TakeOut(("base",)), TakeOut(("pole",))), "the advice", None),
        ((Put(("build", "tube", "course"), ["tip"]),), "the advice", None),
    ],
    ids=lambda value: "" if not isinstance(value, str) else value,
)
def test_a_button_says_what_the_page_calls_it(
    changes: tuple[Change, ...], english: str, german: str | None
) -> None:
    remedy = Remedy(message("the advice"), changes)
    assert mend_words(remedy, WholeFile(DATA, Voice())) == english
    if german is not None:
        assert mend_words(remedy, WholeFile(DATA, Voice("de"))) == german
