"""What the YAML parser refuses, in plain words."""

from __future__ import annotations

import re

import yaml

from buildplan.language.messages import Message, mark, message, message_whole
from buildplan.source.kinds import FileKind
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand

# what PyYAML says -> what it means, and what would be right; the first that is found counts
WORDS = (
    (
        r"character '\\t'",
        mark("a tab stands where spaces are needed"),
        mark("indent with spaces"),
    ),
    (
        r"cannot start any token",
        mark("text begins with a character that YAML keeps for itself"),
        mark('put the text in quotes: "..."'),
    ),
    (
        r"mapping values are not allowed",
        mark("a `key: value` stands where none can stand"),
        mark(
            "give each key a line of its own, indented like its neighbours, "
            "and put text that holds a colon in quotes"
        ),
    ),
    (
        r"sequence entries are not allowed|block sequence entries",
        mark("a list item (- ...) stands where none can stand"),
        mark("begin the list on the line below its key"),
    ),
    (
        r"could not find expected ':'",
        mark("a key has no colon after it"),
        mark("write `key: value`, with a space after the colon"),
    ),
    (
        r"unknown escape|expected escape",
        mark("a backslash in this text begins no known character"),
        mark("write text with backslashes in 'single quotes'"),
    ),
    (
        r"quoted scalar",
        mark("a quotation mark is opened and never closed"),
        mark("close the text with the same mark, on the same line"),
    ),
    (
        r"parsing a flow node",
        mark("a list in [ ] or keys in { } are not closed"),
        mark("close a list with ] and keys with }"),
    ),
    (
        r"parsing a flow sequence",
        mark("a list in [ ] is not closed, or a comma is missing in it"),
        mark("separate the items with commas and close the list with ]"),
    ),
    (
        r"parsing a flow mapping",
        mark("keys in { } are not closed, or a comma is missing between them"),
        mark("separate the keys with commas and close them with }"),
    ),
    (
        r"parsing a block (mapping|collection)|expected <block end>|parsing a block sequence",
        mark("this line is not indented like the lines that it belongs with"),
        mark("indent keys and items of the same list by the same number of spaces"),
    ),
    (
        r"special characters are not allowed",
        mark("there is a character that cannot be printed"),
        mark("take it out, and save the file as UTF-8 text"),
    ),
    (
        r"duplicate anchor|anchor|alias",
        mark("an & or * name is not written as YAML needs it"),
        mark("put text that begins with & or * in quotes"),
    ),
    (
        r"tag",
        mark("a ! tag is not written as YAML needs it"),
        mark("put text that begins with ! in quotes"),
    ),
    (
        r"document start|directive|YAML document",
        mark("there is something left over that belongs to no key"),
        mark("keep one design in one file, without lines that begin with --- or %"),
    ),
)
_UNQUOTED_HASH = re.compile(r"colour\s*:\s+#")


def parse_problem(error: yaml.YAMLError, text: str) -> Problem:
    """What PyYAML's `error` about `text` means for the person who wrote it."""
    said, line, column = _said(error, text)
    wrong = message("this is not written as YAML needs it")
    right = message("compare with a design that works")
    for pattern, meaning, how in WORDS:
        if re.search(pattern, said):
            wrong, right = message_whole(meaning), message_whole(how)
            break
    lines = text.splitlines()
    for number in range(line, max(line - 3, 0), -1):
        if number <= len(lines) and _UNQUOTED_HASH.search(lines[number - 1]):
            # inside { } the comment takes the rest of the line with it, bracket and all
            wrong = message("a colour without quotes: everything after # is read as a comment")
            right = message("put it in quotes: {right}", right='colour: "#1F5F8B"')
            line, column = number, lines[number - 1].index("#") + 1
            break
    return Problem(FileKind.NOT_YAML, at_column(column, wrong), by_hand(right), line=line)


def at_column(column: int, said: Message) -> Message:
    """A message with the column, from 1, that it is about."""
    return message("column {column}: {message}", column=column, message=said)


def _said(error: yaml.YAMLError, text: str) -> tuple[str, int, int]:
    """PyYAML's own words, and the line and column (from 1) that they are about."""
    if isinstance(error, yaml.MarkedYAMLError):
        said = f"{error.context or ''} {error.problem or ''}"
        mark = error.problem_mark or error.context_mark
        if "quoted scalar" in said and "end of stream" in said:
            mark = error.context_mark  # where the quotation mark is opened
        return (said, mark.line + 1, mark.column + 1) if mark else (said, 1, 1)
    if isinstance(error, yaml.reader.ReaderError):
        before = text[: error.position]
        return error.reason, before.count("\n") + 1, len(before) - before.rfind("\n")
    return str(error), 1, 1
