"""`diary lookalikes`: sisters that are the same thing twice, or the plants nearest to one."""

from typing import TYPE_CHECKING

import click

from diary.cli.context import json_option, with_store
from diary.cli.moments import names_of, place
from diary.cli.output import echo_json

if TYPE_CHECKING:
    from collections.abc import Sequence

    from diary.insight.likeness import Reason
    from diary.insight.lookalikes import LookAlikes
    from diary.insight.sisters import SisterGroup
    from diary.records.store import Store


@click.command("lookalikes")
@click.argument("plant", required=False)
@click.option("--most", default=5, show_default=True, help="How many plants near PLANT to show.")
@click.option("--discarded", is_flag=True, help="Groups: count discarded sisters too.")
@json_option
@with_store
def lookalikes_command(
    store: "Store", plant: str | None, most: int, discarded: bool, as_json: bool
) -> None:
    """Show the plants most like PLANT, or all groups of near-identical sisters.

    Plants are compared by what was said of colour by part, markings, form, size and habit;
    what the speaker called alike is shown, and not used.

    \b
    Example:  diary lookalikes
              diary lookalikes 24-11A
    """
    from diary.insight.lookalikes import lookalikes, sister_groups
    from diary.insight.overview import overview

    look = overview(store)
    names = names_of(look)
    if plant is not None:
        found = lookalikes(look, plant, limit=most)
        if as_json:
            echo_json(found)
        else:
            _near(found, names)
        return
    groups = sister_groups(look, discarded=discarded)
    if as_json:
        echo_json(groups)
        return
    if not groups:
        click.echo("No two sisters were described as nearly the same.")
    for group in groups:
        _group(group, names)


def _near(found: "LookAlikes", names: dict[str, str]) -> None:
    if not found.nearest:
        click.echo(f"No other plant has anything in common to compare with {found.plant.title}.")
    for near in found.nearest:
        click.echo(f"{near.plant.title}  distance {near.likeness.distance:.2f}")
        _reasons("alike", near.likeness.alike)
        _reasons("apart", near.likeness.different)
    for said in found.said:
        click.echo(
            f"Said to be alike: {said.plant.title} and {said.other}, {place(names, said.moment)}"
        )


def _reasons(head: str, reasons: "Sequence[Reason]") -> None:
    if reasons:
        click.echo(f"  {head}: " + "; ".join(str(reason) for reason in reasons))


def _group(group: "SisterGroup", names: dict[str, str]) -> None:
    click.echo(
        ", ".join(one.title for one in group.plants) + f"  (of {' and '.join(group.parents)})"
    )
    for pair in group.likenesses:
        click.echo(f"  {pair.first.title} and {pair.second.title}: distance {pair.distance:.2f}")
        _reasons("  alike", pair.alike)
        _reasons("  apart", pair.different)
    for one in group.plants:
        moments = group.moments[one.key]
        places = dict.fromkeys(place(names, moment) for moment in moments)
        click.echo(f"  compare {one.title}: {', '.join(list(places)[:3])}")
    if group.best is None:
        click.echo("  Which grows best was not said.")
        return
    why = "; ".join(
        point.words + (f" ({place(names, point.moments[0])})" if point.moments else "")
        for point in group.best.points
    )
    click.echo(f"  grows best: {group.best.plant.title}, {why}")
