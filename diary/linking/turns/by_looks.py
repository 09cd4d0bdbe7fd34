"""Going back to a plant without a number by what is known of it: "the spotty one again".

The plant is pointed at as one that both know ("that cherry one", "the kero tin one", "him with
the blank label", "the foundling again") at the head of a statement, in words that were said
of it when it was first shown. "The pink ones do better" and "the one I lost" point at none.
"""

from dataclasses import dataclass
from itertools import pairwise

from diary.linking.document import Plant, PlantKind
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.walk import Turn, Walk, telling_words
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

_DEFINITE = frozenset({"the", "that", "my", "our", "yon"})
_PERSONS = frozenset({"him", "her"})
_HEADS = frozenset(
    "one plant thing fella fellow chap lad lady lass girl gal guy bloke boy beauty seedling "
    "mystery job critter specimen orphan foundling stranger stray basket pot tub "
    "creature baby soul friend character customer individual madam article".split()
)
_NO_NUMBER = frozenset(
    "label tag stick number ticket stake marker name orphan foundling stranger stray nameless "
    "tagless numberless stickless ticketless "
    "unlabelled unnumbered anonymous labelless numbered labelled mystery".split()
)
_VAGUE = frozenset(
    "next last first other second third end new big little small whole old same only best "
    "before after flower flowers leaf plant year today never like really very".split()
)
_GOVERNING = frozenset(
    "than like as of from with by on at in for is 's was are were beside behind unlike not i we "
    "the a an same all every no into onto over under near about put called says".split()
)
_NOT_AFTER = frozenset("behind beside after before next or who which".split())
# Words that end a noun's describing words: "that's the sensible thing", "the leaf is a tiny thing".
_NO_LOOKS = frozenset(
    "is 's are 're was were be been am 'm has have had 've do does did will 'll would 'd could "
    "should may might must not no never i you he she it we they its his her their my your our this "
    "that these those the a an and or but if so because when while till than as of in on at to for "
    "from into out off up over with without about comes came goes went gets got makes made looks "
    "wants needs takes took keeps gave says said any some every all both there here what which who "
    "how why where already".split()
)
_POINTS_ON = frozenset(
    "with wi without by in on at under behind beside near from of that who".split()
)
_SOON = 3  # "this is 23-11, that spotty one": still the same breath
_REMEMBERED = 12  # of the plants without a number, the latest: a walk, not a season
_TURNS_BACK = 120
_RETURNS = frozenset(
    "back more word again return returning revisit said mentioned mention look glance peep".split()
)
_MOST = 6  # words between "the" and "one"
_AFTER = 9  # words after it that may still point: "with the snapped label"
_ALIKE = 4  # letters that "spotty" and "spots" share


@dataclass(frozen=True, slots=True, kw_only=True)
class Pointing:
    """A plant pointed at: tokens start..end-1, and the words that tell which."""

    start: int
    end: int
    words: frozenset[str]
    unlabelled: bool  # it is told by its want of a number: "the foundling"
    again: bool  # the speaker says that he goes back: "the pink one again"


def pointings(mentions: Mentions) -> tuple[Pointing, ...]:
    """All plants pointed at by their looks, in order."""
    texts = mentions.talk.texts
    starts = (i for i, t in enumerate(texts) if t in _DEFINITE or t in _PERSONS)
    return tuple(p for p in (_pointing(mentions, at) for at in starts) if p is not None)


def _pointing(mentions: Mentions, at: int) -> Pointing | None:
    talk = mentions.talk
    stop = talk.sentence(at)[1]
    returning = any(
        f.end in (at, at + 1) and _RETURNS & set(talk.texts[f.start : f.end])
        for f in mentions.cue("return", at - 7, at + 1)
    )
    if talk.texts[at] in _PERSONS:
        end = at + 1
        if talk.texts[end : end + 1] == () or talk.texts[end] not in _POINTS_ON:
            return None
        if not talk.punctuated and talk.clause(at)[0] < at and talk.texts[at - 1] not in _LEADING:
            return None  # "I've four slips rooted off him on the window already"
    else:
        reach = range(at + 1, min(at + 2 + _MOST, stop))
        end = next((i for i in reach if talk.texts[i] in _HEADS or talk.texts[i] == "again"), -1)
        end += 1
        if end == 0 and returning and at + 2 <= stop:
            end = at + 2  # "one more word on the apricot"
        if end == 0 or any(talk.tokens[i].mark for i in range(at, end - 1)):
            return None
        if _NO_LOOKS & set(talk.texts[at + 1 : end - 1]):
            return None
        if talk.texts[end - 1] == "pot" and talk.texts[end : end + 1] in (("one",), ("plant",)):
            end += 1
    after = talk.texts[end : end + 1]
    if after and after[0] in _NOT_AFTER and not talk.tokens[end - 1].mark:
        return None
    if any(
        r.is_number and r.cut is None and not _only_stands_by(mentions, r.start)
        for r in mentions.refs_in(at, end + _AFTER)
    ):
        return None
    again = returning or "again" in talk.texts[end - 1 : end + 2]
    before = talk.texts[max(0, at - 2) : at]
    governed = (
        before != ("as", "for") and before[-1:] != () and before[-1] in _GOVERNING and not again
    )
    if not _counted_on(mentions, at) and (
        governed or (not again and talk.punctuated and not _heads(mentions, at))
    ):
        return None
    if not again and _explains(mentions, at, end):
        return None
    told = end
    if talk.texts[end : end + 1] and talk.texts[end] in _POINTS_ON:
        told = min(stop, end + _AFTER)
    return Pointing(
        start=at,
        end=end,
        words=telling_words(talk.texts[at:told]) - _VAGUE - _HEADS,
        unlabelled=bool(_NO_NUMBER & set(talk.texts[at : min(stop, end + 4)])),
        again=again,
    )


def _only_stands_by(mentions: Mentions, at: int) -> bool:
    """ "back to that white one, next to 23-05": the number says where it stands."""
    before = mentions.talk.texts[max(0, at - 2) : at]
    return before == ("next", "to") or before[-1:] in (("beside",), ("behind",), ("by",))


_LEADING = frozenset(
    "and oh now so well right then but hm hmm um uh er also yes hang on wait to back its though "
    "as for going me let 's go return just quickly".split()
)


_COUNTED = frozenset("buds heads flowers blooms trusses shoots stems pods spikes scapes".split())
_COUNTING = frozenset("there count counted counting make".split())


def _counted_on(mentions: Mentions, at: int) -> bool:
    """ "There are nine buds on the lilac one"; not "the buds on the lilac one are greener"."""
    texts = mentions.talk.texts
    if texts[at - 1 : at] != ("on",) or at < 2 or texts[at - 2] not in _COUNTED:
        return False
    return bool(_COUNTING & set(texts[mentions.talk.sentence(at)[0] : at]))


_KIN = frozenset(
    "sister brother mother father parent cousin twin child seedling plant one other sibling "
    "neighbour neighbor batch".split()
)


def _explains(mentions: Mentions, at: int, end: int) -> bool:
    """ "Its sister's better, the one with the white eye", "it's late, the last thing out": tells
    more of what was just said, and shows none.
    """
    talk = mentions.talk
    start = talk.sentence(at)[0]
    if at == start or talk.tokens[at - 1].mark != ",":
        return False
    if _KIN & set(talk.texts[start:at]) or mentions.refs_in(start, at):
        return True
    stop = min(talk.sentence(at)[1], end + _AFTER)
    told = any(pair in _IT_IS for pair in pairwise(talk.texts[start:at]))
    return told and not _TELLS & set(talk.texts[end:stop])


_IT_IS = tuple((it, v) for it in ("it", "he", "she", "this", "that") for v in ("is", "'s", "has"))
_TELLS = frozenset("is 's has needs wants got had was were are looks gets could will 'll".split())


def _heads(mentions: Mentions, at: int) -> bool:
    """Whether it heads its clause, but for words that lead in."""
    start = mentions.talk.clause(at)[0]
    return all(t in _LEADING for t in mentions.talk.texts[start:at])


def back_by_looks(
    mentions: Mentions, pointing: Pointing, leads: LeadIns, walk: Walk
) -> Turn | None:
    """The turn to the plant that the words fit, or none: one without a number, or any plant
    shown before where the speaker says that he goes back.
    """
    if not walk.turns or pointing.start <= walk.turns[-1].said:
        return None
    told = mentions.talk.punctuated and mentions.talk.sentence(pointing.start)[0]
    if pointing.start - walk.turns[-1].said < _SOON and not told > walk.turns[-1].said:
        return None
    if not walk.unnamed and not pointing.again:
        return None
    found = _fits(mentions, pointing, walk)
    if found is None or found == walk.current:
        return None
    punctuated = mentions.talk.punctuated
    lead = leads.before(pointing.start).start
    begin = leads.start_of(pointing.start, None) if punctuated else lead
    return Turn(
        at=max(min(begin, pointing.start), walk.turns[-1].said + 1),
        said=pointing.end - 1,
        plant=found,
        score=0.78,
        rule="back to a plant by its looks",
    )


def _fits(mentions: Mentions, pointing: Pointing, walk: Walk) -> Plant | None:
    """The plant that shares most words with the pointing; a numbered one only if no other does."""
    best: tuple[int, int] | None = None
    found: Plant | None = None
    for n, (plant, _) in enumerate(walk.unnamed[-_REMEMBERED:]):
        score = _shared(pointing.words, _told_of(mentions, plant, walk))
        if (score or pointing.unlabelled) and (best is None or (score, n) > best):
            best, found = (score, n), plant
    if found is not None:
        if walk.current is not None and walk.current.kind is PlantKind.UNNAMED and best == (0, 0):
            return None
        return found
    if not pointing.again or not pointing.words:
        return None
    shown = dict.fromkeys(plant for plant, _ in walk.shown[-_REMEMBERED:])
    told = {plant: _shared(pointing.words, _told_of(mentions, plant, walk)) for plant in shown}
    most = max(told.values(), default=0)
    fitting = [plant for plant, score in told.items() if score == most]
    return fitting[0] if most and len(fitting) == 1 else None


def _told_of(mentions: Mentions, plant: Plant, walk: Walk) -> frozenset[str]:
    """The words of all that was said while the plant was in hand."""
    words: set[str] = set()
    first = max(0, len(walk.turns) - _TURNS_BACK)
    for n, turn in enumerate(walk.turns[first:], first):
        if turn.plant == plant:
            stop = walk.turns[n + 1].at if n + 1 < len(walk.turns) else turn.at
            if n not in walk.told or n + 2 >= len(walk.turns):
                walk.told[n] = _telling(mentions, turn.at, stop)
            words |= walk.told[n]
    return frozenset(words)


def _telling(mentions: Mentions, start: int, stop: int) -> frozenset[str]:
    told = (mentions.talk.texts[i] for i in range(start, stop) if not _denied(mentions, i))
    return telling_words(tuple(told))


def _denied(mentions: Mentions, at: int) -> bool:
    """ "White, and none of the coral": what it is not tells no plant."""
    return Habit.DENIAL in mentions.scopes.habits(at)


def _shared(pointed: frozenset[str], told: frozenset[str]) -> int:
    return sum(
        any(w == t or (len(w) >= _ALIKE and w[:_ALIKE] == t[:_ALIKE]) for t in told)
        for w in pointed
    )
