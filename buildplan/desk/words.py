"""The words of the desk's page: its screens, its buttons, its sentences.

They are said whole: the page fills their {placeholders}, in the order that a language has.
"""

from __future__ import annotations

from buildplan.desk.page_words import EVERY
from buildplan.desk.piece_words import PIECE
from buildplan.language.voice import Voice


def desk_words(voice: Voice) -> dict[str, str]:
    """Every message of the page by its key, its placeholders left open."""
    every = {**EVERY, **PIECE}
    return {key: voice.say_whole(text) for key, text in every.items()}
