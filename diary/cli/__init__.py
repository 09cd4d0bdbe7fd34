"""The command `diary`: one module a command, listed here in the order of --help."""

import click

from diary.cli.models import models_group


@click.group()
@click.version_option(package_name="diary", prog_name="diary")
def main() -> None:
    """Keep a diary of your seedlings from what you say while filming them."""


main.add_command(models_group)
