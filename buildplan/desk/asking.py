"""Who asks, in which language, and who is told."""

from __future__ import annotations

from collections.abc import Callable

from starlette.requests import Request

from buildplan.desk.desk import Desk
from buildplan.desk.jobs import DeskJob
from buildplan.language.voice import LOCALES


def language_of(desk: Desk, request: Request) -> str:
    """The language of who asks: as the call says, else that of the desk."""
    asked = request.query_params.get("language", "")
    return asked if asked in LOCALES else desk.language


def tell_of_job(desk: Desk) -> Callable[[DeskJob], None]:
    """Tells every page how far a job is."""

    def tell(job: DeskJob) -> None:
        desk.hub.tell(kind="job", **job.as_data())

    return tell
