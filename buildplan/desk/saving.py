"""Changing the designs of the folder: every change is a version, and none writes over another.

Each of these is called with the version that the change was made from. Where the file has become
another meanwhile (another tab, an editor, another desk), nothing is written over: the change is
kept beside, and both are told of.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from buildplan.desk.folder import SUFFIX, Folder, version_of
from buildplan.desk.history import History, add, caught_up, history_of, settle
from buildplan.desk.refusals import RefusedError, no_such_design, not_written
from buildplan.desk.titles import is_a_part, stem_of, titled
from buildplan.language.messages import message
from buildplan.source.file_text import MOST_BYTES
from buildplan.source.whole_files import alone_in, also_at, write_new, write_whole


@dataclass(frozen=True)
class Saved:
    """A design as it is now."""

    name: str
    data: bytes
    history: History

    @property
    def version(self) -> str:
        """What the next change says that it was made from."""
        return version_of(self.data)

    @property
    def text(self) -> str:
        """What its file says; what is no UTF-8 is shown as signs that stand for it."""
        return self.data.decode("utf-8-sig", errors="replace")


def design_now(folder: Folder, name: str) -> Saved:
    """A design as its file is. Raises RefusedError where there is none."""
    data = folder.read(name)
    return Saved(name, data, history_of(folder.history / name, data))


def save(folder: Folder, name: str, base: str, text: str) -> Saved:
    """The design with another text. Raises RefusedError where it has another version than `base`
    (then the text is kept beside), is too large, or cannot be written."""
    data = text.encode()
    if len(data) > MOST_BYTES:
        raise RefusedError(
            413,
            message(
                "a design has {size} KiB at most: nothing was changed; use repeat for long courses",
                size=MOST_BYTES // 1024,
            ),
        )
    with writing(), alone_in(folder.root):
        now = _at_base(folder, name, base, data)
        if data == now:
            return design_now(folder, name)
        found = add(folder.history / name, now, data)
        write_whole(folder.file(name), data)
        return Saved(name, data, settle(found, found.last))


def undo(folder: Folder, name: str, base: str) -> Saved:
    """The design as it was one version before."""
    return _stepped(folder, name, base, -1)


def redo(folder: Folder, name: str, base: str) -> Saved:
    """The design as it was before the last undo."""
    return _stepped(folder, name, base, 1)


def _stepped(folder: Folder, name: str, base: str, by: int) -> Saved:
    with writing(), alone_in(folder.root):
        now = _at_base(folder, name, base, None)
        found = caught_up(folder.history / name, now)
        position = found.position + by
        if not 1 <= position <= found.last:
            raise RefusedError(
                409,
                message("there is nothing to take back")
                if by < 0
                else message("there is nothing to bring back"),
                {"version": base},
            )
        data = found.at(position)
        write_whole(folder.file(name), data)
        return Saved(name, data, settle(found, position))


def _at_base(folder: Folder, name: str, base: str, other: bytes | None) -> bytes:
    """The bytes of a design of which the version is known. Raises RefusedError where it is
    another; `other` is then kept beside."""
    now = folder.read(name)
    if version_of(now) == base:
        return now
    kept = ""
    if other is not None and other != now:
        path = folder.both / f"{name}-{version_of(other)[:12]}{SUFFIX}"
        write_whole(path, other)
        kept = str(path.relative_to(folder.kept.parent))
    raise RefusedError(
        409,
        message(
            "{name} was changed elsewhere meanwhile: nothing was written over, and both versions "
            "are kept",
            name=name,
        ),
        {"version": version_of(now), "text": now.decode("utf-8-sig", "replace"), "kept": kept},
    )


@contextmanager
def writing() -> Iterator[None]:
    """What cannot be written is told as that."""
    try:
        yield
    except OSError as error:
        raise not_written(error) from error


def begin(folder: Folder, name: str, data: bytes) -> str:
    """A new design, under a name that is free; the name."""
    with writing():
        return _placed(folder, name, lambda path: write_new(path, data))


def copy(folder: Folder, name: str, title: str) -> str:
    """The same design once more, under another title; the name of its file."""
    data = folder.read(name)
    if not title:
        return begin(folder, name, data)
    return begin(folder, stem_of(title), titled(data, title))


def rename(folder: Folder, name: str, title: str) -> str:
    """The design under another title, its history with it; the name of its file, which stays as
    it is where another design has that file as a part."""
    now = folder.read(name)
    named = titled(now, title)
    if named != now:
        save(folder, name, version_of(now), named.decode())
    wanted = stem_of(title)
    if wanted == name or is_a_part(folder, name):
        return name
    with writing(), alone_in(folder.root):
        source = _there(folder.file(name), name)
        free = _placed(folder, wanted, lambda path: also_at(source, path))
        return _moved(folder, source, name, free)


def put_away(folder: Folder, name: str) -> str:
    """The design out of sight, and nothing of it deleted; the name it has there."""
    with writing(), alone_in(folder.root):
        source = _there(folder.file(name), name)
        folder.away.mkdir(parents=True, exist_ok=True)
        taken, number = name, 1
        while folder.away_file(taken).exists():
            number += 1
            taken = f"{name}_{number}"
        also_at(source, folder.away_file(taken))
        return _moved(folder, source, name, taken)


def bring_back(folder: Folder, name: str) -> str:
    """A design that was put away, back on the desk; the name it has here."""
    with writing(), alone_in(folder.root):
        source = _there(folder.away_file(name), name)
        try:
            also_at(source, folder.file(name))
        except FileExistsError:
            back = _placed(folder, name, lambda path: also_at(source, path))
        else:
            back = name
        return _moved(folder, source, name, back)


def _there(path: Path, name: str) -> Path:
    """The file of a design. Raises RefusedError where there is none."""
    if not path.is_file():
        raise no_such_design(name)
    return path


def _moved(folder: Folder, source: Path, name: str, wanted: str) -> str:
    """A design that has its new name already, and its history with it: a stop between leaves it
    under both names, never under none."""
    _with_history(folder, name, wanted)
    source.unlink(missing_ok=True)
    return wanted


def _with_history(folder: Folder, name: str, wanted: str) -> None:
    """The versions of a design go with its name."""
    old, new = folder.history / name, folder.history / wanted
    if name == wanted or not old.is_dir():
        return
    if new.is_dir():  # of a design of that name that is no longer there
        number = 1
        while (spare := folder.history / f"{wanted} (before {number})").exists():
            number += 1
        new.rename(spare)
    old.rename(new)


def _placed(folder: Folder, name: str, put: Callable[[Path], None]) -> str:
    while True:
        free = folder.free_name(name)
        try:
            put(folder.file(free))
        except FileExistsError:  # another process was quicker
            continue
        return free
