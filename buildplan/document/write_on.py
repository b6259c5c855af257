"""What a page leaves free to be written on: lines, and a box."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.document.text import BODY, INK, RULE


class WriteLines(Flowable):  # type: ignore[misc]
    """Lines to write on, down to the foot of the page, `most` at most and `least` at least."""

    def __init__(self, most: int = 40, least: int = 3, pitch: float = 24.0) -> None:
        super().__init__()
        self._most, self._least, self._pitch = most, least, pitch

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        count = max(min(int(room / self._pitch), self._most), self._least)
        self.width, self.height = width, count * self._pitch
        return width, self.height

    def draw(self) -> None:
        with self.canv.artifact():
            self.canv.setStrokeColor(RULE)
            self.canv.setLineWidth(0.5)
            for number in range(round(self.height / self._pitch)):
                self.canv.line(0, number * self._pitch, self.width, number * self._pitch)


class WriteBox(Flowable):  # type: ignore[misc]
    """A box to colour in, and a line to write on beside it."""

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self.height = width, 2 * BODY.leading
        return width, self.height

    def draw(self) -> None:
        side = self.height - 6
        with self.canv.artifact():
            self.canv.setStrokeColor(INK)
            self.canv.setLineWidth(0.9)
            self.canv.rect(0, 3, 1.4 * side, side, stroke=1, fill=0)
            self.canv.line(1.4 * side + 8, 4, self.width - 4, 4)
