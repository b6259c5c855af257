"""How what has no braces is built: lying on its back, if it is flat, else as it stands."""

from __future__ import annotations

import numpy as np

from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

# A piece so many times as wide and as high as it is deep lies flat while it is built; a panel, of
# which neither side is so many times the other, at less. A low long wall stands. Ours.
FLAT, PANEL, UNLIKE = 2.5, 1.75, 2.5


def lies_built(own: Framework, shape: Shape) -> bool:
    """Whether what is built without braces is flat, as a wall, and is built lying on its back."""
    width, height, depth = np.ptp(np.array([shape.at[joint] for joint in own.joints]), axis=0)
    short, long = sorted((width, height))
    return bool(short > (PANEL if long < UNLIKE * short else FLAT) * depth)


def laid_in_figure(own: Framework) -> bool:
    """Whether the chains of a piece or part are laid down as they will lie in it, before anything
    holds them apart: braces, or of a bar between letters singles from its front to its back."""
    across = own.closed and bool(own.mirror) and not own.extras.issuperset(own.singles)
    return bool(own.braces) or across


def put_together_standing(framework: Framework, shape: Shape) -> bool:
    """Whether parts are tied to one another as they stand: one of them is built so. Letters and
    the bars between them are laid down, braced or not."""
    parts = (part.framework for part in framework.parts)
    return any(not laid_in_figure(own) and not lies_built(own, shape) for own in parts)
