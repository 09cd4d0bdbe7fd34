"""A plant spoken of that stands here no more, though its number heads the clause.

"8/22 that used to stand beside it was crawling with greenfly", "two-thirty was the one that died",
"23-18 I lost to the frost". Leaves alone "23-18 that I raised from seed", "28-06, I gave that up
for dead".
"""

from diary.reading.mentions import Mentions, Ref

LOSSES = frozenset(
    "died rotted perished drowned failed withered froze snuffed went dead defunct "
    "sold damped collapsed vanished disappeared".split()
)
_WAS = frozenset(
    "used stood was were went died had grew lived sat came rotted failed got did threw".split()
)
_FROZEN = frozenset("froze frozen frosted eaten stolen binned composted chucked perished".split())
_LIVED = frozenset("used stood grew lived sat".split())
_GONE = frozenset(
    "next beside behind alongside here there sold binned given gone thrown composted chucked lost "
    "stolen nicked swapped make survive survived germinate live winter rooted".split()
)
_OF_ITSELF = frozenset("that it this the my all up some a".split())
_HAVING = frozenset("has have had 's just all also is was are were both never".split())
_DEEDS = frozenset(
    "lost gave sold sent threw chucked binned dumped had killed swapped ditched composted".split()
)
_GIVEN_UP = _DEEDS - {"had"}
_WHO = frozenset({"that", "which", "who", "what"})
_STAGES = frozenset(
    "bud buds budding flower flowering showing colour tight sulking poorly sick covered small "
    "tiny repotted potted pinched stopped fed cut leggy bare".split()
)
_ORIGIN = frozenset("off from out of up through as true by with".split())
PEOPLE = frozenset({"i", "we", "you", "they", "he", "she"})
_PLACES_GONE = frozenset({"to", "in", "on", "for", "the", "west", "down", "phut", "off", "out"})


_ONCE = (("did", "have"), ("to", "have"), ("once", "had"), ("there", "was"))


def tells_of_the_lost(mentions: Mentions, ref: Ref) -> bool:
    """ "23-18 that stood next to it went to my cousin"; not "23-18 that I raised from seed"."""
    talk = mentions.talk
    had = talk.texts[max(0, ref.start - 2) : ref.start]
    if had in _ONCE and (had[0] != "to" or talk.texts[ref.start - 3] == "used"):
        return not talk.between(ref.start - 2, ref.start, (".", "?", ","))  # "I did have 23-18"
    stop = talk.sentence(ref.start)[1] if talk.punctuated else len(talk.texts)
    end = list_end(mentions, ref)
    rest = talk.texts[end : min(end + 6, stop)]
    if not rest:
        return False
    if rest[0] in _WHO and _FROZEN & set(talk.texts[end : min(end + 9, stop)]):
        return True  # "24-19 that was her sister got froze in January"
    if rest[0] in _WHO and len(rest) > 1:
        if rest[1] == "came" and rest[2:3] != () and rest[2] in _ORIGIN:
            return False  # "number 11, that came off a pod on Tin Whistle"
        if rest[1] in ("was", "were") and _STAGES & set(rest[2:5]):
            return False  # "24-17 that was all bud when I left"
        if rest[1] in _WAS:
            return rest[1] in _LIVED | LOSSES or bool((LOSSES | _GONE) & set(rest[2:5]))
        had_to = rest[2:4] == ("had", "to")
        return rest[1] in PEOPLE and len(rest) > 2 and (rest[2] in _GIVEN_UP or had_to)
    if rest[:2] == ("used", "to") or rest[:4] == ("was", "the", "one", "that"):
        return True
    if rest[0] in PEOPLE and len(rest) > 1 and rest[1] in _GIVEN_UP:
        return rest[2:3] == () or rest[2] not in _OF_ITSELF  # "23-18 I lost to the frost"
    i = 0
    while i < len(rest) - 1 and rest[i] in _HAVING:
        i += 1
    clause = talk.texts[end : min(end + 12, talk.clause(ref.start)[1])]
    if talk.punctuated and any(
        clause[n] == "and" and clause[n + 1] in LOSSES for n in range(len(clause) - 1)
    ):
        return True  # "23-09 came out of the same pod and died"
    if rest[i] == "went":
        return rest[i + 1 : i + 2] != () and rest[i + 1] in _PLACES_GONE
    return rest[i] in LOSSES


def list_end(mentions: Mentions, ref: Ref) -> int:
    """Where a list of numbers ends: "23-05, 06 and 07"."""
    talk, end = mentions.talk, ref.end
    while True:
        joined = talk.texts[end : end + 1] in (("and",), ("or",))
        other = mentions.ref_at(end + joined)
        if other is None or not other.is_number:
            return end
        if not joined and talk.tokens[end - 1].mark != ",":
            return end
        end = other.end


def not_here(mentions: Mentions, ref: Ref) -> bool:
    """ "23-18 is not on the bench today, I've lent it out"; not "23-18 is not out yet"."""
    rest = mentions.talk.texts[ref.end : ref.end + 5]
    if len(rest) < 3 or rest[:2] not in (("is", "not"), ("'s", "not")) or rest[2] not in _HERE:
        return False
    return not _RECORDS & set(rest[3:])  # "23-18 isn't in my book at all"


_RECORDS = frozenset(
    "book books register list catalogue notes record records bud flower bloom leaf".split()
)
_HERE = frozenset("here on with among in around about worth".split())
