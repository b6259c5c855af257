"""What a design's text holds, as the page shows it beside the piece: its controls, its course."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.desk.controls import controls_of
from buildplan.desk.course_tiles import courses_of
from buildplan.desk.palette import palette
from buildplan.desk.whole_file import WholeFile
from buildplan.language.voice import Voice
from buildplan.patterns.registry import patterns_in
from buildplan.source.partial_validation import mapping_in
from buildplan.source.problems import UnreadableDesignError, in_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load


def outline_of(text: str, voice: Voice) -> Mapping[str, object]:
    """The controls and the courses of a design, and colours to choose from, as far as its text can
    be read; else why not."""
    outline: dict[str, object] = {
        "controls": [],
        "course": None,
        "courses": [],
        "pattern": "",
        "palette": [],
    }
    try:
        data = mapping_in(plain(load(text, "").root))
    except UnreadableDesignError as error:
        return {**outline, "unreadable": in_words(error.problem, voice)}
    course, courses = courses_of(WholeFile(data, voice))
    return {
        "controls": controls_of(data, voice),
        "course": course,
        "courses": courses,
        "pattern": next((one.name for one, _ in patterns_in(mapping_in(data.get("build")))), ""),
        "palette": palette(voice),
        "unreadable": None,
    }
