"""A file read without a diary: what `diary extract` and `diary evaluate` print and score.

Gives the extraction document: seconds from the start of the recording (line numbers for a
typed note), clips in order, observations that are sure or likely, proposals apart.
"""

import csv
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import Any

from diary.errors import UsageError
from diary.linking.document import Clip, Observation, Plant, PlantKind, Reading
from diary.linking.read import read_talk
from diary.media.clockface import moment_in_name
from diary.media.kind import SourceKind, kind_of
from diary.media.probe import probe
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.reading.vocabulary import load_vocabulary
from diary.speech.recognise import Progress
from diary.speech.settings import SpeechSettings
from diary.speech.transcript import Clock, Transcript


def load_known(register: Path | None, cultivars: Path | None) -> Known:
    """What two files have on record. UsageError where one is missing or has no `number`."""
    return Known(
        seedlings=tuple(_seedlings(register)) if register else (),
        names=tuple(KnownName(name=name) for name in _lines(cultivars)) if cultivars else (),
    )


def _seedlings(register: Path) -> list[KnownSeedling]:
    rows = csv.DictReader(_text(register).splitlines())
    if rows.fieldnames is None or "number" not in rows.fieldnames:
        raise UsageError(
            f"{register}: no column 'number' in its first line. Give the columns names."
        )
    return [
        KnownSeedling(
            number=row["number"].strip(),
            seed_parent=(row.get("seed_parent") or "").strip() or None,
            pollen_parent=(row.get("pollen_parent") or "").strip() or None,
        )
        for row in rows
        if (row.get("number") or "").strip()
    ]


def _lines(path: Path) -> list[str]:
    return [line.strip() for line in _text(path).splitlines() if line.strip()]


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as fault:
        raise UsageError(
            f"{path}: cannot be read ({fault}). Check the name and that it is UTF-8 text."
        ) from fault


def words_of(
    path: Path,
    *,
    known: Known,
    speech: SpeechSettings | None = None,
    on_progress: Callable[[Progress], None] | None = None,
) -> tuple[Transcript, date | None]:
    """The transcript of any kind of input, and the day it was recorded, where that is told."""
    from diary.speech.captions import read_captions
    from diary.speech.notes import read_note

    if not path.is_file():
        raise UsageError(f"{path}: no such file. Check the name, or whether the card is in.")
    kind = kind_of(path)
    named = moment_in_name(path.name)
    named_day = named.date() if named else None
    if kind is SourceKind.NOTE:
        return read_note(path), named_day
    if kind is SourceKind.CAPTIONS:
        return read_captions(path), named_day
    from diary.pipeline import hints
    from diary.speech.recognise import recognise

    info = probe(path)
    heard = recognise(
        path,
        settings=speech,
        hints=hints(known),
        done_blocks=(),
        on_block=lambda block: None,
        on_progress=on_progress or (lambda progress: None),
    )
    return heard.transcript, info.recorded.date() if info.recorded else named_day


def extract(
    path: Path,
    *,
    known: Known,
    recorded: date | None,
    speech: SpeechSettings | None = None,
    vocabulary: Path | None = None,
    on_progress: Callable[[Progress], None] | None = None,
) -> tuple[Transcript, Reading, date | None]:
    """Words and reading of one file; `recorded` as given, else as the file tells it."""
    transcript, told = words_of(path, known=known, speech=speech, on_progress=on_progress)
    day = recorded or told
    return transcript, read_talk(transcript, load_vocabulary(vocabulary), known, recorded=day), day


def document(
    source: str, transcript: Transcript, reading: Reading, day: date | None
) -> dict[str, Any]:
    """The extraction document, ready for JSON."""
    lines = transcript.clock is Clock.LINES
    length = transcript.duration_ms
    return {
        "recording": {
            "source": source,
            "recorded": day.isoformat() if day else None,
            "duration": None if lines or length is None else round(length / 1000, 2),
        },
        "clips": [_clip(clip) for clip in reading.clips],
        "suggestions": [
            {
                "kind": s.kind,
                "value": s.value,
                "text": s.text,
                "start": round(s.start_ms / 1000, 2),
                "end": round(s.end_ms / 1000, 2),
            }
            for s in reading.suggestions
        ],
    }


def _clip(clip: Clip) -> dict[str, Any]:
    return {
        "start": round(clip.start_ms / 1000, 2),
        "end": round(clip.end_ms / 1000, 2),
        "date": clip.day.isoformat() if clip.day else None,
        "plant": _plant(clip.plant),
        "confidence": clip.confidence,
        "band": clip.band.value,
        "observations": _observations(clip.observations),
        "proposals": _observations(clip.proposals),
    }


def _plant(plant: Plant) -> dict[str, Any]:
    told: dict[str, Any] = {"kind": plant.kind.value, "number": plant.number, "name": plant.name}
    if plant.kind is PlantKind.UNNAMED:
        told["label"] = plant.label
    else:
        told["on_record"] = plant.on_record
    return told


def _observations(observations: Sequence[Observation]) -> list[dict[str, Any]]:
    return [
        {
            "trait": o.trait,
            "part": o.part,
            "value": o.value,
            "unit": o.unit,
            "modifiers": list(o.modifiers),
            "on": list(o.on),
            "text": o.text,
            "start": round(o.start_ms / 1000, 2),
            "end": round(o.end_ms / 1000, 2),
            "hedged": o.hedged,
            "negated": o.negated,
            "confidence": o.confidence,
            "band": o.band.value,
        }
        for o in observations
    ]


def explained(reading: Reading) -> str:
    """For each clip and observation: the words, the rule, the score and the runner-up."""
    lines = []
    for clip in reading.clips:
        why = clip.evidence
        lines.append(
            f"{clip.start_ms / 1000:8.1f}  {clip.plant.title}  "
            f"({clip.band.value}, {why.score:.2f}): "
            f"{why.rule}: '{why.words}'{_runner_up(why.runner_up, why.runner_up_score)}"
        )
        for o in (*clip.observations, *clip.proposals):
            value = f"{o.part} {o.value}" if o.part else str(o.value)
            unit = f" {o.unit}" if o.unit == "mm" else ""
            lines.append(
                f"{o.start_ms / 1000:8.1f}    {o.trait}: {' '.join([*o.modifiers, value])}{unit}  "
                f"({o.band.value}, {o.evidence.score:.2f}): {o.evidence.rule}: '{o.text}'"
                f"{_runner_up(o.evidence.runner_up, o.evidence.runner_up_score)}"
            )
    return "\n".join(lines) or "Nothing was understood as being about a plant."


def _runner_up(other: str | None, score: float | None) -> str:
    return f"; runner-up {other} {score:.2f}" if other and score is not None else ""
