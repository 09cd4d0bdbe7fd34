"""Which part of the plant a colour belongs to, and markings without a colour.

In order: the noun right after it ("cream throat"), "a flash of maroon", the part before it
("the throat is white", "veined in cerise"), a part in a phrase after it ("mauve on the
bottom petals"), the part the sentence began with; else the flower as a whole.
"""

from dataclasses import dataclass, replace

from diary.linking.statement import Statement
from diary.reading.colours import ColourHeard
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

# Words that may stand between a colour and the part it is the colour of.
_ADJECTIVES = frozenset(
    "little tiny thin fine narrow broad wide bold big great large small clear neat "
    "sharp wire heavy faint slight nice "
    "lovely sort of kind and looking coloured colored shaded tinted edged good strong "
    "central solid distinct soft round "
    "single double frilly ruffled crinkly picotee smudgy smudged feathery star velvety "
    "satin glossy old young opening "
    "two top upper bottom lower wee dinky ragged real spidery blurred irregular even "
    "proper whole fading".split()
)
_COPULA = frozenset(
    "is are was 's 're were a an the more of nearly almost very really quite just sort "
    "kind that what i'd i 'd call would "
    "it it's come comes came out as in with by to all so rather practically pretty much "
    "lovely nice been has have its "
    "this such definitely properly proper real still always now on up and but or also "
    "mostly absolutely nearest thing "
    "to say um uh er well i think reckon suppose guess shading opening fading turning "
    "goes going gone tinged washed "
    "looks look looking nearer closer then only bit little about being another same "
    "beautiful good gorgeous fine "
    "plain simply just splashed stained painted touched edged veined flushed coming strong rather "
    "somewhere between".split()
)
_PREPOSITIONS = frozenset(
    "on in at to across along around round down over inside through up towards all both "
    "from into".split()
)
_PREPOSITION_FILL = frozenset(
    "the each every its all both of a just very lower upper middle right way inside "
    "edges tips two bit end back ends same my top bottom tip face".split()
)
_OF = frozenset({"of"})
_SUBJECT_BREAK = frozenset(
    {
        "it",
        "this",
        "he",
        "she",
        "they",
        "that",
        "flower",
        "flowers",
        "bloom",
        "blooms",
        "plant",
        "with",
        "there",
    }
)
_POINTING = frozenset({"one", "ones"})


DEFAULT_RULE = "a colour with no part: the flower"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Attached:
    part: str
    rule: str
    score: float
    start: int
    end: int
    on: tuple[str, ...] = ()


def find_colour_statements(mentions: Mentions) -> tuple[Statement, ...]:
    """Colours with their parts, and markings for which no colour is given."""
    statements: list[Statement] = []
    coloured: set[tuple[int, str]] = set()
    shared: dict[int, _Attached] = {}
    ordered = mentions.colours
    for n in range(len(ordered) - 1, -1, -1):
        attached = _attach(mentions, ordered, n, shared)
        if attached is None:
            continue
        shared[n] = attached
        colour = ordered[n]
        coloured |= {(f.start, f.label) for f in mentions.parts_in(attached.start, attached.end)}
        statements.append(
            Statement(
                trait="colour",
                value=colour.value,
                part=attached.part,
                modifiers=colour.modifiers,
                on=attached.on,
                start=min(colour.start, attached.start),
                end=max(colour.end, attached.end),
                rule=attached.rule,
                score=attached.score,
            )
        )
    statements = [_with_hint(mentions, s, statements) for s in statements]
    statements += _markings(mentions, coloured)
    return tuple(sorted(statements, key=lambda s: s.start))


def _with_hint(mentions: Mentions, s: Statement, statements: list[Statement]) -> Statement:
    """ "the bottom ones are white with just a hint of lilac": the hint is on the same part."""
    if s.rule != DEFAULT_RULE or "hint" not in s.modifiers:
        return s
    before = [o for o in statements if o.end <= s.start and s.start - o.end <= 4]
    between = mentions.talk.texts[before[0].end : s.start] if before else ()
    if before and before[0].part != "bloom" and set(between) <= {"with", "just", "and", "only"}:
        return replace(s, part=before[0].part)
    return s


def _attach(
    mentions: Mentions, colours: tuple[ColourHeard, ...], n: int, shared: dict[int, _Attached]
) -> _Attached | None:
    talk, colour = mentions.talk, colours[n]
    texts = talk.texts
    follows = texts[colour.end] if colour.end < len(texts) else ""
    marked = bool(talk.tokens[colour.end - 1].mark)
    if not marked and follows in mentions.vocabulary.things:
        return None
    if (
        not marked
        and follows in _POINTING
        and texts[colour.start - 1 : colour.start] in (("the",), ("that",), ("those",))
    ):
        return None
    direct = _noun_after(mentions, colour)
    if direct is not None:
        return direct
    if _of_a_thing(mentions, colour):
        return None
    if not marked and follows in ("and", "or") and n + 1 < len(colours) and n + 1 in shared:
        nxt = colours[n + 1]
        if nxt.start == colour.end + 1 and shared[n + 1].rule == "a colour before its part":
            twin = shared[n + 1]
            return _Attached(
                part=twin.part, rule=twin.rule, score=0.9, start=colour.start, end=twin.end
            )
    of = _marking_of(mentions, colour)
    if of is not None:
        return of
    after = _in_phrase_after(mentions, colour)
    before = _part_before(mentions, colour)
    if before is not None and (after is None or before.score >= after.score):
        return before
    if after is not None:
        return after
    topic = _topic(mentions, colour) or _they(mentions, colour)
    if topic is not None:
        return topic
    return _Attached(
        part="bloom",
        rule=DEFAULT_RULE,
        score=0.76,
        start=colour.start,
        end=colour.end,
    )


def _of_a_thing(mentions: Mentions, colour: ColourHeard) -> bool:
    """ "the label is white": the colour of a thing that is no part of the plant."""
    texts, low = mentions.talk.texts, mentions.talk.clause(colour.start)[0]
    i = colour.start
    while i > low and texts[i - 1] in ("a", "very", "quite", "all", "bright"):
        i -= 1
    said = texts[i - 1 : i] in (("is",), ("'s",), ("are",), ("was",))
    return said and i - 2 >= low and texts[i - 2] in mentions.vocabulary.things


def _noun_after(mentions: Mentions, colour: ColourHeard) -> _Attached | None:
    """ "a dark maroon blotch", "wine coloured feather", "cream throat"."""
    talk = mentions.talk
    for part in mentions.parts_in(colour.end, colour.end + 5):
        gap = range(colour.end, part.start)
        if len(gap) > 3 or talk.between(colour.end - 1, part.start, (".", ",", "?")):
            return None
        if not all(talk.texts[i] in _ADJECTIVES or _is_colour_word(mentions, i) for i in gap):
            return None
        if not _is_of_plant(mentions, part):
            return None
        if "and" in talk.texts[colour.end : part.start] and not any(
            _is_colour_word(mentions, i) for i in gap
        ):
            return None
        follows = talk.texts[part.end : part.end + 1]
        if talk.texts[part.end - 1].endswith("ed") and follows in (("with",), ("in",), ("by",)):
            return None  # "apricot flushed with rose": the flush is rose
        if follows == ("off",):
            return None  # "pulled a couple of brown petals off"
        on = _petals_after(mentions, part.end)
        return _Attached(
            part=part.label,
            rule="a colour before its part",
            score=0.96,
            start=colour.start,
            end=part.end,
            on=on,
        )
    return None


def _is_colour_word(mentions: Mentions, at: int) -> bool:
    return any(at < c.end for c in mentions.colours_in(at - 5, at + 1))


def _petals_after(mentions: Mentions, at: int) -> tuple[str, ...]:
    """The petals on which a marking lies: "blaze on both top petals"."""
    for part in mentions.parts_in(at, at + 5):
        petals = mentions.vocabulary.part_kinds[part.label] == "petals"
        if petals and mentions.talk.texts[at : at + 1] and mentions.talk.texts[at] in _PREPOSITIONS:
            return (part.label,)
    return ()


def _marking_of(mentions: Mentions, colour: ColourHeard) -> _Attached | None:
    """ "a flash of maroon", "an edge in cream", "veined in cerise", "edged with white"."""
    texts = mentions.talk.texts
    i = colour.start
    if i and texts[i - 1] in ("a", "an", "the", "pure"):
        i -= 1
    if i >= 1 and texts[i - 1] in ("of", "in", "with", "by"):
        for part in mentions.parts_in(i - 8, i - 1):
            if part.end == i - 1 and not mentions.talk.tokens[part.end - 1].mark:
                if texts[i - 1] in ("with", "by") and not texts[part.end - 1].endswith("ed"):
                    return None
                return _Attached(
                    part=part.label,
                    rule="a part told with its colour",
                    score=0.93,
                    start=part.start,
                    end=colour.end,
                    on=_petals_after(mentions, colour.end),
                )
    return None


_NOTE_WORDS = 7


def _part_before(mentions: Mentions, colour: ColourHeard) -> _Attached | None:
    """ "the upper petals are a deep burgundy", "a blotch on the top two, nearly black"."""
    talk = mentions.talk
    sentence, stop = talk.sentence(colour.start)
    brief = talk.punctuated and stop - sentence <= _NOTE_WORDS  # "Petal edge, thin, white."
    best: _Attached | None = None
    heads = [
        p
        for p in mentions.parts_in(sentence, colour.start)
        if p.end <= colour.start and _is_of_plant(mentions, p)
    ]
    for n in range(len(heads) - 1, -1, -1):
        part = heads[n]
        head, end = part, part.end
        gap = list(range(end, colour.start))
        if len(gap) > 9:
            break
        if not all(
            talk.texts[i] in _COPULA or (brief and talk.texts[i] in _ADJECTIVES) for i in gap
        ):
            break
        gap_words = {talk.texts[i] for i in gap}
        if {"with"} & gap_words and not ({"edged", "veined", "flushed", "tinged"} & gap_words):
            break
        if {"but", "and"} & gap_words and not ({"is", "'s", "are"} & gap_words):
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
                mentions.vocabulary.part_kinds[before.label] == "marking"
                and between[:1]
                and between[0] in _PREPOSITIONS
                and len(between) <= 4
            ):
                head = before
        if talk.texts[part.start - 1 : part.start] == ("no",) or any(
            t in ("no", "without") for t in talk.texts[max(sentence, head.start - 2) : head.start]
        ):
            break
        score = 0.94 if {"is", "'s", "are", "'re", "was"} & gap_words or len(gap) <= 1 else 0.86
        best = _Attached(
            part=head.label,
            rule="a colour after its part",
            score=score,
            start=head.start,
            end=colour.end,
            on=(part.label,) if head is not part else (),
        )
        break
    return best


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


def _is_of_plant(mentions: Mentions, part: Found) -> bool:
    """Not "the edge of the pot", "keep an eye on it", "a flower is open" counted one by one."""
    texts = mentions.talk.texts
    rest = texts[part.end : part.end + 3]
    if (
        rest[:2] in (("of", "the"), ("of", "my"), ("of", "this"))
        and rest[2:3]
        and rest[2]
        in (
            "pot",
            "bench",
            "bed",
            "shelf",
            "path",
            "house",
            "row",
            "staging",
            "greenhouse",
            "tray",
            "season",
            "bunch",
            "table",
            "month",
            "year",
            "summer",
            "frame",
            "garden",
            "line",
            "day",
            "world",
        )
    ):
        return False
    before = texts[max(0, part.start - 2) : part.start]
    if part.label == "flush" and texts[part.start] == "blush":
        return mentions.vocabulary.colours.at(texts, part.end) is None  # "blush white"
    if part.label == "eye":
        return not (
            before[-1:] in (("my",), ("your",), ("our",), ("his",))
            or (
                (before[-1:] in (("an",), ("half",)) and rest[:1] in (("on",), ("out",)))
                or (
                    texts[max(0, part.start - 3) : part.start]
                    and texts[part.start - 2] in ("keep", "keeping", "weather", "caught")
                )
            )
        )
    if (
        part.label == "blotch"
        and before[-1:] == ("a",)
        and rest[:1] == ("on",)
        and texts[max(0, part.start - 2)] == "not"
    ):
        return False
    return not (
        part.label == "base"
        and texts[part.start : part.start + 1] == ("ground",)
        and rest[:1] == ("floor",)
    )


def _in_phrase_after(mentions: Mentions, colour: ColourHeard) -> _Attached | None:
    """ "mauve on the bottom", "a hint of pink at the edge", "white with ... in the middle"."""
    talk, i = mentions.talk, colour.end
    texts = talk.texts
    if (
        i < len(texts)
        and texts[i] in ("all", "right", "just", "only", "nearly")
        and not talk.tokens[colour.end - 1].mark
    ):
        i += 1
    if i >= len(texts) or texts[i] not in _PREPOSITIONS or talk.tokens[i - 1].mark:
        return None
    j = i + 1
    while j < len(texts) and j - i <= 4:
        part = next(iter(mentions.parts_in(j, j + 1)), None)
        if (
            part is None
            and texts[j] in ("bottom", "top")
            and (
                j + 1 == len(texts)
                or talk.tokens[j].mark
                or texts[j + 1] in ("same", "and", "with")
            )
        ):
            name = "lower petals" if texts[j] == "bottom" else "upper petals"
            return _Attached(
                part=name,
                rule="a colour placed on a part",
                score=0.9,
                start=colour.start,
                end=j + 1,
            )
        if part is not None:
            if not _is_of_plant(mentions, part):
                return None
            label = part.label
            if label == "bloom" and texts[i] in ("on", "in", "to"):
                return _Attached(
                    part="bloom",
                    rule="a colour placed on a part",
                    score=0.88,
                    start=colour.start,
                    end=part.end,
                )
            return _Attached(
                part=label,
                rule="a colour placed on a part",
                score=0.92,
                start=colour.start,
                end=part.end,
            )
        if texts[j] not in _PREPOSITION_FILL or talk.tokens[j].mark:
            return None
        j += 1
    return None


def _topic(mentions: Mentions, colour: ColourHeard) -> _Attached | None:
    """The part that the sentence is about: "the leaves are deeply cut, chartreuse"."""
    talk = mentions.talk
    start, _ = talk.sentence(colour.start)
    if not talk.punctuated:
        clause = talk.clause(colour.start)[0]
        if (
            talk.texts[clause : clause + 2] in (("i", "'d"), ("what", "would"), ("i", "would"))
            and clause > 0
        ):
            start = talk.sentence(clause - 1)[0]
            start = talk.sentence(start - 1)[0] if start and start > clause - 8 else start
    first = next(iter(mentions.parts_in(start, colour.start)), None)
    if first is None or first.label == "bloom" or not _is_of_plant(mentions, first):
        return None
    lead = talk.texts[start : first.start]
    if len(lead) > 4 or any(c.start < first.start for c in mentions.colours_in(start, first.start)):
        return None
    after_part = talk.texts[first.end : first.end + 2]
    told = {"is", "'s", "are", "'re", "has", "'ve", "come"} & set(after_part)
    if talk.punctuated and not told and first.start != start:
        return None
    between = talk.texts[first.end : colour.start]
    others = [p for p in mentions.parts_in(first.end, colour.start) if p.label != first.label]
    if others or (talk.punctuated and (_SUBJECT_BREAK - {"that"}) & set(between)):
        return None
    return _Attached(
        part=first.label,
        rule="a colour of the part spoken of",
        score=0.78,
        start=colour.start,
        end=colour.end,
    )


_PLURALS = frozenset({"bud", "leaf", "upper petals", "lower petals", "stem", "veins", "spots"})
_THEY_REACH = 14


def _they(mentions: Mentions, colour: ColourHeard) -> _Attached | None:
    """ "there are fourteen buds on it, and they're a pale green": they are the buds."""
    talk = mentions.talk
    clause = talk.clause(colour.start)[0]
    words = talk.texts[clause : colour.start]
    if "they" not in words[:3] or "one" in words:
        return None
    before = mentions.parts_in(clause - _THEY_REACH, clause)
    if (
        not before
        or before[-1].label not in _PLURALS
        or not talk.texts[before[-1].end - 1].endswith("s")
    ):
        return None
    return _Attached(
        part=before[-1].label,
        rule="a colour of the parts spoken of as they",
        score=0.8,
        start=colour.start,
        end=colour.end,
    )


def _markings(mentions: Mentions, coloured: set[tuple[int, str]]) -> list[Statement]:
    """ "a broad stripe down each lower petal", "dark feathering", "the veining": no colour."""
    found = []
    for part in mentions.parts:
        if mentions.vocabulary.part_kinds[part.label] != "marking" or not _is_of_plant(
            mentions, part
        ):
            continue
        if (part.start, part.label) in coloured:
            continue
        if not _stands_as_marking(mentions, part):
            continue
        start = part.start
        while (
            start
            and mentions.talk.texts[start - 1]
            in _ADJECTIVES
            | {"dark", "darker", "pale", "paler", "light", "lighter", "deep", "deeper"}
            and not mentions.talk.tokens[start - 1].mark
        ):
            start -= 1
        found.append(
            Statement(
                trait="marking",
                value=part.label,
                start=start,
                end=part.end,
                rule="a marking without a colour",
                score=0.86,
                on=_petals_after(mentions, part.end),
            )
        )
    return found


_MARKING_LEADS = frozenset(
    "a an some the dark darker pale paler light broad bold thin fine heavy faint strong "
    "nice lovely good clear big great "
    "small little wire picotee neat distinct with has got have of more deep deeper bit "
    "deep real lots no two bold no its "
    "slight plain tiny and proper true definite same 's narrow wide upper top prominent "
    "marked darkish blurry smudgy".split()
)


def _stands_as_marking(mentions: Mentions, part: Found) -> bool:
    """Whether the word is used as a marking and in no other sense."""
    talk = mentions.talk
    before = talk.texts[part.start - 1] if part.start else ""
    rest = talk.texts[part.end : part.end + 2]
    word = talk.texts[part.start]
    fresh = part.start == 0 or bool(talk.tokens[part.start - 1].mark)
    if part.label == "edge":
        picotee = talk.texts[part.start : part.end]
        return picotee[0] not in (
            "edge",
            "edges",
            "edged",
            "rim",
            "tipped",
            "border",
            "margin",
            "margins",
            "bordered",
        ) or before in (
            "picotee",
            "wire",
            "thin",
            "narrow",
            "fine",
            "clear",
            "neat",
            "dark",
            "darker",
            "pale",
            "paler",
            "deeper",
            "lighter",
        )
    if part.label in ("star",):
        return before in ("dark", "darker", "a", "clear", "pale", "central") and rest[:1] in (
            ("in",),
            ("pattern",),
            ("at",),
        )
    if part.label == "blotch" and word in (
        "patch",
        "patches",
        "flash",
        "flashes",
        "block",
        "blocks",
        "blaze",
        "flare",
        "flares",
    ):
        return before in (
            "dark",
            "darker",
            "big",
            "great",
            "bold",
            "pale",
            "large",
            "small",
            "clear",
            "strong",
        ) and rest[:1] not in (("of",),)
    if part.label == "spots" and word in ("spot", "dots"):
        return before in ("dark", "darker", "big", "small")
    if part.label == "flush":
        return before in (
            "a",
            "slight",
            "faint",
            "pale",
            "dark",
            "deeper",
            "soft",
            "darker",
            "nice",
        )
    if part.label == "eye" and rest[:1] and rest[0] in ("catching", "catcher", "level"):
        return False
    return before in _MARKING_LEADS or word.endswith("ed") or fresh
