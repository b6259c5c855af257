"""What hands do in a replay, operation by operation, and what they cannot do.

It shares no code with the sequencer: operations come as plain data.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from buildplan.sequence.replay_state import (
    NECK,
    Floor,
    Json,
    end_words,
    ends_of,
    joint_and_ends,
    names_of,
    refuse_unless,
)


def do(floor: Floor, operation: Json) -> None:
    """Do one operation."""
    for thing in operation["needs"]:
        refuse_unless(thing in floor.made, f"{operation['id']} needs {thing}, not made yet")
    kind = operation["kind"]
    refuse_unless(kind in _ACTS, f"nobody knows how to {kind}")
    refuse_unless(operation["up"] in (None, floor.up), f"{operation['id']} is out of reach, below")
    _ACTS[kind](floor, operation)
    for thing in operation["makes"]:
        refuse_unless(thing not in floor.made, f"{thing} is made twice")
        floor.made.add(thing)


def _size(floor: Floor, operation: Json) -> None:
    key = operation["balloon"]
    refuse_unless(bool(key), f"{operation['id']} does not say which balloon")
    for link in operation["links"]:
        refuse_unless(link not in floor.sized, f"balloon {link} is sized twice")
        floor.sized[link] = key
    for joint in operation["locks"]:
        refuse_unless(joint not in floor.rounds, f"rounds for {joint} are sized twice")
        floor.rounds[joint] = key


def _pair(floor: Floor, operation: Json) -> None:
    for joint in operation["locks"]:
        refuse_unless(joint in floor.rounds, f"the rounds for {joint} were never sized")
        refuse_unless(joint not in floor.lock_pairs, f"the lock for {joint} is tied twice")
        floor.lock_pairs.add(joint)
    if not operation["links"]:
        return
    refuse_unless(len(operation["knots"]) == 1, "a pair has one knot")
    joint, ends = joint_and_ends(operation["knots"][0])
    refuse_unless(
        len(ends) == 2 and all(end == NECK for _, end in ends), "a pair is tied neck to neck"
    )
    refuse_unless({link for link, _ in ends} == set(operation["links"]), "a pair is two")
    for link, _ in ends:
        refuse_unless(link not in floor.closed_necks, f"the neck of {link} is closed already")
        floor.closed_necks.add(link)
    floor.tie(joint, ends)


def _tie_off(floor: Floor, operation: Json) -> None:
    for link in operation["links"]:
        refuse_unless(link in floor.sized, f"balloon {link} was never sized")
        refuse_unless(link not in floor.closed_necks, f"the neck of {link} is closed already")
        floor.closed_necks.add(link)


def _chain(floor: Floor, operation: Json) -> None:
    links, joints = operation["links"], operation["joints"]
    refuse_unless(len(joints) == len(links) + 1, "a chain has one joint more than balloons")
    for knot in operation["knots"]:
        joint, ends = joint_and_ends(knot)
        refuse_unless(len(ends) == 2, f"the knot at {joint} takes two ends")
        floor.tie(joint, ends)
    for link in links:
        floor.ready(link)
    floor.walk(links, joints)
    if operation["adds"]:
        refuse_unless(not floor.standing, "a long chain comes after the laying")
        floor.bring(links, "chain")


def _close_ring(floor: Floor, operation: Json) -> None:
    for knot in operation["knots"]:
        joint, ends = joint_and_ends(knot)
        for end in ends:
            refuse_unless(
                floor.joint_of.get(end) == joint, f"{end_words(end)} is no chain's end at {joint}"
            )
        refuse_unless(
            len(ends) == 2 and floor.connected(ends[0][0], ends[1][0]),
            f"the ends tied at {joint} are not of one chain",
        )
        floor.tie(joint, ends)


def _tag(floor: Floor, operation: Json) -> None:
    for joint in operation["joints"]:
        refuse_unless(bool(floor.ends_at.get(joint)), f"there is no joint {joint} to tag")
    floor.tagged.update(operation["joints"])


def _lay(floor: Floor, operation: Json) -> None:
    """Lay the chains that come to the joints named, with their front up."""
    if operation["links"]:
        links = set(operation["links"])
        for link in links:
            floor.ready(link)
            refuse_unless(
                all(end in floor.joint_of for end in ends_of(link)), f"{link} is of no chain"
            )
        floor.bring(operation["links"], "chain")
        laid = {floor.joint_of[end] for link in links for end in ends_of(link)}
        late = laid & floor.joined
        refuse_unless(not late, f"{names_of(late)} were joined before all chains had come")
    else:
        ends = {end for joint in operation["joints"] for end in floor.ends_at.get(joint, ())}
        links = floor.chained_to({link for link, _ in ends if link in floor.roles})
        laid = {floor.joint_of[end] for link in links for end in ends_of(link)} - floor.standing
        refuse_unless(bool(laid) or not floor.standing, "the chains are laid already")
    floor.standing |= laid
    floor.up = "front"
    for joint in operation["joints"]:
        refuse_unless(joint in floor.standing, f"there is no joint {joint} to lay")
        refuse_unless(joint in floor.tagged, f"nobody can find {joint}: it has no tag")
    for joint in laid:
        if len(floor.things_at(joint)) > 1:
            floor.apart.add(joint)


def _brace(floor: Floor, operation: Json) -> None:
    links, joints = operation["links"], operation["joints"]
    refuse_unless(not floor.loose, f"{names_of(floor.loose)} must be settled first")
    due = floor.gathered - floor.turned
    waiting = {joint for joint in due if floor.all_braces_came(joint)}
    refuse_unless(not waiting, f"{names_of(waiting)} must be locked before the next brace")
    for link in links:
        floor.ready(link)
    for knot in operation["knots"]:
        floor.tie_to_piece(knot)
    floor.bring(links, "brace")
    floor.hold(links, joints)
    floor.loose.update(joints)
    floor.braced.add(operation["id"])


def _settle(floor: Floor, operation: Json) -> None:
    for joint in operation["joints"]:
        refuse_unless(joint in floor.standing, f"there is no joint {joint} to settle")
        refuse_unless(len(floor.things_at(joint)) > 1, f"no brace has come to {joint}")
    floor.loose.difference_update(operation["joints"])


def _single(floor: Floor, operation: Json) -> None:
    refuse_unless(len(operation["links"]) == 1, "a single is one balloon")
    floor.ready(operation["links"][0])
    for knot in operation["knots"]:
        floor.tie_to_piece(knot)
    floor.bring(operation["links"], "single")
    floor.hold(operation["links"], operation["joints"])


def _join(floor: Floor, operation: Json) -> None:
    refuse_unless(not floor.gathered, f"{names_of(floor.gathered)} must be held first")
    if len(operation["joints"]) > 1:
        floor.tie_together(operation["joints"])
        return
    if operation["links"]:
        for link in operation["links"]:
            floor.ready(link)
        floor.bring(operation["links"], "chain")
        floor.hanging.update(end for link in operation["links"] for end in ends_of(link))
    for joint in operation["joints"]:
        tied = {end for knot in operation["knots"] for end in joint_and_ends(knot)[1]}
        waits = joint in floor.apart or tied & floor.hanging
        refuse_unless(bool(waits), f"no knots wait to be joined at {joint}")
        free = {end for end in floor.ends_at[joint] if end not in floor.knot_of}
        refuse_unless(tied - floor.hanging == free, f"not every free end at {joint} is tied in")
        absent = {link for link, _ in floor.ends_at[joint] if link not in floor.roles}
        refuse_unless(not absent, f"{names_of(absent)} should have come to {joint} before")
        for knot in operation["knots"]:
            floor.tie_to_piece(knot)
        floor.hanging -= tied
        floor.apart.discard(joint)
        floor.joined.add(joint)


def _turn_over(floor: Floor, operation: Json) -> None:
    refuse_unless(bool(floor.standing), "nothing is laid that could be turned over")
    refuse_unless(operation["people"] > 1, "nobody turns a piece over alone")
    floor.up = "back" if floor.up == "front" else "front"


def _lock(floor: Floor, operation: Json) -> None:
    for joint in operation["locks"]:
        refuse_unless(joint in floor.lock_pairs, f"no pair of rounds is ready for {joint}")
        refuse_unless(joint not in floor.locks, f"{joint} is locked twice")
        refuse_unless(joint in floor.standing, f"there is no joint {joint} to lock")
        refuse_unless(joint not in floor.apart, f"the knots at {joint} are still apart")
        refuse_unless(len(floor.things_at(joint)) > 1, f"{joint} has nothing to hold")
        refuse_unless(joint not in floor.loose, f"the brace at {joint} is not settled")
        refuse_unless(floor.all_braces_came(joint), f"a brace is still to come to {joint}")
        floor.locks[joint] = floor.rounds[joint]
        floor.gathered.discard(joint)


def _inspect(floor: Floor, operation: Json) -> None:
    hanging = {link for link, _ in floor.hanging}
    refuse_unless(not hanging, f"an end of {names_of(hanging)} hangs free")
    waiting = floor.gathered | floor.apart | floor.loose
    refuse_unless(not waiting, f"nothing holds the knots at {names_of(waiting)}")
    left = set(floor.sized) - set(floor.roles)
    refuse_unless(not left, f"balloons left over: {names_of(left)}")
    unused = set(floor.rounds) - set(floor.locks)
    refuse_unless(not unused, f"locks left over: {names_of(unused)}")
    refuse_unless(not floor.looked_over, "it was looked over before")
    floor.looked_over = True


def _stand_up(floor: Floor, operation: Json) -> None:
    refuse_unless(floor.looked_over, "it was not looked over")
    refuse_unless(operation["people"] > 1, "nobody stands a piece up alone")
    refuse_unless(not floor.stood_up, "it stands already")
    floor.stood_up = True


_ACTS: Mapping[str, Callable[[Floor, Json], None]] = {
    "size": _size,
    "pair": _pair,
    "tie off": _tie_off,
    "chain": _chain,
    "close ring": _close_ring,
    "tag": _tag,
    "lay": _lay,
    "brace": _brace,
    "settle": _settle,
    "single": _single,
    "join": _join,
    "turn over": _turn_over,
    "lock": _lock,
    "inspect": _inspect,
    "stand up": _stand_up,
}
