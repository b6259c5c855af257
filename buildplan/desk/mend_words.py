"""What the button of a way to mend says: in the words that the page has for what it changes, where
the file has a key."""

from __future__ import annotations

from buildplan.desk.key_words import KEYS
from buildplan.desk.piece_words import SIZED_TO
from buildplan.desk.whole_file import WholeFile
from buildplan.language.messages import mark
from buildplan.source.suggestions import Put, Remedy, TakeOut

LEAVE_OUT = mark("Leave out: {what}")


def mend_words(remedy: Remedy, whole: WholeFile) -> str:
    """A way to mend in the page's words; in its own where it changes more than one thing."""
    voice = whole.voice
    match remedy.changes:
        case (Put(("balloons", str(key), "inflate_to"), int() | float() as gauge, None),):
            length = f"{gauge:g} {whole.units}"
            return voice.say(SIZED_TO, label=whole.balloon_label(key), gauge=length)
        case (Put(("balloons", str(key), "nominal"), int() | float() as size, None),):
            name, words = voice.say(KEYS["nominal"]), f"{size:g} {whole.units}"
            told = voice.say("{name}: {words}", name=name, words=words)
            return f"{whole.balloon_label(key)}, {told}"
        case (Put((str(key),), True, None),) if key in KEYS:
            return voice.say(KEYS[key])
        case (TakeOut((str(key),)),) if key in KEYS:
            return voice.say(LEAVE_OUT, what=voice.say(KEYS[key]))
    return voice.tell(remedy.words)
