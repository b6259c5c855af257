"""The value of an unquoted scalar, by the core schema of YAML 1.2 (YAML 1.2.2, 10.3.2).

Editors read files so. What YAML 1.1 makes of words and signs is left as text: `yes`, `on`,
`12:30`, `1_000` and `2024-05-01`; only `true` and `false` are truth values.
"""

from __future__ import annotations

import re

from buildplan.language.shown import DIRECTIONS

MAX_DIGITS = 30

Value = str | int | float | bool | None

_NULL = re.compile(r"null|Null|NULL|~|")
_TRUE = re.compile(r"true|True|TRUE")
_FALSE = re.compile(r"false|False|FALSE")
_WHOLE = re.compile(r"[-+]?[0-9]+")
_OCTAL = re.compile(r"0o[0-7]+")
_HEXADECIMAL = re.compile(r"0x[0-9a-fA-F]+")
_DECIMAL = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_NOT_FINITE = re.compile(r"[-+]?(\.inf|\.Inf|\.INF)|\.nan|\.NaN|\.NAN")

_LEADING_ZERO = re.compile(r"[-+]?0[0-9]+")
# control characters, halves of surrogate pairs and non-characters, which no paper can show
_UNPRINTABLE = re.compile(
    r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff" + "".join(sorted(DIRECTIONS)) + "]"
)


def resolved(written: str) -> Value:
    """The value that `written` stands for; a number of more than 30 signs stays text."""
    if _NULL.fullmatch(written):
        return None
    if _TRUE.fullmatch(written):
        return True
    if _FALSE.fullmatch(written):
        return False
    if len(written) > MAX_DIGITS:
        return written
    if _WHOLE.fullmatch(written):
        return int(written)
    if _OCTAL.fullmatch(written) or _HEXADECIMAL.fullmatch(written):
        return int(written, 0)
    if _DECIMAL.fullmatch(written):
        return float(written)
    if _NOT_FINITE.fullmatch(written):
        return float(written.replace(".", ""))
    return written


def has_leading_zero(written: str) -> bool:
    """Whether `written` is a whole number that YAML 1.1 reads as octal and 1.2 as decimal."""
    return len(written) <= MAX_DIGITS and _LEADING_ZERO.fullmatch(written) is not None


def unprintable_in(text: str) -> list[str]:
    """The signs of a text that cannot stand on paper, each once: not line breaks and tabs, but what
    turns round the text that follows."""
    return list(dict.fromkeys(_UNPRINTABLE.findall(text)))
