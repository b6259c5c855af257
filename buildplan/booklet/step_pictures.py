"""Which pictures a step gets, and where they stand beside its words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from buildplan.booklet.book import Book
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.closeup import closeup_cameras
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import close_up, step_picture
from buildplan.drawing.section_diagram import section_diagram
from buildplan.drawing.techniques import moves
from buildplan.framework.model import Cell
from buildplan.sequence.model import Kind, Step

GAP = 10.0
PLACE_WIDTH = 108.0
WIDEST_CLOSEUP = 270.0
CELL_WIDTH = 226.0
WHOLE_HEIGHT = 300.0


@dataclass(frozen=True)
class Placed:
    """A picture, its upper left corner `x` from the left and `y` down from the top."""

    picture: Picture
    x: float
    y: float


@dataclass(frozen=True)
class StepPictures:
    """The pictures of a step, in rows across the page, and the height they take together."""

    placed: tuple[Placed, ...]
    height: float


ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN, Kind.LOCK})
ON_THE_WHOLE = frozenset({Kind.LAY, Kind.INSPECT})


def step_pictures(book: Book, step: Step, measure: float, height: float) -> StepPictures:
    """The pictures of a step, in rows `measure` points wide and, on the piece, `height` high.

    Work on the piece gets a close-up of the joints where hands meet (two when one view hides
    some of it), a diagram of what is tied to what where the course turns, and the whole piece
    with what is new in colour. The hand moves are shown with work beside the piece, and where
    a kind of work on it first comes up.
    """
    own_moves = [
        _captioned(picture, f"How to do step {step.number}")
        for picture in moves(book.framework, step)
    ]
    if step.kind in ON_THE_WHOLE:
        left = measure - sum(move.width + GAP for move in own_moves)
        return _rows([*own_moves, _on_the_piece(book, step, left, WHOLE_HEIGHT)], measure)
    if step.kind not in ON_THE_PIECE:
        return _rows(own_moves, measure)
    brace, cell = _first_brace(book, step), _corner(book, step)
    pictures: list[Picture] = []
    room = measure - PLACE_WIDTH - GAP
    if cell is not None:
        diagram = cell_diagram(book.framework, cell.number, CELL_WIDTH, height)
        pictures.append(_captioned(diagram, f"Diagram of step {step.number}"))
        room -= CELL_WIDTH + GAP
    pictures = [*_closeups(book, step, room, height, one=cell is not None), *pictures]
    pictures.append(_on_the_piece(book, step, PLACE_WIDTH, height))
    if _is_first_of_kind(book, step):
        pictures += own_moves
        if brace and cell is None:
            diagram = section_diagram(book.framework, brace, height)
            pictures.append(_captioned(diagram, f"Diagram of step {step.number}"))
    return _rows(pictures, measure)


def _captioned(picture: Picture, words: str) -> Picture:
    """The picture with words of its own before its alternative text."""
    return replace(picture, alt=f"{words}. {picture.alt}")


def _rows(pictures: Sequence[Picture], width: float) -> StepPictures:
    """Pictures placed in rows of `width`."""
    placed, x, y, row = [], 0.0, 0.0, 0.0
    for picture in pictures:
        if x and x + picture.width > width + 0.01:
            x, y, row = 0.0, y + row + GAP, 0.0
        placed.append(Placed(picture, x, y))
        x, row = x + picture.width + GAP, max(row, picture.height)
    return StepPictures(tuple(placed), y + row)


def _is_first_of_kind(book: Book, step: Step) -> bool:
    return step is next(other for other in book.steps if other.kind is step.kind)


def _first_brace(book: Book, step: Step) -> int | None:
    """Number of the first brace that a step ties."""
    if step.kind is not Kind.BRACE:
        return None
    links = set(step.links)
    return next(brace.number for brace in book.framework.braces if set(brace.links) & links)


def _corner(book: Book, step: Step) -> Cell | None:
    """The cell that a brace step finishes, unless it goes straight on."""
    number = _first_brace(book, step)
    if number is None or set(step.cells) <= {"straight"}:
        return None
    return next((cell for cell in book.framework.cells if cell.second == number), None)


def _brought(steps: Iterable[Step]) -> tuple[frozenset[str], frozenset[str]]:
    """Links by id, and locks by joint, that steps bring into the piece."""
    adding = [op for step in steps for op in step.operations if op.adds]
    links = frozenset(link for op in adding for link in op.links)
    return links, frozenset(joint for op in adding for joint in op.locks)


def _scene(book: Book, step: Step) -> Scene:
    done_links, done_locks = _brought(s for s in book.steps if s.number < step.number)
    links, locks = _brought([step])
    if step.kind in ON_THE_WHOLE:
        links, locks, done_links, done_locks = done_links, done_locks, links, locks
    return Scene(
        book.framework,
        book.shape,
        new_links=links,
        done_links=done_links,
        new_locks=locks,
        done_locks=done_locks,
        patterns=book.patterns,
    )


def _joints(step: Step) -> tuple[str, ...]:
    return tuple(dict.fromkeys(joint for turn in step.turns for joint in turn.joints))


def _row_words(step: Step) -> str:
    return "; ".join(turn.words for turn in step.turns)


def _closeups(book: Book, step: Step, room: float, height: float, one: bool) -> list[Picture]:
    """Close-ups of a step, `height` points high, that share `room` across; at most one, or
    two."""
    joints = _joints(step)
    scene = _scene(book, step)
    cameras = closeup_cameras(scene, joints)
    if one:
        cameras = cameras[:1]
    width = min((room - GAP * (len(cameras) - 1)) / len(cameras), WIDEST_CLOSEUP)
    names = ("Close-up", "Close-up from another side")
    return [
        close_up(
            scene,
            camera,
            width,
            height,
            joints,
            ties=joints,
            labels=joints,
            alt=f"{name} of step {step.number}. {_row_words(step)}.",
        )
        for name, camera in zip(names, cameras, strict=False)
    ]


def _on_the_piece(book: Book, step: Step, width: float, height: float) -> Picture:
    return step_picture(
        _scene(book, step),
        CAMERAS["front"],
        width,
        height,
        labels=_joints(step) if step.kind is Kind.LAY else (),
        place=_joints(step) if step.kind in ON_THE_PIECE else (),
        alt=f"Step {step.number} on the whole piece, from the front. {step.check}",
    )
