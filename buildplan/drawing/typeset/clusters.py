"""Signs that stay together: what a line may end after, where a word has to be parted.

The boundaries of letters of the Unicode Standard (Annex 29, 3.1.1), as far as a line of a page
needs them.
"""

from __future__ import annotations

import unicodedata

from buildplan.drawing.typeset.setting import WITH_BEFORE

VIRAMA = 9  # its combining class (Unicode Standard, 4.3): what follows joins on
JOINER = "\u200d"
# Vowels that Thai and Lao write before the letter that they are of, and behind it (Unicode 16.2)
BEFORE_LETTER = frozenset("\u0e40\u0e41\u0e42\u0e43\u0e44\u0ec0\u0ec1\u0ec2\u0ec3\u0ec4")
BEHIND_LETTER = frozenset("\u0e30\u0e32\u0e33\u0e45\u0eb0\u0eb2\u0eb3")
SKIN = ("\U0001f3fb", "\U0001f3ff")  # modifiers of emoji (UTS 51), in category Sk


def clusters(text: str) -> list[str]:
    """A text in parts that no line end parts: each letter with its marks."""
    found: list[str] = []
    for sign in text:
        if found and _goes_with(found[-1], sign):
            found[-1] += sign
        else:
            found.append(sign)
    return found


def _goes_with(before: str, sign: str) -> bool:
    last = before[-1]
    return (
        unicodedata.category(sign) in WITH_BEFORE
        or sign in BEHIND_LETTER
        or last in BEFORE_LETTER
        or last == JOINER
        or (unicodedata.combining(last) == VIRAMA and sign.isalpha())
        or SKIN[0] <= sign <= SKIN[1]
    )
