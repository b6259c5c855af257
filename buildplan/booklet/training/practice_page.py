"""The practice piece: what is learnt of work on the piece, on a small one first."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import ON_THE_PIECE
from buildplan.booklet.common.joint_moves import has_ends
from buildplan.booklet.common.needs import Practised, tags_of
from buildplan.booklet.common.step_links import page_alone
from buildplan.booklet.training.pages import first_build, in_fives, minutes_of
from buildplan.booklet.training.practice import Practice, practice
from buildplan.booklet.training.practice_pictures import comes_out, pictured
from buildplan.booklet.training.practice_step import place_of, step_on_piece
from buildplan.booklet.training.same_work import first_told_at, in_full
from buildplan.design.measures import gauged_words
from buildplan.document.blocks import Items, Words
from buildplan.document.layout import Columns, is_wide
from buildplan.document.printing import Section
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation import balloon_words
from buildplan.framework.model import Framework
from buildplan.instructions.model import StepWords
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.sequence.model import Kind, Step

PICTURE_SHARE = 0.6
LITTLE_EMPTY = 0.25  # more of a page is not left: the list is parted
OWN_NAMES = mark("Its letters and joint names are its own, not those of the piece.")
LINE_GAP, LINE_SHARES = 1.0, (0.82, 0.18)


def practice_of(book: Book) -> Practice | None:
    """The practice piece of a book, if it has one."""
    return practice(book.design, book.framework, book.steps, book.units, book.voice)


def practice_pages(book: Book, made: Practice | None) -> list[Section]:
    """The practice piece, which is built before the piece itself; nothing when there is none."""
    if made is None:
        return []
    title = book.voice.say("A first practice piece")
    return [Section(title, _practice(book, made), titled=True, runs_on=True)]


def taught_by(book: Book, made: Practice | None) -> frozenset[Kind]:
    """The kinds of work whose hand moves are shown with the practice piece; singles too, where free
    ends are tied into its joints as theirs are."""
    kinds = frozenset(kind for step in _on_it(made) for kind in step.kinds)
    if made is None:
        return kinds
    own = _book_of(book, made)
    ends = any(has_ends(own, step) for step in _on_it(made))
    return kinds | {Kind.SINGLE} if ends else kinds


def _book_of(book: Book, made: Practice) -> Book:
    return replace(book, framework=made.framework, shape=made.shape, steps=made.steps)


def learnt_before(book: Book, made: Practice | None, step: Step) -> Sequence[Step]:
    """What a trainee has learnt before a step: work on the practice piece, and the steps before
    it. What that piece takes beside it is learnt with the steps."""
    return [*_on_it(made), *book.steps[: step.number - 1]]


def _on_it(made: Practice | None) -> list[Step]:
    """The steps of work on the practice piece; none where there is no such piece."""
    return [] if made is None else [step for step in made.steps if step.kind in ON_THE_PIECE]


def _shown(made: Practice) -> list[Step]:
    """Its steps as far as work on the piece goes: how a piece is finished is learnt on the real
    one."""
    last = max(step.number for step in made.steps if step.kind in ON_THE_PIECE)
    return [step for step in made.steps if step.number <= last]


def _minutes(book: Book, shown: Sequence[Step]) -> float:
    """What its steps take a practised hand, in minutes."""
    return minutes_of(book, [operation for step in shown for operation in step.operations])


def practice_minutes(book: Book, made: Practice | None) -> int:
    """What the practice piece takes a beginner, in fives of minutes; 0 where there is none."""
    return in_fives(_minutes(book, _shown(made)) * first_build(book)) if made else 0


def practised(book: Book, made: Practice | None) -> Practised | None:
    """What the practice piece takes, to be bought and made ready with what the piece takes."""
    if made is None:
        return None
    return Practised(made.counts, len(tags_of(_shown(made))))


def _practice(book: Book, made: Practice) -> list[Flowable]:
    voice, framework = book.voice, made.framework
    own = _book_of(book, made)
    shown = _shown(made)
    words: list[Flowable] = [
        Words(voice.say("Build this first, of other balloons.")),
        *([] if framework.braces else [Words(voice.say(OWN_NAMES))]),
        _balloons(book, made),
        Words(
            voice.say(
                "Time: {beginner} for a beginner (estimate).",
                beginner=strong(duration(voice, practice_minutes(book, made))),
            )
        ),
    ]
    told = [(step, made.words[step.number - 1]) for step in shown]
    beside_it = [
        _line(book, framework, one, said) for one, said in told if one.kind not in ON_THE_PIECE
    ]
    on_it = [
        step_on_piece(book, own, made, one, said) for one, said in told if one.kind in ON_THE_PIECE
    ]
    return [
        *_abreast(book, [*words, *beside_it], [*pictured(own), *comes_out(own)]),
        *on_it,
    ]


def _abreast(book: Book, words: list[Flowable], pictures: list[Flowable]) -> list[Flowable]:
    """What is bought and made ready, and beside it how the piece lies and how it comes out."""
    if not is_wide(book.paper):
        return [*words, *pictures]
    shares = (PICTURE_SHARE, 1 - PICTURE_SHARE)
    return [Columns((words, pictures), shares, most_empty=LITTLE_EMPTY)]


def _line(book: Book, small: Framework, step: Step, said: StepWords) -> Flowable:
    """A step beside the practice piece (`small`) to tick, and the page of the step of the piece
    that has it in full."""
    full = in_full(book, small, step)
    told = strong(said.title)
    if step.kind is Kind.TAG:
        tagged = [joint for turn in step.turns for joint in turn.joints]
        told = book.voice.say("{name}: {words}", name=told, words=", ".join(tagged))
    title = Items([told], ticked=True, after=LINE_GAP)
    if full is None:
        return title
    return Columns([[title], [page_alone(book.voice, full)]], LINE_SHARES, after=0.0)


def practised_at(book: Book, made: Practice | None) -> Mapping[int, str]:
    """Where the moves of steps are shown with the practice piece, by the number of the step."""
    if made is None:
        return {}
    found: dict[int, str] = {}
    for step in _shown(made):
        told = first_told_at(book, made.steps[: step.number - 1], step)
        if step.kind in ON_THE_PIECE and told is not None:
            found[told.number] = place_of(step)
    return found


def _balloons(book: Book, made: Practice) -> Grid:
    voice = book.voice
    balloons = made.framework.balloons
    rows = [
        (
            strong(book.colour_letters.get(key, "")),
            plain(
                voice.say(
                    "{balloon}, {colour}",
                    balloon=balloon_words.sized(balloons[key], book.units),
                    colour=balloons[key].label,
                )
            ),
            voice.tell(gauged_words(balloons[key].gauge_m, book.units)),
            strong(voice.whole(count)),
        )
        for key, count in made.counts.items()
    ]
    head = ("", voice.say("Balloon"), voice.say("Size to"), voice.say("Count"))
    return Grid(head, rows, (8, 60, 22, 20), frozenset({3}), after=6)
