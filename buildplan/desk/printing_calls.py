"""Calls that print."""

from __future__ import annotations

from typing import Any

CALLS: tuple[Any, ...] = ()
