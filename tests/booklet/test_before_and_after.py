"""What a booklet says before work begins and after the piece stands, against the steps between: how
many tags there are and that all come off; that a piece comes down in the order of hands.

That people are kept clear first, and that a piece is held while its ballast comes off (its ties are
short on both sides), is common practice, no source.
"""

from __future__ import annotations

import re

import shipped

DOWN = (
    "Clear people away",
    "Somebody holds the piece while another unties its ballast",
    "let it down slowly",
    "Let the air out",
    "Count what goes into the bags: 640 balloons",
    "Tie the bags shut",
)


def test_all_tags_are_counted_and_come_off() -> None:
    pages = [" ".join(text.split()) for text in shipped.page_texts("reading_star")]
    told = next(text for text in pages if "9 Tag the joints" in text)
    rows = re.findall(r"Chain [A-D]: ((?:[A-D]\d+(?:, | ))+)", told.split("9 Tag the joints")[1])
    tags = sum(len(re.findall(r"[A-D]\d+", row)) for row in rows)
    assert len(rows) == 4
    stood = next(text for text in pages if "33 Stand the piece up" in text)
    early = re.search(r"(\d+) tags that will be above 6 ft 4 in are off", stood)
    late = re.search(r"Take off the other (\d+) tags", stood)
    assert early is not None
    assert late is not None
    assert int(early[1]) + int(late[1]) == tags
    at = shipped.book_of("reading_star").shape.at
    named = {joint for row in rows for joint in re.findall(r"[A-D]\d+", row)}
    # out of reach once it stands: see `HandReach.highest`
    assert int(early[1]) == sum(float(at[joint][1]) > 1.92 for joint in named)
    assert early.start() < stood.index("then let go") < late.start()
    made_ready = next(text for text in pages if "What you need Balloons" in text)
    ready = re.search(r"for (\d+) tags, (\d+) more to practise", made_ready)
    assert ready is not None
    assert int(ready[1]) == tags
    assert int(ready[2]) > 0, "the practice piece has tags too"


def test_a_piece_comes_down_in_the_order_of_hands() -> None:
    text = " ".join(" ".join(shipped.page_texts("reading_star")).split())
    down = text[text.index("Take it down") :]
    places = [down.index(one) for one in DOWN]
    assert places == sorted(places)
