"""Moving on to a plant that is given no number, and back to one by a word of its looks."""

from itertools import pairwise

from diary.linking.document import Plant
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.unnumbered import FAR_NUMBER, new_unnamed, told_soon
from diary.linking.turns.walk import UNSAID, Turn, Walk, telling_words
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

_TOO_SOON = 4
_TOLD_OF = (("that", "'s"), ("that", "is"), ("that", "was"), ("it", "'s"), ("it", "is"))


def moved_on(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """ "its neighbour is much the same", "the one behind it": moved on, and no number given."""
    move = leads.move_at(at)
    if move is None or not move.plain or Habit.WISH in mentions.scopes.habits(at):
        return None
    if mentions.talk.texts[move.end : move.end + 1] in (("for",), ("to",), ("of",)):
        return None  # "another one for the show"
    if leads.compared(at) or told_soon(mentions, at, leads, taken, FAR_NUMBER):
        return None
    asked = bool({"what", "who"} & set(mentions.talk.texts[at : move.end]))
    headed = leads.before(at).at_head or mentions.talk.clause(at)[0] == at
    headed = headed or (asked and not mentions.talk.punctuated)
    if not headed and not _subject(mentions, at, move.end):
        return None
    if mentions.scopes.habits(at) & (UNSAID - {Habit.QUESTION}):
        return None
    if mentions.talk.texts[at] == "its" and mentions.talk.texts[max(0, at - 2) : at] in _TOLD_OF:
        return None
    if walk.turns and at - walk.turns[-1].said < _TOO_SOON:
        return None
    if asked:
        if _asked_of_a_part(mentions, move.end):
            return None
    elif _spoken_of_in_passing(mentions, move.end, leads):
        return None
    if _of_a_flower(mentions, at, move.end):
        return None
    return Turn(
        at=leads.before(at).start,
        said=move.end - 1,
        plant=new_unnamed(walk),
        score=0.72,
        rule="moved on to a plant without giving its number",
    )


_COPULAS = frozenset("is 's has looks".split())
_GOVERNING = frozenset(
    "than like as of from with by on at in for to behind beside under unlike not put and or but "
    "said think see know mean".split()
)


def _subject(mentions: Mentions, start: int, end: int) -> bool:
    """ "... as red as you like the end one's white": in captions a copula tells a new clause."""
    talk = mentions.talk
    return (
        not talk.punctuated
        and talk.texts[end : end + 1] != ()
        and talk.texts[end] in _COPULAS
        and talk.texts[start - 1] not in _GOVERNING
    )


_FRAGMENT, _REACH, _NEAR = 3, 18, 6
_FILLING = frozenset(
    "is 's are was has 's got looks a an the even still far much bit lot little good deal rather "
    "quite slightly always way".split()
)
_COMPARED = frozenset(
    "better worse bigger taller smaller paler darker redder pinker deeper shorter wider earlier "
    "later stronger weaker neater fuller prettier nicer larger older younger brighter lighter "
    "more less twice half ahead happier healthier finer tidier bushier".split()
)
_DISMISSED = frozenset(
    "dead gone finished empty sold spoken promised asleep resting past over shut rubbish nothing "
    "only spare dormant bare somebody someone not never waiting due for".split()
)
_PUT_ASIDE = (
    ("ignore", "that"), ("ignore", "it"), ("ignore", "him"), ("forget", "that"), ("forget", "it"),
    ("never", "mind"), ("come", "to"), ("another", "day"), ("another", "time"), ("not", "mine"),
    ("not", "one"), ("a", "bought"), ("bought", "in"), ("next", "week"), ("not", "ours"),
    ("get", "to"), ("another", "week"), ("leave", "that"), ("not", "for"), ("no", "concern"),
)  # fmt: skip
_ALSO = frozenset("same similar likewise ditto again too another twin repeat".split())


def _spoken_of_in_passing(mentions: Mentions, end: int, leads: LeadIns) -> bool:
    """ "The one behind has shaded it all spring", "its neighbour's bigger": nothing told of it.

    Not "the one behind it is paler, a lilac", "its neighbour. White.", "its twin, the same".
    """
    talk = mentions.talk
    sentence = talk.sentence(end - 1)[1] if talk.punctuated else min(len(talk.texts), end + _REACH)
    stop = sentence
    if talk.punctuated and sentence < len(talk.texts):
        stop = talk.sentence(sentence)[1]
    words = talk.texts[end:sentence]
    first = next((n for n, w in enumerate(words) if w not in _FILLING), len(words))
    if words[first : first + 1] and words[first] in _DISMISSED:
        return True  # "the one next to it's dead"
    if words[first : first + 1] and words[first] in _COMPARED:
        told = leads.told_before(sentence) > end + first + 1
        return not told or not talk.tokens[end + first].mark
    if any(pair in _PUT_ASIDE for pair in pairwise(words)):
        return True  # "the one behind is white, but I'll come to that later"
    acts = range(min(_NEAR, len(words) - 1))
    if any(words[n].endswith(("ing", "ed")) and words[n + 1] in ("it", "this") for n in acts):
        return True
    if len(words) < _FRAGMENT or _ALSO & set(words):
        return False
    return leads.told_before(stop) <= end


_ON = frozenset("on in at under along round inside all here".split())


def _asked_of_a_part(mentions: Mentions, end: int) -> bool:
    """ "What's this on the leaf?", "what's this, six buds?"; not "what's this? White."."""
    talk = mentions.talk
    if talk.texts[end : end + 1] == () or talk.tokens[end - 1].mark in (".", "?"):
        return False
    if talk.texts[end] in _ON or talk.texts[end].endswith("ing"):
        return True
    return talk.tokens[end - 1].mark == "," and any(mentions.parts_in(end, end + 4))


_FLOWERS = frozenset(
    "heads flowers blooms pips buds trusses florets petals leaves shoots stems spikes "
    "scapes".split()
)
_WHICH = frozenset("it this that him her them these".split())
_NEAR_FLOWER = 9


def _of_a_flower(mentions: Mentions, at: int, end: int) -> bool:
    """ "Five heads out, the end one's past it"; not "six heads. The one behind it is white"."""
    talk = mentions.talk
    if _WHICH & set(talk.texts[at:end]):
        return False
    return bool(_FLOWERS & set(talk.texts[max(0, at - _NEAR_FLOWER) : at]))


def came_back(mentions: Mentions, at: int, leads: LeadIns, walk: Walk) -> Turn | None:
    """ "back to the pink one": a plant shown before, pointed at by its looks."""
    found = mentions.cue("return", at, at + 1)[0]
    texts = mentions.talk.texts
    again = texts[found.end - 1] == "again"
    if not again and "back" not in texts[found.start : found.end]:
        return None
    rest = texts[found.start if again else found.end : found.end + 9]
    if (
        not rest
        or rest[0] not in ("the", "that", "my", "our", "this")
        or not (
            {"one", "plant", "fella", "fellow", "chap", "lady", "thing", "seedling"} & set(rest)
        )
    ):
        return None
    if any(r.is_number and r.cut is None for r in mentions.refs_in(found.end, found.end + 9)):
        return None
    telling = telling_words(tuple(rest))
    best: tuple[int, int, Plant] | None = None
    for n, (plant, described) in enumerate(walk.unnamed):
        score = len(telling & described)
        if score and (best is None or score > best[0]):
            best = (score, n, plant)
    if best is None:
        for plant, turn_at in walk.shown:
            score = len(telling & telling_words(mentions.talk.texts[turn_at : turn_at + 40]))
            if score and plant != walk.current and (best is None or score >= best[0]):
                best = (score, 0, plant)
    if best is None:
        return None
    return Turn(
        at=leads.before(at).start,
        said=found.end,
        plant=best[2],
        score=0.75,
        rule="back to a plant by its looks",
    )
