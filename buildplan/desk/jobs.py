"""What was ordered and takes a while: how far it is, and what came of it.

A job is of the process that does it; what comes of it are files.
"""

from __future__ import annotations

import secrets
import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal
from urllib.parse import quote

from buildplan.desk.outcome import Begun, Failed, Files, Refused, Share
from buildplan.desk.refusals import RefusedError, fault
from buildplan.desk.workers import ORDERED, Errand, Work, Workers
from buildplan.language.messages import message
from buildplan.language.voice import Voice

State = Literal["waiting", "working", "done", "failed", "stopped"]
MOST_KEPT = 200
KINDS = {
    "pdf": "application/pdf",
    "html": "text/html",
    "csv": "text/csv",
}


@dataclass(frozen=True)
class DeskJob:
    """One job: `what` is made of the design `name`, or begun; its `files` are names below the
    folder of what is printed."""

    id: str
    what: str
    name: str
    state: State = "waiting"
    share: float = 0.0
    words: str = ""
    message: str = ""
    files: tuple[str, ...] = ()

    @property
    def is_over(self) -> bool:
        """Whether nothing more will come of it."""
        return self.state in ("done", "failed", "stopped")

    def as_data(self) -> Mapping[str, object]:
        """As the page reads it."""
        return {
            "job": self.id,
            "what": self.what,
            "name": self.name,
            "state": self.state,
            "share": round(self.share, 3),
            "words": self.words,
            "message": self.message,
            "files": [
                {
                    "name": file,
                    "url": f"/output/{quote(file)}",
                    "type": KINDS.get(_ending(file), ""),
                }
                for file in self.files
            ],
        }


def _ending(file: str) -> str:
    return file.rpartition(".")[2].lower()


@dataclass
class Jobs:
    """The jobs of this process."""

    _jobs: dict[str, DeskJob] = field(default_factory=dict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def get(self, id: str) -> DeskJob:
        """A job. Raises RefusedError where there is none."""
        try:
            return self._jobs[id]
        except KeyError:
            raise RefusedError(404, message("there is no such job any more")) from None

    def put(self, job: DeskJob) -> DeskJob:
        """A job as it is now; of those that are over the oldest are forgotten."""
        with self._lock:
            self._jobs[job.id] = job
            over = [one.id for one in self._jobs.values() if one.is_over]
            for old in over[: max(0, len(self._jobs) - MOST_KEPT)]:
                del self._jobs[old]
        return job


@dataclass(frozen=True)
class Ordered:
    """What is to be made, of which design, and the work that makes it."""

    what: str
    name: str
    work: Work


def order(
    jobs: Jobs, workers: Workers, asked: Ordered, voice: Voice, tell: Callable[[DeskJob], None]
) -> DeskJob:
    """Have a job done by the processes; `tell` hears of it whenever it is farther."""
    job = jobs.put(DeskJob(secrets.token_hex(8), asked.what, asked.name))

    def told(part: object) -> None:
        tell(jobs.put(_farther(jobs.get(job.id), part, voice)))

    def ended(whole: bool) -> None:
        now = jobs.get(job.id)
        if not now.is_over:
            tell(jobs.put(replace(now, state="done" if whole else "stopped", share=1.0)))

    workers.ask(Errand(lane_of(job.id), job.id, asked.work, told, ended, ORDERED))
    return jobs.get(job.id)


def stop(jobs: Jobs, workers: Workers, id: str) -> DeskJob:
    """Have a job not done any further."""
    job = jobs.get(id)
    if not job.is_over:
        workers.drop(lane_of(id))
        jobs.put(replace(jobs.get(id), state="stopped"))
    return jobs.get(id)


def lane_of(id: str) -> str:
    """The lane of a job: nothing takes its place."""
    return f"job {id}"


def _farther(job: DeskJob, part: object, voice: Voice) -> DeskJob:
    """A job after what was reported of it."""
    match part:
        case Share(share=share, words=words):
            return replace(job, state="working", share=share, words=words)
        case Files(names=names):
            return replace(job, files=(*job.files, *names))
        case Begun(name=name):
            return replace(job, name=name)
        case Refused(words=words):
            return replace(job, state="failed", message=words)
        case Failed():
            return replace(job, state="failed", message=voice.tell(fault(part).told))
    return job
