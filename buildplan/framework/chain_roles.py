"""What long chains are in a piece, and in which of its layers they lie."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from buildplan.language.messages import Message, message_in


class Layer(StrEnum):
    """The layers of a piece that has two alike, as seen from the front."""

    FRONT = "front"
    BACK = "back"


@dataclass(frozen=True)
class ChainRole:
    """What a long chain is: its name, and what it is called in each layer that it can lie in
    (None: the piece has no layers, or the chain lies between them)."""

    name: str
    words: Mapping[Layer | None, Message] = field(compare=False, repr=False)


OUTER = ChainRole(
    "outer",
    {
        None: message_in("place of a chain", "outer"),
        Layer.FRONT: message_in("place of a chain", "outer front"),
        Layer.BACK: message_in("place of a chain", "outer back"),
    },
)
INNER = ChainRole(
    "inner",
    {
        None: message_in("place of a chain", "inner"),
        Layer.FRONT: message_in("place of a chain", "inner front"),
        Layer.BACK: message_in("place of a chain", "inner back"),
    },
)
RING = ChainRole("ring", {None: message_in("place of a chain", "ring")})
ZIGZAG = ChainRole("zigzag", {None: message_in("place of a chain", "zigzag")})
OPEN_CHAIN = ChainRole("open chain", {None: message_in("place of a chain", "open chain")})
ROW = ChainRole(
    "row",
    {
        None: message_in("place of a chain", "row"),
        Layer.FRONT: message_in("place of a chain", "row front"),
        Layer.BACK: message_in("place of a chain", "row back"),
    },
)
UPRIGHT = ChainRole(
    "upright",
    {
        None: message_in("place of a chain", "upright"),
        Layer.FRONT: message_in("place of a chain", "upright front"),
        Layer.BACK: message_in("place of a chain", "upright back"),
    },
)
BETWEEN = ChainRole("between", {None: message_in("place of a chain", "between")})
