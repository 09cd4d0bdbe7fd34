"""A stretch of a recording that has been listened to: the unit that is stored and resumed. Pure."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from diary.speech.transcript import Transcript, Word


@dataclass(frozen=True, slots=True, kw_only=True)
class Dropped:
    """Words the engine gave that were not believed, and why ("loop", "stock phrase"...)."""

    start_ms: int
    end_ms: int
    text: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """A stretch heard again with a hint: `heard` at first, `taken` in the end, and the evidence.

    `taken` equals `heard` when no candidate was borne out. `gain` is the log probability of
    the audio under the taken words less that under the heard ones, per word.
    """

    start_ms: int
    end_ms: int
    heard: str
    taken: str
    gain: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One stretch of at most about five minutes, cut at silences.

    Blocks follow each other without a gap from 0 to the end of the recording.
    `segment_starts` are indexes into `words`. `lost` says why nothing could be heard (the
    engine crashed twice here), None otherwise. `settings` and `hints` are the fingerprints
    of what it was heard with.
    """

    index: int
    start_ms: int
    end_ms: int
    words: tuple[Word, ...] = ()
    segment_starts: tuple[int, ...] = ()
    dropped: tuple[Dropped, ...] = ()
    swaps: tuple[Swap, ...] = ()
    settings: str = ""
    hints: str = ""
    lost: str | None = None


def block_to_json(block: Block) -> str:
    """One line of JSON; `block_from_json` gives the same block back."""
    return json.dumps(
        {
            "index": block.index,
            "start_ms": block.start_ms,
            "end_ms": block.end_ms,
            "words": [[w.text, w.start_ms, w.end_ms, w.confidence] for w in block.words],
            "segment_starts": block.segment_starts,
            "dropped": [[d.start_ms, d.end_ms, d.text, d.reason] for d in block.dropped],
            "swaps": [[s.start_ms, s.end_ms, s.heard, s.taken, s.gain] for s in block.swaps],
            "settings": block.settings,
            "hints": block.hints,
            "lost": block.lost,
        },
        ensure_ascii=False,
    )


def block_from_json(text: str) -> Block:
    """The block that `block_to_json` wrote. ValueError or KeyError where it did not."""
    row: Mapping[str, Any] = json.loads(text)
    return Block(
        index=row["index"],
        start_ms=row["start_ms"],
        end_ms=row["end_ms"],
        words=tuple(
            Word(text=said, start_ms=start, end_ms=end, confidence=confidence)
            for said, start, end, confidence in row["words"]
        ),
        segment_starts=tuple(row["segment_starts"]),
        dropped=tuple(
            Dropped(start_ms=start, end_ms=end, text=said, reason=reason)
            for start, end, said, reason in row["dropped"]
        ),
        swaps=tuple(
            Swap(start_ms=start, end_ms=end, heard=heard, taken=taken, gain=gain)
            for start, end, heard, taken, gain in row["swaps"]
        ),
        settings=row["settings"],
        hints=row["hints"],
        lost=row["lost"],
    )


def join_blocks(blocks: Sequence[Block], *, duration_ms: int | None) -> Transcript:
    """The transcript of a recording from its blocks in order."""
    words: list[Word] = []
    starts: list[int] = []
    for block in blocks:
        starts.extend(len(words) + start for start in block.segment_starts)
        words.extend(block.words)
    return Transcript(words=tuple(words), segment_starts=tuple(starts), duration_ms=duration_ms)
