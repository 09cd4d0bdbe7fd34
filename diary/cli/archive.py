"""`diary archive` and `diary restore`: the whole diary in one file, and back."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import diary_folder, folder_option, json_option, with_store
from diary.cli.output import echo_json

if TYPE_CHECKING:
    from diary.records.store import Store


@click.command("archive")
@click.argument("out", type=click.Path(path_type=Path))
@click.option("--recordings", "media", is_flag=True, help="Take the recordings themselves along.")
@json_option
@with_store
def archive_command(store: "Store", out: Path, media: bool, as_json: bool) -> None:
    """Write the whole diary to the file OUT (.zip), every part with its checksum.

    Without --recordings the films stay where they are; all that was heard and all your
    corrections are in the archive either way, also as plain tables that need no program.

    \b
    Example:  diary archive diary-2031.zip
              diary archive /media/stick/diary.zip --recordings
    """
    from diary.export.archive import make_archive

    quiet = as_json

    def told(name: str) -> None:
        if not quiet and name.startswith("recordings/"):
            click.echo(f"taking {name}", err=True)

    made = make_archive(store, out, media=media, on_file=told)
    if as_json:
        echo_json(made)
        return
    for name in made.missing:
        click.echo(f"not found, so not taken along: {name}", err=True)
    taken = sum(one.file is not None for one in made.recordings)
    size = out.stat().st_size / 1_000_000
    click.echo(
        f"written: {out} ({size:.1f} MB, {len(made.files)} files, "
        f"{taken} of {len(made.recordings)} recordings)"
    )


@click.command("restore")
@click.argument("archive", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.argument("folder", type=click.Path(path_type=Path), required=False)
@folder_option
@json_option
@click.pass_context
def restore_command(
    ctx: click.Context, archive: Path, folder: Path | None, diary: Path | None, as_json: bool
) -> None:
    """Bring a diary back from ARCHIVE into FOLDER, which must be new or empty.

    Every file is checked before anything is put in place. Without FOLDER the diary comes
    back where diaries are kept by default.

    \b
    Example:  diary restore diary-2031.zip restored-diary
    """
    from diary.export.archive import restore
    from diary.settings import settings

    target = folder or settings(diary or diary_folder(ctx)).folder
    held = restore(archive, target)
    if as_json:
        echo_json({"folder": target, "archive": held})
        return
    click.echo(
        f"restored: {target} ({len(held.files)} files, all as archived on {held.made_at[:10]})"
    )
    click.echo(f"Look it over with: diary check --diary {target}")
