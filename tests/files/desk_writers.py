"""What the desk writes into its folder."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace
from typing import Any

from attempts import Writer
from writers import INPUTS, LAMP, LITTLE, PEAR, POST

from buildplan.desk import fit_working, new_calls, saving
from buildplan.desk.desk import Desk
from buildplan.desk.events import Hub, Seen
from buildplan.desk.fit_task import BeginningsWork
from buildplan.desk.folder import Folder, version_of
from buildplan.desk.outcome import Refused
from buildplan.desk.print_task import PrintWork, Wishes
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import results_of
from buildplan.desk.titles import titled
from buildplan.language.voice import ENGLISH, Voice

sys.path.append(str(Path(__file__).parents[1] / "desk"))
from desks import AtOnce

BEFORE, NOW = LAMP.read_bytes(), LAMP.read_bytes() + b"# more\n"
CHANGED_ONCE = {
    "lamp.yaml": NOW,
    ".desk/history/lamp/000001.yaml": BEFORE,
    ".desk/history/lamp/000002.yaml": NOW,
    ".desk/history/lamp/position": b"2\n",
}


TAKEN_BACK = {**CHANGED_ONCE, "lamp.yaml": BEFORE, ".desk/history/lamp/position": b"1\n"}
AWAY = {
    name.replace("lamp.yaml", ".desk/away/lamp.yaml") if "/" not in name else name: data
    for name, data in CHANGED_ONCE.items()
}
TITLE = "Evening Lamp"
# so titled already: only its file has another name
TITLED = titled(NOW, TITLE)
NAMED = {
    **CHANGED_ONCE,
    "lamp.yaml": TITLED,
    ".desk/history/lamp/000002.yaml": TITLED,
}
PRICED = {"post.yaml": POST.encode(), "post.event.yaml": INPUTS["post.event.yaml"].encode()}
SENT = "0" * 16
MET = 409  # the answer where two changes meet (RFC 9110, 15.5.10)


def at_desk(act: Callable[[Folder], object]) -> Callable[[Path], None]:
    """What is done in a folder of the desk; what it refuses is said as a command would."""

    def run(folder: Path) -> None:
        try:
            act(Folder(folder))
        except RefusedError as error:
            print("cannot write it:", Voice(ENGLISH).tell(error.told))
            sys.exit(2)

    return run


def saved(folder: Folder) -> None:
    """A change at the desk."""
    saving.save(folder, "lamp", version_of(BEFORE), NOW.decode())


def met(folder: Folder) -> None:
    """A change at the desk made on a version that is no longer there: it is kept beside."""
    try:
        saving.save(folder, "lamp", version_of(b"another"), NOW.decode())
    except RefusedError as error:
        if error.status != MET:
            raise


def redone(folder: Folder) -> None:
    """A change at the desk, brought back."""
    saving.redo(folder, "lamp", version_of(BEFORE))


def renamed(folder: Folder) -> None:
    """A design at the desk whose file gets the name of its title."""
    saving.rename(folder, "lamp", TITLE)


def put_away(folder: Folder) -> None:
    """A design out of sight."""
    saving.put_away(folder, "lamp")


def brought_back(folder: Folder) -> None:
    """A design that was put away, back on the desk."""
    saving.bring_back(folder, "lamp")


def worked_out(folder: Folder) -> None:
    """What was worked out of a design, kept; what cannot be is told as by a process at work."""
    with saving.writing():
        results_of(folder, BEFORE, ENGLISH).put("card.json", b'{"balloons": 72}\n' * 500)


def undone(folder: Folder) -> None:
    """A change at the desk, taken back."""
    saving.undo(folder, "lamp", version_of(NOW))


def begun(folder: Folder) -> None:
    """A new design at the desk."""
    saving.begin(folder, "star", NOW)


def copied(folder: Folder) -> None:
    """A design at the desk, once more under another title."""
    saving.copy(folder, "lamp", TITLE)


def refused(report: object) -> None:
    """What work at the desk refuses is said as a command would."""
    if isinstance(report, Refused):
        print("cannot write it:", report.words)
        sys.exit(2)


def printed(what: str, wishes: Wishes | None = None) -> Callable[[Path], None]:
    """Something printed at the desk."""

    def act(folder: Folder) -> None:
        how = ("training", "a4", "en", "", "", wishes or Wishes())
        PrintWork(folder.root, "post", what, *how)(refused)

    return at_desk(act)


def drawn(folder: Folder) -> None:
    """Pictures of what is begun with; two of them."""
    vars(fit_working)["CALLED"] = ("ring", "arch")
    with saving.writing():
        BeginningsWork(folder.kept / "beginnings")(refused)


def fitted(folder: Folder) -> None:
    """A design that is fitted to a picture that a page sends."""
    vars(fit_working)["USUAL"] = LITTLE
    named = SimpleNamespace(token_hex=lambda _: SENT)  # the same name at each attempt
    vars(new_calls)["secrets"] = named
    desk = Desk(folder, Hub(), Seen(folder), AtOnce(), ENGLISH)
    request: Any = SimpleNamespace(query_params={})
    new_calls._from_picture(desk, request, TITLE, "100cm", PEAR.read_bytes())
    for job in desk.jobs._jobs.values():
        if job.state != "done":
            refused(Refused(job.message))


AT_DESK = (
    Writer("desk's save", at_desk(saved), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's undo", at_desk(undone), CHANGED_ONCE, over=False),
    Writer("desk's redo", at_desk(redone), TAKEN_BACK, over=False),
    Writer("desk's both", at_desk(met), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's name", at_desk(renamed), NAMED, over=False),
    Writer("desk's away", at_desk(put_away), CHANGED_ONCE, over=False),
    Writer("desk's back", at_desk(brought_back), AWAY, over=False),
    Writer("desk's results", at_desk(worked_out), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's new", at_desk(begun), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's copy", at_desk(copied), {"lamp.yaml": BEFORE}, over=False),
    Writer(
        "desk's fit",
        at_desk(fitted),
        {"lamp.yaml": BEFORE},
        over=False,
        by={f".desk/sent/{SENT}.png": PEAR.read_bytes()},
    ),
    Writer("desk's pictures", at_desk(drawn), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's booklet", printed("booklet", Wishes(fold=True)), PRICED, over=False),
    Writer("desk's page", printed("companion"), PRICED, over=False),
    Writer("desk's quote", printed("quote"), PRICED, over=False),
    Writer("desk's shopping", printed("shopping"), PRICED, over=False),
    Writer("desk's gallery", printed("gallery"), PRICED, over=False),
    Writer("desk's event", printed("event post"), PRICED, over=False),
)
