"""`diary pedigree`: a plant's family tree, to any depth, in text or as a picture."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import echo_json
from diary.errors import NotFound

if TYPE_CHECKING:
    from diary.insight.overview import Overview
    from diary.insight.pedigree import Node
    from diary.records.store import Store


@click.command("pedigree")
@click.argument("plant")
@click.option("--depth", type=click.IntRange(1), help="Generations back (default: all).")
@click.option(
    "--svg", type=click.Path(path_type=Path, dir_okay=False), help="Draw it into this file."
)
@json_option
@with_store
def pedigree_command(
    store: "Store", plant: str, depth: int | None, svg: Path | None, as_json: bool
) -> None:
    """Show where PLANT comes from, its seed parent first, and how inbred it is.

    \b
    Example:  diary pedigree 24-11A
              diary pedigree 24-11A --depth 3 --svg family.svg
    """
    from diary.export.pedigree_svg import pedigree_svg
    from diary.insight.names import purdy
    from diary.insight.overview import overview
    from diary.insight.pedigree import family_tree, inbreeding

    look = overview(store)
    family = look.pedigree()
    key = look.key(plant) or plant
    if key not in family.entries:
        raise NotFound(f"No plant or parent {plant!r} in this diary.")
    tree = family_tree(family, key, depth=depth)
    share = inbreeding(family, key)
    if svg is not None:
        svg.write_text(pedigree_svg(tree, look), encoding="utf-8")
    if as_json:
        echo_json({"tree": tree, "purdy": purdy(family, key), "inbreeding": share})
        return
    click.echo("\n".join(_lines(tree, look)))
    children = family.children(key)
    if children:
        click.echo(f"children: {', '.join(look.title(child) for child in children)}")
    click.echo(f"inbreeding: {share:.4g}")
    if svg is not None:
        click.echo(f"drawn: {svg}")


def _lines(node: "Node", look: "Overview", *, before: str = "", last: bool = True) -> Iterator[str]:
    from diary.insight.names import written

    role = f"{node.role}: " if node.role else ""
    again = "  (see above)" if node.seen_above else ""
    branch = "" if not node.role else ("└─ " if last else "├─ ")
    yield f"{before}{branch}{role}{written(look.title(node.plant))}{again}"
    inner = before if not node.role else before + ("   " if last else "│  ")
    for index, parent in enumerate(node.parents):
        yield from _lines(parent, look, before=inner, last=index == len(node.parents) - 1)
