"""Pieces of ours with a problem, and the wordings of what is told to mend each."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from typing import Any

from trial_pieces import BEAM, COLUMN, LOCKED, PIECES, RING, TUBE, WALL, design

Data = dict[str, Any]


@dataclass(frozen=True)
class Told:
    """A piece, the kind of what is wrong with it, and the wordings of the advice that mends it."""

    kind: str
    piece: Data
    says: tuple[str, ...]

    @staticmethod
    def is_worded(text: str, wording: str) -> bool:
        """Whether a text is that message with its places filled."""
        form = "".join(
            ".+" if part.startswith("{") else re.escape(part)
            for part in re.split(r"(\{\w+\})", wording)
        )
        return re.fullmatch(form, text) is not None


def with_small(key: str, gauge: float, build: Data) -> Data:
    """A design with the balloon `b` in another size, used where `key` names one."""
    text = json.dumps(build).replace(f'"{key}": "a"', f'"{key}": "b"')
    data = design(json.loads(text))
    data["balloons"]["b"]["inflate_to"] = gauge
    return data


def letters(text: str, cells: int = 5) -> Data:
    keys = {"text": text, "cells": cells, "long": "a", "brace": "a", "bar": "a", **LOCKED}
    return {"letters": keys}


def tube(*cells: str, repeat: int = 1, **keys: Any) -> Data:
    return {"tube": {**TUBE, "course": [{"repeat": repeat, "cells": [*cells]}], **keys}}


def assembly(*parts: Data, **keys: Any) -> Data:
    return design({"assembly": {"parts": [*parts], **LOCKED, **keys}})


def part(name: str, build: Data, **place: Any) -> Data:
    return {"name": name, "build": build, **place}


def wall(across: int, **keys: Any) -> Data:
    return {"wall": {**BEAM, "across": across, **keys}}


SHEET = {"across": 1, "up": 9, "layers": 1, "row": "a", "upright": "a", **LOCKED}
THREE = {"column": {**COLUMN["column"], "around": 3, "rings": 12}}
ON_BEAM = part("B", wall(5)), part("S", letters("L"))
SQUARE = tube(*["straight"] * 3, "tip", repeat=4)
BEHIND = [["S.A1", "B.D4"], ["S.A13", "B.D2"], ["S.B1", "B.B4"], ["S.B13", "B.B2"]]
IN_A_ROUND = [["S.A1", "B.B4"], ["S.A13", "B.D4"], ["S.B1", "B.B2"], ["S.B13", "B.D2"]]
SHORT_OF_JOINTS = [["S.A1", "B.D4"], ["S.A13", "B.A1"]]
LOPSIDED = {"tube": {**TUBE, "course": [
    {"repeat": 6, "cells": ["fan"]}, {"repeat": 12, "cells": ["straight"]}
]}}  # fmt: skip
TOO_LONG = design({"column": {**COLUMN["column"], "around": 3, "between": "b"}})
TOO_LONG["balloons"]["a"]["tie_to_tie"], TOO_LONG["balloons"]["b"]["tie_to_tie"] = 11, 8
MORE = json.loads(json.dumps(SQUARE))
MORE["tube"]["extra"] = [["A1", "A3"], ["B3", "C6"]]


def pole(cells: int, balloon: str) -> Data:
    strokes = [{"cells": ["straight"] * cells}]
    return {"figure": {"strokes": strokes, "long": balloon, "brace": balloon, **LOCKED}}


TWO_SIZES = assembly(
    part("W", wall(9, up=3, upright="d", between="d")),
    part("P", pole(3, "b"), on="W"),
    part("Q", pole(2, "c"), on="P"),
)
TWO_SIZES["balloons"]["c"] = {**TWO_SIZES["balloons"]["b"], "inflate_to": 5}
TWO_SIZES["balloons"]["b"]["inflate_to"] = 6
TWO_SIZES["balloons"]["d"] = {**TWO_SIZES["balloons"]["a"]}
LOWER = {"column": {**COLUMN["column"], "rings": 4}}
HIGHER = {"column": {**COLUMN["column"], "rings": 5}}

SIZE = "size {balloon} to {gauge} instead of {now}"
POLE = "give it a pole: {right}"
WIDER = "make part {part} wider: {right}"
PLACE = "give part {part} its place: {right}"
BY_A_PROBLEM = [
    Told("does-not-fit", with_small("row", 3.7, {"wall": {**WALL, "up": 2, "openings": []}}),
         (SIZE,)),
    Told("does-not-close", with_small("between", 3.7, {"column": COLUMN["column"]}), (SIZE,)),
    Told("not-as-drawn", with_small("long", 7, letters("II", 7)), (SIZE,)),
    Told("nothing-meets", with_small("ring", 4, PIECES["assembly"]), (SIZE,)),
    Told("same-place", assembly(part("B", wall(3, up=2)), part("L", wall(1, up=2), left_of="B"),
         part("R", wall(1, up=2), left_of="B")), (PLACE,)),
    Told("runs-into-itself", TOO_LONG, ("make it larger: {keys}",)),
    Told("runs-into-itself", assembly(part("L", COLUMN), part("R", COLUMN),
         part("B", wall(3), between=["L", "R"])), (PLACE,)),
    Told("runs-into-itself", design(MORE), (
        "take out the balloon more between {one} and {other} ({key})",
        "take out all balloons more ({key})",
    )),
    Told("does-not-close", assembly(part("L", COLUMN), part("T", LOPSIDED, on="L")),
         ("in part {part}: {change}",)),
    Told("unlike-back", design(RING, colour_pattern={"A": ["a", "a", "b"]}),
         ("use the same balloons for each front chain and the back chain behind it",)),
    Told("does-not-hold-itself", design({"wall": SHEET}),
         ("make the wall of two layers: {right}", POLE)),
    Told("does-not-hold-itself", design(tube("straight", "fan", repeat=6, chains=2)),
         ("build it of four chains: {right}", POLE)),
    Told("does-not-hold-itself", design(letters("F", 13)), (POLE, "hang it: {right}")),
    Told("does-not-stand", design(RING, stand_on=["A1"]), (
        "take {key} out: it finds its foot",
        "tie it to a base {width} {units} wide and {depth} {units} deep that weighs {weight}",
        "tie it to a wall",
    )),
    Told("does-not-stand", design(tube(*["straight"] * 5, "dip", *["straight"] * 5, closed=False)),
         ("set it on both of its ends: {right}",)),
    Told("folds", assembly(part("L", THREE), part("B", wall(3), on="L")),
         ("build what carries it, {parts}, four balloons around: {right}",)),
    Told("does-not-fit", assembly(part("W", wall(2, up=2)), part("L", COLUMN, left_of="W")),
         ("take out {places} and tie a balloon between the joints: {right}",)),
    Told("does-not-fit", assembly(part("L", COLUMN), part("G", PIECES["globe"], on="L")),
         ("build {part} of other rings, on which {other} stands: {right}",)),
    Told("does-not-stand", assembly(part("L", COLUMN), part("R", {"column": {
        **COLUMN["column"], "rings": 5}}), part("B", wall(7), on=["L", "R"])),
        ("build {parts} of one height: {right}",)),
    Told("does-not-fit", TWO_SIZES, ("{one}, and {other}",)),
    Told("off-the-floor", assembly(part("L", HIGHER), part("M", LOWER), part("R", HIGHER),
         part("B", wall(6), on=["L", "M"]), part("D", wall(6), on=["M", "R"])),
         ("build {parts} of one height: {right}",)),
    Told("loose-part", assembly(*ON_BEAM), ("set {part} on another part: {right}",)),
    Told("reads-backwards", assembly(*ON_BEAM, ties=BEHIND), ("swap {swaps} in the ties",)),
    Told("reads-backwards", assembly(ON_BEAM[0], {**ON_BEAM[1], "on": "B", "mirrored": True}),
         ("take {key} out of part {part}",)),
    Told("ties-cannot-meet", assembly(*ON_BEAM, ties=IN_A_ROUND), ("tie {joints}",)),
    Told("ties-cannot-meet", assembly(*ON_BEAM, ties=SHORT_OF_JOINTS),
         ("give part {part} its place in place of its ties: {right}",)),
    Told("reaches-past", assembly(part("B", wall(7)), part("S", letters("LL", 7), on="B")),
         (WIDER, "make the letters {cells} cells high")),
    Told("off-the-middle", assembly(part("B", wall(4)), part("T", wall(1, up=3), on="B")),
         (WIDER,)),
]  # fmt: skip
BY_WHAT_STIFFENS = (
    "tie one more balloon ({balloon}) between {one} and {other}",
    "tie one more balloon ({balloon}) between each of {joints}",
)
