"""Whether a word that can name a part is used of the plant: not "the edge of the pot"."""

from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_LOOKING = tuple((w,) for w in "pin bright beady eagle wide bleary dewy starry hawk boss".split())
_BETTER = tuple((w,) for w in "better keener sharper keen trained practised expert".split())
_CATCHING = frozenset("catch catches caught catching cast casting casts meet meets".split())
_SEEING = tuple((w,) for w in "good sharp keen young better tired sore old bad poor the".split())


def is_of_plant(mentions: Mentions, part: Found) -> bool:
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
    if rest[:1] in _LYING and rest[1:2] in _OWNED and _on_a_thing(mentions, part):
        return False  # "a blue dot on the pot"
    before = texts[max(0, part.start - 2) : part.start]
    if texts[part.end - 1] == "rest" and rest[:1] == ("of",):
        return False  # of the batch, of the day
    if part.label == "bloom" and rest[:1] == ("on",) and {"leaf", "leaves", "stem"} & set(rest[1:]):
        return False  # the wax that rubs off
    if texts[part.start].startswith("smudge") and _smudge_within(mentions, part):
        return False
    if texts[part.start] in ("netting", "net", "web", "mesh") and _hung(mentions, part):
        return False
    if texts[part.start] == "pencilled" and rest[:1] in (("in",), ("for")):
        return bool(mentions.colours_in(part.end + 1, part.end + 4))  # "three crosses pencilled in"
    if part.label == "flush" and texts[part.start] == "blush":
        return mentions.vocabulary.colours.at(texts, part.end) is None  # "blush white"
    if part.label == "eye":
        if rest[:1] == ("for",) or before[-1:] in _LOOKING:
            return False  # "a great eye for these things", "pin-eyed"
        if before[-1:] in _BETTER:
            return False  # "he has the better eye"
        if _CATCHING & set(texts[max(0, part.start - 4) : part.start]):
            return False  # "it catches a judge's eye"
        if before == ("a", "good") and "you" in texts[max(0, part.start - 5) : part.start]:
            return False  # "you've a good eye"
        if texts[part.start] == "eyes" and before[-1:] in _SEEING:
            return False  # "you'd need good eyes for that"
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


def _on_a_thing(mentions: Mentions, part: Found) -> bool:
    texts, at = mentions.talk.texts, part.end + 2
    thing = texts[at : at + 1] != () and texts[at] in mentions.vocabulary.things - _WHERE_IT_STANDS
    marked = mentions.talk.tokens[part.end - 1].mark
    return thing and not marked and not mentions.parts_in(at, at + 1)


# "the reddest eye on the bench" is a plant's
_WHERE_IT_STANDS = frozenset("bench staging house shed table road path field".split())
_LYING = tuple((w,) for w in "on of round under".split())
_OWNED = tuple((w,) for w in "the my your his her our that this a".split())


def _smudge_within(mentions: Mentions, part: Found) -> bool:
    """ "a smudge of yellow in the throat" is the throat's; "a black smudge on each" a blotch."""
    if mentions.talk.texts[part.start - 2 : part.start] == ("of", "a"):
        return True  # "the eye, it's more of a smudge"
    end = min(part.end + 8, mentions.talk.clause(part.start)[1])
    return any(p.label in ("throat", "eye", "centre") for p in mentions.parts_in(part.end, end))


def _hung(mentions: Mentions, part: Found) -> bool:
    """ "looking through the netting", "netting over the cherries"; not "over the top pair"."""
    texts = mentions.talk.texts
    seen = {"through", "under", "behind", "beneath", "off", "inside", "outside"}
    if seen & set(texts[max(0, part.start - 2) : part.start]):
        return True
    placed = texts[part.end : part.end + 2] in _OVER_THE
    return placed and not mentions.parts_in(part.end + 2, part.end + 3)


_OVER_THE = tuple(
    (where, the) for where in ("over", "on", "across") for the in ("the", "my", "our")
)
