"""What is said of a repair: each act of it, on paper and on a screen alike."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.language.messages import Message, mark, message
from buildplan.sequence.repair import Act, Deed

BURST_CAUTION = mark(
    "Pick up every scrap at once: children and animals can choke on it. Wear safety glasses, "
    "and keep your face away."
)

# By what is done, of which end, with which end of the neighbour (see `act_key`).
ACTS: Mapping[str, str] = {
    "open": mark("Open the lock at {joint}: untwist its rounds, keep them."),
    "undo neck to neck": mark(
        "At {joint}, cut the burst neck off beside its knot with the neck of {link}: the knot stays"
        " and keeps {link} closed."
    ),
    "undo neck to tail": mark(
        "At {joint}, cut the burst neck off beside its knot with the tail of {link}."
    ),
    "undo tail to neck": mark(
        "At {joint}, cut the burst tail off beside its knot with the neck of {link}: the knot stays"
        " and keeps {link} closed."
    ),
    "undo tail to tail": mark(
        "At {joint}, cut the burst tail off beside its knot with the tail of {link}."
    ),
    "undo neck alone": mark("Cut the burst neck off at joint {joint}."),
    "undo tail alone": mark("Cut the burst tail off at joint {joint}."),
    "size": mark("Size a new one of the same kind, colour and gauge."),
    "close": mark("Close its neck with a knot of its own."),
    "tie neck to neck": mark("At {joint}, tie the new neck to the neck of {link}."),
    "tie neck to tail": mark("At {joint}, tie the new neck to the tail of {link}."),
    "tie tail to neck": mark("At {joint}, tie the new tail to the neck of {link}."),
    "tie tail to tail": mark("At {joint}, tie the new tail to the tail of {link}."),
    "tie neck alone": mark("Tie the new neck into joint {joint}."),
    "tie tail alone": mark("Tie the new tail into joint {joint}."),
    "lock": mark("Lock {joint}: twist its rounds past each other by two half turns."),
}
# Of a lock of which a round burst.
LOCK_ACTS: Mapping[Deed, str] = {
    Deed.OPEN: mark("Take the other round off joint {joint}; the knots stay tied."),
    Deed.SIZE: mark("Size two new rounds to the same gauge and tie them neck to neck."),
    Deed.LOCK: ACTS["lock"],
}


def act_key(act: Act) -> str:
    """The key of ACTS for an act: `tie neck to tail`, `undo tail alone`, `open`."""
    if act.deed not in (Deed.UNDO, Deed.TIE):
        return str(act.deed)
    other = f"to {act.end}" if act.end is not None else "alone"
    return f"{act.deed} {act.own_end} {other}"


def act_told(act: Act) -> Message:
    """What is said of an act of a link balloon's repair."""
    return message(ACTS[act_key(act)], joint=act.joint, link=act.link)


def lock_act_told(act: Act) -> Message:
    """What is said of an act of a lock's repair."""
    return message(LOCK_ACTS[act.deed], joint=act.joint)
