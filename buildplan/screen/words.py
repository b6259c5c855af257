"""What a piece's data say in words, in every language: the one place that reads the words of
steps, stages and measures."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from buildplan.booklet.common.book import Book
from buildplan.design.building import build_framework
from buildplan.design.measures import gauged_words, size_words
from buildplan.design.model import Design
from buildplan.design.translating import translated_brand, translated_design
from buildplan.evaluation.figures import minutes_words
from buildplan.evaluation.told_figures import told_figures
from buildplan.instructions.model import Figures, StepWords
from buildplan.instructions.stages import stage_name
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.screen.references import MarkingVoice, Reference, references
from buildplan.sequence.model import Stage

Said = dict[str, str]


@dataclass(frozen=True)
class Told:
    """The words of one language: the design in it, its steps with the steps that each text
    names, the stages and the gauges."""

    design: Design
    steps: tuple[StepWords, ...]
    refers: tuple[list[Reference], ...]
    stages: Mapping[str, str]
    gauges: Mapping[str, str]


def told_in(book: Book, voices: Iterable[Voice]) -> Mapping[str, Told]:
    """The words of a piece in the language of each voice, by its code."""
    figures = told_figures(book.framework, book.shape, book.units, book.constants)
    return {voice.language: _told(book, voice, figures) for voice in voices}


def _told(book: Book, voice: Voice, figures: Figures) -> Told:
    design = translated_design(book.design, voice.language)
    framework = build_framework(design)
    marking = MarkingVoice(voice.language)
    steps, marked = (
        tell_steps(book.steps, framework, book.units, each, figures) for each in (voice, marking)
    )
    return Told(
        design=design,
        steps=steps,
        refers=tuple(references(step.text) for step in marked),
        stages={str(stage): stage_name(voice, stage, framework, book.steps) for stage in Stage},
        gauges={
            key: voice.tell(gauged_words(balloon.gauge_m, book.units))
            for key, balloon in framework.balloons.items()
        },
    )


def figures_told(book: Book, voices: Iterable[Voice]) -> list[tuple[Said, Said]]:
    """The figures on the cover, each with what it is, in every language."""
    facts = book.facts
    told: list[tuple[Said, Said]] = [({}, {}), ({}, {}), ({}, {}), ({}, {})]
    for voice in voices:
        size = " x ".join(
            voice.tell(size_words(length, book.units))
            for length in (facts.width_m, facts.height_m, facts.depth_m)
        )
        said = (
            (voice.say("Size (width, height, depth), an estimate"), size),
            (voice.say("Balloons"), voice.whole(facts.total)),
            (voice.say("Steps"), voice.whole(len(book.steps))),
            (voice.say("Work, one pair of hands"), minutes_words(facts.work_minutes, voice)),
        )
        for (name, value), (name_said, value_said) in zip(told, said, strict=True):
            name[voice.language], value[voice.language] = name_said, value_said
    return told


def brand_words(book: Book, voices: Iterable[Voice]) -> dict[str, object] | None:
    """The seller's name, colour and words; None without one."""
    brand = book.design.brand if book.branding is None else book.branding.brand
    if brand is None:
        return None
    contact, licence = {}, {}
    for voice in voices:
        own = translated_brand(brand, voice.language)
        contact[voice.language], licence[voice.language] = own.contact, own.licence
    return {"name": brand.name, "colour": brand.colour, "contact": contact, "licence": licence}
