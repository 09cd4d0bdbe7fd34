"""Words of looks and health that are said of no plant: of a pot, the bench, the hour, a kind.

"the pot's clean", "a double page", "it's late, I'll have my tea", "we're running behind",
"I could never strike the bushy sort", "a blotch that spreads". Leaves alone "a clean plant in a
dirty pot" and "late, this one".
"""

from diary.linking.statement import Statement
from diary.linking.traits.clean_of_a_colour import clean_of_a_colour
from diary.linking.traits.found_clean import excused
from diary.linking.traits.kinds_of_plants import of_another
from diary.reading.mentions import Mentions

_TRAITS = frozenset(
    {"bloom_form", "habit", "flowering", "health", "foliage", "bloom_size", "scent"}
)
_BACK = frozenset({"it", "this", "she", "he", "that", "plant", "they", "these", "one", "flower"})
_VERBS = frozenset(
    "is 's are was were 're has have looks look gets got stands sits comes came grows hangs 've "
    "goes went stays wants needs smell smells stink stinks".split()
)
_BEFORE_A_NOUN = frozenset(
    "whose the my our your his a an this that these those both her every".split()
)
_FIXED = frozenset({"an", "a", "little", "big", "new", "old", "whole", "other", "good", "nice"})
_I_MUST = (("'ll",), ("must",), ("should",), ("have",), ("'d",), ("need",))
_I_HAVE = tuple((i, have) for i in ("i", "we") for have in ("'ve", "have", "'d", "'m", "am"))
_POSTURES = frozenset("stand stood standing sit sat kneel bend lie am 'm feel felt".split())
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
        or of_another(mentions, s)
        or _of_a_marking(mentions, s)
        or clean_of_a_colour(mentions, s)
        or excused(mentions, s)
    )


def _before_a_thing(mentions: Mentions, s: Statement) -> bool:
    """ "a double page", "an early bus", "a clean pot"; not "it's double, the pot is full"."""
    talk = mentions.talk
    if s.end >= len(talk.texts) or talk.tokens[s.end - 1].mark:
        return False
    if talk.texts[s.end - 1] in _TOWARDS:
        return False  # "it'd take over the | greenhouse"
    if s.trait == "flowering" and talk.texts[s.end] in mentions.vocabulary.classes["season"]:
        return False  # "never without a flower | winter or summer"
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
        if talk.texts[i - 1] == "its" or talk.texts[max(low, i - 3)] in things:
            return talk.texts[i - 1] != "its"  # "the ink on the label", not "its neighbour"
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
    texts = mentions.talk.texts
    if s.value == "long" and set(texts[s.start - 2 : s.start + 1]) & {"i", "we"}:
        return True  # "I've been at it since ten"
    if s.trait != "flowering" or s.value not in ("early", "late"):
        return False
    if texts[s.end : s.end + 1] in (("i",), ("we",)) and texts[s.end + 1 : s.end + 2] in _I_MUST:
        return True  # "it's late, I'll have my tea"
    low = max(mentions.talk.clause(s.start)[0], s.start - 5)
    return any(
        texts[i] in _WE and texts[i + 1] in _AM and texts[i + 2 : i + 3] not in (("it",), ("one",))
        for i in range(low, s.start)
        if i + 1 <= s.start
    )


def _of_a_marking(mentions: Mentions, s: Statement) -> bool:
    """ "a blotch that spreads to the rim", "an edge as neat as a hem": said of the marking."""
    talk = mentions.talk
    if s.trait != "habit":
        return False
    own = set(talk.texts[s.start : s.end])
    if own & (mentions.vocabulary.classes["plantlike"] | _GROWTH):
        return False
    low = talk.clause(s.start)[0]
    if low > 0 and "as" in talk.texts[s.start : s.end] and s.start - low <= 2:
        low = talk.clause(low - 1)[0]  # "a white eye in each flower, neat as a shirt button"
    found = mentions.parts_in(max(low, s.start - _WITHIN), s.start)
    if "as" in own and low < s.start and _HEADS & set(talk.texts[low : s.start]):
        return True  # "it's a ball, tight as a drum"
    parts = [p for p in found if p.label in _PARTS_OF_FLOWERS | {"bloom", "stem", "leaf"}]
    parts = [p for p in parts if talk.texts[p.end : p.end + 3] != ("of", "the", "pot")]
    if not parts:
        return False
    between = talk.texts[parts[-1].end : s.start]
    if not between and not talk.punctuated:
        return False  # "crimson stripes | proper dwarf"
    if parts[-1].label not in _PARTS_OF_FLOWERS:
        likened = bool({"as", "like"} & set(talk.texts[s.start : s.end]))
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
