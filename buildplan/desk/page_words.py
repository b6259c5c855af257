"""The words of the desk's page outside the piece itself: home, the file, what is printed.

They are said whole: the page fills their {placeholders}, in the order that a language has.
"""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.language.messages import mark

GENERAL: Mapping[str, str] = {
    "skip": mark("To the main part"),
    "desk": mark("The desk"),
    "home": mark("All designs"),
    "to home": mark("To all designs"),
    "tabs": mark("Parts of this design"),
    "tab piece": mark("Piece"),
    "tab file": mark("File"),
    "tab print": mark("Print"),
    "language": mark("Language"),
    "undo": mark("Undo"),
    "redo": mark("Redo"),
    "saved": mark("Saved"),
    "saving": mark("Saving ..."),
    "not saved": mark("Not saved"),
    "read only short": mark("Only to be read"),
    "no connection": mark("No connection"),
    "connection lost": mark(
        "The desk does not answer. Its program may have been ended: start it again. What is not "
        "saved yet stays on this page."
    ),
    "connected again": mark("The desk answers again."),
    "changed outside": mark("{file} was changed by another program. This is what it holds now."),
    "met kept": mark("Your version is kept in {file}."),
    "have read": mark("I have read this"),
    "opening": mark("Opening {name} ..."),
    "close": mark("Close this message"),
    "cancel": mark("Cancel"),
    "name": mark("Name"),
    "one problem": mark("One problem"),
    "problems count": mark("Problems: {count}"),
}

HOME: Mapping[str, str] = {
    "designs": mark("Designs"),
    "looking": mark("Looking into the folder ..."),
    "new design": mark("New design"),
    "read only": mark("This folder cannot be written to: its designs can be seen, not changed."),
    "no designs": mark("There is no design in this folder yet."),
    "no designs how": mark("Begin one, or drop a picture of an outline here."),
    "search": mark("Search the designs"),
    "found of": mark("{found} of {count} designs"),
    "none found": mark("No design has {sought} in its name."),
    "copy": mark("Copy"),
    "copy of": mark("Copy {name}"),
    "copy name": mark("{name}, copy"),
    "rename": mark("Rename"),
    "rename of": mark("Rename {name}"),
    "put away": mark("Put away"),
    "is put away": mark("{name} is put away. It stands below all designs and can be brought back."),
    "away count": mark("Put away ({count})"),
    "bring back": mark("Bring back"),
    "being worked out": mark("Being worked out ..."),
    "wide and high": mark("{width} wide, {height} high"),
}

NEW: Mapping[str, str] = {
    "begin with": mark("Begin with"),
    "way pattern": mark("A pattern"),
    "way outline": mark("Draw an outline"),
    "way picture": mark("A picture"),
    "way letters": mark("Words"),
    "patterns": mark("Patterns"),
    "whole pieces": mark("Whole pieces to change"),
    "outline how": mark(
        "Draw the outer edge of the piece in one stroke or in several, each begun where the last "
        "ended. It is closed by itself."
    ),
    "board": mark("Board to draw an outline on; nothing is drawn yet."),
    "board drawn": mark("Board to draw an outline on; the outline is drawn and closed."),
    "draw here": mark("Draw here"),
    "take back stroke": mark("Take back the last stroke"),
    "wipe": mark("Wipe the board"),
    "named outlines": mark("Or take one that is drawn already"),
    "picture how": mark(
        "A picture of one dark shape on light paper, or cut out (PNG or JPEG), or a plain drawing "
        "(SVG). A tube is laid along its outer edge."
    ),
    "drop here": mark("Drop a picture here, or choose a file."),
    "no picture": mark("{file} is no picture of a kind that is read here: PNG, JPEG or SVG."),
    "text": mark("Text"),
    "text how": mark("Capitals A to Z, digits and spaces"),
    "height": mark("Height"),
    "height how": mark("1.8 m or 72 in"),
    "make it": mark("Make it"),
    "my outline": mark("My outline"),
    "choose a beginning": mark("Choose what to begin with, above."),
    "draw an outline": mark("Draw an outline first, or take one that is drawn already."),
    "choose a picture": mark("Choose a picture first."),
    "say how high": mark("Say how high it is to be, with the unit: 1.8 m or 72 in."),
    "write a text": mark("Write the text first."),
    "making": mark("The design is being made"),
    "stop": mark("Stop"),
    "back to choosing": mark("Back"),
}

FILE: Mapping[str, str] = {
    "file of": mark("The file {file}"),
    "file how": mark("Changes are saved as you write."),
    "problems": mark("Problems"),
    "no problems": mark("No problem is known in this file."),
    "at line": mark("Line {line}"),
    "file met": mark(
        "{file} was changed elsewhere while you wrote. It stands here as it is now; yours is not "
        "lost."
    ),
    "take mine": mark("Put my version in its place"),
    "leave theirs": mark("Leave it as it is now"),
}

PRINT: Mapping[str, str] = {
    "print": mark("Print"),
    "what to print": mark("What to print"),
    "edition": mark("Edition"),
    "paper": mark("Paper"),
    "print language": mark("Language"),
    "units": mark("Units"),
    "brand": mark("Brand"),
    "no brand": mark("none"),
    "fold": mark("Pages to fold in the middle"),
    "fold how": mark("Gauges come in a file of their own, at true size."),
    "large": mark("Large print"),
    "doors": mark("Doors on the way in"),
    "doors how": mark("One on each line, clear width and height: 90x205cm or Lift=80x200cm"),
    "buyers": mark("Buyers"),
    "buyers how": mark("A name on each line, and a copy for each; or a table with a column: name"),
    "buyers file": mark("Take a table (CSV)"),
    "key": mark("Sealed with"),
    "no key": mark("no key"),
    "sign": mark("Signed with"),
    "no sign": mark("no certificate"),
    "password": mark("Password of the certificate"),
    "password how": mark("It is used for this print alone, and kept nowhere."),
    "link": mark("Address of its page for phones"),
    "link how": mark("Printed as a code that phones read; {piece} in it is the name of the file."),
    "customer": mark("For whom"),
    "address": mark("Their address"),
    "sender": mark("Your address"),
    "number": mark("Number of the quote"),
    "date": mark("Date"),
    "deposit": mark("Paid on accepting, in percent"),
    "beside": mark("Together with"),
    "how many": mark("How many"),
    "valid": mark("Days that the price holds"),
    "printed": mark("Made here"),
    "printed before": mark("Made before"),
    "nothing printed": mark("Nothing has been printed of this design yet."),
    "printing": mark("{what} is being made"),
    "print waiting": mark("{what} waits for its turn"),
    "print failed": mark("{what} could not be made: {message}"),
    "print stopped": mark("{what} was stopped."),
    "print done": mark("{what} is ready."),
    "open": mark("Open {file}"),
    "print problems": mark(
        "This design has problems. What is printed says so on its cover; mend them first."
    ),
}

EVERY: Mapping[str, str] = {**GENERAL, **HOME, **NEW, **FILE, **PRINT}
