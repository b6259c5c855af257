"""A result that somebody waits for: worked out if it is not there, and answered when it is."""

from __future__ import annotations

import asyncio

from buildplan.desk.desk import Desk
from buildplan.desk.outcome import Failed
from buildplan.desk.refusals import RefusedError, fault
from buildplan.desk.results import Results
from buildplan.desk.workers import NOW, Errand, Work
from buildplan.language.messages import message

PATIENCE_S, AGAIN_S = 120.0, 0.05


async def awaited(desk: Desk, results: Results, what: str, lane: str, work: Work) -> bytes:
    """A result, worked out if it is not there. Raises RefusedError where it cannot be."""
    failed: list[Failed] = []

    def told(part: object) -> None:
        if isinstance(part, Failed):
            failed.append(part)

    if results.get(what) is None and not desk.workers.busy_with(lane, results.key):
        errand = Errand(lane, results.key, work, told, lambda whole: None, NOW)
        await asyncio.to_thread(desk.workers.ask, errand)
    for _ in range(round(PATIENCE_S / AGAIN_S)):
        busy = desk.workers.busy_with(lane, results.key)
        found = results.get(what)
        if found is not None:
            return found
        if failed:
            raise fault(failed[0])
        if not busy or desk.hub.is_closed:
            break
        await asyncio.sleep(AGAIN_S)
    raise RefusedError(404, message("this picture is not drawn yet"))
