"""The entry point of the command, and of `python -m buildplan`: from the first moment on, an
interrupt ends in one plain line, while the rest is still being loaded too."""

from __future__ import annotations

import sys

# 128 and the number of the signal, as shells have it
INTERRUPTED, ENDED = 130, 143

try:
    import gc
    import os
    import signal
    import time
    from _thread import start_new_thread
    from types import FrameType
except KeyboardInterrupt:
    print("Stopped.", file=sys.stderr)
    sys.exit(INTERRUPTED)

# What is loaded lasts, a booklet is hundreds of thousands of objects that last too, and few of
# them are ever in rings: look for garbage less often than Python does by itself (measured: a
# twentieth of the time of a check, and again of a booklet).
COLLECT_AT = (1_000_000, 20, 20)
AGAIN_S = 0.05


class _InterruptError(KeyboardInterrupt):
    """Ctrl-C. Python's own would end the process by the signal, whatever is done about it, where
    it comes while the text of a library is run (`exec`)."""


class _EndError(SystemExit):
    """Told to end. What a library puts in its place, with words of its own, ends the same way."""

    def __init__(self, *_: object) -> None:
        super().__init__(ENDED)


def _interrupt(number: int, frame: FrameType | None) -> None:
    raise _InterruptError


def _end(number: int, frame: FrameType | None) -> None:
    raise _EndError


def _have_come_again(lost: sys.UnraisableHookArgs) -> None:
    """Have a signal come once more whose error was lost: raised where Python can pass none on, such
    as in what a library calls back, or while an object goes."""
    again = {_InterruptError: signal.SIGINT, _EndError: signal.SIGTERM}.get(lost.exc_type)
    if again is None:
        sys.__unraisablehook__(lost)
        return

    def come() -> None:
        time.sleep(AGAIN_S)
        os.kill(os.getpid(), again)

    start_new_thread(come, ())  # whoever waits here for a thread to begin hears it too early


def main() -> None:
    """Run the command; see `buildplan.cli`."""
    gc.set_threshold(*COLLECT_AT)
    sys.unraisablehook = _have_come_again
    signal.signal(signal.SIGTERM, _end)
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:  # else it is not to be heard
        signal.signal(signal.SIGINT, _interrupt)
    try:
        if not os.environ.get("BUILDPLAN_DEBUG"):
            _quieten()
        from buildplan.cli import main as run
    except KeyboardInterrupt:
        _stopped(INTERRUPTED)
    except SystemExit:
        _stopped(ENDED)
    except RuntimeError as error:  # so Python 3.11 wraps what comes while a class is made
        if isinstance(error.__cause__, KeyboardInterrupt):
            _stopped(INTERRUPTED)
        if isinstance(error.__cause__, SystemExit):
            _stopped(ENDED)
        raise
    status: object = 0
    try:
        run()
    except KeyboardInterrupt:  # before a command was found, or after it was done
        _leave_at_once(INTERRUPTED)
        _stopped(INTERRUPTED)
    except SystemExit as ended:
        status = ended.code
        raise
    finally:
        _leave_at_once(status)
        if isinstance(status, int) and status in (INTERRUPTED, ENDED):
            _end_now(status)
        # what is left goes with the process: let Python not look through all of it for rings once
        # more at the end (measured: a tenth of the time of a booklet)
        gc.freeze()


def _leave_at_once(status: object) -> None:
    """End at once, with the status that there is, whatever signal comes from now on: all is said
    and written, and processes that were worked with end by themselves. Else an interrupt while
    Python waits for them would end in words of its own."""

    def leave(number: int, frame: FrameType | None) -> None:
        os._exit(status if isinstance(status, int) else 0)

    for number in (signal.SIGTERM, signal.SIGINT):
        if signal.getsignal(number) is not signal.SIG_IGN:
            signal.signal(number, leave)


def _quieten() -> None:
    """Let no library log or warn in words of its own, here or in the processes begun from here:
    what is wrong is told by us. Nor may pydantic look through all that is installed for plugins:
    none is wanted, and a fiftieth of a check went into it."""
    import logging
    import warnings

    logging.getLogger().addHandler(logging.NullHandler())
    warnings.simplefilter("ignore")
    os.environ.setdefault("PYTHONWARNINGS", "ignore")
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")


def _stopped(status: int) -> None:
    """Stop before the reader's language is known."""
    print("Stopped.", file=sys.stderr)
    _end_now(status)


def _end_now(status: int) -> None:
    """End without what Python does at its end: libraries that were stopped while they were loaded
    are not fit for it (one in some hundred ended in a fatal error). Processes at work for this one
    end by themselves, as when it is killed."""
    try:
        sys.stdout.flush()
        sys.stderr.flush()
    except (OSError, ValueError):  # nobody hears it
        pass
    if "multiprocessing.forkserver" in sys.modules:  # a desk: its socket has to go
        sys.exit(status)
    os._exit(status)


if __name__ == "__main__":
    main()
