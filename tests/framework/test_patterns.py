"""Columns, walls, solids, globes and arches: their graphs against published figures, and the whole
line behind each."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import networkx as nx
import numpy as np
import pytest

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.chain_roles import RING, ZIGZAG
from buildplan.framework.counts import balloon_counts, multigraph
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.patterns.registry import joints_of
from buildplan.patterns.solid import corners_and_edges
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import suggestion_words

HEAD = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  b: {kind: link,  nominal: 12, inflate_to: 7, colour: "#F7F3E8", label: ivory}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
"""
COLUMN = "  column: {around: 5, rings: 4, ring: a, between: a, lock: k}\n"
WALL = "  wall: {across: 5, up: 4, layers: 2, row: a, upright: a, between: a, lock: k}\n"
HOLED = WALL.replace("lock: k", "lock: k, openings: [{along: 1, up: 0, wide: 2, high: 2}]")
GLOBE = "  globe: {long: a, short: b, lock: k}\n"
ARCH = "  arch: {kind: square, leg: 4, span: 3, long: a, brace: a, lock: k}\n"


def solid(shape: str) -> str:
    return f"  solid: {{shape: {shape}, edge: a, lock: k}}\n"


def built(folder: Path, build: str, more: str = "") -> Framework:
    file = folder / "trial.yaml"
    file.write_text(HEAD + build + more, "utf-8")
    return build_framework(read_design(file))


# V, E, F and the angle between two faces, degrees. Regular solids: the usual tables (e.g. Coxeter,
# Regular Polytopes, table I; from memory). Half-regular ones: E = V d / 2 and Euler's formula;
# each has one circumradius. Chains: of a solid of two levels the fewest trails, half the odd
# corners (Euler); of any other its rings, zigzags and single balloons, counted by hand.
SOLIDS = [
    ("tetrahedron", 4, 6, 4, 70.5288, 2),
    ("cube", 8, 12, 6, 90.0, 4),
    ("octahedron", 6, 12, 8, 109.4712, 1),
    ("dodecahedron", 20, 30, 12, 116.5651, 13),
    ("icosahedron", 12, 30, 20, 138.1897, 11),
    ("cuboctahedron", 12, 24, 14, 125.2644, 4),
    ("truncated tetrahedron", 12, 18, 8, None, 8),
]


@pytest.mark.parametrize(("shape", "v", "e", "f", "dihedral", "chains"), SOLIDS)
def test_solids_have_the_published_figures(
    tmp_path: Path, shape: str, v: int, e: int, f: int, dihedral: float | None, chains: int
) -> None:
    framework = built(tmp_path, solid(shape))
    graph = nx.Graph(multigraph(framework))
    assert (graph.number_of_nodes(), graph.number_of_edges()) == (v, e)
    assert v - e + f == 2
    planar, embedding = nx.check_planarity(graph)
    assert planar
    seen: set[tuple[str, str]] = set()
    faces = [
        embedding.traverse_face(a, b, mark_half_edges=seen)
        for a, b in embedding.edges
        if (a, b) not in seen
    ]
    assert len(faces) == f
    assert len(framework.chains) == chains
    if dihedral is not None:
        corners, _ = corners_and_edges(shape)
        assert _dihedral_deg(corners, faces) == pytest.approx(dihedral, abs=1e-3)


def _dihedral_deg(corners: np.ndarray, faces: list[list[str]]) -> float:
    """Angle between two neighbouring faces, from their outward normals."""
    rows = [[int(joint[1:]) - 1 for joint in face] for face in faces]
    normals = []
    for face in rows:
        a, b, c = corners[face[:3]]
        normal = np.cross(b - a, c - a)
        normals.append(normal * np.sign(normal @ a) / np.linalg.norm(normal))
    first = rows[0]
    beside = next(i for i in range(1, len(rows)) if len(set(first) & set(rows[i])) == 2)
    return 180 - float(np.degrees(np.arccos(normals[0] @ normals[beside])))


# edge 1; the usual tables, from memory
RADII = {"tetrahedron": 0.612372, "octahedron": 0.707107, "icosahedron": 0.951057}


@pytest.mark.parametrize("shape", RADII)
def test_rigid_solids_settle_into_their_circumscribed_sphere(tmp_path: Path, shape: str) -> None:
    framework = built(tmp_path, solid(shape))
    places = find_shape(framework).positions_m
    radius = np.linalg.norm(places - places.mean(axis=0), axis=1)
    assert radius == pytest.approx(RADII[shape] * 1.15 * 8 * 0.0254, rel=0.01)


def test_a_globe_is_a_sphere_of_eighty_triangles(tmp_path: Path) -> None:
    """Two-frequency geodesic sphere: V 42, E 120, F 80; 12 corners of five struts, 30 of six;
    60 struts of each length, 0.61803 and 0.54653 of the radius (usual table, from memory)."""
    framework = built(tmp_path, GLOBE)
    graph = nx.Graph(multigraph(framework))
    assert (len(graph), graph.number_of_edges()) == (42, 120)
    assert sum(nx.triangles(graph).values()) // 3 == 80
    assert Counter(dict(graph.degree).values()) == {5: 12, 6: 30}
    assert balloon_counts(framework) == {"a": 60, "b": 60, "k": 84}
    places = find_shape(framework).positions_m
    radius = np.linalg.norm(places - places.mean(axis=0), axis=1)
    assert np.ptp(radius) < 0.03 * radius.mean()
    assert radius.mean() == pytest.approx(1.15 * 8 * 0.0254 / 0.61803, rel=0.02)


LEVELLED = [GLOBE, *(solid(shape) for shape, *_ in SOLIDS[3:])]
IDS = ["globe", *(shape for shape, *_ in SOLIDS[3:])]


@pytest.mark.parametrize("build", LEVELLED, ids=IDS)
def test_chains_of_a_ball_go_level_by_level_from_its_foot(tmp_path: Path, build: str) -> None:
    """Distances of a graph as networkx finds them; a connected graph is one closed trail exactly
    where every degree is even (Euler 1736)."""
    framework = built(tmp_path, build)
    graph = multigraph(framework)
    level = nx.multi_source_dijkstra_path_length(graph, set(framework.foot), weight=None)
    spans = [sorted({level[joint] for joint in c.chain.joints}) for c in framework.chains]
    assert all(span[-1] - span[0] <= 1 for span in spans)
    assert spans == sorted(spans, key=lambda span: (span[0], span[-1]))
    sort = framework.joints[0].rstrip("0123456789")
    free = [chr(ord("A") + i) for i in range(26) if chr(ord("A") + i) != sort]
    assert [c.letter for c in framework.chains] == free[: len(spans)]
    walked = Counter(link for c in framework.chains for link in c.chain.links)
    assert walked == Counter(list(framework.link))
    for span in {tuple(span) for span in spans}:
        own = nx.Graph(
            edge for edge in graph.edges() if {level[joint] for joint in edge} == set(span)
        )
        if nx.is_connected(own) and all(degree % 2 == 0 for _, degree in own.degree()):
            (chain,) = (
                c.chain for c, of in zip(framework.chains, spans, strict=True) if tuple(of) == span
            )
            assert chain.closed


def test_a_globe_goes_ring_on_ring(tmp_path: Path) -> None:
    """Between its poles a two-frequency geodesic sphere has rings of 5, 10, 10, 10 and 5 struts:
    parallels of the icosahedron that it is made of (counted by hand)."""
    framework = built(tmp_path, GLOBE)
    assert framework.foot == ("P1",)
    rings = [c.chain for c in framework.chains if c.role == RING]
    assert [len(ring.links) for ring in rings] == [5, 10, 10, 10, 5]
    assert [joint for ring in rings for joint in ring.joints] == list(framework.joints[1:-1])
    zigzags = [c.chain for c in framework.chains if c.role == ZIGZAG]
    assert [len(zigzag.links) for zigzag in zigzags] == [10, 20, 20, 10]
    at = find_shape(framework).at
    heights = [np.mean([at[joint][1] for joint in ring.joints]) for ring in rings]
    assert heights == sorted(heights)
    for ring in rings:  # numbered clockwise, seen from above: x to the right, z to whoever looks
        x, _, z = np.array([at[joint] for joint in ring.joints]).T
        assert float((x * np.roll(z, -1) - z * np.roll(x, -1)).sum()) > 0


def test_a_column_is_a_stack_of_antiprisms(tmp_path: Path) -> None:
    """n joints a ring; each band has 2 n balloons and 2 n triangles. The height of a band of
    antiprism with edge s is s sqrt(1 - sec^2(pi / 2n) / 4) (usual formula, from memory)."""
    framework = built(tmp_path, COLUMN)
    graph = nx.Graph(multigraph(framework))
    n, rings = 5, 4
    assert (len(graph), graph.number_of_edges()) == (n * rings, n * rings + 2 * n * (rings - 1))
    assert sum(nx.triangles(graph).values()) // 3 == 2 * n * (rings - 1)
    assert [len(long.chain.links) for long in framework.chains] == [5, 5, 10, 5, 10, 5, 10]
    assert all(long.chain.closed for long in framework.chains)
    shape = find_shape(framework)
    assert set(shape.standing.feet) == {f"A{i}" for i in range(1, 6)}
    link_m = 1.15 * 8 * 0.0254
    band = link_m * np.sqrt(1 - 1 / np.cos(np.pi / (2 * n)) ** 2 / 4)
    up = shape.at["D1"][1] - shape.at["A1"][1]
    assert up == pytest.approx(3 * band, rel=0.02)


def test_a_wall_is_a_grid(tmp_path: Path) -> None:
    """The grid graph of (m + 1) by (n + 1), twice, times an edge (networkx)."""
    graph = nx.Graph(multigraph(built(tmp_path, WALL)))
    other = nx.cartesian_product(nx.grid_2d_graph(6, 5), nx.path_graph(2))
    assert nx.is_isomorphic(graph, other)
    single = nx.Graph(multigraph(built(tmp_path, WALL.replace("layers: 2", "layers: 1"))))
    assert nx.is_isomorphic(single, nx.grid_2d_graph(6, 5))


def test_a_doorway_is_left_out_to_the_floor(tmp_path: Path) -> None:
    framework = built(tmp_path, HOLED)
    graph = nx.grid_2d_graph(6, 5)
    # inside the doorway: the joints between its posts below its lintel, the floor among them
    graph.remove_nodes_from([(2, 0), (2, 1)])
    whole = nx.cartesian_product(graph, nx.path_graph(2))
    assert nx.is_isomorphic(nx.Graph(multigraph(framework)), whole)
    assert not {"A3", "B3"} & set(framework.joints)
    assert nx.is_connected(nx.Graph(multigraph(framework)))


def test_a_wall_stands_upright_on_its_lowest_rows(tmp_path: Path) -> None:
    shape = find_shape(built(tmp_path, HOLED))
    assert shape.height_m > shape.depth_m
    assert {joint[0] for joint in shape.standing.feet} == {"A", "F"}
    assert shape.standing.stands
    assert not shape.problems


def test_an_arch_is_as_high_and_as_wide_as_it_says(tmp_path: Path) -> None:
    framework = built(tmp_path, ARCH)
    shape = find_shape(framework)
    assert [len(long.chain.links) for long in framework.chains] == [15, 11, 11, 15]
    link_m = 1.15 * 8 * 0.0254
    inner = framework.chains[1].chain.joints
    assert np.linalg.norm(shape.at[inner[0]] - shape.at[inner[-1]]) == pytest.approx(
        3 * link_m, rel=0.1
    )


BUILDS = [COLUMN, WALL, HOLED, GLOBE, ARCH, solid("cuboctahedron"), solid("cube")]


@pytest.mark.parametrize(
    "build", BUILDS, ids=["column", "wall", "doorway", "globe", "arch", "c", "q"]
)
def test_every_pattern_goes_through_steps_and_replay(tmp_path: Path, build: str) -> None:
    framework = built(tmp_path, build)
    rebuilt = replay(steps_as_json(plan_steps(framework)))
    wanted = Counter(frozenset((link.start, link.finish)) for link in framework.links)
    assert _edges(rebuilt) == wanted


def _edges(rebuilt: object) -> Counter[frozenset[str]]:
    graph = rebuilt.graph  # type: ignore[attr-defined]
    return Counter(frozenset(edge[:2]) for edge in graph.edges)


def test_joints_of_a_design_are_those_of_its_framework(tmp_path: Path) -> None:
    file = tmp_path / "trial.yaml"
    for build in (COLUMN, HOLED, WALL, GLOBE, solid("cube")):
        file.write_text(HEAD + build, "utf-8")
        design = read_design(file)
        listed = joints_of(design.build.model_dump(by_alias=True))
        assert listed is not None
        assert set(listed.labels) == set(build_framework(design).joints)


@pytest.mark.parametrize(
    ("build", "more", "path", "says"),
    [
        (COLUMN.replace("ring: a", "ring: k"), "", "build.column.ring", "made of link balloons"),
        (WALL.replace("between: a, ", ""), "", "build.wall", "between"),
        (HOLED.replace("wide: 2", "wide: 4"), "", "build.wall.openings[0]", "leaves no cell"),
        (COLUMN, "stand_on: Z9\n", "stand_on", "no joint"),
        (GLOBE, "colour_pattern: {A: [a]}\n", "colour_pattern", "no long chains"),
        (solid("sphere"), "", "build.solid.shape", "sphere"),
        (COLUMN + GLOBE, "", "build.globe", "two patterns"),
    ],
)
def test_mistakes_are_told_with_their_place(
    tmp_path: Path, build: str, more: str, path: str, says: str
) -> None:
    with pytest.raises(DesignProblemsError) as raised:
        built(tmp_path, build, more)
    (problem,) = raised.value.problems
    assert problem.path == path
    assert says in Voice().tell(problem.message)
    assert suggestion_words(problem.suggestion, Voice())


def test_no_chain_has_the_letter_of_another_chains_joints(tmp_path: Path) -> None:
    """`Chain D: joints C1 to C4` would be read wrong by whoever builds (common practice, no
    source)."""
    for build in (COLUMN, WALL, HOLED):
        framework = built(tmp_path, build)
        sorts = {joint.rstrip("0123456789") for joint in framework.joints}
        for long in framework.chains:
            own = {joint.rstrip("0123456789") for joint in long.chain.joints}
            assert own == {long.letter} or long.letter not in sorts
        letters = [long.letter for long in framework.chains]
        assert len(set(letters)) == len(letters)
