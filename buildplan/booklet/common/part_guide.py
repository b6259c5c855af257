"""The head of a part of the work: how many people it takes and, of an assembly, which of the
finished piece it builds."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.text import plain
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.framing import view_of
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import body_marks
from buildplan.framework.model import Part
from buildplan.instructions.company import people_words
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Kind, Step

GUIDE_PT = (110.0, 42.0)
# Work on a part, which begins on the floor.
BUILT = frozenset({Kind.LAY, Kind.JOIN})


def head_of_work(book: Book, steps: Sequence[Step]) -> list[Flowable]:
    """How many people the steps of a part of the work take, and where in the finished piece is
    what they build."""
    people = [book.people[step.number - 1] for step in steps]
    said = book.voice.say("People: {number}", number=people_words(book.voice, steps, people))
    words = Words(plain(said), after=6, keep=True)
    part = part_of_step(book.framework, steps[0])
    if part is None or steps[0].kind not in BUILT:
        return [words]
    measure, (wide, _) = book.paper.measure, GUIDE_PT
    head = Columns([[words], [Shown(_guide(book, part))]], (measure - wide, wide), after=4.0)
    head.keepWithNext = True
    return [head]


def _guide(book: Book, part: Part) -> Picture:
    """The finished piece from the front, a part of it in its colours and the rest pale."""
    own = part.framework
    every = (frozenset(book.framework.link), frozenset(book.framework.lock_at))
    new = (frozenset(own.link), frozenset(own.lock_at))
    scene = Scene(
        book.framework,
        book.shape,
        new_links=new[0],
        done_links=every[0] - new[0],
        new_locks=new[1],
        done_locks=every[1] - new[1],
        patterns=book.patterns,
    )
    alt = book.voice.say("Where part {part} is in the finished piece.", part=part.name)
    view = view_of(scene, CAMERAS["front"], *GUIDE_PT, margin=1.0)
    return Picture(*GUIDE_PT, tuple(body_marks(scene, view, *GUIDE_PT)), alt)
