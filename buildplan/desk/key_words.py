"""What the keys of a design file and their choices are called on the desk, as a person would say
it: marked messages. A key that means different things is told by the class that it stands in."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.language.messages import mark

KEYS: Mapping[str, str] = {
    # the piece
    "buildplan": mark("Version of the file"),
    "name": mark("Name of the piece"),
    "units": mark("Measured in"),
    "balloons": mark("Balloons"),
    "build": mark("How it is made"),
    "stand_on": mark("Stands on"),
    "top": mark("At the top"),
    "base": mark("Weighted base"),
    "pole": mark("Held by a pole"),
    "hung": mark("Hangs from above"),
    "tied_to_wall": mark("Tied to a wall"),
    "crew": mark("People who build it"),
    "prices": mark("Price of one balloon"),
    "pack_sizes": mark("Balloons in a pack"),
    "pack_prices": mark("Price of a pack"),
    "currency": mark("Currency"),
    "rates": mark("Work and margin"),
    "spare": mark("Extra balloons, as a share"),
    "labour": mark("Minutes for one operation"),
    "brand": mark("Brand"),
    "font": mark("File of the font"),
    "text": mark("Notes to print"),
    "colour_pattern": mark("Order of colours"),
    "translations": mark("In other languages"),
    "constants": mark("Measured constants"),
    # a balloon
    "kind": mark("Kind"),
    "nominal": mark("Size on the bag"),
    "inflate_to": mark("Sized to"),
    "colour": mark("Colour"),
    "label": mark("Called"),
    "tie_to_tie": mark("Tie-to-tie, measured"),
    "tie_to_tie_within": mark("Off by at most, as a share"),
    "chain_of_ten": mark("Chain of ten, measured"),
    "finish": mark("Finish"),
    # what patterns have alike
    "long": mark("Long chains of"),
    "brace": mark("Braces of"),
    "single": mark("Singles of"),
    "lock": mark("Locks of"),
    "extra": mark("More balloons"),
    "course": mark("Course"),
    "cells": mark("Cells"),
    "repeat": mark("How many"),
    "closed": mark("Closed into rings"),
    "chains": mark("Long chains"),
    "around": mark("Balloons around"),
    "rings": mark("Rings"),
    "ring": mark("Rings of"),
    "between": mark("Between rings"),
    "across": mark("Cells wide"),
    "up": mark("Cells high"),
    "layers": mark("Layers"),
    "row": mark("Rows of"),
    "upright": mark("Uprights of"),
    "openings": mark("Openings"),
    "along": mark("From the left"),
    "wide": mark("Wide"),
    "high": mark("High"),
    "shape": mark("Which solid"),
    "edge": mark("Edges of"),
    "short": mark("Shorter struts of"),
    "leg": mark("Balloons up a leg"),
    "span": mark("Balloons from leg to leg"),
    "bar": mark("Bars of"),
    "height": mark("Height"),
    "joints": mark("Joints"),
    "balloon": mark("Balloon"),
    "from": mark("From joint"),
    "to": mark("To joint"),
    # a figure
    "strokes": mark("Strokes"),
    "heading": mark("Sets out at, in degrees"),
    "stroke": mark("From stroke"),
    "cell": mark("From its cell"),
    "side": mark("From its side"),
    # an assembly
    "parts": mark("Parts"),
    "ties": mark("Ties between parts"),
    "design": mark("Its design file"),
    "on": mark("Set on"),
    "left_of": mark("To the left of"),
    "right_of": mark("To the right of"),
    "in_front_of": mark("In front of"),
    "behind": mark("Behind"),
    "mirrored": mark("Mirrored"),
    "to_next": mark("Ties to the next"),
    # colours in order
    "stripes": mark("Stripes"),
    "spiral": mark("Spiral"),
    "pitch": mark("Balloons for one turn"),
    "direction": mark("Winds to the"),
    "fade": mark("Fade"),
    "there_and_back": mark("There and back"),
    # money, brand, words
    "hour": mark("An hour of work"),
    "margin": mark("Margin, as a share"),
    "delivery": mark("Delivery"),
    "tax": mark("Tax, as a share"),
    "contact": mark("Contact"),
    "accent": mark("Second colour"),
    "logo": mark("Logo file"),
    "licence": mark("Licence"),
    "link": mark("Page for phones"),
    "labels": mark("Names of the balloons"),
    "width": mark("Width"),
    "depth": mark("Depth"),
    "weight": mark("Weight"),
    "value": mark("Likely value"),
    "low": mark("At least"),
}

# by class and key, where the key alone would mislead
KEYS_OF: Mapping[str, str] = {
    "Globe.long": mark("Longer struts of"),
    "Letters.long": mark("Outlines of"),
    "Letters.text": mark("Text"),
    "Letters.cells": mark("Cells high"),
    "Arch.kind": mark("Shape"),
    "Wall.between": mark("Between layers"),
    "Opening.up": mark("From the floor"),
    "Graph.balloons": mark("Balloons between joints"),
    "AssemblyPart.name": mark("Short name"),
    "AssemblyPart.between": mark("Tied between"),
    "AssemblyPart.lower": mark("Places lower"),
    "AssemblyPart.build": mark("Made as"),
    "AssemblyPart.stand_on": mark("Upright on"),
    "Brand.name": mark("Name of the brand"),
    "ConstantRange.high": mark("At most"),
}

PATTERN_NAMES: Mapping[str, str] = {
    "tube": mark("Tube"),
    "column": mark("Column"),
    "wall": mark("Wall"),
    "solid": mark("Solid"),
    "globe": mark("Globe"),
    "arch": mark("Arch"),
    "graph": mark("Joint by joint"),
    "letters": mark("Letters"),
    "figure": mark("Figure"),
    "assembly": mark("Assembly"),
}

_FIGURE_CELLS: Mapping[str, str] = {
    "straight": mark("straight"),
    "corner_left": mark("corner to the left"),
    "corner_right": mark("corner to the right"),
    "fan_left": mark("fan to the left"),
    "fan_right": mark("fan to the right"),
}

# by class and key, the words of what can be chosen
CHOICES: Mapping[str, Mapping[str, str]] = {
    "Design.units": {"in": mark("inches"), "cm": mark("centimetres")},
    "Balloon.kind": {"link": mark("link balloon"), "round": mark("round")},
    "Tube.chains": {
        "2": mark("2: a flat ladder"),
        "3": mark("3: a triangle"),
        "4": mark("4: a square"),
    },
    "Wall.layers": {"1": mark("one sheet"), "2": mark("two, tied together")},
    "Arch.kind": {"square": mark("square, two corners"), "gabled": mark("gabled, three bends")},
    "FigureStroke.side": {
        "left": mark("left"),
        "ahead": mark("ahead"),
        "right": mark("right"),
    },
    "FigureStroke.cells": _FIGURE_CELLS,
    "FigureRun.cells": _FIGURE_CELLS,
    "ColourPattern.direction": {"left": mark("left"), "right": mark("right")},
    "Solid.shape": {
        "tetrahedron": mark("tetrahedron"),
        "cube": mark("cube"),
        "octahedron": mark("octahedron"),
        "dodecahedron": mark("dodecahedron"),
        "icosahedron": mark("icosahedron"),
        "cuboctahedron": mark("cuboctahedron"),
        "truncated tetrahedron": mark("truncated tetrahedron"),
    },
}

# the keys that a mapping of the file may have, where they are a choice of a few
STAGES: Mapping[str, str] = {
    "size": mark("Sizing"),
    "pair": mark("Pairs"),
    "chain": mark("Chains"),
    "close rings": mark("Closing rings"),
    "brace": mark("Braces"),
    "lock joints": mark("Locks"),
    "finish": mark("Finishing"),
}
OPERATIONS: Mapping[str, str] = {
    "size": mark("size a balloon"),
    "pair": mark("tie a pair"),
    "tie off": mark("tie off a neck"),
    "chain": mark("tie a pair to a chain"),
    "close ring": mark("close a ring"),
    "tag": mark("mark a joint"),
    "lay": mark("lay a chain"),
    "brace": mark("tie a brace"),
    "settle": mark("settle a brace"),
    "single": mark("tie a single"),
    "join": mark("join knots"),
    "turn over": mark("turn the piece over"),
    "lock": mark("lock a joint"),
    "inspect": mark("look it over"),
    "stand up": mark("stand it up"),
}
COLOURED: Mapping[str, str] = {
    "A": mark("Chain A"),
    "B": mark("Chain B"),
    "C": mark("Chain C"),
    "D": mark("Chain D"),
    "long": mark("All long chains"),
    "brace": mark("Braces"),
    "ring": mark("Rings"),
    "between": mark("Between rings"),
    "row": mark("Rows"),
    "upright": mark("Uprights"),
}
MAPS: Mapping[str, Mapping[str, str]] = {
    "text": STAGES,
    "labour": OPERATIONS,
    "colour_pattern": COLOURED,
    "long": COLOURED,
}

# what one item of a list is called
ITEMS: Mapping[str, str] = {
    "extra": mark("Added balloon {number}"),
    "openings": mark("Opening {number}"),
    "ties": mark("Tie {number}"),
    "to_next": mark("Tie {number}"),
    "parts": mark("Part {number}"),
    "balloons": mark("Balloon {number}"),
    "strokes": mark("Stroke {number}"),
    "cells": mark("Cell {number}"),
}
ITEM = mark("Number {number}")

# what an open tube can stand on, beside joints of it
ENDS: Mapping[str, str] = {
    "start": mark("The start"),
    "finish": mark("The finish"),
    "ends": mark("Both ends"),
}

# the other forms that a value can have
ONE_FOR_ALL = mark("One balloon for all chains")
ONE_FOR_EACH = mark("A balloon for each chain")
WITH_A_BALLOON = mark("Another balloon for it")
WITHOUT_A_BALLOON = mark("As it is usual")
ONE_VALUE = mark("One value")
A_RANGE = mark("A range")
IN_TURN = mark("In turn")
