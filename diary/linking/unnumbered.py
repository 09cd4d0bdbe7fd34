"""Turning to a plant that has no number: said so, moved on to, or gone back to."""

from diary.linking.document import Plant, PlantKind
from diary.linking.lead_ins import LeadIns
from diary.linking.walk import UNSAID, Turn, Walk, telling_words
from diary.reading.mentions import Mentions
from diary.reading.scope import Habit

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
_SAID_OUTRIGHT = frozenset(
    {"unlabelled", "unlabeled", "unnumbered", "anonymous", "nameless", "mystery"}
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


_NEAR_NUMBER, _FAR_NUMBER = 4, 9


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
    shown = bool({"this", "another", "whoever"} & set(head))
    comes = any(head[i : i + 2] in _COMES for i in range(len(head) - 1))
    if head[:1] == ("one",) or _NEIGHBOURS & set(head):
        return not nouns & set(head[:2])
    stands = head[1:2] == ("one",) and head[2:3] != () and head[2] in _PLACED
    return (shown or comes or stands) and not nouns & set(head)


_NEIGHBOURS = frozenset({"neighbour", "neighbor", "odd"})
_PLACED = frozenset("in on by under at behind beside next over down up".split())


_COMES = (("then", "comes"), ("then", "there"), ("next", "comes"), ("here", "'s"), ("here", "is"))


def _told_soon(
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


def _new_unnamed(walk: Walk) -> Plant:
    label = f"unnamed {len(walk.unnamed) + 1}"
    return Plant(kind=PlantKind.UNNAMED, label=label)


def unlabelled(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """ "this one hasn't got a label", "no number on that either"."""
    if Habit.WISH in mentions.scopes.habits(at) or _told_soon(mentions, at, leads, taken):
        return None
    start, stop = mentions.talk.sentence(at)
    window = mentions.talk.texts[max(start, at - 12) : min(stop, at + 10)]
    before = mentions.talk.texts[max(start, at - 8) : at]
    move = leads.move_near(at)
    earlier = mentions.talk.sentence(start - 1)[0] if start else start
    before_that = mentions.talk.texts[earlier : min(earlier + 2, start)]
    opened = at - start < 14 and (bool(_POINTED_AT & set(before_that)) or _indefinite(before_that))
    pointed = _pointed_at(mentions, at, walk)
    opened = opened or pointed is not None
    fresh = move is not None or bool(_NEW_ONE & set(window)) or "this" in window or opened
    fresh = fresh or _opens_with(mentions, start, at) or _on_that_one(window)
    fresh = fresh or (at == start and mentions.talk.texts[at] in _SAID_OUTRIGHT)
    fresh = fresh or bool({"who", "what"} & set(before))
    or_what = (*mentions.talk.texts[at - 1 : at], *mentions.talk.texts[at + 2 : at + 3])
    if "or" in or_what and mentions.ref_at(at) is None:
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
                plant=_new_unnamed(walk),
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
    if walk.turns and begin <= walk.turns[-1].said:
        begin = at
    return Turn(
        at=begin,
        said=at,
        plant=_new_unnamed(walk),
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


_TOO_SOON = 4
_TOLD_OF = (("that", "'s"), ("that", "is"), ("that", "was"), ("it", "'s"), ("it", "is"))


def moved_on(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], walk: Walk
) -> Turn | None:
    """ "its neighbour is much the same", "the one behind it": moved on, and no number given."""
    move = leads.move_at(at)
    if move is None or not move.plain or Habit.WISH in mentions.scopes.habits(at):
        return None
    if leads.compared(at) or _told_soon(mentions, at, leads, taken, _FAR_NUMBER):
        return None
    if not leads.before(at).at_head and mentions.talk.clause(at)[0] != at:
        return None
    if mentions.scopes.habits(at) & (UNSAID - {Habit.QUESTION}):
        return None
    if mentions.talk.texts[at] == "its" and mentions.talk.texts[max(0, at - 2) : at] in _TOLD_OF:
        return None
    if walk.turns and at - walk.turns[-1].said < _TOO_SOON:
        return None
    return Turn(
        at=leads.before(at).start,
        said=move.end - 1,
        plant=_new_unnamed(walk),
        score=0.72,
        rule="moved on to a plant without giving its number",
    )


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
