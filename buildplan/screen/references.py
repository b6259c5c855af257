"""Which steps the words of a step name ("as in step 12"), and where in the words they stand.

They are found by saying the same words with the numbers of steps marked, so that no language's
words are searched for them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from buildplan.language.heard import NUMBER, number_in
from buildplan.language.messages import Value
from buildplan.language.voice import Voice

# Messages that name steps do so in a placeholder of one of these names.
STEP_NAMES = ("step", "steps")
# Noncharacters (Unicode 23.7): in nobody's words.
OPEN, CLOSE = "\ufdd0", "\ufdd1"
_MARKED = re.compile(f"{OPEN}([^{CLOSE}]*){CLOSE}")

Reference = tuple[int, int, int]
"""Where the number of a step begins, how many letters it has, and the step."""


@dataclass(frozen=True)
class MarkingVoice(Voice):
    """A voice that marks the numbers of steps in what it says."""

    def _filled(self, message: str, values: Mapping[str, Value]) -> str:
        marked = {
            name: f"{OPEN}{self.tell(value)}{CLOSE}" if name in STEP_NAMES else value
            for name, value in values.items()
        }
        return super()._filled(message, marked)


def unmarked(text: str) -> str:
    """What a marking voice said, as any other voice says it."""
    return text.replace(OPEN, "").replace(CLOSE, "")


def references(marked: str) -> list[Reference]:
    """The steps named in what a marking voice said, with their places in it unmarked.

    Places count Unicode code points.
    """
    found = []
    for said in _MARKED.finditer(marked):
        before = len(unmarked(marked[: said.start()]))
        for number in re.finditer(NUMBER, said[1]):
            digits = number[0].rstrip(".,\u00a0\u202f")
            found.append((before + number.start(), len(digits), number_in(digits)))
    return found
