"""What every command shares: which diary, --json, and errors told in one line.

`--diary FOLDER` may stand before or after the command; else DIARY_HOME, else the user's
data folder.
"""

import functools
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from diary.errors import DiaryError

if TYPE_CHECKING:
    from diary.records.store import Store

F = TypeVar("F", bound=Callable[..., Any])


class Diary(click.Group):
    """A group that turns a DiaryError into one line and its exit code."""

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command; an error that can be explained is, and nothing else is caught."""
        try:
            return super().invoke(ctx)
        except DiaryError as error:
            click.echo(f"Error: {error}", err=True)
            ctx.exit(error.exit_code)


def diary_folder(ctx: click.Context) -> Path | None:
    """The folder named on the command line, before or after the command."""
    while ctx is not None:
        folder = ctx.params.get("diary")
        if folder is not None:
            return Path(folder)
        if ctx.parent is None:
            return None
        ctx = ctx.parent
    return None


def folder_option(function: F) -> F:
    """Adds `--diary FOLDER`; read it with `diary_folder` (the command is not given it)."""
    return click.option(
        "--diary",
        type=click.Path(path_type=Path),
        metavar="FOLDER",
        expose_value=True,
        help="The diary's own folder (default: $DIARY_HOME, else your data folder).",
    )(function)


def with_store(function: Callable[..., Any]) -> Callable[..., Any]:
    """Gives a command the open `store` as its first argument. The diary must exist."""
    return _with_store(function, create=False)


def with_new_store(function: Callable[..., Any]) -> Callable[..., Any]:
    """As `with_store`, for commands that may begin a diary."""
    return _with_store(function, create=True)


def _with_store(function: Callable[..., Any], *, create: bool) -> Callable[..., Any]:
    @functools.wraps(function)
    def command(*args: Any, diary: Path | None, **kwargs: Any) -> Any:
        from diary.records.store import open_store
        from diary.settings import settings

        folder = diary or diary_folder(click.get_current_context())
        store: Store = open_store(settings(folder).folder, create=create)
        try:
            return function(store, *args, **kwargs)
        finally:
            store.close()

    return folder_option(command)


def json_option(function: F) -> F:
    """Adds `--json`, as `as_json`."""
    return click.option("--json", "as_json", is_flag=True, help="Print JSON, for programs.")(
        function
    )
