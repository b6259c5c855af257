"""The text of a file that a user names."""

from __future__ import annotations

from pathlib import Path

from buildplan.language.messages import Message, message
from buildplan.source.bounded import UnfitFileError, bytes_within, why_not_read
from buildplan.source.kinds import FileKind
from buildplan.source.problems import Problem, UnreadableDesignError
from buildplan.source.suggestions import Suggestion, by_hand

MOST_BYTES = 1024 * 1024


def text_of(path: Path) -> str:
    """The text of the file, which must be UTF-8 and of a sensible size.

    Raises UnreadableDesignError for any other.
    """
    return _decoded(path, _bytes_of(path))


def _bytes_of(path: Path) -> bytes:
    """What the file holds."""
    try:
        return bytes_within(path, MOST_BYTES)
    except UnfitFileError as error:
        if not path.is_file():
            raise unreadable(
                path,
                FileKind.UNREADABLE,
                message("cannot be read ({why})", why=error.told),
                by_hand(message("check the name")),
            ) from None
        raise _too_large(path) from None
    except FileNotFoundError:
        raise unreadable(
            path,
            FileKind.NO_SUCH_FILE,
            message("there is no such file"),
            by_hand(message("check the name and the folder")),
        ) from None
    except IsADirectoryError:
        raise unreadable(
            path,
            FileKind.A_FOLDER,
            message("this is a folder"),
            by_hand(message("name the file in it")),
        ) from None
    except PermissionError:
        raise unreadable(
            path,
            FileKind.NOT_ALLOWED,
            message("this file may not be read"),
            by_hand(message("ask its owner, or copy it to your own folder")),
        ) from None
    except (OSError, ValueError) as error:
        why = (
            why_not_read(error)
            if isinstance(error, OSError)
            else message("no file can have this name")
        )
        raise unreadable(
            path,
            FileKind.UNREADABLE,
            message("cannot be read ({why})", why=why),
            by_hand(message("check the name")),
        ) from None


def _decoded(path: Path, data: bytes) -> str:
    """The text that bytes are."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise unreadable(
            path,
            FileKind.NOT_UTF8,
            message("saved as UTF-16"),
            by_hand(message("save it as UTF-8 text")),
        )
    if b"\0" in data:
        raise unreadable(
            path,
            FileKind.NOT_TEXT,
            message("not a text file"),
            by_hand(message("name the design file, a .yaml of plain text")),
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise unreadable(
            path,
            FileKind.NOT_UTF8,
            message("this line holds bytes that are not UTF-8 text"),
            by_hand(message("save it as UTF-8 text")),
            line,
        ) from None


def _too_large(path: Path) -> UnreadableDesignError:
    return unreadable(
        path,
        FileKind.TOO_LARGE,
        message("larger than {size} KiB, which no design is", size=str(MOST_BYTES // 1024)),
        by_hand(
            message(
                "name the design file, a .yaml of a few dozen lines; use repeat for long courses"
            )
        ),
    )


def unreadable(
    path: Path,
    kind: FileKind,
    said: Message,
    suggestion: Suggestion,
    line: int | None = None,
) -> UnreadableDesignError:
    """The error of a file that cannot be read as a design at all."""
    return UnreadableDesignError(str(path), Problem(kind, said, suggestion, line=line))
