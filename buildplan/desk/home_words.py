"""The words of the desk's page about home, new designs and printing, by their keys."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.language.messages import mark

HOME: Mapping[str, str] = {
    "desk": mark("The desk"),
    "designs": mark("Designs"),
    "working": mark("Being worked out ..."),
}
