"""How hard to listen: the settings of recognition, read once and handed down. Pure."""

import hashlib
import json
import os
from dataclasses import asdict, dataclass, field
from enum import Enum

RATE = 16_000  # samples a second of all sound that is listened to


class Effort(Enum):
    """How much time recognition may take. The figures behind each are in DEVELOPERS.md."""

    DRAFT = "draft"  # greedy search, one reading
    NORMAL = "normal"  # the setting whose accuracy is stated
    CAREFUL = "careful"  # wider search, names looked for in every doubtful stretch


def usable_cores() -> int:
    """The cores this process may use, at least one."""
    affinity = getattr(os, "sched_getaffinity", None)
    return len(affinity(0)) if affinity else (os.cpu_count() or 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class SpeechSettings:
    """What decides which words come out.

    `model` is `base`, `tiny.en`, the name of a larger model that was asked for, or a folder.
    `language` is a code such as "en"; None lets the model guess it from each block.
    """

    model: str = "base"
    effort: Effort = Effort.NORMAL
    language: str | None = "en"
    threads: int = field(default_factory=usable_cores)

    @property
    def fingerprint(self) -> str:
        """Tells apart the runs whose words may differ: blocks of another one are not reused."""
        deciding = {**asdict(self), "effort": self.effort.value, "speech": SPEECH_VERSION}
        del deciding["threads"]
        return hashlib.sha256(json.dumps(deciding, sort_keys=True).encode()).hexdigest()[:16]


SPEECH_VERSION = "2"  # raised whenever the same audio may come out in other words
