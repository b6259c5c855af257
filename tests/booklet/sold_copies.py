"""A sold copy of a small piece, printed once for all tests of a run."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.business.copies.brand import branding
from buildplan.design.model import Design
from buildplan.design.reading import read_brand
from buildplan.document.paper import PAPERS

DESIGNS = Path(__file__).parent.parent.parent / "designs"
BRAND = DESIGNS / "brand" / "lantern_street.yaml"
BUYER = "Inés <Okafor> & Söhne"


def link(colour: str, label: str) -> dict[str, object]:
    return {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": colour, "label": label}


@cache
def sold_book() -> Book:
    """A bent post, sold to an invented buyer under an invented brand."""
    design = Design.model_validate(
        {
            "buildplan": 1,
            "name": "Bent Post",
            "units": "in",
            "balloons": {
                "long": link("#1F5F8B", "deep blue"),
                "cross": link("#F7F3E8", "ivory"),
                "lock": link("#F7F3E8", "ivory")
                | {"kind": "round", "nominal": 5, "inflate_to": 3.5},
            },
            "build": {
                "tube": {
                    "closed": False,
                    "chains": 4,
                    "long": "long",
                    "brace": "cross",
                    "lock": "lock",
                    "course": ["straight", "fan", "straight"],
                }
            },
        }
    )
    book = gather_book(design, PAPERS["a4"], design.units, "sale")
    return replace(book, buyer=BUYER, branding=branding(read_brand(BRAND), BRAND))


@cache
def sold_copy() -> bytes:
    """The printed file."""
    return print_booklet(sold_book())
