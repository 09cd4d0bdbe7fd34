"""The part of the plant that a colour stands beside: before it, after it, or in a phrase."""

from diary.linking.colours.attached import Attached
from diary.linking.colours.lists import listed
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.set_off import set_off_part
from diary.linking.colours.words import ADJECTIVES, BE, COPULAR
from diary.reading.colours import ColourHeard
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

PREPOSITIONS = frozenset(
    "on in at to across along around round down over inside through up towards all both "
    "from into about near by under".split()
)


PREPOSITION_FILL = frozenset(
    "the each every its all both those these this that of a just very down in on at lower upper "
    "middle right way inside "
    "edges tips two bit end back ends same my top bottom tip face".split()
)


def noun_after(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """ "a dark maroon blotch", "wine coloured feather", "cream throat"."""
    talk = mentions.talk
    set_off = set_off_part(mentions, colour)
    if set_off is not None:
        return Attached(
            part=set_off,
            rule="a colour before its part",
            score=0.9,
            start=colour.start,
            end=colour.end + 1,
        )
    if mentions.colours_in(colour.end, colour.end + 1) and not talk.tokens[colour.end - 1].mark:
        return None  # in captions: "it's salmon | green throat"
    for part in mentions.parts_in(colour.end, colour.end + 5):
        gap = range(colour.end, part.start)
        if len(gap) > 3 or talk.between(colour.end - 1, part.start, (".", ",", "?")):
            return None
        if not all(talk.texts[i] in ADJECTIVES or _is_colour_word(mentions, i) for i in gap):
            return None
        if not is_of_plant(mentions, part) or listed(mentions, colour, part):
            return None
        if gap and talk.texts[colour.end] in _SIZES and not talk.punctuated:
            told = mentions.parts_in(colour.start - 4, colour.start)
            if told and BE & set(talk.texts[told[-1].end : colour.start]):
                return None  # "the back of the petals is yellow | small sort of flower"
        if "and" in talk.texts[colour.end : part.start] and not any(
            _is_colour_word(mentions, i) for i in gap
        ):
            return None
        if not talk.punctuated and _has_its_own(mentions, part.end):
            return None  # "it's magenta | throat's yellow"
        follows = talk.texts[part.end : part.end + 1]
        ended = talk.texts[part.end - 1 : part.end + 1]
        if talk.texts[part.start : part.start + 2] in (("zoned", "in"), ("zoned", "with")):
            return None  # "green zoned with bronze"
        if ended[0].endswith("ed") and ended[1:] in (("with",), ("in",), ("by",)):
            return None  # "apricot flushed with rose": the flush is rose
        if follows == ("off",):
            return None  # "pulled a couple of brown petals off"
        on = petals_after(mentions, part.end)
        return Attached(
            part=part.label,
            rule="a colour before its part",
            score=0.96,
            start=colour.start,
            end=part.end,
            on=on,
        )
    return None


def _has_its_own(mentions: Mentions, at: int) -> bool:
    """Whether a copula and a colour follow: "throat's yellow"; not "edge is it white"."""
    texts = mentions.talk.texts
    if texts[at : at + 1] == () or texts[at] not in BE:
        return False
    own = next(iter(mentions.colours_in(at + 1, at + 4)), None)
    return own is not None and not {"it", "that", "this"} & set(texts[at + 1 : own.start])


_SIZES = frozenset("small big large tiny little great huge medium wee neat good nice".split())


def _is_colour_word(mentions: Mentions, at: int) -> bool:
    return any(at < c.end for c in mentions.colours_in(at - 5, at + 1))


def petals_after(mentions: Mentions, at: int) -> tuple[str, ...]:
    """The petals on which a marking lies: "blaze on both top petals"."""
    for part in mentions.parts_in(at, at + 5):
        petals = mentions.vocabulary.part_kinds[part.label] == "petals"
        if petals and mentions.talk.texts[at : at + 1] and mentions.talk.texts[at] in PREPOSITIONS:
            return (part.label,)
    return ()


_NOTE_WORDS = 7


def part_before(mentions: Mentions, colour: ColourHeard) -> Attached | None:
    """ "the upper petals are a deep burgundy", "a blotch on the top two, nearly black"."""
    talk = mentions.talk
    sentence, stop = talk.sentence(colour.start)
    brief = talk.punctuated and stop - sentence <= _NOTE_WORDS  # "Petal edge, thin, white."
    best: Attached | None = None
    heads = [
        p
        for p in mentions.parts_in(sentence, colour.start)
        if p.end <= colour.start and is_of_plant(mentions, p)
    ]
    for n in range(len(heads) - 1, -1, -1):
        part = heads[n]
        head, end = part, part.end
        gap = list(range(end, colour.start))
        if len(gap) > 9:
            break
        said = _without_amount(_past_it(talk.texts[end : colour.start]))
        if not (_verbless(said) or _plainly_said(said)) and not all(
            word in COPULAR | _HOLDING or word.endswith("ly") or (brief and word in ADJECTIVES)
            for word in said
        ):
            break
        if (said[-2:] in _OVER_IT or said == ("on",)) and mentions.vocabulary.part_kinds[
            part.label
        ] == "marking":
            break  # "a blotch on the lemon": the lemon is what it lies on
        gap_words = {talk.texts[i] for i in gap}
        if {"with"} & gap_words and not ({"edged", "veined", "flushed", "tinged"} & gap_words):
            break
        if (
            {"but", "and"} & gap_words
            and said[-2:] not in _AND_VERY
            and not ({"is", "'s", "are"} & gap_words)
        ):
            break
        if _has_new_subject(talk.texts[part.end : colour.start]):
            break
        if (
            talk.between(part.end - 1, colour.start, (",",))
            and mentions.vocabulary.part_kinds[part.label] == "organ"
            and not ({"is", "'s", "are", "re"} & gap_words)
            and part.label == "bloom"
        ):
            break
        if n and talk.texts[heads[n - 1].end : part.start] in (
            ("of", "the"),
            ("of", "each"),
            ("of", "its"),
        ):
            head = heads[n - 1]  # "the centre of the flower is cream"
        elif n and mentions.vocabulary.part_kinds[part.label] != "marking":
            before = heads[n - 1]
            between = talk.texts[before.end : part.start]
            if (
                (
                    mentions.vocabulary.part_kinds[before.label] == "marking"
                    or before.label == "zone"
                )
                and between[:1]
                and between[0] in PREPOSITIONS
                and between[-1] not in ("all", "it")
                and not mentions.colours_in(before.end, part.start)
                and len(between) <= 6
                and "and" not in between
            ):
                head = before
        if talk.texts[part.start - 1 : part.start] == ("no",) or _without(
            talk.texts[max(sentence, head.start - 2) : head.start]
        ):
            break
        if not gap and head is part and _only_a_place(mentions, part):
            break
        score = 0.94 if {"is", "'s", "are", "'re", "was"} & gap_words or len(gap) <= 1 else 0.86
        best = Attached(
            part=head.label,
            rule="a colour after its part",
            score=score,
            start=colour.start if _apart(mentions, head, colour) else head.start,
            end=colour.end,
            on=(part.label,) if head is not part else (),
        )
        break
    return best


def _only_a_place(mentions: Mentions, part: Found) -> bool:
    """ "just a bead on the stem | white i think": in captions, no more than where something is."""
    talk, i = mentions.talk, part.start
    if talk.punctuated or i < 2 or mentions.vocabulary.part_kinds[part.label] == "marking":
        return False
    where = talk.texts[i - 2 : i]
    return where[0] in ("on", "round", "around", "under", "in") and where[1] in ("the", "its")


_AND_VERY = tuple(("and", w) for w in "very quite rather pretty really nearly almost so".split())
_OVER_IT = tuple((w, "the") for w in ("on", "over", "against", "across", "into", "through"))


def _without(lead: tuple[str, ...]) -> bool:
    """ "no bold | eye"; not "it makes no odds | bottom ones pink"."""
    return lead[-1:] in _NONE or (lead[:1] in _NONE and lead[-1] in ADJECTIVES)


_NONE = (("no",), ("without",))


def _past_it(words: tuple[str, ...]) -> tuple[str, ...]:
    """ "the flush | upon it | lilac"."""
    upon = words[:1] in (("on",), ("upon",), ("to",), ("in",), ("of",))
    return words[2:] if upon and words[1:2] in (("it",), ("him",), ("her",)) else words


def _without_amount(words: tuple[str, ...]) -> tuple[str, ...]:
    """ "holds | a good deal of", "has | lots of": what stands before the amount."""
    if words[-1:] != ("of",):
        return words
    for i in range(len(words) - 2, max(-1, len(words) - 6), -1):
        if words[i] in ("a", "an", "some", "plenty", "lots", "loads", "traces"):
            return words[:i] if i and (set(words[:i]) & _HOLDING) else words
    return words


_HOLDING = frozenset(
    "has have holds hold carries shows wears bears gets takes with got which who that".split()
)


def _plainly_said(words: tuple[str, ...]) -> bool:
    """ "are a | clean scrubbed | rose": after the verb and an article two words of any kind."""
    verb = next((i for i, word in enumerate(words) if word in BE), None)
    if verb is None or not set(words[:verb]) <= COPULAR:
        return False
    rest = words[verb + 1 :]
    article = next((i for i, word in enumerate(rest) if word in ("a", "an")), None)
    if article is None or not set(rest[:article]) <= COPULAR:
        return False
    kinds = rest[article + 1 :]
    return 1 <= len(kinds) <= 2 and all(w.isalpha() and w not in _NO_KIND for w in kinds)


_NO_KIND = PREPOSITIONS | frozenset(
    "with and or but of to for than as i it you he she that this the not no a an is are".split()
)


def _verbless(words: tuple[str, ...]) -> bool:
    """ "and the upper ones a full purple"."""
    return 1 <= len(words) <= 3 and words[0] in ("a", "an") and "with" not in words


def _apart(mentions: Mentions, head: Found, colour: ColourHeard) -> bool:
    """Whether the part is told apart from its colour.

    "bar the eye, and that's cherry" denies no colour; "a yellow edge, or rather gold" has one
    colour before the edge already.
    """
    scopes = mentions.scopes
    denied = Habit.DENIAL in scopes.habits(head.start) - scopes.habits(colour.start)
    return denied or any(
        c.end >= head.start - 1 for c in mentions.colours_in(head.start - 4, head.start)
    )


def _has_new_subject(words: tuple[str, ...]) -> bool:
    """Whether the words between begin a statement about the flower itself: ", it's a ..."."""
    joined = list(words)
    for i, word in enumerate(joined):
        if (
            word in ("it", "this", "he", "she")
            and i + 1 < len(joined)
            and joined[i + 1] in ("is", "'s")
            and i > 0
        ):
            return not ({"call", "say"} & set(joined))
    return False
