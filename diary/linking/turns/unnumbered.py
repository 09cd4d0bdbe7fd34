"""Turning to a plant that has no number: said so, moved on to, or gone back to."""

from diary.linking.document import Plant, PlantKind
from diary.linking.turns.hailed import addressed, asked_who, hailed_before
from diary.linking.turns.lacking import of_one_in_hand, of_paper, shown_lacking
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.walk import UNSAID, Turn, Walk, telling_words
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

# Words near by that show that another plant is meant than the one in hand.
_NEW_ONE = frozenset(
    {
        "another",
        "behind",
        "beside",
        "next",
        "here",
        "end",
        "along",
        "below",
        "neighbour",
        "neighbor",
    }
)


_SAME_BREATH = 12
_CUE_WORDS = 3
_SAID_OUTRIGHT = frozenset(
    {
        "unlabelled",
        "unlabeled",
        "unnumbered",
        "anonymous",
        "nameless",
        "mystery",
        "blank",
        "ticketless",
    }
)


_POINTED_AT = frozenset(
    "this another then adjacent next end neighbouring last third second".split()
)
_POINTED_REACH = 13


def _pointed_at(mentions: Mentions, at: int, walk: Walk) -> int | None:
    """Where "this fella here came up between the rows" begins, shortly before, unpunctuated."""
    if mentions.talk.punctuated:
        return None
    floor = max(0, at - _POINTED_REACH, walk.turns[-1].said + 1 if walk.turns else 0)
    found = [i for i in range(floor, at) if mentions.talk.texts[i] in ("this", "another")]
    return found[-1] if found else None


_NEAR_NUMBER, FAR_NUMBER = 4, 9


_ANY_PLANT = frozenset("seedling plant pot bulb stray oddity orphan tuber fan rosette".split())


def _indefinite(words: tuple[str, ...]) -> bool:
    """ "A seedling of I know not what. No label.", "Now for the odd one out." """
    if words[:2] == ("now", "for"):
        return True
    return words[:1] in (("a",), ("an",), ("one",)) and bool(_ANY_PLANT & set(words[1:2]))


def _on_that_one(words: tuple[str, ...]) -> bool:
    """ "The label on that one's been eaten"."""
    return any(
        words[i] in ("on", "off", "from", "of") and words[i + 1 : i + 3] == ("that", "one")
        for i in range(len(words) - 2)
    )


def _opens_with(mentions: Mentions, start: int, at: int) -> bool:
    """ "This one came with no history, a gift in a plain pot, unlabelled"."""
    head = mentions.talk.texts[start : min(at, start + 4)]
    nouns = {"label", "tag", "stick", "ticket", "pot"}
    shown = bool({"this", "another", "whoever", "something", "somebody"} & set(head))
    comes = any(head[i : i + 2] in _COMES for i in range(len(head) - 1))
    if head[:1] == ("one",) or _NEIGHBOURS & set(head):
        return not nouns & set(head[:2])
    stands = head[1:2] == ("one",) and head[2:3] != () and head[2] in _PLACED
    return (shown or comes or stands) and not nouns & set(head)


_WRITING = frozenset("do write make need needs get want wants find wanting it".split())
_ANY = frozenset({"a", "an", "another"})
_OF_IT = (("it", "'s"), ("it", "is"), ("that", "'s"), ("he", "'s"), ("she", "'s"), ("was", "it"))
_NEIGHBOURS = frozenset({"neighbour", "neighbor", "odd"})
_PLACED = frozenset("in on by under at behind beside next over down up".split())


_COMES = (("then", "comes"), ("then", "there"), ("next", "comes"), ("here", "'s"), ("here", "is"))


def told_soon(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], near: int = _NEAR_NUMBER
) -> bool:
    """Whether a number or a shown name follows at once, in this sentence or the next words."""
    stop = mentions.talk.sentence(at)[1]
    stop = max(stop, at + 9) if not mentions.talk.punctuated else stop
    if mentions.talk.punctuated and stop - at < 8 and stop < len(mentions.talk.texts):
        stop = mentions.talk.sentence(stop)[1]
    for ref in mentions.refs_in(at, stop):
        if ref.start not in taken:
            if UNSAID & mentions.scopes.habits(ref.start):
                continue
            if leads.compared(ref.start) or leads.guessed(ref.start):
                continue
            if ref.start - at > near and mentions.cue("movement", at, ref.start):
                continue  # "no label, it's white, next is 23-05"
            if not mentions.talk.punctuated and leads.told_before(ref.start) > at + near:
                continue  # "no label it's red this is 23-05"
            later = mentions.talk.sentence(ref.start)[0] > at
            if later and near == _NEAR_NUMBER and not leads.before(ref.start).shown:
                continue
            close = mentions.talk.punctuated or ref.start - at <= near
            if ref.is_number and ref.cut is None and (close or leads.before(ref.start).shown):
                return True
            if ref.is_number and leads.before(ref.start).any:
                return True
            if not ref.is_number and leads.before(ref.start).shown:
                return True
    return False


def new_unnamed(walk: Walk) -> Plant:
    label = f"unnamed {len(walk.unnamed) + 1}"
    return Plant(kind=PlantKind.UNNAMED, label=label)


def _wished(mentions: Mentions, at: int) -> bool:
    """ "I'd love a stray white"; not "I wish I knew what this was", where the wish is to know."""
    return any(
        s.habit is Habit.WISH and s.cue not in (at, at - 1) for s in mentions.scopes.by_token[at]
    )


def unlabelled(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """ "this one hasn't got a label", "no number on that either"."""
    if _wished(mentions, at) or told_soon(mentions, at, leads, taken):
        return None
    if of_paper(mentions, at) or of_one_in_hand(mentions, at, walk):
        return None
    start, stop = mentions.talk.sentence(at)
    if not mentions.talk.punctuated:
        stop = max(stop, at + _CUE_WORDS)  # "whatever | this is": parted where "this is" begins
    window = mentions.talk.texts[max(start, at - 12) : min(stop, at + 10)]
    window = tuple(
        w
        for n, w in enumerate(window)
        if w != "another" or window[n - 1 : n] == () or window[n - 1] not in _WRITING
    )
    before = mentions.talk.texts[max(start, at - 8) : at]
    move = leads.move_near(at)
    earlier = mentions.talk.sentence(start - 1)[0] if start else start
    before_that = mentions.talk.texts[earlier : min(earlier + 2, start)]
    in_hand = _just_numbered(earlier, walk)
    opened = at - start < 14 and (
        (bool(_POINTED_AT & set(before_that)) and not in_hand) or _indefinite(before_that)
    )
    pointed = _pointed_at(mentions, at, walk)
    hailed = hailed_before(mentions, earlier, start)
    shown = shown_lacking(mentions, at)
    opened = opened or pointed is not None or hailed
    fresh = move is not None or bool(_NEW_ONE & set(window)) or "this" in window or opened
    fresh = fresh or _opens_with(mentions, start, at) or _on_that_one(window)
    fresh = fresh or (at == start and mentions.talk.texts[at] in _SAID_OUTRIGHT)
    fresh = fresh or _headed_so(mentions, at, leads, walk)
    fresh = fresh or asked_who(mentions, before) or shown is not None
    fresh = fresh or addressed(mentions.talk.texts[max(start, at - 4) : min(stop, at + 9)])
    fresh = fresh or (mentions.talk.texts[at] in _ANY and before[-2:] not in _OF_IT)
    or_what = (mentions.talk.texts[at - 1], mentions.talk.texts[at + 2 : at + 4])
    if or_what[0] == "or" or or_what[1] in (("or", "no"), ("or", "not")):
        return None  # "number or no number"
    definite = any(w in ("the", "that") for w in before) or leads.came_back_near(at)
    if walk.unnamed and (leads.came_back_near(at) or (definite and not fresh)):
        plant = _recalled(mentions, at, start, walk)
        if plant is not None:
            begin = leads.start_of(at, move)
            return Turn(
                at=begin, said=at, plant=plant, score=0.8, rule="back to a plant without a number"
            )
    if walk.current is not None and walk.current.kind is PlantKind.UNNAMED:
        recent = walk.turns[-1]
        if _another_starts(mentions, at, leads, recent):
            return Turn(
                at=at,
                said=at,
                plant=new_unnamed(walk),
                score=0.8,
                rule="another plant said to have no number",
            )
        if at - recent.said < 26 and (move is None or move.start <= recent.said):
            return None
        moved = move is not None and move.plain and move.start <= at
        if at - recent.said < _SAME_BREATH and not moved:
            return None
    if not fresh and walk.current is not None and move is None:
        return None
    begin = leads.start_of(at, move)
    if opened and move is None and mentions.talk.punctuated:
        begin = mentions.talk.sentence(start - 1)[0]
    if pointed is not None:
        begin = min(begin, pointed)
    if shown is not None:
        begin = min(begin, shown)
    if walk.turns and begin <= walk.turns[-1].said:
        begin = at
    return Turn(
        at=begin,
        said=at,
        plant=new_unnamed(walk),
        score=0.88,
        rule="a plant said to have no number",
    )


def _just_numbered(start: int, walk: Walk) -> bool:
    """ "This is 24-03. I lost the label": the sentence from `start` gave a plant its number."""
    if not walk.turns or walk.turns[-1].plant.kind is PlantKind.UNNAMED:
        return False
    return walk.turns[-1].said >= start


def _headed_so(mentions: Mentions, at: int, leads: LeadIns, walk: Walk) -> bool:
    """ "24-03 is pink. No tag. White.": heads a note, a colour after it; not "No tag. Pity."."""
    talk = mentions.talk
    start, stop = talk.sentence(at)
    whole = (
        talk.punctuated
        and start == at
        and any(f.end == stop for f in mentions.cue("unlabelled", at, at + 1))
    )
    if not whole or not walk.turns or stop >= len(talk.texts):
        return False
    if leads.told_before(at) <= walk.turns[-1].said + 1:
        return False
    return any(
        c.start <= stop + 1 for c in mentions.colours_in(stop, min(stop + 4, len(talk.texts)))
    )


_ADDED = frozenset({"either", "neither", "though", "because", "remember", "again"})


def _another_starts(mentions: Mentions, at: int, leads: LeadIns, recent: Turn) -> bool:
    """ "No label. White. No label. Red.": a sentence that it heads, with something told between.

    Not "no label, white. No number either."
    """
    start, stop = mentions.talk.sentence(at)
    told = leads.told_before(at) > recent.said + 1
    head = mentions.talk.texts[start : start + 3]
    if told and ("this", "one") in (head[:2], head[1:]) and start > recent.said:
        return mentions.talk.punctuated  # "This one has no label either, pink."
    words = set(mentions.talk.texts[start:stop])
    return mentions.talk.punctuated and at == start and told and not words & _ADDED


def _recalled(mentions: Mentions, at: int, start: int, walk: Walk) -> Plant | None:
    """The unnumbered plant that the words fit best; the only one there is, if none tells."""
    words = frozenset(mentions.talk.texts[max(start, at - 10) : at + 12])
    telling = telling_words(tuple(words))
    scored = sorted(
        (
            (len(telling & described), -n, plant)
            for n, (plant, described) in enumerate(walk.unnamed)
        ),
        key=lambda item: (item[0], item[1]),
        reverse=True,
    )
    if scored and (scored[0][0] > 0 or len(scored) == 1):
        return scored[0][2]
    return None
