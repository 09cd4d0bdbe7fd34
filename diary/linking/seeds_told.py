"""Seeds sown and germinated: "I sowed ten seeds and three came up", "Eleven seed in. Four up."

Every number of seed talk is asked what stands beside it: a verb of sowing or the seeds
themselves, or words that say they came up; "of those" and "out of twelve" hold two together.
"""

from diary.linking.second_thoughts import repairs_in
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.numerals import Quantity, quantity
from diary.reading.phrases import Found, PhraseBook
from diary.reading.scope import Habit

SOWN, GERMINATED = "count_seeds_sown", "count_germinated"
_UNSAID = frozenset({Habit.NOT_RECALLED, Habit.WISH, Habit.QUESTION})
_TALK_BEFORE, _TALK_AFTER = 34, 16
_SEED_TALK = frozenset(
    "seed seeds sowed sown sow sowing germinated germination germinate pod pods".split()
)
_MOST = 999
_NO_COUNT_BEFORE = frozenset("number no page shelf row year day not never".split())
_OF_THEM = frozenset(
    "of o those them these the that which i we he she it they you seed seeds seedlings plants "
    "have has had 've 'd did only ever just all actually so far 's are is was were them_all in "
    "total babies good fat and what".split()
)
_ABOUT = frozenset("about only just the a some around nearly at say maybe all of it them".split())
_SECOND_THOUGHT = 12


def find_seeds(mentions: Mentions) -> list[Statement]:
    """All counts of seeds sown and germinated."""
    found: list[Statement] = []
    for amount in _amounts(mentions):
        if mentions.scopes.habits(amount.start) & _UNSAID:
            continue
        if _came_up(mentions, amount) or _got(mentions, amount, found):
            found.append(_told(mentions, GERMINATED, amount))
        elif _was_sown(mentions, amount):
            found.append(_told(mentions, SOWN, amount))
    return [*_settled(mentions, found), *_whole_lot(mentions, found)]


def _got(mentions: Mentions, amount: Quantity, found: list[Statement]) -> bool:
    """ "I planted forty and only got six": a number got, right after a number sown."""
    sown = [s for s in found if s.trait == SOWN and amount.start - s.end <= _SECOND_THOUGHT]
    got = _precedes(mentions, amount, mentions.vocabulary.germinated_before)
    return bool(sown) and got is not None and _ends(mentions, amount.end)


def _told(mentions: Mentions, trait: str, amount: Quantity) -> Statement:
    return Statement(
        trait=trait,
        value=int(amount.value),
        unit="count",
        start=amount.start,
        end=min(amount.end + 1, len(mentions.talk.texts)),
        rule="seeds sown" if trait == SOWN else "seeds germinated",
        score=0.93,
    )


def _amounts(mentions: Mentions) -> list[Quantity]:
    """The whole numbers of seed talk that count nothing else."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    sized = {i for x in mentions.lengths for i in range(x.start, x.end)}
    found: list[Quantity] = []
    at = 0
    while at < len(talk.texts):
        amount = None if mentions.masked[at] or at in sized else quantity(talk.texts, at)
        if amount is None:
            at += 1
            continue
        at = amount.end
        other = vocabulary.other_units.at(talk.texts, amount.end)
        marked = not amount.start or talk.tokens[amount.start - 1].mark
        before = "" if marked else talk.texts[amount.start - 1]
        if (
            amount.value == int(amount.value)
            and 0 < amount.value <= _MOST
            and (other is None or talk.texts[amount.end] in _OF_THEM)
            and before not in _NO_COUNT_BEFORE
            and _seed_talk(mentions, amount.start)
        ):
            found.append(amount)
    return found


def _seed_talk(mentions: Mentions, at: int) -> bool:
    texts = mentions.talk.texts[max(0, at - _TALK_BEFORE) : at + _TALK_AFTER]
    return bool(_SEED_TALK & set(texts)) or bool(
        mentions.vocabulary.sown_before.find(texts) or mentions.vocabulary.sown_after.find(texts)
    )


def _follows(mentions: Mentions, amount: Quantity, book: PhraseBook) -> Found | None:
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
        if inner is not None and talk.texts[at - 1] in ("of", "the", "those"):
            at = inner.end  # "one of the twelve came up"
        elif talk.texts[at] in _OF_THEM:
            at += 1
        else:
            return None
    return None


def _precedes(mentions: Mentions, amount: Quantity, book: PhraseBook) -> Found | None:
    """A phrase of the book right before the number, "about" and the like between."""
    talk = mentions.talk
    low = max(0, amount.start - 8)
    fits = [
        f
        for f in book.find(talk.texts, low, amount.start)
        if set(talk.texts[f.end : amount.start]) <= _ABOUT
        and not talk.between(f.start, amount.start, (".", "?"))
    ]
    return fits[-1] if fits else None


def _came_up(mentions: Mentions, amount: Quantity) -> bool:
    """ "three came up", "got 9 up", "up, five", "I ended up with two seedlings"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    of_whole = talk.texts[max(0, amount.start - 2) : amount.start]
    part = of_whole[-1:] == ("of",) or of_whole in (("of", "the"), ("of", "those"))
    cue = _follows(mentions, amount, vocabulary.germinated)
    if part and cue is not None and _whole_after(mentions, cue, amount):
        return True  # "one of five that came up from eighteen seeds"
    if part or talk.texts[amount.start - 1 : amount.start] == ("from",):
        return False
    inner = quantity(talk.texts, amount.end + 1)
    if cue is not None and inner is not None and _whole_after(mentions, cue, inner):
        return False
    if _out_of(mentions, amount):
        return True
    if cue is not None and not _heads_the_next(mentions, amount, cue):
        bare = talk.texts[cue.start : cue.end] == ("came",)
        return not _pointed_at(mentions, amount) and (not bare or _ends(mentions, cue.end))
    if _pointed_at(mentions, amount):
        return False
    if _precedes(mentions, amount, vocabulary.germinated_before) is None:
        return False
    rest = talk.texts[amount.end : amount.end + 3]
    return bool({"seedlings", "seedling", "plants", "babies", "youngsters"} & set(rest[:2])) or (
        _ends(mentions, amount.end)
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
    return (
        talk.between(amount.end - 1, cue.start, (",",))
        and quantity(talk.texts, cue.end) is not None
    )


def _pointed_at(mentions: Mentions, amount: Quantity) -> bool:
    """ "that cherry one came up last" points at a plant, "just the one germinated" counts."""
    texts = mentions.talk.texts
    if texts[amount.start : amount.end] != ("one",):
        return False
    lead = set(texts[max(0, amount.start - 2) : amount.start])
    if lead & {"every", "last", "single", "each", "this", "that"}:
        return True
    return not (
        lead & {"only", "just"} or texts[amount.end : amount.end + 1] in (("of",), ("out",))
    )


def _ends(mentions: Mentions, end: int) -> bool:
    talk = mentions.talk
    return (
        end == len(talk.texts)
        or bool(talk.tokens[end - 1].mark)
        or (talk.clause(end)[0] == end or talk.texts[end] in ("and", "but", "so", "of"))
    )


def _out_of(mentions: Mentions, part: Quantity) -> bool:
    """ "six from eleven seeds", "9 out of 12 that I sowed"."""
    texts = mentions.talk.texts
    at = part.end
    if texts[at : at + 1] in (("seedling",), ("seedlings",), ("plants",), ("plant",)):
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
    return whole is not None and whole.value >= part.value and _is_seed(mentions, whole)


def _is_seed(mentions: Mentions, amount: Quantity) -> bool:
    talk, vocabulary = mentions.talk, mentions.vocabulary
    return (
        _counts_seeds(mentions, amount)
        or _follows(mentions, amount, vocabulary.sown_after) is not None
        or _follows(mentions, amount, vocabulary.germinated) is not None
        or (
            _ends(mentions, amount.end)
            and bool(_SEED_TALK & set(talk.texts[max(0, amount.start - 14) : amount.start]))
        )
    )


def _counts_seeds(mentions: Mentions, amount: Quantity) -> bool:
    texts = mentions.talk.texts
    between = mentions.vocabulary.between["seeds"]
    for i in range(amount.end, min(amount.end + 4, len(texts))):
        if texts[i] in ("seed", "seeds"):
            return texts[i + 1 : i + 2] not in (("pods",), ("pod",), ("heads",), ("trays",))
        if texts[i] not in between:
            return False
    return False


def _was_sown(mentions: Mentions, amount: Quantity) -> bool:
    """ "I sowed 16 of that cross", "twenty-four seeds went in", "out of 12 I got 9 up"."""
    talk, vocabulary = mentions.talk, mentions.vocabulary
    if talk.texts[amount.start : amount.end] == ("one",):
        return False
    if _precedes(mentions, amount, vocabulary.sown_before) is not None:
        return not _starts_other(mentions, amount)
    if _follows(mentions, amount, vocabulary.sown_after) is not None:
        return True
    texts = talk.texts
    lead = texts[max(0, amount.start - 2) : amount.start]
    whole = (
        lead[-1:] == ("of",)
        or lead in (("of", "the"), ("of", "those"), ("from", "the"))
        or lead[-1:] == ("from",)
    )
    if whole and not _counts_seeds(mentions, amount) and not _out(mentions, amount):
        books = (vocabulary.germinated, vocabulary.sown_after)
        whole = any(_follows(mentions, amount, book) is not None for book in books)
    if whole and _is_seed(mentions, amount):
        return _part_near(mentions, amount)
    if not _counts_seeds(mentions, amount):
        return False
    low = max(0, talk.sentence(amount.start)[0] - 1, amount.start - 6)
    high = min(len(texts), amount.end + 13)
    return bool(
        vocabulary.sown.find(texts, low, high)
        or vocabulary.germinated.find(texts, amount.end, high)
    )


def _out(mentions: Mentions, whole: Quantity) -> bool:
    """ "out of 12", "from the eleven"; "of the seventeen this is the one" is none."""
    lead = mentions.talk.texts[max(0, whole.start - 3) : whole.start]
    return "out" in lead or "from" in lead


def _part_near(mentions: Mentions, whole: Quantity) -> bool:
    """Whether a number that came up of the whole, or words that they did, stand beside it."""
    talk = mentions.talk
    low, high = max(0, whole.start - 8), min(len(talk.texts), whole.end + 10)
    return bool(mentions.vocabulary.germinated.find(talk.texts, low, high)) or any(
        quantity(talk.texts, i) for i in range(low, whole.start)
    )


def _starts_other(mentions: Mentions, amount: Quantity) -> bool:
    """ "sown two years ago", "put in three pots": the number counts another thing."""
    texts = mentions.talk.texts
    return mentions.vocabulary.other_units.at(texts, amount.end) is not None or texts[
        amount.end : amount.end + 1
    ] in (("cuttings",), ("per",), ("to",), ("inch",), ("days",))


def _settled(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """ "5 came up no it was 6 came up": the first is taken back."""
    kept: list[Statement] = []
    for s in found:
        last = next((k for k in reversed(kept) if k.trait == s.trait), None)
        if (
            last is not None
            and s.start - last.end <= _SECOND_THOUGHT
            and any(last.end <= a < s.start for a, _ in repairs_in(mentions, last.end, s.start))
        ):
            kept.remove(last)
        kept.append(s)
    return kept


def _whole_lot(mentions: Mentions, found: list[Statement]) -> list[Statement]:
    """ "I put in seven and every one of them came up": as many as were sown."""
    told: list[Statement] = []
    for cue in mentions.vocabulary.germinated_all.find(mentions.talk.texts):
        sown = [
            s for s in found if s.trait == SOWN and s.end <= cue.start and cue.start - s.end <= 16
        ]
        if sown and isinstance(sown[-1].value, int):
            amount = Quantity(cue.start, cue.end - 1, sown[-1].value)
            told.append(_told(mentions, GERMINATED, amount))
    return told
