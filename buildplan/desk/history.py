"""Every version of a design as a file, and which of them it is: undo and redo without end.

`history/NAME/000001.yaml` is the first, and `history/NAME/position` holds the number of the one
that the design is now. The file of the design itself decides: a change made elsewhere, or a stop
between two writes, is made good when the history is next asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from buildplan.source.whole_files import write_whole

POSITION = "position"


@dataclass(frozen=True)
class History:
    """The versions of one design, in `folder`. `position` is that of its file, from 1; there are
    versions up to `last`."""

    folder: Path
    position: int
    last: int

    @property
    def can_undo(self) -> bool:
        """Whether there is a version before."""
        return self.position > 1

    @property
    def can_redo(self) -> bool:
        """Whether there is a version that was taken back."""
        return self.position < self.last

    def at(self, position: int) -> bytes:
        """The bytes of a version."""
        return _entry(self.folder, position).read_bytes()


def history_of(folder: Path, now: bytes) -> History:
    """The history of a design whose file holds `now`, read and not changed."""
    last = _last(folder)
    position = min(_position(folder), last)
    for guess in (position, position + 1, position - 1):
        if 1 <= guess <= last and _holds(folder, guess, now):
            return History(folder, guess, last)
    # a version that the desk has not seen: it follows the one that was there
    return History(folder, position + 1, position + 1)


def caught_up(folder: Path, now: bytes) -> History:
    """As `history_of`, and written: with the version that the file has now, if it is new."""
    found = history_of(folder, now)
    if found.position > _last(folder) or not _holds(folder, found.position, now):
        _put(folder, found.position, now)
    _move(folder, found.position)
    return found


def add(folder: Path, before: bytes, after: bytes) -> History:
    """A version more: written before the file of the design is, so that a stop between the two
    loses neither. What had been taken back goes."""
    found = caught_up(folder, before)
    _put(folder, found.position + 1, after)
    return History(folder, found.position, found.position + 1)


def settle(found: History, position: int) -> History:
    """The design has become the version at `position`."""
    _move(found.folder, position)
    return History(found.folder, position, found.last)


def _put(folder: Path, position: int, data: bytes) -> None:
    """A version at the end; those after it go, the last first, once it is there: on a full disk
    none does."""
    write_whole(_entry(folder, position), data)
    for number in range(_last(folder), position, -1):
        _entry(folder, number).unlink(missing_ok=True)


def _move(folder: Path, position: int) -> None:
    if _position(folder) != position:
        write_whole(folder / POSITION, f"{position}\n".encode())


def _entry(folder: Path, position: int) -> Path:
    return folder / f"{position:06d}.yaml"


def _holds(folder: Path, position: int, data: bytes) -> bool:
    try:
        return _entry(folder, position).read_bytes() == data
    except OSError:
        return False


def _last(folder: Path) -> int:
    """The number of the last version; 0 where there is none."""
    if not folder.is_dir():
        return 0
    names = (path.stem for path in folder.iterdir() if path.suffix == ".yaml")
    return max((int(name) for name in names if name.isdecimal()), default=0)


def _position(folder: Path) -> int:
    try:
        return int((folder / POSITION).read_text("ascii"))
    except (OSError, ValueError):
        return _last(folder)
