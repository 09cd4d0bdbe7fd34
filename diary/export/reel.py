"""A reel of one plant: its clips from every recording, cut and joined to one film with captions.

The film is H.264 with AAC sound and carries its captions as a text track; `reel_captions` are
the same for a file beside it. A recording without a picture shows a card with the plant, the
day and the words.
"""

import os
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from diary.errors import Cancelled, MediaError, NotFound
from diary.export.captions import Cue, cues
from diary.export.reel_shot import Shot
from diary.records.pages import plant_page
from diary.records.record import RecordClip
from diary.records.recordings import locate, recording, transcript
from diary.records.store import Store
from diary.speech.transcript import Transcript

_MARGIN_MS = 300  # before and after a clip, so that no word is cut
_CAPTION_LEAST_MS = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class ReelPlan:
    """The shots of a reel in order of day, and what had to be left out, a sentence each."""

    title: str
    shots: tuple[Shot, ...]
    left_out: tuple[str, ...]

    @property
    def length_ms(self) -> int:
        """How long the reel lasts."""
        return sum(shot.length_ms for shot in self.shots)


def plan_reel(store: Store, which: str) -> ReelPlan:
    """Find the clips of a plant. Raises NotFound if it is unknown or was never filmed."""
    page = plant_page(store, which)
    shots: list[Shot] = []
    left_out: list[str] = []
    for clip in page.clips:
        source = recording(store, clip.moment.recording)
        if source.kind not in ("video", "audio"):
            left_out.append(f"{source.name} is no film: its {source.kind} has no sound or picture.")
            continue
        try:
            path = locate(store, source.id)
        except NotFound as error:
            left_out.append(str(error))
            continue
        words = transcript(store, source.id)
        shots.append(shot_of(clip, path, words, source.duration_ms))
    if not shots:
        why = " ".join(left_out) or "It has not been seen in any recording."
        raise NotFound(f"There is no film of {page.plant.title}. {why}")
    return ReelPlan(title=page.plant.title, shots=tuple(shots), left_out=tuple(left_out))


def shot_of(clip: RecordClip, path: Path, words: Transcript, duration_ms: int | None) -> Shot:
    """The shot of a clip, with a little before and after it, and the captions that fall in it."""
    start = max(0, clip.moment.start_ms - _MARGIN_MS)
    end = clip.moment.end_ms + _MARGIN_MS
    if duration_ms is not None:
        end = max(start + 1, min(end, duration_ms))
    day = clip.moment.day.isoformat() if clip.moment.day else None
    return Shot(
        path=path,
        start_ms=start,
        end_ms=end,
        title=f"{clip.plant.title}, {day}" if day else clip.plant.title,
        captions=tuple(
            Cue(
                start_ms=max(0, cue.start_ms - start),
                end_ms=min(end - start, cue.end_ms - start),
                text=cue.text,
            )
            for cue in cues(_within(words, clip.moment.start_ms, clip.moment.end_ms))
            if min(end, cue.end_ms) - max(start, cue.start_ms) >= _CAPTION_LEAST_MS
        ),
    )


def _within(words: Transcript, start_ms: int, end_ms: int) -> Transcript:
    """The words that begin in a clip: those of its neighbours are not its captions."""
    kept = tuple(word for word in words.words if start_ms <= word.start_ms < end_ms)
    return Transcript(words=kept)


def reel_captions(shots: Sequence[Shot]) -> tuple[Cue, ...]:
    """The captions of all shots on the reel's clock."""
    found: list[Cue] = []
    at = 0
    for shot in shots:
        found.extend(
            Cue(start_ms=at + cue.start_ms, end_ms=at + cue.end_ms, text=cue.text)
            for cue in shot.captions
        )
        at += shot.length_ms
    return tuple(found)


def make_reel(
    shots: Sequence[Shot],
    out: Path,
    *,
    on_progress: Callable[[int, int], None] = lambda done_ms, all_ms: None,
    cancelled: Callable[[], bool] = lambda: False,
) -> None:
    """Cut and join the shots to `out` (an .mp4): whole when it is there, or not there at all.

    Raises MediaError, or Cancelled.
    """
    import av

    from diary.export.reel_tracks import Reel

    if not shots:
        raise MediaError("A reel needs at least one clip.")
    out.parent.mkdir(parents=True, exist_ok=True)
    partial = out.with_name(f"{out.name}.{os.getpid()}.partial")
    total = sum(shot.length_ms for shot in shots)
    try:
        with av.open(str(partial), "w", format="mp4", options={"movflags": "+faststart"}) as film:
            reel = Reel(film, shots)
            done = 0
            for shot in shots:
                if cancelled():
                    raise Cancelled(f"The reel {out.name} was stopped; nothing was written.")
                reel.add(shot)
                done += shot.length_ms
                on_progress(done, total)
            reel.finish()
        partial.replace(out)
    except av.error.FFmpegError as error:
        raise MediaError(f"The reel {out} could not be made: {error.strerror}.") from error
    finally:
        partial.unlink(missing_ok=True)
