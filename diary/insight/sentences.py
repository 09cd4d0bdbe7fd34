"""The sentence in which something was said, from the words around a moment. Pure."""

import re
from bisect import bisect_left

from diary.records.record import Moment
from diary.speech.transcript import Transcript

_END = re.compile(r"[.!?][\"')\]]*$")
_LONGEST = 40  # words: unpunctuated talk has no ends
_PAUSE_MS = 1500


def sentence_at(transcript: Transcript, moment: Moment) -> str:
    """The words of `moment` with those around them, back and on to a full stop or a pause.

    A moment as long as a clip is given as it is.
    """
    words = transcript.words
    starts = [word.start_ms for word in words]
    first = bisect_left(starts, moment.start_ms)
    last = bisect_left(starts, moment.end_ms) - 1
    if first >= len(words) or last < first or last - first >= _LONGEST:
        return moment.text

    def parted(index: int) -> bool:
        """Whether a sentence ends between the words at `index` and the next."""
        pause = words[index + 1].start_ms - words[index].end_ms
        return bool(_END.search(words[index].text)) or pause > _PAUSE_MS

    before = _LONGEST // 2
    while first > 0 and before and not parted(first - 1):
        first, before = first - 1, before - 1
    after = _LONGEST // 2
    while last + 1 < len(words) and after and not parted(last):
        last, after = last + 1, after - 1
    return transcript.quote(first, last)
