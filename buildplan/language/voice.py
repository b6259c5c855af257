"""The voice: a language, passed to whatever puts things into words.

Messages are looked up with the standard library's gettext, in the catalogues beside this
module. Their placeholders are filled by name, so that a translation may put them in its own order.
"""

from __future__ import annotations

import gettext
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from babel import Locale
from babel.lists import format_list
from babel.numbers import format_decimal, format_percent

from buildplan.language.isolates import isolated
from buildplan.language.messages import Decimal, Listing, Measure, Message, Style, Value
from buildplan.language.shown import shown

DOMAIN = "buildplan"
CATALOGUES = Path(__file__).parent / "catalogues"
ENGLISH = "en"
# The language of a catalogue, as the locale whose numbers and lists it uses (Unicode CLDR).
LOCALES: Mapping[str, str] = {
    ENGLISH: "en_GB",
    "de": "de",
    "es": "es",
    "fr": "fr",
    "pt": "pt_BR",
}
# up to here every locale of LOCALES writes a whole number with its digits alone
UNGROUPED = 1000


@cache
def _catalogue(language: str) -> gettext.NullTranslations:
    if language == ENGLISH:
        return gettext.NullTranslations()
    return gettext.translation(DOMAIN, CATALOGUES, [language])


def _one_form(catalogue: gettext.NullTranslations, message: str) -> str:
    """A message as it is said of one, or without a number. Where it is also said of several, the
    catalogue has its forms by number alone, and older Pythons do not look there by themselves."""
    found = catalogue.gettext(message)
    return catalogue.ngettext(message, message, 1) if found == message else found


@cache
def _locale(language: str) -> Locale:
    return Locale.parse(LOCALES[language])


@dataclass(frozen=True)
class Voice:
    """A language to say things in: a key of LOCALES."""

    language: str = ENGLISH

    @property
    def locale(self) -> Locale:
        """Its locale, for numbers, lists, dates and money."""
        return _locale(self.language)

    @property
    def tag(self) -> str:
        """The language as a BCP 47 tag, for documents: `en-GB`."""
        return LOCALES[self.language].replace("_", "-")

    def say(self, message: str, /, **values: Value) -> str:
        """A message, its `{name}` placeholders filled; whole numbers as the locale writes them."""
        return self._filled(_one_form(_catalogue(self.language), message), values)

    def say_in(self, context: str, message: str, /, **values: Value) -> str:
        """As `say`, for a short message that means different things in different places."""
        return self._filled(_catalogue(self.language).pgettext(context, message), values)

    def say_count(self, one: str, many: str, number: int, /, **values: Value) -> str:
        """The form of a message that goes with a number, which fills `{number}`."""
        message = _catalogue(self.language).ngettext(one, many, number)
        return self._filled(message, {"number": number, **values})

    def say_whole(self, message: str, /) -> str:
        """As `say`, for a message without placeholders, whose braces are its own."""
        return _catalogue(self.language).gettext(message) if message else ""

    def tell(self, value: Value) -> str:
        """A message, number or list that was made before the language was known."""
        match value:
            case str():  # here the names, texts and files of others come into messages
                return shown(value)
            case int():
                return self.whole(value)
            case Decimal():
                return self.decimal(value.value, value.places)
            case Measure():
                return self.tell(value.words)
            case Listing():
                return self.listed([self.tell(item) for item in value.items], value.style)
            case Message(whole=True):
                return self.say_whole(value.text)
            case Message(many=many) if many:
                return self.say_count(value.text, many, value.number, **dict(value.values))
            case Message(context=context) if context:
                return self.say_in(context, value.text, **dict(value.values))
        return self.say(value.text, **dict(value.values))

    def whole(self, number: int) -> str:
        """A whole number in digits: `12`, `1,234` (Spanish `12.345`)."""
        if -UNGROUPED < number < UNGROUPED:
            return str(number)
        return str(format_decimal(number, locale=self.locale))

    def decimal(self, value: float, places: int) -> str:
        """A number with so many decimal places, always all of them: `3.06` (Spanish `3,06`)."""
        digits = "0" * places
        pattern = f"#,##0.{digits}" if places else "#,##0"
        # Python rounds halves of binary fractions as they are; a pattern alone would round again
        return str(format_decimal(float(f"{value:.{places}f}"), pattern, locale=self.locale))

    def written(self, digits: str) -> str:
        """A number in Python's digits, with as many places as they have: `0.25`."""
        return self.decimal(float(digits), len(digits.partition(".")[2]))

    def percent(self, share: float) -> str:
        """A share of one in whole per cent: `12%` (Spanish `12 %`)."""
        return str(format_percent(round(share, 2), locale=self.locale))

    def listed(self, items: Sequence[str], style: Style = "standard") -> str:
        """`A`, `A and B`, `A, B and C`, by the locale's list pattern (Unicode CLDR)."""
        return str(format_list([isolated(item) for item in items], style, locale=self.locale))

    def _filled(self, message: str, values: Mapping[str, Value]) -> str:
        told = {name: isolated(self.tell(value)) for name, value in values.items()}
        return message.format(**told)
