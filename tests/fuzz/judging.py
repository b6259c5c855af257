"""One case read under guard, and what became of it.

A fault is an error that is none of those that users are told of, or one of those whose words are a
library's. A hang is work of the processor past a limit that no honest case comes near, and memory
past another is a fault: neither is measured, each stops what would not stop by itself.
"""

from __future__ import annotations

import re
import resource
import signal
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import FrameType

from buildplan.desk.refusals import RefusedError
from buildplan.hands.log import LogError
from buildplan.hands.words import bad_rows
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.source.bounded import UnfitFileError
from buildplan.source.problems import DesignProblemsError, Problem, UnreadableDesignError, in_words

ACCEPTED, REFUSED, FAULT, HANG = "accepted", "refused", "fault", "hang"
HANG_S = 60  # of the processor's time
MOST_MEMORY = 3 << 29  # bytes more than there were
LONGEST = 1500  # of a line that is told; a name in the file may be long
MOST_LINES = 1001
VOICES = (Voice(), Voice("es"))
# what libraries say, and no sentence of ours
RAW = re.compile(
    r"Traceback|\bobject at 0x|NoneType|pydantic|Input should|could not convert|invalid literal"
    r"|\[Errno|\bnumpy\b|shapely|index out of range|unhashable|not subscriptable|has no attribute"
    r"|not iterable|takes \d+ positional|not supported between|codec can't|not well-formed"
    r"|mismatched tag|no element found|undefined entity|unclosed token|contains NUL|field larger"
    r"|Expecting value|while (parsing|scanning)|math domain|cannot identify|unexpected end of"
    r"|\b(Value|Key|Type|Index|Attribute|Runtime|Overflow|Recursion|Zero\w+|Syntax|Unicode\w+)Error"
)

Read = Callable[[Path], Sequence[str]]
"""Reads a case as the commands do; what is told of one of which parts alone are refused."""


class FaultError(Exception):
    """A fault that was answered as one."""


class HangError(BaseException):
    """Work that goes on and on; no `except Exception` keeps it."""


@dataclass(frozen=True)
class Outcome:
    """What became of a case, and what was told or raised."""

    how: str
    said: str = ""


def judged(read: Read, path: Path) -> Outcome:
    """Read a case under guard."""
    try:
        with guarded():
            lines = list(read(path))
            how = REFUSED if lines else ACCEPTED
    except HangError:
        return Outcome(HANG)
    except (UnreadableDesignError, DesignProblemsError, ToldError, LogError, RefusedError) as error:
        how, lines = REFUSED, told(error)
    except UnfitFileError as error:
        how, lines = REFUSED, [voice.tell(error.told) for voice in VOICES]
    except Exception as error:  # noqa: BLE001 - whatever it is, it is found
        return Outcome(FAULT, f"{type(error).__name__}: {error} {_last_place(error)}")
    if how is REFUSED and not lines:
        return Outcome(FAULT, "refused without a word")
    wrong = [line for line in lines if _badly_told(line)]
    if wrong or len(lines) > MOST_LINES * len(VOICES):
        return Outcome(FAULT, f"said: {wrong[0] if wrong else len(lines)}")
    return Outcome(how, lines[0] if lines else "")


def _badly_told(line: str) -> bool:
    """Whether a line is a library's, or would not be a line where it is shown."""
    return bool(RAW.search(line)) or len(line) > LONGEST or "\n" in line or "\0" in line


def told(error: Exception) -> list[str]:
    """What a user is told of an error, in each language that is listened to."""
    lines: list[str] = []
    for voice in VOICES:
        match error:
            case UnreadableDesignError():
                lines.append(in_words(error.problem, voice, "FILE"))
            case DesignProblemsError():
                lines += [in_words(problem, voice, "FILE") for problem in error.problems]
            case LogError():
                lines += bad_rows(error, "FILE", voice)
            case ToldError() | RefusedError():
                lines.append(voice.tell(error.told))
    return lines


def problem_lines(problems: Sequence[Problem]) -> list[str]:
    """What is told of problems of a piece that was read."""
    return [in_words(problem, voice, "FILE") for voice in VOICES for problem in problems]


def _last_place(error: Exception) -> str:
    """Where of our own code an error came from."""
    trace, place = error.__traceback__, ""
    while trace is not None:
        file = trace.tb_frame.f_code.co_filename
        if "buildplan" in file and "site-packages" not in file:
            place = f"({Path(file).name}:{trace.tb_lineno})"
        trace = trace.tb_next
    return place


def _hung(number: int, frame: FrameType | None) -> None:
    raise HangError


@contextmanager
def guarded() -> Iterator[None]:
    """Whatever is done within ends: by itself, as a hang, or for want of memory."""
    if sys.platform == "win32":
        yield
        return
    before = signal.signal(signal.SIGPROF, _hung)
    limits = resource.getrlimit(resource.RLIMIT_AS)
    resource.setrlimit(resource.RLIMIT_AS, (_memory() + MOST_MEMORY, limits[1]))
    signal.setitimer(signal.ITIMER_PROF, HANG_S)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        resource.setrlimit(resource.RLIMIT_AS, limits)
        signal.signal(signal.SIGPROF, before)


def _memory() -> int:
    """The bytes that this process has addresses for; without /proc, as many as there may be."""
    try:
        pages = int(Path("/proc/self/statm").read_text("ascii").split()[0])
    except OSError:
        return 1 << 40
    return pages * resource.getpagesize()
