"""What `check --joints` says: the joints of each part by where they are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from buildplan.evaluation.joint_places import PartJoints
from buildplan.language.messages import Message, message_in
from buildplan.language.voice import Voice

SIDE_WIDTH = 12
OF_SIDES: Mapping[str, Message] = {
    "lowest": message_in("joints of a part", "lowest"),
    "highest": message_in("joints of a part", "highest"),
    "left": message_in("joints of a part", "left"),
    "right": message_in("joints of a part", "right"),
    "front": message_in("joints of a part", "front"),
    "back": message_in("joints of a part", "back"),
}


def joint_lines(parts: tuple[PartJoints, ...], voice: Voice) -> Iterator[str]:
    """A heading for each part, and a line for each of its sides."""
    for part in parts:
        joints = part.framework.joints
        yield voice.say(
            "{part}: {count} joints, {first} to {last}",
            part=part.name,
            count=len(joints),
            first=joints[0],
            last=joints[-1],
        )
        for side, named in part.sides.items():
            yield f"  {voice.tell(OF_SIDES[side]):<{SIDE_WIDTH}}{', '.join(named)}"
