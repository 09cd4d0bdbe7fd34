"""The greenhouse bench as one long picture, and a softer one of the house behind it."""

from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

from making.bloom import Look
from making.plant import HEIGHT, WIDTH, draw_plant

PITCH = 1320  # pixels from one plant to the next
MARGIN = 1500  # pixels of bench before the first plant and after the last
TALL = HEIGHT + 560
FLOOR = HEIGHT + 170  # where the pots stand
PARALLAX = 0.45  # how far the house behind moves for each pixel of bench


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where a plant is on the bench picture, in pixels: its middle and its main flowers."""

    x: int
    bloom: tuple[int, int]
    bloom_mm: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """The bench (transparent above the plants), the house behind, and where each plant stands."""

    front: Image.Image
    house: Image.Image
    spots: dict[str, Spot]


def draw_bench(looks: dict[str, Look], seed: int) -> Bench:
    """Set the plants along the bench in the order given."""
    width = 2 * MARGIN + PITCH * (len(looks) - 1)
    front = Image.new("RGBA", (width, TALL), (0, 0, 0, 0))
    _table(front, np.random.default_rng(seed))
    spots: dict[str, Spot] = {}
    for n, (name, look) in enumerate(looks.items()):
        plant, crown = draw_plant(look, seed * 100 + n)
        left, top = MARGIN + n * PITCH - WIDTH // 2, FLOOR - HEIGHT
        _pool(front, MARGIN + n * PITCH)
        front.alpha_composite(plant, (left, top))
        spots[name] = Spot(
            x=MARGIN + n * PITCH,
            bloom=(left + crown[0], top + crown[1]),
            bloom_mm=look.bloom_mm,
        )
    return Bench(front=front, house=_house(int(width * PARALLAX) + 4200, seed), spots=spots)


def _table(front: Image.Image, chance: np.random.Generator) -> None:
    """Planks seen a little from above, and the bench's front edge."""
    width = front.width
    back, lip = FLOOR - 120, FLOOR + 150
    grain = chance.normal(0, 1, (TALL - back, width // 24)).astype(np.float32)
    grain = np.asarray(
        Image.fromarray(grain).resize((width, TALL - back), Image.Resampling.BICUBIC)
    )
    rows = np.arange(back, TALL)[:, None]
    tone = 0.60 + 0.16 * (rows - back) / (lip - back) + 0.028 * grain
    for seam in (back + 60, back + 150):
        tone -= 0.26 * np.exp(-(((rows - seam) / 5.0) ** 2))
    tone = np.where(rows > lip, 0.52 - 0.3 * (rows - lip) / (TALL - lip) + 0.02 * grain, tone)
    tone += 0.16 * np.exp(-(((rows - lip) / 6.0) ** 2))
    wood = np.array([0.93, 0.80, 0.62]) * tone[..., None]
    planks = Image.fromarray((np.clip(wood, 0, 1) * 255).astype(np.uint8), "RGB")
    front.paste(planks, (0, back))


def _pool(front: Image.Image, x: int) -> None:
    """The soft shadow a pot throws to the right."""
    shade = Image.new("L", (760, 220), 0)
    ImageDraw.Draw(shade).ellipse((110, 60, 640, 160), fill=150)
    shade = shade.filter(ImageFilter.GaussianBlur(26))
    dark = Image.new("RGBA", shade.size, (38, 26, 20, 0))
    dark.putalpha(shade)
    front.alpha_composite(dark, (x - 300, FLOOR - 120))


def _house(width: int, seed: int) -> Image.Image:
    """Glass, glazing bars and the plants of the far bench, all out of focus."""
    chance = np.random.default_rng(seed + 7)
    small = (width // 4, TALL // 4)
    rows = np.linspace(0, 1, small[1])[:, None, None]
    sky, hedge = np.array([0.86, 0.92, 0.93]), np.array([0.60, 0.72, 0.56])
    wall = sky * (1 - rows) + hedge * rows + np.zeros((1, small[0], 1))
    picture = Image.fromarray((wall * 255).astype(np.uint8), "RGB")
    pen = ImageDraw.Draw(picture)
    for _ in range(small[0] // 3):
        x, y = chance.uniform(0, small[0]), chance.uniform(0.38, 0.84) * small[1]
        r = chance.uniform(14, 44)
        green = (int(chance.uniform(70, 130)), int(chance.uniform(118, 165)), 84)
        pen.ellipse((x - r, y - r * 0.8, x + r, y + r * 0.8), fill=green)
    blooms = [(226, 150, 172), (240, 236, 232), (206, 84, 96), (190, 160, 214), (244, 176, 150)]
    for _ in range(small[0] // 9):
        x, y = chance.uniform(0, small[0]), chance.uniform(0.40, 0.66) * small[1]
        r = chance.uniform(7, 17)
        pen.ellipse((x - r, y - r, x + r, y + r), fill=blooms[int(chance.integers(len(blooms)))])
    for x in range(60, small[0], 190):
        pen.rectangle((x, 0, x + 13, small[1]), fill=(240, 243, 240))
        pen.rectangle((x + 13, 0, x + 17, small[1]), fill=(168, 182, 176))
    pen.rectangle((0, int(small[1] * 0.30), small[0], int(small[1] * 0.325)), fill=(236, 240, 237))
    soft = picture.filter(ImageFilter.GaussianBlur(9))
    return soft.resize((width, TALL), Image.Resampling.BICUBIC)
