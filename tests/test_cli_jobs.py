"""The commands round a design: beginning it, buying for it, pricing it, taking it to an event."""

from __future__ import annotations

import csv
import io
import json
import re
from decimal import Decimal
from pathlib import Path

import pytest
from conftest import Call

from buildplan.design.beginnings import PIECES
from buildplan.design.reading import read_design
from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
from buildplan.language.voice import Voice

DESIGNS = Path(__file__).parent.parent / "designs"
FRAME, STAR, GATE = (
    DESIGNS / f"{name}.yaml" for name in ("picture_frame", "reading_star", "walk_through_gate")
)
EVENT = DESIGNS / "reopening.event.yaml"


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A small frame with prices of its own: quick to solve."""
    text = design_text(Wish("Small Frame", "frame", size=50), Voice())
    keys = ("pack_sizes", "currency")
    text = "".join(
        line.removeprefix("# ") if line[2:].startswith(keys) else line
        for line in text.splitlines(keepends=True)
    )
    path = tmp_path / "small.yaml"
    path.write_text(
        text + "prices: {long: 0.32, cross: 0.32, lock: 0.09}\nrates: {hour: 18.0, margin: 0.35}\n"
    )
    return path


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def amounts(text: str) -> list[Decimal]:
    """Every amount of pounds in a text, in order."""
    return [Decimal(found.replace(",", "")) for found in re.findall(r"£([\d,]+\.\d\d)", text)]


# --- new -----------------------------------------------------------------------------------


def test_new_writes_a_file_that_passes_check(call: Call, tmp_path: Path) -> None:
    target = tmp_path / "evening.yaml"
    status, out, _ = call(
        "new", "Evening", "--piece", "frame", "--size", "50", "--usual", "--out", target
    )
    assert (status, out.strip()) == (0, str(target))
    status, out, _ = call("check", target, "--json")
    facts = json.loads(out)
    assert (status, facts["name"], facts["problems"]) == (0, "Evening", [])


def test_new_asks_for_what_is_not_given(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    answers = "Garden Arch\ntower\narch\ncm\n\n150\nleaf green, gold\n"
    status, out, messages = call("new", answers=answers)
    assert (status, out.strip()) == (0, "garden_arch.yaml")
    assert f"answer one of {', '.join(PIECES)}" in messages
    text = (tmp_path / "garden_arch.yaml").read_text("utf-8")
    assert "units: cm" in text
    assert 'label: "leaf green"' in text


def test_new_keeps_its_answers_and_asks_again_for_the_wrong_ones(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    answers = "Garden Arch\narch\ncm\n8in\n9999\nno such colour\n150 cm\nsea green\n"
    status, out, messages = call("new", answers=answers)
    assert (status, out.strip()) == (0, "garden_arch.yaml")
    assert "not 9999" in messages
    assert "no colour" in messages
    design = read_design(tmp_path / "garden_arch.yaml")
    assert design.balloons["long"].inflate_to == 20.32  # eight inches
    assert design.balloons["long"].colour == "#2E8B57"  # CSS Color Module Level 4: seagreen


def test_new_does_not_overwrite(call: Call, tmp_path: Path) -> None:
    target = tmp_path / "mine.yaml"
    target.write_text("my own work")
    status, _, messages = call("new", "Mine", "--piece", "ring", "--usual", "--out", target)
    assert status == 2
    assert "is there already" in " ".join(messages.replace("│", " ").split())
    assert target.read_text() == "my own work"


def test_new_says_what_can_be_had(call: Call, tmp_path: Path) -> None:
    target = tmp_path / "x.yaml"
    status, _, messages = call("new", "X", "--piece", "tower", "--usual", "--out", target)
    assert status == 2
    assert ", ".join(PIECES) in " ".join(messages.replace("│", " ").split())
    assert not target.exists()


# --- shopping and quote --------------------------------------------------------------------


def test_shopping_prints_a_list_that_adds_up_and_its_table(call: Call, tmp_path: Path) -> None:
    table = tmp_path / "list.csv"
    status, out, _ = call("shopping", STAR, GATE, FRAME, "--csv", table)
    assert status == 0
    *lines, total = amounts(out)
    assert sum(lines) == total
    rows = rows_of(table)
    assert [Decimal(row["cost"]) for row in rows] == lines
    alone = [rows_of_one["needed"] for rows_of_one in rows]
    assert sum(map(int, alone)) == 640 + 391 + 448


def test_shopping_passes_over_event_files(call: Call) -> None:
    status, out, messages = call("shopping", FRAME, EVENT)
    assert status == 0
    assert "Picture Frame" in out
    assert "see buildplan event" in messages
    assert call("shopping", EVENT)[0] == 2


def test_shopping_writes_a_page(call: Call, tmp_path: Path) -> None:
    page = tmp_path / "list.pdf"
    assert call("shopping", FRAME, "--pdf", page)[0] == 0
    first = page.read_bytes()
    assert first.startswith(b"%PDF")
    assert call("shopping", FRAME, "--pdf", page)[0] == 0
    assert page.read_bytes() == first


def test_shopping_lists_the_problems_of_every_file(call: Call, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.yaml"
    wrong.write_text(FRAME.read_text("utf-8").replace("chains: 4", "chains: 5"))
    status, out, messages = call("shopping", wrong, tmp_path / "nowhere.yaml", STAR)
    assert (status, out) == (2, "")
    assert "build.tube.chains" in messages
    assert "nowhere.yaml" in messages


def test_quote_adds_up_and_has_the_priced_packs(call: Call, small: Path, tmp_path: Path) -> None:
    table = tmp_path / "quote.csv"
    status, out, _ = call("quote", small, "--csv", table)
    assert status == 0
    rows = rows_of(table)
    assert sum(Decimal(row["amount"]) for row in rows[:-1]) == Decimal(rows[-1]["amount"])
    assert amounts(out)[-1] == Decimal(rows[-1]["amount"])
    # 64 balloons and 5 in a hundred are 68: two packs of 50 at 50 x 0.32
    assert rows[0]["what"] == "2 packs of 50, deep blue 12 in link, at £16.00"
    assert Decimal(rows[0]["amount"]) == Decimal("32.00")


def test_quote_names_what_is_missing(call: Call, small: Path) -> None:
    kept = re.sub(r"(?m)^(currency|rates).*$|long: 0.32, ", "", small.read_text())
    small.write_text(kept)
    status, out, messages = call("quote", small)
    assert (status, out) == (1, "")
    for path in ("currency", "prices.long", "rates.hour", "rates.margin"):
        assert f"{small}: {path}: a quote needs" in messages


def test_quote_writes_the_customers_page(call: Call, small: Path, tmp_path: Path) -> None:
    page = tmp_path / "quote.pdf"
    status, out, _ = call("quote", small, "--pdf", page, "--for", "Zed", "--valid", "14")
    assert status == 0
    assert out.splitlines()[-1] == str(page)
    assert page.read_bytes().startswith(b"%PDF")
    assert call("quote", small, "--for", "Zed")[0] == 2
    assert call("quote", small, "--pdf", page, "--for", "x" * 200)[0] == 2


# --- event ---------------------------------------------------------------------------------


def test_event_writes_its_pages_and_tables(call: Call, small: Path, tmp_path: Path) -> None:
    event, out_folder = tmp_path / "fair.event.yaml", tmp_path / "out"
    event.write_text(
        "event: 1\nname: Fair\ndesigns: [{design: small.yaml, count: 2}]\n"
        'crew: 3\nopening: "09:30"\n'
    )
    status, out, _ = call("event", event, "--out", out_folder)
    assert status == 0
    written = [Path(line) for line in out.split()]
    assert [path.name for path in written] == [
        "fair-event-a4.pdf",
        "fair-shopping.csv",
        "fair-timetable.csv",
        "fair-load.csv",
    ]
    assert sorted(out_folder.iterdir()) == sorted(written), "nothing half-written is left"
    balloons = sum(int(row["needed"]) for row in rows_of(written[1]))
    bags = [row for row in rows_of(written[3]) if row["part"] == "Bags"]
    assert sum(int(row["balloons"]) for row in bags) == balloons
    assert {row["piece"] for row in bags} == {"Small Frame, 1 of 2", "Small Frame, 2 of 2"}


def test_event_lists_the_mistakes_of_its_file(call: Call, tmp_path: Path) -> None:
    wrong = tmp_path / "x.event.yaml"
    wrong.write_text(EVENT.read_text("utf-8").replace("crew: 4", "crew: none"))
    status, _, messages = call("event", wrong)
    assert status == 1
    assert messages.count("there is no design file") == 3
    assert "crew must be a whole number" in messages


def test_a_file_of_the_other_kind_is_told_apart(call: Call) -> None:
    status, _, messages = call("check", EVENT)
    assert status == 2
    assert "this is an event file" in messages
    status, _, messages = call("event", FRAME)
    assert status == 2
    assert "this is a design file" in messages


def test_doors_are_given_as_people_write_them(call: Call, small: Path) -> None:
    status, out, _ = call("check", small, "--door", "90x205cm", "--door", "Lift=30x30cm", "--json")
    assert status == 0
    wide, narrow = json.loads(out)["doors"]
    assert (wide["door"]["height_m"], wide["goes_through"]) == (pytest.approx(2.05), "easily")
    assert (narrow["door"]["name"], narrow["goes_through"]) == ("Lift", "not")
    assert call("check", small, "--door", "wide")[0] == 2
    status, _, messages = call("booklet", small, "--door", "90x205cm")
    assert (status, "add --edition crew" in messages) == (2, True)


def test_times_and_measure_are_the_two_ways_of_one_log(
    call: Call, small: Path, tmp_path: Path
) -> None:
    log, sheet = small.parent / "log.csv", tmp_path / "sheet.pdf"
    status, out, _ = call("measure", small, "--out", log, "--pdf", sheet)
    assert (status, out.split()) == (0, [str(log), str(sheet)])
    assert sheet.read_bytes().startswith(b"%PDF")
    rows = list(csv.reader(io.StringIO(log.read_text("utf-8-sig"))))
    filled = [[*row[:-1], "12,5"] if row[1:3] == ["work", "brace"] else row for row in rows]
    log.write_text("\n".join(";".join(row) for row in filled) + "\n", "utf-8")
    status, out, _ = call("times", log)
    assert status == 0
    count = next(int(row[3]) for row in rows if row[1:3] == ["work", "brace"])
    assert f"brace: {12.5 / count:.4g}" in out
    assert call("learn", log)[0] == 0
    assert (small.parent / "hands.yaml").exists()


def test_schema_of_event_files(call: Call) -> None:
    status, out, _ = call("schema", "--event")
    assert status == 0
    assert "opening" in json.loads(out)["properties"]
