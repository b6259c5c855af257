"""Poses, doors and walk-through openings in words."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.design.measures import Units, size_words
from buildplan.evaluation.passing import Door, Ease, Passage, WayThrough
from buildplan.language.voice import Voice
from buildplan.shape.carrying import CarriedAs, CarriedPose, DoorOpening

# 2010 ADA Standards for Accessible Design, 404.2.3: clear openings of doorways are 32 in wide at
# least; 307.4: headroom is 80 in at least. Exact in inches.
WHEELCHAIR_WIDTH_M, HEADROOM_M = 32 * 0.0254, 80 * 0.0254


def pose_name(pose: CarriedPose, voice: Voice) -> str:
    """What a pose is called."""
    match pose.way:
        case CarriedAs.UPRIGHT:
            return voice.say("Upright")
        case CarriedAs.ON_ITS_SIDE:
            return voice.say("On its side")
        case CarriedAs.TILTED:
            return voice.say("Tilted")
        case _:
            return voice.say("Flat")


def pose_how(pose: CarriedPose, voice: Voice) -> str:
    """How a piece is turned for a pose."""
    match pose.way:
        case CarriedAs.UPRIGHT:
            return voice.say("as it stands, edge first")
        case CarriedAs.ON_ITS_SIDE:
            return voice.say("turned a quarter, edge first")
        case CarriedAs.TILTED:
            angle = round(pose.lean_deg)
            return voice.say("turned {angle} degrees in its own plane, edge first", angle=angle)
        case _:
            return voice.say("lying, carried level")


def door_words(door: Door, units: Units, voice: Voice) -> str:
    """A door with its clear size: `Lift, 0.80 m x 2.00 m`."""
    width, height = (size_words(one, units) for one in (door.width_m, door.height_m))
    name = door.name or voice.say("Door")
    if door.depth_m is None:
        return voice.say("{door}, {width} x {height}", door=name, width=width, height=height)
    deep = size_words(door.depth_m, units)
    return voice.say(
        "{door}, {width} x {height}, {depth} deep inside",
        door=name,
        width=width,
        height=height,
        depth=deep,
    )


def passage_words(one: Passage, units: Units, voice: Voice) -> str:
    """How something goes through a door: `Yes, as it stands, edge first (0.44 m wide, 1.98 m
    high).`"""
    pose = one.pose
    width, height = (size_words(side, units) for side in (pose.width_m, pose.height_m))
    how = pose_how(pose, voice)
    match one.fit:
        case Ease.EASILY:
            return voice.say(
                "Yes, {how} ({width} wide, {height} high).", how=how, width=width, height=height
            )
        case Ease.TIGHTLY:
            return voice.say(
                "Only just, {how} ({width} wide, {height} high): measure your own piece.",
                how=how,
                width=width,
                height=height,
            )
        case _:
            return voice.say(
                "No: {how}, it is {width} wide and {height} high.",
                how=how,
                width=width,
                height=height,
            )


def way_words(way: WayThrough, units: Units, voice: Voice) -> str:
    """How a piece goes through a door: as a whole, in its parts, or in its bags alone."""
    told = passage_words(way.piece, units, voice)
    if way.piece.fit is not Ease.NOT:
        return told
    if not way.in_parts:
        return f"{told} {voice.say('In its bags, and built inside.')}"
    names = voice.listed([one.carried for one in way.parts])
    tight = [one.carried for one in way.parts if one.fit is Ease.TIGHTLY]
    more = [voice.say("In its parts, {parts}, which are tied inside.", parts=names)]
    if tight:
        more.append(voice.say("Only just: {parts}.", parts=voice.listed(tight)))
    return " ".join([told, *more])


def opening_words(opening: DoorOpening, units: Units, voice: Voice) -> str:
    """What goes through between the legs of a standing piece."""
    width, height, highest = (
        voice.tell(size_words(side, units))
        for side in (opening.width_m, opening.height_m, opening.highest_m)
    )
    if highest == height:
        return voice.say(
            "{width} wide and {height} high (clear, estimate)", width=width, height=height
        )
    return voice.say(
        "{width} wide to a height of {height}, and {highest} high where it is highest (clear,"
        " estimate)",
        width=width,
        height=height,
        highest=highest,
    )


def opening_caution(opening: DoorOpening, units: Units, voice: Voice) -> str:
    """What is to be known of an opening that is narrow, low, or both; empty for another."""
    least = {
        "width": size_words(WHEELCHAIR_WIDTH_M, units),
        "height": size_words(HEADROOM_M, units),
    }
    told = []
    if opening.width_m < WHEELCHAIR_WIDTH_M:
        narrow = voice.say(
            "Too narrow for a wheelchair (doorways: {width} clear at least, 2010 ADA Standards "
            "404.2.3): another way has to stay open. Local codes come first.",
            **least,
        )
        told.append(narrow)
    if opening.height_m < HEADROOM_M:
        low = voice.say(
            "Lower than {height} of headroom at its sides (2010 ADA Standards 307.4): keep it off "
            "ways that have to stay open. Local codes come first.",
            **least,
        )
        told.append(low)
    return " ".join(told)


def way_lines(ways: Sequence[WayThrough], units: Units, voice: Voice) -> list[str]:
    """Each door with how the piece goes through, a line each."""
    return [
        voice.say(
            "{door}: {told}",
            door=door_words(way.piece.door, units, voice),
            told=way_words(way, units, voice),
        )
        for way in ways
    ]
