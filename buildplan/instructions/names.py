"""What chains, braces, singles, joints and ties are called at the head of a row."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.piece import PieceIndex


def head_name(voice: Voice, piece: PieceIndex, head: Operation) -> str:
    """How a head is called: `Brace 3`, `Single A5-D5`, `Joint v4`, `Tie L.A1+T.A1`."""
    if head.kind is Kind.BRACE:
        return brace_name(voice, head.brace)
    if head.kind is Kind.SINGLE:
        return single_name(voice, head.links[0])
    if len(head.joints) > 1:
        return tie_name(voice, head.joints)
    return joint_name(voice, head.joints[0])


def brace_name(voice: Voice, number: int) -> str:
    """`Brace 3`."""
    return voice.say("Brace {number}", number=number)


def single_row(voice: Voice) -> str:
    """What the row of a single is called where its joints stand beside it."""
    return voice.say("Single")


def single_name(voice: Voice, link: str) -> str:
    """`Single A5-D5`."""
    return voice.say("Single {link}", link=link)


def joint_name(voice: Voice, joint: str) -> str:
    """`Joint v4`."""
    return voice.say("Joint {joint}", joint=joint)


def tie_name(voice: Voice, joints: Sequence[str]) -> str:
    """`Tie L.A1+T.A1`."""
    return voice.say("Tie {joints}", joints="+".join(joints))


def chain_name(voice: Voice, letter: str) -> str:
    """`Chain A`."""
    return voice.say("Chain {letter}", letter=letter)


def ring_name(voice: Voice, letter: str) -> str:
    """`Ring A`."""
    return voice.say("Ring {letter}", letter=letter)
