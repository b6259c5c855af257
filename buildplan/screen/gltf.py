"""A piece as a glTF 2.0 binary file, at true size, for the viewers that phones have.

glTF 2.0 is ISO/IEC 12113:2022: metres, y up, the front towards +z. Each kind of balloon is one
mesh, a surface of revolution about y between knots at -1/2 and 1/2; every balloon is a node that
places it. Colours and finishes are its metallic-roughness materials.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
import numpy.typing as npt

from buildplan.drawing.colours import linear
from buildplan.screen.model import BalloonData, Piece, Point

FloatArray = npt.NDArray[np.float64]

# Points round a balloon.
ROUND = 24
# Roughness and metalness of each finish, by eye.
FINISHES: Mapping[str, tuple[float, float]] = {
    "standard": (0.35, 0.0),
    "pearl": (0.28, 0.25),
    "metallic": (0.3, 0.75),
    "clear": (0.1, 0.0),
    "matt": (0.85, 0.0),
}
CLEAR_ALPHA = 0.45
MAGIC, JSON_CHUNK, BINARY_CHUNK = 0x46546C67, 0x4E4F534A, 0x004E4942
FLOAT, UNSIGNED_SHORT, VERTICES, INDICES = 5126, 5123, 34962, 34963


def piece_glb(piece: Piece) -> bytes:
    """The finished piece as a .glb file. The same piece gives the same bytes."""
    store = _Buffer()
    number = {balloon.key: i for i, balloon in enumerate(piece.balloons)}
    meshes = [_mesh(store, balloon, i) for i, balloon in enumerate(piece.balloons)]
    nodes: list[dict[str, Any]] = [{"name": _name(piece), "children": []}]
    gauge = {balloon.key: balloon.gauge_m for balloon in piece.balloons}
    at = {joint.label: np.array(joint.at) for joint in piece.joints}
    for link in piece.links:
        placed = _between(at[link.start], at[link.finish], gauge[link.balloon])
        nodes.append({"name": link.id, "mesh": number[link.balloon], **placed})
    for lock in piece.locks:
        for which, middle in enumerate(lock.at, start=1):
            placed = _ball(middle, gauge[lock.balloon])
            name = f"{lock.joint} lock {which}"
            nodes.append({"name": name, "mesh": number[lock.balloon], **placed})
    nodes[0]["children"] = list(range(1, len(nodes)))
    document = {
        "asset": {"version": "2.0", "generator": "buildplan"},
        "scene": 0,
        "scenes": [{"name": _name(piece), "nodes": [0]}],
        "nodes": nodes,
        "meshes": meshes,
        "materials": [_material(balloon) for balloon in piece.balloons],
        "accessors": store.accessors,
        "bufferViews": store.views,
        "buffers": [{"byteLength": len(store.data)}],
    }
    return _packed(document, bytes(store.data))


def _name(piece: Piece) -> str:
    return next(iter(piece.name.values()))


@dataclass
class _Buffer:
    """The binary part, with the views and accessors that lead into it."""

    data: bytearray = field(default_factory=bytearray)
    views: list[dict[str, Any]] = field(default_factory=list)
    accessors: list[dict[str, Any]] = field(default_factory=list)

    def put(self, values: FloatArray, component: int, form: str, target: int) -> int:
        """Add an array; returns the number of its accessor."""
        kept = values.astype("<f4" if component == FLOAT else "<u2")
        raw = kept.tobytes()
        view = {"buffer": 0, "byteOffset": len(self.data), "byteLength": len(raw)}
        self.views.append(view | {"target": target})
        self.data += raw + b"\0" * (-len(raw) % 4)
        accessor: dict[str, Any] = {
            "bufferView": len(self.views) - 1,
            "componentType": component,
            "count": len(kept),
            "type": form,
        }
        if form == "VEC3":
            accessor["min"] = kept.min(axis=0).tolist()
            accessor["max"] = kept.max(axis=0).tolist()
        self.accessors.append(accessor)
        return len(self.accessors) - 1


def _mesh(store: _Buffer, balloon: BalloonData, material: int) -> dict[str, Any]:
    points, normals, faces = revolved(balloon.profile)
    return {
        "name": balloon.key,
        "primitives": [
            {
                "attributes": {
                    "POSITION": store.put(points, FLOAT, "VEC3", VERTICES),
                    "NORMAL": store.put(normals, FLOAT, "VEC3", VERTICES),
                },
                "indices": store.put(faces, UNSIGNED_SHORT, "SCALAR", INDICES),
                "material": material,
            }
        ],
    }


def revolved(
    outline: Sequence[tuple[float, float]],
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """A surface of revolution about y from an outline of (y, radius): points (n, 3), normals
    (n, 3), and corners of its triangles (3 m,), outside to the front."""
    y, radius = np.array(outline).T
    turn = 2 * np.pi * np.arange(ROUND + 1) / ROUND
    cos, sin = np.cos(turn), np.sin(turn)
    points = np.stack(
        [np.outer(radius, cos), np.repeat(y[:, None], ROUND + 1, axis=1), np.outer(radius, sin)],
        axis=2,
    )
    rise, out = np.gradient(y), np.gradient(radius)
    normals = np.stack(
        [np.outer(rise, cos), np.repeat(-out[:, None], ROUND + 1, axis=1), np.outer(rise, sin)],
        axis=2,
    )
    normals /= np.linalg.norm(normals, axis=2, keepdims=True)
    row = np.arange(len(y) - 1)[:, None] * (ROUND + 1) + np.arange(ROUND)[None]
    after = row + ROUND + 1
    faces = np.stack([row, after, row + 1, row + 1, after, after + 1], axis=2)
    return points.reshape(-1, 3), normals.reshape(-1, 3), faces.reshape(-1).astype(float)


def _between(first: FloatArray, second: FloatArray, gauge_m: float) -> dict[str, Any]:
    """The place of a link balloon: y along its axis, as long as its knots are apart."""
    axis = second - first
    length = float(np.linalg.norm(axis))
    return {
        "translation": _numbers((first + second) / 2),
        "rotation": _numbers(_turned_from_y(axis / length)),
        "scale": _numbers(np.array([gauge_m, length, gauge_m])),
    }


def _ball(middle: Point, gauge_m: float) -> dict[str, Any]:
    return {"translation": list(middle), "scale": _numbers(np.array([gauge_m] * 3))}


def _turned_from_y(axis: FloatArray) -> FloatArray:
    """The unit quaternion (x, y, z, w) that turns y to a unit vector the shortest way."""
    x, y, z = axis
    if y < -0.999999:
        return np.array([1.0, 0.0, 0.0, 0.0])
    turn = np.array([z, 0.0, -x, 1.0 + y])
    return np.asarray(turn / np.linalg.norm(turn))


def _numbers(vector: FloatArray) -> list[float]:
    return [round(float(value), 7) + 0.0 for value in vector]


def _material(balloon: BalloonData) -> dict[str, Any]:
    roughness, metalness = FINISHES[balloon.finish]
    clear = balloon.finish == "clear"
    light = [round(float(value), 5) for value in linear(balloon.colour)]
    material: dict[str, Any] = {
        "name": next(iter(balloon.label.values())) or balloon.key,
        "pbrMetallicRoughness": {
            "baseColorFactor": [*light, CLEAR_ALPHA if clear else 1.0],
            "metallicFactor": metalness,
            "roughnessFactor": roughness,
        },
    }
    return material | ({"alphaMode": "BLEND"} if clear else {})


def _packed(document: Mapping[str, Any], binary: bytes) -> bytes:
    """The two chunks of a .glb, each filled up to four bytes (section 4.4 of the standard)."""
    text = json.dumps(document, separators=(",", ":"), ensure_ascii=False).encode()
    text += b" " * (-len(text) % 4)
    length = 12 + 8 + len(text) + 8 + len(binary)
    return b"".join(
        [
            struct.pack("<III", MAGIC, 2, length),
            struct.pack("<II", len(text), JSON_CHUNK),
            text,
            struct.pack("<II", len(binary), BINARY_CHUNK),
            binary,
        ]
    )
