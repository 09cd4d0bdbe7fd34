"""The command `diary`: one module a command, listed here in the order of --help."""

from pathlib import Path

import click

from diary.cli.add import add_command
from diary.cli.archive import archive_command, restore_command
from diary.cli.check import check_command
from diary.cli.context import Diary, folder_option
from diary.cli.corrections import corrections_group
from diary.cli.cultivars import cultivars_group
from diary.cli.demo import demo_command
from diary.cli.evaluate import evaluate_command
from diary.cli.export import export_command
from diary.cli.extract import extract_command
from diary.cli.find import find_command
from diary.cli.format import format_command
from diary.cli.list import list_command
from diary.cli.lookalikes import lookalikes_command
from diary.cli.models import models_group
from diary.cli.pedigree import pedigree_command
from diary.cli.play import play_command
from diary.cli.progeny import progeny_command
from diary.cli.read_again import read_again_command
from diary.cli.recording import recording_command
from diary.cli.recordings import recordings_command
from diary.cli.reel import reel_command
from diary.cli.register import register_group
from diary.cli.seedling import seedling_command
from diary.cli.serve import serve_command
from diary.cli.sheet import sheet_command


@click.group(cls=Diary)
@folder_option
@click.version_option(package_name="diary", prog_name="diary")
def main(diary: Path | None) -> None:  # read by the commands, see context
    """Keep a diary of your seedlings from what you say while filming them.

    Nothing you film or say leaves this machine.
    """


main.add_command(demo_command)
main.add_command(add_command)
main.add_command(extract_command)
main.add_command(evaluate_command)
main.add_command(serve_command)
main.add_command(recordings_command)
main.add_command(recording_command)
main.add_command(seedling_command)
main.add_command(find_command)
main.add_command(play_command)
main.add_command(list_command)
main.add_command(lookalikes_command)
main.add_command(progeny_command)
main.add_command(pedigree_command)
main.add_command(sheet_command)
main.add_command(reel_command)
main.add_command(export_command)
main.add_command(register_group)
main.add_command(cultivars_group)
main.add_command(format_command)
main.add_command(read_again_command)
main.add_command(corrections_group)
main.add_command(archive_command)
main.add_command(restore_command)
main.add_command(check_command)
main.add_command(models_group)
