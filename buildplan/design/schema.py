"""The JSON Schema of the design file, for editors that complete and check it."""

from __future__ import annotations

from typing import Any

from buildplan.design.model import Design

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def design_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a design file, made from the data model itself.

    It says what one key can say by itself; what keys must agree on (a balloon's key that is
    nowhere defined, a course that does not come round) only `read_design` can tell.
    """
    schema = Design.model_json_schema(by_alias=True)
    return {"$schema": DIALECT, **schema, "title": "buildplan design file"}
