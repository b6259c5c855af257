"""Whatever is read that others have made ends in what was asked for, or in one of our own messages.

About a thousand cases with fixed seeds; `fuzz.py` beside this tries as many as one likes. What it
has found stands below, as small as it could be made.
"""

from __future__ import annotations

import logging
from collections.abc import Iterator
from pathlib import Path

import pytest
from desk_kind import DESK
from fuzz import ALL, folder_with_designs
from judging import ACCEPTED, FAULT, HANG, REFUSED, judged
from kinds import Kind

CASES = {"checked": 30, "svg outline": 60, "desk request": 100}
USUAL = 80


@pytest.fixture(scope="module")
def folder() -> Path:
    return folder_with_designs()


@pytest.fixture(autouse=True)
def _quiet() -> Iterator[None]:
    """Libraries may log what they like: `__main__` lets none of it be shown."""
    logging.disable()
    yield
    logging.disable(logging.NOTSET)


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("kind", ALL.values(), ids=list(ALL))
def test_what_is_made_wrong_is_read_or_refused(kind: Kind, folder: Path) -> None:
    path = folder / f"case{kind.ending}"
    bad, found = [], set()
    for number in range(CASES.get(kind.name, USUAL)):
        path.write_bytes(kind.case(number))
        outcome = judged(kind.read, path)
        found.add(outcome.how)
        if outcome.how in (FAULT, HANG):
            bad.append((number, outcome))
    assert not bad
    assert {ACCEPTED, REFUSED} <= found


@pytest.mark.parametrize("kind", [*ALL.values()], ids=list(ALL))
def test_what_is_right_is_read(kind: Kind, folder: Path) -> None:
    """What is made wrong is right to begin with."""
    if kind is DESK:
        return
    for number, data in enumerate(kind.right()):
        path = folder / f"right{kind.ending}"
        path.write_bytes(data)
        assert judged(kind.read, path).how != FAULT, number


def test_cases_are_the_same_each_time() -> None:
    for kind in ALL.values():
        assert kind.case(7) == kind.case(7)
        assert kind.case(7) != kind.case(8)


def test_a_library_speaking_and_a_hang_would_be_found(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def speaks(path: Path) -> list[str]:
        return ["invalid literal for int() with base 10: 'x'"]

    def forges(path: Path) -> list[str]:
        return ["one line\nand another"]

    def swells(path: Path) -> list[str]:
        return [str(len(bytearray(1 << 40)))]

    def breaks(path: Path) -> list[str]:
        return [str(ALL["x"])]

    def goes_on(path: Path) -> list[str]:
        while True:
            pass

    assert [judged(one, tmp_path).how for one in (speaks, forges, swells, breaks)] == [FAULT] * 4
    monkeypatch.setattr("judging.HANG_S", 0.01)
    assert judged(goes_on, tmp_path).how == HANG


FOUND = {
    "a colon without a space before an endless text": ("design", f"name:{'A' * 3000}\n"),
    "a list where a joint is named": (
        "design",
        "buildplan: 1\nname: A\nunits: in\nballoons:\n  long: {kind: link, nominal: 12, "
        "inflate_to: 8, colour: navy, label: blue}\n  lock: {kind: round, nominal: 5, inflate_to: "
        "3.5, colour: navy, label: blue}\nbuild:\n  column: {around: 4, rings: 3, ring: long, "
        "between: long, lock: lock, extra: [[[], A1], [A1, 3]]}\n",
    ),
    "a cell of two lines": ("log", 'kind,count,minutes\npair,2,"a\nb"\n'),
    "a cell that is longer than a reader of CSV takes": ("log", f'kind,count\n"{"x" * 200_000}"\n'),
    "a quotation mark that is not closed": ("buyers", 'name\n"Ana\n'),
    "an SVG that is no XML": ("svg outline", "<svg><g></svg>"),
    "a column whose name has no end": ("ticks", "kind,count," + "minutes" * 99 + "\nbrace,1,2,3\n"),
    "an outline as wide as nothing is": (
        "svg outline",
        '<svg xmlns="http://www.w3.org/2000/svg"><path transform="scale(1e300)" '
        'd="M0 0h9v9h-5v-5h2v-3z"/></svg>',
    ),
    "a logo with a number that no page takes": (
        "svg logo",
        '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="1e29" '
        'height="9" x="1e29"/></svg>',
    ),
    "a logo that is smaller than anything": (
        "svg logo",
        '<svg xmlns="http://www.w3.org/2000/svg" width="1e-9" height="1">'
        '<path d="M0 0h1v1z"/></svg>',
    ),
}


@pytest.mark.parametrize("name", FOUND)
def test_what_was_found_is_told(name: str, folder: Path) -> None:
    kind, text = FOUND[name]
    path = folder / f"found{ALL[kind].ending}"
    path.write_text(text, "utf-8")
    outcome = judged(ALL[kind].read, path)
    assert outcome.how == REFUSED, outcome


def test_a_logo_that_is_read_and_cannot_be_drawn_is_told(folder: Path) -> None:
    """A palette and a transparency that do not fit (PNG Third Edition, 11.3.1)."""
    kind = ALL["png logo"]
    path = folder / "logo.png"
    path.write_bytes(kind.case(704))
    assert judged(kind.read, path).how == REFUSED
