"""Statements taken back at once: "pink, or rather salmon", "coral, well, no, peach".

A statement falls when the same trait is said again right after words of repair, or when
its own value is denied right after ("white well it's not quite white is it"). What comes
after a repair without a part of its own takes the part of what it replaces.
"""

from dataclasses import replace

from diary.linking.colours.plant_parts import is_of_plant
from diary.linking.colours.statements import DEFAULT_RULE
from diary.linking.colours.thoughts import set_aside
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions
from diary.reading.phrases import Found

_REACH = 15
_DENIED_REACH = 18
_SINGLE = frozenset(
    {
        "colour",
        "marking",
        "bloom_form",
        "habit",
        "scent",
        "flowering",
        "decision",
        "bloom_size",
        "seed_parent",
        "pollen_parent",
        "count_heads",
        "count_buds",
    }
)
# Decisions that cannot both stand: "Heap. No, hang on. Another year."
_OPPOSED = ({"discard", "keep"}, {"discard", "watch"}, {"keep", "watch"}, {"discard", "show"})

# Values of one trait of which only one can hold; others stand side by side.
_RIVALS = {
    "bloom_form": (
        ("single", "semi-double", "double", "rosebud"),
        ("flat", "reflexed", "trumpet", "tulip", "open", "ball", "spider", "cactus", "stellar"),
        ("rounded", "stellar", "spider", "cactus"),
    ),
    "habit": (
        ("compact", "leggy", "open", "spreading"),
        ("upright", "trailing", "spreading"),
        ("vigorous", "weak"),
        ("bushy", "leggy", "open"),
        ("dwarf", "vigorous"),
    ),
}


def settle(mentions: Mentions, statements: list[Statement]) -> list[Statement]:
    """The statements without those taken back, in order of their words."""
    talk = mentions.talk
    ordered = sorted(statements, key=lambda s: (s.start, s.end))
    if not ordered:
        return []
    repairs = repairs_in(mentions, ordered[0].start, ordered[-1].end)
    dropped: set[int] = set()
    for n, first in enumerate(ordered):
        if first.trait not in _SINGLE:
            continue
        for m in range(n + 1, len(ordered)):
            second = ordered[m]
            if second.trait == first.trait == "colour" and _set_aside(mentions, first, second):
                dropped.add(n)
                if second.rule == DEFAULT_RULE and first.part not in (None, "bloom"):
                    ordered[m] = replace(second, part=first.part)
                continue
            if second.start - first.end > _DENIED_REACH:
                break
            if _swapped(first, second) and any(first.end <= r[0] < second.start for r in repairs):
                dropped.add(n)
                continue
            if second.trait != first.trait:
                continue
            near = not talk.punctuated or talk.sentence_number(first.start) == talk.sentence_number(
                second.start
            )
            denied = second.negated and second.value == first.value
            if denied and _stands(mentions, first, second):
                continue  # "it's magenta, it can't get any more magenta"
            if second.negated and near and second.value == first.value and not first.negated:
                dropped |= {n, m}
                ordered[m] = replace(second, part=first.part)
                continue
            if first.trait == "marking":
                continue  # "a stripe, no, veins" may well be both
            between = [r for r in repairs if first.end <= r[0] < second.start]
            if not between or second.negated or first.negated or second.start - first.end > _REACH:
                continue
            apart = talk.sentence_number(second.start) - talk.sentence_number(first.start)
            struck = any(talk.texts[a:b] in _STRIKING for a, b in between)
            if talk.punctuated and apart > (3 if first.trait == "decision" else 1 + struck):
                continue
            if not _same_place(first, second) or _far(mentions, first, second, between):
                continue
            dropped.add(n)
            if second.rule == DEFAULT_RULE and first.part not in (None, "bloom"):
                ordered[m] = replace(second, part=first.part)
    kept = _inherit(mentions, ordered, dropped, repairs)
    return [s for n, s in enumerate(kept) if n not in dropped]


def _stands(mentions: Mentions, told: Statement, denied: Statement) -> bool:
    """Whether the denial of the same value takes nothing back."""
    return (
        _only_judged(mentions, denied)
        or _another_shade(told, denied)
        or _of_the_open_flower(mentions, told, denied)
    )


def _only_judged(mentions: Mentions, denied: Statement) -> bool:
    """ "can't get any more magenta", "not a good magenta", "not a pink you'd want twice"."""
    texts, at = mentions.talk.texts, denied.start
    if texts[at - 5 : at] in _WHAT_YOU_CALL:
        return True  # "it trails a bit but it's not what you'd call a trailer"
    if texts[at - 1 : at] in _JUDGING or texts[at - 3 : at - 1] == ("much", "of"):
        return True
    who, would, what = (*texts[denied.end : denied.end + 3], "", "", "")[:3]
    return who in _WHO and would in ("'d", "would", "'ll") and what not in ("call", "say", "put")


_WHAT_YOU_CALL = tuple(("what", who, "'d", "call", "a") for who in ("you", "i"))


def _of_the_open_flower(mentions: Mentions, told: Statement, denied: Statement) -> bool:
    """ "the buds look black but they don't open black": the bud's colour stands."""
    between = mentions.talk.texts[told.end : denied.start]
    return told.part == "bud" and bool(_OPENING & set(between))


_OPENING = frozenset("open opens opened opening unfold unfolds come comes out flower".split())


def _another_shade(told: Statement, denied: Statement) -> bool:
    """ "red, not dark red", "a proper purple, not blue purple": the colour itself stands."""
    return bool(set(denied.modifiers) - set(told.modifiers))


_JUDGING = tuple((w,) for w in "more good great proper real nice best common usual clear".split())
_WHO = frozenset("i you we anyone anybody they people folk".split())
_PARENTS = {"seed_parent", "pollen_parent"}


def _swapped(first: Statement, second: Statement) -> bool:
    """ "A's the mother, no, other way round, A's the father": one plant is not both at once."""
    return {first.trait, second.trait} == _PARENTS and first.value == second.value


# "Scratch that, I was looking at the wrong one. It's cerise.": the reason comes between
_STRIKING = (
    ("scratch", "that"),
    ("strike", "that"),
    ("i", "tell", "a", "lie"),
    ("tell", "a", "lie"),
    ("correction",),
    ("my", "mistake"),
    ("i", "lie"),
    ("as", "you", "were"),
)


def _set_aside(mentions: Mentions, first: Statement, second: Statement) -> bool:
    """Whether a colour gives way to a better one, with no other part told in between."""
    if first.negated or second.negated or not _same_place(first, second):
        return False
    if any(p.label != first.part for p in _told_between(mentions, first, second)):
        return False
    return set_aside(mentions, first, second)


def _told_between(mentions: Mentions, first: Statement, second: Statement) -> tuple[Found, ...]:
    """Other parts told of after the first: not the uppers of "a brown blotch to the uppers"."""
    start, texts = first.end, mentions.talk.texts
    if first.part not in (None, "bloom") and texts[start : start + 1] in (
        ("to",),
        ("on",),
        ("at",),
    ):
        start = min(mentions.talk.clause(start)[1], second.start)
    return tuple(p for p in mentions.parts_in(start, second.start) if is_of_plant(mentions, p))


def repairs_in(mentions: Mentions, start: int = 0, end: int | None = None) -> list[tuple[int, int]]:
    """Where words of repair stand in a stretch of tokens: their spans."""
    found = [(f.start, f.end) for f in mentions.cue("repair", start, end)]
    return [r for r in found if _is_repair(mentions, r)]


def _is_repair(mentions: Mentions, repair: tuple[int, int]) -> bool:
    """Not the "no" of "no blotch"."""
    words = mentions.talk.texts[repair[0] : repair[1]]
    if words != ("no",):
        return True
    if mentions.vocabulary.never_cues["denial"].at(mentions.talk.texts, repair[0]):
        return False  # "no question", "no doubt"
    if mentions.talk.texts[repair[1] : repair[1] + 1] and mentions.talk.texts[repair[1]] in (
        "more",
        "less",
        "bigger",
        "smaller",
        "wider",
        "taller",
    ):
        return False
    denies = any(
        s.cue == repair[0]
        for s in mentions.scopes.by_token[min(repair[1], len(mentions.scopes.by_token) - 1)]
    )
    return not denies


def _same_place(first: Statement, second: Statement) -> bool:
    if first.trait == "decision":
        return {first.value, second.value} in _OPPOSED
    if first.trait in _RIVALS:
        return any({first.value, second.value} <= set(group) for group in _RIVALS[first.trait])
    if first.trait != "colour":
        return first.value != second.value
    return first.part == second.part or second.rule == DEFAULT_RULE


def _far(
    mentions: Mentions, first: Statement, second: Statement, between: list[tuple[int, int]]
) -> bool:
    """Whether other things are told between the repair and either statement."""
    talk = mentions.talk
    soft = all(
        talk.texts[a:b]
        in (
            ("rather",),
            ("actually",),
            ("call", "it"),
            ("make", "it"),
            ("i", "mean"),
            ("hang", "on"),
            ("let", "me", "see"),
            ("more", "like"),
        )
        for a, b in between
    )
    if soft and second.start - first.end > 7:
        return True
    parts = _told_between(mentions, first, second)
    return first.trait == "colour" and bool(parts) and not any(p.label == first.part for p in parts)


def _inherit(
    mentions: Mentions, ordered: list[Statement], dropped: set[int], repairs: list[tuple[int, int]]
) -> list[Statement]:
    """The part of a colour that was denied goes over to the one said instead."""
    result = list(ordered)
    for n, first in enumerate(ordered):
        if n not in dropped and not first.negated:
            continue
        if first.trait != "colour" or first.part in (None, "bloom"):
            continue
        for m in range(n + 1, len(ordered)):
            second = result[m]
            if second.start - first.end > 10:
                break
            if (
                second.trait == "colour"
                and second.rule == DEFAULT_RULE
                and m not in dropped
                and not second.negated
            ):
                result[m] = replace(second, part=first.part)
                break
    return result
