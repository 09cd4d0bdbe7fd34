"""The sound of a media file as 16 kHz mono, sample for sample at its true time.

A decoding loop of our own over PyAV: faster-whisper's drops the presentation times and loses
the rest of a file after one bad packet. Here a bad packet costs only itself, a gap or a late
start becomes silence of the same length, and `SoundReport` says what was missing.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt

from diary.errors import MediaError
from diary.media.opening import opened

RATE = 16_000  # samples a second, what Whisper and Silero VAD take
Samples = npt.NDArray[np.int16]

# A frame this far from where the last one ended is a gap or an overlap; less is the rounding of
# time stamps (milliseconds in Matroska, and some cameras' AAC jitters by a frame of 21 ms).
_TOLERANCE_S = 0.1
# Containers whose clock starts anywhere; in all others players count from time 0.
_FREE_CLOCK = ("mpegts", "mpeg", "ogg", "flv", "rtsp", "asf")
_PROBE_PACKETS = 200  # a track that gives no frame in so many packets is not decodable
_CHUNK = RATE  # samples of silence given out at once in a gap


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """A stretch without sound data, filled with silence."""

    start_ms: int
    end_ms: int


@dataclass(slots=True)
class SoundReport:
    """What came of decoding; complete when the stream has been read to its end."""

    decoded_ms: int = 0
    promised_ms: int = 0
    bad_packets: int = 0
    starts_ms: int = 0
    gaps: list[Gap] = field(default_factory=list)
    skipped_tracks: int = 0

    def sentences(self) -> tuple[str, ...]:
        """What a person should know was missing, one sentence each; empty when all was there."""
        said = []
        if self.skipped_tracks:
            said.append(
                f"{self.skipped_tracks} sound track(s) could not be decoded; took the next."
            )
        if self.starts_ms > 200:
            said.append(f"The sound starts {_clock(self.starts_ms)} into the recording.")
        if self.bad_packets:
            said.append(f"{self.bad_packets} damaged piece(s) of sound were left out.")
        said.extend(
            f"No sound from {_clock(gap.start_ms)} to {_clock(gap.end_ms)}." for gap in self.gaps
        )
        if self.promised_ms - self.decoded_ms > 1500:
            said.append(
                f"The file says it is {_clock(self.promised_ms)} long, but its sound ends at "
                f"{_clock(self.decoded_ms)}: it may have been cut off."
            )
        return tuple(said)


def _clock(ms: int) -> str:
    minutes, seconds = divmod(ms / 1000, 60)
    hours, minutes = divmod(int(minutes), 60)
    return f"{hours}:{minutes:02d}:{seconds:04.1f}" if hours else f"{minutes}:{seconds:04.1f}"


class Sound:
    """The sound of `path`: iterate for chunks that follow each other without a gap from 0 on.

    Chunks are int16, of any length; memory does not grow with the file. MediaError where the
    file cannot be opened or has no track that can be decoded.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.report = SoundReport()
        self._given = 0  # samples given out: the time of the next one
        self._overlap = 0  # samples still to be dropped: their time has been given out already

    def __iter__(self) -> Iterator[Samples]:
        self.report, self._given, self._overlap = SoundReport(), 0, 0
        with opened(self.path) as container:
            tracks = [s for s in container.streams.audio if s.codec_context is not None]
            self.report.skipped_tracks = len(container.streams.audio) - len(tracks)
            if not container.streams.audio:
                raise MediaError(f"{self.path} has no sound track: there is nothing to hear.")
            number = next((s.index for s in tracks if _decodes(self.path, s.index)), None)
            if number is None:
                raise MediaError(f"No sound track of {self.path} can be decoded.")
            self.report.skipped_tracks += [s.index for s in tracks].index(number)
            yield from self._stream(container, container.streams[number])
        self.report.decoded_ms = self._given * 1000 // RATE

    def _stream(self, container: Any, stream: Any) -> Iterator[Samples]:
        origin = 0.0
        if container.start_time and container.format.name in _FREE_CLOCK:
            origin = container.start_time / 1_000_000
        self.report.promised_ms = _promised_ms(container, stream, origin)
        clock = _FrameClock()
        resampler: Any = None
        kind: tuple[object, ...] | None = None
        for packet in _packets(container, stream, self.report):
            for frame in _frames(packet, self.report):
                if not frame.samples or not frame.sample_rate:
                    continue
                at = None if frame.time is None else frame.time - origin
                jump = clock.jump(at)
                now = (frame.sample_rate, frame.layout.name, frame.format.name)
                if jump is not None or now != kind:
                    if resampler is not None:
                        yield from self._place(_flushed(resampler))
                    resampler, kind = _resampler(), now
                    if jump is not None:
                        yield from self._move_to(jump, first=not clock.started)
                clock.advance(at, frame.samples / frame.sample_rate)
                frame.pts = None  # times are kept by us; the resampler must not see jumps
                for out in resampler.resample(frame):
                    yield from self._place(out.to_ndarray()[0])
        if resampler is not None:
            yield from self._place(_flushed(resampler))

    def _place(self, samples: Samples) -> Iterator[Samples]:
        if self._overlap:
            cut = min(self._overlap, len(samples))
            self._overlap -= cut
            samples = samples[cut:]
        if len(samples):
            self._given += len(samples)
            yield samples

    def _move_to(self, at: float, *, first: bool) -> Iterator[Samples]:
        """Go on at second `at`: silence up to there, or drop what would come twice."""
        target = round(at * RATE)
        self._overlap = max(0, self._given - target)
        missing = target - self._given
        if missing <= 0:
            return
        start_ms = self._given * 1000 // RATE
        if first:
            self.report.starts_ms = target * 1000 // RATE
        elif missing > RATE // 5:
            self.report.gaps.append(Gap(start_ms=start_ms, end_ms=target * 1000 // RATE))
        while missing > 0:
            piece = np.zeros(min(missing, _CHUNK), dtype=np.int16)
            missing -= len(piece)
            self._given += len(piece)
            yield piece


class _FrameClock:
    """Where the next frame is due, in seconds; tells a jump from jitter."""

    def __init__(self) -> None:
        self._due: float | None = None

    @property
    def started(self) -> bool:
        return self._due is not None

    def jump(self, at: float | None) -> float | None:
        """The second to go on at if this frame does not follow the last one, else None."""
        if self._due is None:
            return at or 0.0
        if at is None or abs(at - self._due) <= _TOLERANCE_S:
            return None
        return at

    def advance(self, at: float | None, length: float) -> None:
        """A frame of `length` seconds has been taken; small differences are not followed."""
        if self._due is None or (at is not None and abs(at - self._due) > _TOLERANCE_S):
            self._due = at or 0.0
        self._due += length


def _resampler() -> Any:
    import av

    return av.AudioResampler(format="s16", layout="mono", rate=RATE)


def _flushed(resampler: Any) -> Samples:
    """What the resampler still holds back."""
    import av

    try:
        rest = [out.to_ndarray()[0] for out in resampler.resample(None)]
    except (av.error.FFmpegError, ValueError):  # nothing was ever put in
        rest = []
    return np.concatenate(rest) if rest else np.zeros(0, dtype=np.int16)


def _frames(packet: Any, report: SoundReport) -> list[Any]:
    import av

    try:
        return list(packet.decode())
    except (av.error.FFmpegError, ValueError):
        report.bad_packets += 1
        return []


def _packets(container: Any, stream: Any, report: SoundReport) -> Iterator[Any]:
    """Every packet of the track; after a read error goes on a second further along."""
    import av

    last = 0.0
    index = stream.index
    packets = container.demux(stream)
    errors = 0
    while True:
        try:
            packet = next(packets)
        except StopIteration:
            return
        except (av.error.FFmpegError, ValueError):
            report.bad_packets += 1
            errors += 1
            if errors > 1000:
                return
            last += 1.0
            try:
                container.seek(round(last * 1_000_000), backward=False)
            except (av.error.FFmpegError, ValueError):
                return
            packets = container.demux(container.streams[index])
            continue
        if packet.pts is not None and packet.time_base is not None:
            last = float(packet.pts * packet.time_base)
        yield packet


def _decodes(path: Path, index: int) -> bool:
    """Whether the track gives a frame within its first packets."""
    import av

    with opened(path) as container:
        stream = container.streams[index]
        if stream.codec_context is None:
            return False
        report = SoundReport()
        try:
            for count, packet in enumerate(container.demux(stream)):
                if any(frame.samples for frame in _frames(packet, report)):
                    return True
                if count >= _PROBE_PACKETS:
                    return False
        except (av.error.FFmpegError, ValueError):
            return False
    return False


def _promised_ms(container: Any, stream: Any, origin: float) -> int:
    """The end of the track by the container's word; 0 where it says nothing."""
    if stream.duration and stream.time_base:
        start = float((stream.start_time or 0) * stream.time_base) - origin
        return round((start + float(stream.duration * stream.time_base)) * 1000)
    return round((container.duration or 0) / 1000)


def seconds(path: Path, start_ms: int, end_ms: int) -> Samples:
    """The samples of `path` between two moments (fewer where the sound ends before)."""
    first, last = start_ms * RATE // 1000, end_ms * RATE // 1000
    taken, at = [], 0
    for chunk in Sound(path):
        if at + len(chunk) > first:
            taken.append(chunk[max(0, first - at) : last - at])
        at += len(chunk)
        if at >= last:
            break
    return np.concatenate(taken) if taken else np.zeros(0, dtype=np.int16)
