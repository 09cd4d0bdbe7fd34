"""Real human speech: sentences of LibriVox as Debian's package pocketsphinx-testdata has them.

Source: pocketsphinx-testdata, test/data/librivox (BSD-2-Clause; "Sense and Sensibility", read
for LibriVox, public domain), with its own transcription file.
"""

import re
import wave
from pathlib import Path

import jiwer
import pytest
from whisper_normalizer.english import EnglishTextNormalizer

from diary.media.decode import RATE, Sound
from diary.speech.recognise import recognise

FOLDER = Path("/usr/share/pocketsphinx/test/data/librivox")

pytestmark = pytest.mark.skipif(
    not FOLDER.is_dir(), reason="needs Debian's pocketsphinx-testdata (.ci/run installs it)"
)


def test_word_error_rate_with_base_is_at_most_five_percent(tmp_path: Path) -> None:
    normal = EnglishTextNormalizer()
    said: list[str] = []
    joined = tmp_path / "sentences.wav"
    with wave.open(str(joined), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(RATE)
        for line in (FOLDER / "transcription").read_text().splitlines():
            found = re.fullmatch(r"<s>(.*)</s>\s*\((\S+)\)", line.strip())
            assert found
            said.append(found[1])
            for samples in Sound(FOLDER / f"{found[2]}.wav"):
                out.writeframes(samples.tobytes())
            out.writeframes(bytes(2 * RATE))  # a second of silence
    assert len(said) == 5
    heard = recognise(joined).transcript.text
    assert jiwer.wer(normal(" ".join(said)), normal(heard)) <= 0.05
