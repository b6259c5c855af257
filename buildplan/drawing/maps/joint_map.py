"""The joint map: the flat plan of a piece, from which a builder reads which joints meet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from buildplan.drawing.maps.blocks import MapNames
from buildplan.drawing.maps.face_map import face_plan, is_face
from buildplan.drawing.maps.grids import grid_plan, is_grid
from buildplan.drawing.maps.rings import rings_plan, stacked_rings
from buildplan.drawing.maps.round_map import round_plan
from buildplan.drawing.maps.round_piece import round_piece
from buildplan.drawing.maps.sheets import FlatPlan, flat_sheets
from buildplan.drawing.maps.tie_map import ties_plan
from buildplan.drawing.maps.tube_map import tube_plan, tube_sheets
from buildplan.drawing.marks import Picture
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence.copies import equal_parts
from buildplan.shape.model import FloatArray


def joint_map(
    framework: Framework,
    width: float,
    height: float,
    voice: Voice,
    at: Mapping[str, FloatArray] | None = None,
) -> tuple[Picture, ...]:
    """The joint map on as many sheets as it takes, each at most `width` by `height` points. `at`
    says where each joint is as the piece stands, in metres with y up.

    Every joint, link, brace number and lock is drawn in full once; whatever is repeated, where a
    sheet begins with what another ends with or a plan closes round, is pale. An assembly has the
    maps of its parts, equal parts once, and what ties them to one another. A tube is unrolled, and
    so are stacked rings; a grid of rows and uprights is drawn layer by layer; a piece that its
    pattern draws flat, the front with the back behind it; what closes round its middle as seen from
    above and below, if `at` is given; anything else as a diagram of joints and lines. Type is 8 pt
    or larger; made for a width of 350 points or more. The key is at the foot of every sheet, or,
    where that leaves no room, the last sheet.
    """
    if framework.cells and not framework.parts:
        return tube_sheets(framework, width, height, voice)
    return flat_sheets(list(_plans(framework, width, height, voice, at)), width, height, voice)


def _plans(
    framework: Framework,
    width: float,
    height: float,
    voice: Voice,
    at: Mapping[str, FloatArray] | None,
) -> Iterator[FlatPlan]:
    if not framework.parts:
        yield _plan(framework, MapNames(), width, height, voice, at)
        return
    equal = equal_parts(framework)
    for part in framework.parts:
        if part.name not in equal:
            others = (name for name, first in equal.items() if first == part.name)
            names = MapNames((part.name, *others))
            plan = _plan(part.framework, names, width, height, voice, at)
            yield replace(plan, title=voice.listed(names.parts))
    ties = ties_plan(framework, voice)
    if ties is not None:
        yield ties


def _plan(
    framework: Framework,
    names: MapNames,
    width: float,
    height: float,
    voice: Voice,
    at: Mapping[str, FloatArray] | None,
) -> FlatPlan:
    if framework.cells:
        return tube_plan(framework, names, width, voice)
    if is_face(framework):
        return face_plan(framework, names, voice)
    stacked = stacked_rings(framework, at)
    if stacked is not None:
        return rings_plan(framework, stacked, names, voice)
    if is_grid(framework):
        return grid_plan(framework, names, voice)
    piece = round_piece(framework, at)
    found = None if piece is None else round_plan(piece, names, voice)
    if found is not None:
        return found
    # what lays out graphs takes long to import, and few pieces are listed joint by joint
    from buildplan.drawing.maps.graph_map import graph_plan

    return graph_plan(framework, names, width, height, voice)
