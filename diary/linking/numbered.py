"""Turning to a plant by its number or its name."""

from diary.linking.document import Plant, PlantKind
from diary.linking.lead_ins import LeadIn, LeadIns
from diary.linking.statement import Statement
from diary.linking.walk import UNSAID, Turn, Walk
from diary.reading.mentions import Mentions, Ref
from diary.reading.scope import Habit

_NOT_AFTER_NAME = frozenset(
    "'s crossed by times with as pollen selfed self seedling x cross and on had gave was "
    "were carried threw".split()
)
_SHOWN_AFTER = (
    ("next",),
    ("is", "next"),
    ("here",),
    ("over", "here"),
    ("is", "this", "one"),
    ("which", "is", "this"),
    ("comes", "next"),
    ("there", "we", "are"),
    ("here", "we", "are"),
    ("now",),
    ("again",),
)
_PREPOSITIONS = frozenset({"on", "from", "of", "with", "onto", "off", "for", "than"})
_SMALL = frozenset(
    "the a an this that is be to it was number again even quite with confused mixed mix "
    "up actually one ones".split()
)
_LONG_OPENING, _SHORT_OPENING, _FAR_OPENING = 18, 8, 13
_OPENERS = frozenset(
    {
        "so",
        "now",
        "and",
        "then",
        "right",
        "okay",
        "this",
        "that",
        "last",
        "next",
        "first",
        "see",
        "wait",
    }
)
_OPENED = frozenset(
    {
        "this",
        "that",
        "the",
        "here",
        "over",
        "down",
        "up",
        "at",
        "on",
        "in",
        "behind",
        "next",
        "last",
        "first",
        "we",
        "these",
        "one",
        "there",
        "under",
        "beside",
        "now",
        "before",
    }
)


def numbered_turn(
    mentions: Mentions,
    ref: Ref,
    leads: LeadIns,
    taken: set[int],
    parents: tuple[Statement, ...],
    walk: Walk,
) -> Turn | None:
    """The turn that a number makes, or none."""
    shown_after = _shown_after(mentions, ref) and ref.cut is None
    if (ref.start in taken or _set_aside(mentions, ref)) and not (
        shown_after and _which_is(mentions, ref)
    ):
        return None
    lead = leads.before(ref.start)
    if leads.compared(ref.start) and not (lead.shown or lead.came_back or _which_is(mentions, ref)):
        return None
    if leads.guessed(ref.start) or _is_kin(mentions, ref):
        return None
    number, score, on_record = ref.title, ref.score, ref.on_record
    if ref.cut is not None:
        if walk.turns and ref.start - walk.turns[-1].said <= _SPELT_AGAIN and _spells(ref, walk):
            return None
        completed = _completed(mentions, ref, lead, leads, walk)
        if completed is None:
            return None
        number, on_record = completed
        score = 0.9 if on_record else 0.7
        if not _cut_turns(mentions, ref, lead, on_record):
            return None
    elif (
        not (
            lead.at_head
            or shown_after
            or lead.shown
            or lead.came_back
            or lead.numbered
            or _first(mentions, ref)
        )
        or not (on_record or lead.any or lead.at_head or lead.shown or ref.explicit)
        or (not on_record and score < 0.55 and not (lead.numbered or lead.shown))
    ):
        return None
    again = mentions.talk.texts[ref.end : ref.end + 1] == ("again",)
    firm = lead.shown or lead.came_back or lead.numbered or lead.moved or again
    if _is_parent_here(number, parents, walk, ref.start) and not firm and not _alone(mentions, ref):
        return None
    if ref.cut is not None:
        rule = "a number cut short, completed from the plants just seen"
    else:
        rule = "a number brought in" if lead.any else "a number at the head of a sentence"
    certainty = score * (1.0 if firm else 0.95 if lead.at_head else 0.85)
    return Turn(
        at=opening(mentions, leads, lead, ref.start),
        said=ref.start,
        plant=Plant(kind=PlantKind.SEEDLING, number=number, on_record=on_record),
        score=round(min(certainty, 0.99), 3),
        rule=rule,
        runner_up=ref.runner_up,
        runner_up_score=ref.runner_up_score,
    )


def named_turn(mentions: Mentions, ref: Ref, leads: LeadIns, taken: set[int]) -> Turn | None:
    """The turn that a name makes: only where the plant is plainly shown."""
    if ref.start in taken or _set_aside(mentions, ref):
        return None
    lead = leads.before(ref.start)
    talk = mentions.talk
    rest = talk.texts[ref.end : ref.end + 1]
    marked = bool(talk.tokens[ref.end - 1].mark)
    if rest and rest[0] in _NOT_AFTER_NAME and not marked and rest[0] not in ("and", "with", "by"):
        return None
    if rest == ("by",) and not marked and mentions.refs_in(ref.end + 1, ref.end + 3):
        return None
    before = [
        t
        for t in talk.texts[max(0, ref.start - 3) : ref.start]
        if t not in ("the", "my", "old", "a")
    ]
    if before[-1:] and before[-1] in _PREPOSITIONS and not lead.came_back:
        return None
    if rest == ("with",) and not marked and not lead.moved:
        return None
    if rest == ("and",) and not marked and mentions.ref_at(ref.end + 1) is not None:
        return None
    sentence = talk.sentence(ref.start)
    heads = sentence[0] == lead.start
    bought = heads and bool(
        mentions.vocabulary.cues["bought"].find(
            talk.texts, sentence[0], min(sentence[1], ref.end + 14)
        )
    )
    next_up = heads and _shown_after(mentions, ref) and rest != ("now",)
    moved = lead.moved or leads.moved_before(ref.start)
    if not (bought or next_up or lead.came_back or (lead.shown and (lead.at_head or moved))):
        return None
    if leads.compared(ref.start) and not lead.shown:
        return None
    known = mentions.numbers.seedlings
    number = next((s.number for s in known.values() if s.name == ref.title), None)
    plant = (
        Plant(kind=PlantKind.SEEDLING, number=number, on_record=True)
        if number
        else Plant(kind=PlantKind.CULTIVAR, name=ref.title, on_record=True)
    )
    return Turn(
        at=opening(mentions, leads, lead, ref.start),
        said=ref.start,
        plant=plant,
        score=round(ref.score * 0.92, 3),
        rule="a named plant shown",
        runner_up=ref.runner_up,
        runner_up_score=ref.runner_up_score,
    )


_SPELT_AGAIN = 8


def _spells(ref: Ref, walk: Walk) -> bool:
    """ "six thirteen. One three.": the number in hand, digit by digit."""
    digits = "".join(ref.cut[0]) if ref.cut else ""
    return (
        bool(walk.numbers)
        and bool(digits)
        and walk.numbers[-1].rstrip("ABCDEFGHJKLMNPQRSTUVWXYZ").endswith(digits)
    )


def _is_kin(mentions: Mentions, ref: Ref) -> bool:
    """ "twenty-three oh six is its sister, but this is better": another plant is spoken of."""
    rest = mentions.talk.texts[ref.end : ref.end + 3]
    kin = ("sister", "brother", "parent", "mother", "father", "sibling")
    return rest[:2] in (("is", "its"), ("'s", "its")) and rest[2:] != () and rest[2] in kin


def _set_aside(mentions: Mentions, ref: Ref) -> bool:
    """ "not twenty-three forty", "this isn't K12": the number is named to be set aside."""
    texts = mentions.talk.texts
    for scope in mentions.scopes.by_token[ref.start]:
        if scope.habit is Habit.DENIAL:
            between = texts[scope.cue + 1 : ref.start]
            if all(t in _SMALL or t == "not" for t in between):
                return True
        elif scope.habit in UNSAID and (mentions.talk.punctuated or ref.start - scope.cue <= 6):
            return True
    return False


def _which_is(mentions: Mentions, ref: Ref) -> bool:
    return mentions.talk.texts[ref.end : ref.end + 3] == ("which", "is", "this")


def _shown_after(mentions: Mentions, ref: Ref) -> bool:
    rest = mentions.talk.texts[ref.end : ref.end + 3]
    return any(rest[: len(words)] == words for words in _SHOWN_AFTER)


def _cut_turns(mentions: Mentions, ref: Ref, lead: LeadIn, on_record: bool) -> bool:
    """Whether a number cut short is brought in plainly enough."""
    assert ref.cut is not None
    if any(x.start - ref.end <= 3 for x in mentions.lengths_in(ref.start, ref.end + 4)):
        return False  # "the height on that is 40, no, 44 inches"
    follow = mentions.refs_in(ref.end, min(ref.end + 5, mentions.talk.sentence(ref.start)[1]))
    if any(r.is_number and r.cut is None for r in follow):
        return False  # the full number follows at once
    if (
        on_record
        and len("".join(ref.cut[0])) > 2
        and mentions.talk.texts[ref.end : ref.end + 1] != ("in",)
    ):
        return True
    if lead.numbered or lead.came_back or ref.explicit:
        return True
    if (
        on_record
        and ref.cut[1]
        and lead.any
        and mentions.talk.texts[ref.end : ref.end + 1] == ("is",)
    ):
        return True  # "now B is the sister to it"
    brought = on_record and (lead.moved or (lead.shown and lead.presented))
    heads = lead.at_head and _only_leads(mentions, lead, ref) and _ends_there(mentions, ref)
    if (
        on_record
        and ref.cut[1]
        and mentions.vocabulary.cues["movement"].at(mentions.talk.texts, ref.end)
    ):
        return True  # "B beside her is a whole different story"
    if on_record and ref.cut[1] and mentions.talk.texts[ref.start - 1 : ref.start] == ("to",):
        return lead.any  # "skip C and go to D"
    if ref.cut[1]:
        return brought or lead.moved or (lead.shown and lead.presented) or heads
    groups = len(ref.cut[0])
    return brought or (heads and (on_record or groups > 1))


def _only_leads(mentions: Mentions, lead: LeadIn, ref: Ref) -> bool:
    """Nothing but "now", "then", "right" and the like before it in its sentence."""
    words = mentions.talk.texts[lead.start : ref.start]
    return all(
        w
        in (
            "now",
            "then",
            "next",
            "right",
            "okay",
            "and",
            "on",
            "to",
            "well",
            "um",
            "er",
            "so",
            "cross",
            "plant",
            "number",
        )
        for w in words
    )


def _ends_there(mentions: Mentions, ref: Ref) -> bool:
    """A mark after it, or words that go on to show it: "C is the next one", "21 still"."""
    talk = mentions.talk
    if talk.tokens[ref.end - 1].mark:
        return True
    rest = talk.texts[ref.end : ref.end + 5]
    return rest[:1] in (("now",), ("next",), ("still",), ("of",), ("i",)) or "next" in rest


def _first(mentions: Mentions, ref: Ref) -> bool:
    start = mentions.talk.sentence(ref.start)[0]
    return not any(r.cut is None for r in mentions.refs_in(start, ref.start))


def _alone(mentions: Mentions, ref: Ref) -> bool:
    """The number is a sentence of its own, as a note-taker speaks."""
    start, stop = mentions.talk.sentence(ref.start)
    return start == ref.start and stop == ref.end


def _is_parent_here(number: str, parents: tuple[Statement, ...], walk: Walk, at: int) -> bool:
    """Whether the number was told as a parent of the plant in hand."""
    if not walk.shown or walk.current is None:
        return False
    since = walk.shown[-1][1]
    return any(s.value == number and since <= s.start < at for s in parents)


def _completed(
    mentions: Mentions, ref: Ref, lead: LeadIn, leads: LeadIns, walk: Walk
) -> tuple[str, bool] | None:
    """The full number, and whether it is on record; the nearest plant seen completes it."""
    assert ref.cut is not None
    seen = [*reversed(walk.numbers)]
    if cross := leads.cross_before(ref.start):
        seen = [
            c for n in seen if (c := mentions.numbers.complete((("1",), ""), n, cross=cross))
        ] or seen
    batch = lead.batch
    if batch:
        seen = [n for n in mentions.numbers.seedlings if n.startswith(batch.upper())] or seen
    tried = [
        c for n in (seen[:1] if batch else seen[:6]) if (c := mentions.numbers.complete(ref.cut, n))
    ]
    for completed in tried:
        known = mentions.numbers.seedling(completed)
        if known is not None:
            return known.number, True
    return (tried[0], False) if tried else None


def opening(mentions: Mentions, leads: LeadIns, lead: LeadIn, said: int) -> int:
    """Where the sentence begins that brings a plant in, if that is near."""
    talk = mentions.talk
    start = talk.sentence(lead.start)[0]
    if talk.punctuated:
        return start if lead.start - start <= _LONG_OPENING else lead.start
    told = min(leads.told_before(lead.start), lead.start)
    if told > start and lead.any:
        return lead.start
    start = max(start, told)
    if not lead.any and not lead.shown and lead.start - start > 2:
        return lead.start
    if lead.start - start <= _SHORT_OPENING:
        return _with_places(mentions, leads, start)
    for i in range(lead.start, max(start, said - _FAR_OPENING), -1):
        if talk.texts[i - 1] in _OPENERS and talk.texts[i] in _OPENED:
            return i - 1
    return lead.start


_PLACE_WORDS = frozenset(
    {
        "side",
        "along",
        "behind",
        "beside",
        "next",
        "end",
        "down",
        "further",
        "corner",
        "sister",
        "brother",
        "batch",
        "over",
    }
)
_PLACE_REACH = 13


def _with_places(mentions: Mentions, leads: LeadIns, start: int) -> int:
    """The statement before too, where it only says where to look ("on the other side")."""
    talk = mentions.talk
    if start == 0:
        return start
    before, _ = talk.sentence(start - 1)
    words = set(talk.texts[before:start])
    told = leads.told_before(start)
    if start - before <= _PLACE_REACH and before >= told and words & _PLACE_WORDS:
        return before
    return start
