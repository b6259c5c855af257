"""What the kinds of cell are called, and what they do to the piece."""

from __future__ import annotations

from buildplan.language.speaking import say, say_in


def cell_name(name: str) -> str:
    """What a kind of cell is called; a cell given by numbers has no name of its own."""
    names = {
        "straight": say_in("kind of cell", "straight"),
        "fan": say_in("kind of cell", "fan"),
        "fan_in": say_in("kind of cell", "inward fan"),
        "tip": say_in("kind of cell", "tip"),
        "dip": say_in("kind of cell", "dip"),
    }
    return names.get(name) or say_in("kind of cell", "uneven cell")


def a_cell(name: str) -> str:
    names = {
        "straight": say("a straight"),
        "fan": say("a fan"),
        "fan_in": say("an inward fan"),
        "tip": say("a tip"),
        "dip": say("a dip"),
    }
    return names.get(name) or say("an uneven cell")


def the_cell(name: str) -> str:
    names = {
        "straight": say("the straight"),
        "fan": say("the fan"),
        "fan_in": say("the inward fan"),
        "tip": say("the tip"),
        "dip": say("the dip"),
    }
    return names.get(name) or say("the uneven cell")


def cell_effect(name: str) -> str:
    effects = {
        "fan": say("The piece bends inward here."),
        "fan_in": say("The piece bends outward here."),
        "tip": say("A corner stands out there."),
        "dip": say("A notch folds in there."),
    }
    return effects.get(name, "")
