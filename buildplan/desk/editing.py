"""Changes at the desk, made in the text of a design: none but the lines that a change means.

A change is made in its place in the text. Where that cannot be done (a list that loses its last
item, a value that an alias shares), ruamel.yaml writes the whole file anew with its comments, its
order and its quotes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from buildplan.desk.calls import (
    Edit,
    InsertEdit,
    MoveEdit,
    PaintEdit,
    PutEdit,
    RenameEdit,
    SuggestionEdit,
    TakeOutEdit,
)
from buildplan.desk.list_edits import inserted, moved
from buildplan.desk.painted import painted
from buildplan.desk.refusals import RefusedError
from buildplan.desk.round_trip import changed_round
from buildplan.language.messages import message
from buildplan.source.file_changes import CannotChangeError, edited_text
from buildplan.source.file_text import text_of
from buildplan.source.problems import UnreadableDesignError
from buildplan.source.suggestions import Change, Put, Rename, TakeOut


@dataclass(frozen=True)
class Beside:
    """What a change may need beside the text: the `folder` that its parts lie in, and the `facts`,
    the figures of the design, whose problems suggest some changes."""

    folder: Path
    facts: Mapping[str, Any]


def edited_file(path: Path, edits: Sequence[Edit], facts: Mapping[str, Any]) -> str:
    """The text of a design's file with changes made; raises as `edited` does, and where the file
    is no text."""
    with _refusing():
        text = text_of(path)
    return edited(text, edits, Beside(path.parent, facts))


def edited(text: str, edits: Sequence[Edit], beside: Beside) -> str:
    """The text with changes made one after another. Raises RefusedError where one cannot be made:
    then none is."""
    with _refusing():
        for edit in edits:
            text = _edited(text, edit, beside)
    return text


@contextmanager
def _refusing() -> Iterator[None]:
    """What cannot be changed is told as that."""
    try:
        yield
    except UnreadableDesignError as error:
        raise RefusedError(
            422,
            message(
                "the file cannot be read as it is ({why}): mend it in its text first",
                why=error.problem.message,
            ),
        ) from error
    except CannotChangeError as error:
        raise RefusedError(
            422, message("the file has no such place as this change names: look at it anew")
        ) from error


def _edited(text: str, edit: Edit, beside: Beside) -> str:
    match edit:
        case InsertEdit(path=path, value=value):
            return inserted(text, tuple(path), value)
        case MoveEdit(path=path, to=to):
            return moved(text, tuple(path), to)
        case PutEdit(path=path, value=value):
            return _changed(text, [Put(tuple(path), value)])
        case TakeOutEdit(path=path):
            return _changed(text, [TakeOut(tuple(path))])
        case RenameEdit(path=path, key=key):
            return _changed(text, [Rename(tuple(path), key)])
        case SuggestionEdit():
            return _changed(text, suggested(edit, beside.facts))
        case PaintEdit(links=links, balloon=balloon):
            return _changed(text, painted(text, beside.folder, links, balloon))


def _changed(text: str, changes: Sequence[Change]) -> str:
    made = edited_text(text, changes)
    return changed_round(text, changes) if made is None else made


def suggested(edit: SuggestionEdit, facts: Mapping[str, Any]) -> list[Change]:
    """The changes of the file that a problem suggests. Raises RefusedError where it does not."""
    try:
        way = facts["problems"][edit.number]["changes"][edit.way]
    except (KeyError, IndexError):
        raise RefusedError(
            409, message("this suggestion is of another version of the design: look at it anew")
        ) from None
    return [_change(one) for one in way["changes"]]


def _change(data: Mapping[str, Any]) -> Change:
    """A change from its plain data; see `change_as_data`."""
    at = tuple(data["at"])
    if "rename" in data:
        return Rename(at, data["rename"])
    if "take_out" in data:
        return TakeOut(at)
    return Put(at, data["put"], data.get("last"))
