"""The part of a design file that says which pattern a piece is, and its keys."""

from __future__ import annotations

from typing import TypeVar

from pydantic import ConfigDict

from buildplan.source.values import FileModel

Keys = TypeVar("Keys", bound=FileModel)


class Build(FileModel):
    """How the piece is made: exactly one pattern."""

    # its fields are the patterns, which `patterns.registry` gives it
    model_config = ConfigDict(
        defer_build=True, json_schema_extra={"minProperties": 1, "maxProperties": 1}
    )

    @property
    def given(self) -> tuple[str, FileModel]:
        """The name of the pattern and its keys, in a build that has been checked."""
        named = ((name, getattr(self, name, None)) for name in type(self).model_fields)
        return next((name, keys) for name, keys in named if keys is not None)

    def keys_of(self, kind: type[Keys]) -> Keys | None:
        """The keys, if they are of this kind."""
        _, keys = self.given
        return keys if isinstance(keys, kind) else None


def built_as(name: str, keys: FileModel) -> Build:
    """A build of one pattern."""
    return Build.model_validate({name: keys})
