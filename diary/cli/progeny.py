"""`diary progeny`: what came of the crosses, of a parent, or which gave a wanted trait."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.output import echo_json
from diary.errors import NotFound

if TYPE_CHECKING:
    from collections.abc import Sequence

    from diary.insight.interval import Share
    from diary.insight.overview import Overview
    from diary.insight.progeny import CrossProgeny, ParentProgeny
    from diary.insight.spread import SizeSpread, Spread
    from diary.records.store import Store


@click.command("progeny")
@click.argument("which", required=False)
@click.option("--wanted", metavar="TRAIT", help='Which crosses gave it: "white throat".')
@click.option(
    "--unused", is_flag=True, help="Pairs not crossed yet, and crosses not yet in flower."
)
@json_option
@with_store
def progeny_command(
    store: "Store", which: str | None, wanted: str | None, unused: bool, as_json: bool
) -> None:
    """Show what came of each cross: sown, germinated, flowered, kept, and what they look like.

    WHICH is a cross's code, or a parent. Shares come with their 95 % Wilson interval, and of
    a trait count only the plants described in it.

    \b
    Example:  diary progeny
              diary progeny "Fenmarsh Lad"
              diary progeny --wanted "white throat"
    """
    from diary.insight.overview import overview

    look = overview(store)
    if unused:
        _unused(look, wanted, as_json)
    elif wanted is not None:
        _wanted(look, wanted, as_json)
    elif which is not None:
        _one(look, which, as_json)
    else:
        _all(look, as_json)


def _all(look: "Overview", as_json: bool) -> None:
    from diary.insight.progeny import progeny

    found = progeny(look)
    if as_json:
        echo_json(found)
        return
    if not found:
        click.echo("No crosses yet: none in the register, and no parents were said.")
    for cross in found:
        _cross(cross, brief=True)


def _one(look: "Overview", which: str, as_json: bool) -> None:
    from diary.insight.progeny import parents, progeny

    key = look.key(which)
    crosses = tuple(
        cross
        for cross in progeny(look)
        if (cross.code is not None and cross.code.casefold() == which.casefold())
        or key in (cross.seed_parent, cross.pollen_parent)
    )
    parent = next((one for one in parents(look) if one.parent == key), None)
    if not crosses and parent is None:
        raise NotFound(f"{which} is neither a cross nor a parent here. See: diary progeny")
    if as_json:
        echo_json({"parent": parent, "crosses": crosses})
        return
    if parent is not None:
        _parent(parent)
    for cross in crosses:
        _cross(cross, brief=parent is not None)


def _wanted(look: "Overview", text: str, as_json: bool) -> None:
    from diary.insight.progeny import crosses_with
    from diary.insight.wanted import wanted

    found = crosses_with(look, wanted(text))
    if as_json:
        echo_json(found)
        return
    if not found:
        click.echo(f"No cross has given {text} yet.")
    for one in found:
        plants = ", ".join(plant.title for plant in one.plants)
        click.echo(f"{_name(one.progeny)}: {_share(one.share)} described: {plants}")


def _unused(look: "Overview", text: str | None, as_json: bool) -> None:
    from diary.insight.combinations import untested, unused
    from diary.insight.names import formula
    from diary.insight.wanted import wanted

    pairs = unused(look, wanted(text) if text else None)
    waiting = untested(look)
    if as_json:
        echo_json({"unused": pairs, "untested": waiting})
        return
    for pair in pairs:
        why = f": {'; '.join(pair.reasons)}" if pair.reasons else ""
        cross = formula(look.title(pair.first), look.title(pair.second))
        click.echo(f"not crossed: {cross} (inbreeding {pair.inbreeding:.3g}){why}")
    for one in waiting:
        click.echo(f"not yet in flower: {_name(one)}")
    if not pairs and not waiting:
        click.echo("Every pair of breeding plants has been crossed and has flowered.")


def _name(cross: "CrossProgeny") -> str:
    return f"{cross.code}: {cross.formula}" if cross.code else cross.formula


def _cross(cross: "CrossProgeny", *, brief: bool) -> None:
    click.echo(_name(cross))
    if cross.germination is not None:
        click.echo(f"  germinated  {_share(cross.germination)} sown")
    elif cross.sown is not None or cross.germinated is not None:
        counted = (f"{cross.sown} sown", cross.sown), (f"{cross.germinated} up", cross.germinated)
        click.echo("  " + ", ".join(text for text, count in counted if count is not None))
    click.echo(f"  flowered    {_share(cross.flowered)}")
    click.echo(f"  kept        {_share(cross.kept)}")
    _spreads(cross.spreads, cross.sizes, brief=brief)


def _parent(parent: "ParentProgeny") -> None:
    click.echo(
        f"{parent.title}: seed parent of {parent.as_seed_parent}, "
        f"pollen parent of {parent.as_pollen_parent}"
    )
    click.echo(f"  flowered    {_share(parent.flowered)}")
    click.echo(f"  kept        {_share(parent.kept)}")
    _spreads(parent.spreads, parent.sizes, brief=False)


def _spreads(spreads: "Sequence[Spread]", sizes: "Sequence[SizeSpread]", *, brief: bool) -> None:
    for spread in spreads:
        name = spread.trait.replace("_", " ") + (f" of {spread.part}" if spread.part else "")
        if brief:
            values = ", ".join(f"{one.value} {one.share.count}" for one in spread.values)
            click.echo(f"  {name} ({spread.described} described): {values}")
            continue
        click.echo(f"  {name}")
        for one in spread.values:
            plants = ", ".join(plant.title for plant in one.plants)
            click.echo(f"    {one.value}: {_share(one.share)}: {plants}")
    for size in sizes:
        click.echo(
            f"  {size.trait.replace('_', ' ')} ({size.measured} measured): "
            f"{size.least:g} to {size.most:g} mm, median {size.middle:g}"
        )


def _share(share: "Share") -> str:
    return str(share)
