"""Decisions that are only thought of: "I might name it", "perhaps a bigger pot".

What a plant may have or do is leave given, and decided: "it may have another summer". A
"might" reaches as far as the speaker's next beginning: "I might name it; I'll watch it first".
"""

import re

from diary.linking.decisions.anew import begins_anew
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_MODAL = re.compile(r"\b(might|(?<!in )(?<!of )(?<!by )(?<!last )(?<!next )may|could)\b")
_THOUGHT_OF = re.compile(
    r"\b(maybe|perhaps|wonder|think about|thinking about|thinking of|thought of)\b"
)
_SOME_DAY = re.compile(r"\b(some|one) day\b|\bsomeday\b")
_REACH, _DAY_REACH = 8, 5
_PLANT = frozenset({"it", "she", "he", "this", "that", "one", "they", "these", "those"})
_LEAVE = frozenset("have stay stop live remain bide wait sit stand keep go".split())


def only_perhaps(mentions: Mentions, found: Found) -> bool:
    """ "I might name it"; not "she may have one more season", "I might, so I'll watch it"."""
    talk = mentions.talk
    low = max(talk.sentence(found.start)[0], found.start - _REACH)
    lead = talk.texts[low : found.start]
    anew = begins_anew(talk, low, found.start + 1)
    own = list(talk.texts[low if anew is None else anew : found.start])
    if anew is None and _leave_given(mentions, found):
        own.remove("may")
    return bool(
        _MODAL.search(" ".join(own))
        or _THOUGHT_OF.search(" ".join(lead))
        or _SOME_DAY.search(" ".join(talk.texts[found.start : found.end + _DAY_REACH]))
    )


def _leave_given(mentions: Mentions, found: Found) -> bool:
    """ "it may have another year", "she may stay"; not "it may need a bigger pot"."""
    texts, at = mentions.talk.texts, found.start - 1
    may = texts[at : at + 1] == ("may",) and texts[at - 1] in _PLANT
    return may and texts[found.start] in _LEAVE
