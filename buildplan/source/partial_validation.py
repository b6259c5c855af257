"""As much of a part of the file as is right, so that one mistake does not hide others."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, Generic, TypeVar, cast

from pydantic import ConfigDict, TypeAdapter, ValidationError

from buildplan.source.values import FileModel

Part = TypeVar("Part", bound=FileModel)


def mapping_in(value: object) -> dict[str, Any]:
    """`value` if it is a mapping, else an empty one."""
    return value if isinstance(value, dict) else {}


def list_in(value: object) -> list[Any]:
    """`value` if it is a list, else an empty one."""
    return value if isinstance(value, list) else []


@dataclass(frozen=True)
class Salvaged(Generic[Part]):
    """A part of the file of which the fields named in `wrong` must not be read: they are
    missing though they are needed, or what the file gives for them is a mistake."""

    part: Part
    wrong: frozenset[str]

    def right(self, *names: str) -> bool:
        """Whether all the fields of these names can be read."""
        return self.wrong.isdisjoint(names)


def salvage(model: type[Part], data: object) -> Salvaged[Part]:
    """Read each field of `data` by itself, as `model` says."""
    given = mapping_in(data)
    read: dict[str, Any] = {}
    wrong: set[str] = set()
    for name, about in model.model_fields.items():
        key = about.alias or name
        if key not in given:
            if about.is_required():
                wrong.add(name)
            continue
        try:
            read[key] = _reader(model, name).validate_python(given[key])
        except ValidationError:
            wrong.add(name)
    return Salvaged(cast(Part, model.model_construct(**read)), frozenset(wrong))


@cache
def _reader(model: type[FileModel], name: str) -> TypeAdapter[Any]:
    about = model.model_fields[name]
    kind: Any = about.annotation
    for limit in about.metadata:
        kind = Annotated[kind, limit]
    if isinstance(about.annotation, type) and issubclass(about.annotation, FileModel):
        return TypeAdapter(kind)
    return TypeAdapter(kind, config=ConfigDict(strict=True))
