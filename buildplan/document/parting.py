"""Where a word that has no room on a line is parted: never a letter from its marks, and in scripts
that part no words no sign from what it closes or opens.

reportlab parts such words sign by sign in two functions of its own, which offer no other way; here
they are given the word in parts that stay together.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from reportlab.lib.textsplit import ALL_CANNOT_END, ALL_CANNOT_START
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import paragraph

from buildplan.drawing.typeset.clusters import clusters

# What begins no line and what ends none (JIS X 4051, in short, from memory; the lists of reportlab
# lack the wide ones).
NOT_FIRST = frozenset(ALL_CANNOT_START + "\uff0c\uff01\uff1f\uff1b\uff1a\u300b\u3009\uff5d\u2026")
NOT_LAST = frozenset(ALL_CANNOT_END)
MOST_KEPT = 4  # signs in a row: a name of nothing else still has to be parted


def parts_of_word(word: str) -> list[str]:
    """A word in the parts that a line may end between."""
    found: list[str] = []
    for letter in clusters(word):
        kept = found and (letter[0] in NOT_FIRST or found[-1][-1] in NOT_LAST)
        if kept and len(found[-1]) < MOST_KEPT:
            found[-1] += letter
        else:
            found.append(letter)
    return found


class _Parted(str):
    """A word that is gone through part by part."""

    __slots__ = ()

    def __iter__(self) -> Iterator[str]:
        return iter(parts_of_word(str(self)))


def _split_word(word: str, *how: Any) -> Any:
    return _SIGN_BY_SIGN(_Parted(word), *how)


def _parts_of_pieces(word: Any) -> Iterator[tuple[Any, float, str]]:
    """The parts of a word of several styles, each with its style and its width."""
    for style, text in word[1:]:
        if hasattr(style, "cbDefn") or not text:
            yield style, getattr(getattr(style, "cbDefn", None), "width", 0.0), text
            continue
        for part in parts_of_word(text):
            yield style, stringWidth(part, style.fontName, style.fontSize), part


_SIGN_BY_SIGN = paragraph._splitWord
paragraph._splitWord = _split_word
paragraph._fragWordIter = _parts_of_pieces
