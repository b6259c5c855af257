"""What was worked out of designs, kept by what it was worked out from."""

from __future__ import annotations

import hashlib
import os
import re
import time
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from buildplan import __version__
from buildplan.desk.folder import Folder
from buildplan.hands.model import HANDS_FILE
from buildplan.source.whole_files import write_whole

# Raised when results of older desks are of no use any more.
FORM = 4
MOST_KEPT = 4000  # files; the oldest go first
SENT_S = 3600.0  # by then a picture that was sent is read, or nobody reads it any more
# a design file that another names as its part; one too many does no harm
_PART = re.compile(rb"\bdesign\s*:\s*[\"']?([^\"',}\r\n#]+)")
MOST_PARTS = 200
_KEY = re.compile(r"[0-9a-f]{40}")


@dataclass(frozen=True)
class Results:
    """What was worked out of one version of one design, in one language."""

    folder: Path
    key: str

    def path(self, what: str) -> Path:
        """The file of a result: `card.json`, `picture.png`."""
        return self.folder / f"{self.key}.{what}"

    def get(self, what: str) -> bytes | None:
        """A result; None where it is not there."""
        try:
            return self.path(what).read_bytes()
        except OSError:
            return None

    def put(self, what: str, data: bytes) -> None:
        """Keep a result."""
        write_whole(self.path(what), data)


def results_of(folder: Folder, data: bytes, language: str) -> Results:
    """The results of a design whose file holds `data`: with it goes all that they rest on."""
    digest = hashlib.sha256(f"{FORM} {__version__} {language}\n".encode())
    for part in (data, *_beside(folder, data)):
        digest.update(hashlib.sha256(part).digest())
    return Results(folder.results, digest.hexdigest()[:40])


def is_key(text: str) -> bool:
    """Whether a text can be what results are kept by, and no way out of their folder."""
    return _KEY.fullmatch(text) is not None


def _beside(folder: Folder, data: bytes) -> Iterator[bytes]:
    """What the files hold that a design is read with: measurements, and parts of assemblies."""
    hands = folder.root / HANDS_FILE
    if hands.is_file():
        with suppress(FileNotFoundError):  # gone since it was seen
            yield hands.read_bytes()
    known: set[Path] = set()
    texts = [(folder.root, data)]
    while texts and len(known) < MOST_PARTS:
        beside, text = texts.pop()
        for found in _PART.finditer(text):
            path = beside / os.fsdecode(found[1].strip())
            if path in known or not path.is_file():
                continue
            known.add(path)
            with suppress(FileNotFoundError):  # gone since it was seen
                texts.append((path.parent, path.read_bytes()))
                yield texts[-1][1]


def parts_named(data: bytes) -> set[str]:
    """The design files that a design names as its parts, by name."""
    return {Path(os.fsdecode(found[1].strip())).name for found in _PART.finditer(data)}


def prune(folder: Folder) -> None:
    """Let the oldest results go, where there are very many, and pictures that nobody read: the work
    that they were sent for was stopped, or killed."""
    results = _by_age(folder.results)
    long_ago = time.time() - SENT_S
    gone = [path for _, path in results[: max(0, len(results) - MOST_KEPT)]]
    gone += [path for changed, path in _by_age(folder.sent) if changed < long_ago]
    for path in gone:
        Path(path).unlink(missing_ok=True)


def _by_age(folder: Path) -> list[tuple[float, str]]:
    """When each file was changed, and its path, the oldest first."""
    found = []
    for entry in os.scandir(folder) if folder.is_dir() else ():
        with suppress(FileNotFoundError):  # another desk lets them go too
            found.append((entry.stat().st_mtime, entry.path))
    return sorted(found)
