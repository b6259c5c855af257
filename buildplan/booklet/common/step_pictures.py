"""Which pictures a step gets, and where they stand beside its words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from math import fsum

from buildplan.booklet.common.book import Book, adds_words
from buildplan.booklet.common.closeups import (
    MOST_ABREAST,
    ON_THE_PIECE,
    CloseUp,
    Views,
    seen_from,
    step_joints,
)
from buildplan.booklet.common.floor_plans import floor_plan_of, whole_words
from buildplan.booklet.common.other_sides import from_the_other_side
from buildplan.booklet.common.spurs import (
    LADDER_HEIGHT,
    spur_of_step,
    spur_pictures,
    spur_place,
)
from buildplan.booklet.common.step_moves import corner_of, corner_picture, how_to, is_laid_to_brace
from buildplan.document.undrawn import Showable, Undrawn, drawn
from buildplan.drawing.closeup import close_up
from buildplan.drawing.eye import Eye, eyes_for, how_many_kneel, lying_place
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import step_picture
from buildplan.drawing.seat import ACROSS, FROM_ABOVE, LOOKING_DOWN, LYING
from buildplan.drawing.sign_key import PictureSign
from buildplan.drawing.standing_place import standing_eyes, standing_place
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Kind, Step

GAP = 10.0
PLACE_WIDTH = 108.0
NARROWEST_CLOSEUP, WIDEST_CLOSEUP = 150.0, 300.0
CELL_WIDTH, CELL_HEIGHT = 226.0, 165.0  # lower, the words on it run into one another
WHOLE_HEIGHT = 300.0
LOOKED_OVER, WIDEST_LOOKED_OVER, LEAST_LOOKED_OVER = 120.0, 226.0, 16.0


@dataclass(frozen=True)
class PlacedPicture:
    """A picture, its upper left corner `x` from the left and `y` down from the top."""

    picture: Picture
    x: float
    y: float


@dataclass(frozen=True)
class StepPictures:
    """The pictures of a step, in rows across the page, and the height they take together."""

    placed: tuple[PlacedPicture, ...]
    height: float


def step_pictures(
    book: Book,
    step: Step,
    views: Views,
    hand_moves: Sequence[Picture],
    measure: float,
    height: float,
    whole_height: float = WHOLE_HEIGHT,
) -> StepPictures:
    """The pictures of a step, in rows `measure` points wide and, on the piece, `height` high,
    or `whole_height` where they show all of it.

    Work on the piece gets its close-ups of the joints where hands meet, a diagram of what is
    tied to what where the course turns, and the whole piece with what is new in colour; then
    come the hand moves that are given.
    """
    hand_moves = [how_to(book, step, move) for move in hand_moves]
    if is_laid_to_brace(book, step):
        return _rows(
            [*hand_moves, floor_plan_of(book, views, step, measure, whole_height)], measure
        )
    if step.kind is Kind.INSPECT:
        finished = views.progress.finished(step)
        left = measure - fsum(move.width + GAP for move in hand_moves)
        wide = min(left, WIDEST_LOOKED_OVER)
        words = whole_words(book, step)
        long = book.facts.height_m / book.facts.width_m  # a wide piece needs less height
        high = min(LOOKED_OVER, LEAST_LOOKED_OVER + wide * long)
        whole = step_picture(finished, FROM_ABOVE, wide, high, alt=words)
        return _rows([*hand_moves, whole], measure)
    if spur_of_step(book, step) is not None:
        place = _where(book, step, views, (), (), (PLACE_WIDTH, LADDER_HEIGHT))
        return _rows([*hand_moves, *spur_pictures(book, step), place], measure)
    if step.kind not in ON_THE_PIECE:
        return _rows(hand_moves, measure)  # also chains on the floor, which have no shape yet
    cell = corner_of(book, step)
    diagrams: list[Picture] = []
    room = measure - PLACE_WIDTH - GAP
    if cell is not None:
        diagrams.append(drawn(corner_picture(book, step, cell, (CELL_WIDTH, height))))
        room -= CELL_WIDTH + GAP
    moves_width = fsum(move.width + GAP for move in hand_moves)
    if room - moves_width >= NARROWEST_CLOSEUP * min(len(views.of(step)), MOST_ABREAST):
        room -= moves_width
    shown = shown_in(book, views.of(step))
    eyes = eyes_of(step, views, shown, (PLACE_WIDTH, height))
    near = _closeups(book, step, shown, _numbers_of(eyes), room, height)
    across = from_the_other_side(book, step, views, room / 2, height)
    near += [across.draw()] if across else []
    whole = _where(book, step, views, shown, eyes, (PLACE_WIDTH, height))
    return _rows([*near, *diagrams, whole, *hand_moves], measure)


@dataclass(frozen=True)
class StepPanels:
    """The pictures of work on the piece, one by one: the close-ups, the diagram of a corner, where
    on the whole piece it is, and the close-up seen from across, if that is shown."""

    closeups: tuple[Showable, ...]
    corner: Showable | None
    where: Showable
    across: Showable | None = None


def step_panels(
    book: Book, step: Step, views: Views, size: tuple[float, float], place: tuple[float, float]
) -> StepPanels:
    """The pictures of a step on the piece, its close-ups of a `size`, and the whole piece of
    another (width, height). No title is drawn in them: the rows below say it."""
    width, height = size
    shown = shown_in(book, views.of(step))
    cell, corner = corner_of(book, step), (CELL_WIDTH, max(height, CELL_HEIGHT))

    @cache
    def eyes() -> tuple[Eye, ...]:
        return eyes_of(step, views, shown, place)

    def near(number: int, closeup: CloseUp) -> Undrawn:
        return Undrawn(
            *size,
            lambda: _closeup(
                book, step, closeup, width, height, _numbers_of(eyes()).get(number, "")
            ),
        )

    return StepPanels(
        tuple(near(number, closeup) for number, closeup in enumerate(shown, 1)),
        None if cell is None else corner_picture(book, step, cell, corner),
        Undrawn(*place, lambda: _where(book, step, views, shown, eyes(), place)),
        from_the_other_side(book, step, views, width, height),
    )


def _numbers_of(eyes: Sequence[Eye]) -> Mapping[int, str]:
    """The numbers that close-ups bear, by their place from 1: none where there is a single eye."""
    if len(eyes) < 2:
        return {}
    return {number: str(number) for eye in eyes for number in eye.panels}


def eyes_of(
    step: Step, views: Views, shown: Sequence[CloseUp], size: tuple[float, float]
) -> tuple[Eye, ...]:
    """Where the close-ups of a step are seen from, on a picture of the whole piece."""
    panels, scene = [closeup.panel for closeup in shown], views.progress.whole(step)
    if _lies(shown):
        return eyes_for(scene, FROM_ABOVE, size, panels)
    return standing_eyes(scene, size, panels)


def eye_signs(
    step: Step, views: Views, shown: Sequence[CloseUp], size: tuple[float, float]
) -> tuple[PictureSign, int]:
    """The sign of the eyes of `eyes_of`, and how many there are."""
    if not _lies(shown):
        return PictureSign.EYE, len(eyes_of(step, views, shown, size))
    panels, scene = [closeup.panel for closeup in shown], views.progress.whole(step)
    return PictureSign.KNEELER, how_many_kneel(scene, FROM_ABOVE, size, panels)


def _lies(closeups: Sequence[CloseUp]) -> bool:
    """Whether what close-ups show lies, and the whole of it is seen from above."""
    cameras = [closeup.panel.camera for closeup in closeups]
    return all(camera.name in LYING or camera == LOOKING_DOWN for camera in cameras)


def shown_in(book: Book, closeups: Sequence[CloseUp]) -> Sequence[CloseUp]:
    """The close-ups that an edition prints: a crew, that knows the work, needs the first of many
    that are alike."""
    if book.edition == "crew" and len(closeups) > MOST_ABREAST:
        return closeups[:1]
    return closeups


def _rows(pictures: Sequence[Picture], width: float) -> StepPictures:
    """Pictures placed in rows of `width`."""
    placed, x, y, row = [], 0.0, 0.0, 0.0
    for picture in pictures:
        if x and x + picture.width > width + 0.01:
            x, y, row = 0.0, y + row + GAP, 0.0
        placed.append(PlacedPicture(picture, x, y))
        x, row = x + picture.width + GAP, max(row, picture.height)
    return StepPictures(tuple(placed), y + row)


def _closeups(
    book: Book,
    step: Step,
    closeups: Sequence[CloseUp],
    numbers: Mapping[int, str],
    room: float,
    height: float,
) -> list[Picture]:
    """The close-ups of a step, `height` points high, as many abreast as share `room` well."""
    abreast = min(len(closeups), MOST_ABREAST)
    width = min((room - GAP * (abreast - 1)) / abreast, WIDEST_CLOSEUP)
    titles = [
        f"{numbers.get(n, '')} {closeup.title}".strip() for n, closeup in enumerate(closeups, 1)
    ]
    return [
        _closeup(book, step, one, width, height, title)
        for one, title in zip(closeups, titles, strict=True)
    ]


def _closeup(
    book: Book, step: Step, closeup: CloseUp, width: float, height: float, title: str
) -> Picture:
    camera = closeup.panel.camera
    told: dict[str, str | int] = {
        "number": step.number,
        "seen": seen_from(book.voice, camera),
        "balloons": adds_words(book, step),
    }
    if camera.name == ACROSS:  # not the seat of all other braces
        title = f"{title} {book.voice.say('from across')}".strip()
    alt = (
        book.voice.say(
            "Close-up of step {number}, {turn}, seen {seen}. New: {balloons}.",
            turn=closeup.title,
            **told,
        )
        if closeup.title
        else book.voice.say("Close-up of step {number}, seen {seen}. New: {balloons}.", **told)
    )
    return close_up(
        closeup.panel,
        width,
        height,
        title=title,
        alt=f"{alt} {closeup.words}.",
        data=(("turn", closeup.title), ("step", str(step.number))),
    )


def _where(
    book: Book,
    step: Step,
    views: Views,
    closeups: Sequence[CloseUp],
    eyes: Sequence[Eye],
    size: tuple[float, float],
) -> Picture:
    """The whole piece as it lies or stands, with a circle where the work is and the eyes of
    the one who sees it so."""
    if spur_of_step(book, step) is not None:
        return spur_place(book, views.progress, step, size, _where_words(book, step))
    scene, joints, alt = views.progress.whole(step), step_joints(step), _where_words(book, step)
    if _lies(closeups):
        return lying_place(scene, FROM_ABOVE, size, joints, eyes, alt)
    return standing_place(scene, size, joints, eyes, book.voice.say("From above"), alt)


def _where_words(book: Book, step: Step) -> str:
    voice, check = book.voice, book.told(step).check
    part = part_of_step(book.framework, step)
    if part is None:
        return voice.say(
            "Step {number} on the whole piece, with the eye of the builder. {check}",
            number=step.number,
            check=check,
        )
    return voice.say(
        "Step {number} on part {part}, with the eye of the builder. {check}",
        number=step.number,
        part=part.name,
        check=check,
    )
