"""Pests and diseases that are somebody else's, feared, or denied a little later.

"my sister was on at me about greenfly but no, there's none on it", "my neighbour lost his
to root rot", "the whitefly are on the tomatoes", "sprayed against rust". Leaves alone
"greenfly on the tips".
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions

_LATER, _EARLIER = 12, 9


def without_others_ailments(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """The statements without ailments that this plant does not have."""
    return [
        s
        for s in found
        if s.trait != "health" or s.value == "clean" or not _not_this_plant(mentions, s, found)
    ]


def _not_this_plant(mentions: Mentions, s: Statement, found: list[Statement]) -> bool:
    return (
        _denied_later(mentions, s, found)
        or _not_so_much_as(mentions, s)
        or _answered_no(mentions, s)
        or _once_had(mentions, s)
        or _owned_elsewhere(mentions, s)
        or _found_elsewhere(mentions, s)
        or _feared(mentions, s)
        or _in_general(mentions, s)
    )


def _denied_later(mentions: Mentions, s: Statement, found: list[Statement]) -> bool:
    """ "... greenfly, but no, there's none on it", "some kind of virus, which it hasn't"."""
    talk = mentions.talk
    stop = min(len(talk.texts), s.end + _LATER)
    if talk.punctuated:
        stop = min(stop, talk.sentence(s.start)[1] + _LATER // 2)
    stop = next((r.start for r in mentions.refs_in(s.end, stop) if r.is_number), stop)
    return any(
        not any(s.end <= x.start < cue.start for x in found)
        for cue in mentions.cue("none_of_it", s.end, stop)
    )


def _not_so_much_as(mentions: Mentions, s: Statement) -> bool:
    """ "not so much as a greenfly", "without so much as a speck of rust"."""
    low = max(mentions.talk.clause(s.start)[0], s.start - _HAD_WITHIN)
    before = mentions.talk.texts[low : s.start]
    return any(before[i : i + 3] == ("so", "much", "as") for i in range(len(before)))


def _once_had(mentions: Mentions, s: Statement) -> bool:
    """ "it had a bit of rust in June"; not "I've had rust on it", "it has had rust again"."""
    texts = mentions.talk.texts
    low = max(mentions.talk.clause(s.start)[0], s.start - _HAD_WITHIN)
    for i in range(s.start - 1, low, -1):
        if texts[i - 1 : i + 1] == ("did", "have"):
            return True  # "it did have whitefly in the spring"
        if texts[i] == "had":
            return texts[i - 1] in ("it", "she", "he", "this", "they")
        if texts[i] not in _A_BIT:
            return False
    return False


_HAD_WITHIN = 6
_A_BIT = frozenset("a the bit of touch some little spot bad an attack dose lot once".split())


def _answered_no(mentions: Mentions, s: Statement) -> bool:
    """ "Whitefly? Not a one."; "Rust, none" is a denial too."""
    talk = mentions.talk
    if not talk.tokens[s.end - 1].mark:
        return False
    said = talk.texts[s.end : s.end + 2]
    agreed = mentions.cue("agreed", s.end, s.end + 6)
    told = said[:1] in _THEY and said[1:] in _SAY and not agreed  # "Mildew, he says."
    return said[:1] in _NO or told


_THEY = (("he",), ("she",), ("they",))
_SAY = (("says",), ("said",), ("reckons",), ("say",), ("thinks",))
_NO = (("not",), ("none",), ("never",), ("nope",), ("nowt",), ("nothing",), ("nil",))


def _owned_elsewhere(mentions: Mentions, s: Statement) -> bool:
    """ "my neighbour lost twenty to the rot", "the ones by the gate that have got the rust"."""
    talk = mentions.talk
    low = max(0, s.start - _EARLIER)
    if talk.punctuated:
        low = max(talk.sentence(s.start)[0], low)
    return any(c.end <= s.start for c in mentions.cue("others_ailment", low, s.start))


def _found_elsewhere(mentions: Mentions, s: Statement) -> bool:
    """ "the whitefly are all on the tomatoes"."""
    texts = mentions.talk.texts
    has = texts[max(0, s.start - 3) : s.start]
    if {"it", "she", "he"} & set(has) and has[-1:] in (("got",), ("has",)):
        return False  # "it's got rust, which it'll have had off the one next door"
    stop = min(len(texts), s.end + 7)
    if s.value == "rot" and {"cuttings", "seedlings"} & set(texts[max(0, s.start - 4) : s.start]):
        return True  # "cuttings of these always rot on me", "two of the cuttings rotted"
    if texts[s.end : s.end + 2] in _ON_EVERY and (
        set(texts[s.end + 2 : min(s.end + 4, mentions.talk.clause(s.end)[1])])
        & mentions.vocabulary.classes["not_plant"]
    ):
        return True  # "rust on every gate hinge"
    return any(
        not mentions.talk.between(s.end - 1, c.start, (".", "?"))
        for c in mentions.cue("found_elsewhere", s.end, stop)
    )


def _feared(mentions: Mentions, s: Statement) -> bool:
    """ "sprayed against rust", "keep an eye out for thrips", "rust-resistant"."""
    after = mentions.talk.texts[s.end : s.end + 1]
    if after and after[0] in ("resistant", "proof", "free", "resistance", "spray", "powder"):
        return True
    low = max(0, s.start - 6)
    if {"if"} & set(mentions.talk.texts[max(0, s.start - 4) : s.start]):
        return True  # "if that's rust I'm a Dutchman"
    if mentions.talk.punctuated:
        low = max(low, mentions.talk.sentence(s.start)[0])
    words = set(mentions.talk.texts[low : s.start])
    if words & _REMEDIES and words & {"for", "against"} and not words & {"needs", "wants", "need"}:
        return True
    return any(
        c.end <= s.start and s.start - c.end <= 2 for c in mentions.cue("feared", low, s.start)
    )


def _in_general(mentions: Mentions, s: Statement) -> bool:
    """ "you get mildew in here in a wet year"; not "you get whitefly on it"."""
    talk = mentions.talk
    before = talk.texts[max(talk.clause(s.start)[0], s.start - 4) : s.start]
    if not any(before[i] in _ANYBODY and before[i + 1] in _MEETS for i in range(len(before) - 1)):
        return False
    after = talk.texts[s.end : min(s.end + 4, talk.clause(s.end - 1)[1])]
    return not set(after) & (_HERE | mentions.vocabulary.classes["foliage"])


_ANYBODY = frozenset({"you", "everybody", "everyone", "folk", "people", "we", "one"})
_MEETS = frozenset({"get", "gets", "find", "finds", "meet", "expect"})
_HERE = frozenset({"it", "this", "him", "her", "them", "these", "tips", "underneath"})
_ON_EVERY = tuple(("on", w) for w in ("every", "the", "my", "all", "that", "each"))
_REMEDIES = frozenset(
    "spray sprayed spraying dust dusted drench drenched sulphur soap treat treated feed fungicide "
    "wash washed fumigate fumigated card cards trap traps".split()
)
