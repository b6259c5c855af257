"""What is said of mistakes, and what `new`, `fit` and `resize` write, comes from the catalogues.

All of it is said in a made-up language, in which a Latin word that is no key, name or value of
the file came past the catalogues. In Spanish, a mistake stands where it stands in English.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from broken_files import BROKEN, RING
from made_up_language import WORD, speak_made_up

from buildplan.cli import main
from buildplan.design.beginnings import PIECES
from buildplan.design.event import read_event
from buildplan.design.measures import parse_speed
from buildplan.design.reading import read_brand, read_design
from buildplan.design.schema import design_schema, event_schema
from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
from buildplan.fitting.outlines import NAMED
from buildplan.fitting.sources import parse_gauges, parse_height, read_outline
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.source.colour_names import known_names
from buildplan.source.problems import DesignProblemsError, Problem, UnreadableDesignError, in_words

# signs that are the same in every language: of units and files, and of CLDR's lists in English
SIGNS = {"and", "or", "in", "cm", "ft", "min", "nan", "inf", "true", "false"}

HEX = re.compile(r'"#\w{6}"')


def names_in(schema: object) -> Iterator[str]:
    """Keys and values that the form of a file knows."""
    if isinstance(schema, dict):
        yield from schema.get("properties", {})
        for name, value in schema.items():
            if name in ("enum", "const"):
                yield from map(str, value if isinstance(value, list) else [value])
            yield from names_in(value)
    elif isinstance(schema, list):
        for one in schema:
            yield from names_in(one)


def words(text: str) -> set[str]:
    return {word.lower() for word in WORD.findall(text)}


# values that a message gives as examples
EXAMPLES = words(" ".join(["EUR GBP USD CAD AUD MXN LEO", *known_names()]))
KNOWN = SIGNS | words(" ".join([*names_in(design_schema()), *names_in(event_schema()), *CONSTANTS]))


def problems(file: Path, text: str) -> list[Problem]:
    file.write_text(text, "utf-8")
    try:
        read_design(file, CONSTANTS)
    except DesignProblemsError as error:
        return list(error.problems)
    except UnreadableDesignError as error:
        return [error.problem]
    return []


@pytest.mark.parametrize(("text", "old", "new"), BROKEN)
def test_every_word_about_a_mistake_comes_from_the_catalogues(
    text: str, old: str, new: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    broken = text.replace(old, new, 1)
    assert broken != text
    file = tmp_path / "x.yaml"
    in_english = problems(file, broken)
    speak_made_up(monkeypatch)
    found = problems(file, broken)
    assert found, "this file has a mistake"
    places = [(one.path, one.line) for one in in_english]
    assert [(one.path, one.line) for one in found] == places
    assert all(one.suggestion for one in found)
    own = words(broken) | words(str(file)) | EXAMPLES
    for one in found:
        assert words(in_words(replace(one, path="", line=None), Voice())) <= KNOWN | own


def test_other_files_and_files_that_cannot_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    speak_made_up(monkeypatch)
    brand, event, latin = (tmp_path / name for name in ("brand.yaml", "event.yaml", "latin.yaml"))
    brand.write_text("name: Lantern\ncolour: navvy\n", "utf-8")
    event.write_text(
        "event: 1\nname: Fair\ncrew: 4\nopening: noon\n"
        "designs: [{design: none.yaml}, {design: none.yaml}, {design: a.event.yaml}]\n",
        "utf-8",
    )
    latin.write_bytes("name: Jalape\xf1o".encode("latin-1"))
    own = EXAMPLES | words("brand event latin none yaml navvy noon " + str(tmp_path))
    for read, file in (
        (read_brand, brand),
        (read_event, event),
        (read_design, brand),
        (read_design, latin),
        (read_design, tmp_path),
        (read_design, tmp_path / "none.yaml"),
    ):
        with pytest.raises((DesignProblemsError, UnreadableDesignError)) as told:
            read(file)
        error = told.value
        assert isinstance(error, DesignProblemsError | UnreadableDesignError)
        for one in error.problems if isinstance(error, DesignProblemsError) else [error.problem]:
            assert words(in_words(replace(one, path="", line=None), Voice())) <= KNOWN | own


@pytest.mark.parametrize("piece", PIECES)
def test_the_file_that_new_writes(
    piece: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It reads as in English, but for comments and labels, and its colours keep their names."""
    file = tmp_path / "x.yaml"
    file.write_text(design_text(Wish("Tarde", piece), Voice()), "utf-8")
    in_english = read_design(file)
    wish = Wish("Tarde", piece, colours=("azul intenso", "ivory", "marfil"))
    text = design_text(wish, Voice("es"))
    file.write_text(text, "utf-8")
    read = read_design(file, CONSTANTS)
    assert (read.build, read.stand_on) == (in_english.build, in_english.stand_on)
    assert [one.label for one in read.balloons.values()][-1] == "marfil"
    speak_made_up(monkeypatch)
    made_up = design_text(Wish("Tarde", piece), Voice())
    own = words("Tarde inner cross GBP cell HI") | words("buildplan check --watch")
    assert words(re.sub(HEX, "", made_up)) <= KNOWN | own


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: parse_speed("fast"),
        lambda: parse_height("fast"),
        lambda: parse_height("99m"),
        lambda: parse_gauges("fast"),
        lambda: read_outline("fast", 1.5),
        lambda: read_outline("fast.tif", 1.5),
        lambda: read_outline("letter:fast", 1.5),
        lambda: read_outline("letter:%", 1.5),
        lambda: design_text(Wish("fast", "fast"), Voice()),
        lambda: design_text(Wish("", "ring"), Voice()),
        lambda: design_text(Wish("fast", "arch", size=999), Voice()),
        lambda: design_text(Wish("fast", "star", size=999), Voice()),
        lambda: design_text(Wish("fast", "star", points=3), Voice()),
        lambda: design_text(Wish("fast", "ring", gauge=99), Voice()),
        lambda: design_text(Wish("fast", "ring", size=-1), Voice()),
        lambda: design_text(Wish("fast", "ring", colours=("fast",)), Voice()),
        lambda: design_text(Wish("fast", "ring", colours=()), Voice()),
    ],
)
def test_what_is_said_of_a_wrong_call(
    wrong: Callable[[], object], monkeypatch: pytest.MonkeyPatch
) -> None:
    speak_made_up(monkeypatch)
    with pytest.raises(ValueError) as told:  # noqa: PT011
        wrong()
    own = words(" ".join(["fast png jpg svg tif", *PIECES, *NAMED]))
    error = told.value
    said = Voice().tell(error.told) if isinstance(error, ToldError) else str(error)
    assert re.search("[а-я]", said), "it is said in the language that is spoken"
    assert words(said) <= SIGNS | own


def test_fit_and_resize(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    file, globe, out = (tmp_path / name for name in ("x.yaml", "globe.yaml", "out.yaml"))
    file.write_text(RING.replace("spare: 0.05", "prices: {long: 0.5}"), "utf-8")
    globe.write_text(design_text(Wish("Ring", "globe", colours=("#1F5F8B",)), Voice()), "utf-8")
    speak_made_up(monkeypatch)
    told = ""
    for call in (
        ["fit", "letter:O", "--height", "100cm", "--gauges", "8", "--out", str(out)],
        ["resize", str(file), "--height", "99in"],
        ["resize", str(file), "--height", "99in", "--by", "gauge", "--out", str(out)],
        ["resize", str(globe), "--height", "2m", "--by", "cells"],
    ):
        monkeypatch.setattr(sys, "argv", ["buildplan", *call])
        with pytest.raises(SystemExit) as ended:
            main()
        assert ended.value.code in (0, 1), call
        told += capsys.readouterr().out
        if out.exists():
            told += "\n".join(re.findall(r"# .*", out.read_text("utf-8")))
    assert "\N{CYRILLIC SMALL LETTER A}" in told
    assert words(told) <= KNOWN | words(f"{RING} {tmp_path} x.yaml out.yaml")
