"""A hand-held camera that follows the talk along the bench, and the frames it sees.

It turns to a plant as the plant is first spoken of, comes close while the flower is
described and draws back for the plant as a whole; a hand's slow wobble never stops.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from making.bench import FLOOR, MARGIN, PARALLAX, TALL, Bench

FRAME = (640, 360)
FRAMES_PER_SECOND = 12
_LEAD_S = 0.4  # the hand moves a little before the words
_EASE_S = 0.42  # how slowly the camera follows its aim
_OF_THE_FLOWER = ("colour", "marking", "bloom_form", "bloom_diameter", "bloom_size", "scent")


@dataclass(frozen=True, slots=True)
class _Aim:
    x: float
    y: float
    width: float  # pixels of the bench picture seen across


def film(
    bench: Bench, script: dict[str, Any], times: Sequence[tuple[float, float]], seconds: float
) -> Iterator[NDArray[np.uint8]]:
    """Every frame of the walk, as height x width x 3 bytes."""
    aims = _aims(bench, script)
    layers = [(bench.front, 1.0), (bench.front.reduce(2), 0.5)]
    now = aims[0]
    speed = np.zeros(3)
    step = 1 / FRAMES_PER_SECOND
    for frame in range(int(seconds * FRAMES_PER_SECOND)):
        clock = frame * step
        spoken = [n for n, (start, _) in enumerate(times) if start - _LEAD_S <= clock]
        aim = aims[spoken[-1] if spoken else 0]
        place, goal = np.array([now.x, now.y, now.width]), np.array([aim.x, aim.y, aim.width])
        for _ in range(4):  # a critically damped spring, in four smaller steps
            pull = (goal - place) / _EASE_S**2 - 2 * speed / _EASE_S
            speed = speed + pull * step / 4
            place = place + speed * step / 4
        now = _Aim(*map(float, place))
        yield _look(bench, layers, now, clock)


def _aims(bench: Bench, script: dict[str, Any]) -> list[_Aim]:
    """Where to look during each utterance."""
    wide = _Aim(MARGIN + 500, TALL * 0.52, 3000)
    aims: list[_Aim] = []
    for n in range(len(script["utterances"])):
        clip = next((c for c in script["clips"] if c["first"] <= n <= c["last"]), None)
        if clip is None:
            last = aims[-1] if aims else wide
            aims.append(_Aim(last.x if aims else wide.x, wide.y, wide.width))
            continue
        spot = bench.spots[clip["plant"]]
        traits = {o["trait"] for o in clip["observations"] if o["u"] == n}
        if traits & set(_OF_THE_FLOWER):
            aims.append(_Aim(spot.bloom[0], spot.bloom[1] + 40, 420 + 11.5 * spot.bloom_mm))
        else:
            top, foot = spot.bloom[1] - 330, FLOOR + 110
            across = (foot - top) * FRAME[0] / FRAME[1] - 90 * (n - clip["first"])
            aims.append(_Aim(spot.x, (top + foot) / 2, across))
    return aims


def _look(
    bench: Bench, layers: list[tuple[Image.Image, float]], aim: _Aim, clock: float
) -> NDArray[np.uint8]:
    sway = aim.width / 640
    x = aim.x + sway * (5 * math.sin(clock * 0.9) + 3 * math.sin(clock * 2.1 + 1))
    y = aim.y + sway * (4 * math.sin(clock * 1.1 + 2) + 2 * math.sin(clock * 2.7))
    turn = math.radians(0.55 * math.sin(clock * 0.7) + 0.3 * math.sin(clock * 1.7))
    width = aim.width * (1 + 0.012 * math.sin(clock * 0.5))
    height = width * FRAME[1] / FRAME[0]
    y = min(max(y, height / 2 + 40), TALL - height / 2 - 40) if height < TALL - 80 else TALL / 2
    front, scale = layers[1] if width > 1500 else layers[0]
    far = 2100 + (x - MARGIN) * PARALLAX
    house = _view(bench.house, far, y * 0.7 + TALL * 0.15, width * 0.8, turn)
    near = _view(front, x * scale, y * scale, width * scale, turn)
    seen = Image.alpha_composite(house.convert("RGBA"), near).convert("RGB").reduce(2)
    return np.asarray(seen)


def _view(picture: Image.Image, x: float, y: float, width: float, turn: float) -> Image.Image:
    """The part of a picture `width` across around x, y, turned; twice the frame's size."""
    size = (FRAME[0] * 2, FRAME[1] * 2)
    zoom = width / size[0]
    a, b = zoom * math.cos(turn), -zoom * math.sin(turn)
    return picture.transform(
        size,
        Image.Transform.AFFINE,
        (a, b, x - a * size[0] / 2 - b * size[1] / 2, -b, a, y + b * size[0] / 2 - a * size[1] / 2),
        resample=Image.Resampling.BILINEAR,
    )
