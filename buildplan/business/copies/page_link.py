"""Where a printed page leads: the seller's own page for phones."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import quote

from buildplan.design.model import Brand


def leads_to(given: str | None, seller: Brand | None, design: Path) -> str:
    """The address of a design's page for phones: as given, else the seller's own; empty without
    one. {piece} in it stands for the name of the design's file."""
    own = None if seller is None else seller.link
    return (given or own or "").replace("{piece}", quote(design.stem))
