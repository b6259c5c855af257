"""Text that somebody else has written, shown so that it cannot pass for ours.

Control signs end lines and move the cursor; direction signs (Unicode Standard Annex 9, 2) put what
follows them in another order. Both are shown by their number, but isolates that all end: they move
nothing but what they hold, and names from the right stand in them (`isolates.py`).
"""

from __future__ import annotations

import unicodedata

from buildplan.language.isolates import END, FIRST_STRONG, are_closed

DIRECTIONS = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
UNSEEN = frozenset(("Cc", "Zl", "Zp", "Cs"))


def shown(text: str) -> str:
    """The text with its control and direction signs as `<U+202E>`."""
    if text.isascii() and text.isprintable():
        return text
    kept = (FIRST_STRONG, END) if are_closed(text) else ()
    return "".join(f"<U+{ord(c):04X}>" if is_unseen(c) and c not in kept else c for c in text)


def is_unseen(sign: str) -> bool:
    """Whether a sign is not seen, and moves what is."""
    return sign in DIRECTIONS or unicodedata.category(sign) in UNSEEN


def sign_name(sign: str) -> str:
    """A sign by its number and its name in Unicode: `U+05D0 HEBREW LETTER ALEF`."""
    return f"U+{ord(sign):04X} {unicodedata.name(sign, '')}".rstrip()
