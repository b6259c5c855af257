"""The command that opens the desk."""

from __future__ import annotations

import errno
from contextlib import suppress
from pathlib import Path
from typing import Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside
from buildplan.commands.options import FLAG, IN_ENGLISH, LanguageOption
from buildplan.language.voice import Voice

PORT = 8642


@app.command()
def desk(
    folder: Annotated[
        Path, typer.Argument(metavar="FOLDER", help="The folder of the designs; else this one.")
    ] = Path(),
    port: Annotated[
        int | None,
        typer.Option(
            min=1024,
            max=65535,
            help=f"Where it listens, on this machine alone: {PORT}, or a free one.",
            show_default=False,
        ),
    ] = None,
    no_open: Annotated[
        bool, typer.Option("--no-open", metavar=FLAG, help="Print the address, open no browser.")
    ] = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Design by hand and eye, in a browser, on this machine alone.

    Shows the designs of a folder; their files stay what they are. Ctrl-C ends it.
    """
    from buildplan.desk.workers import warm_up

    voice = Voice(language)
    if not folder.is_dir():
        raise typer.BadParameter(
            voice.say("{folder} is no folder: name one with designs in it", folder=str(folder))
        )
    warm_up()  # while what serves is loaded
    from buildplan.desk.serving import listener, serve

    try:
        listening = listener(PORT if port is None else port)
    except OSError as error:
        if error.errno not in (errno.EADDRINUSE, errno.EACCES):
            raise
        if port is not None:
            raise typer.BadParameter(
                voice.say(
                    "port {port} is taken: end what listens there, or choose another with --port",
                    port=str(port),
                )
            ) from error
        listening = listener(0)

    def begun(address: str) -> None:
        answer(address)
        aside(voice.say("The desk is open; Ctrl-C ends it."))

    with suppress(KeyboardInterrupt):  # that is how it is ended
        serve(folder, listening, str(language.value), begun, not no_open)
