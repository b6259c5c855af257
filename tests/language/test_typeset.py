"""The catalogues are set in type as their languages are.

French: Imprimerie nationale, Lexique des règles typographiques; German: DIN 5008; the space before
per cent: Unicode CLDR (all but CLDR from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from babel.messages.pofile import read_po

from buildplan.language.phrases import clauses
from buildplan.language.voice import CATALOGUES, LOCALES, Voice

APOSTROPHE, NO_BREAK, DOTS = "\u2019", "\u00a0", "\u2026"
LANGUAGES = [language for language in LOCALES if language != "en"]


def translations(language: str) -> Iterator[str]:
    with (CATALOGUES / language / "LC_MESSAGES" / "buildplan.po").open("rb") as file:
        for message in read_po(file):
            if message.id:
                texts = message.string
                yield from [texts] if isinstance(texts, str) else texts or ()


@pytest.mark.parametrize(
    ("language", "wrong"),
    [
        ("fr", r"[^\W\d_]'[^\W\d_]"),  # l'air
        ("fr", r" [;:!?%»](\W|$)"),  # a line may end before the sign
        ("fr", r"\w[;!?»](\s|$)"),
        ("de", "—"),
        ("de", r"\d%"),
        ("pt", r"[\d}]\s%"),
        *((language, r" \.\.\.$") for language in LANGUAGES),
    ],
)
def test_the_signs_of_a_language_are_its_own(language: str, wrong: str) -> None:
    assert [text for text in translations(language) if re.search(wrong, text)] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_per_cent_is_written_in_one_way(language: str) -> None:
    own = Voice(language).percent(0.5).replace("50", "")
    spaces = {found for text in translations(language) for found in re.findall(r"\d(\s?%)", text)}
    assert {space.replace(NO_BREAK, " ") for space in spaces} <= {own.replace(NO_BREAK, " ")}


@pytest.mark.parametrize(("language", "joined"), [("fr", f"A{NO_BREAK}; B"), ("de", "A; B")])
def test_what_is_told_one_after_another_is_joined_as_the_language_does(
    language: str, joined: str
) -> None:
    """Rows and lists that are put together have the language's signs too (as at the top)."""
    assert clauses(Voice(language), ["A", "B"]) == joined
    assert clauses(Voice(language), ["A"]) == "A"
