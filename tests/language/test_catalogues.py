"""The catalogues are complete, fit the code, and pass gettext's own checks."""

from __future__ import annotations

import gettext
import re
import runpy
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from babel import Locale
from babel.messages.catalog import Catalog, Message
from babel.messages.pofile import read_po

from buildplan.language.voice import CATALOGUES, DOMAIN, ENGLISH, LOCALES

SCRIPT = Path(__file__).parent.parent.parent / ".ci" / "catalogues"
OTHERS = [language for language in LOCALES if language != ENGLISH]


def po_file(language: str) -> Path:
    return CATALOGUES / language / "LC_MESSAGES" / f"{DOMAIN}.po"


def catalogue(language: str) -> Catalog:
    with po_file(language).open("rb") as file:
        return read_po(file, locale=language, domain=DOMAIN)


def entries(found: Catalog) -> Iterator[Message]:
    return (message for message in found if message.id)


def forms(text: object) -> tuple[str, ...]:
    return tuple(text) if isinstance(text, (tuple, list)) else (str(text or ""),)


@pytest.fixture(scope="module")
def in_code() -> Catalog:
    """The messages of the code, as babel's extractor finds them."""
    found = runpy.run_path(str(SCRIPT), run_name="catalogues")["messages"]()
    assert isinstance(found, Catalog)
    return found


def test_there_is_a_catalogue_for_every_language() -> None:
    found = {path.parent.parent.name for path in CATALOGUES.glob("*/LC_MESSAGES/*.po")}
    assert found == set(OTHERS)


@pytest.mark.parametrize("language", OTHERS)
def test_every_message_of_the_code_is_translated_and_no_other(
    language: str, in_code: Catalog
) -> None:
    wanted = {(forms(m.id), m.context) for m in entries(in_code)}
    found = {(forms(m.id), m.context): forms(m.string) for m in entries(catalogue(language))}
    assert set(found) == wanted, "run .ci/catalogues, then translate what it names"
    assert [ident for ident, strings in found.items() if not all(strings)] == []


@pytest.mark.parametrize("language", OTHERS)
def test_translations_have_the_placeholders_of_their_messages(language: str) -> None:
    def placeholders(text: str) -> set[str]:
        return set(re.findall(r"{(\w*)}", text))

    for message in entries(catalogue(language)):
        for number, string in enumerate(forms(message.string)):
            # the form for one may say the number in words, or not at all
            may_miss = {"number"} if message.pluralizable and number == 0 else set()
            wanted = set().union(*map(placeholders, forms(message.id)))
            assert wanted - may_miss <= placeholders(string) | may_miss, string
            assert placeholders(string) <= wanted, string
            # what stands round a message in a sentence is not the translation's to change
            first = forms(message.id)[0]
            assert (string[:1].isspace(), string[-1:].isspace()) == (
                first[:1].isspace(),
                first[-1:].isspace(),
            ), string


@pytest.mark.parametrize("language", OTHERS)
def test_the_compiled_catalogue_says_what_its_source_says(language: str) -> None:
    said = gettext.translation(DOMAIN, CATALOGUES, [language])
    for message in entries(catalogue(language)):
        singular, *plural = forms(message.id)
        strings = forms(message.string)
        if plural:
            assert (
                said.ngettext(singular, plural[0], 1),
                said.ngettext(singular, plural[0], 2),
            ) == (strings)
        elif message.context:
            assert said.pgettext(message.context, singular) == strings[0]
        else:
            assert said.gettext(singular) == strings[0]


@pytest.mark.parametrize("language", OTHERS)
def test_plural_forms_are_those_of_cldr(language: str) -> None:
    """Unicode CLDR's cardinal rules, as babel carries them, choose the same form as the
    catalogue's own formula: `one` for 1, another for every other whole number. (CLDR has a
    `many` for Spanish millions, which no piece of balloons comes to.)"""
    rule = Locale.parse(LOCALES[language]).plural_form
    chosen = catalogue(language).plural_expr
    said = gettext.c2py(chosen)
    for number in range(10_000):
        assert (rule(number) == "one") == (said(number) == 0)


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.skipif(shutil.which("msgfmt") is None, reason="gettext's tools are not installed")
def test_gettexts_own_check_passes(language: str, tmp_path: Path) -> None:
    """`msgfmt --check` of GNU gettext: form, header, and placeholders of python-brace-format."""
    done = subprocess.run(
        ["msgfmt", "--check", "--output-file", tmp_path / "checked.mo", po_file(language)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
