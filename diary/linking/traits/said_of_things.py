"""Words of looks and health that are said of no plant: of a pot, the bench, the hour, a kind.

"the pot's clean", "a double page", "it's late, I'll have my tea", "we're running behind",
"I could never strike the bushy sort", "a blotch that spreads". Leaves alone "a clean plant in a
dirty pot" and "late, this one".
"""

from diary.linking.statement import Statement
from diary.linking.traits.found_clean import excused
from diary.reading.mentions import Mentions

_TRAITS = frozenset(
    {"bloom_form", "habit", "flowering", "health", "foliage", "bloom_size", "scent"}
)
_BACK = frozenset({"it", "this", "she", "he", "that", "plant", "they", "these", "one", "flower"})
_VERBS = frozenset(
    "is 's are was were 're has have looks look gets got stands sits comes came grows hangs 've "
    "goes went stays wants needs smell smells stink stinks".split()
)
_BEFORE_A_NOUN = frozenset("the my our your his a an this that these those both her every".split())
_FIXED = frozenset({"an", "a", "little", "big", "new", "old", "whole", "other", "good", "nice"})
_I_HAVE = tuple((i, have) for i in ("i", "we") for have in ("'ve", "have", "'d", "'m", "am"))
_POSTURES = frozenset("stand stood standing sit sat kneel bend lie am 'm feel felt".split())
_KINDS = frozenset({"sort", "sorts", "kind", "kinds", "type", "types", "ones"})
_WE = frozenset({"we", "i", "you"})
_AM = frozenset({"'re", "are", "'m", "am", "was", "were", "run", "running", "have", "'ve", "got"})
_PARTS_OF_FLOWERS = frozenset(
    "blotch feathering stripe veins edge eye spots flush star zone throat centre base".split()
) | {"upper petals", "lower petals"}
_WITHIN = 8


def said_of_the_plant(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """The statements without those that are said of something else."""
    return [s for s in found if s.trait not in _TRAITS or not _elsewhere(mentions, s)]


def _elsewhere(mentions: Mentions, s: Statement) -> bool:
    return (
        _before_a_thing(mentions, s)
        or _thing_is_subject(mentions, s)
        or _of_the_grower(mentions, s)
        or _of_a_kind(mentions, s)
        or _another_one(mentions, s)
        or _of_a_marking(mentions, s)
        or _clean_colour(mentions, s)
        or _unmarked_colour(mentions, s)
        or excused(mentions, s)
    )


def _before_a_thing(mentions: Mentions, s: Statement) -> bool:
    """ "a double page", "an early bus", "a clean pot"; not "it's double, the pot is full"."""
    talk = mentions.talk
    if s.end >= len(talk.texts) or talk.tokens[s.end - 1].mark:
        return False
    if talk.texts[s.end - 1] in _TOWARDS:
        return False  # "it'd take over the | greenhouse"
    at = s.end + (talk.texts[s.end] in _OF_ANYTHING)
    if talk.texts[at : at + 2] in _PATCHES:
        return True  # "a spreading patch of damp"
    return talk.texts[at : at + 1] != () and (
        talk.texts[at] in mentions.vocabulary.classes["not_plant"]
    )


_OF_ANYTHING = frozenset({"little", "old", "big", "wee", "great", "young"})
_PATCHES = tuple((w, "of") for w in "patch stain pool puddle heap pile crowd smear".split())


_TOWARDS = frozenset(
    "the a its over across along in into on down up out through off by to at from above "
    "below".split()
)


def _thing_is_subject(mentions: Mentions, s: Statement) -> bool:
    """ "the bench is covered in petals": the noun of the clause, with no plant after it."""
    talk, things = mentions.talk, mentions.vocabulary.classes["not_plant"]
    low = talk.clause(s.start)[0]
    low = max([low, *(r.end for r in mentions.refs_in(low, s.start))])
    if _my_own(mentions, low, s.start):
        return True
    for i in range(s.start - 1, max(low, s.start - _WITHIN) - 1, -1):
        if talk.texts[i] in _BACK:
            return False
        if talk.texts[i] not in things or talk.texts[i + 1] not in _VERBS:
            continue
        if i == low:
            return talk.punctuated
        if i - low <= 3 and not set(talk.texts[low:i]) & _GOVERNING:
            return True  # "yellow sticky card's full of whitefly"
        return talk.texts[i - 1] in _BEFORE_A_NOUN and talk.texts[max(low, i - 2)] not in (
            "in", "on", "for", "at", "of", "to", "by", "with",
        )  # fmt: skip
    return False


def _my_own(mentions: Mentions, low: int, at: int) -> bool:
    """ "my back's rotten", "my brother-in-law is a bit weak"; not "my best one is bushy"."""
    texts = mentions.talk.texts
    if low >= at or texts[low] not in ("my", "our") or at - low > _WITHIN:
        return False
    if set(texts[low + 1 : at]) & (mentions.vocabulary.classes["plantlike"] | _MINE):
        return False
    return any(texts[i] in _VERBS for i in range(low + 2, min(at + 1, low + 4)))


_MINE = frozenset("favourite favorite best own plant pride darling pet seedling baby star".split())
_GOVERNING = frozenset("in on for at of to by with from under over near since until till".split())


def _of_the_grower(mentions: Mentions, s: Statement) -> bool:
    """ "we're three weeks behind", "I was late with the sowing", "I had to stand upright"."""
    before = mentions.talk.texts[s.start - 1 : s.start]
    if s.trait in ("habit", "bloom_form") and before in (("we",), ("i",)):
        return True  # "we doubled the order"
    if s.trait == "habit":
        low = max(mentions.talk.clause(s.start)[0], s.start - 6)
        mine = set(mentions.talk.texts[low : s.start + 1])
        if mentions.talk.texts[s.start - 2 : s.start] in _I_HAVE:
            return True  # "I've trailed all the way back"
        return bool(mine & {"i", "we"}) and bool(mine & _POSTURES) and not mine & _BACK
    if s.trait != "flowering" or s.value not in ("early", "late"):
        return False
    texts = mentions.talk.texts
    low = max(mentions.talk.clause(s.start)[0], s.start - 5)
    return any(
        texts[i] in _WE and texts[i + 1] in _AM and texts[i + 2 : i + 3] not in (("it",), ("one",))
        for i in range(low, s.start)
        if i + 1 <= s.start
    )


def _of_a_kind(mentions: Mentions, s: Statement) -> bool:
    """ "I never could strike the bushy sort"; not "it's the bushy sort"."""
    texts = mentions.talk.texts
    if texts[s.end : s.end + 1] not in tuple((k,) for k in _KINDS):
        return False
    before = texts[max(0, s.start - 2) : s.start]
    return before[-1:] == ("the",) and before[:1] not in (("is",), ("'s",), ("of",), ("are",))


def _another_one(mentions: Mentions, s: Statement) -> bool:
    """ "the double one next to it is mine too", "a frilly one I had from a friend".

    Not "the double one in the red pot" brought in, nor "it's a frilly one I'm fond of".
    """
    texts = mentions.talk.texts
    if texts[s.end : s.end + 1] not in (("one",), ("ones",)) and texts[s.end - 1] not in _ONES:
        return False
    at = s.end + (texts[s.end : s.end + 1] in (("one",), ("ones",)))
    if texts[s.start - 1 : s.start] == ("the",) and texts[at : at + 3] in _THERE:
        return True  # "the upright one's over there"
    if texts[s.start - 1 : s.start] == ("the",) and texts[at : at + 2] == ("over", "there"):
        return True
    opened = mentions.talk.clause(s.start)[0] >= s.start - 1
    if opened and texts[at : at + 1] in (("i",), ("we",)) and texts[at + 1] in _ONCE_OWNED:
        return True
    after = texts[at : at + 3]
    return after[:1] in _BESIDE and bool({"it", "this", "him", "her"} & set(after[1:]))


_ONES = frozenset({"one", "ones"})
_ONCE_OWNED = frozenset("had saw bought grew lost used sold raised threw binned kept knew".split())
_THERE = (("'s", "over", "there"), ("is", "over", "there"), ("'s", "next", "door"))
_BESIDE = (("next",), ("beside",), ("behind",), ("by",), ("alongside",), ("under",), ("above",))


def _of_a_marking(mentions: Mentions, s: Statement) -> bool:
    """ "a blotch that spreads to the rim", "an edge as neat as a hem": said of the marking."""
    talk = mentions.talk
    if s.trait != "habit":
        return False
    own = set(talk.texts[s.start : s.end])
    if own & (mentions.vocabulary.classes["plantlike"] | _GROWTH):
        return False
    low = talk.clause(s.start)[0]
    if low > 0 and "as" in talk.texts[s.start : s.end] and s.start - low <= 1:
        low = talk.clause(low - 1)[0]  # "a white eye in each flower, neat as a shirt button"
    found = mentions.parts_in(max(low, s.start - _WITHIN), s.start)
    if "as" in own and low < s.start and _HEADS & set(talk.texts[low : s.start]):
        return True  # "it's a ball, tight as a drum"
    parts = [p for p in found if p.label in _PARTS_OF_FLOWERS | {"bloom", "stem", "leaf"}]
    parts = [p for p in parts if talk.texts[p.end : p.end + 3] != ("of", "the", "pot")]
    if not parts:
        return False
    between = talk.texts[parts[-1].end : s.start]
    if parts[-1].label not in _PARTS_OF_FLOWERS:
        likened = "as" in talk.texts[s.start : s.end]
        adjacent = not between or (len(between) <= 2 and bool(set(between) & _VERBS))
        if not likened and not adjacent:
            return False
    if talk.texts[s.end : s.end + 1] and talk.texts[s.end] in _GROWTH:
        return False
    return not any(
        w in _BACK and between[n - 1 : n] not in (("under",), ("on",), ("to",), ("of",), ("in",))
        for n, w in enumerate(between)
        if w != "that"
    ) and not set(between) & {"but", "plant", "habit", "growth"}


_HEADS = frozenset({"ball", "pompon", "globe", "head", "truss", "pompom", "rosebud", "bud"})
_GROWTH = frozenset("plant growth habit grower thing bush one little".split())


def _clean_colour(mentions: Mentions, s: Statement) -> bool:
    """ "a clean pale rose", "clean bright edges", "a clean cut": no health of a plant."""
    if s.value != "clean" or mentions.talk.texts[s.end - 1] != "clean":
        return False
    talk = mentions.talk
    if talk.tokens[s.end - 1].mark or s.end >= len(talk.texts):
        return False
    articles = set(talk.texts[max(0, s.end - 4) : s.end - 1]) & {"a", "the", "some", "an"}
    if articles and talk.clause(s.start)[1] > s.end and talk.texts[s.end] not in _CLEAN_ONES:
        return True  # "a nice clean cutting", "a clean line between"
    at = s.end + (talk.texts[s.end : s.end + 1] in _SHADES)
    if mentions.colours_in(s.end, at + 1):
        return True
    return any(p.label not in ("leaf", "stem", "bud") for p in mentions.parts_in(at, at + 1))


_CLEAN_ONES = frozenset(
    "plant plants leaf leaves foliage growth bill grower healthy little one thing and as stem "
    "stems but all right underneath on to from with top too mind so clean stock specimen old young "
    "through throughout".split()
)
_SHADES = tuple(
    (w,) for w in "pale deep soft bright rich dark light clear cool warm fresh strong crisp".split()
)


def _unmarked_colour(mentions: Mentions, s: Statement) -> bool:
    """ "soft mauve all over, not a mark on it": the colour is without markings."""
    talk = mentions.talk
    if s.value != "clean" or not set(talk.texts[s.start : s.end + 1]) & _MARKS:
        return False
    low = max(talk.sentence(s.start)[0], s.start - _WITHIN)
    if any(p.label == "leaf" for p in mentions.parts_in(low, s.start)):
        return False
    if mentions.vocabulary.classes["flaw"] & set(talk.texts[s.start : s.end + 3]):
        return False
    return bool(mentions.colours_in(low, s.start))


_MARKS = frozenset({"mark", "marks", "spot", "spots", "speck", "specks", "dot", "line"})
