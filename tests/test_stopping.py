"""An interrupt, or being told to end, stops a command at once: one plain line, nothing written.

The statuses are those of shells: 128 and the number of the signal (POSIX.1-2017, 2.8.2, says more
than 128; that it is the sum is common practice).
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import pytest
from reportlab.lib.utils import annotateException

from buildplan import __main__ as main
from buildplan.commands import files

STAR = Path(__file__).parent.parent / "designs" / "reading_star.yaml"
# sends itself a signal when a module is about to be loaded
CALL = """
import os, sys
moment, number = sys.argv[1], int(sys.argv[2])

class Sender:
    def find_spec(self, name, path=None, target=None):
        if name == moment:
            sys.meta_path.remove(self)
            os.kill(os.getpid(), number)

sys.meta_path.insert(0, Sender())
sys.argv = ["buildplan", *sys.argv[3:]]
from buildplan.__main__ import main
main()
"""


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
@pytest.mark.parametrize("moment", ["typer", "numpy", "buildplan.booklet.editions"])
@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_a_command_that_is_stopped_says_so_and_leaves_nothing(
    moment: str, number: signal.Signals, tmp_path: Path
) -> None:
    call = ["booklet", str(STAR), "--out", str(tmp_path / "out")]
    run = [sys.executable, "-c", CALL, moment, str(int(number)), *call]
    ended = subprocess.run(run, capture_output=True, text=True, check=False)
    assert ended.returncode == 128 + number
    assert ended.stdout == ""
    (line,) = ended.stderr.splitlines()
    assert line.startswith("Stopped")
    assert not (tmp_path / "out").exists()


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
def test_an_interrupt_before_anything_else_is_loaded_is_one_too() -> None:
    run = [sys.executable, "-c", CALL, "signal", str(int(signal.SIGINT)), "--version"]
    ended = subprocess.run(run, capture_output=True, text=True, check=False)
    assert (ended.returncode, ended.stdout, ended.stderr) == (130, "", "Stopped.\n")


# sends itself a signal where Python 3.11 wraps its error, while a class is made (`__set_name__`),
# or where it is lost, while an object goes (Python's data model, `__del__`)
WRAPPED = """
import os, sys, time
moment, number, how = sys.argv[1], int(sys.argv[2]), sys.argv[3]

class Sender:
    def __set_name__(self, owner, name):
        os.kill(os.getpid(), number) or time.sleep(1)

    def __del__(self):
        if how == "lost":
            os.kill(os.getpid(), number) or time.sleep(0.01)

class Maker:
    def find_spec(self, name, path=None, target=None):
        if name == moment:
            sys.meta_path.remove(self)
            if how == "lost":
                Sender()
            else:
                type("Made", (), {"one": Sender()})

sys.meta_path.insert(0, Maker())
sys.argv = ["buildplan", *sys.argv[4:]]
from buildplan.__main__ import main
main()
"""


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
@pytest.mark.parametrize("how", ["wrapped", "lost"])
@pytest.mark.parametrize("moment", ["typer", "numpy"])
def test_a_signal_whose_error_is_wrapped_or_lost_is_heard(
    moment: str, how: str, number: signal.Signals
) -> None:
    run = [sys.executable, "-c", WRAPPED, moment, str(int(number)), how, "check", str(STAR)]
    ended = subprocess.run(run, capture_output=True, text=True, check=False)
    (line,) = ended.stderr.splitlines()
    assert line.startswith("Stopped")
    assert (ended.returncode, ended.stdout) == (128 + number, "")


def test_being_told_to_end_stays_that_where_a_library_adds_words() -> None:
    """reportlab puts where it was on a page before the words of whatever is raised there."""

    def drawn() -> None:
        try:
            main._end(signal.SIGTERM, None)
        except SystemExit:
            annotateException("handle_frameEnd")

    with pytest.raises(SystemExit) as ended:
        drawn()
    assert ended.value.code == 143


# sends itself a signal when all is said and done, while Python comes to its end
AFTER = """
import atexit, os, sys, time
atexit.register(lambda: os.kill(os.getpid(), int(number)) or time.sleep(1))
number = sys.argv.pop(1)
from buildplan.__main__ import main
main()
"""


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
@pytest.mark.parametrize(("call", "status"), [(["--version"], 0), (["check", "no.yaml"], 2)])
def test_a_command_that_is_done_ends_as_it_would_have(
    call: list[str], status: int, number: signal.Signals
) -> None:
    run = [sys.executable, "-c", AFTER, str(int(number)), *call]
    ended = subprocess.run(run, capture_output=True, text=True, check=False)
    assert ended.returncode == status
    assert len((ended.stdout + ended.stderr).splitlines()) == 1


# a process that others are forked from, as it is seen by the system (proc(5): the signals that it
# blocks, as bits, the first for signal 1)
WARM = """
from multiprocessing import forkserver
from pathlib import Path
from buildplan.desk.workers import warm_up
if __name__ == "__main__":
    warm_up()
    lines = Path(f"/proc/{forkserver._forkserver._forkserver_pid}/status").read_text().split("\\n")
    print(next(line.split()[1] for line in lines if line.startswith("SigBlk")))
"""


@pytest.mark.skipif(sys.platform != "linux", reason="/proc")
def test_an_interrupt_does_not_reach_what_a_desk_is_still_loading() -> None:
    run = [sys.executable, "-c", WARM]
    ended = subprocess.run(run, capture_output=True, text=True, check=True)
    assert int(ended.stdout, 16) & 1 << signal.SIGINT - 1
    assert ended.stderr == ""


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
@pytest.mark.parametrize(("number", "status"), [(signal.SIGINT, 0), (signal.SIGTERM, 143)])
def test_a_desk_that_is_ended_leaves_no_temporary_file(
    number: signal.Signals, status: int, tmp_path: Path
) -> None:
    # short: the name of a socket may have about a hundred signs (unix(7))
    temporary = Path(tempfile.mkdtemp(prefix="desk"))
    desk = subprocess.Popen(
        [sys.executable, "-m", "buildplan", "desk", str(tmp_path), "--no-open"],
        env={**os.environ, "TMPDIR": str(temporary)},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert desk.stderr is not None
    assert "The desk is open" in desk.stderr.readline()
    while not any(temporary.iterdir()):  # where its processes listen (multiprocessing, forkserver)
        time.sleep(0.05)
    desk.send_signal(number)
    desk.communicate()
    assert desk.returncode == status
    temporary.rmdir()  # empty, that is


@pytest.mark.parametrize("stop", [KeyboardInterrupt, SystemExit])
def test_a_file_that_is_being_written_is_not_left_half_written(
    stop: type[BaseException], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "booklet.pdf"
    target.write_bytes(b"before")

    def stopped(*_: object) -> None:
        raise stop

    monkeypatch.setattr(Path, "chmod", stopped)
    with pytest.raises(stop):
        files.write_whole(target, b"after")
    assert [path.name for path in tmp_path.iterdir()] == ["booklet.pdf"]
    assert target.read_bytes() == b"before"


# works in three processes, of which two have an errand, and never comes to an end
ENDLESS = """
import os, sys, time
sys.path.insert(0, os.path.dirname(sys.argv[1]))
from endless import say
from buildplan.fitting.workers import each, working
with working(3):
    each(say, [sys.argv[1] + "1", sys.argv[1] + "2"])
"""
SAY = """
import os, time
def say(name):
    with open(name + ".new", "w") as file:
        file.write(str(os.getpid()))
    os.replace(name + ".new", name)
    time.sleep(600)
"""


def _there(pid: int) -> bool:
    """Whether a process is at work (one that nobody has waited for yet is not)."""
    try:
        return " Z " not in Path(f"/proc/{pid}/stat").read_text("utf-8")
    except OSError:
        return False


def _children(parent: int) -> set[int]:
    """The processes that a process has begun (proc(5): the parent's id follows the state)."""
    found = set()
    for path in Path("/proc").glob("[0-9]*/stat"):
        try:
            after_name = path.read_text("utf-8").rpartition(")")[2].split()
        except OSError:  # gone meanwhile
            continue
        if int(after_name[1]) == parent:
            found.add(int(path.parent.name))
    return found


@pytest.mark.skipif(sys.platform != "linux", reason="/proc")
@pytest.mark.parametrize("number", [signal.SIGKILL, signal.SIGTERM])
def test_processes_at_work_for_a_command_end_with_it(
    number: signal.Signals, tmp_path: Path
) -> None:
    (tmp_path / "endless.py").write_text(SAY, "utf-8")
    told = [tmp_path / "pid1", tmp_path / "pid2"]
    environment = {**os.environ, "PYTHONPATH": str(tmp_path)}
    asker = subprocess.Popen(
        [sys.executable, "-c", ENDLESS, str(tmp_path / "pid")],
        env=environment,
        stderr=subprocess.DEVNULL,
    )
    while not all(path.exists() for path in told):
        assert asker.poll() is None
        time.sleep(0.05)
    working = {int(path.read_text("ascii")) for path in told}
    workers = _children(asker.pid)
    assert working < workers
    asker.send_signal(number)
    asker.wait()
    while any(map(_there, workers)):  # the suite's own limit ends this where they stay
        time.sleep(0.05)
