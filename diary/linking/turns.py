"""Where the speaker turns to another plant, and to which.

A number turns the talk when it is brought in ("this is", "next is", "back to", at the head
of a sentence); a name only when it is plainly shown ("behind it is Lady Pellingate"); a
plant without a number when the speaker says so, or moves on without giving one. A
comparison, a parent, a guess or a denial ("not twenty-three forty") turns nothing.
"""

from dataclasses import dataclass, replace

from diary.linking.document import Plant, PlantKind
from diary.linking.lead_ins import LeadIn, LeadIns, lead_ins
from diary.linking.likeness import Likeness
from diary.linking.statement import Statement
from diary.reading.mentions import Mentions, Ref
from diary.reading.scope import Habit, cues

_UNSAID = {Habit.DENIAL, Habit.WISH, Habit.QUESTION, Habit.REPORTED}
_PLAIN_WORDS = frozenset(
    "the a an and is was it he she this that one ones with to of on in at back go going come again my me i so oh um "
    "now then right just for 's had has have got no label number tag without minute second moment look lost here there "
    "what which who let us let we you quick quickly briefly little snapped".split()
)
_NOT_AFTER_NAME = frozenset(
    {
        "'s",
        "crossed",
        "by",
        "times",
        "with",
        "as",
        "pollen",
        "selfed",
        "seedling",
        "x",
        "cross",
        "and",
        "on",
    }
)
_SHOWN_AFTER = (
    ("next",),
    ("is", "next"),
    ("here",),
    ("over", "here"),
    ("is", "this", "one"),
    ("which", "is", "this"),
    ("comes", "next"),
)
_LONG_OPENING, _SHORT_OPENING = 18, 8
_NEW_ONE = frozenset(
    {
        "another",
        "behind",
        "beside",
        "next",
        "here",
        "end",
        "along",
        "below",
        "neighbour",
        "neighbor",
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """From token `at` on the talk is of `plant`; `said` is where it is told which."""

    at: int
    said: int
    plant: Plant
    score: float
    rule: str
    runner_up: str | None = None
    runner_up_score: float | None = None


@dataclass(slots=True)
class _State:
    """What has been seen so far on this walk."""

    current: Plant | None = None
    numbers: tuple[str, ...] = ()  # latest last
    unnamed: tuple[tuple[Plant, frozenset[str]], ...] = ()
    shown: tuple[tuple[Plant, int], ...] = ()  # plants with the token of their turn


def find_turns(
    mentions: Mentions, parents: tuple[Statement, ...], likenesses: tuple[Likeness, ...]
) -> tuple[Turn, ...]:
    """All turns in order; the first clip begins at the first of them."""
    leads = lead_ins(mentions)
    taken = {i for s in parents for i in range(s.start, s.end)}
    taken |= {i for x in likenesses for i in range(x.operand.start, x.operand.end)}
    state, turns = _State(), []
    events: list[tuple[int, int, Ref | None]] = [(r.start, 0, r) for r in mentions.refs]
    events += [(f.start, 1, None) for f in cues(mentions.talk, mentions.vocabulary, "unlabelled")]
    events += [(m.start, 2, None) for m in leads.moves]
    events += [(r.start, 3, None) for r in leads.returns]
    for at, kind, ref in sorted(events, key=lambda e: (e[0], e[1])):
        if turns and at <= turns[-1].said and kind:
            continue
        turn = None
        if ref is not None:
            turn = _numbered_or_named(mentions, ref, leads, taken, parents, state)
        elif kind == 1:
            turn = _unlabelled(mentions, at, leads, state, turns)
        elif kind == 2:
            turn = _moved_on(mentions, at, leads, taken, state, turns)
        else:
            turn = _came_back(mentions, at, leads, state)
        if turn is None or (state.current == turn.plant):
            continue
        if turns and turn.at <= turns[-1].said:
            turn = replace(turn, at=min(turns[-1].said + 1, turn.said))
        turns.append(turn)
        _remember(mentions, turn, state)
    return tuple(turns)


def _remember(mentions: Mentions, turn: Turn, state: _State) -> None:
    state.current = turn.plant
    state.shown = (*state.shown, (turn.plant, turn.at))
    if turn.plant.number:
        state.numbers = (*state.numbers, turn.plant.number)
    if turn.plant.kind is PlantKind.UNNAMED and all(p != turn.plant for p, _ in state.unnamed):
        state.unnamed = (*state.unnamed, (turn.plant, _described(mentions, turn.at, 60)))


def _described(mentions: Mentions, at: int, reach: int) -> frozenset[str]:
    """The telling words around the first sight of a plant: what it may be called later."""
    words = mentions.talk.texts[at : at + reach]
    return frozenset(w for w in words if w not in _PLAIN_WORDS and len(w) > 2)


# ---- a number or a name ---------------------------------------------------------------------------


def _numbered_or_named(
    mentions: Mentions,
    ref: Ref,
    leads: LeadIns,
    taken: set[int],
    parents: tuple[Statement, ...],
    state: _State,
) -> Turn | None:
    if ref.start in taken or _not_meant(mentions, ref):
        if not (_shown_after(mentions, ref) and ref.is_number and not ref.cut):
            return None
    lead = leads.before(ref.start)
    if ref.is_number:
        return _number(mentions, ref, lead, leads, parents, state)
    return _name(mentions, ref, lead, leads, state)


_SMALL = frozenset("the a an this that is be to it was number again even quite with confused mixed mix up actually one ones".split())


def _not_meant(mentions: Mentions, ref: Ref) -> bool:
    """ "not twenty-three forty", "this isn't K12": the number is named to be set aside."""
    texts = mentions.talk.texts
    for scope in mentions.scopes.by_token[ref.start]:
        if scope.habit is Habit.DENIAL:
            between = texts[scope.cue + 1 : ref.start]
            if all(t in _SMALL or t == "not" for t in between):
                return True
        elif scope.habit in _UNSAID:
            return True
    return False


def _number(
    mentions: Mentions,
    ref: Ref,
    lead: LeadIn,
    leads: LeadIns,
    parents: tuple[Statement, ...],
    state: _State,
) -> Turn | None:
    number, score, on_record = ref.title, ref.score, ref.on_record
    compared = leads.compared(ref.start) and not lead.shown and not lead.came_back
    if ref.cut is not None:
        completed = _completed(mentions, ref, lead, state)
        if completed is None or compared:
            return None
        number, on_record = completed
        score = 0.9 if on_record else 0.7
        if not (
            lead.numbered
            or lead.came_back
            or (on_record and (lead.moved or lead.shown))
            or ref.cut[1]
        ):
            return None
        if ref.cut[1] and not (
            lead.numbered
            or lead.came_back
            or lead.moved
            or lead.shown
            or _described_next(mentions, ref)
        ):
            return None
    head = lead.at_head or _shown_after(mentions, ref)
    if compared and not _shown_after(mentions, ref):
        return None
    if ref.cut is None and not head:
        loose = _first_of_sentence(mentions, ref)
        if not (lead.shown or lead.came_back or lead.numbered or loose):
            return None
    if leads.guessed(ref.start):
        return None
    if not on_record and ref.cut is None and not (lead.any or head or _after_is(mentions, ref)):
        return None
    if not on_record and score < 0.55 and not (lead.numbered or lead.shown):
        return None
    if _is_parent_of_current(mentions, number, parents, state) and not (
        lead.shown or lead.came_back or lead.moved
    ):
        return None
    plant = Plant(kind=PlantKind.SEEDLING, number=number, on_record=on_record)
    rule = "a number brought in" if lead.any else "a number at the head of a sentence"
    if ref.cut is not None:
        rule = "a number cut short, completed from the plants just seen"
    certainty = score * (
        1.0
        if (lead.shown or lead.came_back or lead.numbered or lead.moved)
        else 0.95
        if head
        else 0.85
    )
    return Turn(
        at=_opening(mentions, lead.start), said=ref.start, plant=plant, score=round(min(certainty, 0.99), 3), rule=rule,
        runner_up=ref.runner_up, runner_up_score=ref.runner_up_score,
    )  # fmt: skip


def _after_is(mentions: Mentions, ref: Ref) -> bool:
    return mentions.talk.texts[max(0, ref.start - 1) : ref.start] in (("is",), ("'s",), ("number",), ("are",))


def _first_of_sentence(mentions: Mentions, ref: Ref) -> bool:
    start = mentions.talk.sentence(ref.start)[0]
    return not any(start <= r.start < ref.start and r.cut is None for r in mentions.refs)


def _opening(mentions: Mentions, at: int) -> int:
    """Where the sentence begins that brings a plant in, if that is near."""
    start = mentions.talk.sentence(at)[0]
    return start if at - start <= (_LONG_OPENING if mentions.talk.punctuated else _SHORT_OPENING) else at


def _described_next(mentions: Mentions, ref: Ref) -> bool:
    """ "C is the next one along": a letter at the head of a sentence that goes on to show it."""
    start = mentions.talk.sentence(ref.start)[0]
    rest = mentions.talk.texts[ref.end : ref.end + 4]
    return start == ref.start and rest[:1] in (("is",), ("'s",)) and "next" in rest


def _completed(
    mentions: Mentions, ref: Ref, lead: LeadIn, state: _State
) -> tuple[str, bool] | None:
    assert ref.cut is not None
    seen = [*reversed(state.numbers)]
    batch = lead.batch
    if batch:
        seen = [n for n in mentions.numbers.seedlings if n.startswith(batch.upper())] or seen
    for number in seen[:6] if not batch else seen[:1]:
        completed = mentions.numbers.complete(ref.cut, number)
        if completed is None:
            continue
        known = mentions.numbers.seedling(completed)
        if known is not None:
            return known.number, True
    for number in seen[:1]:
        completed = mentions.numbers.complete(ref.cut, number)
        if completed is not None and (lead.numbered or ref.cut[1]):
            return completed, False
    return None


def _is_parent_of_current(
    mentions: Mentions, number: str, parents: tuple[Statement, ...], state: _State
) -> bool:
    if not state.shown or state.current is None:
        return False
    since = state.shown[-1][1]
    if any(s.value == number and s.start >= since for s in parents):
        return True
    return False


def _shown_after(mentions: Mentions, ref: Ref) -> bool:
    rest = mentions.talk.texts[ref.end : ref.end + 3]
    return any(rest[: len(words)] == words for words in _SHOWN_AFTER)


def _name(mentions: Mentions, ref: Ref, lead: LeadIn, leads: LeadIns, state: _State) -> Turn | None:
    texts = mentions.talk.texts
    rest = texts[ref.end : ref.end + 1]
    if rest and rest[0] in _NOT_AFTER_NAME and not mentions.talk.tokens[ref.end - 1].mark:
        if not (rest[0] == "and" or (rest[0] == "with" and lead.moved)):
            return None
        if rest[0] == "and" and any(r.start == ref.end + 1 for r in mentions.refs):
            return None
    head_and_next = mentions.talk.sentence(ref.start)[0] == lead.start and _shown_after(
        mentions, ref
    )
    if not head_and_next and not ((lead.shown and (lead.at_head or lead.moved)) or lead.came_back):
        return None
    if leads.compared(ref.start) and not lead.shown:
        return None
    known = mentions.numbers.seedlings
    number = next((s.number for s in known.values() if s.name == ref.title), None)
    plant = (
        Plant(kind=PlantKind.SEEDLING, number=number, on_record=True)
        if number
        else Plant(kind=PlantKind.CULTIVAR, name=ref.title, on_record=True)
    )
    return Turn(
        at=_opening(mentions, lead.start), said=ref.start, plant=plant, score=round(ref.score * 0.92, 3),
        rule="a named plant shown", runner_up=ref.runner_up, runner_up_score=ref.runner_up_score,
    )  # fmt: skip


# ---- a plant without a number ---------------------------------------------------------------------


def _told_soon(mentions: Mentions, at: int, leads: LeadIns, taken: set[int] | None = None) -> bool:
    """Whether a number or a shown name follows at once, in this sentence or the next words."""
    stop = mentions.talk.sentence(at)[1]
    stop = max(stop, at + 9) if not mentions.talk.punctuated else stop
    if mentions.talk.punctuated and stop - at < 8 and stop < len(mentions.talk.texts):
        stop = mentions.talk.sentence(stop)[1]
    for ref in mentions.refs:
        if at <= ref.start < stop and (taken is None or ref.start not in taken):
            if _UNSAID & mentions.scopes.habits(ref.start):
                continue
            if leads.compared(ref.start) or leads.guessed(ref.start):
                continue
            if ref.is_number and ref.cut is None:
                return True
            if ref.is_number and leads.before(ref.start).any:
                return True
            if not ref.is_number and leads.before(ref.start).shown:
                return True
    return False


def _new_unnamed(state: _State) -> Plant:
    label = f"unnamed {len(state.unnamed) + 1}"
    return Plant(kind=PlantKind.UNNAMED, label=label)


def _unlabelled(
    mentions: Mentions, at: int, leads: LeadIns, state: _State, turns: list[Turn]
) -> Turn | None:
    """ "this one hasn't got a label", "no number on that either"."""
    if Habit.WISH in mentions.scopes.habits(at) or _told_soon(mentions, at, leads):
        return None
    start, stop = mentions.talk.sentence(at)
    window = mentions.talk.texts[max(start, at - 12) : min(stop, at + 10)]
    before = mentions.talk.texts[max(start, at - 8) : at]
    move = leads.move_near(at)
    fresh = move is not None or bool(_NEW_ONE & set(window)) or "this" in window
    definite = any(w in ("the", "that") for w in before) or leads.came_back_near(at)
    if state.unnamed and (leads.came_back_near(at) or (definite and not fresh)):
        plant = _recalled(mentions, at, start, state)
        if plant is not None:
            begin = leads.start_of(at, move)
            return Turn(
                at=begin, said=at, plant=plant, score=0.8, rule="back to a plant without a number"
            )
    if state.current is not None and state.current.kind is PlantKind.UNNAMED:
        recent = turns[-1]
        if at - recent.said < 26 and (move is None or move.start <= recent.said):
            return None
    if not fresh and not definite and state.current is not None and move is None:
        return None
    begin = leads.start_of(at, move)
    if turns and begin <= turns[-1].said:
        begin = at
    return Turn(
        at=begin,
        said=at,
        plant=_new_unnamed(state),
        score=0.88,
        rule="a plant said to have no number",
    )


def _recalled(mentions: Mentions, at: int, start: int, state: _State) -> Plant | None:
    """The unnumbered plant that the words fit best; the only one there is, if none tells."""
    words = frozenset(mentions.talk.texts[max(start, at - 10) : at + 12])
    telling = frozenset(w for w in words if w not in _PLAIN_WORDS and len(w) > 2)
    scored = sorted(
        (
            (len(telling & described), -n, plant)
            for n, (plant, described) in enumerate(state.unnamed)
        ),
        key=lambda item: (item[0], item[1]),
        reverse=True,
    )
    if scored and (scored[0][0] > 0 or len(scored) == 1):
        return scored[0][2]
    return None


def _moved_on(
    mentions: Mentions, at: int, leads: LeadIns, taken: set[int], state: _State, turns: list[Turn]
) -> Turn | None:
    """ "its neighbour is much the same", "the one behind it": moved on, and no number given."""
    move = next(m for m in leads.moves if m.start == at)
    if not move.plain or Habit.WISH in mentions.scopes.habits(at):
        return None
    if leads.compared(at) or _told_soon(mentions, at, leads, taken):
        return None
    if not leads.before(at).at_head and mentions.talk.clause(at)[0] != at:
        return None
    if mentions.scopes.habits(at) & _UNSAID:
        return None
    if turns and at - turns[-1].said < 8:
        return None
    return Turn(
        at=leads.before(at).start, said=move.end - 1, plant=_new_unnamed(state), score=0.72,
        rule="moved on to a plant without giving its number",
    )  # fmt: skip


def _came_back(mentions: Mentions, at: int, leads: LeadIns, state: _State) -> Turn | None:
    """ "back to the pink one": a plant shown before, pointed at by its looks."""
    found = next(r for r in leads.returns if r.start == at)
    texts = mentions.talk.texts
    if "back" not in texts[found.start : found.end]:
        return None
    rest = texts[found.end : found.end + 9]
    if (
        not rest
        or rest[0] not in ("the", "that", "my", "our", "this")
        or not (
            {"one", "plant", "fella", "fellow", "chap", "lady", "thing", "seedling"} & set(rest)
        )
    ):
        return None
    if any(
        found.end <= r.start < found.end + 9 and r.is_number and r.cut is None
        for r in mentions.refs
    ):
        return None
    telling = frozenset(w for w in rest if w not in _PLAIN_WORDS and len(w) > 2)
    best: tuple[int, int, Plant] | None = None
    for n, (plant, described) in enumerate(state.unnamed):
        score = len(telling & described)
        if score and (best is None or score > best[0]):
            best = (score, n, plant)
    if best is None:
        for plant, turn_at in state.shown:
            score = len(telling & _described(mentions, turn_at, 40))
            if score and plant != state.current and (best is None or score >= best[0]):
                best = (score, 0, plant)
    if best is None:
        return None
    return Turn(
        at=leads.before(at).start,
        said=found.end,
        plant=best[2],
        score=0.75,
        rule="back to a plant by its looks",
    )
