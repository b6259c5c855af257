"""Whole pieces that a new design can be begun with: those of the folders within the desk's own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from buildplan.desk.folder import SUFFIX, Folder, read_design_file
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import parts_named
from buildplan.source.partial_validation import mapping_in
from buildplan.source.problems import UnreadableDesignError
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

MOST_PIECES = 200


@dataclass(frozen=True)
class BegunPiece:
    """A design below the folder; `key` is its place there, without its ending, and `picture` the
    one that is kept beside it, if there is one."""

    key: str
    title: str
    data: bytes
    picture: Path | None


def begun_pieces(folder: Folder) -> list[BegunPiece]:
    """The designs of the folders within the desk's that are whole by themselves: they name no other
    file, which would not be found from the new one's place."""
    found: list[BegunPiece] = []
    for path in sorted(folder.root.glob(f"*/*{SUFFIX}")):
        if len(found) < MOST_PIECES and not _is_hidden(path.parent, folder):
            found.extend(_piece(path, folder))
    return found


def begun_piece(folder: Folder, key: str) -> BegunPiece | None:
    """The piece of a key; None where there is none."""
    return next((piece for piece in begun_pieces(folder) if piece.key == key), None)


def _is_hidden(below: Path, folder: Folder) -> bool:
    return below.name.startswith(".") or below == folder.output or below.is_symlink()


def _piece(path: Path, folder: Folder) -> Iterator[BegunPiece]:
    try:
        data = read_design_file(path, path.stem)
        file = mapping_in(plain(load(data.decode("utf-8-sig"), "").root))
    except (RefusedError, UnreadableDesignError, UnicodeDecodeError, OSError):
        return
    if not mapping_in(file.get("build")) or parts_named(data) or isinstance(file.get("brand"), str):
        return
    picture = path.with_suffix(".png")
    yield BegunPiece(
        path.relative_to(folder.root).with_suffix("").as_posix(),
        str(file.get("name") or path.stem),
        data,
        picture if picture.is_file() and not picture.is_symlink() else None,
    )
