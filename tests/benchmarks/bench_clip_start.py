"""How soon a clip plays after a click on it, in a real browser, on a film that lies on this disk.

Run: python -m tests.benchmarks.bench_clip_start [MINUTES]. Makes a film of so many minutes (20) as
phones make them (1920 x 1080, 30 pictures a second, a key picture each second, sound; needs the
ffmpeg command) and a plant of many clips all over it, opens the plant's page in Chromium and
clicks one clip after another. Prints milliseconds from the click until the film plays at the
clip: median and slowest. Chromium without a graphics card decodes on the processor.
"""

import subprocess
import sys
import tempfile
from datetime import date
from pathlib import Path
from statistics import median

from playwright.sync_api import sync_playwright

from diary.media.probe import probe
from diary.records.record import RecordingId
from diary.records.recordings import content_hash, enter_recording
from diary.records.store import open_store
from tests.records.making import clip, seedling, talk
from tests.web.conftest import CHROMIUM, FLAGS, Served, ready
from tests.web.garden import read

CLIPS = 12
CLICK = """async number => {
    const screen = document.querySelector('#screen');
    const shown = document.querySelectorAll('#cliplist > .clip')[number];
    const start = JSON.parse(shown.dataset.clip).start_ms / 1000;
    const began = performance.now();
    shown.querySelector('[data-play-clip]').click();
    for (;;) {
        await new Promise(requestAnimationFrame);
        const at = screen.currentTime - start;
        if (!screen.paused && !screen.seeking && at > 0 && at < 2) return performance.now() - began;
        if (performance.now() - began > 20000) return NaN;
    }
}"""


def long_film(folder: Path, minutes: int) -> Path:
    """Twenty seconds encoded, then repeated."""
    piece, path = folder / "piece.mp4", folder / "walk.mp4"
    picture = ["-f", "lavfi", "-i", "testsrc2=size=1920x1080:rate=30:duration=20"]
    tone = ["-f", "lavfi", "-i", "sine=frequency=300:sample_rate=48000:duration=20"]
    how = [
        "-c:v",
        "libx264",
        "-preset",
        "veryfast",
        "-b:v",
        "12M",
        "-g",
        "30",
        "-pix_fmt",
        "yuv420p",
    ]
    quiet = ["ffmpeg", "-v", "error", "-y"]
    subprocess.run([*quiet, *picture, *tone, *how, "-c:a", "aac", str(piece)], check=True)
    again = ["-stream_loop", str(minutes * 3 - 1), "-i", str(piece), "-c", "copy"]
    subprocess.run([*quiet, *again, "-movflags", "+faststart", str(path)], check=True)
    return path


def main(minutes: int = 20) -> None:
    """Make the film and the diary, then click."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        path = long_film(folder, minutes)
        store = open_store(folder / "diary")
        recording = enter_recording(
            store,
            path,
            recording_id=RecordingId(content_hash(path)),
            kind="video",
            duration_ms=probe(path).duration_ms,
            recorded=date(2031, 6, 2),
            recorded_from="given",
            title="A long walk",
            group="pelargonium",
        )
        length = minutes * 60_000 // CLIPS
        read(
            store,
            recording,
            talk("salmon"),
            *(
                clip(seedling("23-04" if n % 2 else "23-07"), n * length, (n + 1) * length)
                for n in range(CLIPS)
            ),
        )
        store.close()
        served = Served(folder / "diary")
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
            page = browser.new_page()
            page.goto(f"{served.url}/plants/23-04")
            ready(page)
            took = [page.evaluate(CLICK, n) for n in (3, 1, 5, 0, 4, 2)]
            browser.close()
        served.stop()
    print("in order:", ", ".join(f"{one:.0f}" for one in took))
    print(f"film of {minutes} min: median {median(took):.0f} ms, slowest {max(took):.0f} ms")


if __name__ == "__main__":
    main(*(int(one) for one in sys.argv[1:2]))
