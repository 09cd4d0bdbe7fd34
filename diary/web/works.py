"""Long work behind the pages: adding recordings, previews, stills; one thing at a time, in order.

Work can be stopped and taken up again; what is finished is kept by the stages themselves.
"""

import itertools
import logging
import threading
from collections.abc import Callable
from dataclasses import dataclass, replace

from diary.errors import Cancelled, DiaryError
from diary.pipeline import Progress
from diary.records.record import RecordingId
from diary.settings import Settings

KEPT = 50  # finished works that are still shown
_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """One piece of work as it stands.

    `kind` is "add", "read" or "preview"; `state` "waiting", "working", "done", "stopped" or
    "failed". `page` is where its result is seen, `message` says why it failed.
    """

    id: int
    kind: str
    name: str
    state: str = "waiting"
    progress: Progress | None = None
    recording: RecordingId | None = None
    page: str | None = None
    message: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a finished work leaves behind."""

    recording: RecordingId | None = None
    page: str | None = None
    message: str | None = None


Report = Callable[[Progress], None]
Doing = Callable[[Settings, Report], Outcome]


class Works:
    """The works of one server, done by a thread of their own. Safe from any thread."""

    def __init__(self, settings: Settings) -> None:
        self._settings = settings
        self._changed = threading.Condition()
        self._numbers = itertools.count(1)
        self._works: dict[int, Work] = {}
        self._doings: dict[int, Doing] = {}
        self._stop_asked: set[int] = set()
        self._closing = False
        self._thread: threading.Thread | None = None

    def start(self, kind: str, name: str, doing: Doing) -> Work:
        """Put a work at the end of the queue. One that waits or runs already is given instead."""
        with self._changed:
            for work in self._works.values():
                same = (work.kind, work.name) == (kind, name)
                if same and work.state in ("waiting", "working"):
                    return work
            work = Work(id=next(self._numbers), kind=kind, name=name)
            self._works[work.id] = work
            self._doings[work.id] = doing
            self._forget_old()
            self._run()
            self._changed.notify_all()
            return work

    def all(self) -> tuple[Work, ...]:
        """Every work, oldest first."""
        with self._changed:
            return tuple(self._works.values())

    def get(self, number: int) -> Work | None:
        """The work with this id."""
        with self._changed:
            return self._works.get(number)

    def cancel(self, number: int) -> Work | None:
        """Stop a work: at once if it waits, else at its next step."""
        with self._changed:
            work = self._works.get(number)
            if work is not None and work.state == "waiting":
                self._works[number] = replace(work, state="stopped")
            elif work is not None and work.state == "working":
                self._stop_asked.add(number)
            return self._works.get(number)

    def resume(self, number: int) -> Work | None:
        """Take up a work that was stopped or failed, at the end of the queue."""
        with self._changed:
            work = self._works.get(number)
            doing = self._doings.get(number)
            if work is None or doing is None or work.state not in ("stopped", "failed"):
                return work
            del self._works[number]
        return self.start(work.kind, work.name, doing)

    def stop(self) -> None:
        """Ask everything to stop and wait for it."""
        with self._changed:
            self._closing = True
            thread = self._thread
            self._changed.notify_all()
        if thread is not None:
            thread.join(timeout=20)

    def _forget_old(self) -> None:
        over = [work.id for work in self._works.values() if work.state == "done"][:-KEPT]
        for number in over:
            del self._works[number], self._doings[number]

    def _run(self) -> None:
        if self._thread is None:
            self._thread = threading.Thread(target=self._loop, name="works", daemon=True)
            self._thread.start()

    def _loop(self) -> None:
        while True:
            with self._changed:
                work = self._next()
                while work is None and not self._closing:
                    self._changed.wait()
                    work = self._next()
                if work is None or self._closing:
                    return
                self._works[work.id] = replace(work, state="working")
                doing = self._doings[work.id]
            self._do(work.id, doing)

    def _next(self) -> Work | None:
        return next((work for work in self._works.values() if work.state == "waiting"), None)

    def _do(self, number: int, doing: Doing) -> None:
        def report(progress: Progress) -> None:
            with self._changed:
                self._works[number] = replace(self._works[number], progress=progress)
                if self._closing or number in self._stop_asked:
                    raise Cancelled("Stopped; what was finished is kept.")

        try:
            outcome = doing(self._settings, report)
        except Cancelled:
            self._end(number, state="stopped")
        except DiaryError as error:
            self._end(number, state="failed", message=str(error))
        except Exception as error:
            # a work that dies of anything else must not take the queue with it
            _log.exception("a work failed")
            self._end(number, state="failed", message=f"{type(error).__name__}: {error}")
        else:
            self._end(
                number,
                state="done",
                recording=outcome.recording,
                page=outcome.page,
                message=outcome.message,
            )

    def _end(
        self,
        number: int,
        *,
        state: str,
        recording: RecordingId | None = None,
        page: str | None = None,
        message: str | None = None,
    ) -> None:
        with self._changed:
            self._stop_asked.discard(number)
            self._works[number] = replace(
                self._works[number], state=state, recording=recording, page=page, message=message
            )
