"""The part that a pronoun stands for: "what I like is the stem, it's nearly black"."""

from diary.linking.colours.headings import DEFINITE
from diary.linking.colours.heads import FAR, INNER, brought_in, head_of, subject_before
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import BE, COPULAS
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_LEAVES = frozenset({"leaf"})
_LEAF_METALS = frozenset("green bronze chartreuse grey silver gold".split())
_OF_LEAVES_ONLY = frozenset({"green", "bronze", "chartreuse", "grey"})
_DARK = frozenset("black maroon burgundy brown crimson plum mahogany chocolate claret".split())
_ON_IT = tuple((where, what) for where in ("on", "in", "to") for what in ("it", "them", "him"))
_DRAWN_TO = frozenset("like love see notice mind fancy admire".split())  # "i like the stripe"
_BUDDING = frozenset("showing breaking splitting cracking swelling bursting colouring".split())
_LITTLE_MORE = frozenset(
    "really mind though now you know all the whole way round right along down up "
    "across over".split()
)
_SHOWING = frozenset("what look bar except barring show showing turn turned".split())
_FURTHER = 6
_POINTERS = frozenset({"it", "that", "which"})


def pointed_at(mentions: Mentions, colour: ColourHeard) -> str | None:
    """ "bar the eye, and that's cherry", "what I like is the stem, it's nearly black"."""
    talk = mentions.talk
    start = talk.clause(colour.start)[0]
    i = start
    while i < colour.start and talk.texts[i] in (
        "in",
        "colour",
        "color",
        "and",
        "but",
        "now",
        "well",
        "so",
        "though",
        "because",
        "cause",
        "since",
    ):
        i += 1
    if not talk.punctuated:  # "what you come for it's crimson": no clause is seen to begin
        pointing = [
            j for j in range(i, colour.start - 1) if talk.texts[j + 1] in BE | {"'d", "goes"}
        ]
        i = start = next((j for j in reversed(pointing) if talk.texts[j] in _POINTERS), i)
    if talk.texts[i] == "where" and talk.texts[i + 1] in ("it", "they", "she", "he"):
        last = next((p for p in mentions.parts_in(start - 6, start) if p.end == start), None)
        if last is None or not is_of_plant(mentions, last) or colour.start - i > 6:
            return None
        return None if mentions.parts_in(i, colour.start) else last.label
    word, verb = talk.texts[i : i + 1], talk.texts[i + 1 : i + 2]
    if word not in (("that",), ("it",), ("which",)) or not set(verb) <= COPULAS | {"'d"}:
        return None
    if colour.start - i > 6 or mentions.parts_in(i, colour.start) or start == 0:
        return None
    low = max(talk.sentence(start - 1)[0] if talk.punctuated else 0, start - FAR)
    before = [p for p in mentions.parts_in(low, start) if is_of_plant(mentions, p)]
    if not before or before[-1].label == "bloom":
        return None
    last = before[-1]
    if last.label == "bud" and _BUDDING & set(talk.texts[last.end : start]):
        return "bud"  # "it's not out, but the bud's showing, and it's plum"
    if word == ("it",):
        joined = start - (talk.texts[start - 1] in ("and", "but", "so") and start > 1)
        leaves = _LEAVES if colour.value in _LEAF_METALS else frozenset()
        subject = subject_before(mentions, joined, leaves)
        if subject is not None:
            return subject
    told_from = low if word == ("it",) else last.end
    if mentions.colours_in(told_from, start) or mentions.colours_in(last.start - 1, last.start):
        return None
    added = talk.texts[last.end : start]
    ends = added in _ON_IT or set(added) <= _LITTLE_MORE
    if word == ("which",):
        return last.label if ends else None
    lead = talk.texts[low : last.start]
    if word == ("that",):
        of_it = brought_in(mentions, max(low - _FURTHER, 0), start)
        if of_it is not None and talk.texts[start] in ("and", "that"):
            return of_it
        return last.label if ends or "from" in lead else None
    ends = ends or talk.texts[last.end : last.end + 1] == ("it",)  # "the stem, it's long and it's"
    shown = bool(set(lead) & (_SHOWING | _DRAWN_TO)) and ends
    shown = shown or (ends and lead[-2:-1] in (("is",), ("'s",)))  # "the other thing is the bud"
    sentence = talk.sentence(start - 1)[0]
    head = head_of(mentions, sentence, start) or _definite(mentions, last, start)
    if shown or (head is not None and (head.label in INNER or colour.value in _OF_LEAVES_ONLY)):
        return last.label
    return last.label if colour.value in _DARK and brought_in(mentions, low, start) else None


def _definite(mentions: Mentions, part: Found, before: int) -> Found | None:
    """ "now the eye on this one is what you come for, it's crimson"; not "with the eye"."""
    talk = mentions.talk
    lead = talk.texts[part.start - 2 : part.start]
    rest = talk.texts[part.end : before]
    whole = {"flower", "bloom", "plant", "petals"} & set(rest)
    if lead[1:] not in DEFINITE or lead[0] in ("with", "of", "in", "on") or whole:
        return None
    says = {"is", "'s", "are", "'re"} & set(rest)
    return part if says and not mentions.refs_in(part.end, before) else None
