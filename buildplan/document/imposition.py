"""A booklet's pages two by two on sheets that are folded in the middle and stitched there.

Sheets lie across; fronts and backs alternate, to be printed on both sides and turned at the
short edge. The pages are drawn as form XObjects, which cannot keep the structure tree: the
print file is not tagged and says so, the screen file is.
"""

from __future__ import annotations

import io
from collections.abc import Sequence

import pikepdf
from pikepdf import Array, Dictionary, Name

from buildplan.language.messages import mark
from buildplan.language.voice import Voice

PAGES_ON_A_SHEET = 4
NOT_TAGGED = mark("print file for folding, not tagged: read the booklet's own file on screen")

Side = tuple[int | None, int | None]


def sides(pages: int) -> list[Side]:
    """The pages (from 1) left and right on each side of each sheet, front then back; None is
    a blank.

    N is the number of pages made up to a multiple of 4 by blanks before the last page, which
    is the back cover. Sheet k = 0, 1, ... has N - 2k and 1 + 2k on its front, 2 + 2k and
    N - 1 - 2k on its back (saddle stitch; from memory, checked by folding paper).
    """
    blanks = -pages % PAGES_ON_A_SHEET
    order: list[int | None] = [*range(1, pages), *([None] * blanks), pages]
    whole = len(order)

    def at(place: int) -> int | None:
        return order[place - 1]

    found: list[Side] = []
    for k in range(whole // PAGES_ON_A_SHEET):
        found.append((at(whole - 2 * k), at(1 + 2 * k)))
        found.append((at(2 + 2 * k), at(whole - 1 - 2 * k)))
    return found


def folded(data: bytes, sheet: tuple[float, float], voice: Voice) -> bytes:
    """The pages of a PDF laid out for folding, on the sheet (width, height) turned across.

    A page that lies across itself is turned to stand upright. The same input gives the same
    bytes.
    """
    across, up = max(sheet), min(sheet)
    with pikepdf.open(io.BytesIO(data)) as source, pikepdf.new() as target:
        title = str(source.docinfo.get("/Title", voice.say("booklet")))
        forms = [_form(target, page) for page in source.pages]
        for side in sides(len(forms)):
            target.add_blank_page(page_size=(across, up))
            page = target.pages[-1].obj
            named = {}
            drawn = []
            for half, number in enumerate(side):
                if number is not None:
                    name = f"/P{number}"
                    named[name] = forms[number - 1]
                    matrix = _placed(forms[number - 1], half, across / 2, up)
                    drawn.append(f"q {' '.join(f'{v:.5f}' for v in matrix)} cm {name} Do Q")
            page.Resources = Dictionary(XObject=Dictionary(named))
            page.Contents = target.make_stream("\n".join(drawn).encode("ascii"))
        target.Root.MarkInfo = Dictionary(Marked=False)
        target.Root.ViewerPreferences = Dictionary(
            DisplayDocTitle=True, Duplex=Name.DuplexFlipShortEdge, PrintScaling=Name("/None")
        )
        told = f"{title} ({voice.say(NOT_TAGGED)})"
        target.docinfo[Name.Title] = told
        with target.open_metadata(set_pikepdf_as_editor=False) as meta:
            meta["dc:title"] = told
            meta["dc:description"] = voice.say(NOT_TAGGED)
        out = io.BytesIO()
        target.save(out, min_version="1.7", deterministic_id=True)
    return out.getvalue()


def _form(target: pikepdf.Pdf, page: pikepdf.Page) -> pikepdf.Object:
    return target.copy_foreign(page.as_form_xobject())


def _placed(form: pikepdf.Object, half: int, width: float, height: float) -> Sequence[float]:
    """The matrix that fits a page into the left (0) or right (1) half of a side."""
    left, low, right, high = (float(v) for v in Array(form.BBox))
    wide, tall = right - left, high - low
    lies = wide > tall
    scale = min(width / (tall if lies else wide), height / (wide if lies else tall))
    if lies:
        # a quarter turn to the left: what was its left edge is below
        x = half * width + (width + tall * scale) / 2
        y = (height - wide * scale) / 2
        return (0, scale, -scale, 0, x + scale * low, y - scale * left)
    x = half * width + (width - wide * scale) / 2
    y = (height - tall * scale) / 2
    return (scale, 0, 0, scale, x - scale * left, y - scale * low)
