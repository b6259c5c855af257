"""The words of the desk's page about a piece: its course, its balloons, its file, by their keys."""

from __future__ import annotations

from collections.abc import Mapping

PIECE: Mapping[str, str] = {}
