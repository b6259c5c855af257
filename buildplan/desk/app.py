"""The desk's answers over HTTP: who asks for what, and nothing of how it comes about."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator, Callable
from typing import TYPE_CHECKING, Any

from pydantic import ValidationError
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, Response, StreamingResponse
from starlette.routing import Route

from buildplan.desk import answers, new_calls, page, printed, printing_calls
from buildplan.desk.asking import language_of
from buildplan.desk.desk import Desk
from buildplan.desk.events import watch
from buildplan.desk.refusals import RefusedError
from buildplan.desk.safety import Entrance, Guard, TooLargeError, too_large
from buildplan.language.messages import Message, message
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from starlette.types import Lifespan

Answer = Callable[[Desk, Request, Any], Response]


def desk_app(desk: Desk, entrance: Entrance) -> Starlette:
    """The application of a desk, behind its entrance."""
    routes = [
        Route("/", page.index),
        Route("/page/{file}", page.bundled),
        Route("/output/{file:path}", page.printed),
        Route("/api/events", _events),
        Route("/api/new/picture", new_calls.from_picture, methods=["POST"]),
        Route("/api/design/{name}/step/{step:int}.svg", printing_calls.step),
        Route("/api/design/{name}/offers", printing_calls.offers),
        Route("/api/printed/{file}.png", printed.cover),
        *(Route(path, _call(answer), methods=[method]) for method, path, answer in _CALLS),
    ]
    app = Starlette(
        routes=routes,
        middleware=[Middleware(Guard, entrance=entrance, voice=Voice(desk.language))],
        exception_handlers={
            RefusedError: _refused,
            TooLargeError: _too_large,
            ValidationError: _not_understood,
            HTTPException: _not_there,
            FileNotFoundError: _gone,
            Exception: _fault,
        },
        lifespan=_lifespan(desk),
    )
    app.state.desk = desk
    return app


_CALLS: tuple[tuple[str, str, Answer], ...] = (
    ("GET", "/api/words", answers.words),
    ("GET", "/api/home", answers.home),
    ("POST", "/api/home/seen", answers.seen),
    ("GET", "/api/design/{name}", answers.design),
    ("PUT", "/api/design/{name}", answers.put),
    ("POST", "/api/design/{name}/edit", answers.edit),
    ("POST", "/api/design/{name}/undo", answers.undo),
    ("POST", "/api/design/{name}/redo", answers.redo),
    ("POST", "/api/design/{name}/copy", answers.copy),
    ("POST", "/api/design/{name}/rename", answers.rename),
    ("POST", "/api/design/{name}/away", answers.away),
    ("POST", "/api/design/{name}/back", answers.back),
    ("GET", "/api/pictures/{key}.png", answers.picture),
    ("GET", "/api/design/{name}/piece", answers.piece),
    ("GET", "/api/design/{name}/facts", answers.facts),
    ("GET", "/api/beginnings", new_calls.listed),
    ("GET", "/api/beginnings/{key:path}.png", new_calls.picture),
    ("POST", "/api/new", new_calls.new),
    ("GET", "/api/print", printing_calls.options),
    ("GET", "/api/design/{name}/printed", printed.printed),
    ("POST", "/api/design/{name}/print", printing_calls.print_design),
    ("GET", "/api/jobs/{job}", printing_calls.job),
    ("DELETE", "/api/jobs/{job}", printing_calls.stop_job),
)


def _call(answer: Answer) -> Callable[[Request], Any]:
    """A call that is answered in a thread: files are read and written, and nothing waits."""

    async def called(request: Request) -> Response:
        sent: Any = None
        if request.method in ("POST", "PUT"):
            sent = await request.body()
        desk: Desk = request.app.state.desk
        return await asyncio.to_thread(answer, desk, request, sent)

    return called


async def _events(request: Request) -> Response:
    desk: Desk = request.app.state.desk
    return StreamingResponse(desk.hub.stream(), media_type="text/event-stream")


def _lifespan(desk: Desk) -> Lifespan[Starlette]:
    @contextlib.asynccontextmanager
    async def lifespan(app: Starlette) -> AsyncIterator[None]:
        desk.hub.open()
        stop = asyncio.Event()
        watching = asyncio.create_task(watch(desk.folder, desk.seen, desk.hub, stop))
        try:
            yield
        finally:
            stop.set()
            desk.hub.close()
            watching.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await watching
            desk.workers.close()

    return lifespan


def _told(request: Request, status: int, told: Any, more: dict[str, object]) -> Response:
    words = Voice(language_of(request.app.state.desk, request)).tell(told)
    return JSONResponse({"message": words, **more}, status)


async def _refused(request: Request, error: Exception) -> Response:
    assert isinstance(error, RefusedError)
    return _told(request, error.status, error.told, error.more)


async def _too_large(request: Request, error: Exception) -> Response:
    assert isinstance(error, TooLargeError)
    return _told(request, 413, too_large(error.limit), {})


async def _not_understood(request: Request, error: Exception) -> Response:
    assert isinstance(error, ValidationError)
    first = error.errors(include_url=False)[0]
    place = ".".join(map(str, first["loc"]))
    return _told(request, 400, _unlike(place), {})


def _unlike(place: str) -> Message:
    """What is said of a call that is not as the page sends it, and where."""
    if not place:
        return message("the desk does not understand this call")
    return message("the desk does not understand this call: see its {place}", place=place)


async def _not_there(request: Request, error: Exception) -> Response:
    assert isinstance(error, HTTPException)
    if error.status_code == 400:  # of a form
        return _told(request, 400, message("the desk does not understand this call"), {})
    return _told(request, error.status_code, message("the desk has no such page"), {})


async def _gone(request: Request, error: Exception) -> Response:
    """Of a file that went between being found and being read."""
    return _told(request, 404, message("there is no such file"), {})


async def _fault(request: Request, error: Exception) -> Response:
    name = f"{type(error).__name__}: {error}"
    told = message("buildplan has a fault ({fault}). Please report it.", fault=name)
    return _told(request, 500, told, {})
