"""Telling how the piece is turned over, and what is locked then."""

from __future__ import annotations

from buildplan.instructions import rows
from buildplan.instructions.context import Context
from buildplan.instructions.locking import how_to_lock
from buildplan.instructions.model import TurnWords, Wording
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Kind, Step, Turn


def turn_over(context: Context, step: Step) -> Wording:
    """Turning the piece over."""
    voice = context.voice
    back_up = voice.say("The back is up, and no joint has come apart.")
    return Wording(
        title=voice.say("Turn the piece over"),
        text=sentences(
            voice.say(
                "It takes {people} people, you among them. All take hold round the edge, both hands"
                " round a joint, never by one balloon. Lift together on a count, turn the piece"
                " over and lay it down with its back up.",
                people=step.operations[0].people,
            ),
            *how_to_lock(context, step),
        ),
        check=sentences(back_up, _locked_so_far(context, step) if step.locks else ""),
    )


def _locked_so_far(context: Context, step: Step) -> str:
    locked, locks = context.progress(Kind.LOCK, step)
    return context.voice.say("{done}/{total} locks.", done=locked, total=locks)


def turned_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Locks with the back up: C3, C4`, where there are any."""
    if not step.locks:
        return TurnWords("", ())
    name = context.voice.say("Locks with the back up")
    return TurnWords(name, (rows.at_joints(context.voice, name, step.locks),))
