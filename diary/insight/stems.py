"""Which cross a number belongs to, where the breeder numbers by cross ("24-11A", "17.3"). Pure.

Learnt from the register: if seedlings whose numbers share all but the last part always have
the same parents, a number that is not on record is presumed to be of that cross too. It is
used to tell sisters, and never written down as parentage.
"""

import re
from collections.abc import Mapping

Parents = tuple[str, str]

_LETTER = re.compile(r"^(.*\d)[A-Za-z]{1,2}$")
_LAST_PART = re.compile(r"^(.*[^\W_])[-./](\d+)$")
# crosses of two seedlings or more that must bear it out before it is believed
_CROSSES = 2


def stem(number: str) -> str | None:
    """What a number shares with its sisters: "24-11" of "24-11A", "17" of "17.3"."""
    match = _LETTER.match(number) or _LAST_PART.match(number)
    return match[1] if match else None


def presumed_parents(on_record: Mapping[str, Parents]) -> dict[str, Parents]:
    """Parents by stem, from the seedlings on record; empty where numbers do not go by cross."""
    by_stem: dict[str, set[Parents]] = {}
    members: dict[str, int] = {}
    for number, parents in on_record.items():
        shared = stem(number)
        if shared is not None:
            by_stem.setdefault(shared, set()).add(parents)
            members[shared] = members.get(shared, 0) + 1
    if any(len(found) > 1 for found in by_stem.values()):
        return {}
    if sum(count > 1 for count in members.values()) < _CROSSES:
        return {}
    return {shared: next(iter(found)) for shared, found in by_stem.items()}
