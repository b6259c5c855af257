"""Printing a document: sections of blocks set on pages by platypus, with head, foot and tags.

A document is set again until every page number that it says is true; only the last setting draws
pictures.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, replace
from itertools import pairwise, takewhile

from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    Frame,
    NextPageTemplate,
    PageBreak,
    PageTemplate,
)

from buildplan.document.blanks import Blank
from buildplan.document.blocks import Stack, title
from buildplan.document.canvas import PageCanvas, Pages
from buildplan.document.furniture import Furniture
from buildplan.document.growing import shares
from buildplan.document.links import Anchor
from buildplan.document.paper import Paper
from buildplan.document.tagged import finish
from buildplan.drawing.fonts import register_fonts
from buildplan.language.voice import Voice

MOST_SETTINGS = 6
ENOUGH = 0.16  # share of a page that is enough to begin a section on
LITTLE = 0.2  # share of a page that is too little for the last one of a section


@dataclass(frozen=True)
class Section:
    """A part of a document: its title (for bookmarks and contents) and what it is made of.

    It begins a page; one that `runs_on` goes on where the one before it ends, under its title,
    unless little of the page is left. `running` is what the heads of its pages say, when that is
    not the title. One that is `headed` has its title in the head of its first page; a `titled` one
    has it above its blocks, and there the head says nothing. One that is not `listed` goes under
    the one before it among the bookmarks. One that is `bare` has neither head nor foot; the blocks
    of one that is `whole_sheet` have the sheet to its edges. `paper` is its own, when it is not the
    document's.
    """

    title: str
    blocks: Sequence[Flowable]
    running: str = ""
    listed: bool = True
    headed: bool = False
    titled: bool = False
    bare: bool = False
    whole_sheet: bool = False
    runs_on: bool = False
    paper: Paper | None = None

    @property
    def place(self) -> str:
        """Its beginning, as a place for links to lead to."""
        return f"section {self.title}"


@dataclass(frozen=True)
class Document:
    """What is printed, on which paper, in whose voice; `below` the foot a line may be left free,
    and a `stamp` stands at the head of every page."""

    sections: Sequence[Section]
    paper: Paper
    voice: Voice
    title: str
    author: str = "buildplan"
    foot: str = ""
    below: Blank | None = None
    stamp: str = ""


def print_document(document: Document) -> bytes:
    """The document as a tagged PDF. The same document gives the same bytes."""
    register_fonts()
    first = _Setting(document, Pages(), draft=True).set()
    given, pages = first.given(), first.pages
    if given:  # what comes after moves
        first = _Setting(document, pages, given, draft=True).set()
        pages = first.pages
    pages = _grown(document, first, given)
    for _ in range(MOST_SETTINGS):
        done = _Setting(document, pages, given, draft=False).set()
        if done.pages == pages:
            break
        pages = done.pages
    data = done.canvas.target.getvalue()
    return finish(data, done.canvas, title=document.title, language=document.voice.tag)


def _grown(document: Document, first: _Setting, given: Mapping[int, float]) -> Pages:
    """What a setting found, with what can grow grown into the room that its pages have left, as far
    as everything stays on its page."""
    pages, free = first.pages, {page: more for page, more in first.free.items() if more}
    for _ in range(MOST_SETTINGS):
        if not free:
            break
        grown = {name: more for some in free.values() for name, more in some.items()}
        trial = replace(pages, grown=grown)
        found = _Setting(document, trial, given, draft=True).set().pages
        moved = [page for name, page in pages.page_of.items() if found.of(name) != page]
        if not moved and found.total == pages.total:
            return trial
        at = min(moved, default=pages.total)  # what stood there no longer fits
        if at < min(free):  # nothing has grown before it: the numbers of pages are narrower now
            again = _Setting(document, replace(found, grown={}), given, draft=True).set()
            pages, free = again.pages, {page: more for page, more in again.free.items() if more}
            continue
        del free[max((page for page in free if page <= at), default=min(free))]
    return pages


class _Beginning(Anchor):
    """Where a section begins within a page; from the next page on its head is that of the
    pages."""

    def __init__(self, section: Section) -> None:
        super().__init__(section.place, section.title, level=0 if section.listed else 1)
        self._running = section.running or section.title
        self._titled = section.titled

    def draw(self) -> None:
        super().draw()
        self.canv.running_next, self.canv.progress_next = self._running, None
        if self.canv.at_top():  # its title stands there already
            self.canv.running = "" if self._titled else self._running
            self.canv.progress = None


class _Setting(BaseDocTemplate):  # type: ignore[misc]
    """One setting of a document: a page template for each section.

    `given` is how much of a page's room (by its number) is left free, so that the page after it
    has more than a few lines.
    """

    def __init__(
        self,
        document: Document,
        pages: Pages,
        given: Mapping[int, float] | None = None,
        *,
        draft: bool,
    ) -> None:
        self._document, self._given = document, given or {}
        papers = [section.paper or document.paper for section in document.sections]
        self.canvas = PageCanvas(papers[0].sheet, document.voice, pages, draft=draft)
        self._used: list[tuple[int, float, float]] = []  # section, used and whole height
        self.free: dict[int, Mapping[str, float]] = {}  # what can grow, by page, and by how much
        self._furniture = Furniture(document.foot, document.below, document.stamp)
        self._open = ExitStack()
        templates = [
            PageTemplate(
                str(number),
                [_frame(section, paper)],
                onPage=self._begin,
                onPageEnd=self._end,
                pagesize=paper.sheet,
            )
            for number, (section, paper) in enumerate(zip(document.sections, papers, strict=True))
        ]
        super().__init__(
            self.canvas.target,
            pageTemplates=templates,
            pagesize=papers[0].sheet,
            title=document.title,
            author=document.author,
            creator="buildplan",
        )
        self._doSave = 0 if draft else 1

    def set(self) -> _Setting:
        """Set every section, each from a new page on."""
        story: list[Flowable] = []
        for number, section in enumerate(self._document.sections):
            if section.runs_on:
                before = self._document.sections[number - 1]
                paper = before.paper or self._document.paper
                least = ENOUGH * (paper.top - paper.bottom)
                story += [CondPageBreak(least), _Beginning(section)]
            elif number:
                story += [NextPageTemplate(str(number)), PageBreak()]
            story += [title(section.title)] if section.titled else []
            story += section.blocks
        marks: list[tuple[Callable[..., None], object, str]] = []
        self._multiBuildEdits = marks.append
        self.build(story, canvasmaker=lambda *_, **__: self.canvas)
        for undo, block, mark in marks:  # what platypus notes on a block that is set again
            undo(block, mark)
        return self

    def handle_keepWithNext(self, flowables: list[Flowable]) -> None:  # noqa: N802 (reportlab's)
        """Put what is kept with the next together with it."""
        held = list(takewhile(lambda block: bool(block.getKeepWithNext()), flowables))
        if held:
            flowables[: len(held) + 1] = [Stack(flowables[: len(held) + 1])]

    @property
    def pages(self) -> Pages:
        """What this setting found."""
        found = {name: place.page + 1 for name, place in self.canvas.places.items()}
        return Pages(found, len(self._used), self.canvas.pages.grown)

    def given(self) -> dict[int, float]:
        """The room that pages give up, by number, for sections whose last page has next to
        nothing on it."""
        found = {}
        for number, (before, last) in enumerate(pairwise(self._used), start=1):
            ends = number + 1 == len(self._used) or self._used[number + 1][0] != last[0]
            if before[0] == last[0] and ends and last[1] < LITTLE * last[2]:
                found[number] = LITTLE * last[2] - last[1]
        return found

    def _now(self) -> tuple[int, Section, Paper]:
        number = int(self.pageTemplate.id)
        section = self._document.sections[number]
        return number, section, section.paper or self._document.paper

    def _begin(self, canvas: PageCanvas, _: BaseDocTemplate) -> None:
        number, section, paper = self._now()
        page = len(self._used) + 1
        first = not self._used or self._used[-1][0] != number
        frame = _frame(section, paper, self._given.get(page, 0.0))
        self.pageTemplate.frames = [frame]
        canvas.room, canvas.enlarged = frame._aH, paper.scale
        canvas.top = frame._y2 * paper.scale
        if first:  # on later pages the work that came last may go on
            canvas.running_next, canvas.progress_next = section.running or section.title, None
        canvas.progress = canvas.progress_next
        canvas.running = "" if first and section.titled else canvas.running_next
        canvas.scale(paper.scale, paper.scale)
        canvas.place(page_name(page), paper.height)
        if first:
            self._name(canvas, section, page, paper)
        self._open.enter_context(canvas.element("Sect"))
        if section.headed and first:
            self._furniture.title_in_head(canvas, paper, section.running or section.title)

    def _name(self, canvas: PageCanvas, section: Section, page: int, paper: Paper) -> None:
        """Bookmark a section."""
        if section.place not in canvas.places:
            canvas.place(section.place, paper.height)
        canvas.bookmarkPage(page_name(page))
        canvas.addOutlineEntry(section.title, page_name(page), level=0 if section.listed else 1)

    def _end(self, canvas: PageCanvas, _: BaseDocTemplate) -> None:
        number, section, paper = self._now()
        first = not self._used or self._used[-1][0] != number
        if not section.bare:
            if canvas.running and not (section.headed and first):
                self._furniture.running_head(canvas, paper, canvas.running)
            self._furniture.rule(canvas, paper)
            self._furniture.progress(canvas, paper)
            self._furniture.page_foot(canvas, paper, len(self._used) + 1)
        self._furniture.stamped(canvas, paper)
        self._open.close()
        used = self.frame._y2 - self.frame._y
        self._used.append((number, used, self.frame._aH))
        self.free[len(self._used)] = shares(canvas.growing, self.frame._aH - used)
        canvas.growing = []


def page_name(number: int) -> str:
    """The name of a page, counted from 1, as a place for links to lead to."""
    return f"page {number}"


def _frame(section: Section, paper: Paper, given: float = 0.0) -> Frame:
    """The room for a section's blocks, less what is given up at its foot."""
    box = (paper.left, paper.bottom + given, paper.measure, paper.top - paper.bottom - given)
    if section.whole_sheet:
        box = (0.0, 0.0, paper.width, paper.height)
    return Frame(*box, leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0)
