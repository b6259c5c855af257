"""The folder whose designs lie on the desk: names, files, and what the desk keeps beside them.

Nothing is remembered but in files: a second process on the same folder shows the same.
"""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from buildplan.desk.refusals import bad_name, no_such_design, outside
from buildplan.source.file_text import MOST_BYTES
from buildplan.source.whole_files import may_write

SUFFIX = ".yaml"
# files of the folder that are no designs, by how their names end
OTHERS = (".event.yaml", "hands.yaml")
# what a design file has and a file of another sort has not: this key at the start of a line
_DESIGN = re.compile(rb"^(buildplan|name|balloons|build)\s*:", re.MULTILINE)
_OTHER = re.compile(rb"^(event|buildplan_hands|contact|licence)\s*:", re.MULTILINE)
_NAME = re.compile(r"[^\W_](?:[\w .()-]{0,78}[\w)])?")


def version_of(data: bytes) -> str:
    """The version of a file: the SHA-256 of its bytes (FIPS 180-4), in hexadecimal digits."""
    return hashlib.sha256(data).hexdigest()


@dataclass(frozen=True)
class Folder:
    """A folder of designs, by its true path."""

    root: Path

    @cached_property
    def read_only(self) -> bool:
        """Whether nothing can be written here."""
        return not may_write(self.root)

    @cached_property
    def kept(self) -> Path:
        """Where the desk keeps what is its own; of a folder that cannot be written to among what
        programs keep for this user (XDG Base Directory Specification)."""
        if not self.read_only:
            return self.root / ".desk"
        own = hashlib.sha256(str(self.root).encode()).hexdigest()[:16]
        caches = os.environ.get("XDG_CACHE_HOME") or os.environ.get("LOCALAPPDATA")
        return Path(caches or Path.home() / ".cache") / "buildplan" / "desk" / own

    @property
    def history(self) -> Path:
        """Every version of each design, for undo and redo."""
        return self.kept / "history"

    @property
    def away(self) -> Path:
        """Designs that were put away."""
        return self.kept / "away"

    @property
    def results(self) -> Path:
        """What was worked out, by what it was worked out from."""
        return self.kept / "results"

    @property
    def both(self) -> Path:
        """The other version, where two changes met."""
        return self.kept / "kept"

    @property
    def sent(self) -> Path:
        """Pictures that were sent, until they are read."""
        return self.kept / "sent"

    @property
    def output(self) -> Path:
        """What was printed."""
        return self.root / "output"

    def file(self, name: str) -> Path:
        """The file of a design. Raises RefusedError for what is no name, or leads elsewhere."""
        return _within(self.root, name)

    def away_file(self, name: str) -> Path:
        """The file of a design that was put away."""
        return _within(self.away, name)

    def read(self, name: str) -> bytes:
        """The bytes of a design, up to one more than a design may have. Raises RefusedError where
        there is none."""
        return read_design_file(self.file(name), name)

    def names(self) -> list[str]:
        """The names of the designs, in order."""
        return sorted(_designs(self.root), key=lambda name: (name.casefold(), name))

    def names_away(self) -> list[str]:
        """The names of those that were put away."""
        return sorted(_designs(self.away)) if self.away.is_dir() else []

    def free_name(self, wanted: str) -> str:
        """The name itself, or with the first number that makes it one that is not taken."""
        taken = {name.casefold() for name in (*self.names(), *self.names_away())}
        name, number = wanted, 1
        while name.casefold() in taken or (self.root / f"{name}{SUFFIX}").exists():
            number += 1
            name = f"{wanted}_{number}"
        return name


def read_design_file(path: Path, name: str) -> bytes:
    """The bytes of a file that is there. Raises RefusedError where it is not."""
    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except (FileNotFoundError, IsADirectoryError):
        raise no_such_design(name) from None


def _within(folder: Path, name: str) -> Path:
    if not _NAME.fullmatch(name) or ".." in name:
        raise bad_name()
    path = folder / f"{name}{SUFFIX}"
    if path.is_symlink() and path.resolve().parent != folder.resolve():
        raise outside(name)
    return path


def _designs(folder: Path) -> Iterator[str]:
    for path in folder.iterdir():
        name = path.name.removesuffix(SUFFIX)
        if path.name == name or path.name.endswith(OTHERS) or not _NAME.fullmatch(name):
            continue
        if path.is_file() and _is_design(path) and path.resolve().parent == folder.resolve():
            yield name


def _is_design(path: Path) -> bool:
    """Whether a file is a design, be it broken: not one of another sort."""
    try:
        with path.open("rb") as file:
            begun = file.read(65536)
    except OSError:
        return False
    if re.search(rb"^buildplan\s*:", begun, re.MULTILINE):
        return True
    return _DESIGN.search(begun) is not None and _OTHER.search(begun) is None
