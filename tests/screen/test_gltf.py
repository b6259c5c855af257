"""The 3D model, read by libraries of others: trimesh and pygltflib, and the Khronos validator
(npm `gltf-validator`), which must find nothing wrong with it."""

from __future__ import annotations

import io
import json
import subprocess
import warnings
from pathlib import Path

import numpy as np
import pytest
from browser import WEB, node_module
from screen_pieces import NAMES, piece

from buildplan.screen.gltf import piece_glb, revolved
from buildplan.screen.model import Piece

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # dependencies of theirs warn of their own ways
    import pygltflib
    import trimesh

VALIDATE = """
const { validateBytes } = require("gltf-validator");
const bytes = new Uint8Array(require("fs").readFileSync(process.argv[1]));
validateBytes(bytes).then((report) => console.log(JSON.stringify(report)));
"""


@pytest.mark.parametrize("name", NAMES)
def test_another_library_reads_back_places_sizes_and_counts(name: str) -> None:
    data = piece(name)
    scene = trimesh.load_scene(io.BytesIO(piece_glb(data)), file_type="glb")
    assert len(scene.graph.nodes_geometry) == len(data.links) + 2 * len(data.locks)
    assert len(scene.geometry) == len(data.balloons)
    at = {joint.label: np.array(joint.at) for joint in data.joints}
    gauge = {balloon.key: balloon.gauge_m for balloon in data.balloons}
    for link in data.links:
        transform, mesh = scene.graph[link.id]
        assert mesh == link.balloon
        ends = [(transform @ [0, y, 0, 1])[:3] for y in (-0.5, 0.5)]
        assert np.allclose(ends, [at[link.start], at[link.finish]], atol=2e-4)
        across = np.linalg.norm((transform @ [1, 0, 0, 0])[:3])
        assert across == pytest.approx(gauge[link.balloon], rel=1e-3)
    for lock in data.locks:
        for which, middle in enumerate(lock.at, start=1):
            transform, _ = scene.graph[f"{lock.joint} lock {which}"]
            assert np.allclose(transform[:3, 3], middle, atol=1e-4)
    # bodies reach beyond joints by a radius at most: the model stands at true size on the floor
    extent = scene.bounds[1] - scene.bounds[0]
    slack = 2.1 * max(gauge.values())
    for told, found in zip((data.width_m, data.height_m, data.depth_m), extent, strict=True):
        assert told - slack <= found <= told + slack


def test_materials_are_the_colours_in_linear_light() -> None:
    """sRGB to linear light by IEC 61966-2-1: 0x1F is 0.01370, 0x5F 0.11444, 0x8B 0.25818."""
    model = pygltflib.GLTF2.load_from_bytes(piece_glb(piece("reading_star")))
    blue = model.materials[0].pbrMetallicRoughness
    assert blue.baseColorFactor == pytest.approx([0.01370, 0.11444, 0.25818, 1.0], abs=2e-5)
    assert len(model.meshes) == 3
    assert model.asset.version == "2.0"


def test_faces_look_outwards() -> None:
    points, normals, faces = revolved([(-0.5, 0.0), (-0.2, 0.4), (0.2, 0.4), (0.5, 0.0)])
    corner = points[faces.astype(int).reshape(-1, 3)]
    facing = np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0])
    middle = corner.mean(axis=1)
    real = np.linalg.norm(facing, axis=1) > 1e-9
    assert np.all(np.einsum("ij,ij->i", facing, middle)[real] > 0)
    assert np.all(np.einsum("ij,ij->i", points, normals) >= 0)


@pytest.mark.parametrize("name", NAMES)
def test_the_validator_of_the_standard_finds_nothing(name: str, tmp_path: Path) -> None:
    node_module("gltf-validator")
    file = tmp_path / "piece.glb"
    file.write_bytes(piece_glb(piece(name)))
    run = ["node", "-e", VALIDATE, str(file)]
    ended = subprocess.run(run, cwd=WEB, capture_output=True, text=True, check=True)
    issues = json.loads(ended.stdout)["issues"]
    assert issues["numErrors"] == 0, issues["messages"][:5]
    assert issues["numWarnings"] == 0, issues["messages"][:5]


def test_every_finish_has_a_material() -> None:
    star: Piece = piece("reading_star")
    for finish in ("standard", "metallic", "pearl", "clear", "matt"):
        painted = [b.model_copy(update={"finish": finish}) for b in star.balloons]
        made = piece_glb(star.model_copy(update={"balloons": painted}))
        model = pygltflib.GLTF2.load_from_bytes(made)
        assert (model.materials[0].alphaMode == "BLEND") is (finish == "clear")
