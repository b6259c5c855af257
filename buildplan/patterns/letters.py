"""Letters and digits: the pattern, what can be wrong with it, and how it grows."""

from __future__ import annotations

from collections.abc import Iterator

from pydantic import ValidationError

from buildplan.framework.model import Framework
from buildplan.language.messages import mark, message
from buildplan.patterns.alphabet import GLYPHS
from buildplan.patterns.letter_colours import COLOURS
from buildplan.patterns.letter_frames import build_letters
from buildplan.patterns.letter_keys import Letters, in_capitals
from buildplan.patterns.letter_rows import cells_high, letter_joints
from buildplan.patterns.lettering import HEIGHTS, SIGN_OVER, can_draw
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Whole,
    link,
)
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.source.kinds import FileKind
from buildplan.source.lengths import tie_to_tie
from buildplan.source.mistake import Mistake, listed
from buildplan.source.suggestions import Change, Put, Remedy, Suggestion, TakeOut, change


def _undrawn(text: str, cells: int) -> list[str]:
    """The characters of a text that cannot be had so many cells high, each once."""
    return [one for one in dict.fromkeys(text) if one != " " and not can_draw(one, cells)]


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    try:
        letters = Letters.model_validate(given)
    except ValidationError:
        return None
    if letters.cells is None or _undrawn(letters.text, letters.cells):
        return None
    return first_to_last(letter_joints(letters.text, letters.cells))


def _built(letters: Letters, making: Making) -> Framework:
    link_m = making.balloons[letters.long].tie_to_tie_m
    height = letters.cells or cells_high(letters.height or 0.0, link_m / making.metres_per_unit)
    return build_letters(making.name, making.balloons, letters, height)


def _check(letters: Given, whole: Whole) -> Iterator[Mistake]:
    at = ("build", "letters")
    text, cells = in_capitals(letters.get("text")), letters.get("cells")
    if (cells is None) == (letters.get("height") is None):
        yield Mistake(
            FileKind.CELLS_OR_HEIGHT,
            at,
            message("letters give neither cells nor a height")
            if cells is None
            else message("letters give their height twice over"),
            change(
                message(
                    "add {cells}; or height: a length",
                    cells=message("cells: {numbers}", numbers=listed(map(str, HEIGHTS), "or")),
                ),
                Put((*at, "cells"), HEIGHTS[1]),
            )
            if cells is None
            else Suggestion(
                ways=tuple(
                    Remedy(message("take {key} out", key=key), (TakeOut((*at, key)),))
                    for key in ("height", "cells")
                )
            ),
        )
    height, link_length = letters.get("height"), _link_length(letters, whole)
    if cells is None and isinstance(height, int | float) and link_length is not None:
        cells = cells_high(height, link_length)
        if abs((cells + SIGN_OVER) * link_length - height) > link_length:
            # farther than half way to those of other cells: there are none so high
            drawn = [one for one in HEIGHTS if not _undrawn(str(text), one)] or HEIGHTS
            yield _not_so_high(height, min(drawn) if cells < max(drawn) else cells, link_length)
            return
    if isinstance(text, str) and cells in HEIGHTS:
        for one in _undrawn(text, int(str(cells))):
            if one in GLYPHS:
                yield Mistake(
                    FileKind.LETTER_TOO_LOW,
                    (*at, "cells" if height is None else "height"),
                    message(
                        "{letter} cannot be had {cells} cells high: its stems would run into one "
                        "another",
                        letter=one,
                        cells=str(cells),
                    ),
                    change(
                        message("make the letters {cells} cells high or more", cells=HEIGHTS[1]),
                        *_so_many_cells(HEIGHTS[1], height is not None),
                    ),
                )


def _link_length(letters: Given, whole: Whole) -> float | None:
    """The length of the links of outlines between their knots, in the file's units, if it can be
    told."""
    long = letters.get("long")
    balloon = whole.balloons.get(long) if isinstance(long, str) else None
    lengths = ("kind", "inflate_to", "tie_to_tie", "chain_of_ten")
    return None if balloon is None or not balloon.right(*lengths) else tie_to_tie(balloon.part)[0]


def _so_many_cells(cells: int, height_given: bool) -> Iterator[Change]:
    at = ("build", "letters")
    if height_given:
        yield TakeOut((*at, "height"))
    yield Put((*at, "cells"), cells)


def _not_so_high(height: float, cells: int, link_length: float) -> Mistake:
    """A height that letters of these links do not come near; they are so many cells high at the
    nearest."""
    stand = (cells + SIGN_OVER) * link_length
    asked, nearest = f"{height:g}", f"{stand:.4g}"
    return Mistake(
        FileKind.LETTERS_NOT_SO_HIGH,
        ("build", "letters", "height"),
        message(
            "letters {height} high cannot be had of these links: the lowest, {cells} cells, stand "
            "{nearest} high",
            height=asked,
            cells=cells,
            nearest=nearest,
        )
        if stand > height
        else message(
            "letters {height} high cannot be had of these links: the highest, {cells} cells, stand "
            "{nearest} high",
            height=asked,
            cells=cells,
            nearest=nearest,
        ),
        Suggestion(
            (
                message(
                    "links of {length} from knot to knot would make them so high",
                    length=f"{height / (cells + SIGN_OVER):.3g}",
                ),
            ),
            (
                Remedy(
                    message("make the letters {cells} cells high", cells=cells),
                    tuple(_so_many_cells(cells, height_given=True)),
                ),
            ),
        ),
    )


def _more_cells(data: Given, factor: float) -> Iterator[Put]:
    """Letters are so many cells high, or as many as come near a height."""
    letters = data["build"]["letters"]
    if letters.get("cells") is None:
        yield Put(("build", "letters", "height"), round(letters["height"] * factor, 1))
        return
    number = min(HEIGHTS, key=lambda cells: abs(cells - letters["cells"] * factor))
    if number != letters["cells"]:
        yield Put(("build", "letters", "cells"), number)


PATTERN = Pattern(
    name="letters",
    about=mark("letters and digits as joined tubes"),
    keys=Letters,
    uses=(
        link("long", mark("an outline")),
        link("brace", mark("a brace")),
        link("bar", mark("a bar")),
        LOCK,
        EXTRA,
    ),
    joints=_joints,
    build=_built,
    colours=COLOURS,
    more_cells=_more_cells,
    check=_check,
    extra_as="brace",
)
