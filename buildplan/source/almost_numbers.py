"""Numbers and lengths as people write them where the file wants a number alone."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping

# a number that is almost one: with a unit, a sign or a word behind it, or a decimal comma
_NUMBER = re.compile(
    r"(?:~|[£$€])?\s*(-?[0-9]{1,9}(?:[.,][0-9]{1,9})?)\s*"
    r"(%|x|×|times|people|persons?|pcs|pieces|balloons?|in|inch|inches|\"|cm|kg|lb|t|min|minutes"
    r"|h|hours?|[£$€]|[A-Z]{3})?"
)
# a whole number and a fraction, as sizes in inches are told
_FRACTION = re.compile(r"(?:([0-9]{1,4})[ -]*)?([1-9][0-9]?)\s*[/⁄]\s*([1-9][0-9]?)")
_CLOCK = re.compile(r"([0-9]{1,2}):([0-5][0-9])")
_NUMBER_OF = r"(\d{1,6}(?:[.,]\d{1,6})?)"
# a length in one unit or in two, the second of which may go unsaid: 5 ft 3 in, 7'10", 1m80
_UNIT = r"([^\W\d]+|''|[\"”″“'′’])\.?"
_WHOLE_LENGTH = re.compile(rf"{_NUMBER_OF}[ -]*{_UNIT}[ ,]*(?:{_NUMBER_OF}[ -]*(?:{_UNIT})?)?")
_SMALLER: Mapping[str, str] = {"ft": "in", "m": "cm"}
_LENGTH = re.compile(r"([0-9]+(?:[.,][0-9]+)?)[ -]*([a-z]+|''|[”″“'′])\.?")
IN_MINUTES = ("loading", "travel", "unloading")
IN_KILOGRAMS = ("carries", "weight")
# what a unit that a key is not in makes of a number; the pound is exactly 0.45359237 kg
# (international yard and pound agreement of 1959)
_TIMES: Mapping[str, tuple[tuple[str, ...], float]] = {
    "h": (IN_MINUTES, 60.0),
    "hour": (IN_MINUTES, 60.0),
    "hours": (IN_MINUTES, 60.0),
    "lb": (IN_KILOGRAMS, 0.45359237),
    "t": (IN_KILOGRAMS, 1000.0),
    "%": ((), 0.01),
}
LENGTHS = (
    *("nominal", "inflate_to", "tie_to_tie", "chain_of_ten", "width", "depth", "height"),
    *("length", "door_width", "door_height"),
)
_UNITS: Mapping[str, str] = {
    **dict.fromkeys(("in", "ins", "inch", "inches", "''", '"', "”", "″", "“"), "in"),
    **dict.fromkeys(("zoll", "pulgada", "pulgadas", "pouce", "pouces", "polegadas"), "in"),
    **dict.fromkeys(("ft", "feet", "foot", "'", "′", "’"), "ft"),
    **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("zentimeter", "centímetros", "centimetros", "centimètres"), "cm"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("mm", "millimetres", "millimeters"), "mm"),
}
# numbers in the words of the languages that pages are printed in, from 1 to 12
_WORDS = (
    "one two three four five six seven eight nine ten eleven twelve",
    "eins zwei drei vier fünf sechs sieben acht neun zehn elf zwölf",
    "uno dos tres cuatro cinco seis siete ocho nueve diez once doce",
    "un deux trois quatre cinq six sept huit neuf dix onze douze",
    "um dois três quatro cinco seis sete oito nove dez onze doze",
)
_NUMBERS = {word: number for line in _WORDS for number, word in enumerate(line.split(), 1)}


def number_in(text: str, key: str = "") -> str:
    """The number that a text almost is, as the file has to write it under a key; else nothing."""
    plain = text.strip()
    if plain.lower() in _NUMBERS:
        return str(_NUMBERS[plain.lower()])
    clock = _CLOCK.fullmatch(plain)
    if clock is not None and key in IN_MINUTES:
        return str(60 * int(clock[1]) + int(clock[2]))
    # a sign for a fraction is its figures with the fraction's own slash (Unicode's compatible form)
    fraction = _FRACTION.fullmatch(unicodedata.normalize("NFKD", re.sub("([¼-¾])", r" \1", plain)))
    if fraction is not None:
        return f"{int(fraction[1] or 0) + int(fraction[2]) / int(fraction[3]):.6g}"
    found = _NUMBER.fullmatch(plain)
    if found is None:
        return ""
    number, unit = found[1].replace(",", "."), found[2] or ""
    if unit not in _TIMES:
        return number
    keys, times = _TIMES[unit]
    return f"{float(number) * times:g}" if not keys or key in keys else ""


def unit_named(text: str) -> str:
    """The unit that is called so; nothing where none is."""
    return _UNITS.get(text.strip().lower(), "")


def measured(text: str) -> tuple[tuple[float, str], ...]:
    """The numbers of a length with their units (`in`, `ft`, `cm`, `m`, `mm`), the larger first;
    nothing where it is none."""
    found = _WHOLE_LENGTH.fullmatch(text.strip().lower())
    first = unit_named(found[2]) if found else ""
    if found is None or not first:
        return ()
    large = float(found[1].replace(",", "."))
    if found[3] is None:
        return ((large, first),)
    smaller = _SMALLER.get(first)
    if smaller is None or (found[4] and unit_named(found[4]) != smaller):
        return ()
    return (large, first), (float(found[3].replace(",", ".")), smaller)


def length_in(text: str, key: str) -> str:
    """A length that is written with a unit of another name, as the file has to write it; nothing
    where it is none, or the key is not one of a length."""
    found = _LENGTH.fullmatch(text.strip().lower())
    if key not in LENGTHS or found is None or found[2] not in _UNITS:
        return ""
    return f"{found[1].replace(',', '.')} {_UNITS[found[2]]}"
