"""Mechanisms and self stresses against published statements and counts.

Sources: Maxwell 1864 and Calladine 1978 for the count m - s = 3 j - 6 - b (from memory; the method
seen in Calladine and Pellegrino 1991); Cauchy and Dehn for convex triangulated polyhedra (Gallet et
al., arXiv 2004.01236; Dehn from memory); the double banana, Clement et al., arXiv 1308.3281;
bipartite frameworks, Whiteley, Structural Topology 3 (1979), after Bolker and Roth; the twisted
prism, Schoenhardt 1928 (from memory). Rows marked `calculated` were worked out apart with numpy.
"""

from __future__ import annotations

from itertools import combinations, product

import numpy as np
import pytest

from buildplan.shape.rigidity import rank_sparse, rigid_motions, rigidity, rigidity_matrix

Bars = list[tuple[int, int]]


def nearest(points: np.ndarray) -> tuple[np.ndarray, Bars]:
    """All pairs at the least distance: the edges of a uniform polyhedron."""
    pairs = list(combinations(range(len(points)), 2))
    apart = np.array([np.linalg.norm(points[i] - points[j]) for i, j in pairs])
    return points, [
        pair for pair, d in zip(pairs, apart, strict=True) if d < apart.min() * (1 + 1e-9)
    ]


def signs(*size: float) -> list[tuple[float, ...]]:
    return list(product(*[(-v, v) if v else (0.0,) for v in size]))


def cyclic(points: list[tuple[float, ...]]) -> np.ndarray:
    turned = [(p[k % 3], p[(k + 1) % 3], p[(k + 2) % 3]) for p in points for k in range(3)]
    return np.array(sorted(set(turned)), float)


PHI = (1 + 5**0.5) / 2
CUBE, CUBE_BARS = nearest(np.array(signs(1, 1, 1)))
TETRA = nearest(np.array([(1, 1, 1), (1, -1, -1), (-1, 1, -1), (-1, -1, 1)], float))
OCTA = nearest(cyclic(signs(1, 0, 0)))
ICOSA = nearest(cyclic(signs(0, 1, PHI)))
DODECA = nearest(np.vstack([signs(1, 1, 1), cyclic(signs(0, 1 / PHI, PHI))]))
CUBOCTA = nearest(np.vstack([cyclic(signs(1, 1, 0))]))


def truncated_tetrahedron() -> tuple[np.ndarray, Bars]:
    points = {p for base in ((3, 1, 1), (1, 3, 1), (1, 1, 3)) for p in signs(*base)}
    return nearest(np.array(sorted(p for p in points if np.prod(p) > 0), float))


def ring(n: int, z: float = 0.0, turn: float = 0.0) -> np.ndarray:
    angle = 2 * np.pi * np.arange(n) / n + turn
    return np.column_stack([np.cos(angle), np.sin(angle), np.full(n, z)])


def round_(n: int, base: int = 0) -> Bars:
    return [(base + k, base + (k + 1) % n) for k in range(n)]


def bipyramid(n: int) -> tuple[np.ndarray, Bars]:
    points = np.vstack([ring(n), [(0, 0, 1), (0, 0, -1)]])
    return points, round_(n) + [(k, n + top) for k in range(n) for top in (0, 1)]


def prism(n: int) -> tuple[np.ndarray, Bars]:
    points = np.vstack([ring(n), ring(n, 1)])
    return points, round_(n) + round_(n, n) + [(k, n + k) for k in range(n)]


def twisted(n: int, turn: float) -> tuple[np.ndarray, Bars]:
    """Two rings, each lower joint tied to the upper ones that number k and k + 1."""
    points = np.vstack([ring(n), ring(n, 1, turn)])
    uprights = [(k, n + (k + step) % n) for k in range(n) for step in (0, 1)]
    return points, round_(n) + round_(n, n) + uprights


def antiprism(n: int) -> tuple[np.ndarray, Bars]:
    return twisted(n, -np.pi / n)


def banana() -> tuple[np.ndarray, Bars]:
    points = np.vstack([[(0, 0, -2), (0, 0, 2)], ring(3)])
    return points, round_(3, 2) + [(end, 2 + k) for end in (0, 1) for k in range(3)]


def double_banana(hinge: bool) -> tuple[np.ndarray, Bars]:
    points = np.vstack(
        [[(0, 0, -2), (0, 0, 2)], 0.5 * ring(3) + [1, 0, 0], 0.5 * ring(3, turn=0.3) - [1, 0.2, 0]]
    )
    bars = round_(3, 2) + round_(3, 5) + [(end, 2 + k) for end in (0, 1) for k in range(6)]
    return points, bars + ([(0, 1)] if hinge else [])


def bipartite(m: int, n: int, on_sphere: bool) -> tuple[np.ndarray, Bars]:
    points = np.random.default_rng(7).standard_normal((m + n, 3))
    if on_sphere:
        points /= np.linalg.norm(points, axis=1, keepdims=True)
    return points, [(i, m + j) for i in range(m) for j in range(n)]


def face_diagonals(count: int) -> Bars:
    even = [i for i in range(8) if np.prod(CUBE[i]) > 0]
    return list(combinations(even, 2))[:count]


SPACE_DIAGONALS = [(i, 7 - i) for i in range(4)]

# framework, rank, mechanisms, self stresses
ROWS: list[tuple[str, tuple[np.ndarray, Bars], int, int, int]] = [
    ("tetrahedron", TETRA, 6, 0, 0),
    ("octahedron, Cauchy and Dehn", OCTA, 12, 0, 0),
    ("icosahedron, Cauchy and Dehn", ICOSA, 30, 0, 0),
    *((f"bipyramid {n}, Cauchy and Dehn", bipyramid(n), 3 * n, 0, 0) for n in (4, 5, 6)),
    ("cube, count", (CUBE, CUBE_BARS), 12, 6, 0),
    ("cube and 5 face diagonals, calculated", (CUBE, CUBE_BARS + face_diagonals(5)), 17, 1, 0),
    ("cube and 6 face diagonals, Dehn", (CUBE, CUBE_BARS + face_diagonals(6)), 18, 0, 0),
    ("cube and 4 space diagonals, calculated", (CUBE, CUBE_BARS + SPACE_DIAGONALS), 15, 3, 1),
    ("dodecahedron, count", DODECA, 30, 24, 0),
    ("cuboctahedron, count", CUBOCTA, 24, 6, 0),
    ("truncated tetrahedron, count", truncated_tetrahedron(), 18, 12, 0),
    ("triangular prism, count", prism(3), 9, 3, 0),
    *((f"antiprism {n}, calculated", antiprism(n), 4 * n, 2 * n - 6, 0) for n in (3, 4, 5, 6)),
    *((f"ring {n}, count", (ring(n), round_(n)), n, 2 * n - 6, 0) for n in (4, 5, 6)),
    ("double banana, Clement et al.", double_banana(False), 17, 1, 1),
    ("double banana and hinge, calculated", double_banana(True), 17, 1, 2),
    ("one banana, calculated", banana(), 9, 0, 0),
    ("K4,6, Bolker and Roth", bipartite(4, 6, False), 24, 0, 0),
    ("K5,5, Bolker and Roth", bipartite(5, 5, False), 24, 0, 1),
    ("K4,6 on a sphere, Bolker and Roth", bipartite(4, 6, True), 23, 1, 1),
    ("K5,5 on a sphere, Bolker and Roth", bipartite(5, 5, True), 23, 1, 2),
    ("K4,5, count", bipartite(4, 5, False), 20, 1, 0),
    ("K4,4, count", bipartite(4, 4, False), 16, 2, 0),
    ("K3,3, count", bipartite(3, 3, False), 9, 3, 0),
    ("twisted prism +30, Schoenhardt", twisted(3, np.radians(30)), 11, 1, 1),
    ("twisted prism -150, calculated", twisted(3, np.radians(-150)), 11, 1, 1),
    *(
        (f"twisted prism {t}, calculated", twisted(3, np.radians(t)), 12, 0, 0)
        for t in (0, 60, -60, 90, -90, 120, -120, 180, -30, 150)
    ),
]


@pytest.mark.parametrize(
    ("piece", "rank", "mechanisms", "self_stresses"),
    [row[1:] for row in ROWS],
    ids=[row[0] for row in ROWS],
)
def test_rank_mechanisms_and_self_stresses(
    piece: tuple[np.ndarray, Bars], rank: int, mechanisms: int, self_stresses: int
) -> None:
    points, bars = piece
    found = rigidity(np.array(bars), np.asarray(points, float))
    assert (found.rank, found.mechanisms, found.self_stresses) == (rank, mechanisms, self_stresses)
    # Maxwell's count, as Calladine completed it
    assert found.mechanisms - found.self_stresses == 3 * len(points) - 6 - len(bars)


@pytest.mark.parametrize(("piece", "rank"), [row[1:3] for row in ROWS], ids=[r[0] for r in ROWS])
def test_the_rank_of_large_pieces_is_told_alike(piece: tuple[np.ndarray, Bars], rank: int) -> None:
    points, bars = piece
    assert rank_sparse(rigidity_matrix(np.array(bars), np.asarray(points, float))) == rank


def test_rigid_motions_of_a_line_and_of_a_single_place() -> None:
    # from memory: a rod has five rigid motions, a particle three
    assert rigid_motions(np.array([(0, 0, 0), (1, 2, 3), (2, 4, 6)], float)) == 5
    assert rigid_motions(np.zeros((1, 3))) == 3
    assert rigid_motions(CUBE) == 6
