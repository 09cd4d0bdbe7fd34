"""Numbers of seeds that were not sown of this cross: had, kept, as a rule, of something else.

"I had ten seeds but lost two, so I sowed eight", "thirty more seeds to sow", "I sow forty of each
as a rule", "I never had more than two seeds off its mother". Leaves alone "ten seeds I sowed".
"""

from diary.linking.counts.seed_numbers import counts_seeds
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity
from diary.reading.spoken import amount_at

_HAD = frozenset("had got have get gets gave give gives me us more than over at least".split())
_IN_GENERAL = frozenset("never every always usually average generally".split())
_SOWING = frozenset("sowed sown sow planted put set started pricked popped in".split())


def not_sown(mentions: Mentions, amount: Quantity) -> bool:
    """Whether the seeds are yet to be sown, or told of in general."""
    return _yet_to_sow(mentions, amount) or _in_general(mentions, amount)


def only_had(mentions: Mentions, amount: Quantity) -> bool:
    """ "I had ten seeds but lost two, so I sowed eight": how many were sown is told after."""
    talk = mentions.talk
    stop = min(len(talk.texts) - 1, amount.end + _SOWN_AFTER)
    if talk.punctuated:
        stop = min(talk.sentence(amount.start)[1], stop)
    return any(
        talk.texts[i] in ("sowed", "sown", "planted") and amount_at(talk, i + 1) is not None
        for i in range(amount.end, stop)
    )


_SOWN_AFTER = 16


def _in_general(mentions: Mentions, amount: Quantity) -> bool:
    """ "I never had more than two seeds off its mother", "I sow forty of each as a rule".

    Not "never touched it, nine seeds".
    """
    if _as_a_rule(mentions, amount):
        return True
    texts, i = mentions.talk.texts, amount.start
    while i > 0 and amount.start - i < 6 and texts[i - 1] in _HAD:
        i -= 1
    return i > 0 and texts[i - 1] in _IN_GENERAL


def _as_a_rule(mentions: Mentions, amount: Quantity) -> bool:
    """ "I sow about forty of each", "I sowed thirty of something else": of no one cross."""
    talk = mentions.talk
    low = max(talk.clause(amount.start)[0], amount.start - 5)
    lead = talk.texts[low : amount.start]
    after = talk.texts[amount.end : min(amount.end + 6, talk.sentence(amount.start)[1])]
    if "of" in after and _ANOTHER & set(after[after.index("of") :]):
        return True
    now = any(lead[i : i + 2] in _I_SOW for i in range(len(lead)))
    return now and bool(_EACH & set(after) or {"always", "usually", "generally"} & set(lead))


_I_SOW = tuple((w, "sow") for w in ("i", "we", "usually", "always"))
_EACH = frozenset({"each", "every", "any", "rule", "always", "usually"})
_ANOTHER = frozenset({"else", "another", "others"})


def _yet_to_sow(mentions: Mentions, amount: Quantity) -> bool:
    """ "thirty more seeds to sow", "twenty seeds in the packet for next year"."""
    talk = mentions.talk
    if not counts_seeds(mentions, amount):
        return False
    stop = min(amount.end + 7, talk.clause(amount.start)[1])
    if _SOWING & set(talk.texts[max(0, amount.start - 4) : amount.start]):
        return False
    return any(
        not _SOWING & set(talk.texts[amount.end : f.start])  # "seeds were sown for the show"
        for f in mentions.vocabulary.unsown.find(talk.texts, amount.end, stop)
    )
