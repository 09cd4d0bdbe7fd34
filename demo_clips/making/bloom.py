"""A regal pelargonium's flower, drawn petal by petal from the colours a breeder would say.

Two broad upper petals carry the markings (blotch, feathering, veins), three narrower lower
ones stand below; a throat or an eye lies in the middle and the stamens in front of it.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFilter

Field = NDArray[np.float64]
SIZE = 420  # pixels of a drawn flower, across


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """How one plant looks on one day. Colours are "#rrggbb", lengths whole millimetres."""

    upper: str
    lower: str
    bloom_mm: int
    height_mm: int
    throat: str | None = None
    eye: str | None = None
    edge: str | None = None
    blotch: str | None = None
    feathering: str | None = None
    stripe: str | None = None
    veins: str | None = None
    ruffled: float = 0.35
    doubled: bool = False
    heads: int = 3
    spread: float = 1.0
    leafy: float = 1.0  # less than 1 shows bare stems
    leaf: str = "#5f8f4a"
    glossy: bool = False
    label: str | None = None


@dataclass(frozen=True, slots=True)
class _Petal:
    turn: float  # degrees clockwise from straight up
    length: float  # of the flower's radius
    width: float
    upper: bool


_SINGLE = (
    _Petal(180, 0.92, 0.88, upper=False),
    _Petal(112, 0.93, 0.88, upper=False),
    _Petal(-112, 0.93, 0.88, upper=False),
    _Petal(-37, 0.98, 1.10, upper=True),
    _Petal(37, 0.98, 1.10, upper=True),
)
_INNER = (
    _Petal(160, 0.56, 0.52, upper=False),
    _Petal(-95, 0.58, 0.54, upper=False),
    _Petal(70, 0.60, 0.58, upper=True),
    _Petal(-15, 0.58, 0.60, upper=True),
)


def draw_bloom(look: Look, chance: np.random.Generator) -> Image.Image:
    """One open flower seen from the front, SIZE x SIZE, transparent around it."""
    flower = Image.new("RGBA", (SIZE, SIZE), (0, 0, 0, 0))
    for petal in _SINGLE + (_INNER if look.doubled else ()):
        turn = petal.turn + chance.uniform(-4, 4)
        painted = _paint(petal, math.radians(turn), look, chance)
        shadow = painted.getchannel("A").filter(ImageFilter.GaussianBlur(7))
        shade = Image.new("RGBA", (SIZE, SIZE), (30, 8, 26, 0))
        shade.putalpha(shadow.point(lambda level: int(level * 0.42)))
        under = Image.new("RGBA", (SIZE, SIZE), (0, 0, 0, 0))
        under.paste(shade, (0, 4))
        inside = flower.getchannel("A")
        clipped = Image.composite(under, Image.new("RGBA", (SIZE, SIZE)), inside)
        flower = Image.alpha_composite(Image.alpha_composite(flower, clipped), painted)
    _stamens(flower, look, chance)
    return flower


def rgb(colour: str) -> Field:
    """A "#rrggbb" colour as three numbers from 0 to 1."""
    return np.array([int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)])


def _paint(petal: _Petal, turn: float, look: Look, chance: np.random.Generator) -> Image.Image:
    radius = SIZE / 2 * 0.97
    down, right = np.mgrid[0:SIZE, 0:SIZE].astype(np.float64)
    x, y = (right - SIZE / 2) / radius, (down - SIZE / 2) / radius
    along = (x * math.sin(turn) - y * math.cos(turn)) / petal.length
    across = (x * math.cos(turn) + y * math.sin(turn)) / (petal.width / 2)
    distance = np.hypot(x, y)

    waves, phase = chance.uniform(6, 8), chance.uniform(0, 6.28)
    wave = np.sin(across * waves + phase) + 0.5 * np.sin(across * waves * 2.3 + 2 * phase)
    ripple = 1 + look.ruffled * 0.045 * wave * np.clip(along, 0, 1)
    u = np.clip(along * ripple, 1e-4, 1)
    side = 1 + look.ruffled * 0.05 * np.sin(along * 13 + phase)
    half_width = 1.10 * u**0.55 * np.sqrt(np.clip(1 - u**5, 0, 1)) * side
    inside = np.where((along > 0) & (along * ripple < 1), half_width - np.abs(across), -1.0)
    slope_y, slope_x = np.gradient(half_width - np.abs(across))
    rim = inside / np.maximum(np.hypot(slope_x, slope_y), 1e-4)  # pixels from the outline
    mask = np.clip(rim + 0.5, 0, 1) * (inside > -0.9)

    angle = np.clip(across / np.maximum(half_width, 0.05), -1, 1)
    lines = _vein_lines(angle, u, chance)
    colour = np.ones((SIZE, SIZE, 3)) * rgb(look.upper if petal.upper else look.lower)
    colour = _mix(colour, colour * 0.80, lines * 0.34 * (1 - u) ** 0.3)
    if look.veins:
        colour = _mix(colour, rgb(look.veins), lines**1.2 * _band(u, 0.04, 0.86, 0.25) * 0.85)
    if look.stripe and not petal.upper:
        stripe = np.exp(-((np.abs(angle) / (0.17 + 0.03 * lines)) ** 4)) * _band(u, 0.1, 0.9, 0.08)
        colour = _mix(colour, rgb(look.stripe), stripe * 0.92)
    if look.feathering and petal.upper:
        feather = np.clip(lines * 1.7 - 0.2, 0, 1) * _band(u, 0.18, 0.80, 0.16)
        heart = np.exp(-(((u - 0.42) / 0.2) ** 2 + (angle / 0.5) ** 2)) * 0.55
        colour = _mix(colour, rgb(look.feathering), np.clip(feather + heart, 0, 0.95))
    if look.blotch and petal.upper:
        reach = ((u - 0.55) / (0.25 + 0.05 * lines)) ** 2 + (angle / (0.56 + 0.1 * lines)) ** 2
        colour = _mix(colour, rgb(look.blotch), 0.96 * _smooth(1.28 - reach, 0, 0.5))
    if look.edge:
        depth = SIZE * 0.034 * (1 + 0.25 * wave)
        colour = _mix(
            colour, rgb(look.edge), _smooth(depth - rim, -2.5, 3.5) * _smooth(u, 0.25, 0.55)
        )
    if look.throat:
        colour = _mix(colour, rgb(look.throat), _smooth(0.34 + 0.05 * lines - distance, 0, 0.13))
    if look.eye:
        colour = _mix(colour, rgb(look.eye), _smooth(0.29 + 0.06 * lines - distance, 0, 0.07))

    folds = 1 + 0.11 * look.ruffled * wave * u**2 + 0.05 * np.cos(angle * 1.5) - 0.03
    shade = folds * (0.87 + 0.16 * _smooth(u, 0.0, 0.5)) * (0.93 + 0.07 * _smooth(rim, 0, 9))
    light = 1 + 0.07 * (-0.6 * x - 0.8 * y)
    colour = np.clip(colour * (shade * light)[..., None], 0, 1)
    sheen = 0.10 * np.exp(-(((u - 0.72) / 0.16) ** 2 + ((angle + 0.25) / 0.35) ** 2))
    colour = colour + (1 - colour) * sheen[..., None]
    pixels = np.dstack([colour, mask])
    return Image.fromarray((np.clip(pixels, 0, 1) * 255).astype(np.uint8), "RGBA")


def _vein_lines(angle: Field, u: Field, chance: np.random.Generator) -> Field:
    """Fine veins running from base to rim, forking once: 1 on a vein, 0 between."""
    bend = 0.05 * np.sin(u * 7 + chance.uniform(0, 6)) * u
    main = np.abs(np.cos((angle + bend) * 9.0)) ** 9
    forks = np.abs(np.cos((angle - bend) * 18.0 + 0.7)) ** 12 * _smooth(u, 0.38, 0.55)
    return np.clip(main + 0.7 * forks, 0, 1)


def _smooth(value: Field, low: float, high: float) -> Field:
    part = np.clip((value - low) / (high - low), 0, 1)
    return part * part * (3 - 2 * part)


def _band(value: Field, low: float, high: float, soft: float) -> Field:
    return _smooth(value, low, low + soft) * (1 - _smooth(value, high - soft, high))


def _mix(colour: Field, other: Field, share: Field) -> Field:
    return colour * (1 - share[..., None]) + other * share[..., None]


def _stamens(flower: Image.Image, look: Look, chance: np.random.Generator) -> None:
    pen = ImageDraw.Draw(flower)
    middle = SIZE / 2
    pen.ellipse((middle - 9, middle - 7, middle + 9, middle + 11), fill=(70, 92, 40, 120))
    for _ in range(7):
        turn, reach = chance.uniform(2.2, 4.1), chance.uniform(14, 34)
        tip = (middle + reach * math.sin(turn) * 0.9, middle - reach * math.cos(turn) * 0.9)
        pen.line((middle, middle, *tip), fill=(245, 232, 226, 235), width=3)
        pen.ellipse((tip[0] - 5, tip[1] - 4, tip[0] + 5, tip[1] + 4), fill=(206, 104, 52, 255))
    style = (150, 40, 74, 255)
    pen.line((middle, middle, middle + 3, middle + 30), fill=style, width=4)
    for turn in (-0.9, -0.4, 0.1, 0.6, 1.1):
        end = (middle + 3 + 13 * math.sin(turn), middle + 30 + 11 * math.cos(turn))
        pen.line((middle + 3, middle + 30, *end), fill=style, width=3)
