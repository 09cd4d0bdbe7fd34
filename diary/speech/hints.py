"""What the breeder is likely to say: names and numbers on record, as a help to hearing. Pure."""

import hashlib
import json
from dataclasses import asdict, dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Hints:
    """Names and numbers on record, likeliest first, and what was misheard before.

    `numbers` are seedling numbers as the breeder writes them. A mishearing is a pair
    (what was heard, what was meant). Hints never put a word into a transcript by
    themselves: the audio must bear it out.
    """

    names: tuple[str, ...] = ()
    numbers: tuple[str, ...] = ()
    mishearings: tuple[tuple[str, str], ...] = ()

    @property
    def fingerprint(self) -> str:
        """Equal for equal hints; kept with every block that was heard with them."""
        return hashlib.sha256(json.dumps(asdict(self)).encode()).hexdigest()[:16]


NO_HINTS = Hints()
