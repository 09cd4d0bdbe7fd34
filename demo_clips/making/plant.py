"""A potted regal pelargonium: a mound of leaves, trusses of flowers and buds, pot and label.

Sizes are true to scale among the plants, PIXELS_PER_MM pixels to the millimetre.
"""

import math

import numpy as np
from PIL import Image, ImageDraw, ImageFilter, ImageFont

from making.bloom import Field, Look, draw_bloom, rgb

PIXELS_PER_MM = 4.2
WIDTH, HEIGHT = 1500, 1560  # pixels of a drawn plant; the pot stands on the lower edge
_POT_TOP, _POT_FOOT, _POT_HEIGHT = 400, 292, 330
_INK = (38, 42, 70, 255)


def draw_plant(look: Look, seed: int) -> tuple[Image.Image, tuple[int, int]]:
    """The plant, WIDTH x HEIGHT and transparent around it, and the middle of its main truss."""
    chance = np.random.default_rng(seed)
    picture = Image.new("RGBA", (WIDTH, HEIGHT), (0, 0, 0, 0))
    middle, soil = WIDTH // 2, HEIGHT - _POT_HEIGHT
    tall = min(int(look.height_mm * PIXELS_PER_MM * 0.72), soil - 260)
    _foliage(picture, look, chance, tall, behind=True)
    _pot(picture)
    _foliage(picture, look, chance, tall, behind=False)
    crown = (middle + int(chance.uniform(-40, 40)), soil - tall + 40)
    flowers = [draw_bloom(look, chance) for _ in range(3)]
    heads = [crown]
    for number in range(1, min(look.heads, 7)):
        side = -1 if number % 2 else 1
        reach = (170 + 95 * ((number + 1) // 2)) * look.spread
        heads.append(
            (
                int(middle + side * reach + chance.uniform(-30, 30)),
                int(crown[1] + 90 + 62 * number + chance.uniform(-30, 30)),
            )
        )
    for place in reversed(heads):
        size = 1.0 if place is crown else chance.uniform(0.72, 0.86)
        _truss(picture, look, chance, flowers, place, size)
    _label(picture, look.label, chance)
    return picture, crown


def _truss(
    picture: Image.Image,
    look: Look,
    chance: np.random.Generator,
    flowers: list[Image.Image],
    place: tuple[int, int],
    size: float,
) -> None:
    """An umbel: buds at the back, outer flowers turned away, one facing the camera."""
    bloom = look.bloom_mm * PIXELS_PER_MM * size
    pen = ImageDraw.Draw(picture)
    foot = (place[0] * 0.7 + WIDTH * 0.15, place[1] + bloom * 1.6)
    pen.line((*foot, place[0], place[1] + 20), fill=(104, 140, 74, 255), width=13)
    for turn in np.linspace(-1.5, 1.5, 6) + chance.uniform(-0.12, 0.12, 6):
        reach = bloom * chance.uniform(0.86, 1.08)
        tip = (place[0] + reach * math.sin(turn), place[1] - reach * math.cos(turn) * 0.8)
        pen.line((place[0], place[1] + 16, *tip), fill=(112, 146, 80, 255), width=6)
        _bud(picture, look, tip, turn, bloom * 0.14)
    outer = [(-100, 0.60), (100, 0.60), (-48, 0.62), (46, 0.64), (165, 0.52)]
    for degrees, reach in outer:
        turn = math.radians(degrees + chance.uniform(-9, 9))
        flower = flowers[int(chance.integers(3))]
        spot = (
            place[0] + bloom * reach * math.sin(turn),
            place[1] - bloom * reach * math.cos(turn) * 0.86,
        )
        _set_flower(picture, flower, spot, bloom * 0.93, turn, chance.uniform(0.74, 0.88))
    _set_flower(picture, flowers[0], place, bloom, 0.0, 1.0)


def _set_flower(
    picture: Image.Image,
    flower: Image.Image,
    spot: tuple[float, float],
    size: float,
    turn: float,
    squash: float,
) -> None:
    """Paste a flower that faces `turn` outward: narrowed that way, a little darker, with shadow."""
    wide = max(8, int(size))
    turned = flower.rotate(math.degrees(turn), Image.Resampling.BICUBIC)
    turned = turned.resize((wide, max(8, int(size * squash))), Image.Resampling.LANCZOS)
    lean = math.degrees(turn) * (0.72 if abs(turn) < 2.2 else 1.0)
    turned = turned.rotate(-lean, Image.Resampling.BICUBIC, expand=True)
    if squash < 1:
        dim = Image.new("RGBA", turned.size, (24, 20, 40, 0))
        dim.putalpha(turned.getchannel("A").point(lambda level: int(level * 0.10)))
        turned = Image.alpha_composite(turned, dim)
    corner = (int(spot[0] - turned.width / 2), int(spot[1] - turned.height / 2))
    _shadow(picture, turned, (corner[0] + 5, corner[1] + 12), 9, 0.34)
    picture.alpha_composite(turned, _inside(corner, turned, picture))


def _bud(
    picture: Image.Image, look: Look, tip: tuple[float, float], turn: float, size: float
) -> None:
    side = max(12, int(size * 3))
    bud = Image.new("RGBA", (side, side), (0, 0, 0, 0))
    pen = ImageDraw.Draw(bud)
    tint = tuple(int(c * 235) for c in rgb(look.upper))
    pen.ellipse((side * 0.36, side * 0.06, side * 0.64, side * 0.60), fill=(*tint, 255))
    pen.pieslice((side * 0.33, side * 0.22, side * 0.67, side * 0.90), 0, 360, fill=(96, 132, 66))
    pen.polygon(
        [(side * 0.33, side * 0.5), (side * 0.40, side * 0.16), (side * 0.5, side * 0.5)],
        fill=(112, 148, 78),
    )
    pen.polygon(
        [(side * 0.5, side * 0.5), (side * 0.6, side * 0.16), (side * 0.67, side * 0.5)],
        fill=(104, 140, 72),
    )
    bud = bud.rotate(-math.degrees(turn), Image.Resampling.BICUBIC)
    corner = (int(tip[0] - side / 2), int(tip[1] - side / 2))
    picture.alpha_composite(bud, _inside(corner, bud, picture))


def _foliage(
    picture: Image.Image, look: Look, chance: np.random.Generator, tall: int, *, behind: bool
) -> None:
    """Half the mound of leaves: those behind the pot's rim, or those in front of it."""
    middle, soil = WIDTH // 2, HEIGHT - _POT_HEIGHT
    leaves = [_leaf(look, chance) for _ in range(4)]
    stem = ImageDraw.Draw(picture)
    if behind:
        for lean in (-0.42, -0.2, 0.02, 0.22, 0.4):
            top = (middle + lean * 560 * look.spread, soil - tall * (0.9 - abs(lean)))
            stem.line((middle + lean * 120, soil + 10, *top), fill=(98, 122, 66, 255), width=17)
    count = int((46 if behind else 30) * look.leafy)
    for n in range(count):
        height = (n / count) ** 0.9 if behind else chance.uniform(-0.06, 0.62)
        bulge = math.sin(math.pi * (0.18 + 0.72 * np.clip(height, 0, 1))) * 430 * look.spread
        x = middle + chance.uniform(-1, 1) * (bulge if behind else bulge * 0.92)
        y = soil - height * tall * 0.96 + chance.uniform(-20, 20)
        size = int(chance.uniform(190, 270) * (1.06 - 0.3 * max(height, 0)))
        lean = math.degrees(math.atan2(x - middle, 330)) + chance.uniform(-24, 24)
        leaf = leaves[int(chance.integers(4))].resize(
            (size, int(size * chance.uniform(0.68, 0.96)))
        )
        leaf = leaf.rotate(-lean, Image.Resampling.BICUBIC, expand=True)
        if behind:
            leaf = _darker(leaf, 0.34 * (1 - height) + 0.12)
        corner = (int(x - leaf.width / 2), int(y - leaf.height / 2))
        _shadow(picture, leaf, (corner[0] + 3, corner[1] + 14), 10, 0.36)
        picture.alpha_composite(leaf, _inside(corner, leaf, picture))


def _leaf(look: Look, chance: np.random.Generator, side: int = 260) -> Image.Image:
    """One leaf: rounded and cupped, toothed at the rim, with veins fanning from the stalk."""
    down, right = np.mgrid[0:side, 0:side].astype(np.float64)
    x, y = (right - side / 2) / (side / 2), (down - side * 0.72) / (side / 2)
    turn, reach = np.arctan2(x, -y), np.hypot(x, y)
    lobes = (
        0.90 + 0.07 * np.cos(turn * 5 + chance.uniform(-0.3, 0.3)) - 0.12 * np.abs(turn / 3) ** 2
    )
    teeth = 0.028 * np.abs(np.sin(turn * 19 + chance.uniform(0, 6)))
    outline = (lobes - teeth) * np.clip((3.05 - np.abs(turn)) * 2.2, 0.0, 1.0) * 0.98
    mask = np.clip((outline - reach) * side / 2 + 0.5, 0, 1)
    veins = np.zeros_like(x)
    for main in (-1.9, -1.15, -0.55, 0.0, 0.55, 1.15, 1.9):
        away = np.abs(turn - main) * reach
        veins += np.exp(-((away / 0.016) ** 2)) * np.clip(1.05 - reach, 0, 1)
        branch = np.abs(np.abs(turn - main) - 0.30 * np.clip(reach - 0.3, 0, 1) * 1.6) * reach
        veins += 0.5 * np.exp(-((branch / 0.013) ** 2)) * (reach > 0.34) * np.clip(1 - reach, 0, 1)
    colour = np.ones((side, side, 3)) * rgb(look.leaf) * chance.uniform(0.9, 1.1)
    cup = 0.76 + 0.32 * np.clip(reach, 0, 1) + 0.06 * np.cos(turn * 7) - 0.1 * x
    colour = colour * cup[..., None]
    share = np.clip(veins, 0, 1)[..., None] * 0.42
    colour = colour * (1 - share) + np.array([0.72, 0.80, 0.52]) * share
    if look.glossy:
        shine: Field = np.exp(-(((x + 0.28) / 0.22) ** 2 + ((y + 0.5) / 0.17) ** 2)) * 0.42
        colour = colour + (1 - colour) * shine[..., None]
    pixels = np.dstack([np.clip(colour, 0, 1), mask])
    return Image.fromarray((pixels * 255).astype(np.uint8), "RGBA")


def _pot(picture: Image.Image) -> None:
    """A terracotta pot, lit from the left."""
    top, foot = HEIGHT - _POT_HEIGHT, HEIGHT - 8
    shape = Image.new("L", (WIDTH, HEIGHT), 0)
    pen, middle = ImageDraw.Draw(shape), WIDTH / 2
    pen.polygon(
        [
            (middle - _POT_TOP / 2 + 18, top + 60),
            (middle + _POT_TOP / 2 - 18, top + 60),
            (middle + _POT_FOOT / 2, foot),
            (middle - _POT_FOOT / 2, foot),
        ],
        fill=255,
    )
    pen.rounded_rectangle(
        (middle - _POT_TOP / 2, top, middle + _POT_TOP / 2, top + 78), 12, fill=255
    )
    x = (np.arange(WIDTH) - middle) / (_POT_TOP / 2)
    light = np.clip(1.04 - 0.55 * (x + 0.32) ** 2 - 0.12 * x, 0.35, 1.1)
    rows = np.ones((HEIGHT, 1))
    rows[top + 78 : top + 96] = 0.72  # under the rim
    rows[top : top + 8] = 1.12
    grain = 1 + np.random.default_rng(3).normal(0, 0.018, (HEIGHT, WIDTH))
    clay = np.array([0.76, 0.43, 0.29]) * (light[None, :] * rows * grain)[..., None]
    pot = Image.fromarray((np.clip(clay, 0, 1) * 255).astype(np.uint8), "RGB").convert("RGBA")
    pot.putalpha(shape.filter(ImageFilter.GaussianBlur(1)))
    picture.alpha_composite(pot)
    ImageDraw.Draw(picture).ellipse(
        (middle - _POT_TOP / 2 + 16, top - 14, middle + _POT_TOP / 2 - 16, top + 22),
        fill=(52, 38, 30, 255),
    )


def _label(picture: Image.Image, number: str | None, chance: np.random.Generator) -> None:
    """A white plastic stake with the number written on it; none for a plant without one."""
    if number is None:
        return
    stake = Image.new("RGBA", (250, 330), (0, 0, 0, 0))
    pen = ImageDraw.Draw(stake)
    pen.rounded_rectangle((10, 8, 240, 112), 16, fill=(247, 246, 238, 255), outline=(196, 194, 182))
    pen.polygon([(96, 112), (154, 112), (136, 322), (114, 322)], fill=(232, 231, 222, 255))
    font = ImageFont.load_default(78)
    pen.text((125, 60), number, font=font, fill=_INK, anchor="mm", stroke_width=2, stroke_fill=_INK)
    stake = stake.rotate(chance.uniform(-5, 5), Image.Resampling.BICUBIC)
    corner = (WIDTH // 2 + 24, HEIGHT - _POT_HEIGHT - 268)
    _shadow(picture, stake, (corner[0] + 6, corner[1] + 8), 8, 0.3)
    picture.alpha_composite(stake, corner)


def _darker(image: Image.Image, share: float) -> Image.Image:
    dim = Image.new("RGBA", image.size, (18, 30, 24, 0))
    dim.putalpha(image.getchannel("A").point(lambda level: int(level * share)))
    return Image.alpha_composite(image, dim)


def _shadow(
    picture: Image.Image, cast: Image.Image, at: tuple[int, int], blur: int, depth: float
) -> None:
    """Darken what lies under `cast`, but no empty background."""
    frame = Image.new("RGBA", (cast.width + 4 * blur, cast.height + 4 * blur), (0, 0, 0, 0))
    alpha = Image.new("L", frame.size, 0)
    alpha.paste(cast.getchannel("A"), (2 * blur, 2 * blur))
    alpha = alpha.filter(ImageFilter.GaussianBlur(blur)).point(lambda level: int(level * depth))
    corner = (at[0] - 2 * blur, at[1] - 2 * blur)
    below = picture.crop((*corner, corner[0] + frame.width, corner[1] + frame.height))
    dark = Image.new("RGBA", frame.size, (14, 20, 22, 255))
    shaded = Image.composite(dark, below, alpha)
    shaded.putalpha(below.getchannel("A"))
    picture.paste(shaded, corner)


def _inside(corner: tuple[int, int], image: Image.Image, picture: Image.Image) -> tuple[int, int]:
    """The corner, kept where `alpha_composite` takes it."""
    return (
        min(max(corner[0], 0), max(picture.width - image.width, 0)),
        min(max(corner[1], 0), max(picture.height - image.height, 0)),
    )
