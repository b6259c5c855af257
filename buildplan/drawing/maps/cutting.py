"""Plans cut into stretches that fit on a sheet."""

from __future__ import annotations

import math
from itertools import pairwise


def cut_evenly(steps: int, most: int) -> list[tuple[int, int]]:
    """So many steps cut into stretches of at most `most`, as even as may be: first and last of
    each, which is the first of the next."""
    parts = math.ceil(steps / most)
    ends = [round(steps * i / parts) for i in range(parts + 1)]
    return list(pairwise(ends))
