"""Second thoughts about a colour that no single word of repair shows.

"Red. Well, I say red. Cherry, more like." "Mauve, would you say? I'd say plum." "I told you to
write coral. Put salmon." Each function asks of two colours of one part, the second told after
the first, whether the first is set aside by the way the second is said.
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.tokens import QUERY, Talk

_NEAR, _FAR = 14, 30
_WELL = frozenset("well more of a an like sort kind it 's really very perhaps maybe or".split())
_ECHO = frozenset("well i say said it 's is or so call a that maybe not".split())


def set_aside(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """Whether the first colour gives way to the second."""
    if first.value == second.value or second.start - first.end > _FAR:
        return False
    return any(
        habit(mentions, first, second)
        for habit in (
            _told_once,
            _guessed,
            _not_so,
            _echoed,
            _then_and_now,
            _bettered,
            _asked,
            _chosen,
        )
    )


def _told_once(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "I told you to write coral", "they call it black": told, and now told otherwise."""
    start = max(0, mentions.talk.sentence(first.start)[0], first.start - 9)
    told = mentions.vocabulary.colour_habits["told"].find(mentions.talk.texts, start, first.start)
    return any(not _taken_up(mentions, t.end, first.start) for t in told)


def _guessed(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "I'd have said purple, but next to the book it's blue", "Red, you'd think, till you bend."

    Only where what comes next is told as what it is.
    """
    talk = mentions.talk
    guess = mentions.vocabulary.colour_habits["guess"]
    before = guess.find(talk.texts, max(0, first.start - 7), first.start)
    near = [g for g in before if set(talk.texts[g.end : first.start]) <= _GUESS_FILL]
    if not near and guess.at(talk.texts, first.end) is None:
        return False
    between = talk.texts[first.end : second.start]
    said = next((i for i in range(len(between) - 1) if between[i : i + 2] in _IT_IS), None)
    it_is = talk.texts[second.end : second.end + 2] == ("it", "is")  # "so coral it is"
    told_now = it_is or (said is not None and set(between[said + 2 :]) <= _GUESS_FILL | _NOW)
    first_said, then = talk.sentence_number(first.end - 1), talk.sentence_number(second.start)
    apart = talk.punctuated and first_said != then
    return told_now or apart or bool(_TURNING & set(between))


_IT_IS = (("it", "'s"), ("it", "is"), ("she", "'s"), ("he", "'s"))
_NOW = frozenset("now really actually definitely plainly quite nearly almost clearly".split())
_GUESS_FILL = frozenset(
    "it this that was is were 's a an the as for down more of sort kind".split()
)
_TURNING = frozenset("but no until till then only though turns comes closer close".split())


def _not_so(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "it's orange from over there but it isn't when you get close, it's a salmon"."""
    talk = mentions.talk
    for j in range(first.end, second.start - 2):
        flat = _flatly_denied(talk, j)
        words = talk.texts[j : j + 4]
        when = words[0] in _SHE and words[1:3] in _IS_NOT and words[3:] in _WHEN
        if (flat or when) and not mentions.colours_in(j, second.start):
            return {"'s", "is", "call", "more", "nearer"} & set(talk.texts[j + 3 : second.end]) != (
                set()
            )
    return False


_IS_NOT = (("is", "not"), ("'s", "not"))
_SHE = frozenset({"it", "she", "he", "that"})
_WHEN = tuple(
    (w,) for w in "when though not out once if up at really quite to in you by from on so".split()
)


def _taken_up(mentions: Mentions, start: int, end: int) -> bool:
    """Whether the telling is over: "I told you, it's coral"."""
    words = mentions.talk.texts[start:end]
    over = {"but", "'s", "is", "and"} & set(words)
    return bool(over) or len(words) > 5


def _echoed(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "purple, well, purple, it's more a plum", "white, or so I took it to be"."""
    talk = mentions.talk
    if _flatly_denied(talk, first.end) or _queried(mentions, first):
        return True
    if mentions.vocabulary.colour_habits["taken_back"].find(talk.texts, first.end, second.start):
        return True
    if mentions.vocabulary.colour_habits["doubted"].at(talk.texts, first.end) is not None:
        return True
    if second.start - first.end > _NEAR:
        return False
    words = talk.texts[first.end : second.start]
    if "well" in words and set(words) <= _WELL:
        return True
    again = [c for c in mentions.colours_in(first.end, second.start) if c.value == first.value]
    if not again:
        return False
    between = talk.texts[first.end : again[0].start]
    return (len(between) <= 6 and set(between) <= _ECHO and "well" in between) or "say" in between


def _queried(mentions: Mentions, first: Statement) -> bool:
    """ "Orange. What am I saying, | orange, | it's scarlet."."""
    queried = mentions.vocabulary.colour_habits["queried"]
    said = queried.find(mentions.talk.texts, max(0, first.start - 6), first.start)
    return any(f.end == first.start for f in said)


def _flatly_denied(talk: Talk, at: int) -> bool:
    """ "Photographs pink. It isn't, it's cerise."."""
    words = talk.texts[at : at + 4]
    if words[1:3] not in _IS_NOT or words[0] not in ("it", "she", "he", "that"):
        return False
    return bool(talk.tokens[at + 2].mark) or words[3:] in (("it",), ("she",), ("he",))


def _then_and_now(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "it was white this morning and it's pink now"."""
    texts = mentions.talk.texts
    then = texts[max(0, first.start - 3) : first.start]
    between = texts[first.end : second.start]
    now = "now" in (*between, *texts[second.end : second.end + 2]) or bool(_TODAY & set(between))
    return "was" in then and now and {"'s", "is"} & set(between) != set()


_GIVING_IN = frozenset("no right fine okay alright well very".split())
_TODAY = frozenset("today tonight morning afternoon lately".split())


def _bettered(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "cherry, more like", "it's more a plum than a purple", "plum is nearer the mark"."""
    talk = mentions.talk
    if second.start - first.end > _NEAR:
        return False
    habits = mentions.vocabulary.colour_habits
    between = set(talk.texts[first.end : second.start])
    if talk.texts[second.end : second.end + 1] == ("then",) and between & _GIVING_IN:
        return True  # "lavender, no, don't look at me, lilac then"
    if habits["bettered_after"].at(talk.texts, second.end) is not None:
        return True
    return any(
        second.start - f.end <= 2
        for f in habits["bettered_before"].find(
            talk.texts, max(first.end, second.start - 7), second.start
        )
    )


def _asked(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "Mauve, would you say? I'd say plum.", "Lavender? No, lilac."."""
    talk = mentions.talk
    stop = talk.sentence(first.start)[1]
    if not talk.punctuated or talk.tokens[stop - 1].mark != QUERY:
        return False
    tag = talk.texts[first.end : stop]
    return second.start >= stop and len(tag) <= 4 and "not" not in tag


def _chosen(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """ "raspberry or cerise, yes, cerise": of two offered, one is taken."""
    talk = mentions.talk
    if talk.texts[first.end : second.start] not in (("or",), ("or", "a"), ("or", "is", "it")):
        return False
    again = mentions.colours_in(second.end, second.end + 9)
    return any(c.value == second.value for c in again)
