"""The words of the companion page itself: its screens, its buttons, what it says of a repair.

They are said whole: the page fills their {placeholders}, in the order that a language has.
"""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.instructions.repairs import ACTS, BURST_CAUTION, LOCK_ACTS
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.sequence.repair import Deed

GENERAL: Mapping[str, str] = {
    "skip": mark("To the main part"),
    "screens": mark("Screens"),
    "nav step": mark("Step"),
    "nav list": mark("All steps"),
    "nav find": mark("Find"),
    "nav film": mark("Film"),
    "nav burst": mark("Burst"),
    "nav more": mark("More"),
    "screen list": mark("All steps"),
    "screen find": mark("Find a joint"),
    "screen film": mark("Film"),
    "screen burst": mark("A balloon burst"),
    "screen more": mark("More"),
    "cautions": mark("Cautions"),
    "cautions first": mark("Read this first"),
    "have read": mark("I have read this: begin"),
    "on with it": mark("On with the work"),
    "draft": mark("DRAFT: this piece has problems"),
    "not kept": mark(
        "This browser does not let the page keep anything. Ticks are lost when it is closed: hand "
        "them over by code, or save the log, first."
    ),
    "other version": mark(
        "There are ticks of another version of this design on this device. They are kept, and not "
        "used here, for steps may differ."
    ),
    "opened twice": mark("This page is open twice. The ticks of both are kept together."),
    "finished picture": mark("{piece}, finished, with a person beside it."),
    "serial": mark("Serial {serial}"),
    "buyer": mark("made for {buyer}"),
    "back to step": mark("Back to step {number}"),
    "back to screen": mark("Back to {screen}"),
}

STEPS: Mapping[str, str] = {
    "step of": mark("Step {number} of {count}"),
    "step picture": mark("{title}, from the builder's seat. {row}"),
    "back": mark("Back"),
    "next": mark("Next"),
    "to the seat": mark("Back to the seat"),
    "all labels": mark("Labels"),
    "nearer": mark("Nearer"),
    "farther": mark("Farther"),
    "rows": mark("To tick off"),
    "check": mark("Check:"),
    "show": mark("Show {name} in the picture"),
    "show short": mark("Show"),
    "minutes and notes": mark("Minutes and notes"),
    "minutes taken": mark("Minutes it took"),
    "start watch": mark("Start the watch"),
    "stop watch": mark("Stop the watch"),
    "note": mark("Note"),
    "how it is done": mark("How it is done"),
    "map": mark("Joint map"),
    "map how": mark("The piece unrolled flat, as in print. Tap a joint."),
    "no pictures": mark("This browser cannot show the printed pictures; the booklet has them."),
    "done": mark("done"),
    "done of": mark("{done} of {count} done"),
    "find how": mark("Write a joint's label, or tap a balloon in the picture."),
    "joint": mark("Joint"),
    "no joint": mark("There is no joint {joint}."),
    "joint named": mark("Joint {joint}"),
    "its neck": mark("neck of {link}, {balloon}"),
    "its tail": mark("tail of {link}, {balloon}"),
    "its lock": mark("lock: two rounds, {balloon}"),
    "its steps": mark("Steps that touch it"),
    "joint picture": mark("Joint {joint} and the balloons tied there."),
    "map picture": mark("The finished piece with the labels of its joints."),
    "a link": mark("{colour} link balloon, sized to {size}"),
    "a round": mark("{colour} round, sized to {size}"),
    "play": mark("Play"),
    "pause": mark("Pause"),
    "film place": mark("Place in the film"),
    "film at": mark("Step {number} of {count}: {name}"),
    "how fast": mark("Speed"),
    "speed": mark("{speed} a second"),
    "one back": mark("One back"),
    "one on": mark("One on"),
    "still": mark("Your device asks for little motion: use the slider, or play when you like."),
    "to this step": mark("To this step"),
}

BURST: Mapping[str, str] = {
    "burst how": mark("Tap the balloon that burst in the picture, or choose it by its joints."),
    "balloon": mark("Balloon"),
    "choose balloon": mark("Choose ..."),
    "lock at": mark("Lock at {joint}"),
    "it is": mark(
        "It is this one: {balloon} (letter {letter}). Spare balloons of this kind: {spare}."
    ),
    "burst caution": BURST_CAUTION,
    "burst picture": mark("Where {balloon} is in the piece, and what is tied to it."),
    **{f"act {key}": text for key, text in ACTS.items()},
    "act size": mark("Size a new one: {balloon}."),
    "open burst lock": LOCK_ACTS[Deed.OPEN],
    "size pair": mark("Size two new ones and tie them neck to neck: {balloon}."),
}

MORE: Mapping[str, str] = {
    "reading": mark("Reading"),
    "language": mark("Language"),
    "theme": mark("Light or dark"),
    "theme auto": mark("as the device"),
    "theme light": mark("light"),
    "theme dark": mark("dark"),
    "type": mark("Size of type"),
    "type normal": mark("normal"),
    "type large": mark("large"),
    "type largest": mark("largest"),
    "hand over": mark("Hand your ticks to another phone"),
    "hand over how": mark(
        "Open the same page on the other phone, and read this code there: with the camera, as text "
        "that is pasted, or as a file. Nothing is sent."
    ),
    "qr picture": mark("A code that carries your ticks; the same text stands below it."),
    "take in": mark("Take another phone's ticks in"),
    "save code": mark("Save this code as a file"),
    "open code": mark("A code that was saved as a file"),
    "scan": mark("Read the other phone's code with the camera"),
    "scanning": mark("Hold the other phone's code before the camera."),
    "scan stop": mark("Stop the camera"),
    "no camera": mark("The camera cannot be used here. Paste the code, or open its file."),
    "paste code": mark("A code from another phone"),
    "take over": mark("Take these ticks over"),
    "taken": mark("New ticks: {count}. Yours are kept."),
    "code broken": mark("This is not a whole code. Copy all of it, from BP1 to the end."),
    "code other design": mark("This code is of another design, or another version of this one."),
    "log": mark("Minutes and notes"),
    "log how": mark(
        "The log holds your minutes by kind of work; buildplan times and buildplan learn read it."
    ),
    "save log": mark("Save the log"),
    "save notes": mark("Save the notes"),
    "clear": mark("Clear ticks, notes and minutes"),
    "clear sure": mark("Clear them: press again to be sure"),
    "cleared": mark("Cleared."),
    "about": mark("About this page"),
    "print": mark("Print all steps"),
    "licences": mark("Licences of what is built in"),
}


def interface_words(voice: Voice) -> dict[str, str]:
    """Every message of the page by its key, its placeholders left open."""
    every = {**GENERAL, **STEPS, **BURST, **MORE}
    return {key: voice.say_whole(text) for key, text in every.items()}
