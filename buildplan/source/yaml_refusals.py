"""What is wrong with a file as YAML: for each its code, the words, and what would be right."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.messages import Message, listing, message
from buildplan.language.shown import sign_name
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import key_in_words, shown
from buildplan.source.suggestions import Suggestion, by_hand

Refusal = tuple[FileKind, Message, Suggestion]


def two_documents() -> Refusal:
    """A second document in the file."""
    return (
        FileKind.TWO_DOCUMENTS,
        message("a second document begins here (---), but a file holds one design"),
        by_hand(message("put it into a file of its own")),
    )


def too_many_values(most: int) -> Refusal:
    """A file with more values than any design has."""
    return (
        FileKind.TOO_LARGE,
        message(
            "this file holds more than {count} values, which no design does",
            count=most,
        ),
        by_hand(message("use repeat for long courses")),
    )


def too_deep(most: int) -> Refusal:
    """Lists and mappings nested too deep."""
    return (
        FileKind.TOO_DEEP,
        message("lists and mappings are nested more than {count} deep", count=most),
        by_hand(message("a repeat within a repeat goes as deep as a design needs")),
    )


def alias_of_nothing(name: str) -> Refusal:
    """An alias that names nothing."""
    return (
        FileKind.ALIAS_OF_NOTHING,
        message("the alias {alias} names nothing", alias=f"*{name[:40]}"),
        by_hand(
            message(
                "mark what it stands for with {anchor}, above it, or put text in quotes",
                anchor=f"&{name[:40]}",
            )
        ),
    )


def alias_of_itself(name: str) -> Refusal:
    """An alias within what it names."""
    return (
        FileKind.ALIAS_OF_ITSELF,
        message("the alias {alias} stands inside what it names", alias=f"*{name[:40]}"),
        by_hand(message("write it out in full")),
    )


def aliases_too_large(most: int) -> Refusal:
    """Aliases that stand for too much."""
    return (
        FileKind.TOO_LARGE,
        message(
            "the aliases of this file stand for more than {count} values",
            count=most,
        ),
        by_hand(message("write the design out with fewer aliases")),
    )


def tagged(name: str) -> Refusal:
    """An explicit tag."""
    return (
        FileKind.TAG,
        message("the tag {tag} has no place in a design", tag=shown(name)),
        by_hand(message("leave the tag out")),
    )


def unprintable(signs: Sequence[str]) -> Refusal:
    """Characters that cannot be printed."""
    return (
        FileKind.UNPRINTABLE,
        message(
            "this text holds {signs}: that cannot be printed", signs=listing(map(sign_name, signs))
        ),
        by_hand(message("take them out")),
    )


def leading_zero(written: str, bare: str) -> Refusal:
    """A number with a nought before it."""
    return (
        FileKind.LEADING_ZERO,
        message("{number} has a leading zero, which some read as octal", number=written),
        by_hand(message("write {number} for the number, or put it in quotes as text", number=bare)),
    )


def key_no_text() -> Refusal:
    """A key that is a list or a mapping."""
    return (
        FileKind.KEY_NO_TEXT,
        message("a list or mapping cannot be a key"),
        by_hand(message("use a word")),
    )


def key_twice(key: str, line: int) -> Refusal:
    """A key that is given again; `line` is that of the first."""
    return (
        FileKind.KEY_TWICE,
        message(
            "the key {key} is given twice, first on line {line}",
            key=key_in_words(key),
            line=line,
        ),
        by_hand(message("keep one of the two")),
    )


def merge_of_no_mapping() -> Refusal:
    """A merge key with something else than mappings."""
    return (
        FileKind.MERGE_OF_NO_MAPPING,
        message("the merge key << takes in mappings only"),
        by_hand(message("write <<: *name, where &name marks a mapping")),
    )
