"""`diary serve`: the pages, in the browser of this machine or, shared, on the phone."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from diary.cli.context import diary_folder, folder_option
from diary.errors import UsageError

if TYPE_CHECKING:
    import socket

    from starlette.applications import Starlette

PORT = 8642


@click.command("serve")
@click.option("--port", type=int, default=PORT, show_default=True, help="0: any free one.")
@click.option("--share", is_flag=True, help="Let phones in the local network in, by pass phrase.")
@click.option("--no-open", is_flag=True, help="Do not open the browser.")
@click.option("--model", default=None, help="The speech model for new recordings.")
@folder_option
@click.pass_context
def serve_command(
    ctx: click.Context,
    port: int,
    share: bool,
    no_open: bool,
    model: str | None,
    diary: Path | None,
) -> None:
    """Show the diary in the browser; drop recordings there, look at clips, put things right.

    Only this machine can reach it, unless you say --share: then so can whoever is in the
    local network and knows the pass phrase that you are asked for.

    \b
    Examples:  diary serve
               diary serve --share
    """
    from diary.settings import settings
    from diary.web.app import create_app
    from diary.web.guard import PassPhrase

    phrase = PassPhrase(_ask()) if share else None
    chosen = settings(diary or diary_folder(ctx), model)
    addresses: tuple[str, ...] = ()
    if share:
        from diary.web.sharing import own_addresses

        addresses = own_addresses()
        if not addresses:
            raise UsageError("This machine is in no network, so no phone can reach it.")
    app = create_app(chosen, phrase=phrase, hosts=addresses)
    listening = _listen("0.0.0.0" if share else "127.0.0.1", port)
    port = listening.getsockname()[1]
    click.echo(f"Your diary is at  http://127.0.0.1:{port}/   (end with Ctrl+C)")
    if share:
        _say_shared(addresses, port)
    if not no_open:
        import webbrowser

        webbrowser.open(f"http://127.0.0.1:{port}/")
    _run(app, listening)


def _ask() -> str:
    from diary.web.sharing import LEAST_PHRASE

    click.echo(
        "Sharing shows the whole diary to every device in this network whose user knows the\n"
        "pass phrase: they can watch, correct and add recordings. It is not encrypted on its\n"
        "way, so share only in a network you trust. It ends when you press Ctrl+C."
    )
    phrase: str = click.prompt("Pass phrase", hide_input=True, confirmation_prompt="Once more")
    if len(phrase.strip()) < LEAST_PHRASE:
        raise UsageError(f"A pass phrase needs at least {LEAST_PHRASE} characters.")
    return phrase


def _say_shared(addresses: tuple[str, ...], port: int) -> None:
    from diary.web.sharing import qr_text

    first = f"http://{addresses[0]}:{port}/"
    click.echo(f"On the phone:     {first}")
    for address in addresses[1:]:
        click.echo(f"or                http://{address}:{port}/")
    click.echo(qr_text(first))


def _listen(host: str, port: int) -> "socket.socket":
    import socket

    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((host, port))
    except OSError as error:
        listening.close()
        raise UsageError(
            f"Port {port} is taken ({error.strerror}). Is the diary open already? "
            "Else choose another: diary serve --port 0"
        ) from error
    listening.listen(128)  # the browser may come before the server has begun
    return listening


def _run(app: "Starlette", listening: "socket.socket") -> None:
    import uvicorn

    config = uvicorn.Config(
        app, log_level="warning", proxy_headers=False, server_header=False, lifespan="on"
    )
    uvicorn.Server(config).run(sockets=[listening])
