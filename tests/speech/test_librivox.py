"""Real human speech: sentences of LibriVox as Debian's package pocketsphinx-testdata has them.

Source: pocketsphinx-testdata, test/data/librivox (BSD-2-Clause; "Sense and Sensibility", read
for LibriVox, public domain), with its own transcription file.
"""

import re
from pathlib import Path

import jiwer
import pytest
from whisper_normalizer.english import EnglishTextNormalizer

from diary.speech.recognise import recognise

FOLDER = Path("/usr/share/pocketsphinx/test/data/librivox")

pytestmark = pytest.mark.skipif(
    not FOLDER.is_dir(), reason="needs Debian's pocketsphinx-testdata (.ci/run installs it)"
)


def test_word_error_rate_with_base_is_at_most_five_percent() -> None:
    normal = EnglishTextNormalizer()
    said, heard = [], []
    for line in (FOLDER / "transcription").read_text().splitlines():
        found = re.fullmatch(r"(?:<s>)?(.*?)(?:</s>)?\s*\((\S+)\)\s*", line.strip())
        assert found
        said.append(normal(found[1]))
        heard.append(normal(recognise(FOLDER / f"{found[2]}.wav").transcript.text))
    assert len(said) == 5
    assert jiwer.wer(said, heard) <= 0.05
