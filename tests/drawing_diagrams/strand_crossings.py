"""Where necks and tails cross, read off the drawn strands."""

from __future__ import annotations

from buildplan.drawing.techniques.props import Strand, sampled


def crossings(one: Strand, other: Strand) -> list[tuple[float, int, int]]:
    """Where `one` crosses `other`: how far along `one`, +1 over or -1 under, and the sign of
    the crossing (right-handed +1), in order along `one`."""
    found = []
    a, b = sampled(one), sampled(other)
    for i in range(len(a) - 1):
        for j in range(len(b) - 1):
            if one is other and abs(i - j) < 4:
                continue
            (x0, y0, level), (x1, y1, _) = a[i], a[i + 1]
            (u0, v0, under), (u1, v1, _) = b[j], b[j + 1]
            dx, dy, du, dv = x1 - x0, y1 - y0, u1 - u0, v1 - v0
            turn = dx * dv - dy * du
            if abs(turn) < 1e-12:
                continue
            s = ((u0 - x0) * dv - (v0 - y0) * du) / turn
            t = ((u0 - x0) * dy - (v0 - y0) * dx) / turn
            if 0 <= s < 1 and 0 <= t < 1:
                assert level != under, "strands cross at one level"
                over = 1 if level > under else -1
                found.append((i + s, over, over * (1 if turn > 0 else -1)))
    return sorted(found)
