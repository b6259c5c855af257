"""The crew's page for a balloon that bursts: every way of replacing one that the piece has."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Items, Shown, Words, heading, together
from buildplan.document.layout import Columns, in_pairs
from buildplan.document.text import SMALL, STRONG, plain, unbroken
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import Camera
from buildplan.drawing.closeup import close_up
from buildplan.drawing.marks import Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.seat import standing_seat
from buildplan.instructions.repairs import ACTS, BURST_CAUTION, act_told
from buildplan.language.messages import Message
from buildplan.language.phrases import sentences
from buildplan.sequence.repair import Act, AlikeRepairs, Deed, repairs, ways_of

WIDTH, HEIGHT = 122.0, 66.0
CLOSE = 1.0
LONGEST_BESIDE = 150  # letters of a list that has room beside the picture
ALWAYS = frozenset({Deed.OPEN, Deed.UNDO, Deed.SIZE, Deed.LOCK})  # told once for all ways
PICTURE_SHARE, PICTURE_GAP = 0.5, 8.0  # of the width of a way


def bursts(book: Book) -> list[Flowable]:
    """How a burst balloon is replaced in the finished piece: what is done in every way; each way
    once, on one balloon, with the others that go the same way; then a lock."""
    voice = book.voice
    found = repairs(book.framework, book.steps)
    first, *rest = ways_of(found)
    told = voice.say(
        "Each is shown on one balloon, hatched, as the piece stands; others have their own joints."
    )
    every = "" if rest else voice.say("Every link balloon of the piece goes this way.")
    others = voice.say("All link balloons that are not named below go this way.")
    shown = [_shown(book, found, first, every or others)]
    for way in rest:
        links = ", ".join(unbroken(plain(link)) for link in way.links)
        shown.append(_shown(book, found, way, voice.say("These go this way: {links}", links=links)))
    rows = in_pairs(book.paper, shown)
    intro = together(Words(plain(voice.say(BURST_CAUTION)), STRONG), Words(told), *_always(book))
    return [intro, *rows]


def _always(book: Book) -> list[Flowable]:
    """What comes first and last whatever the way; a piece without locks has no locks to open."""
    voice = book.voice
    told = [
        voice.say(
            "Undo no knot: with blunt scissors, their points away from other balloons, cut the "
            "burst one off a finger's width from its knots. What is left of it keeps its "
            "neighbour closed. A neighbour that loses air is replaced too."
        ),
        voice.say(ACTS["size"]),
    ]
    if book.framework.locks:
        first = voice.say(
            "First open the locks at its two joints: untwist their rounds, keep them."
        )
        last = voice.say(
            "When it is tied in, lock both: twist the rounds past each other by two half turns."
        )
        told = [
            sentences(first, told[0]),
            sentences(told[1], last),
            voice.say(
                "Where no hand gets inside any more lay the knot of the lock on the joint from"
                " outside, lead one round in through a gap and out through the gap opposite, and"
                " twist the two past each other there."
            ),
            voice.say(
                "A round of a lock burst: take the other one off, the knots stay tied; twist a new"
                " lock on."
            ),
        ]
    return [Items(tuple(map(plain, told)), gap=2, after=4)]


def _shown(
    book: Book, found: Mapping[str, Sequence[Act]], way: AlikeRepairs, which: str
) -> list[Flowable]:
    voice = book.voice
    link = best_seen(book, way)
    acts = found[link]
    name = voice.say_count(
        "Like {link}: {number} balloon", "Like {link}: {number} balloons", len(way.links), link=link
    )
    told = _numbered(book, [act_told(act) for act in acts if act.deed not in ALWAYS])
    drawn = Shown(burst_picture(book, link, acts), book.paper.picture_scale)
    others = Words(which, SMALL)
    if len(which) <= LONGEST_BESIDE:
        shares = (PICTURE_SHARE, 1 - PICTURE_SHARE)
        row = Columns([[drawn], [others]], shares, gap=PICTURE_GAP, after=4)
        return [heading(name), row, told]
    return [heading(name), drawn, told, others]


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
