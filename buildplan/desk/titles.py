"""What a design is called: its name in its file, as a person types it, and the file's own name."""

from __future__ import annotations

from buildplan.design.starting import file_stem
from buildplan.desk.folder import SUFFIX, Folder
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import parts_named
from buildplan.source.file_changes import CannotChangeError, changed_text
from buildplan.source.partial_validation import mapping_in
from buildplan.source.problems import UnreadableDesignError
from buildplan.source.suggestions import Put, TakeOut
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

MOST_OF_A_NAME = 60  # letters of a file's name, so that a number finds room behind it


def stem_of(title: str) -> str:
    """The name of the file of a piece."""
    return file_stem(title)[:MOST_OF_A_NAME].rstrip("_")


def titled(data: bytes, title: str) -> bytes:
    """A design with another name in it, which it has in every language then; a file that cannot be
    read stays as it is."""
    try:
        text = data.decode("utf-8-sig")
        others = mapping_in(mapping_in(plain(load(text, "").root)).get("translations"))
        was = [TakeOut(("translations", language, "name")) for language in others]
        named = [one for one, own in zip(was, others.values(), strict=True) if "name" in own]
        text, _ = changed_text(text, [Put(("name",), title), *named])
    except (UnicodeDecodeError, UnreadableDesignError, CannotChangeError, TypeError):
        return data
    return text.encode()


def is_a_part(folder: Folder, name: str) -> bool:
    """Whether another design of the folder has this one as a part, by the name of its file."""
    return any(f"{name}{SUFFIX}" in _parts_of(folder, other) for other in folder.names())


def _parts_of(folder: Folder, name: str) -> set[str]:
    try:
        return parts_named(folder.read(name))
    except (RefusedError, OSError):
        return set()
