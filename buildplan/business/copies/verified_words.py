"""What the check of a sold copy found, in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.business.copies.digests import FORM, INFO, METADATA, OUTLINES
from buildplan.business.copies.signing import Signature
from buildplan.business.copies.verifying import PageChanges, Verdict, Verified
from buildplan.language.messages import mark
from buildplan.language.phrases import clauses
from buildplan.language.shown import shown
from buildplan.language.voice import Voice

GOOD, WHOLE = mark("Good."), mark("Whole.")
NOT_GOOD = mark("NOT GOOD: this is not the file that was printed.")
PROVES = mark(
    "This proves that no page was changed, added, removed or moved since the file was printed, "
    "and that serial, buyer and plan belong together."
)
KEYED = mark("The seal was made with the key that you gave.")
UNKEYED = mark(
    "Nothing of it was changed by accident since it was sealed: its pages, serial, buyer and plan "
    "fit one another. It was sealed without a seller's key, and anybody with buildplan can change "
    "such a file and seal it anew: who made it is not proved."
)
OTHER_KEY = mark(
    "It was sealed without a key, so whether it is yours cannot be told: the key that you gave "
    "says nothing of it, and anybody with buildplan could have made such a file."
)
NOT_PROVED = mark("It does not prove who has read, copied or passed on the file.")
NOT_JUDGED = mark(
    "It was sealed with a seller's key, and without that key it cannot be judged: give the key "
    "with --key. All its pages are there as its own list has them."
)
WRONG_KEY = mark(
    "NOT GOOD: the key that you gave did not seal this file. Its pages are as its own list has "
    "them: look whether you have another key; if none fits, the file is not one of yours."
)
BROKEN_ALONE = mark(
    "NOT GOOD: the signature does not hold. Pages, serial, buyer and plan are as they were sealed: "
    "somebody has saved the file anew, or added to it. Ask for it as it was sold."
)
NAME_WIDTH = 10
# parts of a file beside its pages, by their keys in its catalogue (ISO 32000-1, 7.7.2)
PARTS = {
    OUTLINES: mark("bookmarks"),
    INFO: mark("title or author"),
    METADATA: mark("title or author"),
    FORM: mark("a form"),
    "/Names": mark("attachments, scripts or places that links lead to"),
    "/StructTreeRoot": mark("the words that are read aloud"),
    "/OCProperties": mark("layers"),
    "/OpenAction": mark("what happens when it is opened"),
    "/AA": mark("what happens when it is opened"),
}
OTHER_PART = mark("how it is shown or read aloud")


def verified_lines(found: Verified, voice: Voice) -> list[str]:
    """What was found, in words."""
    copy, judged = found.copy, found.key_given or not found.copy.keyed
    # only copies of the sale edition have a serial
    plan = voice.say("{piece}, sale edition", piece=copy.piece)
    serial = _fits(found.serial_holds, judged, mark("fits plan and buyer"), voice)
    seal = _fits(found.seal_holds, judged, mark("fits the list of what was printed"), voice)
    named = [
        (voice.say("Plan"), ", ".join(filter(None, (shown(plan), shown(copy.brand))))),
        (voice.say("For"), shown(copy.buyer) or voice.say("nobody named")),
        (voice.say("Serial"), f"{shown(found.serial)}: {serial}"),
        (voice.say("Seal"), seal),
        (voice.say("Pages"), f"{voice.whole(found.pages)}: {_pages_words(found.changes, voice)}"),
    ]
    if found.parts:
        named.append((voice.say("Beside"), _parts_words(found.parts, voice)))
    named += [(voice.say("Signed"), _signature_words(one, voice)) for one in found.signatures]
    wide = max(NAME_WIDTH, *(len(name) + 2 for name, _ in named))
    rows = [f"{name:<{wide}}{words}" for name, words in named]
    return [*(voice.say(one) for one in _verdict_words(found)), "", *rows]


def _verdict_words(found: Verified) -> tuple[str, ...]:
    """What the check comes to, before all else."""
    match found.verdict:
        case Verdict.GOOD:
            return (GOOD, PROVES, KEYED, NOT_PROVED)
        case Verdict.WHOLE:
            return (WHOLE, UNKEYED)
        case Verdict.KEYLESS:
            return (OTHER_KEY,)
        case Verdict.NEEDS_KEY:
            return (NOT_JUDGED,)
    if _signature_alone_fails(found):
        return (BROKEN_ALONE,)
    return (WRONG_KEY,) if _key_alone_fails(found) else (NOT_GOOD,)


def _signature_alone_fails(found: Verified) -> bool:
    """Whether all that was sealed is as it was, and a signature over the file does not hold."""
    return replace(found, signatures=()).whole


def _key_alone_fails(found: Verified) -> bool:
    """Whether all is as it was printed but for the serial and the seal, as with another key."""
    held = all(signature.holds for signature in found.signatures)
    return (
        found.copy.keyed
        and found.changes.none
        and held
        and not (found.parts or found.serial_holds or found.seal_holds)
    )


def _fits(holds: bool, judged: bool, fits: str, voice: Voice) -> str:
    """Whether it `fits`; whether all is good the verdict says alone."""
    if not judged:
        return voice.say("cannot be judged without the key")
    return voice.say(fits) if holds else voice.say("DOES NOT FIT")


def _pages_words(changes: PageChanges, voice: Voice) -> str:
    said = (
        (changes.missing, mark("TAKEN OUT, as numbered in print: {pages}")),
        (changes.added, mark("ADDED: {pages}")),
        (changes.moved, mark("MOVED: {pages}")),
        (changes.changed, mark("CHANGED: {pages}")),
        (changes.unmarked, mark("without the serial or the name: {pages}")),
    )
    wrong = [voice.say(words, pages=", ".join(map(str, pages))) for pages, words in said if pages]
    return clauses(voice, wrong) or voice.say("none changed")


def _parts_words(parts: Sequence[str], voice: Voice) -> str:
    """What is not as it was beside the pages."""
    told = dict.fromkeys(voice.say(PARTS.get(part, OTHER_PART)) for part in parts)
    return voice.say("CHANGED: {pages}", pages=", ".join(told))


def _signature_words(signature: Signature, voice: Voice) -> str:
    if not signature.holds:
        return voice.say("BROKEN: {name}", name=shown(signature.name))
    return voice.say(
        "by {name}, unbroken; ask whether that is the seller", name=shown(signature.name)
    )
