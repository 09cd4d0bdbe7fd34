"""The three tracks of a reel: picture, sound and captions, each shot laid after the last.

Times within a shot are kept as filmed (variable frame rate too); a gap in the sound is silence,
and sound and picture of each shot start together.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

import numpy as np
import numpy.typing as npt

from diary.errors import MediaError
from diary.export.fonts import font_files
from diary.export.reel_shot import Shot
from diary.media.opening import opened
from diary.media.upright import quarter_turns

RATE = 48_000  # of the sound, samples a second
_CLOCK = 90_000  # of the picture, ticks a second
_WIDEST, _HIGHEST = 1280, 720
_CARD_SIZE = (1280, 720)
_CARD_RATE = 5  # pictures a second of a card
_BEFORE_S = 1  # sound is decoded from a little earlier: codecs need a run-up
_BLOCK = 1024  # samples, one AAC frame
# FFmpeg's encoder of text tracks asks for a style in the form of an ASS header
_CAPTION_STYLE = (
    b"[Script Info]\r\nScriptType: v4.00+\r\nPlayResX: 384\r\nPlayResY: 288\r\n\r\n"
    b"[V4+ Styles]\r\nFormat: Name, Fontname, Fontsize, PrimaryColour, SecondaryColour, "
    b"OutlineColour, BackColour, Bold, Italic, Underline, StrikeOut, ScaleX, ScaleY, Spacing, "
    b"Angle, BorderStyle, Outline, Shadow, Alignment, MarginL, MarginR, MarginV, Encoding\r\n"
    b"Style: Default,Arial,16,&Hffffff,&Hffffff,&H0,&H0,0,0,0,0,100,100,0,0,1,1,0,2,10,10,10,0"
    b"\r\n\r\n[Events]\r\n"
    b"Format: Layer, Start, End, Style, Name, MarginL, MarginR, MarginV, Effect, Text\r\n"
)


class Reel:
    """A film being written. `add` the shots in order, then `finish`."""

    def __init__(self, film: Any, shots: Sequence[Shot]) -> None:
        self._film = film
        self._at_ms = 0
        self._last_pts = -1
        self._samples = 0
        width, height = _size(shots)
        self._video = film.add_stream(
            "libx264", rate=30, options={"preset": "veryfast", "crf": "23"}
        )
        self._video.width, self._video.height = width, height
        self._video.pix_fmt = "yuv420p"
        self._video.codec_context.time_base = Fraction(1, _CLOCK)
        self._audio = film.add_stream("aac", rate=RATE, layout="mono")
        self._audio.bit_rate = 96_000
        self._text = film.add_stream("mov_text")
        self._text.codec_context.subtitle_header = _CAPTION_STYLE
        self._text.codec_context.time_base = Fraction(1, 1000)

    def add(self, shot: Shot) -> None:
        """Lay a shot after those before it. MediaError if its file cannot be read."""
        for at_ms, picture in _pictures(shot, (self._video.width, self._video.height)):
            self._show(self._at_ms + at_ms, picture)
        self._hear(_sound(shot))
        for cue in shot.captions:
            self._write(self._at_ms + cue.start_ms, self._at_ms + cue.end_ms, cue.text)
        self._at_ms += shot.length_ms

    def finish(self) -> None:
        """Write what the encoders still hold."""
        for stream in (self._video, self._audio):
            for packet in stream.encode(None):
                self._film.mux(packet)

    def _show(self, at_ms: int, picture: Any) -> None:
        pts = max(self._last_pts + 1, at_ms * _CLOCK // 1000)
        self._last_pts = pts
        picture.pts, picture.time_base = pts, Fraction(1, _CLOCK)
        picture.pict_type = 0  # the source's key frames are not ours
        for packet in self._video.encode(picture):
            self._film.mux(packet)

    def _hear(self, samples: npt.NDArray[np.float32]) -> None:
        import av

        for first in range(0, len(samples), _BLOCK):
            block = samples[first : first + _BLOCK]
            frame: Any = av.AudioFrame.from_ndarray(
                np.ascontiguousarray(block)[None, :], format="fltp", layout="mono"
            )
            frame.sample_rate = RATE
            frame.pts, frame.time_base = self._samples, Fraction(1, RATE)
            self._samples += len(block)
            for packet in self._audio.encode(frame):
                self._film.mux(packet)

    def _write(self, start_ms: int, end_ms: int, text: str) -> None:
        """One caption: its length in two bytes, then UTF-8 (3GPP TS 26.245, 5.2)."""
        import av

        said = text.encode("utf-8")[:65_535]
        packet: Any = av.Packet(len(said).to_bytes(2, "big") + said)
        packet.stream = self._text
        packet.time_base = Fraction(1, 1000)
        packet.pts = packet.dts = start_ms
        packet.duration = max(1, end_ms - start_ms)
        self._film.mux(packet)


def _size(shots: Sequence[Shot]) -> tuple[int, int]:
    """The reel's size: that of its largest picture, at most 1280 by 720, upright kept upright."""
    sizes = [size for shot in shots if (size := _picture_size(shot)) is not None]
    if not sizes:
        return _CARD_SIZE
    width, height = max(sizes, key=lambda size: size[0] * size[1])
    limit = (_WIDEST, _HIGHEST) if width >= height else (_HIGHEST, _WIDEST)
    scale = min(1.0, limit[0] / width, limit[1] / height)
    return max(2, int(width * scale) // 2 * 2), max(2, int(height * scale) // 2 * 2)


def _picture_size(shot: Shot) -> tuple[int, int] | None:
    for _, frame in _frames(shot):
        turned = quarter_turns(frame) % 2
        return (frame.height, frame.width) if turned else (frame.width, frame.height)
    return None


def _pictures(shot: Shot, size: tuple[int, int]) -> Iterator[tuple[int, Any]]:
    """The shot's pictures fitted to the reel's size; the last one stays to the shot's end."""
    import av

    shown: tuple[int, Any] | None = None
    for at_ms, frame in _frames(shot):
        picture = _fitted(frame, size)
        if shown is None and at_ms > 0:
            yield 0, av.VideoFrame.from_ndarray(picture, format="rgb24")
        shown = at_ms, picture
        yield at_ms, av.VideoFrame.from_ndarray(picture, format="rgb24")
    if shown is not None:
        last = shot.length_ms - 1
        if last > shown[0]:
            yield last, av.VideoFrame.from_ndarray(shown[1], format="rgb24")
        return
    for at_ms in range(0, shot.length_ms, 1000 // _CARD_RATE):
        said = next((c.text for c in shot.captions if c.start_ms <= at_ms < c.end_ms), "")
        yield at_ms, av.VideoFrame.from_ndarray(_card(shot.title, said, size), format="rgb24")


def _frames(shot: Shot) -> Iterator[tuple[int, Any]]:
    """The decoded pictures of a shot with their times from its start; none without a picture."""
    import av

    with opened(shot.path) as source:
        films = [s for s in source.streams.video if not s.disposition & s.disposition.attached_pic]
        if not films:
            return
        source.seek(max(0, shot.start_ms) * 1000, backward=True)
        for packet in source.demux(films[0]):
            try:
                decoded = packet.decode()
            except av.error.FFmpegError:
                continue  # a damaged picture costs only itself
            for frame in decoded:
                at_ms = round((frame.time or 0.0) * 1000)
                if at_ms >= shot.end_ms:
                    return
                if at_ms >= shot.start_ms:
                    yield at_ms - shot.start_ms, frame


def _fitted(frame: Any, size: tuple[int, int]) -> npt.NDArray[np.uint8]:
    """The picture upright, as large as fits, on black."""
    turns = quarter_turns(frame)
    width, height = frame.width, frame.height
    if turns % 2:
        width, height = height, width
    scale = min(size[0] / width, size[1] / height)
    fit = (max(2, int(width * scale) // 2 * 2), max(2, int(height * scale) // 2 * 2))
    raw = (fit[1], fit[0]) if turns % 2 else fit
    picture = frame.reformat(width=raw[0], height=raw[1], format="rgb24").to_ndarray()
    picture = np.rot90(picture, turns)
    page = np.zeros((size[1], size[0], 3), dtype=np.uint8)
    left, top = (size[0] - fit[0]) // 2, (size[1] - fit[1]) // 2
    page[top : top + fit[1], left : left + fit[0]] = picture
    return page


def _card(title: str, said: str, size: tuple[int, int]) -> npt.NDArray[np.uint8]:
    """A still card for sound without a picture: the plant and day, and the words of the moment."""
    from PIL import Image, ImageDraw, ImageFont

    card = Image.new("RGB", size, "#24301f")
    draw = ImageDraw.Draw(card)
    face = str(font_files()[""])
    large, small = (ImageFont.truetype(face, size[1] // part) for part in (12, 18))
    draw.multiline_text((size[0] // 16, size[1] // 8), title, font=large, fill="#ffffff")
    draw.multiline_text((size[0] // 16, size[1] // 2), said, font=small, fill="#d8e0d0")
    return np.asarray(card)


def _sound(shot: Shot) -> npt.NDArray[np.float32]:
    """The shot's sound, sample for sample at its time; silence where there is none."""
    import av

    samples = np.zeros(shot.length_ms * RATE // 1000, dtype=np.float32)
    with opened(shot.path) as source:
        if not source.streams.audio:
            return samples
        stream = source.streams.audio[0]
        source.seek(max(0, shot.start_ms - _BEFORE_S * 1000) * 1000, backward=True)
        resampler: Any = None
        for packet in source.demux(stream):
            try:
                decoded = packet.decode()
            except av.error.FFmpegError:
                continue  # a damaged piece of sound costs only itself
            for frame in decoded:
                if frame.time is not None and frame.time * 1000 >= shot.end_ms:
                    return samples
                # a resampler of its own for each frame would click: one for the whole shot
                resampler = resampler or av.AudioResampler(format="fltp", layout="mono", rate=RATE)
                begin = frame.time
                for piece in resampler.resample(frame):
                    at = piece.time if piece.time is not None else begin
                    if at is None:
                        raise MediaError(f"{shot.path}: its sound carries no times.")
                    _lay(samples, piece.to_ndarray()[0], round((at - shot.start_ms / 1000) * RATE))
    return samples


def _lay(samples: npt.NDArray[np.float32], piece: npt.NDArray[np.float32], at: int) -> None:
    """Put a piece at its place, as far as it lies within."""
    first, last = max(0, at), min(len(samples), at + len(piece))
    if first < last:
        samples[first:last] = piece[first - at : last - at]
