"""What differs from one sold copy to the next: the lines that name its buyer and its serial."""

from __future__ import annotations

from buildplan.language.voice import Voice

COVER_BUYER, COVER_SERIAL = "cover-buyer", "cover-serial"
LICENCE_BUYER, LICENCE_SERIAL = "licence-buyer", "licence-serial"
FOOT = "foot"


def words_of_copy(buyer: str, serial: str, voice: Voice) -> dict[str, str]:
    """The words for each line that is left free for them."""
    printed_for = voice.say("printed for {buyer}", buyer=buyer) if buyer else ""
    return {
        COVER_BUYER: voice.say("Printed for {buyer}", buyer=buyer),
        COVER_SERIAL: voice.say("Serial {serial}", serial=serial),
        LICENCE_BUYER: buyer or voice.say("nobody named"),
        LICENCE_SERIAL: serial,
        FOOT: " · ".join(filter(None, [serial, printed_for])),
    }
