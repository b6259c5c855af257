"""What is written on tags, in few words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from buildplan.language.phrases import clauses, runs_told
from buildplan.language.voice import Voice


def tags_told(labels: Sequence[str], voice: Voice) -> str:
    """Labels by their letters, each once: `A1 A5 A10; B1 to B8 (3 of each)`."""
    alike: dict[tuple[str, int], list[int]] = {}
    for label, times in Counter(labels).items():
        letters = label.rstrip("0123456789")
        alike.setdefault((letters, times), []).append(int(label[len(letters) :] or 0))
    said = []
    for (letters, times), found in alike.items():
        numbers = sorted(found)
        joints = " ".join(runs_told(voice, [f"{letters}{n or ''}" for n in numbers], numbers))
        each = voice.say("{joints} ({number} of each)", joints=joints, number=times)
        said.append(joints if times == 1 else each)
    return clauses(voice, said)
