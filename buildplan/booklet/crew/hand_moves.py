"""Crew pages that say how it is tied: the words of the work, and each hand move that a piece takes
on site, once, with its picture."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.front import (
    BRACE,
    JOINT,
    LOCK,
    ON_KNOT,
    PART,
    SINGLE,
    ZIGZAG_WORD,
    words_used,
)
from buildplan.booklet.common.joint_moves import most_met
from buildplan.booklet.common.step_moves import act_moves
from buildplan.document.blocks import Shown, Words, heading, together
from buildplan.document.layout import Columns, is_wide
from buildplan.document.text import plain, strong
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.braces import tie_end
from buildplan.drawing.techniques.closing_tie import goes_round
from buildplan.instructions.coming import is_first
from buildplan.instructions.leading import lead_words, leads_of
from buildplan.instructions.locking import getting_behind, how_to_lock, lock_move
from buildplan.instructions.setting_up import is_tying
from buildplan.language.messages import mark
from buildplan.language.phrases import clauses, sentences
from buildplan.sequence.model import Kind, Step

# The words that stand in no picture's name.
TOLD = (JOINT, ON_KNOT, ZIGZAG_WORD, PART)
SHARES = (
    mark("shares"),
    mark("a balloon of the brace before is a side of this one too"),
)
ABREAST, GAP = 2, 14.0


@dataclass(frozen=True)
class _Move:
    """A move of the hands: its name, its pictures, and what is said of it; words as markup."""

    name: str
    pictures: tuple[Picture, ...]
    said: str


def hand_moves(book: Book) -> list[Flowable]:
    """Every hand move that the piece takes on site."""
    found = [*_moves(book)]
    rows = _in_rows(found, ABREAST if is_wide(book.paper) else 1)
    return [block for row in rows for block in _row(book, row)]


def words_told(book: Book) -> list[Flowable]:
    """The words of the work and what they mean, where no picture's name tells it."""
    return [heading(book.voice.say("How it is tied")), Words(_words(book))]


def _words(book: Book) -> str:
    used = words_used(book)
    told = [word for word in TOLD if word in used]
    if any(brace.shared for brace in book.framework.braces):
        told.append(SHARES)
    return clauses(book.voice, [_meaning(book, word) for word in told])


def _meaning(book: Book, word: tuple[str, str]) -> str:
    """A word of the work and what it means, as markup."""
    voice = book.voice
    name, meaning = strong(voice.say(word[0])), plain(voice.say(word[1]))
    return voice.say("{name}: {words}", name=name, words=meaning)


def _in_rows(moves: Sequence[_Move], across: int) -> Iterator[Sequence[_Move]]:
    """Moves as they stand beside one another: one of several pictures by itself, the others two by
    two in their order."""
    waiting: list[_Move] = []
    for move in moves:
        if len(move.pictures) > 1:
            yield [move]
            continue
        waiting.append(move)
        if len(waiting) == across:
            yield waiting
            waiting = []
    if waiting:
        yield waiting


def _row(book: Book, row: Sequence[_Move]) -> list[Flowable]:
    enlarged = book.paper.picture_scale
    across = ABREAST if is_wide(book.paper) else 1
    if len(row) == 1 and len(row[0].pictures) >= across > 1:
        move = row[0]
        drawn = [[Shown(picture, enlarged, after=2.0)] for picture in move.pictures]
        return [together(_name(move), Columns(drawn, gap=GAP, after=0.0), _said(move))]
    cells = [
        [_name(move), *(Shown(one, enlarged, after=2.0) for one in move.pictures), _said(move)]
        for move in row
    ]
    return [Columns([*cells, *[()] * (across - len(cells))], gap=GAP, after=4.0)]


def _name(move: _Move) -> Words:
    return Words(move.name, after=2.0)


def _said(move: _Move) -> Words:
    return Words(move.said, after=6.0)


def _moves(book: Book) -> Iterator[_Move]:
    """The moves in the order in which they first come up, none twice."""
    ends_shown = False
    for step in book.steps:
        drawn = act_moves(book, step)
        said = _said_by_kind(book, step)
        if is_tying(step):
            yield from _tie(book, drawn, said)
            continue
        yield from _round(book, step, drawn, said)
        yield from _brace(book, step, drawn)
        if not ends_shown and (end := _end(book, step, drawn)) is not None:
            ends_shown = True
            yield end
        yield from _lock(book, step, drawn, said)


def _said_by_kind(book: Book, step: Step) -> Mapping[Kind, str]:
    """What a step says of each kind of work in it."""
    found: dict[Kind, list[str]] = {}
    for act in book.told(step).acts:
        if act.kind is not None:
            found.setdefault(act.kind, []).append(act.said)
    return {kind: sentences(*told) for kind, told in found.items()}


def _round(
    book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]], said: Mapping[Kind, str]
) -> Iterator[_Move]:
    """How the chains of a course lie, and how a crown comes up, where that is new."""
    voice = book.voice
    if step.kind is Kind.JOIN and Kind.STAND_UP in drawn:
        pictures = (*drawn.get(Kind.LAY, ()), *drawn[Kind.STAND_UP])
        told = sentences(said.get(Kind.LAY, ""), said.get(Kind.STAND_UP, ""))
        first = is_first(book.context, step)
        name = voice.say("The first ring and its crown") if first else voice.say("The next ring")
        yield _Move(strong(name), pictures, plain(told))
    elif step.kind is Kind.JOIN and drawn.get(Kind.LAY) and Kind.LAY in said:
        yield _Move(strong(voice.say("The next ring")), drawn[Kind.LAY][:1], plain(said[Kind.LAY]))


def _brace(book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]]) -> Iterator[_Move]:
    """How a brace that goes round is begun and closed, told as where it first comes up."""
    if Kind.BRACE not in drawn:
        return
    framework, acts = book.framework, book.told(step).acts
    if not goes_round(framework.brace[step.of_kind(Kind.BRACE)[0].brace]):
        return
    told = [act.said for act in acts if act.kind is Kind.BRACE]
    if acts and acts[0].kind is None:  # where to kneel
        told.insert(0, acts[0].said)
    yield _Move(_meaning(book, BRACE), drawn[Kind.BRACE][1:3], plain(sentences(*told)))


def _end(book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]]) -> _Move | None:
    """How a free end is tied in: of a brace that ends elsewhere, of a single, of a chain."""
    voice = book.voice
    tied = tie_end(book.framework, voice)
    if not any(tied in drawn.get(kind, ()) for kind in (Kind.BRACE, Kind.SINGLE, Kind.JOIN)):
        return None
    leads = leads_of(book.context, book.framework.braces)
    ways = [lead_words(voice, lead) for lead in leads if not lead.closed]
    told = [f"{strong(voice.say('Open brace'))}: {plain(way)}" for way in ways]
    if book.framework.singles:
        across = voice.say(
            "Tie its tail into the first joint of its row and its closed neck into the second,"
            " straight across."
        )
        told.append(f"{_meaning(book, SINGLE)}. {plain(across)}")
    name = strong(voice.say("A free end, tail or closed neck"))
    return _Move(name, (tied,), " ".join(told) or plain(voice.say("Tie free ends into the joint.")))


def _lock(
    book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]], said: Mapping[Kind, str]
) -> Iterator[_Move]:
    """How a joint is locked; and where more balloons meet than at those before."""
    if not drawn.get(Kind.LOCK):
        return
    voice = book.voice
    if book.context.teacher(lock_move(book.context, step), step) is None:
        in_tables = voice.say("Lock each before you go on to the next.")
        laid = (one for one in how_to_lock(book.context, step) if one != in_tables)
        told = sentences(*laid, *getting_behind(book.context, step))
        yield _Move(_meaning(book, LOCK), drawn[Kind.LOCK][:1], plain(told))
    else:
        name = voice.say_count(
            "A lock where {number} balloon meets",
            "A lock where {number} balloons meet",
            most_met(book, step),
        )
        told = voice.say("The same, through the gaps that the picture shows.")
        yield _Move(strong(name), drawn[Kind.LOCK][:1], plain(told))


def _tie(
    book: Book, drawn: Mapping[Kind, tuple[Picture, ...]], said: Mapping[Kind, str]
) -> Iterator[_Move]:
    """How joints of two parts are tied, where that is new."""
    if drawn.get(Kind.LOCK) and Kind.LOCK in said:
        yield _Move(
            strong(book.voice.say("A tie of two parts")), drawn[Kind.LOCK][-1:], said[Kind.LOCK]
        )
