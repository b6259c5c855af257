"""The address of the page for phones that printed pages lead to."""

from __future__ import annotations

import re

from buildplan.language.messages import message
from buildplan.language.told import ToldError


def page_address(text: str) -> str:
    """The address of a page. Raises ToldError for what is none."""
    from buildplan.source.values import MOST_OF_ADDRESS, PAGE_ADDRESS

    if len(text) > MOST_OF_ADDRESS or not re.fullmatch(PAGE_ADDRESS, text):
        raise ToldError(
            message(
                "--link: {text} is no address of a page; write it whole, like "
                "https://lantern-street.example/star, in {most} characters at most",
                text=repr(text[: 2 * MOST_OF_ADDRESS]),
                most=MOST_OF_ADDRESS,
            )
        )
    return text
