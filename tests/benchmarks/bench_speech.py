"""Speed, memory and accuracy of the speech stage over a folder of spoken scripts.

    python -m tests.benchmarks.bench_speech speed FOLDER [--minutes 20] [--runs 2]
    python -m tests.benchmarks.bench_speech accuracy FOLDER [--noise clean 10 5] [--only dev-01]
    python -m tests.benchmarks.bench_speech length FOLDER [--minutes 20 60 180]

`speed` runs plain faster-whisper (its defaults and word_timestamps=True, base, int8, all
threads) and this project alternately on the same file, each in a process of its own, and prints
wall time, processor time and peak memory (parent and child together). `accuracy` prints word
error rate, names and numbers with and without hints. `length` prints peak memory by length.
"""

import argparse
import json
import resource
import subprocess
import sys
import tempfile
import time
import wave
from pathlib import Path

import numpy as np

from diary.media.decode import RATE
from diary.speech.engine import Engine
from diary.speech.hints import NO_HINTS, Hints
from diary.speech.listening import listen, said_so_far, stretches
from diary.speech.models import find_model
from diary.speech.recognise import recognise
from diary.speech.settings import Effort, SpeechSettings
from diary.speech.transcript import Word
from tests.benchmarks.spoken import Spoken, samples_of, score, spoken_scripts, with_fan

PLAIN = "plain faster-whisper"


def main() -> None:
    """Parse the command line and run one benchmark."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("what", choices=["speed", "accuracy", "length", "one"])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--minutes", type=float, nargs="*", default=[20])
    parser.add_argument("--runs", type=int, default=2)
    parser.add_argument("--noise", nargs="*", default=["as-is"])
    parser.add_argument("--only", nargs="*", default=[])
    parser.add_argument("--model", default="base")
    parser.add_argument("--effort", default="normal", choices=[one.value for one in Effort])
    parser.add_argument("--how", default="")
    chosen = parser.parse_args()
    settings = SpeechSettings(model=chosen.model, effort=Effort(chosen.effort))
    if chosen.what == "one":
        one(chosen.folder, chosen.how, settings)
    elif chosen.what == "accuracy":
        accuracy(spoken_scripts(chosen.folder, tuple(chosen.only)), chosen.noise, settings)
    else:
        scripts = spoken_scripts(chosen.folder, tuple(chosen.only))
        ours = [chosen.how] if chosen.how else ["diary", "diary with hints"]
        hows = [PLAIN, *ours] if chosen.what == "speed" else ours[-1:]
        for minutes in chosen.minutes:
            speed(scripts, minutes, chosen.runs if chosen.what == "speed" else 1, hows, settings)


def speed(
    scripts: list[Spoken], minutes: float, runs: int, hows: list[str], settings: SpeechSettings
) -> None:
    """Run each way in turn over one file joined from the scripts."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        joined, parts = join(scripts, minutes, folder / "joined.wav")
        (folder / "hints.json").write_text(json.dumps(hints_of(parts)), encoding="utf-8")
        print(f"{joined.name}: {minutes:g} min of {len(parts)} scripts")
        for run in range(runs):
            for how in hows:
                command = [sys.executable, "-m", "tests.benchmarks.bench_speech", "one"]
                command += [str(joined), "--how", how, "--model", settings.model]
                command += ["--effort", settings.effort.value]
                done = subprocess.run(command, check=True, capture_output=True, text=True)
                row = json.loads(done.stdout.splitlines()[-1])
                words = tuple(
                    Word(text=text, start_ms=start, end_ms=end) for text, start, end in row["words"]
                )
                wer = score([(whole(parts), words)]).wer
                print(
                    f"  run {run + 1}  {how:<22} wall {row['wall']:7.1f} s  processor "
                    f"{row['cpu']:7.1f} s  peak {row['peak_mb']:6.0f} MB  WER {wer:.4f}",
                    flush=True,
                )


def one(path: Path, how: str, settings: SpeechSettings) -> None:
    """One run in this process; prints a line of JSON."""
    began = time.monotonic()
    if how == PLAIN:
        words = plain(path, settings)
    else:
        row = json.loads(path.with_name("hints.json").read_text(encoding="utf-8"))
        hints = Hints(names=tuple(row["names"]), numbers=tuple(row["numbers"]))
        result = recognise(
            path, settings=settings, hints=hints if how.endswith("hints") else NO_HINTS
        )
        words = [(word.text, word.start_ms, word.end_ms) for word in result.transcript.words]
    wall = time.monotonic() - began
    own, child = (
        resource.getrusage(resource.RUSAGE_SELF),
        resource.getrusage(resource.RUSAGE_CHILDREN),
    )
    cpu = own.ru_utime + own.ru_stime + child.ru_utime + child.ru_stime
    peak_mb = (own.ru_maxrss + child.ru_maxrss) / 1024  # kilobytes on Linux
    print(json.dumps({"wall": wall, "cpu": cpu, "peak_mb": peak_mb, "words": words}))


def plain(path: Path, settings: SpeechSettings) -> list[tuple[str, int, int]]:
    """What faster-whisper gives by itself, with its defaults and word times."""
    from faster_whisper import WhisperModel

    model = WhisperModel(
        str(find_model(settings.model)),
        device="cpu",
        compute_type="int8",
        cpu_threads=settings.threads,
        local_files_only=True,
    )
    segments, _ = model.transcribe(str(path), word_timestamps=True)
    return [
        (word.word.strip(), round(word.start * 1000), round(word.end * 1000))
        for segment in segments
        for word in segment.words or ()
    ]


def join(scripts: list[Spoken], minutes: float, path: Path) -> tuple[Path, list[Spoken]]:
    """The scripts one after the other, again and again, in a WAV file of at most that length."""
    wanted, length, parts = minutes * 60, 0.0, []
    with wave.open(str(path), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(RATE)
        while True:
            spoken = scripts[len(parts) % len(scripts)]
            samples = samples_of(spoken.sound)
            if parts and length + len(samples) / RATE > wanted:
                return path, parts
            out.writeframes(samples.tobytes())
            parts.append(shifted(spoken, length))
            length += len(samples) / RATE


def shifted(spoken: Spoken, by: float) -> Spoken:
    """The same script `by` seconds later."""
    return Spoken(
        name=spoken.name,
        sound=spoken.sound,
        utterances=spoken.utterances,
        times=tuple((start + by, end + by) for start, end in spoken.times),
        names=spoken.names,
        numbers=spoken.numbers,
    )


def whole(parts: list[Spoken]) -> Spoken:
    """The scripts of a joined file as one."""
    return Spoken(
        name="joined",
        sound=parts[0].sound,
        utterances=tuple(text for part in parts for text in part.utterances),
        times=tuple(times for part in parts for times in part.times),
        names=tuple(dict.fromkeys(name for part in parts for name in part.names)),
        numbers=tuple(dict.fromkeys(number for part in parts for number in part.numbers)),
    )


def hints_of(parts: list[Spoken]) -> dict[str, list[str]]:
    """The hints of all parts together: what one breeder with all these plants would have."""
    one_breeder = whole(parts)
    return {"names": list(one_breeder.names), "numbers": list(one_breeder.numbers)}


def accuracy(scripts: list[Spoken], noises: list[str], settings: SpeechSettings) -> None:
    """Word error rate, names and numbers by noise and by what the model was told."""
    engine = Engine(find_model(settings.model), settings)
    every = tuple(dict.fromkeys(name for spoken in scripts for name in spoken.names))
    for noise in noises:
        decibels = None if noise in ("as-is", "clean") else float(noise)
        rows: dict[str, list[tuple[Spoken, tuple[Word, ...]]]] = {}
        for number, spoken in enumerate(scripts):
            samples = with_fan(samples_of(spoken.sound), decibels, seed=number)
            strangers = tuple(name for name in every if name not in spoken.names)
            for how, hints in (
                ("no hints", NO_HINTS),
                ("own names and numbers", spoken.hints),
                ("only names not said", Hints(names=strangers, numbers=spoken.numbers)),
            ):
                rows.setdefault(how, []).append((spoken, hear(engine, samples, hints)))
        for how, pairs in rows.items():
            others = every if how == "only names not said" else ()
            result = score(pairs, others=others)
            print(
                f"noise {noise:<6} {how:<22} WER {result.wer:.4f}  names "
                f"{result.names_heard}/{result.names}  numbers "
                f"{result.numbers_heard}/{result.numbers}  false names {result.false_names}",
                flush=True,
            )


def hear(engine: Engine, samples: np.ndarray, hints: Hints) -> tuple[Word, ...]:
    """All words of some samples, in this process."""
    words: list[Word] = []
    said = ""
    for index, stretch in enumerate(stretches([samples])):
        block = listen(engine, stretch, index=index, hints=hints, said_before=said)
        said = said_so_far(said, block.words)
        words.extend(block.words)
    return tuple(words)


if __name__ == "__main__":
    main()
