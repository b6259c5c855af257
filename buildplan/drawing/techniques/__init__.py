"""How hands do each kind of work: one picture for each move, in the piece's own colours."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.joints import (
    brace_chain,
    settle_joint,
    tie_single,
    twist_lock,
    wrap_brace,
)
from buildplan.drawing.techniques.knots import chain_pairs, tie_pair
from buildplan.drawing.techniques.rings import close_ring, lay_chains
from buildplan.drawing.techniques.work import size_balloons, stand_up
from buildplan.framework.model import Framework
from buildplan.sequence.model import Kind

Technique = Callable[[Framework], Picture]

TECHNIQUES: Mapping[Kind, tuple[Technique, ...]] = MappingProxyType(
    {
        Kind.SIZE: (size_balloons,),
        Kind.PAIR: (tie_pair,),
        Kind.CHAIN: (chain_pairs,),
        Kind.CLOSE_RING: (close_ring,),
        Kind.LAY: (lay_chains,),
        Kind.BRACE: (brace_chain, wrap_brace, settle_joint),
        Kind.SINGLE: (tie_single,),
        Kind.LOCK: (twist_lock,),
        Kind.STAND_UP: (stand_up,),
    }
)

__all__ = ["TECHNIQUES", "Technique"]
