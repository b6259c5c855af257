"""What braces, singles, joints and ties are called at the head of a row, and so their locks.

Whatever the language, a row is its name, a colon, and the words that go with it.
"""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.speaking import say


def brace_name(number: int) -> str:
    """`Brace 3`."""
    return say("Brace {number}", number=number)


def single_name(link: str) -> str:
    """`Single A5-D5`."""
    return say("Single {link}", link=link)


def joint_name(joint: str) -> str:
    """`Joint v4`."""
    return say("Joint {joint}", joint=joint)


def tie_name(joints: Sequence[str]) -> str:
    """`Tie L.A1+T.A1`."""
    return say("Tie {joints}", joints="+".join(joints))


def locks_of_brace(number: int) -> str:
    """`Locks of brace 3`."""
    return say("Locks of brace {number}", number=number)


def locks_of_single(link: str) -> str:
    """`Locks of single A5-D5`."""
    return say("Locks of single {link}", link=link)


def locks_of_joint(joint: str) -> str:
    """`Locks of joint v4`."""
    return say("Locks of joint {joint}", joint=joint)


def locks_of_tie(joints: Sequence[str]) -> str:
    """`Locks of tie L.A1+T.A1`."""
    return say("Locks of tie {joints}", joints="+".join(joints))


def chain_name(letter: str) -> str:
    """`Chain A`."""
    return say("Chain {letter}", letter=letter)


def ring_name(letter: str) -> str:
    """`Ring A`."""
    return say("Ring {letter}", letter=letter)


def together() -> str:
    """Joints that are brought together."""
    return say("Together")


def locks_turned() -> str:
    """The locks that are set once the piece is turned over."""
    return say("Locks with the back up")
