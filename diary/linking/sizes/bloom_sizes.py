"""How large the bloom is in a word, where no flower is named beside it.

"call it a small one" after the bloom's inches, "big double", "tiny wee things"; not "a big
one" of the plant, and not "the truss is a good size".
"""

from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_TRAIT = "bloom_size"
_FORMS = frozenset(
    {"double", "doubles", "semi", "single", "singles", "trumpet", "trumpets", "star", "stars"}
)
_NEAT = frozenset("neat tight tidy frilly round flat fully loose rather pretty perfect".split())
_ONES = frozenset(
    {"one", "ones", "un", "uns", "thing", "things", "affair", "fellow", "fella", "lad"}
)
_ENDS_IN = frozenset({"for", "and", "but", "really", "too", "with", "mind", "so"})
_SIZED = frozenset("size sized sizes side plate plates saucer saucers".split())
_GIANTS = frozenset({"whopper", "whoppers", "monster", "monsters", "giants", "things"})
_SUPERLATIVES = frozenset({"biggest", "largest", "smallest", "tiniest"})
_BACK, _ASIDE = 16, 8
_LIKENED_WITHIN = 5  # "like a row of little trumpets"


def of_something_else(mentions: Mentions, found: Found) -> bool:
    """ "the truss is a good size": the word is said of a head, a plant, a leaf or a stem."""
    texts = mentions.talk.texts
    if found.label.startswith(_TRAIT) and texts[found.start - 2 : found.start] == ("not", "the"):
        return True  # "not the biggest flower"
    if found.label.startswith(_TRAIT) and _only_a_shape(mentions, found):
        return True
    low, high = mentions.talk.sentence(found.start)
    if (
        found.label.startswith(_TRAIT)
        and texts[found.start] in _SUPERLATIVES
        and mentions.lengths_in(low, high)
    ):
        return True  # "biggest bloom I could find was fifty-seven millimetres"
    if not found.label.startswith(_TRAIT) or texts[found.end - 1] not in _SIZED | _GIANTS:
        return False
    if texts[found.end : found.end + 1] in (("flower",), ("flowers",), ("bloom",), ("blooms",)):
        return False
    low = mentions.talk.sentence(found.start)[0]
    nouns = mentions.vocabulary.subjects.find(texts, low, found.start)
    return bool(nouns) and nouns[-1].label != "bloom"


def _only_a_shape(mentions: Mentions, found: Found) -> bool:
    """ "as round as a dinner plate", "the head's the size of a teacup": no size of the bloom."""
    texts = mentions.talk.texts
    before = texts[max(0, found.start - 4) : found.start]
    if before[-1:] == ("a",) and before[-2:-1] == ("as",):
        return not _BROAD & set(before)
    low = max(mentions.talk.sentence(found.start)[0], found.start - 6)
    nouns = mentions.vocabulary.subjects.find(texts, low, found.start)
    return texts[found.start] == "size" and bool(nouns) and nouns[-1].label in ("head", "leaf")


_BROAD = frozenset("big large wide broad huge great good".split())


def sizes_without_a_flower(mentions: Mentions) -> list[Statement]:
    """Size words of a pronoun or of a form, where the talk is of the bloom."""
    vocabulary = mentions.vocabulary
    found = []
    for f in mentions.phrases(vocabulary.near_terms, vocabulary.never_terms):
        if not f.label.startswith(_TRAIT):
            continue
        texts = mentions.talk.texts
        end = f.end
        while any(again.start == end for again in _sizes(mentions, end)):
            end += 1
        neat = end + (texts[end : end + 1] != () and texts[end] in _NEAT)
        following = texts[neat : neat + 1]
        likened = "like" in texts[max(0, f.start - _LIKENED_WITHIN) : f.start]
        form = following and following[0] in _FORMS and not likened
        one = following and following[0] in _ONES and _of_bloom(mentions, f)
        alone = _closes(mentions, end) and _these_are(mentions, f) and _of_bloom(mentions, f)
        alone = alone or (_closes(mentions, end) and _so_it_is(mentions, f))
        measured = _beside_its_measure(mentions, f, end)
        if form or one or alone or measured:
            term = vocabulary.term_table[f.label]
            found.append(
                Statement(
                    trait=_TRAIT,
                    value=term.value,
                    start=f.start,
                    end=end if alone or measured else end + 1,
                    rule="a size of the bloom that the talk is of",
                    score=0.84,
                )
            )
    return found


def _beside_its_measure(mentions: Mentions, f: Found, end: int) -> bool:
    """ "small, mind, an inch and a bit"; not "small, mind, ten inches tall"."""
    talk = mentions.talk
    if talk.texts[end : end + 1] == ("for",) and talk.clause(f.start)[1] - end <= 4:
        end = talk.clause(f.start)[1]  # "large for its class: fifty-two millimetres"
    minding = talk.texts[end : end + 1] in _MINDING
    start, within = f.start, _MEASURE_WITHIN
    while start > 0 and talk.texts[start - 1] in _DEGREES and not talk.tokens[start - 1].mark:
        start -= 1
    opens = talk.clause(start)[0] == start or talk.texts[start - 1 : start] == ("and",)
    if not talk.punctuated:
        opens = start < f.start  # "single flower quite small about an inch"
    elif talk.sentence(start) == (start, end):
        within += _FRAGMENT_MORE  # "Tiny. Couldn't be more than two centimetres."
    if not minding and not (opens and (talk.tokens[end - 1].mark or not talk.punctuated)):
        return False
    before = mentions.vocabulary.subjects.find(talk.texts, max(0, f.start - 4), f.start)
    petals = {"petal", "petals"}
    if any(n.label != "bloom" and talk.texts[n.start] not in petals for n in before):
        return False
    near = [x for x in mentions.lengths_in(end, end + within) if x.mm <= _WIDEST]
    if not near:
        return False
    stop = min(len(talk.texts), near[0].end + 3)
    said = mentions.vocabulary.dimensions.find(talk.texts, end, stop)
    named = mentions.vocabulary.subjects.find(talk.texts, end, stop)
    return all(d.label == "across" for d in said) and all(n.label == "bloom" for n in named)


_MINDING = tuple((w,) for w in "mind though but only just".split())
_MEASURE_WITHIN, _FRAGMENT_MORE, _WIDEST = 5, 4, 110
_DEGREES = frozenset("quite very rather really pretty so ever fairly proper only that".split())


def _sizes(mentions: Mentions, at: int) -> list[Found]:
    found = mentions.vocabulary.near_terms.find(mentions.talk.texts, at, at + 1)
    return [f for f in found if f.label.startswith(_TRAIT)]


def _closes(mentions: Mentions, end: int) -> bool:
    talk = mentions.talk
    return (
        end >= len(talk.texts)
        or bool(talk.tokens[end - 1].mark)
        or talk.texts[end] in _ENDS_IN
        or talk.clause(end)[0] == end
    )


def _these_are(mentions: Mentions, f: Found) -> bool:
    """ "these are big for an ivy", "they're enormous"; one "it" may be the plant."""
    before = mentions.talk.texts[max(0, f.start - 4) : f.start]
    return bool({"these", "they", "those"} & set(before)) and bool({"are", "'re"} & set(before))


def _so_it_is(mentions: Mentions, f: Found) -> bool:
    """ "the flower's the size of a sixpence, so it's tiny": of the bloom just spoken of."""
    before = mentions.talk.texts[max(0, f.start - 4) : f.start]
    told = any(before[i : i + 3] in _SO_IT_IS for i in range(len(before)))
    return told and _of_bloom(mentions, f)


_SO_IT_IS = tuple(
    (so, it, be)
    for so in ("so", "and", "but")
    for it in ("it", "that")
    for be in ("is", "'s")
    if (so, it) != ("and", "that")
)


def _of_bloom(mentions: Mentions, f: Found) -> bool:
    """Whether the bloom was named or measured last, and nothing else since."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    low = max(0, f.start - _BACK)
    if talk.punctuated:
        low = max(low, talk.sentence(max(0, talk.sentence(f.start)[0] - 1))[0])
    refs = [r.end for r in mentions.refs_in(low, f.start) if r.cut is None]
    low = max([low, *refs])
    nouns = vocabulary.subjects.find(talk.texts, low, f.start)
    nouns = [n for n in nouns if n.label != "nothing"]
    if "in" in talk.texts[max(0, f.start - 3) : f.start]:
        return False  # "it's in a bigger one"
    if nouns:
        return nouns[-1].label == "bloom"
    terms = vocabulary.terms.find(talk.texts, low, f.start)
    of_plant = [t for t in terms if t.label.startswith(("bloom_form", "habit", "foliage"))]
    forms = [t for t in of_plant[-1:] if t.label.startswith("bloom_form")]
    near = [x for x in mentions.lengths_in(low, f.start + _ASIDE) if x.mm <= 320]
    tall = vocabulary.dimensions.find(talk.texts, low, min(len(talk.texts), f.start + _ASIDE))
    if of_plant and not forms:
        return False
    return bool(forms) or (bool(near) and not any(d.label in ("tall", "long") for d in tall))
