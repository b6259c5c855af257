"""The companion: one page that holds a whole piece and opens from a file, without a network.

Everything is in the page: script, style, data. Its Content-Security-Policy (W3C, level 3) lets
nothing else in and nothing out; of scripts and styles it lets through those alone whose SHA-256
it names. The data stand in blocks that are never run, the piece and its pictures packed, and the
page sets them as text only.
"""

from __future__ import annotations

import base64
import hashlib
import html
import json
import zlib
from collections.abc import Mapping, Sequence
from importlib.resources import files
from typing import Any

from babel import Locale

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import (
    CAUTIONS,
    CHOKING_EUROPE,
    CHOKING_HAZARD,
    CHOKING_WORDS,
    LATEX_WORDS,
)
from buildplan.drawing.dimensions import PERSON_M
from buildplan.language.voice import ENGLISH, Voice
from buildplan.screen.gather import gather_piece
from buildplan.screen.interface import interface_words
from buildplan.screen.model import piece_json
from buildplan.screen.person import HALF_WIDE_M, person_data
from buildplan.screen.pictures import page_pictures
from buildplan.screen.seats import beside_seat, whole_seat
from buildplan.screen.words import brand_words, figures_told

BUNDLE = files("buildplan.screen") / "bundle"
# what a companion is known by: where its data begin
DATA_START = '<script type="application/json" id="data">'
NOTHING = ("default-src 'none'", "base-uri 'none'", "form-action 'none'")


def companion(book: Book, voices: Sequence[Voice], language: str = ENGLISH) -> str:
    """The page of a piece, first read in `language`. The same book gives the same text.

    The book must be as its file says it; it holds the words of every voice.
    """
    pictures = page_pictures(book, voices)
    data = script_safe(_data(book, voices, language, pictures))
    script, style = (BUNDLE / name for name in ("page.js", "page.css"))
    return _page(
        _title(book),
        language,
        script.read_text("utf-8"),
        style.read_text("utf-8"),
        data,
        packed(json.loads(piece_json(gather_piece(book, voices)))),
        packed(pictures),
    )


def _title(book: Book) -> str:
    return book.design.name


def _data(
    book: Book, voices: Sequence[Voice], language: str, pictures: Mapping[str, Any]
) -> dict[str, Any]:
    person = person_data(book, voices)
    return {
        "language": language,
        "names": {v.language: _own_name(v) for v in voices},
        "tags": {v.language: v.tag for v in voices},
        "words": {v.language: interface_words(v) for v in voices},
        "cautions": _cautions(voices),
        "facts": figures_told(book, voices),
        "whole": whole_seat(book.shape).model_dump(),
        "person": person,
        "beside": beside_seat(book.shape, person["foot_x"] + HALF_WIDE_M, PERSON_M).model_dump(),
        "brand": brand_words(book, voices),
        "copy": {"serial": book.serial, "buyer": book.buyer} if book.serial else None,
        "moves": sorted(pictures["moves"]),
        "licences": (BUNDLE / "LICENCES.txt").read_text("utf-8"),
    }


def _own_name(voice: Voice) -> str:
    """A language's name in itself: `Español`."""
    name = Locale.parse(voice.language).get_display_name() or voice.language
    return name[:1].upper() + name[1:]


def _cautions(voices: Sequence[Voice]) -> list[dict[str, dict[str, str]]]:
    """The words of the regulations first, then our own, as in print."""
    every = [
        (CHOKING_HAZARD, "", " ".join(CHOKING_WORDS)),
        ("", "", CHOKING_EUROPE),
        ("", "", LATEX_WORDS),
        *((one.signal, one.topic, one.words) for one in CAUTIONS),
    ]

    def said(text: str) -> dict[str, str]:
        if text == " ".join(CHOKING_WORDS):
            return {v.language: " ".join(map(v.say_whole, CHOKING_WORDS)) for v in voices}
        return {v.language: v.say_whole(text) for v in voices}

    return [
        {"signal": said(signal), "topic": said(topic), "words": said(words)}
        for signal, topic, words in every
    ]


def script_safe(data: Mapping[str, Any]) -> str:
    """JSON that cannot end the block it stands in."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    for letter in "<>&\u2028\u2029":
        text = text.replace(letter, f"\\u{ord(letter):04x}")
    return text


def packed(data: Mapping[str, Any]) -> str:
    """Data as JSON, compressed (zlib, RFC 1950) and in letters."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return base64.b64encode(zlib.compress(text.encode(), 9)).decode("ascii")


def _page(
    title: str, language: str, script: str, style: str, data: str, piece: str, pictures: str
) -> str:
    policy = "; ".join(
        [
            *NOTHING,
            f"script-src {_digest(script)}",
            f"style-src {_digest(style)}",
            "img-src data: blob:",
        ]
    )
    return "\n".join(
        [
            "<!doctype html>",
            f'<html lang="{html.escape(language)}">',
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{html.escape(policy)}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            '<meta name="referrer" content="no-referrer">',
            '<link rel="icon" href="data:,">',
            f"<title>{html.escape(title)}</title>",
            f"<style>{style}</style>",
            "</head>",
            "<body>",
            f"{DATA_START}{data}</script>",
            f'<script type="text/plain" id="piece">{piece}</script>',
            f'<script type="text/plain" id="pictures">{pictures}</script>',
            f"<script>{script}</script>",
            "</body>",
            "</html>",
            "",
        ]
    )


def _digest(text: str) -> str:
    made = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode("ascii")
    return f"'sha256-{made}'"
