"""A new design to be fitted to an outline, and where the outline is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

Report = Callable[[object], None]


@dataclass(frozen=True)
class FitWork:
    """A design of a folder to be begun: as high as `height` says, as close as it comes to a named
    outline, to a drawn one (SVG path data), or to a picture that was sent, a file that is the
    desk's own and goes when it has been read."""

    root: Path
    title: str
    height_m: float
    units: str
    language: str
    named: str = ""
    drawn: str = ""
    sent: Path | None = None

    def __call__(self, report: Report) -> None:
        """Fit it, in a process that has loaded what that needs."""
        from buildplan.desk.fit_working import begin_fitted

        begin_fitted(self, report)


@dataclass(frozen=True)
class BeginningsWork:
    """The pictures of what can be begun with, to be drawn into a folder."""

    folder: Path

    def __call__(self, report: Report) -> None:
        """Draw those that are not there."""
        from buildplan.desk.fit_working import draw_beginnings

        draw_beginnings(self, report)
