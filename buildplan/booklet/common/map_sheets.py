"""The joint map's sheets, and which steps belong to which sheet."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass
from itertools import accumulate, pairwise

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import joints_words
from buildplan.document.canvas import WIDEST_PAGE
from buildplan.document.text import BODY, TITLE, paragraph_height, plain
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.maps.blocks import joints_drawn, joints_shown, ties_shown
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.marks import Box, Picture
from buildplan.framework.model import Framework
from buildplan.instructions.setting_up import is_tying
from buildplan.instructions.stages import part_of_step
from buildplan.language.phrases import sentences, short_ranges
from buildplan.sequence.courses import loose_chains
from buildplan.sequence.model import Kind, Step

# What a map page holds beside the map: its title, the words below that, and the gaps.
TITLE_ROOM, GAPS = TITLE.leading + 8.0, 16.0
INDEX_COLUMNS = (6, 4, 3, 2)
INDEX_GAP = 8.0
NO_BREAK = "\N{NO-BREAK SPACE}"  # a page and its number stay on one line

# Steps whose joints a builder looks up on the map, and those that the map leads back to.
LOOKED_UP = frozenset({Kind.CLOSE_RING, Kind.TAG, Kind.LAY, Kind.BRACE, Kind.SINGLE, Kind.JOIN})
LED_BACK_TO = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN})


@dataclass(frozen=True)
class MapSheets:
    """The sheets of a piece's joint map; `sheets_of` gives the numbers (from 0) of the fewest
    sheets that show all of a step's joints, or what ties them, by step number."""

    pictures: tuple[Picture, ...]
    sheets_of: dict[int, tuple[int, ...]]

    def steps_on(self, book: Book, sheet: int) -> tuple[Step, ...]:
        """The steps that a sheet leads back to, in order."""
        return tuple(
            step
            for step in book.steps
            if _is_led_to(book, step) and sheet in self.sheets_of.get(step.number, ())
        )


def _is_led_to(book: Book, step: Step) -> bool:
    """Whether the map leads to a step: of an assembly also to where the chains of a part are
    laid, and not to the singles that are tied in right after that."""
    if not book.framework.parts:
        return step.kind in LED_BACK_TO
    return step.kind in LED_BACK_TO - {Kind.SINGLE} or step.kind is Kind.LAY


def map_place(sheet: int) -> str:
    """The name of a sheet's page, as a place for links to lead to."""
    return f"joint map {sheet + 1}"


def step_place(step: Step) -> str:
    """The name of a step's block, as a place for links to lead to."""
    return f"step {step.number}"


def map_sheets(book: Book) -> MapSheets:
    """The joint map on as few sheets as are readable, each with room for its index of steps."""
    words = paragraph_height(how_to_read(book), BODY, book.paper.measure)
    room = book.paper.top - book.paper.bottom - TITLE_ROOM - words - GAPS
    lines = 0
    while True:
        index = INDEX_GAP + (lines + bool(index_head(book))) * BODY.leading
        pictures = joint_map(
            book.framework, book.paper.measure, room - index, book.voice, book.shape.at
        )
        sheets = MapSheets(pictures, _sheets_of(book, pictures))
        needed = max(_index_height(book, sheets.steps_on(book, n)) for n in range(len(pictures)))
        if needed <= lines:
            return sheets
        lines = needed


def index_words(book: Book, step: Step, page: int) -> tuple[str, str]:
    """A step in a sheet's index: the joints that it brings together, its braces, its part or the
    parts that it ties, and where it is found."""
    voice, framework = book.voice, book.framework
    if is_by_number(book):
        found = voice.whole(page)  # "page" stands over them
    else:
        found = voice.say("page {page}", page=page).replace(" ", NO_BREAK)
    joins = step.of_kind(Kind.JOIN)
    if joins and all(len(join.joints) == 1 for join in joins):
        return joints_words([join.joints[0] for join in joins], voice), found
    if step.kind is Kind.BRACE and is_by_number(book):
        return short_ranges([operation.brace for operation in step.of_kind(Kind.BRACE)]), found
    if framework.parts and step.kind is Kind.LAY and (part := part_of_step(framework, step)):
        return voice.say("Part {part}", part=part.name), found
    if framework.parts and joins:
        met = [framework.part_at(joint) for join in joins for joint in join.joints]
        tied = [part.name for part in met if part]
        return voice.listed(list(dict.fromkeys(tied))), found
    return book.told(step).title, found


def index_head(book: Book) -> str:
    """What stands over a sheet's index: what its numbers are of, if it has any."""
    if not is_by_number(book):
        return ""
    say = book.voice.say
    return say("Parts and braces: page") if book.framework.parts else say("Braces: page")


def is_by_number(book: Book) -> bool:
    """Whether braces are looked up on the map by their numbers alone: of a piece of one part, if
    nothing else is looked up."""
    kinds = {step.kind for step in book.steps if step.kind in LED_BACK_TO}
    return Kind.BRACE in kinds and (bool(book.framework.parts) or kinds == {Kind.BRACE})


def _index_lines(book: Book, step: Step, columns: int) -> int:
    """Lines that a step's entry takes there."""
    width = book.paper.measure / columns - INDEX_GAP
    words = ": ".join(index_words(book, step, WIDEST_PAGE))
    return int(paragraph_height(plain(words), BODY, width) / BODY.leading + 0.5)


def index_columns(book: Book, steps: Sequence[Step]) -> list[Sequence[Step]]:
    """A sheet's index in columns of about the same length: as many as leave every entry on one
    line, two at least."""
    across = next(
        columns
        for columns in INDEX_COLUMNS
        if columns == INDEX_COLUMNS[-1]
        or all(_index_lines(book, step, columns) == 1 for step in steps)
    )
    lines = list(accumulate(_index_lines(book, step, across) for step in steps))
    ends = [
        next(n for n, used in enumerate(lines, 1) if across * used >= lines[-1] * column)
        for column in range(1, across + 1)
        if lines
    ]
    return [steps[first:last] for first, last in pairwise([0, *ends])]


def _index_height(book: Book, steps: Sequence[Step]) -> int:
    """Lines of the longest column of a sheet's index."""
    columns = index_columns(book, steps)
    lengths = (sum(_index_lines(book, one, len(columns)) for one in some) for some in columns)
    return max(lengths, default=0)


def _sheets_of(book: Book, pictures: tuple[Picture, ...]) -> dict[int, tuple[int, ...]]:
    shown = [joints_shown(picture) for picture in pictures]
    tied = [ties_shown(picture) for picture in pictures]
    drawn = [joints_drawn(picture) for picture in pictures]
    return {
        step.number: _covering(
            _looked_up(book.framework, step), tied if _ties_parts(book, step) else shown, drawn
        )
        for step in book.steps
        if step.kind in LOOKED_UP
    }


def _ties_parts(book: Book, step: Step) -> bool:
    """Whether a step ties parts to one another, by locks or by balloons between them."""
    between = step.kind is Kind.SINGLE and part_of_step(book.framework, step) is None
    return is_tying(step) or (between and bool(book.framework.parts))


def _looked_up(framework: Framework, step: Step) -> frozenset[str]:
    """The joints of a step that are looked up: of chains that are laid, all that they pass."""
    worked = {joint for turn in step.turns for joint in turn.joints}
    laid = [framework.link[link] for one in step.of_kind(Kind.LAY) for link in one.links]
    if step.kind is Kind.LAY:
        worked |= {joint for link in laid for joint in (link.start, link.finish)}
    return frozenset(worked)


def _covering(
    joints: Set[str], shown: Sequence[Set[str]], drawn: Sequence[Set[str]]
) -> tuple[int, ...]:
    """The numbers of few sheets that show all of some joints, each the one that shows most of those
    left (Chvatal 1979), and of those that show as many the one on which most of them have their
    place."""
    left, found = set(joints), []
    while left:
        most = max(
            range(len(shown)),
            key=lambda sheet: (len(left & shown[sheet]), len(left & drawn[sheet])),
        )
        if not left & shown[most]:
            break
        found.append(most)
        left -= shown[most]
    return tuple(sorted(found))


def brace_flags(book: Book, picture: Picture, step: Step) -> list[Box]:
    """Where a sheet shows the numbers of the braces that a step ties."""
    links = set(step.links) if step.kind is Kind.BRACE else set()
    boxes = label_boxes(picture)
    return [
        box
        for brace in book.framework.braces
        if links & set(brace.links)
        for box in boxes.get(str(brace.number), ())
    ]


def how_to_read(book: Book) -> str:
    """What the map shows of a piece, in words; said on its first sheet."""
    voice, framework = book.voice, book.framework
    if framework.laid and framework.mirror:
        return voice.say(
            "Small numbers are those of braces; where lines meet, knots are brought together under "
            "one lock."
        )
    if any(not part.braces for part in _built_alone(framework)):
        return sentences(
            voice.say(
                "Every disc is a joint, every line a balloon. Knots of the same name are brought "
                "together under one lock."
            ),
            voice.say("A balloon without a letter is called by its two joints.")
            if any(loose_chains(part) for part in _built_alone(framework))
            else "",
        )
    return voice.say("The piece unrolled flat: long chains along, braces across.")


def _built_alone(framework: Framework) -> list[Framework]:
    """The parts of an assembly, or the piece itself."""
    return [part.framework for part in framework.parts] or [framework]
