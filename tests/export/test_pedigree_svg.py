"""The pedigree picture: well-formed SVG, every plant in its box, seed parent above."""

from itertools import pairwise
from xml.etree import ElementTree

from diary.export.pedigree_svg import pedigree_svg
from diary.insight.pedigree import family_tree
from diary.records.register import Seedling
from tests.insight.say import season

SVG = "{http://www.w3.org/2000/svg}"


def picture(depth: int | None = None) -> ElementTree.Element:
    look = season(
        seedlings=(
            Seedling(number="3", seed_parent="2", pollen_parent="Rose & <Gold>"),
            Seedling(number="2", seed_parent="1", pollen_parent="1"),
            Seedling(number="1", seed_parent="Lady Wexcombe"),
        )
    )
    return ElementTree.fromstring(
        pedigree_svg(family_tree(look.pedigree(), "3", depth=depth), look)
    )


def test_every_ancestor_has_a_box_inside_the_picture() -> None:
    root = picture()
    texts = [text.text for text in root.iter(f"{SVG}text")]
    assert texts == [
        "3",
        "\u2640 2",
        "\u2640 1",
        "\u2640 'Lady Wexcombe'",
        "\u2642 1 (see above)",
        "\u2642 'Rose & <Gold>'",
    ]
    width, height = float(root.get("width", 0)), float(root.get("height", 0))
    for box in root.iter(f"{SVG}rect"):
        x, y = float(box.get("x", 0)), float(box.get("y", 0))
        assert 0 <= x <= width - float(box.get("width", 0))
        assert 0 <= y <= height - float(box.get("height", 0))
    assert len(list(root.iter(f"{SVG}path"))) == 5


def test_boxes_do_not_overlap_and_the_seed_parent_is_above() -> None:
    root = picture()
    boxes = [(float(b.get("x", 0)), float(b.get("y", 0))) for b in root.iter(f"{SVG}rect")]
    assert len(set(boxes)) == len(boxes)
    for x in {x for x, _ in boxes}:
        column = sorted(y for at, y in boxes if at == x)
        assert all(lower - upper >= 34 for upper, lower in pairwise(column))
    assert boxes[1][1] < boxes[5][1]


def test_depth_is_kept() -> None:
    assert len(list(picture(1).iter(f"{SVG}rect"))) == 3
