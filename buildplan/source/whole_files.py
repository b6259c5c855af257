"""Writing files whole or not at all: the one way in which anything is written to a disk.

A file is written beside its place under a name of its own, brought to the disk, and takes its place
in one act of the system (POSIX.1-2017, rename: the name is there throughout, for the old file or
the new one). While it is written it is locked; what a process left behind that was killed is locked
by nobody, and goes before the next file is written into that folder.
"""

from __future__ import annotations

import errno
import os
import secrets
import stat
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import cache
from pathlib import Path

from buildplan.language.messages import Message, mark, message

if sys.platform != "win32":
    import fcntl

PREFIX, SUFFIX = ".buildplan-", ".part"
# where files are not locked, one that is written this long is written by nobody any more
ABANDONED_S = 3600.0

WHY = {
    errno.ENOSPC: mark("the disk is full"),
    errno.EDQUOT: mark("the disk is full"),
    errno.EFBIG: mark("it is larger than a file may be here"),
    errno.EACCES: mark("you may not write there"),
    errno.EPERM: mark("you may not write there"),
    errno.EROFS: mark("this disk can only be read"),
    errno.ENOENT: mark("its folder is not there any more"),
    errno.ENOTDIR: mark("a part of its path is a file, not a folder"),
    errno.EEXIST: mark("a part of its path is a file, not a folder"),
    errno.EISDIR: mark("this is a folder"),
    errno.ELOOP: mark("it is a link that leads back to itself"),
    errno.ENAMETOOLONG: mark("its name is too long"),
}


class NotWrittenError(OSError):
    """A file that cannot be written, by the name that its user knows; `told` says why. What stood
    there before stands."""

    def __init__(self, path: Path, error: OSError) -> None:
        super().__init__(error.errno, error.strerror or str(error), str(path))
        self.told = why_not(error)


def why_not(error: OSError) -> Message:
    """Why the system did not write."""
    known = WHY.get(error.errno or 0)
    if known is not None:
        return message(known)
    return message("the system says: {why}", why=error.strerror or str(error))


def write_whole(path: Path, data: bytes) -> None:
    """Write a file whole or not at all; its folder is made if it is not there.

    What stood there before stands until all that is new is on the disk: neither a stop nor a loss
    of power leaves half a file. A link is followed; what is no file, such as a pipe, is written to
    as it is. Raises NotWrittenError.
    """
    _written(path, data, _put)


def write_new(path: Path, data: bytes) -> None:
    """As `write_whole`, where no file stands yet. Raises FileExistsError where one does."""
    _written(path, data, _put_new)


def also_at(source: Path, target: Path) -> None:
    """A file under another name as well, where no file stands yet: what is to be moved has one name
    or both, and takes no other's place. Where a disk has no such names it is moved. Raises
    FileExistsError where one stands there, and NotWrittenError."""
    _written(target, b"", lambda path, _: _link(source, path))


@contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """One process at a time: what is read there, changed and written again loses nothing. Nobody
    waits where folders are not locked, or where there is none."""
    if sys.platform == "win32":
        yield
        return
    handle = None
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        fcntl.flock(handle, fcntl.LOCK_EX)
    try:
        yield
    finally:
        if handle is not None:
            os.close(handle)


def may_write(folder: Path) -> bool:
    """Whether files can be written into a folder, tried by one."""
    try:
        handle, part = _begun(folder, 0o600)
    except OSError:
        return False
    os.close(handle)
    part.unlink(missing_ok=True)
    return True


def _written(path: Path, data: bytes, put: Callable[[Path, bytes], None]) -> None:
    try:
        put(path, data)
    except FileExistsError:
        if os.path.lexists(path):
            raise
        raise NotWrittenError(path, NotADirectoryError(errno.ENOTDIR, "")) from None
    except OSError as error:
        raise NotWrittenError(path, error) from error


def _put(path: Path, data: bytes) -> None:
    mode = None
    with suppress(FileNotFoundError):
        mode = path.stat().st_mode
    if mode is not None and stat.S_ISDIR(mode):
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    if mode is not None and not stat.S_ISREG(mode):
        path.write_bytes(data)
        return
    target = Path(os.path.realpath(path))
    if target.exists() and not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    _placed(target, data, mode, os.replace)


def _put_new(path: Path, data: bytes) -> None:
    if os.path.lexists(path):
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(path))
    _placed(path, data, None, _link)


def _link(part: Path, path: Path) -> None:
    """Give a file its place unless another has it."""
    try:
        os.link(part, path)
    except (FileExistsError, FileNotFoundError):
        raise
    except OSError:  # a disk without hard links
        path.touch(exist_ok=False)
        os.replace(part, path)


def _placed(
    target: Path, data: bytes, mode: int | None, place: Callable[[Path, Path], None]
) -> None:
    """Write the data beside its place and put it there."""
    folder = target.parent
    folder.mkdir(parents=True, exist_ok=True)
    _clear(folder)
    handle, part = _begun(folder, 0o666 if mode is None else 0o600)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
            if mode is not None:
                part.chmod(stat.S_IMODE(mode))
            if sys.platform != "win32":  # there, only what is closed is moved
                place(part, target)
        if sys.platform == "win32":
            place(part, target)
    finally:
        with suppress(OSError):
            part.unlink(missing_ok=True)
    _settle(folder)


def _begun(folder: Path, mode: int) -> tuple[int, Path]:
    """A new file in the folder, locked for as long as it is open."""
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    while True:
        part = folder / f"{PREFIX}{secrets.token_hex(8)}{SUFFIX}"
        handle = os.open(part, flags, mode)
        if _locked(handle) is not False and os.fstat(handle).st_nlink:
            return handle, part
        os.close(handle)  # whoever clears the folder was quicker


@cache
def _clear(folder: Path) -> None:
    """Take away what was left half written in a folder, once for each folder."""
    for name in os.listdir(folder) if os.access(folder, os.R_OK) else ():
        part = folder / name
        if not (name.startswith(PREFIX) and name.endswith(SUFFIX)):
            continue
        with suppress(OSError):
            handle = os.open(part, os.O_WRONLY)
            try:
                locked = _locked(handle)
                waited = time.time() - os.fstat(handle).st_mtime > ABANDONED_S
                if (waited if locked is None else locked) and sys.platform != "win32":
                    part.unlink()
            finally:
                os.close(handle)
            if sys.platform == "win32" and waited:
                part.unlink()


def _locked(handle: int) -> bool | None:
    """Whether an open file is now locked by us, and not by another; None where none is locked."""
    if sys.platform == "win32":
        return None
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return None
    return True


def _settle(folder: Path) -> None:
    """Bring the folder itself to the disk, where the system can."""
    if sys.platform != "win32":
        with suppress(OSError):
            handle = os.open(folder, os.O_RDONLY)
            try:
                os.fsync(handle)
            finally:
                os.close(handle)
