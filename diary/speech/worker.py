"""The child process that listens: a job on standard input, messages on standard output.

A process of its own, because the engine can die in ways that no `except` sees. Messages are
lines of JSON, `{"say": ...}`: "open" (total_ms), "plan" (index, start_ms, end_ms), "at" (ms),
"block" (block), "end" (missing, duration_ms) and "error" (sort, text). When standard input
closes, the parent is gone and so is the child.
"""

import json
import os
import sys
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any

from diary import errors
from diary.errors import DiaryError
from diary.speech.block import block_to_json
from diary.speech.job import Job, job_from_json

Say = Callable[..., None]


def main() -> None:
    """Read one job and do it."""
    out = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)  # whatever libraries print must not end up among the messages

    def say(kind: str, **fields: Any) -> None:
        out.write(json.dumps({"say": kind, **fields}, ensure_ascii=False) + "\n")
        out.flush()

    job = job_from_json(sys.stdin.readline())
    threading.Thread(target=_leave_with_parent, daemon=True).start()
    try:
        work(job, say)
    except DiaryError as error:
        say("error", sort=type(error).__name__, text=str(error))
    except MemoryError:
        say("error", sort="ModelError", text="There is not enough memory to listen.")
    out.flush()
    os._exit(0)  # the engine's own clean-up has been seen to crash at exit


def _leave_with_parent() -> None:
    while sys.stdin.read(1):
        pass
    os._exit(1)


def work(job: Job, say: Say) -> None:
    """Listen to the file of the job from its start on, telling `say` of each step."""
    from diary.media.decode import Sound
    from diary.media.probe import length_ms
    from diary.speech.engine import Engine
    from diary.speech.listening import listen, said_so_far, stretches

    path = Path(job.path)
    total_ms = length_ms(path)
    say("open", total_ms=total_ms)
    sound = Sound(path)
    engine: Engine | None = None
    index, said = job.first_index, job.said_before
    for stretch in stretches(sound, start_ms=job.start_ms):
        say("plan", index=index, start_ms=stretch.start_ms, end_ms=stretch.end_ms)
        if engine is None:
            engine = Engine(Path(job.model_folder), job.settings)
        block = listen(
            engine,
            stretch,
            index=index,
            hints=job.hints,
            said_before=said,
            on_window=lambda at_ms: say("at", ms=at_ms),
        )
        said = said_so_far(said, block.words)
        say("block", block=block_to_json(block))
        index += 1
    say(
        "end",
        missing=sound.report.sentences(),
        duration_ms=max(total_ms, sound.report.decoded_ms),
    )


def raised(sort: str, text: str) -> DiaryError:
    """The error that a message of the child stands for."""
    found = getattr(errors, sort, DiaryError)
    error: DiaryError = found(text)
    return error


if __name__ == "__main__":
    main()
