"""What stands beside a number in talk of seeds: the seeds, or words that say they came up.

"three came up", "up, five", "9 out of 12 that I sowed"; not "that cherry one came up last".
"""

from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity
from diary.reading.phrases import Found, PhraseBook

SEED_TALK = frozenset(
    "seed seeds sowed sown sow sowing germinated germination germinate pod pods".split()
)
OF_THEM = frozenset(
    "of o 'em em those them these the that which i we he she it they you seed seeds seedlings "
    "plants have has had 've 'd did only ever just all actually so far 's are is was were "
    "them_all in total babies good fat and what".split()
)
_ABOUT = frozenset(
    "about only just the a some around nearly at say maybe all of it them that this one cross "
    "heaps loads lots plenty er um i think reckon must have been good full".split()
)


_YOUNG = tuple(
    (w,) for w in "seedling seedlings plants plant survivors survivor babies youngsters".split()
)
_OF_THE = (("of", "the"), ("of", "those"), ("of", "these"), ("of", "my"))


def _is_no_part(mentions: Mentions, at: int) -> bool:
    """Whether the word is no part of a plant: "the beggars", not "the heads"."""
    vocabulary, texts = mentions.vocabulary, mentions.talk.texts
    books = (vocabulary.subjects, vocabulary.counted, vocabulary.other_units, vocabulary.parts)
    return not any(book.at(texts, at) for book in books)


def follows(mentions: Mentions, amount: Quantity, book: PhraseBook) -> Found | None:
    """A phrase of the book after the number, with only "of them have" and the like between."""
    talk = mentions.talk
    at = amount.end
    while at < len(talk.texts) and at - amount.end < 7:
        if talk.between(amount.end - 1, at, (".", "?")):
            return None
        found = book.at(talk.texts, at)
        if found is not None:
            return found
        inner = quantity(talk.texts, at)
        if talk.texts[at - 2 : at] in _OF_THE and inner is None and _is_no_part(mentions, at):
            at += 1  # "nineteen of the beggars grew"
            continue
        between = talk.texts[amount.end : at]
        of_whole = "of" in between and not _TURNS & set(between)
        if inner is not None and of_whole and talk.texts[at - 1] in ("of", "the", "those"):
            at = inner.end  # "one of the twelve came up"
        elif talk.texts[at] in OF_THEM:
            at += 1
        else:
            return None
    return None


_TURNS = frozenset({"and", "but", "only"})  # "a dozen of those and only the two came up"


def precedes(mentions: Mentions, amount: Quantity, book: PhraseBook) -> Found | None:
    """A phrase of the book right before the number, "about" and the like between."""
    talk = mentions.talk
    low = max(0, amount.start - 8)
    fits = [
        f
        for f in book.find(talk.texts, low, amount.start)
        if _about(talk.texts[f.end : amount.start])
        and not talk.between(f.start, amount.start, (".", "?"))
    ]
    return fits[-1] if fits else None


def _about(between: tuple[str, ...]) -> bool:
    """ "about", "the guts of", "the best part of"."""
    if between[-1:] == ("of",) and between[0] in ("the", "a", "upwards"):
        return len(between) <= 4
    return set(between) <= _ABOUT


def ends(mentions: Mentions, end: int) -> bool:
    """Whether the phrase is over there, so that the number counts nothing named after it."""
    talk = mentions.talk
    return (
        end == len(talk.texts)
        or bool(talk.tokens[end - 1].mark)
        or (talk.clause(end)[0] == end or talk.texts[end] in ("and", "but", "so", "of"))
    )


def counts_seeds(mentions: Mentions, amount: Quantity) -> bool:
    """ "ten fat seeds"; not "ten seed pods"."""
    texts = mentions.talk.texts
    between = mentions.vocabulary.between["seeds"]
    for i in range(amount.end, min(amount.end + 4, len(texts))):
        if texts[i] in ("seed", "seeds"):
            return texts[i + 1 : i + 2] not in (("pods",), ("pod",), ("heads",), ("trays",))
        if texts[i] not in between:
            return False
    return False


def is_seed(mentions: Mentions, amount: Quantity) -> bool:
    """Whether the number is one of seeds, named or plain from what is told of them."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    return (
        counts_seeds(mentions, amount)
        or follows(mentions, amount, vocabulary.sown_after) is not None
        or follows(mentions, amount, vocabulary.germinated) is not None
        or (
            ends(mentions, amount.end)
            and bool(SEED_TALK & set(talk.texts[max(0, amount.start - 14) : amount.start]))
        )
    )


def came_up(mentions: Mentions, amount: Quantity) -> bool:
    """ "three came up", "got 9 up", "up, five", "I ended up with two seedlings"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    of_whole = talk.texts[max(0, amount.start - 2) : amount.start]
    part = of_whole[-1:] == ("of",) or of_whole in (("of", "the"), ("of", "those"))
    cue = follows(mentions, amount, vocabulary.germinated)
    if part and cue is not None and _whole_after(mentions, cue, amount):
        return True  # "one of five that came up from eighteen seeds"
    if (
        of_whole == ("one", "of")
        and cue is not None
        and ({"to", "that", "which"} & set(talk.texts[amount.end : cue.end]))
    ):
        return True  # "this was one of four to come up"
    if talk.texts[amount.start - 2 : amount.start] in (("all", "but"), ("all", "bar")):
        return False
    if part or talk.texts[amount.start - 1 : amount.start] == ("from",):
        return False
    inner = quantity(talk.texts, amount.end + 1)
    if cue is not None and inner is not None and _whole_after(mentions, cue, inner):
        return False
    if _out_of(mentions, amount):
        return True
    if cue is not None and not _heads_the_next(mentions, amount, cue):
        bare = talk.texts[cue.start : cue.end] == ("came",)
        return not _pointed_at(mentions, amount) and (not bare or ends(mentions, cue.end))
    if _pointed_at(mentions, amount):
        return False
    if precedes(mentions, amount, vocabulary.germinated_before) is None:
        return False
    rest = talk.texts[amount.end : amount.end + 3]
    return bool({"seedlings", "seedling", "plants", "babies", "youngsters"} & set(rest[:2])) or (
        ends(mentions, amount.end)
        and talk.texts[amount.start - 1] not in ("got", "had", "with", "me", "to", "of")
    )


def _whole_after(mentions: Mentions, cue: Found, part: Quantity) -> bool:
    texts = mentions.talk.texts
    at = cue.end
    while texts[at : at + 1] and texts[at] in ("from", "out", "of", "the"):
        at += 1
    whole = quantity(texts, at) if at > cue.end else None
    return whole is not None and whole.value > part.value


def _heads_the_next(mentions: Mentions, amount: Quantity, cue: Found) -> bool:
    """The "up" of "twelve; up, five" belongs to the five."""
    talk = mentions.talk
    sown = precedes(mentions, amount, mentions.vocabulary.sown_before) is not None
    told = talk.between(amount.end - 1, cue.start, (",",)) or (sown and not talk.punctuated)
    return told and quantity(talk.texts, cue.end) is not None


def _pointed_at(mentions: Mentions, amount: Quantity) -> bool:
    """ "that cherry one came up last" points at a plant, "just the one germinated" counts."""
    texts = mentions.talk.texts
    if texts[amount.start : amount.end] != ("one",):
        return False
    lead = set(texts[max(0, amount.start - 2) : amount.start])
    if lead & {"every", "last", "single", "each", "this", "that"}:
        return True
    if "the" in lead and lead & {"and", "but", "for"}:
        return False  # "I sowed all three, and the one came"
    return not (
        lead & {"only", "just"} or texts[amount.end : amount.end + 1] in (("of",), ("out",))
    )


def _out_of(mentions: Mentions, part: Quantity) -> bool:
    """ "six from eleven seeds", "9 out of 12 that I sowed"."""
    texts = mentions.talk.texts
    at = part.end
    if texts[at : at + 1] in _YOUNG:
        at += 1
    if texts[at : at + 2] == ("out", "of"):
        at += 2
    elif texts[at : at + 1] in (("from",), ("of",)):
        at += 1
    else:
        return False
    while texts[at : at + 1] in (("the",), ("those",), ("that",), ("a",), ("sowing",), ("of",)):
        at += 1
    whole = quantity(texts, at)
    return whole is not None and whole.value >= part.value and is_seed(mentions, whole)
