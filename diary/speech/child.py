"""The listening process seen from its parent: start it, take its messages, end it."""

import json
import os
import queue
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from types import TracebackType
from typing import IO, Any

from diary.errors import Cancelled
from diary.speech.job import Job, job_to_json

_LOOK_EVERY_S = 0.1  # how soon a cancel is seen


class Child:
    """A context that runs one job; the process is gone when it is left, whatever happened."""

    def __init__(self, job: Job) -> None:
        self._job = job
        self._errors: IO[bytes] = tempfile.TemporaryFile()  # noqa: SIM115
        self._process: subprocess.Popen[str] | None = None

    def __enter__(self) -> "Child":
        self._process = subprocess.Popen(
            [sys.executable, "-m", "diary.speech.worker"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=self._errors,
            text=True,
            encoding="utf-8",
            env=_environment(self._job.settings.threads),
        )
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        process = self._started
        if process.poll() is None:
            process.kill()
        process.wait()
        for pipe in (process.stdin, process.stdout):
            if pipe:
                try:
                    pipe.close()
                except OSError:  # a pipe to a process that died with bytes still in it
                    continue
        self._errors.close()

    @property
    def _started(self) -> "subprocess.Popen[str]":
        if self._process is None:
            raise RuntimeError("Child is used outside its context")
        return self._process

    def messages(self, cancelled: Callable[[], bool]) -> Iterator[dict[str, Any]]:
        """Its messages until it ends, well or not. Raises Cancelled soon after it is asked to."""
        process = self._started
        waiting: queue.SimpleQueue[dict[str, Any] | None] = queue.SimpleQueue()
        threading.Thread(target=_read, args=(process.stdout, waiting), daemon=True).start()
        try:
            if process.stdin:
                process.stdin.write(job_to_json(self._job) + "\n")
                process.stdin.flush()
        except BrokenPipeError:
            pass  # it died at once; its messages end, and the caller sees why
        while True:
            if cancelled():
                raise Cancelled(f"Stopped listening to {self._job.path}; what was heard is kept.")
            try:
                message = waiting.get(timeout=_LOOK_EVERY_S)
            except queue.Empty:
                continue
            if message is None:
                process.wait()
                return
            yield message

    @property
    def last_words(self) -> str:
        """How it ended: the last line it wrote to its error output, or its exit status."""
        self._errors.seek(0)
        lines = self._errors.read().decode("utf-8", "replace").strip().splitlines()
        status = f"exit status {self._started.poll()}"
        return f"{lines[-1][:200]}, {status}" if lines else status


def _read(pipe: IO[str] | None, into: "queue.SimpleQueue[dict[str, Any] | None]") -> None:
    """Hand each line on; None at the end. A line cut short by a crash is no message."""
    try:
        for line in pipe or ():
            try:
                into.put(json.loads(line))
            except json.JSONDecodeError:
                break
    except ValueError:  # the pipe was closed under us: the parent has left the context
        pass
    into.put(None)


def _environment(threads: int) -> dict[str, str]:
    package_parent = str(Path(__file__).resolve().parents[2])
    path = os.environ.get("PYTHONPATH")
    return {
        **os.environ,
        "PYTHONPATH": f"{package_parent}{os.pathsep}{path}" if path else package_parent,
        "HF_HUB_OFFLINE": "1",
        "OMP_NUM_THREADS": str(threads),
        "MALLOC_ARENA_MAX": "2",  # many arenas hold on to memory that is free (glibc)
    }


class Pace:
    """How fast audio is heard: audio time by wall time since the start."""

    def __init__(self, *, start_ms: int) -> None:
        self.start_ms = start_ms
        self._began = time.monotonic()

    def speed(self, at_ms: int) -> float | None:
        """Seconds of audio a second; None before there is anything to go by."""
        passed = time.monotonic() - self._began
        heard = (at_ms - self.start_ms) / 1000
        return heard / passed if heard > 0 and passed > 0.5 else None
