"""Slips of typing that YAML reads otherwise than they were meant, or not at all."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

import yaml

from buildplan.language.messages import Message, message
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mark
from buildplan.source.problems import Problem
from buildplan.source.suggestions import Suggestion, by_hand
from buildplan.source.yaml_words import at_column

# no-break spaces, and the mark that some editors begin a file with: to the eye they are spaces,
# and YAML does not take them for any
LONGEST_SHOWN = 200  # of a line that is told as it stands
PLAIN_SPACES = dict.fromkeys(map(ord, "\u00a0\u2007\u202f\ufeff"), " ")
_CURLY = re.compile("[\u201c\u201d\u201e\u00ab\u2018](.*)[\u201d\u201c\u00bb\u2019]")
# a list item whose dash has no space after it
_DASH = re.compile(r"(\s*)(-[A-Za-z\[{][\w.-]*)")
# a list item with another dash than a hyphen, a key whose colon has no space after it, or none
_LONG_DASH = re.compile(r"(\s*)[\u2013\u2014\u2212] *(\S.*)")
_COLON = re.compile(r"(\s*(?:- )?)([a-z_]+):([^\s/].*)")
_NO_COLON = re.compile(r"(\s*(?:- )?)([a-z_]+) +([^\s:#\[{]+)")
_FOLDED_DASH = re.compile(r"(?:^|(?<=\s))-[A-Za-z]\w*")
# what a text holds that runs on into the keys below it
_KEY_INSIDE = re.compile(r"\b[a-z_]+: ")

Slip = tuple[FileKind, Message, Suggestion, Mark]


def slips_of(event: yaml.ScalarEvent, lines: Sequence[str]) -> Iterator[Slip]:
    """Slips in text that parses: it is something else than was meant."""
    start, end = event.start_mark, event.end_mark
    assert start is not None, "every event that is parsed has its place"
    assert end is not None, "and its end"
    written, at = event.value, (start.line + 1, start.column + 1)
    if event.style is not None:
        if event.style in "\"'" and end.line > start.line and _KEY_INSIDE.search(written):
            unclosed = message("a quotation mark is opened here and not closed on its line")
            right = by_hand(message("close the text with the same mark, on the same line"))
            yield FileKind.QUOTE_NOT_CLOSED, unclosed, right, at
        return
    curly = _CURLY.fullmatch(written)
    if curly:
        straight = f'"{curly[1]}"'
        said = message("the quotation marks of {text} are not straight", text=written)
        right = by_hand(message("write {right}", right=straight))
        yield FileKind.CURLY_QUOTES, said, right, at
    dash = _FOLDED_DASH.search(written)
    if dash is None:
        return
    for number in range(start.line, min(end.line + 1, len(lines))):
        if lines[number].strip().startswith(dash[0]):
            column = lines[number].index(dash[0]) + 1
            told = _dash_without_space(dash[0], column)
            yield (FileKind.DASH_NEEDS_SPACE, *told, (number + 1, column))
            return


def slip_near(lines: Sequence[str], line: int) -> Problem | None:
    """A slip of typing that explains why the text does not parse at a line, from 1."""
    for number in (line, line - 1, line + 1):
        dash = _DASH.match(lines[number - 1]) if 1 <= number <= len(lines) else None
        if dash:
            return Problem(
                FileKind.NOT_YAML, *_dash_without_space(dash[2], dash.start(2) + 1), line=number
            )
    for number in (line, line - 1, line + 1):
        mistyped = _mistyped(lines[number - 1]) if 1 <= number <= len(lines) else None
        if mistyped:
            return Problem(FileKind.NOT_YAML, *mistyped, line=number)
    opened = _opened_quote(lines, line)
    if opened is not None:
        number, column = opened
        return Problem(
            FileKind.NOT_YAML,
            at_column(column, message("a quotation mark is opened and never closed")),
            by_hand(message("close the text with the same mark, on the same line")),
            line=number,
        )
    return None


def _mistyped(line: str) -> tuple[Message, Suggestion] | None:
    """What is wrong with a line whose dash is no hyphen, or whose colon is not as YAML needs it."""
    if len(line) > LONGEST_SHOWN:
        return None
    dash, colon, bare = (form.fullmatch(line.rstrip()) for form in (_LONG_DASH, _COLON, _NO_COLON))
    if dash:
        said = message("the dash of {item} is not a hyphen", item=line.strip())
        return at_column(dash.end(1) + 1, said), by_hand(
            message("write {right}", right=f"- {dash[2]}")
        )
    if colon:
        said = message("the colon of {item} has no space after it", item=f"{colon[2]}:{colon[3]}")
        return at_column(colon.end(2) + 1, said), by_hand(
            message("write {right}", right=f"{colon[2]}: {colon[3]}")
        )
    if bare:
        said = message("there is no colon in {item}", item=f"{bare[2]} {bare[3]}")
        return at_column(bare.end(2) + 1, said), by_hand(
            message("write {right}", right=f"{bare[2]}: {bare[3]}")
        )
    return None


def _dash_without_space(item: str, column: int) -> tuple[Message, Suggestion]:
    """What is said of a list item such as `-tip`."""
    return (
        at_column(column, message("the dash of {item} has no space after it", item=item)),
        by_hand(message("write {right}", right=f"- {item.removeprefix('-')}")),
    )


def _opened_quote(lines: Sequence[str], line: int) -> tuple[int, int] | None:
    """Line and column, from 1, of the first quotation mark up to a line that is not closed on the
    line where it is opened."""
    for number, text in enumerate(lines[:line], 1):
        quote, column = "", 0
        for i, sign in enumerate(text):
            if quote:
                if sign == quote and not (quote == '"' and text[i - 1] == "\\"):
                    quote = ""
            elif sign in "\"'" and (i == 0 or text[i - 1] in " [{,:\t"):
                quote, column = sign, i + 1
            elif sign == "#" and (i == 0 or text[i - 1] == " "):
                break
        if quote:
            return number, column
    return None
