"""A number cut short: whether it turns the talk, and which plant it is.

"Seventeen next" after 23-05 is 23-17, "C beside her" after 17B is 17C; "twelve, still the
twenty-fives" is of the batch named. Leaves alone "the height on that is 40, no, 44 inches".
"""

from diary.linking.turns.brought_in import shown_after
from diary.linking.turns.lead_ins import LeadIn, LeadIns
from diary.linking.turns.walk import Walk
from diary.reading.mentions import Mentions, Ref
from diary.reading.numbers.batches import batch_named
from diary.reading.numbers.told_by_batch import placed

_SPELT_AGAIN = 8


def spelt_again(ref: Ref, walk: Walk) -> bool:
    """ "six thirteen. One three.": the number in hand, digit by digit."""
    if not walk.turns or ref.start - walk.turns[-1].said > _SPELT_AGAIN:
        return False
    digits = "".join(ref.cut[0]) if ref.cut else ""
    return (
        bool(walk.numbers)
        and bool(digits)
        and walk.numbers[-1].rstrip("ABCDEFGHJKLMNPQRSTUVWXYZ").endswith(digits)
    )


def _told(mentions: Mentions, leads: LeadIns, ref: Ref) -> tuple[int, int]:
    """Where its clause begins, and where the last thing told before it ended."""
    return mentions.talk.clause(ref.start)[0], leads.told_before(ref.start)


def cut_turns(mentions: Mentions, ref: Ref, lead: LeadIn, leads: LeadIns, on_record: bool) -> bool:
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
    if _tallied(mentions, ref) or _count_said(mentions, ref):
        return False
    placed = mentions.vocabulary.cues["movement"].at(mentions.talk.texts, ref.end)
    heads = ref.start in (lead.start, *_told(mentions, leads, ref))
    if placed is not None and on_record and (heads or _only_leads(mentions, lead, ref)):
        return True  # "nineteen beside it is purple"
    if on_record and _looks_told(mentions, ref, heads or _only_leads(mentions, lead, ref)):
        return True
    if on_record and (_with_nought(mentions, ref, lead) or _listed(mentions, ref, lead)):
        return True
    told = len("".join(ref.cut[0])) > 1 and lead.at_head and _only_leads(mentions, lead, ref)
    if told and shown_after(mentions, ref):
        return True  # "two-two-six next"
    if on_record and ref.cut[1] and _is_told(mentions, ref, lead):
        return True  # "now B is the sister to it"
    brought = on_record and (lead.moved or (lead.shown and lead.presented))
    heads = lead.at_head and _only_leads(mentions, lead, ref) and _ends_there(mentions, ref)
    heads = heads and not _answers(mentions, lead)
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


_FLOWERED = frozenset("opened flowered started surprised turned ended arrived need red".split())
_TALLY = frozenset("for of out to down left more altogether in gone done so off".split())


def _tallied(mentions: Mentions, ref: Ref) -> bool:
    """ "So that's four for the catalogue", "that makes six done"; not "that's 14, the pink one"."""
    talk = mentions.talk
    before, after = talk.texts[max(0, ref.start - 2) : ref.start], talk.texts[ref.end : ref.end + 1]
    if after != () and after[0].endswith("ed") and after[0] not in _FLOWERED:
        return not talk.tokens[ref.end - 1].mark  # "eight called and two expelled"
    summed = before in (("that", "'s"), ("that", "is"), ("that", "makes"), ("which", "makes"))
    if not summed or talk.tokens[ref.end - 1].mark or after == ():
        return False
    return after[0] in _TALLY


_SAYING = frozenset("says said reckons makes make say".split())


def _count_said(mentions: Mentions, ref: Ref) -> bool:
    """ "He's counting the buds for me. Twelve, he says."; not "twelve, it says here"."""
    talk = mentions.talk
    before = talk.texts[max(0, ref.start - 8) : ref.start]
    after = talk.texts[ref.end : ref.end + 2]
    asked = bool({"count", "counting", "counted", "many"} & set(before))
    return asked and ((len(after) == 2 and after[1] in _SAYING) or "buds" in before)


_BRINGS = frozenset("to 've have 's is got here".split())
_THERE = frozenset("and then there here 's is now next comes so we 've have".split())


def _with_nought(mentions: Mentions, ref: Ref, lead: LeadIn) -> bool:
    """ "moving on to oh seven", "then you've oh nine": no amount is said with a nought."""
    assert ref.cut is not None
    digits, before = "".join(ref.cut[0]), mentions.talk.texts[max(0, ref.start - 1) : ref.start]
    return digits.startswith("0") and len(digits) > 1 and before != () and before[0] in _BRINGS


def _listed(mentions: Mentions, ref: Ref, lead: LeadIn) -> bool:
    """ "Then there's nine.": a sentence of its own; not "there's nine of them"."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    words = talk.texts[start : ref.start]
    whole = talk.punctuated and stop == ref.end and lead.any and "then" in words
    return whole and {"'s", "is", "comes"} & set(words) != set() and set(words) <= _THERE


_TELLS = frozenset("is 's has 'd was".split())
_LOOKS_REACH = 6


def _looks_told(mentions: Mentions, ref: Ref, heads: bool) -> bool:
    """ "Six is white.", "and oh five has a pink flower"; not "six is plenty", "six is red-hot".

    In captions, where no sentence is marked, only with a nought or a word that leads in.
    """
    assert ref.cut is not None
    talk = mentions.talk
    if not heads or ref.cut[1] or talk.tokens[ref.end - 1].mark:
        return False
    if talk.texts[ref.end : ref.end + 1] == () or talk.texts[ref.end] not in _TELLS:
        return False
    nought = "".join(ref.cut[0]).startswith("0")
    led = talk.texts[max(0, ref.start - 1) : ref.start]
    if not (talk.punctuated or nought or (led != () and led[0] in ("and", "then", "now", "next"))):
        return False
    stop = min(talk.clause(ref.start)[1], ref.end + _LOOKS_REACH)
    if talk.texts[ref.end] == "has" and any(True for _ in mentions.parts_in(ref.end, stop)):
        return True
    return any(True for _ in mentions.colours_in(ref.end, stop))


def _is_told(mentions: Mentions, ref: Ref, lead: LeadIn) -> bool:
    """ "now B is the sister to it", "C has a wider edge."; not "and C hasn't got that"."""
    talk = mentions.talk
    verb, after = (*talk.texts[ref.end : ref.end + 2], "", "")[:2]
    heads = talk.sentence(ref.start)[0] == ref.start or talk.tokens[ref.start].text in _BY_NAME
    return (verb == "is" and lead.any) or (
        heads and verb in ("is", "'s", "has", "looks") and after != "not"
    )


_ASKS_PLANT = frozenset("who which what 's number next where one plant this that".split())


def _answers(mentions: Mentions, lead: LeadIn) -> bool:
    """ "Marks out of twenty-five? Twenty-one." is no plant; "Who's this? Seventeen." is one."""
    talk = mentions.talk
    if not lead.start or talk.tokens[lead.start - 1].mark != "?":
        return False
    start, stop = talk.sentence(lead.start - 1)
    return not _ASKS_PLANT & set(talk.texts[start:stop])


_BY_NAME = frozenset({"bee", "see", "sea", "dee", "eff", "gee"})


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


def completed(
    mentions: Mentions, ref: Ref, lead: LeadIn, leads: LeadIns, walk: Walk
) -> tuple[str, bool] | None:
    """The full number, and whether it is on record; the nearest plant seen completes it."""
    assert ref.cut is not None
    seen = [*reversed(walk.numbers)]
    if cross := leads.cross_before(ref.start):
        seen = [
            c for n in seen if (c := mentions.numbers.complete((("1",), ""), n, cross=cross))
        ] or seen
    year = _batch_of(mentions, ref, walk)
    if year and (number := placed(mentions.numbers, year, "".join(ref.cut[0]))):
        known = mentions.numbers.seedling(number)
        return (known.number, True) if known else (number, False)
    batch = lead.batch
    if batch:
        seen = [n for n in mentions.numbers.seedlings if n.startswith(batch.upper())] or seen
    if not lead.moved and not batch and (again := _walked(ref, walk, mentions)):
        return again
    tried = [
        c for n in (seen[:1] if batch else seen[:6]) if (c := mentions.numbers.complete(ref.cut, n))
    ]
    for completed in tried:
        known = mentions.numbers.seedling(completed)
        if known is not None:
            return known.number, True
    if not walk.numbers and len("".join(ref.cut[0])) > 2:
        return _only_one(mentions, ref)
    return (tried[0], False) if tried else None


def _only_one(mentions: Mentions, ref: Ref) -> tuple[str, bool] | None:
    """ "We start with one-oh-four": the first plant told, and one alone on record ends so."""
    assert ref.cut is not None
    wholes = {mentions.numbers.complete(ref.cut, number) for number in mentions.numbers.seedlings}
    ends = {whole for whole in wholes if whole and mentions.numbers.seedling(whole)}
    return (ends.pop(), True) if len(ends) == 1 else None


_REMEMBERED = 40


def _walked(ref: Ref, walk: Walk, mentions: Mentions) -> tuple[str, bool] | None:
    """ "before I go, two oh six": of the plants walked past, the one that ends so.

    Where the batch in hand has none on record that does, or has it walked past too.
    """
    assert ref.cut is not None
    in_hand = walk.numbers[-1] if walk.numbers else ""
    nearest = mentions.numbers.complete(ref.cut, in_hand) if in_hand else None
    digits = "".join(ref.cut[0])
    if len(digits) < 3 or nearest is None or nearest in walk.numbers:
        return None
    for number in reversed(walk.numbers[-_REMEMBERED:]):
        if mentions.numbers.complete(ref.cut, number) == number:
            known = mentions.numbers.seedling(number)
            return number, known is not None
    return None


_BATCH_BEFORE, _BATCH_AFTER = 30, 10


def _batch_of(mentions: Mentions, ref: Ref, walk: Walk) -> str:
    """The year of a batch spoken of: "the twenty-fives now. Number six", "twelve next, still
    the twenty-fives".
    """
    if ref.cut is None or len(ref.cut[0]) != 1 or ref.cut[1]:
        return ""
    talk = mentions.talk
    stop = talk.sentence(ref.start)[1] if talk.punctuated else ref.end + _BATCH_AFTER
    found = batch_named(talk.texts, ref.end, min(stop, ref.end + _BATCH_AFTER, len(talk.texts)))
    if found is None:
        low = walk.turns[-1].said + 1 if walk.turns else 0
        found = batch_named(talk.texts, max(low, ref.start - _BATCH_BEFORE, 0), ref.start)
    return found.year if found else ""
