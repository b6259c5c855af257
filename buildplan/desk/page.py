"""The page of the desk, its script and style, and what was printed."""

from __future__ import annotations

import html
from importlib.resources import files
from pathlib import Path

from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, Response

from buildplan.desk.desk import Desk
from buildplan.desk.refusals import RefusedError
from buildplan.language.messages import message

BUNDLE = files("buildplan.screen") / "bundle"
KINDS = {"desk.js": "text/javascript", "desk.css": "text/css"}
# what is printed, by how its name ends
PRINTED = (".pdf", ".html", ".csv", ".png", ".svg", ".glb", ".json", ".ics")


def index(request: Request) -> Response:
    """The page: its words and its data come by calls."""
    desk: Desk = request.app.state.desk
    language = html.escape(desk.language)
    return HTMLResponse(
        "\n".join(
            [
                "<!doctype html>",
                f'<html lang="{language}">',
                "<head>",
                '<meta charset="utf-8">',
                '<meta name="viewport" content="width=device-width, initial-scale=1">',
                '<meta name="referrer" content="no-referrer">',
                '<link rel="icon" href="data:,">',
                f"<title>{html.escape(desk.folder.root.name)}</title>",
                '<link rel="stylesheet" href="/page/desk.css">',
                "</head>",
                "<body>",
                '<div id="desk"></div>',
                '<script type="module" src="/page/desk.js"></script>',
                "</body>",
                "</html>",
                "",
            ]
        )
    )


def bundled(request: Request) -> Response:
    """The page's script or style."""
    name = request.path_params["file"]
    file = BUNDLE / name
    if name not in KINDS or not file.is_file():
        raise RefusedError(404, message("the desk has no such page"))
    return Response(file.read_bytes(), media_type=KINDS[name])


def printed(request: Request) -> Response:
    """A file that was printed, by its name below the folder of what is printed."""
    desk: Desk = request.app.state.desk
    path = printed_file(desk.folder.output, request.path_params["file"])
    return FileResponse(
        path, content_disposition_type="inline", filename=path.name, stat_result=path.stat()
    )


def printed_file(output: Path, name: str) -> Path:
    """The file of a name, never one that lies elsewhere. Raises RefusedError where it is not."""
    path = (output / name).resolve()
    inside = path.is_relative_to(output.resolve()) and ".." not in Path(name).parts
    if not inside or path.suffix not in PRINTED or not path.is_file():
        raise RefusedError(404, message("there is no such file among what was printed"))
    return path
