"""What the listening process is asked to do, as a line of JSON. Pure."""

import json
from dataclasses import asdict, dataclass

from diary.speech.hints import Hints
from diary.speech.settings import Effort, SpeechSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Listen to `path` from `start_ms` on, counting blocks from `first_index`.

    `said_before` are the last words of the blocks already heard: what this tour is about.
    """

    path: str
    model_folder: str
    settings: SpeechSettings
    hints: Hints
    first_index: int = 0
    start_ms: int = 0
    said_before: str = ""


def job_to_json(job: Job) -> str:
    """One line; `job_from_json` gives the job back."""
    row = asdict(job)
    row["settings"]["effort"] = job.settings.effort.value
    return json.dumps(row)


def job_from_json(text: str) -> Job:
    """The job that `job_to_json` wrote."""
    row = json.loads(text)
    settings = row.pop("settings")
    settings["effort"] = Effort(settings["effort"])
    hints = row.pop("hints")
    return Job(
        settings=SpeechSettings(**settings),
        hints=Hints(
            names=tuple(hints["names"]),
            numbers=tuple(hints["numbers"]),
            mishearings=tuple((heard, meant) for heard, meant in hints["mishearings"]),
        ),
        **row,
    )
