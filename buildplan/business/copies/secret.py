"""The seller's key: a file of their own, kept secret, that seals sold copies."""

from __future__ import annotations

from pathlib import Path

from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.source.bounded import bytes_within

LEAST_BYTES = 16  # shorter keys could be guessed
MOST_BYTES = 1024 * 1024


def secret_in(file: Path, called: str) -> bytes:
    """What a key file holds. Raises OSError, and ToldError for too short a key, with what its
    user has `called` the file."""
    secret = bytes_within(file, MOST_BYTES)
    if len(secret) < LEAST_BYTES:
        raise ToldError(
            message(
                "{file} is too short for a key: {count} bytes or more",
                file=called,
                count=LEAST_BYTES,
            )
        )
    return secret
