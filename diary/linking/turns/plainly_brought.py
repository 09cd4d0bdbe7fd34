"""A number brought in by the build of its sentence, though a word of comparison leads to it.

"I shall begin at the end of the top tier with 23-15", "the plant I did not reach was 24-09",
"24-03 beside it is off the same pod". Leaves alone "last year's pick was 23-18", "I compared it
with 23-15", "it shaded out 23-18 beside it".
"""

from diary.linking.turns.lead_ins import LeadIns
from diary.linking.turns.named_fragments import ends_fragment, here_it_is
from diary.reading.mentions import Mentions, Ref

_OPENING = frozenset(
    "begin beginning began start starting starts open opening kick lead leading commence finish "
    "finishing end ending close closing conclude round go off".split()
)
_WITH = frozenset({"with", "at", "by", "from"})
_WITHIN = 16


def plainly_brought(mentions: Mentions, ref: Ref) -> bool:
    """Whether the sentence itself brings the number in."""
    return (
        _opened_with(mentions, ref)
        or _left_over(mentions, ref)
        or _stands_by(mentions, ref)
        or _instead(mentions, ref)
        or _goes_on(mentions, ref)
        or _part_shown(mentions, ref)
        or _here_at_last(mentions, ref)
        or here_it_is(mentions, ref)
        or _remembered(mentions, ref)
        or ends_fragment(mentions, ref)
    )


def _head(mentions: Mentions, ref: Ref) -> int:
    start = mentions.talk.sentence(ref.start)[0]
    return max(start, ref.start - _WITHIN)


def _opened_with(mentions: Mentions, ref: Ref) -> bool:
    """ "I shall begin at the left-hand end with 23-15", "we finish, as ever, with 23-18"."""
    texts, head = mentions.talk.texts, _head(mentions, ref)
    if texts[ref.start - 1 : ref.start] == () or texts[ref.start - 1] not in _WITH:
        return False
    words = texts[head : ref.start - 1]
    verbs = [i for i, word in enumerate(words) if word in _OPENING - {"go", "off"}]
    if not verbs or mentions.refs_in(head, ref.start):
        return False
    return bool(_PEOPLE & set(words[: verbs[0]])) or verbs[0] <= 1


_PEOPLE = frozenset({"i", "we", "us", "let", "'ll", "shall", "me"})
_LEFT = frozenset(
    "reach reached reaching got get getting miss missed skip skipped forgot forget forgotten left "
    "promised mentioned meant wanted want come came do did overlooked showed show shown spoke "
    "talked told asked after passed omitted neglected waiting saving saved".split()
)
_ONES = frozenset("plant one pot seedling thing fellow chap lad".split())
_BE = frozenset({"is", "was", "'s", "were", "are"})


def _left_over(mentions: Mentions, ref: Ref) -> bool:
    """ "The plant I did not reach was 24-09", "what I missed last time was 23-18"."""
    texts, head = mentions.talk.texts, _head(mentions, ref)
    if texts[ref.start - 1 : ref.start] == () or texts[ref.start - 1] not in _BE:
        return False
    words = texts[head : ref.start - 1]
    who = next((i for i, word in enumerate(words) if word in ("i", "we")), None)
    if who is None or not 1 <= who <= 4 or words[who - 1] not in _ONES | {"what", "that"}:
        return False
    return bool(_LEFT & set(words[who:]))


def _goes_on(mentions: Mentions, ref: Ref) -> bool:
    """ "Skip that one, on to 23-10": a clause of its own; not "I put it on to 23-10"."""
    talk = mentions.talk
    start = talk.clause(ref.start)[0]
    return talk.texts[start : ref.start] in (("on", "to"), ("onto",), ("and", "on", "to")) and (
        talk.punctuated
    )


def _here_at_last(mentions: Mentions, ref: Ref) -> bool:
    """ "And here's what I mean to set against it, 24-09."; not "here's one to beat 24-09"."""
    talk = mentions.talk
    start, stop = talk.sentence(ref.start)
    words = talk.texts[start : ref.start]
    while words and words[0] in _LEADS - {"here"}:
        words = words[1:]
    shown = words[:2] in (("here", "'s"), ("here", "is"), ("this", "is"), ("there", "'s"))
    closes = ref.end == stop or bool(talk.tokens[ref.end - 1].mark)
    return shown and closes and talk.tokens[ref.start - 1].mark == ","


_ANNOUNCED = 12


def announced(mentions: Mentions, ref: Ref, leads: LeadIns) -> bool:
    """ "last one and then I'm done 23-06": said to come, and then told, nothing in between."""
    talk = mentions.talk
    low = max(leads.told_before(ref.start), ref.start - _ANNOUNCED, 0)
    found = [f for f in mentions.cue("announced", low, ref.start) if f.end < ref.start]
    if not found or mentions.refs_in(found[-1].start, ref.start):
        return False
    if talk.texts[ref.start - 1] in _OBJECT_LEADS | {"not", "and"}:
        return False
    return talk.punctuated is False or bool(talk.tokens[ref.start - 1].mark)


def _remembered(mentions: Mentions, ref: Ref) -> bool:
    """ "Remember 23-18?"; not "I remember 23-18 in bud"."""
    talk = mentions.talk
    asked = talk.tokens[ref.end - 1].mark == "?"
    return asked and talk.texts[ref.start - 1 : ref.start] == ("remember",)


_SHOWING = frozenset("show showing look looking see".split())


def _part_shown(mentions: Mentions, ref: Ref) -> bool:
    """ "Let me show you the inside of 24-05"; not "no sign of 24-05"."""
    texts = mentions.talk.texts
    head = max(mentions.talk.sentence(ref.start)[0], ref.start - 8)
    if texts[ref.start - 1 : ref.start] != ("of",) or "the" not in texts[head : ref.start]:
        return False
    return bool(_SHOWING & set(texts[head : ref.start]))


def _instead(mentions: Mentions, ref: Ref) -> bool:
    """ "Not 24-16, sorry, 24-06.": at the head of a sentence, the number put in its place."""
    texts, head = mentions.talk.texts, mentions.talk.sentence(ref.start)[0]
    if texts[head] != "not" or ref.start - head > _WITHIN:
        return False
    wrong = mentions.refs_in(head + 1, ref.start)
    if len(wrong) != 1 or wrong[0].start != head + 1:
        return False
    return any(f.end == ref.start for f in mentions.cue("repair", wrong[0].end, ref.start)) or (
        texts[ref.start - 1] == "but"
    )


_TELLS = frozenset("is 's are has was looks does stands comes had smells flowers came".split())
_LEADS = frozenset("and then so now here".split())


def _stands_by(mentions: Mentions, ref: Ref) -> bool:
    """ "24-03 beside it is off the same pod": a number with its place, at a clause's head.

    Not "it hid 23-18 beside it is all I can say".
    """
    talk = mentions.talk
    place = mentions.vocabulary.cues["movement"].at(talk.texts, ref.end)
    if place is not None and talk.texts[ref.end] in _LEADS | {"also", "another"}:
        return False  # "23-29, and this one is 23-30"
    if place is None or talk.tokens[ref.end - 1].mark in (".", "?"):
        return False
    if talk.texts[place.end : place.end + 1] == () or talk.texts[place.end] not in _TELLS:
        return False
    before = talk.texts[max(talk.clause(ref.start)[0], ref.start - 3) : ref.start]
    if talk.punctuated and not set(before) <= _LEADS:
        return False
    governing = _OBJECT_LEADS | {"not"} if talk.punctuated else _OBJECT_LEADS
    return not (before[-1:] != () and before[-1] in governing)


_OBJECT_LEADS = frozenset(
    "of about than against from with like as for unlike the to on onto over by or but "
    "though while whereas even only yet".split()
)
