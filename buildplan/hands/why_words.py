"""What a figure rests on, in words and as plain data."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from buildplan.design.measures import Units, length_words, size_words, speed_words
from buildplan.hands.craft import CraftNumber, Moved
from buildplan.hands.why import FIGURES, JOINTS, Mover, Why, half_of
from buildplan.language.messages import Message, listing, mark, message, message_in
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.shape.constants import FROM_MEMORY, OF_THE_DESIGN

WORTH_TELLING = 0.01  # the least share that has a line of its own
LONG_M = 0.5

NAMES: Mapping[Moved, Message] = {
    Moved.HEIGHT: message_in("figure of a piece", "height as it stands"),
    Moved.WIDTH: message_in("figure of a piece", "width"),
    Moved.DEPTH: message_in("figure of a piece", "depth"),
    Moved.WEIGHT: message_in("figure of a piece", "weight"),
    Moved.TIP: message_in("figure of a piece", "lean at which it goes over"),
    Moved.SAG: message_in("figure of a piece", "sag"),
    Moved.WIND: message_in("figure of a piece", "gust that tips it"),
    Moved.REACH: message_in("figure of a piece", "joints out of straight reach"),
    Moved.AIR: message_in("figure of a piece", "air"),
    Moved.PUMP: message_in("figure of a piece", "time of the pump"),
    Moved.MINUTES: message_in("figure of a piece", "work in all"),
}

MORE = mark(
    "{share} %  {name} is {value} ({low} to {high}, {source}); 1 % more of it makes {off} % more"
)
LESS = mark(
    "{share} %  {name} is {value} ({low} to {high}, {source}); 1 % more of it makes {off} % less"
)
MORE_JOINTS = mark(
    "{share} %  {name} is {value} ({low} to {high}, {source}); over that range {off} more"
)
FEWER_JOINTS = mark(
    "{share} %  {name} is {value} ({low} to {high}, {source}); over that range {off} fewer"
)


def why_lines(found: Why, units: Units, voice: Voice) -> Iterator[str]:
    """A figure, how far it may be off, and the numbers that this rests on with their shares."""
    value = _value(found, units, voice)
    if not found.movers:
        yield voice.say(
            "Why {figure}: {value}; no number that stands for the craft moves it",
            figure=NAMES[found.figure],
            value=value,
        )
        return
    yield _head(found, value, voice)
    told = [one for one in found.movers if one.share >= WORTH_TELLING]
    yield from (f"  {_line(found, one, voice)}" for one in told)
    rest = found.movers[len(told) :]
    if rest:
        names = voice.listed([one.number.name for one in rest])
        yield "  " + voice.say("less than a hundredth each: {names}", names=names)


def _head(found: Why, value: str, voice: Voice) -> str:
    figure = NAMES[found.figure]
    if FIGURES[found.figure] == JOINTS:
        return voice.say(
            "Why {figure}: {value}, {off} more or less. Of that, as shares of its variance:",
            figure=figure,
            value=value,
            off=voice.decimal(found.half_range, 0),
        )
    return voice.say(
        "Why {figure}: {value}, {off} % more or less. Of that, as shares of its variance:",
        figure=figure,
        value=value,
        off=_per_cent(found.half_range / found.value, voice),
    )


def _line(found: Why, one: Mover, voice: Voice) -> str:
    number = one.number
    if FIGURES[found.figure] == JOINTS:
        words, off = (MORE_JOINTS, FEWER_JOINTS), voice.decimal(2 * abs(one.moves_by), 0)
    else:
        slope = abs(one.moves_by) / half_of(number) * number.value / found.value
        words, off = (MORE, LESS), voice.decimal(slope, 2)
    return voice.say(
        words[one.moves_by < 0],
        share=voice.decimal(100 * one.share, 0),
        name=number.name,
        value=_written(number.value, voice),
        low=_written(number.low, voice),
        high=_written(number.high, voice),
        source=_source(number),
        off=off,
    )


def _value(found: Why, units: Units, voice: Voice) -> str:
    """A figure in the reader's units."""
    value, unit = found.value, FIGURES[found.figure]
    if unit == "m":
        said = size_words if value >= LONG_M else length_words
        return voice.tell(said(value, units))
    if unit == "m/s":
        return voice.tell(speed_words(value, units))
    if unit == JOINTS:
        return voice.decimal(value, 0)
    if unit == "degrees":
        return voice.say("{angle} degrees", angle=voice.decimal(value, 1))
    return f"{_written(value, voice)} {unit}"


def _source(number: CraftNumber) -> Message:
    if number.source.startswith(FROM_MEMORY):
        return message("from memory")
    return message("the design's own") if number.source == OF_THE_DESIGN else message("published")


def _per_cent(share: float, voice: Voice) -> str:
    return voice.decimal(100 * share, 1)


def _written(value: float, voice: Voice) -> str:
    """A number to three digits."""
    digits = f"{value:.3g}"
    places = len(digits.partition(".")[2]) if "e" not in digits else 0
    return voice.decimal(value, places)


def why_as_data(found: Why) -> dict[str, object]:
    """The same as plain data; `moves_by` is by how much the figure changes when the number goes up
    by half its range."""
    return {
        "figure": found.figure.value,
        "value": round(found.value, 6),
        "unit": FIGURES[found.figure],
        "half_range": round(found.half_range, 6),
        "rests_on": [
            {
                "name": one.number.name,
                "value": _short(one.number.value),
                "low": _short(one.number.low),
                "high": _short(one.number.high),
                "unit": one.number.unit,
                "source": one.number.source,
                "moves_by": round(one.moves_by, 6),
                "share": round(one.share, 6),
            }
            for one in found.movers
        ],
    }


def parse_figure(text: str) -> Moved:
    """The figure of a name, `height`. Raises ToldError for any other."""
    names = {figure.value: figure for figure in FIGURES}
    asked = text.strip().lower()
    if asked not in names:
        raise ToldError(
            message(
                "{text} is no figure that can be asked about; they are {names}",
                text=f'"{text}"',
                names=listing(names),
            )
        )
    return names[asked]


def _short(value: float) -> float:
    """A number to six digits."""
    return float(f"{value:.6g}")
