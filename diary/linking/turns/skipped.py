"""A number that the speaker passes over: skipped, dealt with, written down, wished better.

"Skip 23-18", "23-12 I've told you about", "it's got 23-18 written on the back", "had 23-18 been
any good", "24-11's pollen would improve it". Leaves alone "24-11 is a red".
"""

from diary.linking.turns.lost import LOSSES, PEOPLE
from diary.reading.mentions import Mentions, Ref

_WHEN = frozenset("after since when once before until because".split())
_NEAR = (("beside",), ("behind",), ("alongside",), ("against",))
_REFUSED = frozenset({"not", "never", "to"})  # "labels to write that I mustn't forget, 3/24"
_SKIPPING = frozenset("skip skipping skipped ignore ignoring forget bypass".split())
_WRITTEN = frozenset("written printed scribbled scrawled pencilled stamped".split())
_BELONGINGS = frozenset("pollen seed mother father label tag stick place spot parents twin".split())
_NOTED = frozenset({"put", "written", "says", "note", "wrote"})
_DONE = frozenset({"told", "shown", "seen", "covered", "done"})
_THROWN = frozenset(
    "dropped discarded binned composted dumped chucked thrown scrapped ditched sold given".split()
)
_HAVING = frozenset({"have", "'ve", "already", "just", "had"})


def skipped(mentions: Mentions, ref: Ref) -> bool:
    """Whether the words right before or after the number pass it over."""
    texts = mentions.talk.texts
    ended = mentions.talk.tokens[ref.end - 1].mark in (".", "?")
    apart = ref.start > 0 and bool(mentions.talk.tokens[ref.start - 1].mark)
    before = texts[ref.start - 1] if ref.start and not apart else ""  # "before I forget, 23-18"
    earlier = [t for t in texts[max(0, ref.start - 3) : max(0, ref.start - 1)] if t != "'"]
    last = earlier[-1] if earlier else ""
    after, second = (*(() if ended else texts[ref.end : ref.end + 2]), "", "")[:2]
    return (
        (before in _SKIPPING and last not in _REFUSED)
        or before == "another"  # "I'd sooner have another 23-18"
        or (after == "was" and second in _THROWN)
        or before in ("what", "whatever")  # "what 23-18 lacked, this has"
        or (before == "see" and _if(mentions, ref))  # "if you want a white, see 23-18"
        or (before == "see" and last in _NOTED)  # "on the tag I've put 'see 23-18'"
        or (before in _WHEN and after in LOSSES)  # "after 23-18 went I had the room"
        or (before == "had" and after == "been")
        or after in _WRITTEN
        or (after == "to" and second in ("thank", "blame"))  # "I've 23-18 to thank for that"
        or (after == "'s" and second in _BELONGINGS)
        or (_stands_near(before, last) and after in ("it", "this", "he", "she"))
        or (after in PEOPLE and _dealt_with(texts, ref.end + 1))
    )


def _if(mentions: Mentions, ref: Ref) -> bool:
    head = mentions.talk.sentence(ref.start)[0]
    return "if" in mentions.talk.texts[max(head, ref.start - 8) : ref.start]


def _stands_near(before: str, last: str) -> bool:
    """ "next to 23-18 it looks washed out"; not "next to it 23-18"."""
    return (before,) in _NEAR or (last, before) == ("next", "to")


def _dealt_with(texts: tuple[str, ...], at: int) -> bool:
    """ "23-12 I've already told you about", "23-12 you've seen"."""
    while texts[at : at + 1] and texts[at] in _HAVING:
        at += 1
    return bool(texts[at : at + 1]) and texts[at] in _DONE
