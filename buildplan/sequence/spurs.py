"""Singles of a cell, and spurs: cells whose chains run out and back again, as a ladder's rails.

What is tied between two joints that a cell skips is tied while they are open: with the brace that
finishes the cell or, of a spur, as work of its own after that brace.
"""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.framework.model import Cell, Framework


def singles_in_cells(framework: Framework) -> Mapping[str, Cell]:
    """The cell of each single that goes from one joint that it skips to another, by link."""
    cell_of = {joint: cell for cell in framework.cells for joint in cell.skipped}
    found = {}
    for name in framework.singles:
        link = framework.link[name]
        one, other = cell_of.get(link.start), cell_of.get(link.finish)
        if one is not None and one is other:
            found[name] = one
    return found
