"""Turning to a plant that has no number: said so, moved on to, or gone back to."""

from diary.linking.document import Plant, PlantKind
from diary.linking.turns.lacking import of_one_in_hand, of_paper
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.shown_anew import shown_anew
from diary.linking.turns.walk import UNSAID, Turn, Walk, telling_words
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

_SAME_BREATH = 12
_CUE_WORDS = 3
_NEAR_NUMBER, FAR_NUMBER = 4, 9


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


def _number_or_none(mentions: Mentions, at: int) -> bool:
    """ "Number or no number, it stays"."""
    texts = mentions.talk.texts
    return texts[at - 1] == "or" or texts[at + 2 : at + 4] in (("or", "no"), ("or", "not"))


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
    if _number_or_none(mentions, at):
        return None
    move = leads.move_near(at)
    shown = shown_anew(mentions, at, stop, leads, walk)
    before = mentions.talk.texts[max(start, at - 8) : at]
    definite = any(w in ("the", "that") for w in before) or leads.came_back_near(at)
    fresh = shown.fresh or move is not None
    back = leads.came_back_near(at) and not shown.brought_in
    if walk.unnamed and (back or (definite and not fresh)):
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
        told = leads.told_before(at) > recent.said + 1
        if at - recent.said < _SAME_BREATH and not (moved and told):
            return None
    if not fresh and walk.current is not None:
        return None
    begin = leads.start_of(at, move)
    if shown.opened and move is None and mentions.talk.punctuated:
        begin = mentions.talk.sentence(start - 1)[0]
    if shown.start is not None:
        begin = min(begin, shown.start)
    if not mentions.talk.punctuated:
        begin = max(begin, min(leads.told_before(at), at))
    if walk.turns and begin <= walk.turns[-1].said:
        begin = at
    return Turn(
        at=begin,
        said=at,
        plant=new_unnamed(walk),
        score=0.88,
        rule="a plant said to have no number",
    )


_ADDED = frozenset({"either", "neither", "though", "because", "remember", "again"})


def _another_starts(mentions: Mentions, at: int, leads: LeadIns, recent: Turn) -> bool:
    """ "No label. White. No label. Red.": a sentence that it heads, with something told between.

    Not "no label, white. No number either."
    """
    start, stop = mentions.talk.sentence(at)
    told = leads.told_before(at) > recent.said + 1
    head = mentions.talk.texts[start : start + 3]
    near = at - recent.said < _SAME_BREATH  # "what have we here, another without a tag"
    if told and not near and "another" in mentions.talk.texts[at - 3 : at + 1]:
        return True  # "and here's another without a label"
    if told and ("this", "one") in (head[:2], head[1:]) and start > recent.said:
        return mentions.talk.punctuated  # "This one has no label either, pink."
    words = set(mentions.talk.texts[start:stop])
    return mentions.talk.punctuated and at == start and told and not words & _ADDED


def new_or_recalled(mentions: Mentions, at: int, leads: LeadIns, walk: Walk) -> Plant:
    """The plant without a number that is spoken of: one shown before where it is "the" one."""
    start = mentions.talk.sentence(at)[0]
    words = mentions.talk.texts[max(start, at - 8) : at + 4]
    if walk.unnamed and (_DEFINITE & set(words) or leads.came_back_near(at)):
        return _recalled(mentions, at, start, walk) or new_unnamed(walk)
    return new_unnamed(walk)


_DEFINITE = frozenset("the that our my again him her them".split())


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
