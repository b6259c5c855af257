"""A piece as the desk's picture of it is drawn: its data, from where it is seen, and who stands
beside it."""

from __future__ import annotations

import json

from buildplan.drawing.dimensions import PERSON_M
from buildplan.language.voice import Voice
from buildplan.screen.model import Piece, piece_json
from buildplan.screen.person import HALF_WIDE_M, person_outline
from buildplan.screen.seats import beside_seat, whole_seat
from buildplan.shape.model import Shape


def shown_json(piece: Piece, shape: Shape, voice: Voice) -> bytes:
    """A piece with the seats before it and before it and a person, as JSON."""
    person = person_outline(shape.width_m, [voice])
    beside = {
        "whole": whole_seat(shape).model_dump(),
        "beside": beside_seat(shape, person["foot_x"] + HALF_WIDE_M, PERSON_M).model_dump(),
        "person": person,
    }
    rest = json.dumps(beside, ensure_ascii=False, separators=(",", ":"))
    return f'{{"piece":{piece_json(piece)},{rest[1:]}'.encode()
