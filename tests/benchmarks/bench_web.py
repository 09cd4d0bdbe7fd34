"""How fast the pages answer with 5,000 seedlings, 500 recordings and 200,000 observations.

Run: python -m tests.benchmarks.bench_web [FOLDER]. All of it is made up. Prints milliseconds,
through the whole application but not through a network: median and slowest of 20 requests, and
the median of processor time, which does not suffer from what else the machine does.
"""

import hashlib
import json
import random
import sys
import tempfile
import time
from datetime import date, timedelta
from pathlib import Path
from statistics import median

from starlette.testclient import TestClient

from diary.linking.document import Band, PlantKind
from diary.records.clip_rows import replace_clips
from diary.records.plant_links import link_plants
from diary.records.record import Moment, Origin, PlantRef, Record, RecordClip, RecordingId
from diary.records.store import Store, now, open_store
from diary.settings import Settings
from diary.web.app import create_app

SEEDLINGS, RECORDINGS, OBSERVATIONS = 5000, 500, 200_000
PER_CLIP = 10
COLOURS = ("salmon", "white", "pink", "scarlet", "purple", "lilac", "cream", "crimson")
HABITS = ("compact", "bushy", "leggy", "upright")


def _record(plant: PlantRef, moment: Moment, at: int, dice: random.Random) -> Record:
    trait, value, part, unit = dice.choice(
        (
            ("colour", dice.choice(COLOURS), dice.choice(("bloom", "throat", "eye")), None),
            ("bloom_diameter", float(dice.randrange(30, 70)), None, "mm"),
            ("habit", dice.choice(HABITS), None, None),
            ("decision", dice.choice(("keep", "watch", "discard")), None, None),
            ("count_heads", dice.randrange(1, 9), None, "count"),
        )
    )
    return Record(
        plant=plant,
        moment=Moment(
            recording=moment.recording,
            start_ms=moment.start_ms + at * 2000,
            end_ms=moment.start_ms + at * 2000 + 1500,
            day=moment.day,
            text=str(value),
        ),
        trait=trait,
        value=value,
        part=part,
        unit=unit,
        confidence=0.9,
        band=Band.SURE,
        origin=Origin.HEARD,
    )


def make(store: Store) -> None:
    """Fill an empty diary."""
    dice = random.Random(4)
    numbers = [f"{year}-{count:03d}" for year in range(20, 30) for count in range(1, 501)]
    with store.db.atomic():
        store.db.conn.executemany(
            "INSERT INTO seedlings (number, cross_code) VALUES (?, ?)",
            [(number, f"{number[:2]}/{dice.randrange(20)}") for number in numbers[:SEEDLINGS]],
        )
        store.db.conn.executemany(
            "INSERT INTO crosses (code, seed_parent, pollen_parent) VALUES (?, ?, ?)",
            [(f"{y}/{n}", f"Mother {n}", f"Father {y}") for y in range(20, 30) for n in range(20)],
        )
        clips_each = OBSERVATIONS // RECORDINGS // PER_CLIP
        for count in range(RECORDINGS):
            name = f"walk-{count:03d}"
            recording = RecordingId(hashlib.sha256(name.encode()).hexdigest())
            day = date(2029, 3, 1) + timedelta(days=count)
            store.db.execute(
                "INSERT INTO recordings (id, name, title, path, bytes, kind, duration_ms, recorded,"
                " added_at) VALUES (?, ?, ?, ?, 1, 'video', ?, ?, ?)",
                [recording, name, name, f"/nowhere/{name}.mp4", clips_each * 22_000,
                 day.isoformat(), now()],
            )  # fmt: skip
            words = [
                {"text": "word", "start_ms": n * 400, "end_ms": n * 400 + 350} for n in range(2200)
            ]
            store.db.execute(
                "INSERT INTO transcripts (recording, words_from, made_at, body) VALUES (?,?,?,?)",
                [recording, "base", now(), _body(words)],
            )
            made = []
            for place in range(clips_each):
                number = dice.choice(numbers)
                plant = PlantRef(kind=PlantKind.SEEDLING, key=number, title=number)
                moment = Moment(
                    recording=recording,
                    start_ms=place * 22_000,
                    end_ms=place * 22_000 + 21_000,
                    day=day,
                    text="all that was said of it, some twenty words or so, " * 2,
                )
                records = tuple(_record(plant, moment, n, dice) for n in range(PER_CLIP))
                made.append(
                    RecordClip(plant=plant, moment=moment, confidence=0.9, band=Band.SURE,
                               origin=Origin.HEARD, records=records)
                )  # fmt: skip
            replace_clips(store, recording, made, reader="1")
        link_plants(store)


def _body(words: list[dict[str, object]]) -> str:
    from diary.records.words import transcript_to_json
    from diary.speech.transcript import Transcript, Word

    return transcript_to_json(
        Transcript(words=tuple(Word(**word) for word in words), segment_starts=(0,))  # type: ignore[arg-type]
    )


def measure(client: TestClient, told: str, addresses: list[str]) -> None:
    """Ask for every address once and print how long it took."""
    took, worked = [], []
    for address in addresses:
        begun, begun_work = time.perf_counter(), time.process_time()
        answer = client.get(address)
        took.append((time.perf_counter() - begun) * 1000)
        worked.append((time.process_time() - begun_work) * 1000)
        assert answer.status_code == 200, (address, answer.status_code)
    print(
        f"{told:34} median {median(took):8.1f} ms   slowest {max(took):8.1f} ms"
        f"   of the processor {median(worked):8.1f} ms"
    )


def main() -> None:
    """Make the diary if FOLDER has none, then measure."""
    given = sys.argv[1:]
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(given[0] if given else temporary)
        store = open_store(folder)
        if not store.db.execute("SELECT 1 FROM recordings LIMIT 1").fetchone():
            begun = time.perf_counter()
            make(store)
            print(f"made in {time.perf_counter() - begun:.0f} s")
        counts = {
            table: store.db.execute(f"SELECT count(*) FROM {table}").fetchone()[0]
            for table in ("seedlings", "recordings", "clips", "records")
        }
        ids = [row[0] for row in store.db.execute("SELECT id FROM recordings LIMIT 21")]
        keys = [r[0] for r in store.db.execute("SELECT DISTINCT own_key FROM clips LIMIT 21")]
        store.close()
        print(json.dumps(counts))
        app = create_app(Settings(folder=folder), inbox=False)
        client = TestClient(app, base_url="http://127.0.0.1")
        client.get("/help")
        measure(client, "seedling page, first of all", [f"/plants/{keys[0]}"])
        measure(client, "seedling page", [f"/plants/{key}" for key in keys[1:]])
        measure(client, "recording page (2,200 words)", [f"/recordings/{i}" for i in ids[1:]])
        measure(client, "bench view after a change", ["/"])
        measure(client, "bench view", ["/", "/?colour=salmon", "/?order=seen&from=60"] * 7)
        measure(client, "look-alikes after a change", [f"/alike/{keys[0]}"])
        measure(client, "look-alikes", [f"/alike/{key}" for key in keys[1:]])
        measure(client, "review list after a change", ["/review"])
        measure(client, "register", ["/register"] * 20)


if __name__ == "__main__":
    main()
