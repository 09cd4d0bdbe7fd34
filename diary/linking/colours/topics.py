"""The part that a colour without one is about: named after it, before it, or by a pronoun.

"Yellow, the throat." "Throat? Lemon." "What I like is the stem, it's nearly black." "The leaf on
that's a picture, gold." "Cherry red below." Each habit of speech is one function; they are asked
in turn, for colours that have no part in their own phrase.
"""

from diary.linking.colours.attached import Attached
from diary.linking.colours.headings import bare_part
from diary.linking.colours.heads import (
    FAR,
    brought_in,
    head_of,
    new_subject,
    one_of_a_part,
    part_at,
)
from diary.linking.colours.led_in import headed_by_place, led_in, opening_up, placed
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import BE, COPULAS, FRAGMENT_LEADS, THE, fragment_start
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.tokens import COMMA, QUERY, STOP

_LEAF_COLOURS = frozenset(
    "green gold bronze chartreuse silver grey yellow cream black brown lemon white copper "
    "burgundy purple maroon chocolate".split()
)


def topic_of(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """The part spoken of, for a colour with no part in its own phrase."""
    for habit in _HABITS:
        part = habit(mentions, colour)
        if part is not None and can_be(part, colour):
            return _attached(part, colour, _RULES[habit.__name__])
    return None


_RULES = {
    "_one_of_it": "a colour of the part spoken of",
    "_named_after": "a colour before its part, set off",
    "placed": "a colour placed on the flower",
    "led_in": "a colour placed on a part",
    "headed_by_place": "a colour placed on a part",
    "opening_up": "a colour of the open flower",
    "_subject": "a colour of its clause's subject",
    "_under_heading": "a colour of the part asked about",
    "_named_before": "a colour of the part spoken of",
}


def _attached(part: str, colour: ColourHeard, rule: str) -> Attached:
    return Attached(part=part, rule=rule, score=0.8, start=colour.start, end=colour.end)


def can_be(part: str, colour: ColourHeard) -> bool:
    """No leaf is pink: "the leaf's nicely zoned, it's a soft pink" goes on to the flower."""
    return part != "leaf" or colour.value in _LEAF_COLOURS


def _named_after(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "Yellow, the throat."; "a soft peach, is the flower"; not "white, the eye is cerise"."""
    talk = mentions.talk
    texts, i = talk.texts, colour.end
    if talk.tokens[i - 1].mark in (STOP, QUERY):
        return None
    if texts[i : i + 1] == ("as",) and not talk.tokens[i - 1].mark:  # "black as your hat, the eye"
        i = next((j + 1 for j in range(i, i + 5) if talk.between(j, j + 1, (COMMA,))), i)
    if not talk.tokens[i - 1].mark:  # "they're wine to look at, the upper petals"
        comma = next((j for j in range(i, i + 4) if talk.between(j, j + 1, (COMMA,))), None)
        told = comma is not None and (
            mentions.parts_in(i, comma + 1) or mentions.colours_in(i, comma + 1)
        )
        if comma is not None and not told and not talk.between(i, comma, (STOP, QUERY)):
            i = comma + 1
    if not talk.punctuated:
        while i < len(texts) and i - colour.end < 4 and texts[i] in _TAGS:
            i += 1  # "that is black | near enough | that eye"
    while i < len(texts) and texts[i] in BE | {"too", "all", "again"} and i - colour.end < 3:
        i += 1
    if i >= len(texts) or texts[i] not in THE:
        return None
    part = part_at(mentions, i + 1) or part_at(mentions, i + 2)
    if part is None or talk.between(i, part.end - 1, (STOP, QUERY, COMMA)):
        return None
    end = part.end + 2 * (texts[part.end : part.end + 2] in _OF_IT)
    closed = end >= len(texts) or talk.tokens[end - 1].mark in (STOP, QUERY)
    apart = talk.tokens[part.end - 1].mark == COMMA and texts[part.end] in ("and", "with", "but")
    if talk.punctuated:
        return part.label if closed or apart else None
    after = texts[part.end] if part.end < len(texts) else ""
    ended = closed or (talk.clause(part.start)[1] == part.end and after not in COPULAS)
    return part.label if ended and not mentions.colours_in(part.end, part.end + 3) else None


_OF_IT = (("on", "it"), ("of", "it"), ("to", "it"), ("on", "that"), ("on", "him"), ("on", "her"))


_TAGS = frozenset("near enough nearly really or i 'd say mind you to look at so as near".split())


def _one_of_it(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "it has a blotch, a small black one"; not "it's a red one"."""
    return one_of_a_part(mentions, colour)


def _named_before(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "Throat? Lemon.", "The blotch, now, that's what you'd look at, black as your boot."

    The colour begins its clause, and the clause or sentence before begins with the part, or is
    only there to bring it in ("it's got a zone on the leaf, a sort of rusty brown").
    """
    talk = mentions.talk
    clause = talk.clause(colour.start)[0]
    start = _fragment_start(mentions, colour)
    if start is None or (talk.punctuated and start > clause + 3):
        return None
    sentence = talk.sentence(start)[0]
    if start == sentence:
        return bare_part(mentions, sentence)
    head = head_of(mentions, sentence, start)
    if head is not None:
        return head.label
    told = _told_last(mentions, start)
    if told is not None:
        return told
    last = talk.clause(start - 1)[0]
    while last > sentence and start - last < FAR and not mentions.parts_in(last, start):
        last = talk.clause(last - 1)[0]  # "there's a blotch, | but you have to look, | a rose"
    return brought_in(mentions, max(last, sentence), start)


def _told_last(mentions: Mentions, start: int) -> str | None:
    """ "and the lower ones have nothing, | just clear pink": the clause before is of a part."""
    talk = mentions.talk
    begin = talk.clause(start - 1)[0]
    part = next(iter(mentions.parts_in(begin, start)), None)
    if part is None or part.label == "bloom" or not talk.punctuated:
        return None
    if not is_of_plant(mentions, part) or mentions.colours_in(begin, start):
        return None
    lead = talk.texts[begin : part.start]
    others = [p for p in mentions.parts_in(part.end, start) if p.label != part.label]
    said = talk.texts[part.end : part.end + 1] in _SUBJECT_VERBS or _shaded(
        talk.texts[part.end : start]
    )
    plain = len(lead) <= 3 and set(lead) <= _LEADS_OF_SUBJECT
    return part.label if said and plain and not others else None


def _shaded(words: tuple[str, ...]) -> bool:
    """ "the bottom ones | a shade lighter |, call it a rose"."""
    return words[-1:] != () and words[-1] in _SHADES and set(words[:-1]) <= _BY_HOW_MUCH


_SHADES = frozenset("lighter paler darker deeper softer brighter dark pale light the_same".split())
_BY_HOW_MUCH = frozenset("a shade touch bit tad little lot much rather slightly tone".split())


def _subject(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "the bud's near enough brown", "the throat, it says here, is a rich gold"."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    put_in = talk.texts[start] in _RESUMING and talk.punctuated
    if put_in and talk.tokens[start - 1].mark == COMMA:
        start = talk.sentence(start)[0]  # a phrase put in between commas
    start = _second_half(mentions, start, colour.start)
    parts = [p for p in mentions.parts_in(start, colour.start) if is_of_plant(mentions, p)]
    if not talk.punctuated:
        parts = [p for p in parts if colour.start - p.end <= 10][-1:]
    if not parts or parts[0].label == "bloom" or len({p.label for p in parts}) > 1:
        return None
    head = parts[0]
    lead = talk.texts[start if talk.punctuated else max(start, head.start - 1) : head.start]
    if len(lead) > 4 or not set(lead) <= _LEADS_OF_SUBJECT:
        return None
    resumed = talk.clause(colour.start)[0] if put_in else 0
    between = talk.texts[max(parts[-1].end, resumed) : colour.start]
    if between[:2] in (("of", "it"), ("on", "it"), ("to", "it")):
        between = between[2:]
    told = talk.texts[head.end : head.end + 1]
    if (told not in _SUBJECT_VERBS and not put_in) or len(between) > FAR:
        return None
    if {"but", "flower", "plant"} & set(between) or new_subject(between):
        return None
    if "with" in between and not _coloured_with(between):
        return None
    earlier = mentions.colours_in(head.end, colour.start)
    if earlier and "to" not in talk.texts[earlier[-1].end : colour.start]:
        return None  # "veins maroon on pink"; not "gone from plum to something like black"
    return head.label


def _second_half(mentions: Mentions, start: int, end: int) -> int:
    """ "the uppers have gone plum and | the lowers have held their lilac"."""
    texts = mentions.talk.texts
    for i in range(end - 3, start, -1):
        if texts[i] in ("and", "but", "while") and texts[i + 1] in THE and part_at(mentions, i + 2):
            return i + 1
    return start


def _coloured_with(words: tuple[str, ...]) -> bool:
    """ "just touched with gold", "shot through with pink"."""
    done = words[max(0, words.index("with") - 2) : words.index("with")]
    return any(word.endswith("ed") or word in ("shot", "through", "run") for word in done)


_RESUMING = BE | {"has", "goes", "turns", "comes", "shows"}
_LEADS_OF_SUBJECT = THE | frozenset(
    "and but so now well then oh both two three young new old top where mind though a an".split()
)
_SUBJECT_VERBS = frozenset(
    (word,)
    for word in "is 's are 're has have goes go comes come came turns turn looks look opens open "
    "starts start seems seem stays stay fades fade shows show showing being having got was were "
    "will would could might may must can 'll 'd do does always all both still just only really "
    "very so too quite nearly almost now then hangs hang stands stand "
    "i that it of on to in up thin thins pale pales darken darkens deepen deepens bleach bleaches "
    "soften softens lighten lightens mellow melt melts wash washes age ages".split()
)


def _fragment_start(mentions: Mentions, colour: ColourHeard) -> int | None:
    """Where the verbless phrase of the colour begins, after a mark or a rounded-off phrase."""
    talk = mentions.talk
    i = fragment_start(talk, colour.start)
    for said in _NAMING:
        if i >= len(said) and talk.texts[i - len(said) : i] == said:
            i -= len(said)
    if i == 0 or talk.tokens[i - 1].mark:
        return i
    if talk.punctuated:
        return None
    if i and talk.texts[i - 2 : i - 1] == ("of",):  # "a sort of rusty brown"
        i -= 1
        while i and talk.texts[i - 1] in FRAGMENT_LEADS:
            i -= 1
    after_part = any(p.end == i for p in mentions.parts_in(i - 3, i))
    return i if after_part and talk.texts[i] in ("a", "an", "sort", "kind") else None


# "the top two are the colour of old port, call it burgundy"
_NAMING = (
    *(("let", "us", "say"), ("let", "us", "call", "it"), ("call", "it"), ("say",)),
    *(("i", "'d"), ("let", "'s"), ("i", "would"), ("you", "'d")),
)


def _under_heading(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "The eye? Well, I'd call it cherry.": the part is asked about, the next sentence answers."""
    talk = mentions.talk
    sentence = talk.sentence(colour.start)[0]
    before = talk.texts[sentence : colour.start]
    if len(before) > FAR or {"flower", "bloom", "plant", "this", "she", "he"} & set(before):
        return None
    if not sentence or talk.tokens[sentence - 1].mark != QUERY:
        return None
    return None if mentions.parts_in(sentence, colour.start) else bare_part(mentions, sentence)


_HABITS = (
    _one_of_it,
    _named_after,
    placed,
    led_in,
    headed_by_place,
    opening_up,
    _subject,
    _named_before,
    _under_heading,
)
