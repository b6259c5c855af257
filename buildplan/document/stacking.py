"""Flowables one below another: how high they are, how they are drawn, where a page parts them.

Between two of them is the larger of the space after the one and before the other, as in
platypus's own frames.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reportlab.platypus import Flowable

from buildplan.document.tagged import TaggedCanvas

Blocks = Sequence[Flowable]
NEARLY = 0.01
FEWEST_LEFT = 2  # entries of a list


def _spaced(blocks: Blocks) -> Iterator[tuple[Flowable, float]]:
    """Each block with the space above it."""
    before: Flowable | None = None
    for block in blocks:
        gap = 0.0
        if before is not None:
            gap = max(float(before.getSpaceAfter()), float(block.getSpaceBefore()))
        yield block, gap
        before = block


def stack_height(blocks: Blocks, width: float, room: float, canvas: TaggedCanvas) -> float:
    """Height of blocks one below another, `width` points wide; they may have `room`."""
    height = 0.0
    for block, gap in _spaced(blocks):
        _, tall = block.wrapOn(canvas, width, max(room - height - gap, 0.0))
        height += gap + float(tall)
    return height


def draw_stack(
    blocks: Blocks, canvas: TaggedCanvas, x: float, top: float, width: float, room: float
) -> float:
    """Draw blocks one below another with their upper left corner at (x, top); returns the y
    below them."""
    low = top - room
    for block, gap in _spaced(blocks):
        top -= gap
        _, tall = block.wrapOn(canvas, width, max(top - low, 0.0))
        top -= float(tall)
        block.drawOn(canvas, x, top)
    return top


def split_stack(
    blocks: Blocks, width: float, room: float, canvas: TaggedCanvas
) -> tuple[list[Flowable], list[Flowable]]:
    """The blocks that fit into `room`, and the rest. What is kept with the next goes with it."""
    fits: list[Flowable] = []
    rest = list(blocks)
    left = room
    for number, (block, gap) in enumerate(_spaced(blocks)):
        _, tall = block.wrapOn(canvas, width, max(left - gap, 0.0))
        if gap + tall <= left + NEARLY:
            fits.append(block)
            left -= gap + tall
            rest = list(blocks[number + 1 :])
            continue
        titled = bool(fits) and all(one.getKeepWithNext() for one in fits)
        parts = _parts(block, width, left - gap, room - left + gap if titled else 0.0, canvas)
        if parts:
            fits.append(parts[0])
            rest = [*parts[1:], *blocks[number + 1 :]]
        break
    while rest and fits and fits[-1].getKeepWithNext():
        rest.insert(0, fits.pop())
    return fits, rest


def _parts(
    block: Flowable, width: float, room: float, above: float, canvas: TaggedCanvas
) -> Sequence[Flowable]:
    """What a block is parted into. Titles `above` it, in points, come along to any page, which has
    that much less room for it."""
    if room <= 0:
        return ()
    before = canvas.titles
    canvas.titles = before + above
    try:
        return list(block.splitOn(canvas, width, room))
    finally:
        canvas.titles = before


def keep_company(fits: list[Flowable], rest: list[Flowable], blocks: Blocks) -> None:
    """Leave the last entry of a list that is parted into `fits` and `rest` not alone on its page:
    one more goes with it, or all of a list that has too few for that."""
    if rest == list(blocks[-1:]):
        going = 1 if len(fits) > FEWEST_LEFT else len(fits)
        rest[:0] = fits[len(fits) - going :]
        del fits[len(fits) - going :]
