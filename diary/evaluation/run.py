"""A folder of gold scripts read, as captions or as speech, and scored."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from diary.errors import UsageError
from diary.evaluation.bands import BandShare, band_shares
from diary.evaluation.gold import (
    GoldScript,
    Times,
    captions,
    load_script,
    spoken_times,
    steady_times,
)
from diary.evaluation.mistakes import Common, Mistake, commonest, mistakes
from diary.evaluation.score import Score, Scored, score_reading, total
from diary.linking.read import read_talk
from diary.reading.vocabulary import load_vocabulary
from diary.speech.settings import SpeechSettings
from diary.speech.transcript import Transcript

Report = Callable[[str, float | None], None]  # a script's id, and the share of it listened to


@dataclass(frozen=True, slots=True, kw_only=True)
class Evaluation:
    """All that is known of how well a folder was understood."""

    score: Score
    scripts: tuple[Scored, ...]
    bands: tuple[BandShare, ...]
    mistakes: tuple[Mistake, ...]
    commonest: tuple[Common, ...]
    problems: tuple[str, ...]  # what could not be scored, and why


def evaluate(
    folder: Path,
    *,
    audio: Path | None = None,
    speech: SpeechSettings | None = None,
    vocabulary: Path | None = None,
    report: Report = lambda script, share: None,
) -> Evaluation:
    """Score every script (*.json) of the folder, or the one script that `folder` is.

    With `audio`, scripts are heard: AUDIO/ID.opus (or another recording of that name), with
    the times of its utterances in AUDIO/ID.times.json. UsageError where there is no script.
    """
    paths = sorted(folder.glob("*.json")) if folder.is_dir() else [folder]
    if not paths:
        raise UsageError(f"{folder}: no gold scripts (*.json) in it. Name the folder of scripts.")
    results: list[Scored] = []
    problems: list[str] = []
    for path in paths:
        script = load_script(path)
        report(script.id, None)
        if audio is None:
            times = steady_times(script)
            talk = captions(script, times)
        else:
            spoken = _spoken(script, audio)
            if spoken is None:
                problems.append(f"{script.id}: not spoken, no recording of it in {audio}")
                continue
            times = spoken[1]
            talk = _heard(script, spoken[0], speech, report)
        reading = read_talk(
            talk, load_vocabulary(vocabulary), script.known, recorded=script.recorded
        )
        results.append(score_reading(script, times, reading))
    wrong = tuple(mistake for one in results for mistake in mistakes(one))
    return Evaluation(
        score=total(results),
        scripts=tuple(results),
        bands=band_shares(results),
        mistakes=wrong,
        commonest=commonest(wrong),
        problems=(*problems, *(problem for one in results for problem in one.problems)),
    )


def _spoken(script: GoldScript, audio: Path) -> tuple[Path, Times] | None:
    times = audio / f"{script.id}.times.json"
    recordings = sorted(p for p in audio.glob(f"{script.id}.*") if p.suffix != ".json")
    if not times.is_file() or not recordings:
        return None
    return recordings[0], spoken_times(times)


def _heard(
    script: GoldScript, path: Path, speech: SpeechSettings | None, report: Report
) -> Transcript:
    from diary.extraction import words_of

    transcript, _ = words_of(
        path,
        speech=speech,
        known=script.known,
        on_progress=lambda p: report(script.id, p.done_ms / p.total_ms if p.total_ms else None),
    )
    return transcript
