"""How fast the shape stage is, as ratios measured in one run: `python tests/bench/bench_shape.py`.

Form finding against the same energy handed to scipy's general minimiser without derivatives and
with dense ones, and against compas_fd's force densities on the same net; the pin-jointed solver
against PyNiteFEA; growth from 100 to 10,000 joints. Needs `pip install -e '.[bench]'`.
"""

from __future__ import annotations

import buildplan  # noqa: F401 - before numpy, so that its linear algebra is in one thread

# isort: split
import resource
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize
from scipy.spatial import cKDTree

sys.path.insert(0, str(Path(__file__).parent.parent / "shape"))
from functools import partial

from shape_pieces import graph, star
from truss import solve_truss

from buildplan.framework.model import Framework
from buildplan.shape.bodies import bodies_of, crowding, opening, struts
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.finding import Settings, find_shape
from buildplan.shape.freedoms import Freedoms, Stiffening, mirrored, pinned
from buildplan.shape.plan import close_plan, plan_of, plan_positions
from buildplan.shape.relaxing import Relaxed, relax
from buildplan.shape.springs import Springs, energy_and_gradient, springs_between, together


def timed(work: Callable[[], Any], times: int = 1) -> tuple[float, Any]:
    """Least wall time of `times` runs, and the last result."""
    least, result = float("inf"), None
    for _ in range(times):
        start = time.perf_counter()
        result = work()
        least = min(least, time.perf_counter() - start)
    return least, result


def laid(piece: Framework) -> tuple[Springs, Freedoms, np.ndarray]:
    """Springs, freedoms and start of a piece as form finding sees them."""
    bodies = bodies_of(piece)
    springs = together(part(bodies, CONSTANTS) for part in (struts, crowding, opening))
    number = {joint: i for i, joint in enumerate(piece.joints)}
    freedoms = mirrored(np.array([number[piece.mirror[joint]] for joint in piece.joints]))
    plan = plan_of(piece)
    start = plan_positions(piece, *close_plan(plan, plan.turn, np.zeros(len(plan.turn))))
    return springs, freedoms, start


def against_general_minimisers(points: int, straights: int, derivatives: bool) -> None:
    piece = star(points, straights)
    springs, freedoms, start = laid(piece)
    first = freedoms.nearest(start)
    stiffening = Stiffening(springs, freedoms)

    def energy(q: np.ndarray) -> float:
        return energy_and_gradient(springs, freedoms.coordinates(q))[0]

    def gradient(q: np.ndarray) -> np.ndarray:
        return freedoms.felt(energy_and_gradient(springs, freedoms.coordinates(q))[1])

    def dense(q: np.ndarray) -> np.ndarray:
        return np.asarray(stiffening.at(freedoms.coordinates(q)).toarray())

    ours, found = timed(lambda: relax(Stiffening(springs, freedoms), start, 1e-6), 3)
    if derivatives:
        name = "trust-exact, dense derivatives"
        theirs, general = timed(
            lambda: minimize(
                energy, first, jac=gradient, hess=dense, method="trust-exact",
                options={"gtol": 1e-6, "maxiter": 300},
            )
        )  # fmt: skip
    else:
        name = "L-BFGS-B, no derivatives"
        theirs, general = timed(
            lambda: minimize(energy, first, method="L-BFGS-B", options={"maxfun": 200_000})
        )
    print(
        f"{len(piece.joints):6d} joints  ours {ours:8.3f} s ({found.residual_n:.0e} N)   "
        f"{name} {theirs:8.3f} s ({np.abs(gradient(general.x)).max():.0e} N)   "
        f"ratio {theirs / ours:8.1f}"
    )


def against_force_densities(side: int) -> None:
    """A square net of `side`^2 joints that hangs from its rim, its links of one force density: for
    springs without a length of their own that is their stiffness (Schek 1974), so that both have
    one and the same shape to find. That is a linear task, which the rival solves in one step; ours
    goes about it as about any springs, in Newton's steps."""
    from compas_fd.solvers import fd_numpy

    row, column = np.divmod(np.arange(side * side), side)
    flat = np.column_stack([column, np.zeros(side * side), row]).astype(float)
    across, up = np.flatnonzero(column < side - 1), np.flatnonzero(row < side - 1)
    ends = np.vstack([np.column_stack([across, across + 1]), np.column_stack([up, up + side])])
    rim = (row % (side - 1) == 0) | (column % (side - 1) == 0)
    load = np.where(rim[:, None], 0.0, [0.0, -1.0, 0.0])
    density = np.full(len(ends), 10.0)
    given: dict[str, Any] = {
        "vertices": flat.tolist(),  # an array would be changed
        "fixed": np.flatnonzero(rim).tolist(),
        "edges": ends.tolist(),
        "forcedensities": density.tolist(),
        "loads": load,
    }
    theirs, net = timed(lambda: fd_numpy(**given), 3)
    row_of = np.array([1.0, -1.0])
    held = np.repeat(rim[:, None], 3, axis=1)

    def ours_found() -> Relaxed:
        springs = springs_between(ends, row_of, len(flat), 0 * density, density, push_only=False)
        start = np.where(held, flat, 0.0)
        return relax(Stiffening(springs, pinned(held)), flat, 1e-6, np.inf, load, start)

    ours, found = timed(ours_found, 3)
    gap = np.abs(np.asarray(net.vertices) - found.positions_m).max()
    print(
        f"{len(flat):6d} joints {len(ends):6d} links  ours {ours:8.3f} s   "
        f"compas_fd {theirs:8.3f} s"
        f"   ratio {theirs / ours:8.2f}   (difference {gap:.0e} m)"
    )


def block(side: int) -> tuple[np.ndarray, np.ndarray]:
    """A triangulated block of side^3 joints."""
    points = np.array(
        [(x, y, z) for x in range(side) for y in range(side) for z in range(side)], float
    )
    points += 0.1 * np.random.default_rng(1).uniform(-1, 1, points.shape)
    return points, cKDTree(points).query_pairs(1.6, output_type="ndarray")


def against_pynite(side: int) -> None:
    from Pynite import FEModel3D

    points, bars = block(side)
    held = np.zeros(points.shape, bool)
    held[: side * side] = True
    load = np.where(held, 0.0, 1.0)
    axial = 10.0 / np.linalg.norm(points[bars[:, 0]] - points[bars[:, 1]], axis=1)
    model = FEModel3D()
    model.add_material("skin", 1000.0, 400.0, 0.25, 1.0)
    model.add_section("link", 0.01, 1e-9, 1e-9, 1e-9)
    for k, (x, y, z) in enumerate(points):
        model.add_node(f"J{k}", x, y, z)
        model.def_support(f"J{k}", *held[k], True, True, True)
        for axis, direction in enumerate(("FX", "FY", "FZ")):
            model.add_node_load(f"J{k}", direction, load[k, axis])
    for k, (i, j) in enumerate(bars):
        model.add_member(f"M{k}", f"J{i}", f"J{j}", "skin", "link")
        model.def_releases(f"M{k}", Ryi=True, Rzi=True, Ryj=True, Rzj=True)
    theirs, _ = timed(lambda: model.analyze_linear(check_stability=False))
    ours, found = timed(lambda: solve_truss(bars, points, axial, held, load), 3)
    last = len(points) - 1
    gap = abs(model.nodes[f"J{last}"].DX["Combo 1"] - found.displacements_m[last, 0])
    print(
        f"{len(points):6d} joints {len(bars):6d} bars  ours {ours:8.3f} s   PyNite {theirs:8.3f} s"
        f"   ratio {theirs / ours:8.1f}   (difference {gap:.0e})"
    )


def growth(name: str, pieces: Iterable[Framework]) -> None:
    sizes, times = [], []
    for piece in pieces:
        took, shape = timed(partial(find_shape, piece, settings=Settings(starts=2)))
        sizes.append(len(piece.joints))
        times.append(took)
        print(
            f"{name:6s} {len(piece.joints):6d} joints {len(piece.links):6d} links  {took:8.2f} s"
            f"   at rest: {shape.converged}"
        )
    exponent = np.polyfit(np.log(sizes), np.log(times), 1)[0]
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6
    print(f"fitted exponent {exponent:.2f}, greatest memory so far {memory:.2f} GB")


def stars() -> Iterator[Framework]:
    for points, straights in ((6, 1), (10, 3), (25, 4), (25, 15), (25, 49)):
        yield star(points, straights)


def walls() -> Iterator[Framework]:
    for side in (10, 18, 32, 56, 100):
        across = [(i * side + j, i * side + j + 1) for i in range(side) for j in range(side - 1)]
        up = [(i * side + j, i * side + j + side) for i in range(side - 1) for j in range(side)]
        yield graph(side * side, across + up)


if __name__ == "__main__":
    print("Growth of find_shape, two starts, pose, standing and rank included")
    find_shape(star())  # warm up
    growth("star", stars())
    growth("wall", walls())
    print("Form finding against scipy's general minimiser on the same energy")
    against_general_minimisers(5, 1, derivatives=False)
    against_general_minimisers(10, 3, derivatives=True)
    against_general_minimisers(25, 4, derivatives=True)
    print("Form finding against compas_fd's force densities on the same net")
    for side in (10, 30, 100):
        against_force_densities(side)
    print("Pin-jointed stiffness solve against PyNiteFEA")
    for side in (3, 5, 8, 12):
        against_pynite(side)
