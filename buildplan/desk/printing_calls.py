"""What is answered to calls that print, that draw what is printed, and about jobs."""

from __future__ import annotations

import asyncio
from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from buildplan.desk.asking import language_of, tell_of_job
from buildplan.desk.awaiting import awaited
from buildplan.desk.calls import PrintCall
from buildplan.desk.desk import Desk, Looked, at_version
from buildplan.desk.jobs import Ordered, order, stop
from buildplan.desk.print_options import print_options
from buildplan.desk.print_task import OFFERS, OffersWork, PrintWork, StepsWork, step_result
from buildplan.desk.print_wishes import refuse_unfit
from buildplan.desk.refusals import RefusedError, may_not_be_written
from buildplan.language.messages import message
from buildplan.language.voice import LOCALES, Voice


def options(desk: Desk, request: Request, sent: Any) -> Response:
    """What can be printed, and how."""
    return JSONResponse(print_options(desk.folder, Voice(language_of(desk, request))))


def print_design(desk: Desk, request: Request, sent: Any) -> Response:
    """A design is to be printed: the job that does it."""
    call = PrintCall.model_validate_json(sent)
    name: str = request.path_params["name"]
    desk.folder.read(name)
    if desk.folder.read_only:
        raise may_not_be_written()
    own = Voice(language_of(desk, request))
    known = print_options(desk.folder, own)
    what = next((one for one in known["whats"] if one["key"] == call.what), None)
    of_folder = ((call.brand, "brands"), (call.key, "keys"), (call.sign, "signers"))
    if what is None or any(
        file and file not in [one["value"] for one in known[kind]] for file, kind in of_folder
    ):
        raise RefusedError(400, message("this cannot be printed of this folder: look at it anew"))
    if call.language not in ("", *LOCALES):
        raise RefusedError(400, message("this cannot be printed of this folder: look at it anew"))
    if name in call.beside or not call.beside.keys() <= {*desk.folder.names()}:
        raise RefusedError(400, message("this cannot be printed of this folder: look at it anew"))
    refuse_unfit(call.wishes)
    work = PrintWork(
        desk.folder.root,
        name,
        call.what,
        call.edition,
        call.paper,
        call.language or own.language,
        call.units,
        call.brand,
        call.wishes,
    )
    ordered = Ordered(call.what, name, work)
    job = order(desk.jobs, desk.workers, ordered, own, tell_of_job(desk))
    return JSONResponse({"job": job.id})


def job(desk: Desk, request: Request, sent: Any) -> Response:
    """How far a job is, and what came of it."""
    return JSONResponse(desk.jobs.get(request.path_params["job"]).as_data())


def stop_job(desk: Desk, request: Request, sent: Any) -> Response:
    """A job is not done any further."""
    stopped = stop(desk.jobs, desk.workers, request.path_params["job"])
    tell_of_job(desk)(stopped)
    return JSONResponse(stopped.as_data())


async def step(request: Request) -> Response:
    """The picture of a step as it will be printed."""
    desk, looked = await asyncio.to_thread(_looked, request)
    number: int = request.path_params["step"]
    work = StepsWork(desk.folder.root, looked.name, looked.version, looked.language, number)
    drawn = await awaited(desk, looked.results, step_result(number), f"steps {looked.name}", work)
    return Response(drawn, media_type="image/svg+xml")


async def offers(request: Request) -> Response:
    """Courses near that of the design that close and stand."""
    desk, looked = await asyncio.to_thread(_looked, request)
    work = OffersWork(desk.folder.root, looked.name, looked.version, looked.language)
    found = await awaited(desk, looked.results, OFFERS, f"offers {looked.name}", work)
    return Response(found, media_type="application/json")


def _looked(request: Request) -> tuple[Desk, Looked]:
    desk: Desk = request.app.state.desk
    version = request.query_params.get("version", "")
    name: str = request.path_params["name"]
    return desk, at_version(desk, name, version, language_of(desk, request))
