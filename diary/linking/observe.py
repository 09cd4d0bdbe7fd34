"""From the statements in a clip to its observations: what holds, once each, with its band."""

from dataclasses import replace

from diary.linking.clips import Stretch
from diary.linking.document import Band, Evidence, Observation, Value
from diary.linking.latest_figures import latest_figures
from diary.linking.second_thoughts import settle
from diary.linking.statement import Statement
from diary.reading.habits.scope import Habit
from diary.reading.mentions import Mentions

# Bands by score; `diary evaluate` says how often each was wrong. Set on what 16 gold scripts gave
# when they were first read: sure from 0.86 on was wrong in 9.7 % of cases, from 0.91 on in 4.4 %.
SURE, LIKELY = 0.91, 0.6
# Without punctuation half as many mistakes again were made (measured on 28 gold scripts).
UNMARKED = 0.93
_HEDGE_BEFORE, _HEDGE_AFTER = 5, 2
_UNSAID = {Habit.WISH, Habit.REPORTED, Habit.QUESTION, Habit.HYPOTHETICAL}
_SELF_SCOPED = frozenset(
    {
        "seed_parent",
        "pollen_parent",
        "sport_of",
        "pollination",
        "similar_to",
        "decision",
        "count_seeds_sown",
        "count_germinated",
    }
)
_OF_THE_CROSS = frozenset(
    "similar_to seed_parent pollen_parent pollination sport_of count_seeds_sown "
    "count_germinated".split()
)
_PAST_TOO = frozenset({"first_flower", "early", "late", "long"})


def observe(
    mentions: Mentions, stretch: Stretch, statements: list[Statement], others: set[int]
) -> tuple[tuple[Observation, ...], tuple[Observation, ...]]:
    """Observations and proposals of one stretch, by time."""
    near = mentions.cue("hedge", stretch.start - _HEDGE_BEFORE - 4, stretch.end + _HEDGE_AFTER + 1)
    hedges = [(f.start, f.end) for f in near]
    marked = [_weighed(mentions, s, hedges) for s in statements if not _elsewhere(s, others)]
    settled = settle(mentions, [s for s in marked if s is not None])
    settled = _consistent(mentions, [s for s in settled if not s.negated])
    settled = latest_figures(mentions, settled)
    observations = [_observation(mentions, s, stretch.turn.score) for s in _distinct(settled)]
    sure = tuple(o for o in observations if o.band is not Band.UNSURE)
    return sure, tuple(o for o in observations if o.band is Band.UNSURE)


def _elsewhere(statement: Statement, others: set[int]) -> bool:
    """Whether it is told of another plant; parents and the cross's own seed never are."""
    return (
        statement.start in others
        and statement.trait not in _OF_THE_CROSS
        and statement.end - 1 in others
    )


def _weighed(mentions: Mentions, s: Statement, hedges: list[tuple[int, int]]) -> Statement | None:
    """The statement with its hedge and denial; None where it is not asserted at all."""
    scopes = mentions.scopes
    if s.trait not in _SELF_SCOPED:
        habits = scopes.habits(s.start, max(s.end, s.start + 1))
        if habits & _UNSAID:
            return None
        if Habit.HISTORY in habits and (s.value not in _PAST_TOO or _of_another_year(mentions, s)):
            return None
        if _denied(mentions, s):
            s = replace(s, negated=True)
    clause = mentions.talk.clause(s.start)
    hedged = any(
        (clause[0] <= a and s.start - _HEDGE_BEFORE <= a and b <= s.start + 2)
        or (s.end <= a <= s.end + _HEDGE_AFTER)
        or (s.start <= a and b <= s.end)
        for a, b in hedges
    )
    return replace(s, hedged=s.hedged or hedged)


def _of_another_year(mentions: Mentions, s: Statement) -> bool:
    """ "it was early last year"; not "out since last summer", "its first flower last week"."""
    texts = mentions.talk.texts
    return s.value != "first_flower" and any(
        scope.habit is Habit.HISTORY
        and not s.start <= scope.cue < s.end
        and bool({"year", "season", "used"} & set(texts[scope.cue : scope.cue + 3]))
        for at in range(s.start, s.end)
        for scope in mentions.scopes.by_token[at]
    )


def _denied(mentions: Mentions, s: Statement) -> bool:
    own = range(s.start, s.end)
    for at in own:
        for scope in mentions.scopes.by_token[at]:
            if scope.habit is not Habit.DENIAL:
                continue
            inside = s.start <= scope.cue < s.end or _same_denial(mentions, scope.cue, s.start)
            called = _CALLED & set(mentions.talk.texts[scope.cue : s.start])
            if s.value == "clean" and s.start - scope.cue > 2 and not called:
                continue
            if s.trait not in ("colour", "marking") and _doubly_denied(mentions, s):
                continue
            if _own_subject(mentions, s) and scope.cue < s.start - 1:
                continue
            if inside and s.trait not in ("colour", "marking"):
                continue
            if s.trait == "scent" and s.value == "none" and inside:
                continue
            return True
    return False


_CALLED = frozenset({"call", "called", "say", "said"})  # "nobody could call it clean"


def _doubly_denied(mentions: Mentions, s: Statement) -> bool:
    """ "there isn't nothing wrong with it", "no scent no vigour": its own denial is enough."""
    return mentions.talk.texts[s.start] in ("nothing", "nowt", "none", "no", "never")


def _same_denial(mentions: Mentions, cue: int, start: int) -> bool:
    """ "has | not the strength to stand": the words begin inside the denial they are."""
    texts = mentions.talk.texts
    return (
        cue == start - 1 and texts[start] == "not" and texts[cue] in ("has", "have", "do", "does")
    )


def _own_subject(mentions: Mentions, s: Statement) -> bool:
    """ "no eye leaf's glossy": a noun and its verb begin anew after what is denied."""
    texts = mentions.talk.texts
    return texts[s.start] in mentions.vocabulary.classes["foliage"] and (
        texts[s.start + 1 : s.start + 2] in (("is",), ("'s",), ("are",), ("'re",))
    )


def _consistent(mentions: Mentions, settled: list[Statement]) -> list[Statement]:
    """Without what another statement already says: a marking with a colour, a leaf's scent."""
    talk = mentions.talk
    coloured = {s.part for s in settled if s.trait == "colour"}
    leaf_scent = [s for s in settled if s.trait == "foliage" and s.value == "scented"]
    zoned = [s for s in settled if s.trait == "colour" and s.part == "zone"]
    kept = []
    for s in settled:
        if s.trait == "marking" and s.value in coloured:
            continue
        if (
            s.trait == "scent"
            and s.value == "scented"
            and any(abs(s.start - leaf.start) < 14 for leaf in leaf_scent)
        ):
            continue
        if s.trait == "colour" and _smelt(talk.texts, s.start):
            continue
        if (
            s.trait == "foliage"
            and s.value == "zoned"
            and any(z.start < s.end and s.start < z.end for z in zoned)
        ):
            continue
        kept.append(s)
    return kept


def _smelt(texts: tuple[str, ...], at: int) -> bool:
    """ "smells of lemon" is no colour."""
    if {"smell", "scent", "perfume"} & set(texts[at + 1 : at + 3]):
        return True
    return bool(
        {"smell", "smells", "scent", "smelling", "perfume", "tastes", "whiff"}
        & set(texts[max(0, at - 5) : at])
    )


def _distinct(settled: list[Statement]) -> list[Statement]:
    """One statement for each trait, part and value: the one said best."""
    best: dict[tuple[str, str | None, str], Statement] = {}
    for s in settled:
        key = (s.trait, s.part, str(s.value).casefold())
        previous = best.get(key)
        if previous is None:
            best[key] = s
        elif (s.firm, len(s.modifiers), s.score) > (
            previous.firm,
            len(previous.modifiers),
            previous.score,
        ):
            best[key] = replace(s, modifiers=s.modifiers or previous.modifiers)
    return sorted(best.values(), key=lambda s: s.start)


def band_of(score: float, firm: bool = True) -> Band:
    """sure, likely or unsure; what is not firm is only proposed."""
    if not firm or score < LIKELY:
        return Band.UNSURE
    return Band.SURE if score >= SURE else Band.LIKELY


def _observation(mentions: Mentions, s: Statement, linked: float) -> Observation:
    """The statement as an observation, no surer than that it is of this plant (`linked`)."""
    talk = mentions.talk
    first, last = talk.tokens[s.start].word, talk.tokens[max(s.end - 1, s.start)].word
    words = talk.transcript.words
    heard = [words[i].confidence for i in range(first, last + 1) if words[i].confidence is not None]
    doubt = 1.0 if not heard else min(1.0, 0.85 + 0.3 * min(c for c in heard if c is not None))
    told = s.score * doubt * (1.0 if talk.punctuated else UNMARKED)
    score = round(min(told, max(linked, LIKELY)), 3)
    text = talk.transcript.quote(first, last)
    value: Value = s.value
    return Observation(
        trait=s.trait,
        value=value,
        part=s.part,
        unit=s.unit,
        modifiers=s.modifiers,
        on=s.on,
        text=text,
        first_word=first,
        last_word=last,
        start_ms=words[first].start_ms,
        end_ms=max(words[last].end_ms, words[first].start_ms),
        hedged=s.hedged,
        negated=False,
        confidence=score,
        band=band_of(score, s.firm),
        evidence=Evidence(
            rule=s.rule,
            words=text,
            score=score,
            runner_up=s.runner_up,
            runner_up_score=s.runner_up_score,
        ),
    )
