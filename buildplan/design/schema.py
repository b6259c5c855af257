"""The JSON Schemas of design files and event files, for editors that complete and check them."""

from __future__ import annotations

from typing import Any

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from buildplan.design.event import Event
from buildplan.design.model import Design
from buildplan.source.values import FileModel

DIALECT = "https://json-schema.org/draft/2020-12/schema"


class _ClosedKeys(GenerateJsonSchema):
    """Keys that do not match their pattern are refused, as the reader refuses them."""

    def dict_schema(self, schema: core_schema.DictSchema) -> JsonSchemaValue:
        made = super().dict_schema(schema)
        if "patternProperties" in made:
            made["additionalProperties"] = False
        return made


def design_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a design file, made from the data model itself.

    It says what one key can say by itself; what keys must agree on (a balloon's key that is
    nowhere defined, a course that does not come round) only `read_design` can tell.
    """
    return _schema(Design, "buildplan design file")


def event_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of an event file."""
    return _schema(Event, "buildplan event file")


def _schema(form: type[FileModel], title: str) -> dict[str, Any]:
    schema = form.model_json_schema(by_alias=True, schema_generator=_ClosedKeys)
    return {"$schema": DIALECT, **schema, "title": title}
