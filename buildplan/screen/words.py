"""What a piece's data say in words, in every language: the one place that reads the words of
steps, stages and measures."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from buildplan.booklet.common.book import Book
from buildplan.design.building import build_framework
from buildplan.design.measures import length_words
from buildplan.design.model import Design
from buildplan.design.translating import translated_design
from buildplan.evaluation.evaluating import NEW_PARTS
from buildplan.language.speaking import speaking
from buildplan.language.voice import Voice
from buildplan.sequence.model import Stage, Step
from buildplan.sequence.reach import Reach, find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.words.stages import stage_name


@dataclass(frozen=True)
class Told:
    """The words of one language: the design in it, its steps, the stages and the gauges."""

    design: Design
    steps: tuple[Step, ...]
    stages: Mapping[str, str]
    gauges: Mapping[str, str]


def told_in(book: Book, voices: Iterable[Voice]) -> Mapping[str, Told]:
    """The words of a piece in the language of each voice, by its code."""
    reach = find_reach(book.framework, book.shape)
    return {voice.language: _told(book, voice, reach) for voice in voices}


def _told(book: Book, voice: Voice, reach: Reach) -> Told:
    with speaking(voice.language):
        design = translated_design(book.design)
        framework = build_framework(design)
        steps = plan_steps(framework, NEW_PARTS[book.edition], book.units, reach)
        return Told(
            design=design,
            steps=steps,
            stages={str(stage): stage_name(stage) for stage in Stage},
            gauges={
                key: length_words(balloon.gauge_m, book.units)
                for key, balloon in framework.balloons.items()
            },
        )
