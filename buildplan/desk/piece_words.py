"""The words of the desk's page about a piece: course, balloons, picture, figures, by their keys."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.language.messages import mark

SIZED_TO = mark("{label}, sized to {gauge}")  # tells balloons of one name apart

_SHEETS: Mapping[str, str] = {
    "piece sheets": mark("What is shown below the piece"),
    "piece sheet made": mark("Made of"),
    "piece sheet figures": mark("Comes to"),
    "piece sheet work": mark("Order of work"),
    "piece in the file": mark("The file cannot be read as it is. Mend it in its own tab."),
    "piece others": mark("Besides"),
    "piece others stands": mark("How it stands"),
    "piece others money": mark("Prices and packs"),
    "piece others work": mark("People, minutes, notes"),
    "piece others words": mark("Brand and languages"),
}

_PICTURE: Mapping[str, str] = {
    "piece picture": mark("The piece"),
    "piece alt": mark("{name}. Drag to turn it, or use the arrow keys."),
    "piece seeing": mark("Seeing"),
    "piece nearer": mark("Nearer"),
    "piece farther": mark("Farther"),
    "piece to the front": mark("From the front"),
    "piece working": mark("Working it out ..."),
    "piece first working": mark("The piece is being worked out ..."),
    "piece before": mark("This is the piece as it was before: the design has problems."),
    "piece no shape": mark("There is no shape yet. See the problems."),
    "piece show": mark("Show"),
    "piece show dimensions": mark("Sizes, with a person"),
    "piece show labels": mark("Joint labels"),
    "piece show foot": mark("Foot and tipping"),
    "piece show gust": mark("Wind"),
    "piece show door": mark("Doorway"),
    "piece show van": mark("Van"),
    "piece gust": mark("A gust of"),
    "piece tips here": mark("tips over here first"),
}

_PAINTING: Mapping[str, str] = {
    "piece paint": mark("Paint"),
    "piece paint with": mark("Paint with"),
    "piece paint how much": mark("A tap paints"),
    "piece paint one": mark("one balloon"),
    "piece paint round": mark("all round at one place"),
    "piece paint chain": mark("the whole chain"),
    "piece paint all": mark("all of its kind"),
    "piece paint second": mark("every second place from here"),
    "piece paint third": mark("every third place from here"),
    "piece paint not here": mark("This balloon cannot be painted by itself."),
    "piece painted": mark("Painted {colour}. Balloons: {count}"),
}

_BALLOONS: Mapping[str, str] = {
    "piece balloons": mark("Balloons"),
    "piece link": mark("link balloon"),
    "piece round": mark("round"),
    "piece sized to": SIZED_TO,
    "piece balloon new": mark("One more balloon: {colour}."),
    "piece balloon gone": mark("{balloon} is taken out."),
    "piece balloon remove": mark("Take {balloon} out"),
    "piece one more colour": mark("One more colour"),
    "piece sized like": mark("Sized like"),
    "piece colours": mark("Colours"),
    "piece own colours": mark("Colours of this piece"),
    "piece named colours": mark("Colours by name"),
    "piece find colour": mark("Find a colour"),
    "piece any colour": mark("Any other colour"),
    "piece colour now": mark("The colour is {colour} now."),
}

_COURSE: Mapping[str, str] = {
    "piece course": mark("Course"),
    "piece strip keys": mark(
        "Arrow keys go along; with Shift they move a tile. + and - repeat it, Delete takes it out."
    ),
    "piece group": mark("{times} times: {tiles}"),
    "piece of tile": mark("What to do with {tile}"),
    "piece add tile": mark("Tiles to add"),
    "piece add at end": mark("Add at the end:"),
    "piece add behind": mark("Add behind {tile}:"),
    "piece add behind in": mark("Add behind {tile}, in each of {times} turns:"),
    "piece add one": mark("Add: {tile}"),
    "piece times": mark("How many times"),
    "piece once": mark("once"),
    "piece times over": mark("{times} times"),
    "piece group short": mark("{count} tiles together"),
    "piece once less": mark("Once less"),
    "piece once more": mark("Once more"),
    "piece tile outer": mark("Outer"),
    "piece tile inner": mark("Inner"),
    "piece tile back": mark("Move it back"),
    "piece tile on": mark("Move it on"),
    "piece tile copy": mark("Once more behind it"),
    "piece tile join": mark("Join with the one before"),
    "piece tile lay out": mark("Lay out singly"),
    "piece tile remove": mark("Take it out"),
    "piece tile done": mark("Done"),
    "piece tile added": mark("{tile} is added, {place} of {count}."),
    "piece tile moved": mark("{tile} is moved, {place} of {count} now."),
    "piece tile removed": mark("Taken out. {tile} is {place} of {count}."),
    "piece tile repeated": mark("Repeated: {place} of {count}."),
    "piece tile joined": mark("Joined: {place} of {count}."),
    "piece tile laid out": mark("Laid out singly: {place} of {count}."),
    "piece tile made": mark("It is {tile} now, {place} of {count}."),
    "piece offers": mark("Look for courses that close and stand"),
    "piece offers asked": mark("Looking for courses ..."),
    "piece offers found": mark("Courses found: {count}"),
    "piece no offers": mark("No course near this one closes and stands."),
    "piece offer taken": mark("The course is taken."),
}

_CONTROLS: Mapping[str, str] = {
    "piece not given": mark("not given"),
    "piece usual": mark("as usual: {what}"),
    "piece more of": mark("More of: {what}"),
    "piece has problems": mark("has problems"),
    "piece leave out": mark("Leave out: {what}"),
    "piece one less": mark("One less: {what}"),
    "piece one more": mark("One more: {what}"),
    "piece item back": mark("Move up: {what}"),
    "piece add to": mark("Add to: {what}"),
    "piece name of new": mark("Name of a new one"),
    "piece more items": mark("And {count} more, in the file."),
    "piece pick": mark("Pick"),
    "piece pick in picture": mark("Pick in the picture: {what}"),
    "piece mended": mark("Done: {what}"),
}

_PARTS: Mapping[str, str] = {
    "piece parts": mark("Parts"),
    "piece parts how": mark("Set parts on or between others by tapping in the picture."),
    "piece one more part": mark("One more part"),
    "piece part earlier": mark("Build it earlier"),
    "piece part is on": mark("on {other}"),
    "piece part is between": mark("between {first} and {second}"),
    "piece part is free": mark("on the floor, or held by its ties"),
    "piece set on": mark("Set {part} on another part"),
    "piece set on short": mark("Set on ..."),
    "piece set between": mark("Set {part} between two parts"),
    "piece set between short": mark("Set between ..."),
    "piece tie in picture": mark("Tie joints in the picture"),
    "piece pick on": mark("Tap the part that {part} is to stand on."),
    "piece pick between": mark("Tap the part to the left of {part}."),
    "piece pick between second": mark("Now the part to the right of {part}."),
    "piece pick tie": mark("Tap the first joint."),
    "piece pick tie second": mark("{first}: now tap the joint to tie it to."),
    "piece pick joint": mark("Tap a joint."),
    "piece stop picking": mark("Stop"),
    "piece part itself": mark("{part} cannot be set on itself."),
    "piece part on": mark("{part} stands on {other}."),
    "piece part first": mark("{part} is the first of the two."),
    "piece part between": mark("{part} is between {first} and {second}."),
    "piece joint taken": mark("Joint {joint} is taken."),
    "piece tie first": mark("Joint {joint} is the first of the two."),
    "piece tied": mark("{first} and {second} are tied."),
}

_FIGURES: Mapping[str, str] = {
    "piece figures": mark("What it comes to"),
    "piece no figures": mark("There are no figures until the problems are mended."),
    "piece all figures": mark("All figures"),
    "piece height": mark("Height"),
    "piece width": mark("Width"),
    "piece depth": mark("Depth"),
    "piece weight": mark("Weight"),
    "piece air": mark("Air"),
    "piece hours": mark("Work of one person"),
    "piece cost": mark("Balloons cost"),
    "piece no prices": mark("For the cost, give the prices of packs or balloons."),
    "piece problems": mark("Problems"),
    "piece no problems": mark("No problem is known."),
    "piece looking": mark("Looking for problems ..."),
    "piece show where": mark("Show where: {joints}"),
    "piece to its place": mark("To its control"),
}

_WORK: Mapping[str, str] = {
    "piece work": mark("Order of work"),
    "piece work along": mark("Along the work"),
    "piece one step back": mark("One step back"),
    "piece one step on": mark("One step on"),
    "piece step of": mark("Step {number} of {count}: {name}"),
    "piece all done": mark("All is built: {count} steps."),
    "piece as printed": mark("As it will be printed"),
    "piece printed step": mark("Step {number} as it is printed: {name}"),
}

PIECE: Mapping[str, str] = {
    **_SHEETS,
    **_PICTURE,
    **_PAINTING,
    **_BALLOONS,
    **_COURSE,
    **_CONTROLS,
    **_PARTS,
    **_FIGURES,
    **_WORK,
}
