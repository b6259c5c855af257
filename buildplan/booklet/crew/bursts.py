"""The crew's page for a balloon that bursts: every way of replacing one that the piece has."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Items, Shown, Words, heading, together
from buildplan.document.layout import beside
from buildplan.document.text import SMALL, STRONG, plain, unbroken
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import Camera
from buildplan.drawing.closeup import Panel, close_up
from buildplan.drawing.marks import Picture
from buildplan.drawing.seat import standing_seat
from buildplan.instructions.repairs import BURST_CAUTION, act_told, lock_act_told
from buildplan.language.messages import Message
from buildplan.sequence.repair import Act, AlikeRepairs, lock_repair, repairs, ways_of

WIDTH, HEIGHT = 140.0, 92.0
CLOSE = 1.0
LONGEST_BESIDE = 150  # letters of a list that has room under the picture
PICTURE_SHARE = 0.26  # of the width: an act is then one line beside it, most of them


def bursts(book: Book) -> list[Flowable]:
    """How a burst balloon is replaced in the finished piece: each way once, on one balloon, with
    the others that go the same way; then a lock."""
    voice = book.voice
    found = repairs(book.framework, book.steps)
    first, *rest = ways_of(found)
    told = voice.say(
        "Each way is shown on one balloon, hatched in the picture: its locks to open, the knots to "
        "undo and to tie again, in order. At another of the same way the joints are its own two, "
        "and its neighbours those whose ends hang in the same knots."
    )
    every = "" if rest else voice.say("Every link balloon of the piece goes this way.")
    others = voice.say("All link balloons that are not named below go this way.")
    blocks: list[Flowable] = [
        together(
            Words(plain(voice.say(BURST_CAUTION)), STRONG),
            Words(told),
            *_shown(book, found, first, every or others),
        )
    ]
    for way in rest:
        links = ", ".join(unbroken(plain(link)) for link in way.links)
        which = voice.say("These go this way: {links}", links=links)
        blocks.append(together(*_shown(book, found, way, which)))
    if book.framework.locks:
        blocks.append(_lock(book))
    return blocks


def _shown(
    book: Book, found: Mapping[str, Sequence[Act]], way: AlikeRepairs, which: str
) -> tuple[Flowable, ...]:
    voice = book.voice
    link = best_seen(book, way)
    acts = found[link]
    name = voice.say_count(
        "Like {link}: {number} balloon", "Like {link}: {number} balloons", len(way.links), link=link
    )
    told = _numbered(book, [act_told(act) for act in acts])
    drawn: list[Flowable] = [Shown(burst_picture(book, link, acts), book.paper.picture_scale)]
    others = Words(which, SMALL)
    if len(which) <= LONGEST_BESIDE:
        return heading(name), *beside(book.paper, [*drawn, others], [told], PICTURE_SHARE)
    return heading(name), *beside(book.paper, drawn, [told], PICTURE_SHARE), others


def _lock(book: Book) -> Flowable:
    joint = book.framework.locks[0].joint
    told = _numbered(book, [lock_act_told(act) for act in lock_repair(joint)])
    return together(
        heading(book.voice.say("A round of a lock, here at {joint}", joint=joint)), told
    )


def _numbered(book: Book, told: Sequence[Message]) -> Items:
    lines = (f"{number}. {book.voice.tell(words)}" for number, words in enumerate(told, start=1))
    return Items(tuple(map(plain, lines)), ticked=True, gap=CLOSE)


def best_seen(book: Book, way: AlikeRepairs) -> str:
    """The balloon of a way that lies furthest to the front, of those the nearest to half the
    height of the piece."""
    at, half = book.shape.at, book.facts.height_m / 2

    def hidden(link: str) -> tuple[float, float]:
        ends = book.framework.link[link]
        middle = (at[ends.start] + at[ends.finish]) / 2
        return -round(float(middle[2]), 2), round(abs(float(middle[1]) - half), 2)

    return min(way.links, key=hidden)


def burst_picture(book: Book, link: str, acts: Sequence[Act]) -> Picture:
    """A burst balloon in the finished piece, hatched, with the locks that are opened and the
    neighbours whose knots it hangs in; what would stand before them is cut away."""
    framework = book.framework
    own = framework.link[link]
    neighbours = dict.fromkeys(act.link for act in acts if act.link)
    far = [
        joint
        for each in map(framework.link.__getitem__, neighbours)
        for joint in (each.start, each.finish)
    ]
    joints = tuple(dict.fromkeys((own.start, own.finish, *far)))
    solid = frozenset((link, *neighbours))
    opened = frozenset(map(framework.place, (own.start, own.finish))) & set(framework.lock_at)
    scene = Scene(
        framework,
        book.shape,
        new_links=solid,
        done_links=frozenset(framework.link) - solid,
        new_locks=opened,
        done_locks=frozenset(framework.lock_at) - opened,
        patterns=book.patterns,
    )
    panel = Panel(scene, _before(book, own.start, own.finish), joints, shared=frozenset({link}))
    alt = book.voice.say(
        "{link}, burst, in the finished piece, with the locks at its ends and its neighbours: "
        "{neighbours}.",
        link=link,
        neighbours=book.voice.listed(list(neighbours))
        if neighbours
        else book.voice.say_in("neighbours", "none"),
    )
    return close_up(panel, WIDTH, HEIGHT, title=link, alt=alt)


def _before(book: Book, *joints: str) -> Camera:
    """From where someone stands before the finished piece."""
    part = book.framework.built_with(joints[0])
    return standing_seat(book.shape, joints, part.joints)
