"""Pieces of one drawing side by side: an assembly of fits, tied where their edges face.

What joins them is checked as any file is before it is written: several ways to tie them are tried.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path
from string import ascii_lowercase, ascii_uppercase

import numpy as np

from buildplan.design.model import Design
from buildplan.design.reading import joined_data
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.evaluation.measured import first_mistake
from buildplan.evaluation.seating import seated
from buildplan.fitting.design_file import balloon_lines
from buildplan.fitting.fit import Fit
from buildplan.fitting.tube_design import BRACE, LOCK
from buildplan.framework.chain_roles import OUTER, Layer
from buildplan.language.isolates import without_isolates
from buildplan.language.messages import Message
from buildplan.language.voice import Voice
from buildplan.patterns.build import built_as
from buildplan.patterns.registry import PATTERNS
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.model import FloatArray
from buildplan.source.balloons import Balloon
from buildplan.source.file_changes import changed_data
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import Put
from buildplan.source.trade_words import in_file_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

LEVEL_SHARE = 0.5  # of a link: joints that a balloon ties are about as high
FACING_SHARES = (0.08, 0.16, 0.25)  # of a link: how far from one link apart they may be
CLEAR_SHARE = 0.9  # of a link: nothing else may be nearer
MOST_TIES = 3  # pairs of joints, front and back, between two pieces

POLE = "\npole: true\n"

Row = tuple[str, str]
"""Two joints of the front that face one another, of a piece and of the next."""


@dataclass(frozen=True)
class SideBySide:
    """The file that joins pieces, whether a pole holds it, and what a check finds wrong with it."""

    text: str
    on_pole: bool
    problems: tuple[Message, ...]


def joined(
    name: str, files: Sequence[str], fits: Sequence[Fit], folder: Path, voice: Voice
) -> SideBySide | None:
    """The pieces of `files`, which lie in `folder`, tied to their neighbours: the first way to tie
    them that passes every check, if need be with a pole; where none does, the likeliest with its
    problems. None where two neighbours have no joints that face one another."""
    texts = dict.fromkeys(
        text
        for share in FACING_SHARES
        if (text := assembly_text(name, files, fits, voice, share)) is not None
    )
    first: SideBySide | None = None
    for on_pole in (False, True):
        for text in texts:
            whole = f"{text}{POLE}" if on_pole else text
            one = SideBySide(whole, on_pole, problems_of_file(whole, folder))
            if not one.problems:
                return one
            first = first or one
    return first


def problems_of_file(text: str, folder: Path) -> tuple[Message, ...]:
    """Every problem that `check` names in a design file of that text; the files of an assembly's
    parts lie in `folder`."""
    data = in_file_words(plain(load(text, str(folder)).root))
    mistake = first_mistake(data)
    if mistake is not None:
        return (mistake,)
    try:
        found = seated(joined_data(data, folder, CONSTANTS))
    except DesignProblemsError as error:
        return tuple(problem.message for problem in error.problems)
    if found.problems:
        return tuple(problem.message for problem in found.problems)
    evaluated = evaluate(found.design, found.design.units, NEW_PARTS)
    return tuple(problem.message for problem in evaluated.facts.problems)


def of_one_palette(fits: Sequence[Fit]) -> tuple[Fit, ...]:
    """The fits, each balloon that is sized otherwise than one of that key before it with the letter
    of its piece at the end of its key: the files of parts share their keys."""
    palette: dict[str, Balloon] = {}
    found = []
    for letter, fit in zip(ascii_lowercase, fits, strict=False):
        renamed = {
            key: f"{key}_{letter}"
            for key, balloon in fit.design.balloons.items()
            if palette.get(key, balloon) != balloon
        }
        one = replace(fit, design=with_keys(fit.design, renamed))
        palette |= one.design.balloons
        found.append(one)
    return tuple(found)


def with_keys(design: Design, keys: Mapping[str, str]) -> Design:
    """A design with balloons called otherwise, by their keys."""
    name, made = design.build.given
    pattern = PATTERNS[name]
    given = made.model_dump(by_alias=True)
    called = [
        Put(at, keys[key])
        for use in pattern.uses
        for at, key in use.named(given)
        if isinstance(key, str) and key in keys
    ]
    renamed = pattern.keys.model_validate(changed_data(given, called))
    orders = {
        part: [keys.get(key, key) for key in order] if isinstance(order, list) else order
        for part, order in design.colour_pattern.items()
    }
    update = {
        "balloons": {keys.get(key, key): one for key, one in design.balloons.items()},
        "build": built_as(name, renamed),
        "colour_pattern": orders,
    }
    return design.model_copy(update=update)


def facing_rows(left: Fit, right: Fit, share: float) -> tuple[Row, ...]:
    """Joints of two pieces that lie a brace apart, but for such a share of it, when the one stands
    beside the other, as near as it comes with most of them: the lowest, the highest and one
    between. Empty where none do."""
    one, other = _edge(left), _edge(right)
    a, b = np.array(list(one.values())), np.array(list(other.values()))
    link_m = left.framework.balloons[BRACE].tie_to_tie_m
    rise = b[None, :, 1] - a[:, None, 1]
    level = abs(rise) < LEVEL_SHARE * link_m
    reach = np.sqrt(np.maximum(link_m**2 - rise**2, 0.0))
    shifts = np.unique(np.round((a[:, None, 0] - b[None, :, 0] + reach)[level], 4))
    best: list[tuple[int, int]] = []
    for shift in shifts:
        apart = np.hypot(b[None, :, 0] + shift - a[:, None, 0], rise)
        if (
            apart.min() < min(CLEAR_SHARE, 1 - share) * link_m
            or b[:, 0].mean() + shift < a[:, 0].mean()
        ):
            continue
        near = np.argwhere(level & (abs(apart - link_m) < share * link_m))
        rows = _each_once([(int(i), int(j)) for i, j in near], a)
        if _hold(rows, a, link_m) > _hold(best, a, link_m):
            best = rows
    names = list(one), list(other)
    return tuple((names[0][i], names[1][j]) for i, j in _few(best))


def _hold(rows: Sequence[tuple[int, int]], a: FloatArray, link_m: float) -> float:
    """How well rows hold two pieces together: more of them do, and those far apart in height."""
    heights = [float(a[i, 1]) for i, _ in rows]
    spread = max(heights) - min(heights) if heights else 0.0
    return min(len(rows), MOST_TIES) + spread / link_m


def _edge(fit: Fit) -> Mapping[str, FloatArray]:
    """The joints of a piece's outer front chain, in the plane."""
    chain = next(
        long.chain
        for long in fit.framework.chains
        if long.role == OUTER and long.layer is Layer.FRONT
    )
    return {joint: fit.shape.at[joint][:2] for joint in chain.joints}


def _each_once(rows: Sequence[tuple[int, int]], a: FloatArray) -> list[tuple[int, int]]:
    kept: list[tuple[int, int]] = []
    for i, j in sorted(rows, key=lambda row: float(a[row[0], 1])):
        if all(i != k and j != m for k, m in kept):
            kept.append((i, j))
    return kept


def _few(rows: list[tuple[int, int]]) -> list[tuple[int, int]]:
    if len(rows) <= MOST_TIES:
        return rows
    return [rows[0], rows[len(rows) // 2], rows[-1]]


def assembly_text(
    name: str, files: Sequence[str], fits: Sequence[Fit], voice: Voice, share: float
) -> str | None:
    """The text of the design file of pieces side by side, each from its own file; None where two
    neighbours have no joints that face one another, within such a share of a link."""
    ties: list[str] = []
    for (letter, one), (following, other) in pairwise(zip(ascii_uppercase, fits, strict=False)):
        rows = facing_rows(one, other, share)
        if not rows:
            return None
        ties += _tie_lines(rows, (letter, one), (following, other))
    head = without_isolates(
        voice.say("{piece}: outlines of one drawing, side by side.", piece=name)
    )
    parts = [
        f"      - {{name: {letter}, design: {json.dumps(file, ensure_ascii=False)}}}"
        for letter, file in zip(ascii_uppercase, files, strict=False)
    ]
    first = fits[0].design
    lines = [
        f"# {head}",
        "buildplan: 1",
        f"name: {json.dumps(name, ensure_ascii=False)}",
        f"units: {first.units}",
        "",
        "balloons:",
        *balloon_lines(first),
        "",
        "build:",
        "  assembly:",
        "    parts:",
        *parts,
        f"    lock: {LOCK}",
        "    ties:",
        *ties,
    ]
    return "\n".join(lines) + "\n"


def _tie_lines(rows: Sequence[Row], left: tuple[str, Fit], right: tuple[str, Fit]) -> Iterator[str]:
    """Each row with a balloon in front and one behind."""
    for one, other in rows:
        behind = left[1].framework.mirror[one], right[1].framework.mirror[other]
        for start, finish in ((one, other), behind):
            joints = f"[{left[0]}.{start}, {right[0]}.{finish}]"
            yield f"      - {{joints: {joints}, balloon: {BRACE}}}"
