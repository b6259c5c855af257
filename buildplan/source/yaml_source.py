"""A YAML text as plain data, with the line of every key and item.

PyYAML scans and parses (its safe, pure-Python loader, so that every machine tells a mistake
in the same words); the composing is our own (`yaml_composer`), because a design file is read more
strictly and more plainly than YAML 1.1 allows.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.source.mistake import Mistake
from buildplan.source.yaml_composer import Composer
from buildplan.source.yaml_nodes import Node
from buildplan.source.yaml_slips import PLAIN_SPACES


@dataclass(frozen=True)
class Source:
    """A text that parses: its tree, and what is wrong with it as YAML."""

    root: Node
    mistakes: Sequence[Mistake]


def load(text: str, file: str) -> Source:
    """Read `text` as one YAML document; `file` is its name for messages.

    Raises UnreadableDesignError when it does not parse, holds no document or several, is
    nested too deep, or has aliases that are unknown, circular, or would swell too far.
    """
    composer = Composer(text.translate(PLAIN_SPACES), file)
    return Source(composer.document(), tuple(composer.mistakes))
