"""A design as its card at home shows it."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.design.measures import size_words
from buildplan.design.model import Design
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.png import picture_png
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.evaluating import Evaluation
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.patterns.registry import pattern_of
from buildplan.shape.model import Shape
from buildplan.source.problems import Problem, in_words

SIDE_POINTS, DPI = 240.0, 108.0  # twice as fine as the page shows it


def card_of(piece: Evaluation, voice: Voice) -> dict[str, object]:
    """What a card says of a piece that could be worked out."""
    facts = piece.facts
    height, width = (
        voice.tell(size_words(length, facts.units)) for length in (facts.height_m, facts.width_m)
    )
    stands, words = standing(piece, voice)
    return {
        "title": facts.name,
        "pattern": pattern_of(piece.design.build)[0].name,
        "height": height,
        "width": width,
        "balloons": balloons_words(facts.total, voice),
        "stands": stands,
        "stands_words": words,
        "problems": len(facts.problems),
        "state": "ready",
        "message": in_words(facts.problems[0], voice) if facts.problems else "",
    }


def counted_card(design: Design, framework: Framework, voice: Voice) -> dict[str, object]:
    """What a card says of a piece before its shape is known: what it is called, what it is, and of
    how many balloons."""
    total = sum(balloon_counts(framework).values())
    return {
        **blank_card(design.name, "working", ""),
        "pattern": pattern_of(design.build)[0].name,
        "balloons": balloons_words(total, voice),
    }


def broken_card(name: str, problems: Sequence[Problem], voice: Voice) -> dict[str, object]:
    """What a card says of a file that no piece can be worked out from."""
    message = in_words(problems[0], voice) if problems else ""
    return blank_card(name, "broken", message) | {"problems": len(problems)}


def blank_card(title: str, state: str, message: str) -> dict[str, object]:
    """A card of which nothing is known beyond its title."""
    return {
        "title": title,
        "pattern": "",
        "height": "",
        "width": "",
        "balloons": "",
        "stands": "unknown",
        "stands_words": "",
        "problems": 0,
        "state": state,
        "message": message,
    }


def balloons_words(count: int, voice: Voice) -> str:
    """How many balloons a piece has, in words."""
    return voice.say_count("{number} balloon", "{number} balloons", count)


def standing(piece: Evaluation, voice: Voice) -> tuple[str, str]:
    """Whether a piece stands: a code, and words."""
    if piece.facts.stands:
        if piece.shape.standing.stands and piece.facts.holding.base is None:
            return "stands", voice.say("stands by itself")
        return "held", voice.say("stands when it is held")
    if piece.shape.standing.stands:
        return "leans", voice.say("does not stand as it is: see its problems")
    return "falls", voice.say("falls over")


def card_picture(framework: Framework, shape: Shape) -> bytes:
    """The piece from the front, as PNG."""
    picture = finished_picture(framework, shape, CAMERAS["front"], SIDE_POINTS, SIDE_POINTS)
    return picture_png(picture, DPI)
