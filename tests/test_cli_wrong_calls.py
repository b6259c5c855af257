"""Wrong calls end in one message that says what would be right, and no word of a library."""

from __future__ import annotations

from pathlib import Path

import pytest
from conftest import Call

from buildplan.evaluation.passing import parse_door
from buildplan.language.told import ToldError

FRAME = Path(__file__).parent.parent / "designs" / "picture_frame.yaml"


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("steps", "--crew", "2", "--opening", "10am"), "such as 2027-05-08 10:00, not 10am"),
        (("steps", "--crew", "2", "--opening", "0001-01-01 08:00"), "such as 2027-05-08 10:00"),
        (("check", "--gust", "99999999999999999999km/h"), "is not a speed"),
        (("check", "--door", "0x0cm"), "is no door"),
        (("check", "--door", "99999999999999999999x200cm"), "is no door"),
        (("check", "--door", "90x205"), 'write "90x205cm"'),
        (("check", "--door", "36x80"), 'write "36x80in"'),
        (("check", "--door", "90x205m"), 'write "90x205cm"'),
        (("check", "--door", "=90x205cm"), 'write "90x205cm"'),
        (("check", "--door", "Door 2 90 by 205 cm"), 'write "Door 2=90x205cm"'),
        (("check", "--door", "90cm"), "write its clear width and height like"),
        (("resize", "--height", "60"), "has no unit; write 60cm or 60in"),
        (("resize", "--height", "2,4"), "has no unit; write 2.4m or 2.4ft"),
        (("resize", "--height", "tall"), '"tall" is not a height; write it like 150cm'),
        (("resize", "--by", "cell"), "gauge, balloon or cells; did you mean --by cells?"),
        (("booklet", "--units", "inches"), '"inches" is not one of in or cm; did you mean --units'),
        (("draw", "--view", "5"), '"5" is not one of front, back, side, top or corner'),
        (("steps", "--crew", "two"), '"two" is not a whole number from 1 to 100'),
        (("steps", "--crew", "0"), '"0" is not a whole number from 1 to 100'),
        (("draw", "--step", "3.5"), '"3.5" is not a whole number'),
        (
            ("resize", "--height", "3m", "--by", "cells", "--out", str(FRAME)),
            "is the design itself; name another file",
        ),
        (("course", "--out", str(FRAME)), "is the design itself; name another file"),
        (("times",), "writes one to fill in"),
        (("learn",), "writes one to fill in"),
        (("verify",), "is no sold copy; name its .pdf or .html"),
        (("quote", "--deposit", "0.45"), "such as 45%"),
        (("quote", "--deposit", "200%"), "at most 100 % of the whole, not 200%"),
        (("quote", "--deposit", "0%"), "more than 0 %"),
        (("quote", "--deposit", "30"), "such as 30%"),
        (("quote", "--pdf", "quote.docx"), "the name must end in .pdf"),
        (("quote", "--csv", "quote.xlsx"), "the name must end in .csv"),
        (("shopping", "--pdf", "list.doc"), "the name must end in .pdf"),
        (("booklet", "--out", "plans/star.pdf"), "not plans/star.pdf but plans"),
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
    said = " ".join(err.replace("│", " ").split())
    assert told in said
    assert not any(words in said for words in ("Value error", "Input should"))
    assert list(tmp_path.iterdir()) == []


HEAD = "design,what,which,count,expected,unit,measured\r\n"


def test_a_sheet_that_is_filled_is_not_written_over(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "300")
    sheet = tmp_path / "log.csv"
    for kept in (HEAD + "f.yaml,ring,A,1,113,in,112.5\r\n", "name;price\n"):
        sheet.write_text(kept, "utf-8")
        status, _, err = call("measure", FRAME, "--out", sheet)
        assert status == 2
        assert "is no empty sheet; learn from it first" in err
        assert sheet.read_text("utf-8").split() == kept.split()


def test_an_empty_sheet_is_told_where_to_write(call: Call, tmp_path: Path) -> None:
    sheet = tmp_path / "log.csv"
    sheet.write_text(HEAD + "f.yaml,ring,A,1,113,in,\r\n", "utf-8")
    status, _, err = call("learn", sheet)
    assert status == 1
    assert "no row has a number yet; write what you measured into the last column" in err
    assert not (tmp_path / "hands.yaml").exists()


def test_a_page_that_is_none_of_ours_is_told_as_that(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "300")
    page = tmp_path / "page.html"
    page.write_text("<!doctype html><title>A page</title>", "utf-8")
    status, _, err = call("verify", page)
    assert status == 2
    assert "page.html is no page of ours, or a damaged one: ask the seller for another" in err


def test_the_day_and_time_may_be_written_either_way(call: Call) -> None:
    said = {
        call("steps", str(FRAME), "--crew", "2", "--opening", moment)[1]
        for moment in ("2027-05-08 10:00", "2027-05-08T10:00")
    }
    assert len(said) == 1


@pytest.mark.parametrize("text", ["90x205", "36x80", "0.9x2", "900 x 2050", "Lift 80x200cm=2"])
def test_the_door_that_is_advised_is_one(text: str) -> None:
    with pytest.raises(ToldError) as refused:
        parse_door(text)
    door = parse_door(str(dict(refused.value.told.values)["right"]).strip('"'))
    assert 0.7 < door.width_m < 1 < 1.9 < door.height_m < 2.1


def test_a_new_design_whose_answers_end_is_told_how_to_go_on(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "300")
    status, out, err = call("new", "Evening Star")  # and nothing on its input
    assert (status, out.strip()) == (2, "")
    assert "the answers end here; give the rest as options, or add --usual" in err
    assert "Aborted" not in err
    assert list(tmp_path.iterdir()) == []
    assert call("new", "Evening Star", "--usual")[0] == 0


# German of the catalogues: each sort of wrong call that the library which reads calls knows of,
# and wrong values of a command's own; the language is told after the mistake, as people do
IN_GERMAN = [
    (("check", "F", "--gusts", "3"), "eine Option --gusts gibt es nicht; meinten Sie --gust?"),
    (("check", "F", "-9"), "eine Option -9 gibt es nicht"),
    (("chekc", "F"), "einen Befehl chekc gibt es nicht; meinten Sie buildplan check?"),
    (("check",), "DESIGN fehlt; schreiben Sie buildplan check DESIGN"),
    (("resize", "F"), "--height fehlt; schreiben Sie buildplan resize DESIGN --height HEIGHT"),
    (("check", "F", "too", "many"), "too many ist zu viel; schreiben Sie buildplan check DESIGN"),
    (("check", "F", "--json=3"), "--json nimmt keinen Wert: schreiben Sie nur diese Option"),
    (("steps", "F", "--crew", "0"), '--crew: "0" ist keine ganze Zahl von 1 bis 100'),
    (("draw", "F", "--view", "5"), '--view: "5" ist nicht front'),
    (("check", "F", "--gust", "9999"), "--gust: '9999' ist keine Geschwindigkeit"),
    (("fit", "star", "--height", "abc"), '--height: "abc" ist keine Höhe'),
]


@pytest.mark.parametrize(("words", "told"), IN_GERMAN, ids=lambda value: " ".join(value[:4]))
@pytest.mark.parametrize("environment", [False, True])
def test_a_wrong_call_is_told_in_the_language_it_asks_for(
    call: Call,
    words: tuple[str, ...],
    told: str,
    environment: bool,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    given = [str(FRAME) if word == "F" else word for word in words]
    if environment:
        monkeypatch.setenv("BUILDPLAN_LANGUAGE", "de")
    else:
        given += ["--language", "de"]
    status, out, err = call(*given)
    assert (status, out) == (2, "")
    first, *more = err.splitlines()
    assert first.startswith(told)
    assert [line for line in more if not line.endswith("--help sagt mehr")] == []


def test_a_value_that_is_missing_and_a_language_that_is_none_are_told(
    call: Call, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert call("steps", FRAME, "--language=de", "--crew")[2].startswith("nach --crew fehlt")
    assert call("--language", "de")[2].startswith(
        "--language steht hinter dem Befehl, wie in buildplan check DESIGN --language de"
    )
    assert call("check", FRAME, "--language", "xx")[2].startswith('--language: "xx" is not one of')
    monkeypatch.setenv("BUILDPLAN_LANGUAGE", "xx")
    assert call("check", FRAME)[2].startswith('BUILDPLAN_LANGUAGE: "xx" is not one of en')
