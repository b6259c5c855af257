"""Strips of latex are among the tools where the words of some step bind knots with one."""

from __future__ import annotations

import pytest
import shipped

from buildplan.booklet.common.needs import SCISSORS, STRIPS, tools_of


@pytest.mark.parametrize(
    "name", [*shipped.SHIPPED, "gallery/leo_5", "gallery/lamp_octahedron", "gallery/broad_star"]
)
def test_strips_are_brought_where_a_step_asks_for_one(name: str) -> None:
    book = shipped.book_of(name)
    told = " ".join(words.text for words in book.words)
    tools = tools_of(book)
    assert (STRIPS in tools) == ("strip of latex" in told)
    assert (SCISSORS in tools) != (STRIPS in tools)
