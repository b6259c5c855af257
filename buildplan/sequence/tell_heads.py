"""What braces, singles, joints and ties are called, and their locks."""

from __future__ import annotations

from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.piece import Piece
from buildplan.sequence.words import heads as words


def head_name(piece: Piece, head: Operation) -> str:
    """How a head is called: `Brace 3`, `Single A5-D5`, `Joint v4`, `Tie L.A1+T.A1`."""
    if head.kind is Kind.BRACE:
        return words.brace_name(piece.brace[head.id].number)
    if head.kind is Kind.SINGLE:
        return words.single_name(head.links[0])
    if len(head.joints) > 1:
        return words.tie_name(head.joints)
    return words.joint_name(head.joints[0])


def locks_name(piece: Piece, head: Operation) -> str:
    """How the locks of a head are called: `Locks of brace 3`."""
    if head.kind is Kind.BRACE:
        return words.locks_of_brace(piece.brace[head.id].number)
    if head.kind is Kind.SINGLE:
        return words.locks_of_single(head.links[0])
    if len(head.joints) > 1:
        return words.locks_of_tie(head.joints)
    return words.locks_of_joint(head.joints[0])
