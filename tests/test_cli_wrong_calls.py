"""Wrong calls end in one message that says what would be right, and no word of a library."""

from __future__ import annotations

from pathlib import Path

import pytest
from conftest import Call

FRAME = Path(__file__).parent.parent / "designs" / "picture_frame.yaml"


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("steps", "--crew", "2", "--opening", "10am"), "such as 2027-05-08 10:00, not 10am"),
        (("steps", "--crew", "2", "--opening", "0001-01-01 08:00"), "such as 2027-05-08 10:00"),
        (("check", "--gust", "99999999999999999999km/h"), "is not a speed"),
        (("check", "--door", "0x0cm"), "is no door"),
        (("check", "--door", "99999999999999999999x200cm"), "is no door"),
        (("quote", "--deposit", "200%"), "at most 100 % of the whole, not 200%"),
        (("quote", "--deposit", "0%"), "more than 0 %"),
        (("quote", "--deposit", "30"), "such as 30%"),
        (("quote", "--pdf", "quote.docx"), "the name must end in .pdf"),
        (("quote", "--csv", "quote.xlsx"), "the name must end in .csv"),
        (("shopping", "--pdf", "list.doc"), "the name must end in .pdf"),
        (("measure", "--out", "sheet.pdf"), "the name must end in .csv"),
    ],
    ids=lambda value: " ".join(value[:3]) if isinstance(value, tuple) else "",
)
def test_a_wrong_call_is_told(
    call: Call,
    words: tuple[str, ...],
    told: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "300")
    command, *options = words
    status, _, err = call(command, str(FRAME), *options)
    assert status == 2
    assert told in " ".join(err.replace("│", " ").split())
    assert list(tmp_path.iterdir()) == []


def test_the_day_and_time_may_be_written_either_way(call: Call) -> None:
    said = {
        call("steps", str(FRAME), "--crew", "2", "--opening", moment)[1]
        for moment in ("2027-05-08 10:00", "2027-05-08T10:00")
    }
    assert len(said) == 1
