"""How colours are laid on letters: in level bands from the floor up, or letter by letter."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, floor

from buildplan.framework.model import Framework, Link, Role
from buildplan.language.messages import mark
from buildplan.patterns.colour_patterns import RunPlace
from buildplan.patterns.colour_runs import ColourRun
from buildplan.patterns.letter_keys import Letters
from buildplan.patterns.pattern import Colouring

PLACES = 3  # decimals of a link to which balloons in front and behind lie at one place


def _runs(framework: Framework, letters: Letters, part: str) -> Iterator[ColourRun]:
    if part == "letter":
        yield _one_by_one(framework)
        return
    outline = part == "long"
    ink = letters.long if outline else letters.brace
    yield _bands(
        framework,
        framework.balloons[letters.long].tie_to_tie_m,
        [
            link
            for link in framework.links
            if (link.role is Role.CHAIN) is outline and link.balloon == ink
        ],
    )


def _bands(framework: Framework, link_m: float, inked: Sequence[Link]) -> ColourRun:
    """Balloons by the row of cells that each lies in, from the lowest row up; those in front and
    behind are alike."""
    twins: dict[tuple[float, float], list[str]] = {}
    for link in inked:
        (x, y, _), (to_x, to_y, _) = framework.laid[link.start], framework.laid[link.finish]
        middle = round((y + to_y) / 2 / link_m, PLACES), round((x + to_x) / 2 / link_m, PLACES)
        twins.setdefault(middle, []).append(link.id)
    ordered = sorted(twins)
    rows = ceil(ordered[-1][0]) if ordered else 0
    # what lies level on top of the highest row is of it
    places = [RunPlace(min(floor(y), rows - 1)) for y, _ in ordered]
    return ColourRun(places, [twins[at] for at in ordered], rows)


def _one_by_one(framework: Framework) -> ColourRun:
    """Each letter whole, from left to right, without the bars between."""
    letters = [part.framework for part in framework.parts if _is_letter(part.name)] or [framework]
    links = [[link.id for link in one.links] for one in letters]
    return ColourRun([RunPlace(place) for place in range(len(links))], links, len(links))


def _is_letter(name: str) -> bool:
    """Whether a part of a word is a letter, which is called by itself and its number, or a bar."""
    return len(name.partition("-")[0]) == 1


COLOURS = Colouring(
    ("long", "brace", "letter"),
    (),
    _runs,
    mark("use long or brace for level bands from the floor up, or letter for one after another"),
)
