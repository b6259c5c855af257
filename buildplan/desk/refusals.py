"""What the desk refuses: a status of HTTP (RFC 9110) and one clear sentence."""

from __future__ import annotations

import errno

from buildplan.desk.outcome import Failed
from buildplan.language.messages import Message, message
from buildplan.source.whole_files import why_not


class RefusedError(Exception):
    """A call that cannot be answered: its status, and what is said of it; `more` goes with it."""

    def __init__(self, status: int, told: Message, more: dict[str, object] | None = None) -> None:
        super().__init__(status, told)
        self.status = status
        self.told = told
        self.more = more or {}


def no_such_design(name: str) -> RefusedError:
    """There is no design of this name in the folder."""
    return RefusedError(404, message("there is no design {name} in this folder", name=name))


def bad_name() -> RefusedError:
    """A name that no design of the folder can have."""
    return RefusedError(
        400,
        message(
            "a name has letters, digits, spaces, - or _, 80 at most, and begins with a letter or a "
            "digit"
        ),
    )


def outside(name: str) -> RefusedError:
    """A file of the folder that is a link to somewhere else."""
    told = message(
        "{name} is a link that leads out of this folder, and the desk does not follow it", name=name
    )
    return RefusedError(403, told)


def may_not_be_written() -> RefusedError:
    """The folder belongs to somebody else, or its disk is locked."""
    return RefusedError(
        403,
        message("this folder may not be written to: nothing was changed; copy it to your own"),
    )


def not_written(error: OSError) -> RefusedError:
    """The disk does not take what is written: what stood there stands."""
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return RefusedError(
            507, message("the disk is full: nothing was changed; make room and try again")
        )
    if error.errno in (errno.EACCES, errno.EPERM, errno.EROFS):
        return may_not_be_written()
    told = message(
        "nothing was changed, for the file cannot be written ({why})", why=why_not(error)
    )
    return RefusedError(507, told)


def fault(failed: Failed) -> RefusedError:
    """A fault of ours, or what the disk does not take."""
    if failed.told is not None:
        return RefusedError(507, failed.told)
    return RefusedError(
        500, message("buildplan has a fault ({fault}). Please report it.", fault=failed.error)
    )
