"""Where a printed page leads: the seller's own page for phones."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import quote

from buildplan.design.model import Brand
from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.source.values import MOST_OF_ADDRESS, PAGE_ADDRESS


def page_address(text: str) -> str:
    """The address of a page. Raises ToldError for what is none."""
    told = len(text) <= MOST_OF_ADDRESS and text.isprintable()
    if not (told and re.fullmatch(PAGE_ADDRESS, text)):
        raise ToldError(
            message(
                "{text} is no address of a page; write it whole, like "
                "https://lantern-street.example/star, in {most} characters at most",
                text=repr(text[: 2 * MOST_OF_ADDRESS]),
                most=MOST_OF_ADDRESS,
            )
        )
    return text


def leads_to(given: str | None, seller: Brand | None, design: Path) -> str:
    """The address of a design's page for phones: as given, else the seller's own; empty without
    one. {piece} in it stands for the name of the design's file."""
    own = None if seller is None else seller.link
    # the name of a file may be bytes that are no text, as Python reads it (PEP 383)
    stem = quote(design.stem, errors="surrogateescape")
    return (given or own or "").replace("{piece}", stem)
