"""A walk's plants as chapters: a WebVTT track, and lines for a video's description. Pure."""

from collections.abc import Sequence

from diary.export.captions import Cue, webvtt
from diary.insight.names import written
from diary.linking.document import PlantKind
from diary.records.record import PlantRef, RecordClip

# Video sites take the lines as chapters when the first is 0:00 and each lasts ten seconds or
# more (common practice).
_LEAST_MS = 10_000
# two clips of one plant with less talk between them are one chapter
_SAME_MS = 5000
_OPENING = "Opening"
_BETWEEN = "In between"


def chapter_cues(
    clips: Sequence[RecordClip], duration_ms: int | None, *, gaps: bool = False
) -> tuple[Cue, ...]:
    """A chapter a clip, neighbours about one plant joined; they follow and never overlap.

    With `gaps`, talk before, between and after the clips gets chapters of its own.
    """
    found: list[Cue] = []
    for clip in sorted(clips, key=lambda one: one.moment.start_ms):
        start, end = clip.moment.start_ms, clip.moment.end_ms
        title = chapter_title(clip.plant)
        if found and found[-1].text == title and start - found[-1].end_ms <= _SAME_MS:
            found[-1] = Cue(start_ms=found[-1].start_ms, end_ms=end, text=title)
            continue
        begin = max(start, found[-1].end_ms) if found else start
        if end > begin:
            found.append(Cue(start_ms=begin, end_ms=end, text=title))
    return tuple(_filled(found, duration_ms)) if gaps else tuple(found)


def _filled(found: list[Cue], duration_ms: int | None) -> list[Cue]:
    filled: list[Cue] = []
    at = 0
    for cue in found:
        if cue.start_ms > at:
            title = _BETWEEN if filled else _OPENING
            filled.append(Cue(start_ms=at, end_ms=cue.start_ms, text=title))
        filled.append(cue)
        at = cue.end_ms
    if duration_ms is not None and duration_ms > at:
        filled.append(Cue(start_ms=at, end_ms=duration_ms, text="Close"))
    return filled


def chapter_title(plant: PlantRef) -> str:
    """A plant as a chapter's title: a number bare, a name in single quotes."""
    if plant.kind is PlantKind.UNNAMED:
        return plant.title.lstrip("?") or "Unnumbered plant"
    return written(plant.title)


def chapters_webvtt(clips: Sequence[RecordClip], duration_ms: int | None) -> str:
    """A chapters track: plain titles, one after another."""
    return webvtt(chapter_cues(clips, duration_ms))


def chapter_lines(clips: Sequence[RecordClip], duration_ms: int | None) -> str:
    """Lines such as "12:03 23-04", the first at 0:00, none shorter than ten seconds.

    A chapter that is too short goes into the one before it, with both plants in the title.
    """
    found: list[Cue] = []
    for cue in chapter_cues(clips, duration_ms, gaps=True):
        short = min(one.end_ms - one.start_ms for one in (*found[-1:], cue))
        if found and short < _LEAST_MS:
            found[-1] = _joined(found[-1], cue)
        else:
            found.append(cue)
    return "".join(f"{_clock(cue.start_ms)} {cue.text}\n" for cue in found)


def _joined(first: Cue, second: Cue) -> Cue:
    names = [first.text]
    if second.text not in (_BETWEEN, "Close", first.text):
        names = [second.text] if first.text in (_OPENING, _BETWEEN) else [first.text, second.text]
    return Cue(start_ms=first.start_ms, end_ms=second.end_ms, text=", ".join(names))


def _clock(milliseconds: int) -> str:
    seconds = milliseconds // 1000
    hours, minutes = seconds // 3600, seconds // 60 % 60
    if hours:
        return f"{hours}:{minutes:02d}:{seconds % 60:02d}"
    return f"{minutes}:{seconds % 60:02d}"
