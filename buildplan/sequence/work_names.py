"""What operations and the things that they make are called.

A name only tells one from another, and reads well in `steps --json`. It is made here and nowhere
else, and is never taken apart: whose chain or which brace an operation is about, it says itself
(`Operation.chain`, `Operation.brace`).
"""

from __future__ import annotations

from typing import NewType

Name = NewType("Name", str)

INSPECT, INSPECTED = Name("inspect"), Name("inspected")
STAND_UP, STANDING = Name("stand up"), Name("standing")


def size_link(link: str) -> Name:
    """The sizing of a link balloon."""
    return Name(f"size link {link}")


def sized(link: str) -> Name:
    """A link balloon that is sized."""
    return Name(f"sized {link}")


def size_rounds(joint: str) -> Name:
    """The sizing of the rounds of a lock."""
    return Name(f"size rounds {joint}")


def rounds(joint: str) -> Name:
    """The rounds of a lock, sized."""
    return Name(f"rounds {joint}")


def pair_rounds(joint: str) -> Name:
    """The tying of the rounds of a lock."""
    return Name(f"pair rounds {joint}")


def twin_rounds(joint: str) -> Name:
    """The rounds of a lock, tied to each other."""
    return Name(f"twin rounds {joint}")


def tie_off(link: str) -> Name:
    """The closing of a neck that has no partner."""
    return Name(f"tie off {link}")


def tied_off(link: str) -> Name:
    """A link balloon whose neck is closed by itself."""
    return Name(f"tied off {link}")


def long_chain(letter: str) -> Name:
    """A long chain, and the tying of it."""
    return Name(f"chain {letter}")


def brace(number: int) -> Name:
    """A brace, and the tying of it."""
    return Name(f"brace {number}")


def brace_part(number: int, place: int) -> Name:
    """One of the chains, from 1, that a brace brings."""
    return Name(f"brace {number} part {place}")


def pair(place: int, chain: Name) -> Name:
    """The pair at a place, from 1, of a chain; the chain's name keeps it apart from others
    whatever joints are called."""
    return Name(f"pair {place} of {chain}")


def short_chain(chain: Name) -> Name:
    """A chain of a brace, tied beforehand."""
    return Name(f"chain for {chain}")


def close_ring(letter: str) -> Name:
    """The closing of a ring."""
    return Name(f"close {letter}")


def ring(letter: str) -> Name:
    """A long chain that is closed."""
    return Name(f"ring {letter}")


def tag(letter: str) -> Name:
    """The tagging of a long chain."""
    return Name(f"tag {letter}")


def tags(letter: str) -> Name:
    """The tags of a long chain."""
    return Name(f"tags {letter}")


def lay(part: str = "") -> Name:
    """The laying of the chains of a part, or of the whole piece."""
    return Name(f"lay {part}".rstrip())


def laid(part: str = "") -> Name:
    """The chains of a part, or of the whole piece, laid."""
    return Name(f"laid {part}".rstrip())


def lay_course(number: int) -> Name:
    """The laying of the chains that come in for a course."""
    return Name(f"lay course {number}")


def laid_course(number: int) -> Name:
    """The chains that come in for a course, laid."""
    return Name(f"laid course {number}")


def settle(number: int) -> Name:
    """The settling of a brace."""
    return Name(f"settle {brace(number)}")


def settled(number: int) -> Name:
    """A brace whose knots lie on those of the chains."""
    return Name(f"settled {brace(number)}")


def single(link: str) -> Name:
    """A single, and the tying of it."""
    return Name(f"single {link}")


def join(joint: str) -> Name:
    """The knots of a joint brought together, and the bringing."""
    return Name(f"join {joint}")


def tie(place: str) -> Name:
    """Joints of parts brought together, and the bringing."""
    return Name(f"tie {place}")


def lock(joint: str) -> Name:
    """A lock, and the setting of it."""
    return Name(f"lock {joint}")


def turn_over(part: str = "") -> Name:
    """The turning over of a part, or of the whole piece."""
    return Name(f"turn over {part}".rstrip())


def turned_over(part: str = "") -> Name:
    """A part, or the whole piece, with its back up."""
    return Name(f"turned over {part}".rstrip())


def in_piece(piece: str, name: Name) -> Name:
    """A name where several pieces are built at once."""
    return Name(f"{piece}: {name}")
