"""What every command that listens shares: which speech model, how hard, in which language."""

import functools
from collections.abc import Callable
from typing import Any

import click

from diary.speech.settings import Effort, SpeechSettings

_ANY = "any"


def listening_options(function: Callable[..., Any]) -> Callable[..., Any]:
    """Adds --model, --effort and --language, given to the command together as `speech`.

    `speech` is None where none of them was given, so that a command can tell.
    """

    @functools.wraps(function)
    def command(
        *args: Any, model: str | None, effort: str | None, language: str | None, **kwargs: Any
    ) -> Any:
        speech = None
        if model or effort or language:
            speech = SpeechSettings(
                model=model or "base",
                effort=Effort(effort or "normal"),
                language=None if language == _ANY else language or "en",
            )
        return function(*args, speech=speech, **kwargs)

    for option in (
        click.option("--language", metavar="CODE", help="Spoken: en (else), de, fr ... or any."),
        click.option(
            "--effort",
            type=click.Choice([effort.value for effort in Effort]),
            help="How hard to listen: draft is quick, careful slow, normal else.",
        ),
        click.option("--model", help="Speech model: a name or a folder; base else."),
    ):
        command = option(command)
    return command
