"""The bytes of a file that somebody names, looked at before they are taken in."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path
from typing import BinaryIO

from buildplan.language.messages import Message, mark, message

WHY = {
    errno.ENOENT: mark("there is no such file"),
    errno.EACCES: mark("this file may not be read"),
    errno.EPERM: mark("this file may not be read"),
    errno.EISDIR: mark("this is a folder"),
    errno.ENOTDIR: mark("a part of its path is a file, not a folder"),
    errno.ELOOP: mark("it is a link that leads back to itself"),
    errno.ENAMETOOLONG: mark("its name is too long"),
}


class UnfitFileError(OSError):
    """A file that is not read for what it is; `told` says why."""

    def __init__(self, path: Path, told: Message) -> None:
        super().__init__(errno.EINVAL, told.text, str(path))
        self.told = told


def why_not_read(error: OSError) -> Message:
    """Why a file is not read."""
    if isinstance(error, UnfitFileError):
        return error.told
    known = WHY.get(error.errno or 0)
    if known is not None:
        return message(known)
    return message("the system says: {why}", why=error.strerror or str(error))


def _read(file: BinaryIO, found: os.stat_result, most: int) -> bytes | None:
    """The first bytes of a plain file; None of what is none, or only looks like one (some files of
    the system wait for what is to come)."""
    return file.read(most) if stat.S_ISREG(found.st_mode) else None


def bytes_within(path: Path, most: int) -> bytes:
    """All bytes of a plain file that has no more than `most`. Raises OSError; of a larger file, a
    device or a pipe (which may never end) UnfitFileError, before any of it is read."""
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NONBLOCK", 0))
    with os.fdopen(handle, "rb") as file:
        found = os.fstat(handle)
        if stat.S_ISDIR(found.st_mode):
            raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(path))
        data = b"" if found.st_size > most else _read(file, found, most + 1)
        if data is None:
            raise UnfitFileError(path, message("it is a device or a pipe, not a file"))
        if found.st_size > most or len(data) > most:
            size = max(1, most // 1024)
            raise UnfitFileError(path, message("it is larger than {size} KiB", size=size))
        return data
