"""The address of the page for phones that printed pages lead to."""

from __future__ import annotations

import typer

from buildplan.language.voice import Voice


def link_asked(text: str | None, voice: Voice) -> str | None:
    """What is given as `--link`; a wrong call where it is no address of a page."""
    from buildplan.business.copies.page_link import page_address
    from buildplan.language.told import ToldError

    try:
        return None if text is None else page_address(text)
    except ToldError as error:
        raise typer.BadParameter(f"--link: {voice.tell(error.told)}") from error
