"""Markings for which no colour is given: "a broad stripe", "dark feathering", "the veining"."""

from diary.linking.colours.places import petals_after
from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.words import ADJECTIVES
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found
from diary.reading.tokens import QUERY


def markings(mentions: Mentions, coloured: set[tuple[int, str]]) -> list[Statement]:
    """ "a broad stripe down each lower petal", "dark feathering", "the veining": no colour."""
    found = []
    for part in mentions.parts:
        if mentions.vocabulary.part_kinds[part.label] != "marking" or not is_of_plant(
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
            in ADJECTIVES
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
                on=petals_after(mentions, part.end),
            )
        )
    return found


_NOT_THIS = tuple(("this", verb, "not") for verb in ("has", "have", "does", "is"))
_WHERE_SEEN = tuple((w,) for w in "at it this that him her one a an by before".split())
_ANSWERED_NO = tuple((w,) for w in "no not none never nope nothing nowhere".split())
_EXCEPT = frozenset({"bar", "barring", "except", "for", "save", "but", "than", "from"})
_MARKING_LEADS = frozenset(
    "a an some the dark darker pale paler light broad bold thin fine heavy faint strong "
    "nice lovely good clear big great "
    "small little wire picotee neat distinct with has got have of more deep deeper bit "
    "deep real lots no two bold no its "
    "slight plain tiny and proper true definite same 's narrow wide upper top prominent "
    "few many several odd scattered 've and you marked darkish blurry smudgy".split()
)


def _stands_as_marking(mentions: Mentions, part: Found) -> bool:
    """Whether the word is used as a marking and in no other sense."""
    talk = mentions.talk
    before = talk.texts[part.start - 1] if part.start else ""
    rest = talk.texts[part.end : part.end + 2]
    word = talk.texts[part.start]
    fresh = part.start == 0 or bool(talk.tokens[part.start - 1].mark)
    if word == "pencilled":
        return False  # "I've pencilled it in for the show"
    this_not = talk.texts[part.end : part.end + 4]
    if this_not[:3] in _NOT_THIS or (this_not[:1] == ("and",) and this_not[1:] in _NOT_THIS):
        return False  # "she's got feathering, this hasn't"
    if rest[:1] in (("none",), ("nil",), ("zero",), ("absent",), ("missing",)):
        return False  # a card is filled in: "eye none"
    if word == "spotted" and before in ("i", "'ve", "have", "we", "you", "had", "just", "well"):
        return False  # "I've spotted something"
    if word == "spotted" and rest[:1] in _WHERE_SEEN:
        return False  # "the one he spotted at the back"
    if talk.tokens[part.end - 1].mark == QUERY and rest[:1] in _ANSWERED_NO:
        return False  # "Stripes? Not one."
    if before == "the" and part.start > 1 and talk.texts[part.start - 2] in _EXCEPT:
        return False
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
            "hemmed",
            "trimmed",
            "laced",
            "piped",
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
    if part.label == "spots" and word in ("spot", "dots", "dot", "speck", "specks"):
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
