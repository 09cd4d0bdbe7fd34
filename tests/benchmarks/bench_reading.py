"""How long reading takes: 1, 4 and 16 hours of talk, with registers that grow with it.

    python -m tests.benchmarks.bench_reading [--hours 1 4 16] [--profile]

The talk is the utterances of the gold scripts, over and over, punctuated and as automatic
captions give it; an hour adds 250 seedlings and 20 names to what is on record. Prints CPU
seconds for each hour of talk (aim: 2 at most, and no more for long talks than for short).
"""

import argparse
import cProfile
import json
import pstats
import time
from collections.abc import Iterator
from datetime import date
from itertools import cycle, product
from pathlib import Path

from diary.linking.read import read_talk
from diary.reading.known import Known, KnownName, KnownSeedling
from diary.reading.vocabulary import load_vocabulary
from diary.speech.transcript import Transcript, Word

GOLD = Path(__file__).parents[1] / "gold"
WORD_MS, PAUSE_MS = 385, 500  # 2.6 words a second, as in the gold scripts
SEEDLINGS_AN_HOUR, NAMES_AN_HOUR = 250, 20
AIM = 2.0


def scripts(kind: str) -> list[dict]:
    """The dev and practice scripts of one kind."""
    found = [
        json.loads(path.read_text(encoding="utf-8"))
        for folder in ("dev", "practice")
        for path in sorted((GOLD / folder).glob("*.json"))
    ]
    return [script for script in found if script["kind"] == kind]


def talk(kind: str, hours: int) -> Transcript:
    """So many hours of talk, one segment an utterance."""
    words: list[Word] = []
    starts: list[int] = []
    now = 1000
    for script in cycle(scripts(kind)):
        for utterance in script["utterances"]:
            starts.append(len(words))
            for text in utterance.split():
                words.append(Word(text=text, start_ms=now, end_ms=now + WORD_MS))
                now += WORD_MS
            now += PAUSE_MS
            if now >= hours * 3_600_000:
                return Transcript(words=tuple(words), segment_starts=tuple(starts), duration_ms=now)
    raise AssertionError("no scripts of this kind")


def on_record(kind: str, hours: int) -> Known:
    """The names and numbers of the scripts, and as many again for every hour."""
    names: dict[str, None] = {}
    seedlings: dict[str, KnownSeedling] = {}
    for script in scripts(kind):
        names |= dict.fromkeys(script["cultivars"])
        for row in script["register"]:
            if row["number"][:1].isdigit() and "-" in row["number"]:
                seedlings[row["number"]] = KnownSeedling(number=row["number"])
    said = list(names)
    for name in _made_up(said, hours * NAMES_AN_HOUR):
        names[name] = None
    numbers = (f"{year}-{serial:02}" for year, serial in product(range(10, 70), range(1, 100)))
    for number in numbers:
        if len(seedlings) >= hours * SEEDLINGS_AN_HOUR:
            break
        seedlings.setdefault(
            number, KnownSeedling(number=number, seed_parent=said[len(seedlings) % len(said)])
        )
    return Known(
        seedlings=tuple(seedlings.values()), names=tuple(KnownName(name=name) for name in names)
    )


def _made_up(names: list[str], wanted: int) -> Iterator[str]:
    """New names from the halves of others: "Fenmarsh Lantern"."""
    halves = [name.split() for name in names if len(name.split()) == 2]
    mixed = (f"{a[0]} {b[1]}" for a, b in product(halves, halves) if a != b)
    for _, name in zip(range(wanted), mixed, strict=False):
        yield name


def measure(kind: str, hours: int) -> tuple[float, int, int]:
    """CPU seconds, clips and observations of so many hours."""
    transcript, known = talk(kind, hours), on_record(kind, hours)
    vocabulary = load_vocabulary()
    start = time.process_time()
    reading = read_talk(transcript, vocabulary, known, recorded=date(2031, 6, 2))
    spent = time.process_time() - start
    return spent, len(reading.clips), sum(len(c.observations) for c in reading.clips)


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--hours", type=int, nargs="+", default=[1, 4, 16])
    parser.add_argument("--profile", action="store_true", help="say where the time goes")
    args = parser.parse_args()
    profile = cProfile.Profile()
    print("talk         hours  seconds  an hour  clips  observations")
    for kind in ("punctuated", "captions"):
        for hours in args.hours:
            if args.profile:
                profile.enable()
            spent, clips, observations = measure(kind, hours)
            profile.disable()
            over = "" if spent / hours <= AIM else f"  over the aim of {AIM:g}"
            print(
                f"{kind:<12} {hours:5}  {spent:7.2f}  {spent / hours:7.2f}  {clips:5}"
                f"  {observations:12}{over}",
                flush=True,
            )
    if args.profile:
        pstats.Stats(profile).sort_stats("tottime").print_stats(25)


if __name__ == "__main__":
    main()
