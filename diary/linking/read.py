"""Transcript in, reading out: the one entry to the core. Pure."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Protocol, TypeVar

from diary.linking.clips import Stretch, cut_clips
from diary.linking.document import Clip, Evidence, Plant, PlantKind, Reading, Suggestion
from diary.linking.heard import hear
from diary.linking.likeness.likened import Likeness
from diary.linking.observe import band_of, observe
from diary.linking.others import told_of_others
from diary.linking.parents.on_record import parents_on_record
from diary.linking.statement import Statement
from diary.linking.turns.turns import find_turns
from diary.reading.days import DayHeard, find_days
from diary.reading.known import Known
from diary.reading.mentions import Mentions
from diary.reading.vocabulary import Vocabulary
from diary.speech.transcript import Transcript

# Raised whenever the same words would give another reading.
READER_VERSION = "6"


# What is hardly ever misheard in talk about other things.
_FIRM = frozenset(
    "colour marking bloom_diameter head_diameter plant_height plant_spread stem_length leaf_width "
    "seed_parent pollen_parent".split()
)


def read_talk(
    transcript: Transcript, vocabulary: Vocabulary, known: Known, *, recorded: date | None
) -> Reading:
    """Cut the talk into clips, link each to its plant and pull out the observations."""
    heard = hear(transcript, vocabulary, known, year=recorded.year if recorded else None)
    if heard is None:
        return Reading(clips=())
    mentions, statements = heard.mentions, heard.statements
    parents, likenesses, talk = heard.parents, heard.likenesses, mentions.talk
    turns = find_turns(heard)
    telling = [s.start for s in statements] + [x.start for x in likenesses]
    days = find_days(talk, recorded)
    firm = [s.start for s in statements if s.trait in _FIRM]
    stretches = cut_clips(mentions, turns, telling, firm, [d.start for d in days if d.holds])
    clips = tuple(
        _clip(
            mentions,
            stretch,
            statements,
            parents,
            likenesses,
            _day(transcript, talk.tokens[stretch.start].word, days, recorded, stretch),
        )
        for stretch in stretches
    )
    return Reading(clips=clips, suggestions=_suggestions(clips))


def _day(
    transcript: Transcript,
    word: int,
    days: Sequence[DayHeard],
    recorded: date | None,
    stretch: Stretch,
) -> date | None:
    """The day of a clip: said in it, else the last said before it, else the recording's own."""
    inside = [d for d in days if stretch.start <= d.start < stretch.end]
    if inside:
        return inside[-1].day
    day = recorded
    at_ms = transcript.words[word].start_ms
    for mark in transcript.dates:
        if mark.at_ms <= at_ms:
            day = mark.day
    said = [d for d in days if d.holds and d.end <= stretch.start]
    return said[-1].day if said else day


class _Placed(Protocol):
    @property
    def start(self) -> int: ...


_P = TypeVar("_P", bound=_Placed)


def _starting_in(items: Sequence[_P], start: int, end: int) -> list[_P]:
    """The items, ordered by start, that begin at tokens start..end-1."""
    first = bisect_left(items, start, key=lambda item: item.start)
    return list(items[first : bisect_left(items, end, key=lambda item: item.start)])


def _clip(
    mentions: Mentions,
    stretch: Stretch,
    statements: Sequence[Statement],
    parents: tuple[Statement, ...],
    likenesses: tuple[Likeness, ...],
    day: date | None,
) -> Clip:
    plant = stretch.turn.plant
    inside = [
        replace(s, end=min(s.end, stretch.end))  # words may run over into the next plant
        for s in _starting_in(statements, stretch.start, stretch.end)
    ]
    own = (plant.number, plant.name)
    inside = [s for s in inside if not (s.trait.endswith("_parent") and s.value in own)]
    inside += parents_on_record(mentions, stretch.start, stretch.end, plant, inside)
    alike = [
        statement
        for x in _starting_in(likenesses, stretch.start, stretch.end)
        if x.asserted and x.end <= stretch.end
        for statement in _likeness(mentions, x, plant, inside)
    ]
    others = told_of_others(
        mentions, stretch.start, stretch.end, stretch.turn.said, plant, parents, likenesses
    )
    observations, proposals = observe(mentions, stretch, [*inside, *alike], others)
    tokens, words = mentions.talk.tokens, mentions.talk.transcript.words
    first, last = tokens[stretch.start].word, tokens[stretch.end - 1].word
    turn = stretch.turn
    named = mentions.ref_at(turn.said)
    said = tokens[named.end - 1 if named else min(turn.said, len(tokens) - 1)].word
    return Clip(
        start_ms=words[first].start_ms,
        end_ms=max(words[last].end_ms, words[first].start_ms),
        first_word=first,
        last_word=last,
        day=day,
        plant=plant,
        confidence=turn.score,
        band=band_of(turn.score),
        observations=observations,
        proposals=proposals,
        evidence=Evidence(
            rule=turn.rule,
            words=mentions.talk.transcript.quote(min(first, said), max(first, said)),
            score=turn.score,
            runner_up=turn.runner_up,
            runner_up_score=turn.runner_up_score,
        ),
    )


def _likeness(
    mentions: Mentions, x: Likeness, plant: Plant, told: Sequence[Statement]
) -> list[Statement]:
    """The likeness with its plant's full number, unless it is the plant itself."""
    title = x.operand.title
    ref = x.operand.ref
    if x.kin is not None:
        title = _kin(mentions, x.kin, plant, told) or ""
        if not title:
            return []
    if ref is not None and ref.cut is not None:
        completed = mentions.numbers.complete(ref.cut, plant.number) if plant.number else None
        if completed is None:
            return []
        known = mentions.numbers.seedling(completed)
        title = known.number if known else completed
    if title in (plant.number, plant.name):
        return []
    return [
        Statement(
            trait="similar_to",
            value=title,
            start=x.start,
            end=x.end,
            rule="a likeness asserted",
            score=round(
                x.score * (0.9 if ref and ref.cut else min(1.0, x.operand.score + 0.05)), 3
            ),
        )
    ]


def _kin(mentions: Mentions, trait: str, plant: Plant, told: Sequence[Statement]) -> str | None:
    """The parent just told, else the one on record: whom "its mother" means."""
    said = next((str(s.value) for s in told if s.trait == trait), None)
    record = mentions.numbers.seedling(plant.number) if plant.number else None
    if said is not None or record is None:
        return said
    return record.seed_parent if trait == "seed_parent" else record.pollen_parent


def _suggestions(clips: Sequence[Clip]) -> tuple[Suggestion, ...]:
    """Numbers that are not on record, for the register."""
    found: dict[str, Suggestion] = {}
    for clip in clips:
        plant = clip.plant
        if plant.kind is PlantKind.SEEDLING and not plant.on_record and plant.number:
            found.setdefault(
                plant.number,
                Suggestion(
                    kind="unknown_number",
                    value=plant.number,
                    plant=plant,
                    day=clip.day,
                    text=clip.evidence.words,
                    start_ms=clip.start_ms,
                    end_ms=clip.end_ms,
                ),
            )
    return tuple(found.values())
