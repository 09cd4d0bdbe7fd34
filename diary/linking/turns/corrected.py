"""A number that is taken back: the plant in hand is another than was said.

"24-13, no, hang on, I tell a lie, it's 24-30", "23-04 or 23-05? It's 23-05", and long after,
"I said 24-03, I meant 24-13". Leaves alone "hang on, I forgot to say of 23-04", "next it's 23-05".
"""

from dataclasses import replace

from diary.linking.document import Plant, PlantKind
from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.walk import Walk
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions, Ref
from diary.reading.phrases import Found

_REPAIR_REACH, _FAR_REACH = 14, 28
_HANGS_ON = frozenset("to of with than from about beside behind by for on".split())


def corrected(mentions: Mentions, ref: Ref, leads: LeadIns, taken: set[int], walk: Walk) -> bool:
    """Whether the number is put in the place of the last turn's; the walk is mended if so."""
    if not walk.turns or not ref.is_number or ref.cut is not None:
        return False
    last = walk.turns[-1]
    if last.plant.kind is not PlantKind.SEEDLING or ref.title == last.plant.number:
        return False
    if not (
        _meant(mentions, ref, last.said)
        or _corrected_at_once(mentions, ref, last.said)
        or (ref.start not in taken and _it_is_another(mentions, ref, leads, last.said))
        or _called_wrongly(mentions, ref, last.plant.number or "")
    ):
        return False
    plant = Plant(kind=PlantKind.SEEDLING, number=ref.title, on_record=ref.on_record)
    walk.mend_last(replace(last, plant=plant, said=ref.start, rule="a number corrected"))
    return True


def _corrected_at_once(mentions: Mentions, ref: Ref, said: int) -> bool:
    """ "twenty-nine oh two, no, I beg its pardon, twenty-nine twenty A"."""
    if ref.start - said > _REPAIR_REACH:
        return False
    repairs = mentions.cue("repair", said, ref.start)
    mended = any(
        said < f.start < ref.start and ref.start - f.end <= 5
        for f in repairs
        if not _no_repair(mentions, f)
    )
    if not mended or any(r.cut is None for r in mentions.refs_in(said + 1, ref.start)):
        return False
    if "back" in mentions.talk.texts[max(said, ref.start - 5) : ref.start]:
        return False  # "no wait, go back, 23-04 has a cream throat"
    if _HANGS_ON & set(mentions.talk.texts[max(repairs[-1].end, ref.start - 2) : ref.start]):
        return False  # "hang on, I forgot to say of 23-04", "no relation to 23-05"
    denied = bool(mentions.scopes.habits(ref.start) & {Habit.DENIAL})
    return not (denied and mentions.talk.texts[ref.start - 1] == "not")


_AFTER_NO = frozenset("it that this wait hang hold sorry not i number he she what my you".split())


def _no_repair(mentions: Mentions, repair: Found) -> bool:
    """ "Coral, I'd call it. 18D?" ends a sentence, "I'd rather have 18D" tells a liking.

    "What I mean to beat it with" is a plan.
    """
    talk = mentions.talk
    words, before = talk.texts[repair.start : repair.end], talk.texts[repair.start - 1]
    after = talk.texts[repair.end : repair.end + 1]
    if words == ("no",) and after and not talk.tokens[repair.start].mark and talk.punctuated:
        return after[0] not in _AFTER_NO  # "No label. White. 23-06"
    closes = words == ("call", "it") and bool(talk.tokens[repair.end - 1].mark)
    meant = words == ("i", "mean") and talk.texts[repair.end : repair.end + 1] == ("to",)
    return closes or meant or (words == ("rather",) and before in ("'d", "would"))


_MEANING = frozenset("meant mean".split())
_AFRESH = frozenset("next now then last finally lastly on to onto and first".split())


def _meant(mentions: Mentions, ref: Ref, said: int) -> bool:
    """ "I said oh three. I meant thirteen, 24-13."; not "I meant 24-13 to have more light"."""
    talk, at = mentions.talk, ref.start
    before = next((r for r in mentions.refs_in(said, at) if r.end == at), None)
    if before is not None and before.cut is not None:
        at = before.start
    if at < 2 or talk.texts[at - 1] not in _MEANING or talk.texts[at - 2] != "i":
        return False
    return not talk.punctuated or bool(talk.tokens[ref.end - 1].mark)


def _it_is_another(mentions: Mentions, ref: Ref, leads: LeadIns, said: int) -> bool:
    """ "23-14, or it would be if I could read. It's 23-19.": told nothing of what "it" was.

    Not "23-14 isn't out. Next it's 23-15".
    """
    talk = mentions.talk
    if ref.start - said > _FAR_REACH or leads.told_before(ref.start) > said + 1:
        return False
    who, verb = (*talk.texts[max(0, ref.start - 2) : ref.start], "", "")[:2]
    if who not in ("it", "that", "this") or verb not in ("is", "'s"):
        return False
    if any(
        r.cut is None and not _guess(mentions, r) for r in mentions.refs_in(said + 1, ref.start)
    ):
        return False
    words = talk.texts[max(talk.sentence(ref.start)[0], said + 1, ref.start - 6) : ref.start - 2]
    if _AFRESH & set(words) or talk.texts[ref.end : ref.end + 1] in (("next",), ("now",)):
        return False
    return who == "it" or bool(mentions.cue("mistaken", said + 1, ref.start))


def _guess(mentions: Mentions, ref: Ref) -> bool:
    """ "23-04 or 23-05?": the second of two that it may be."""
    return mentions.talk.texts[ref.start - 1] == "or"


_CALLING = frozenset("said say called calling call saying told".split())
_CALLED_REACH = 6


def _called_wrongly(mentions: Mentions, ref: Ref, number: str) -> bool:
    """ "I've been calling it 24-03 and it's 24-13"; not "I said 24-03 was white"."""
    talk = mentions.talk
    wrong = next((r for r in mentions.refs_in(ref.start - 9, ref.start) if r.end < ref.start), None)
    if wrong is None or wrong.title != number:
        return False
    low = max(talk.sentence(wrong.start)[0], wrong.start - _CALLED_REACH)
    before, between = talk.texts[low : wrong.start], talk.texts[wrong.end : ref.start]
    if "i" not in before or not _CALLING & set(before):
        return False
    return between[-2:] in (("it", "'s"), ("it", "is"), ("i", "meant"), ("i", "mean")) or (
        between[-2:] in (("that", "'s"), ("this", "is"), ("that", "is")) and len(between) <= 4
    )
