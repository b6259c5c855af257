"""Fonts as files: what a font holds and what its signs look like; those named, and those found."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import uharfbuzz as hb

from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.source.bounded import bytes_within

ENDINGS = (".ttf", ".otf", ".ttc", ".otc")
LARGEST = 64 * 1024 * 1024
# Words in the names of files of fonts that are for something else than plain text.
OTHER_STYLES = ("italic", "oblique", "mono", "thin", "light", "black", "condensed", "emoji")
NOT_EMBEDDED = 0x0002  # fsType of the table OS/2: restricted licence embedding (OpenType 1.9)
# The axis of weight of a font of many weights, and its usual values (OpenType 1.9, fvar).
WEIGHT, REGULAR_WEIGHT, BOLD_WEIGHT = "wght", 400.0, 700.0
EMBOLDENED = 0.03  # of the em: what is added to strokes where a bold face is asked for


@dataclass(frozen=True)
class FontFile:
    """One face of a font file; `bold` when its strokes are to be made thicker."""

    path: str
    index: int = 0
    bold: bool = False


class UnfitFontError(ToldError):
    """A font that is named cannot be used; `told` says why."""


# The fonts that a seller names, before those of the machine.
_NAMED: ContextVar[tuple[FontFile, ...]] = ContextVar("named", default=())


@contextmanager
def with_fonts(named: Iterable[FontFile]) -> Iterator[None]:
    """Set type with these fonts too, where the usual ones have not the signs."""
    before = _NAMED.set(tuple(named))
    try:
        yield
    finally:
        _NAMED.reset(before)


def named_fonts() -> tuple[FontFile, ...]:
    """The fonts that are named now."""
    return _NAMED.get()


def read_font(path: Path) -> FontFile:
    """The font of a file that somebody names. Raises UnfitFontError, and OSError."""
    bytes_within(path, LARGEST)
    font = FontFile(str(path.resolve()))
    if not opened(font).face.glyph_count:
        raise UnfitFontError(message("{file} is no font", file=path.name))
    if not _embeddable(font):
        raise UnfitFontError(
            message("{file} says that it may not be embedded in documents", file=path.name)
        )
    return font


@lru_cache(maxsize=512)
def opened(font: FontFile) -> hb.Font:
    """A face, ready to set type with, in units of its own em."""
    found = hb.Font(hb.Face(hb.Blob.from_file_path(font.path), font.index))
    if any(axis.tag == WEIGHT for axis in found.face.axis_infos):
        found.set_variations({WEIGHT: BOLD_WEIGHT if font.bold else REGULAR_WEIGHT})
    elif font.bold:
        found.synthetic_bold = (EMBOLDENED, EMBOLDENED / 3, True)
    return found


def holds(font: FontFile, sign: str) -> bool:
    """Whether a face has a sign, and draws something for it."""
    face = opened(font)
    glyph = face.get_nominal_glyph(ord(sign))
    if not glyph:
        return False
    extents = face.get_glyph_extents(glyph)
    return sign.isspace() or (extents is not None and (extents.width, extents.height) != (0, 0))


@lru_cache(maxsize=1)
def fonts_of_machine() -> tuple[FontFile, ...]:
    """The faces in the folders where this system keeps fonts, plain styles first, of these
    those without serifs, by name."""
    files = {
        str(Path(folder, name))
        for top in _folders()
        for folder, _, names in os.walk(top)
        for name in names
        if name.lower().endswith(ENDINGS)
    }
    found = [
        FontFile(path, index)
        for path in sorted(files, key=_plainness)
        for index in range(_faces_in(path))
    ]
    return tuple(font for font in found if _embeddable(font))


def _folders() -> list[Path]:
    home = Path.home()
    if sys.platform == "win32":
        own = os.environ.get("LOCALAPPDATA", str(home))
        windows = Path(os.environ.get("WINDIR", r"C:\Windows"))
        return [windows / "Fonts", Path(own, "Microsoft", "Windows", "Fonts")]
    if sys.platform == "darwin":
        return [Path("/System/Library/Fonts"), Path("/Library/Fonts"), home / "Library" / "Fonts"]
    own = os.environ.get("XDG_DATA_HOME") or str(home / ".local" / "share")
    usual = [Path("/usr/share/fonts"), Path("/usr/local/share/fonts")]
    return [*usual, Path(own, "fonts"), home / ".fonts"]


def _plainness(path: str) -> tuple[int, bool, bool, str]:
    name = Path(path).stem.lower()
    odd = sum(word in name for word in OTHER_STYLES)
    return odd, "bold" in name, "sans" not in name, path  # as our own type is


def _faces_in(path: str) -> int:
    try:
        return int(hb.Face(hb.Blob.from_file_path(path)).count)
    except (OSError, hb.HarfBuzzError):
        return 0


def _embeddable(font: FontFile) -> bool:
    table = opened(font).face.reference_table("OS/2").data
    return len(table) < 10 or not int.from_bytes(table[8:10], "big") & NOT_EMBEDDED
