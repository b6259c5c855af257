"""Places of a tube that can be named without looking up joints: its ends and its cells."""

from __future__ import annotations

import re
from collections.abc import Iterable

from buildplan.framework.chain_roles import OUTER
from buildplan.framework.model import Framework

START, FINISH, BOTH = "start", "finish", "ends"
ENDS = (START, FINISH, BOTH)
CELL = "cell "
CELL_PLACE = r"cell ([1-9][0-9]{0,5})"


def cell_place(number: int) -> str:
    """What a cell, from 1, is called as a place."""
    return f"{CELL}{number}"


def joints_named(framework: Framework, names: Iterable[str]) -> tuple[str, ...]:
    """The joints that names stand for: a joint itself, `start`, `finish` or `ends` of an open tube,
    or `cell 12`, which is what that cell has on the outside. A name of nothing is left as it is."""
    found: list[str] = []
    for name in names:
        cell = re.fullmatch(CELL_PLACE, name)
        if name in framework.place_number or not framework.braces:
            found.append(name)
        elif name in ENDS:
            first, last = framework.braces[0].section, framework.braces[-1].section
            found += {START: first, FINISH: last, BOTH: (*first, *last)}[name]
        elif cell and int(cell[1]) <= len(framework.cells):
            found += _outside(framework, int(cell[1]))
        else:
            found.append(name)
    return tuple(dict.fromkeys(found))


def _outside(framework: Framework, number: int) -> list[str]:
    """The joints of a cell's two braces that lie on the outer chains, and what it skips there."""
    outer = {
        joint for long in framework.chains if long.role == OUTER for joint in long.chain.joints
    }
    cell = framework.cells[number - 1]
    sections = (framework.brace[cell.first].section, framework.brace[cell.second].section)
    joints = [joint for section in sections for joint in section] + list(cell.skipped)
    return [joint for joint in joints if joint in outer]
