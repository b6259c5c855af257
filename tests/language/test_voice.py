"""Messages, numbers and lists in the language of a voice."""

from __future__ import annotations

import gettext
from decimal import Decimal

import pytest
from babel import units
from babel.numbers import format_decimal, parse_decimal
from hypothesis import given
from hypothesis import strategies as st

from buildplan.commands.options import LanguageName
from buildplan.design.measures import length_words, size_words
from buildplan.language.phrases import number_ranges
from buildplan.language.voice import CATALOGUES, LOCALES, Voice
from buildplan.source.values import Language

SPOKEN = sorted(LOCALES)
ENGLISH, SPANISH = Voice(), Voice("es")


def test_options_and_design_files_name_the_languages_there_are() -> None:
    assert {name.value for name in LanguageName} == set(LOCALES)
    assert set(Language.__args__) == set(LOCALES)  # type: ignore[attr-defined]


def test_documents_name_their_language() -> None:
    """BCP 47 tags."""
    assert (ENGLISH.tag, SPANISH.tag) == ("en-GB", "es")


def test_messages_are_said_with_their_values() -> None:
    assert SPANISH.say("{first} to {last}", first="A24", last="A32") == "A24 a A32"
    assert SPANISH.say_in("number", "three") == "tres"
    assert ENGLISH.say_count("{number} pair", "{number} pairs", 1) == "1 pair"
    assert ENGLISH.say_count("{number} pair", "{number} pairs", 1200) == "1,200 pairs"


def test_a_message_that_no_catalogue_has_is_said_as_it_is() -> None:
    assert SPANISH.say("Not in any catalogue: {number}", number=3) == "Not in any catalogue: 3"


def test_a_message_of_one_and_of_several_is_found_for_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """As on Pythons whose gettext looks for a message without its number alone (3.11.2)."""
    known = gettext.translation("buildplan", CATALOGUES, ["de"])
    forms = [one for one in known._catalog if isinstance(one, tuple)]  # type: ignore[attr-defined]
    plain = {one: said for one, said in known._catalog.items() if one not in forms}  # type: ignore[attr-defined]
    monkeypatch.setattr(gettext.GNUTranslations, "gettext", lambda _, text: plain.get(text, text))
    said = Voice("de").say("Tie {pairs} pairs in a row, tail to tail, with a double knot.", pairs=2)
    assert said == "Binden Sie 2 Paare hintereinander, Schwanz an Schwanz, mit Doppelknoten."


@pytest.mark.parametrize("language", SPOKEN)
@given(st.decimals(-1_000_000, 1_000_000, places=2))
def test_decimals_read_back_in_their_locale(language: str, value: Decimal) -> None:
    """babel's parser reads back what is written, at any number of places."""
    told = Voice(language).decimal(float(value), 2)
    assert parse_decimal(told, locale=LOCALES[language]) == value
    assert len(told) > 2
    assert told[-3] in ",."


@pytest.mark.parametrize("language", SPOKEN)
@given(st.integers(-10_000_000, 10_000_000))
def test_whole_numbers_are_cldr_s(language: str, number: int) -> None:
    assert Voice(language).whole(number) == format_decimal(number, locale=LOCALES[language])


def test_numbers_and_lists_in_spanish() -> None:
    """Thousands are grouped with a point; the decimal sign is a comma; the last two of a list are
    joined with `y` (Unicode CLDR, locale es, as babel reads it)."""
    assert [SPANISH.whole(999), SPANISH.whole(12345)] == ["999", "12.345"]
    assert SPANISH.decimal(3.055, 2) == "3,06"
    assert SPANISH.listed(["A1", "B1", "C1"]) == "A1, B1 y C1"
    assert number_ranges(SPANISH, [1, 2, 3, 4, 6, 9]) == "1 a 4, 6 y 9"
    assert SPANISH.tell(size_words(3.06, "cm")) == "3,06 m"
    assert SPANISH.tell(length_words(0.205, "cm")) == "20,5 cm"
    # a gauge is marked in fractions of an inch in any language
    assert SPANISH.tell(length_words(3.5 * 0.0254, "in")) == "3 1/2 in"


@pytest.mark.parametrize("language", SPOKEN)
@pytest.mark.parametrize(
    ("length_m", "places", "unit"),
    [(0.2, 0, "length-centimeter"), (1.93, 2, "length-meter")],
)
def test_units_are_written_as_cldr_writes_them(
    language: str, length_m: float, places: int, unit: str
) -> None:
    told = Voice(language).tell(
        size_words(length_m, "cm") if places else length_words(length_m, "cm")
    )
    value = length_m if places else length_m * 100
    expected = units.format_unit(value, unit, "short", locale=LOCALES[language])
    assert told.split() == expected.split()  # whatever space stands between them
