"""The order in which the signs of a line are seen.

Outside references: the Unicode Consortium's own cases for UAX 9 (some of BidiCharacterTest.txt, in
`bidi_character_test.txt`); python-bidi's get_display, an implementation in Rust that shares nothing
with ours. Sections are those of UAX 9, revision 46 (Unicode 15).
"""

from __future__ import annotations

import io
import random
from collections.abc import Iterator
from pathlib import Path

import pytest
from bidi import get_display
from reportlab.pdfgen.canvas import Canvas

from buildplan.document.paragraphs import OrderedParagraph
from buildplan.document.text import BODY, plain
from buildplan.drawing.fonts import REGULAR, register_fonts
from buildplan.drawing.typeset.embedding import levels
from buildplan.drawing.typeset.order import as_seen, line_levels, mirrored
from buildplan.language.isolates import END, begins_from_right, isolated, without_isolates
from buildplan.language.voice import Voice

CASES = Path(__file__).parent / "bidi_character_test.txt"
# letters of all kinds of direction, numbers, marks, brackets and signs between
DIRECTED = "abcאבגدهم 12٣()[]{}.,-+/%:\"'!   &ֹ"
ISOLATES = "\u2068\u2069\u2066\u2067\u2068\u2069"


def published() -> Iterator[tuple[str, str, int, list[str], list[int]]]:
    for line in CASES.read_text(encoding="utf-8").splitlines():
        if not line.startswith("#"):
            signs, direction, base, found, seen = line.split(";")
            text = "".join(chr(int(sign, 16)) for sign in signs.split())
            yield text, direction, int(base), found.split(), [int(at) for at in seen.split()]


def test_the_cases_of_the_unicode_consortium() -> None:
    cases = list(published())
    assert len(cases) > 300
    for text, direction, base, wanted, seen in cases:
        right = begins_from_right(text) if direction == "2" else direction == "1"
        assert right == bool(base), text
        found = levels(text, from_right=right)
        told = [str(level) for level in found]
        assert [w if w == "x" else t for w, t in zip(wanted, told, strict=True)] == wanted, text
        removed = {at for at, level in enumerate(wanted) if level == "x"}
        assert [at for at in as_seen(found) if at not in removed] == seen, text


def drawn(text: str, *, from_right: bool = False) -> str:
    """A line as it is seen from left to right, without the signs of isolates."""
    places = line_levels(text, from_right=from_right)
    return without_isolates(
        "".join(mirrored(text[at]) if places[at] % 2 else text[at] for at in as_seen(places))
    )


@pytest.mark.parametrize("signs", [DIRECTED, DIRECTED + ISOLATES])
def test_another_implementation_sees_the_same_order(signs: str) -> None:
    choose = random.Random(20)
    for _ in range(1500):
        text = "".join(choose.choice(signs) for _ in range(choose.randint(1, 18)))
        for from_right in (False, True):
            found = levels(text, from_right=from_right)
            seen = "".join(text[at] for at in as_seen(found))
            theirs = get_display(text, base_dir="R" if from_right else "L")
            assert without_isolates(seen) == without_isolates(theirs), repr(text)


DAVID = "דוד (אב 12)"
DAVID_SEEN = "(12 בא) דוד"


@pytest.mark.parametrize(
    ("said", "values", "seen"),
    [
        # 2.4 and X5c: the name has its own direction, brackets (N0) and number (W7) too
        ("For {name} now", {"name": DAVID}, f"For {DAVID_SEEN} now"),
        # N1: a full stop after the isolate is the sentence's
        ("This is {name}.", {"name": DAVID}, f"This is {DAVID_SEEN}."),
        # P2: a sentence that begins with a name goes from the left; W7: its number is its own
        ("{name}, 1 of 2", {"name": "כוכב קריאה"}, "האירק בכוכ, 1 of 2"),
        ("{name} 30 cm link", {"name": "כחול עמוק"}, "קומע לוחכ 30 cm link"),
        # W2: digits after Arabic letters are theirs inside the name alone
        ("{name}: 14 boxes", {"name": "باب 3"}, "3 باب"[:2] + "باب"[::-1] + ": 14 boxes"),
        # X5c: what begins from the left goes from the left, its end from the right
        ("{name} 12 pairs", {"name": "Ana כהן"}, "Ana ןהכ 12 pairs"),
        # a closing bracket of ours is no pair of one within (BD16 goes by sequences)
        ("({name}) (2", {"name": "א) ב"}, "(ב (א) (2"),
        # names that follow one another stand in the order of the sentence
        ("{name}, {other}", {"name": "אבג", "other": "דהו"}, "גבא, והד"),
    ],
)
def test_a_name_in_a_sentence_is_seen_as_in_an_isolate(
    said: str, values: dict[str, str], seen: str
) -> None:
    assert drawn(Voice().say(said, **values)) == seen


def test_names_in_a_list_stand_in_its_order() -> None:
    assert drawn(Voice().listed(["אב 1", "Ana", "גד"])) == "1 בא, Ana and דג"


def test_what_has_been_said_is_not_isolated_again() -> None:
    told = Voice().say("{name} 30 cm", name="כחול")
    assert Voice().say("{what} link", what=told).count(END) == 1
    assert isolated(told) == told
    assert isolated("Ana, 12 Ελληνικά") == "Ana, 12 Ελληνικά"


def test_words_by_themselves_have_the_direction_of_their_first_letter() -> None:
    """P2 and P3."""
    assert drawn("שלום (עולם) 12") == "12 (םלוע) םולש"
    assert drawn("12 Ana שלום.") == "12 Ana םולש."
    assert drawn("Foxglove.", from_right=True) == ".Foxglove"


@pytest.mark.parametrize("width", range(60, 200, 10))
def test_a_name_on_several_lines_keeps_its_direction_on_each(width: int) -> None:
    """As a browser has it: what is before the name's first letter is to its left or above it."""
    register_fonts()
    names = ["כוכב 30 (קריאה) Foxglove 12 גדול", "Foxglove 30 כוכב (קריאה) גדול 12"]
    for name in names:
        markup = plain(Voice().say("Take 7 {name} 15 pairs of {name}.", name=name))
        canvas = Canvas(io.BytesIO(), pagesize=(400, 400), initialFontName=REGULAR)
        shown = OrderedParagraph(markup, BODY)
        shown.wrapOn(canvas, width, 390)
        said = list[str]()
        for line in shown.blPara.lines:
            parts = (
                [(REGULAR, " ".join(line[1]))]
                if isinstance(line, tuple)
                else [(part.fontName, part.text) for part in line.words]
            )
            said.append("".join(drawn(text, from_right=face != REGULAR) for face, text in parts))
        seen = " ".join(said)
        # our own number never goes into the name, nor one of its own out of it
        assert "7 " in seen[:8]
        assert " 15 pairs of " in " ".join(seen.split()), seen
