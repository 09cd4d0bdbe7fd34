"""A family tree as an SVG picture: the plant on the left, its ancestors to the right. Pure.

The seed parent is drawn above the pollen parent, as it is written first. SVG 1.1 (W3C, 2011).
"""

from dataclasses import dataclass
from html import escape

from diary.insight.names import written
from diary.insight.overview import Overview
from diary.insight.pedigree import Node

_BOX = (170, 34)  # width and height of a plant's box
_GAP = (46, 14)
_MARKS = {"seed parent": "\u2640", "pollen parent": "\u2642", "sport of": "sport of"}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Placed:
    node: Node
    row: float
    parents: tuple["_Placed", ...]


def pedigree_svg(tree: Node, overview: Overview) -> str:
    """The picture of a tree from `family_tree`, its size in pixels as it needs."""
    placed, rows = _place(tree, 0)
    depth = _depth(tree) + 1
    width = depth * (_BOX[0] + _GAP[0]) - _GAP[0] + 20
    height = max(1, rows) * (_BOX[1] + _GAP[1]) - _GAP[1] + 20
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
        f'viewBox="0 0 {width} {height}" role="img" font-family="sans-serif" font-size="13">',
        f"<title>Pedigree of {escape(_title(tree, overview))}</title>",
    ]
    _draw(placed, overview, parts)
    parts.append("</svg>")
    return "\n".join(parts) + "\n"


def _place(node: Node, first: int) -> tuple[_Placed, int]:
    """Lay out a tree from row `first` on; returns it and how many rows it takes."""
    if not node.parents:
        return _Placed(node=node, row=first, parents=()), 1
    placed, taken = [], 0
    for parent in node.parents:
        one, rows = _place(parent, first + taken)
        placed.append(one)
        taken += rows
    row = (placed[0].row + placed[-1].row) / 2
    return _Placed(node=node, row=row, parents=tuple(placed)), taken


def _depth(node: Node) -> int:
    return max((1 + _depth(parent) for parent in node.parents), default=0)


def _title(node: Node, overview: Overview) -> str:
    return written(overview.title(node.plant))


def _draw(placed: _Placed, overview: Overview, parts: list[str]) -> None:
    node = placed.node
    left, top = _corner(node.depth, placed.row)
    middle = top + _BOX[1] / 2
    for parent in placed.parents:
        to_left, to_top = _corner(parent.node.depth, parent.row)
        turn = left + _BOX[0] + _GAP[0] / 2
        parts.append(
            f'<path d="M{left + _BOX[0]:g} {middle:g}H{turn:g}V{to_top + _BOX[1] / 2:g}'
            f'H{to_left:g}" fill="none" stroke="#777777"/>'
        )
    title = _title(node, overview)
    mark = _MARKS.get(node.role, "")
    label = f"{mark} {title}".strip() + (" (see above)" if node.seen_above else "")
    short = label if len(label) <= 24 else label[:23] + "\u2026"
    parts.append(
        f'<g><rect x="{left:g}" y="{top:g}" width="{_BOX[0]}" height="{_BOX[1]}" rx="5" '
        f'fill="#ffffff" stroke="#777777"/><title>{escape(label)}</title>'
        f'<text x="{left + 8:g}" y="{top + 22:g}" fill="#222222">{escape(short)}</text></g>'
    )
    for parent in placed.parents:
        _draw(parent, overview, parts)


def _corner(depth: int, row: float) -> tuple[float, float]:
    return 10 + depth * (_BOX[0] + _GAP[0]), 10 + row * (_BOX[1] + _GAP[1])
