"""The kinds of balloon: how many ends each is tied at, and what it is called.

A kind that is added here (or with `BALLOON_KINDS[name] = ...`) can be named in a file, and is
bought, sized, drawn and told like the others.
"""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.language.messages import Message, mark, message_count, message_in


@dataclass(frozen=True)
class BalloonWords:
    """What a kind of balloon is called: by itself, and as marked messages with its `{size}`, its
    `{colour}`, both, both apart, in a key to colours under a `{letter}`, sized
    anew (`{keys}`, `{gauge}`, `{bag}`, `{units}`), where `{key}` cannot serve for `{use}`, and in a
    list of what it takes; `counted` takes a number, and its `{colour}` and `{letter}`."""

    called: Message
    sized: str
    coloured: str
    coloured_sized: str
    coloured_and_sized: str
    in_a_key: str
    sized_anew: str
    not_for: str
    in_stock: str
    counted: Message


@dataclass(frozen=True)
class BalloonKind:
    """A kind of balloon: its name in a file, whether it is tied at both of its ends, so that
    it can be a strut of the framework, and the kind whose latex is known that it weighs like."""

    name: str
    is_strut: bool
    latex_like: str
    words: BalloonWords


LINK = BalloonKind(
    "link",
    True,
    "link",
    BalloonWords(
        called=message_in("kind of balloon", "link"),
        sized=mark("{size} link"),
        coloured=mark("{colour} link"),
        coloured_sized=mark("{colour} {size} link"),
        coloured_and_sized=mark("{colour}, {size} link"),
        in_a_key=mark("Colour {letter}: {colour}, a link balloon."),
        sized_anew=mark("{keys} sized to {gauge} {units} ({bag} {units} link)"),
        not_for=mark("{key} is a link balloon, and {use} is made of rounds"),
        in_stock=mark("{colour} {size} link, sized to {gauge} ({key})"),
        counted=message_count(
            "{number} {colour} link balloon ({letter})",
            "{number} {colour} link balloons ({letter})",
            0,
        ),
    ),
)
ROUND = BalloonKind(
    "round",
    False,
    "round",
    BalloonWords(
        called=message_in("kind of balloon", "round"),
        sized=mark("{size} round"),
        coloured=mark("{colour} round"),
        coloured_sized=mark("{colour} {size} round"),
        coloured_and_sized=mark("{colour}, {size} round"),
        in_a_key=mark("Colour {letter}: {colour}, a round balloon."),
        sized_anew=mark("{keys} sized to {gauge} {units} ({bag} {units} round)"),
        not_for=mark("{key} is a round, and {use} is made of link balloons"),
        in_stock=mark("{colour} {size} round, sized to {gauge} ({key})"),
        counted=message_count(
            "{number} {colour} round ({letter})", "{number} {colour} rounds ({letter})", 0
        ),
    ),
)
# what a file may call a balloon, by that name
BALLOON_KINDS: dict[str, BalloonKind] = {kind.name: kind for kind in (LINK, ROUND)}
