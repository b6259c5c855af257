"""What stands about the blocks of a page: running head, progress, foot. All of it is decoration
for who has the page read out, but a title that stands in the head."""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.document.blanks import Blank
from buildplan.document.canvas import PageCanvas
from buildplan.document.paper import Paper
from buildplan.document.text import HEADING, INK, QUIET, RULE, SMALL, fitted, fitting_size
from buildplan.drawing.fonts import BOLD, REGULAR, text_width

HEAD_BASELINE = 40.0
PROGRESS_WIDTH, PROGRESS_HEIGHT = 120.0, 5.0
FOOT_BASELINE, FOOT_LINE = 32.0, 13.0
GAP = 10.0


@dataclass(frozen=True)
class Furniture:
    """The words of a document's foot, the line below it where one is left free, and the stamp, if
    it has one, that stands at the head of every page."""

    foot: str = ""
    below: Blank | None = None
    stamp: str = ""

    def title_in_head(self, canvas: PageCanvas, paper: Paper, words: str) -> None:
        """A page's title in its head."""
        with canvas.element("H1"), canvas.content():
            size = fitting_size(words, paper.measure, HEADING.fontSize, bold=True)
            _line(canvas, paper, words, BOLD, size, INK)

    def running_head(self, canvas: PageCanvas, paper: Paper, words: str) -> None:
        """What the page belongs to, and below it a line across."""
        room = paper.measure - (PROGRESS_WIDTH + 2 * GAP if canvas.progress else 0.0)
        with canvas.artifact():
            words, size = fitted(words, room, SMALL.fontSize)
            _line(canvas, paper, words, REGULAR, size, QUIET)

    def rule(self, canvas: PageCanvas, paper: Paper) -> None:
        """The line below the head."""
        with canvas.artifact():
            canvas.setStrokeColor(RULE)
            canvas.setLineWidth(0.5)
            low = _head_line(paper) - 8
            canvas.line(paper.left, low, paper.right, low)

    def progress(self, canvas: PageCanvas, paper: Paper) -> None:
        """How far the work has come on the page."""
        if canvas.progress is None:
            return
        done, of = canvas.progress
        words = canvas.voice.say("step {number}/{total}", number=done, total=of)
        baseline = _head_line(paper)
        left = paper.right - PROGRESS_WIDTH - text_width(words, SMALL.fontSize) - GAP
        with canvas.artifact():
            canvas.setFillColor(QUIET)
            canvas.setFont(REGULAR, SMALL.fontSize)
            canvas.drawRightString(paper.right, baseline, words)
            for width, colour in ((PROGRESS_WIDTH, "#DCDAD3"), (PROGRESS_WIDTH * done / of, INK)):
                canvas.setFillColor(colour)
                canvas.rect(left, baseline, width, PROGRESS_HEIGHT, stroke=0, fill=1)

    def page_foot(self, canvas: PageCanvas, paper: Paper, number: int) -> None:
        """The foot's words, and the page's number."""
        words, line = f"{number}/{canvas.pages.total}", FOOT_BASELINE - paper.outwards
        size = SMALL.fontSize
        with canvas.artifact():
            canvas.setFillColor(QUIET)
            canvas.setFont(REGULAR, size)
            canvas.drawRightString(paper.right, line, words)
            room = paper.measure - text_width(words, size) - GAP
            foot, size = fitted(self.foot, room, size)
            canvas.setFont(REGULAR, size)
            canvas.drawString(paper.left, line, foot)
            if self.below is not None:
                self.below.draw(canvas, paper.left, line - FOOT_LINE, paper.measure)

    def stamped(self, canvas: PageCanvas, paper: Paper) -> None:
        """The stamp, above the head on white, whatever ground a cover has there."""
        if not self.stamp:
            return
        size, low = HEADING.fontSize, _head_line(paper) + 16
        wide = text_width(self.stamp, size, bold=True) + GAP
        with canvas.artifact():
            canvas.setFillColor("#FFFFFF")
            canvas.rect(paper.right - wide, low - 4, wide, size + 6, stroke=0, fill=1)
            canvas.setFillColor(INK)
            canvas.setFont(BOLD, size)
            canvas.drawRightString(paper.right - GAP / 2, low, self.stamp)


def _head_line(paper: Paper) -> float:
    """Where the words in a page's head stand."""
    return paper.height - HEAD_BASELINE + paper.outwards


def _line(
    canvas: PageCanvas, paper: Paper, words: str, font: str, size: float, colour: str
) -> None:
    canvas.setFillColor(colour)
    canvas.setFont(font, size)
    canvas.drawString(paper.left, _head_line(paper), words)
