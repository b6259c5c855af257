"""Calls that print, and jobs."""

from __future__ import annotations

from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from buildplan.desk.desk import Desk
from buildplan.desk.jobs import stop


def job(desk: Desk, request: Request, sent: Any) -> Response:
    """How far a job is, and what came of it."""
    return JSONResponse(desk.jobs.get(request.path_params["job"]).as_data())


def stop_job(desk: Desk, request: Request, sent: Any) -> Response:
    """A job is not done any further."""
    return JSONResponse(stop(desk.jobs, desk.workers, request.path_params["job"]).as_data())
