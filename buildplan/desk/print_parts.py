"""What all printing at the desk shares: names of files, the brand, how far the work is."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from buildplan.business.copies.brand import Branding, branding
from buildplan.design.event import EVENT_SUFFIX, read_event
from buildplan.design.reading import read_brand
from buildplan.design.translating import translated_brand
from buildplan.desk.folder import Folder
from buildplan.desk.print_options import EVENT
from buildplan.desk.print_task import PrintWork
from buildplan.language.voice import ENGLISH, Voice

# how far the work is, by the time of it: the shape and the steps, reading them back, the pages
GATHERED, READ_BACK, PRINTED = 0.3, 0.4, 0.95

Named = tuple[str, bytes]
Show = Callable[[float], None]


def path_of(task: PrintWork) -> Path:
    """The design that is printed."""
    return Folder(task.root).file(task.name)


def counted_paths(task: PrintWork) -> list[tuple[Path, int]]:
    """The design, and those that are printed together with it; how many of each."""
    folder, wishes = Folder(task.root), task.wishes
    asked = ((task.name, wishes.count), *wishes.beside)
    return [(folder.file(name), count) for name, count in asked]


def event_file(task: PrintWork) -> Path:
    """The file of the event that is planned."""
    return task.root / f"{task.what.removeprefix(EVENT)}{EVENT_SUFFIX}"


def files_read(task: PrintWork) -> Iterator[Path]:
    """The files whose words are printed."""
    if task.brand:
        yield task.root / task.brand
    if task.what.startswith(EVENT):
        file = event_file(task)
        yield file
        yield from (file.parent / piece.design for piece in read_event(file).designs)
    yield from (path for path, _ in counted_paths(task))


def stem_in(stem: str, voice: Voice) -> str:
    """As the commands call it: with the language where that is not English."""
    return stem if voice.language == ENGLISH else f"{stem}-{voice.language}"


def brand_in(task: PrintWork, language: str) -> Branding:
    """The brand that was chosen."""
    file = task.root / task.brand
    return branding(translated_brand(read_brand(file), language), file)
