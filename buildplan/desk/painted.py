"""What of a piece can be painted, as the page hears it, and paint as changes of its file."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path

from pydantic import ValidationError

from buildplan.design.building import build_framework
from buildplan.design.checks import check
from buildplan.design.model import Design
from buildplan.design.reading import joined_data
from buildplan.desk.key_words import COLOURED
from buildplan.desk.painting import (
    CannotPaintError,
    PaintedPart,
    paint_changes,
    painted_parts,
    unpainted,
)
from buildplan.desk.refusals import RefusedError
from buildplan.framework.assembly import outer_part
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import Change
from buildplan.source.trade_words import in_file_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load


def paint_as_data(design: Design, data: object, voice: Voice) -> dict[str, object]:
    """What can be painted: the links of each place of each part; and why other balloons cannot."""
    parts = painted_parts(design, data)
    return {
        "parts": [
            {
                "part": one.part,
                "label": _label(one, voice),
                "at": list(one.colours_at),
                "places": [list(place) for place in one.places],
            }
            for one in parts
        ],
        "why": " ".join(voice.tell(told) for told in unpainted(design, data)),
    }


def _label(part: PaintedPart, voice: Voice) -> str:
    """What a painted part is called, with the part of an assembly that it is of."""
    called = COLOURED.get(part.part)
    words = part.part if called is None else voice.say_whole(called)
    link = part.places[0][0]
    if "." not in link:
        return words
    return voice.say("{part}: {what}", part=outer_part(link), what=words)


def painted(text: str, folder: Path, links: Collection[str], balloon: str) -> Sequence[Change]:
    """The changes of a design's text that make some of its links another balloon. Raises
    RefusedError where that cannot be done."""
    data = in_file_words(plain(load(text, "").root))
    wrong = RefusedError(422, message("the design has problems: mend them before you paint"))
    if any(True for _ in check(data, CONSTANTS)):
        raise wrong
    try:
        design = joined_data(data, folder, CONSTANTS)
    except (DesignProblemsError, ValidationError) as error:
        raise wrong from error
    if balloon not in design.balloons:
        raise RefusedError(422, message("the design has no balloon {name}", name=balloon))
    parts = painted_parts(design, data)
    try:
        return paint_changes(parts, data, build_framework(design), links, balloon)
    except CannotPaintError as error:
        raise RefusedError(422, error.why) from error
