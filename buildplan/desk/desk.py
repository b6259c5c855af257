"""The desk of one folder: what is asked of it, answered from files, and the work it orders."""

from __future__ import annotations

import json
import threading
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from buildplan.desk.events import Hub, Seen
from buildplan.desk.folder import Folder, version_of
from buildplan.desk.jobs import Jobs
from buildplan.desk.outcome import Failed, Made
from buildplan.desk.refusals import RefusedError, fault
from buildplan.desk.results import Results, results_of
from buildplan.desk.saving import Saved
from buildplan.desk.task import (
    CARD,
    COUNTS,
    FACTS,
    PICTURE,
    PIECE,
    SHAPE,
    WAIT,
    CountWork,
    DesignWork,
)
from buildplan.desk.workers import LATER, NOW, Errand, Workers
from buildplan.language.messages import message


@dataclass(frozen=True)
class Desk:
    """One folder, those who look at it, and those who work for it. `failed` are the results that a
    fault of ours kept from being there, and what it was."""

    folder: Folder
    hub: Hub
    seen: Seen
    workers: Workers
    language: str
    lock: threading.RLock = field(default_factory=threading.RLock)
    failed: dict[str, Failed] = field(default_factory=dict)
    jobs: Jobs = field(default_factory=Jobs)


@dataclass(frozen=True)
class Looked:
    """A design that is looked at by a reader: its version, and what is worked out of it."""

    name: str
    version: str
    language: str
    results: Results


def looked_at(desk: Desk, name: str, language: str) -> Looked:
    """A design as it is now. Raises RefusedError where there is none."""
    data = desk.folder.read(name)
    return Looked(name, version_of(data), language, results_of(desk.folder, data, language))


def at_version(desk: Desk, name: str, version: str, language: str) -> Looked:
    """A design of which a version is asked for. Raises RefusedError where it has become another."""
    found = looked_at(desk, name, language)
    if version and version != found.version:
        told = message("{name} has another version meanwhile", name=name)
        raise RefusedError(409, told, {"version": found.version})
    return found


def have_worked_out(desk: Desk, looked: Looked) -> None:
    """Have all worked out that is not there yet of a design, unless that is under way."""
    if not is_settled(looked.results):
        lane = f"design {looked.name}"
        _have_done(desk, looked, lane, DesignWork(*_what(desk, looked)), NOW)


def have_card_made(desk: Desk, looked: Looked) -> None:
    """Have that worked out which a card shows: its balloons at once, the rest after those of all
    others, unless more of the design is under way."""
    if looked.results.get(CARD) is not None:
        return
    if desk.workers.busy_with(f"design {looked.name}", looked.results.key):
        return
    what = _what(desk, looked)
    if looked.results.get(COUNTS) is None:
        _have_done(desk, looked, f"counts {looked.name}", CountWork(*what), NOW)
    _have_done(desk, looked, card_lane(looked.name), DesignWork(*what, whole=False), LATER)


def card_lane(name: str) -> str:
    """The lane of the work on a card."""
    return f"card {name}"


def _what(desk: Desk, looked: Looked) -> tuple[Path, str, str, str]:
    return desk.folder.root, looked.name, looked.version, looked.language


def _have_done(
    desk: Desk, looked: Looked, lane: str, task: DesignWork | CountWork, rank: int
) -> None:
    key = looked.results.key
    with desk.lock:
        if key not in desk.failed and not desk.workers.busy_with(lane, key):
            desk.workers.ask(_order(desk, looked, lane, task, rank))


def is_settled(results: Results) -> bool:
    """Whether all is worked out."""
    facts = facts_in(results)
    if facts is None or not facts["settled"]:
        return False
    return facts["check"] is None or results.get(PIECE) is not None


def facts_in(results: Results) -> dict[str, Any] | None:
    """The figures, as far as they are there."""
    data = results.get(FACTS)
    return None if data is None else json.loads(data)


def card_in(results: Results) -> dict[str, Any] | None:
    """What a card says, as far as that is there."""
    data = results.get(CARD) or results.get(COUNTS)
    return None if data is None else json.loads(data)


def _order(
    desk: Desk, looked: Looked, lane: str, task: DesignWork | CountWork, rank: int
) -> Errand:
    name, version = looked.name, looked.version

    def told(part: object) -> None:
        match part:
            case Made(what=what) if what in (COUNTS, CARD, PICTURE):
                desk.hub.tell(kind="card", name=name, version=version)
            case Made(what=what):
                desk.hub.tell(kind="worked", name=name, version=version, what=what.split(".")[0])
            case Failed():
                desk.failed[looked.results.key] = part
                desk.hub.tell(kind="card", name=name, version=version)
                desk.hub.tell(kind="worked", name=name, version=version, what="failed")

    def ended(whole: bool) -> None:
        """What came of it has been told."""

    return Errand(lane, looked.results.key, task, told, ended, rank)


def piece_now(desk: Desk, looked: Looked) -> tuple[int, bytes]:
    """The piece as data: whole, or as it lies in space while its order of work is worked out (its
    list of steps is empty then). Its status, and JSON."""
    have_worked_out(desk, looked)
    whole = looked.results.get(PIECE)
    if whole is not None:
        return 200, whole
    shape = looked.results.get(SHAPE)
    if shape is not None:
        return 200, shape
    facts = facts_in(looked.results)
    if facts is not None and facts["check"] is None:
        return 422, json.dumps({"problems": facts["problems"]}, ensure_ascii=False).encode()
    failed = desk.failed.get(looked.results.key)
    if failed is not None:
        raise fault(failed)
    return 202, json.dumps(_working_on(looked.results), ensure_ascii=False).encode()


def facts_now(desk: Desk, looked: Looked) -> tuple[int, dict[str, Any]]:
    """The figures of a design, with the state that they are in."""
    have_worked_out(desk, looked)
    facts = facts_in(looked.results)
    if facts is not None:
        return 422 if facts["check"] is None else 200, {"version": looked.version, **facts}
    failed = desk.failed.get(looked.results.key)
    if failed is not None:
        raise fault(failed)
    return 202, _working_on(looked.results)


def _working_on(results: Results) -> dict[str, Any]:
    """That it is worked out, and how long that is likely to take where it is long."""
    known = results.get(WAIT)
    return {"state": "working", "words": "", **({} if known is None else json.loads(known))}


def saved_by_desk(desk: Desk, saved: Saved) -> None:
    """Tell every page of a version that was made here."""
    desk.seen.told(saved.name, saved.version)
    desk.hub.tell(kind="changed", name=saved.name, version=saved.version, by="desk")


def saved_as_data(saved: Saved) -> Mapping[str, object]:
    """What is answered to a change."""
    return {
        "name": saved.name,
        "version": saved.version,
        "text": saved.text,
        "can_undo": saved.history.can_undo,
        "can_redo": saved.history.can_redo,
    }
