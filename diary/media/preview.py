"""A copy that browsers play, made only where they cannot play the original: H.264 and AAC."""

import os
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import numpy as np

from diary.errors import Cancelled, MediaError
from diary.media.decode import RATE, Sound
from diary.media.opening import opened
from diary.media.probe import MediaInfo
from diary.media.stills import frames
from diary.media.upright import quarter_turns, upright

# What Firefox, Chromium and Safari all play, by FFmpeg's names. From common practice.
_PLAYABLE = {
    "mp4": ({"h264"}, {"aac", "mp3"}),
    "webm": ({"vp8", "vp9"}, {"opus", "vorbis"}),
    "mp3": (set(), {"mp3"}),
    "wav": (set(), {"pcm_s16le", "pcm_u8"}),
    "flac": (set(), {"flac"}),
}
_WIDEST = 1280
_CLOCK = 90_000  # ticks a second of the copy's picture track


def plays_in_browsers(info: MediaInfo, path: Path) -> bool:
    """Whether the file can be shown as it is."""
    suffix = path.suffix.lower()
    kind = (
        "mp4"
        if "mp4" in info.container and suffix in {".mp4", ".m4a", ".mov", ".m4v"}
        else "webm"
        if "webm" in info.container and suffix == ".webm"
        else info.container
    )
    video, audio = _PLAYABLE.get(kind, (set[str](), set[str]()))
    plain = info.pixel_format in (None, "yuv420p", "yuvj420p")
    return (
        (info.video_codec is None or (info.video_codec in video and plain))
        and (info.audio_codec is None or info.audio_codec in audio)
        and (info.has_picture or info.has_sound)
    )


def make_preview(
    path: Path,
    out: Path,
    *,
    on_progress: Callable[[int], None] = lambda at_ms: None,
    cancelled: Callable[[], bool] = lambda: False,
) -> None:
    """Write a copy of `path` to `out` (an .mp4) with the same clock, at most 1280 wide.

    The picture keeps its own times (variable frame rate too); the sound is mono at 16 kHz
    with gaps as silence. Written beside `out` first: `out` is whole or not there. MediaError,
    or Cancelled.
    """
    import av

    partial = out.with_name(f"{out.name}.{os.getpid()}.partial")
    out.parent.mkdir(parents=True, exist_ok=True)
    try:
        with (
            opened(path) as source,
            av.open(str(partial), "w", format="mp4", options={"movflags": "+faststart"}) as copy,
        ):
            picture = source.streams.video[0] if source.streams.video else None
            sound = Sound(path) if source.streams.audio else None
            _Copy(path, source, copy, picture, sound, on_progress, cancelled).run()
        partial.replace(out)
    except av.error.FFmpegError as error:
        raise MediaError(f"No preview of {path} could be made: {error.strerror}.") from error
    finally:
        partial.unlink(missing_ok=True)


class _Copy:
    """The two tracks of a preview, written side by side in order of time."""

    def __init__(
        self,
        path: Path,
        source: Any,
        copy: Any,
        picture: Any,
        sound: Sound | None,
        on_progress: Callable[[int], None],
        cancelled: Callable[[], bool],
    ) -> None:
        self._path, self._source, self._copy, self._picture = path, source, copy, picture
        self._on_progress, self._cancelled = on_progress, cancelled
        self._chunks = iter(sound) if sound else iter(())
        self._video: Any = self._add_video() if picture else None
        self._audio: Any = self._add_audio() if sound else None
        self._heard = 0  # samples written

    def _add_video(self) -> Any:
        width, height = self._size()
        scale = min(1.0, _WIDEST / max(1, width))
        video = self._copy.add_stream(
            "libx264", rate=30, options={"preset": "veryfast", "crf": "26"}
        )
        video.width = max(2, int(width * scale) // 2 * 2)
        video.height = max(2, int(height * scale) // 2 * 2)
        video.pix_fmt = "yuv420p"
        video.codec_context.time_base = Fraction(1, _CLOCK)
        return video

    def _size(self) -> tuple[int, int]:
        """Width and height upright, which only a decoded picture tells."""
        context = self._picture.codec_context
        for _, frame in frames(self._path, 0, 10_000, most=1):
            if quarter_turns(frame) % 2:
                return context.height, context.width
        return context.width, context.height

    def _add_audio(self) -> Any:
        audio = self._copy.add_stream("aac", rate=RATE, layout="mono")
        audio.bit_rate = 48_000
        return audio

    def run(self) -> None:
        if self._video is None and self._audio is None:
            raise MediaError(f"{self._path} has neither picture nor sound.")
        last = -1
        for frame in self._pictures():
            if self._cancelled():
                raise Cancelled(f"The preview of {self._path} was stopped.")
            pts = round((frame.time or 0.0) * _CLOCK)
            if pts <= last:
                continue
            last = pts
            self._sound_until(pts * RATE // _CLOCK)
            small = upright(frame).reformat(
                width=self._video.width, height=self._video.height, format="yuv420p"
            )
            small.pts, small.time_base = pts, Fraction(1, _CLOCK)
            small.pict_type = 0  # let the encoder choose; the source's key frames are not ours
            self._mux(self._video, small)
            self._on_progress(pts * 1000 // _CLOCK)
        self._sound_until(None)
        for stream in (self._video, self._audio):
            if stream is not None:
                self._mux(stream, None)

    def _pictures(self) -> Any:
        import av

        if self._picture is None:
            return
        for packet in self._source.demux(self._picture):
            try:
                yield from packet.decode()
            except av.error.FFmpegError:
                continue  # a damaged picture costs only itself

    def _sound_until(self, sample: int | None) -> None:
        import av

        while self._audio is not None and (sample is None or self._heard < sample):
            if self._cancelled():
                raise Cancelled("The preview was stopped.")
            chunk = next(self._chunks, None)
            if chunk is None:
                return
            frame: Any = av.AudioFrame.from_ndarray(
                np.ascontiguousarray(chunk)[None, :], format="s16", layout="mono"
            )
            frame.sample_rate = RATE
            frame.pts, frame.time_base = self._heard, Fraction(1, RATE)
            self._heard += len(chunk)
            self._mux(self._audio, frame)

    def _mux(self, stream: Any, frame: Any) -> None:
        for packet in stream.encode(frame):
            self._copy.mux(packet)
