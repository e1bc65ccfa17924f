"""``signage serve``: shows the training pages to phones on the local network."""

from __future__ import annotations

import socket
import sys
from pathlib import Path
from typing import Annotated

import typer

from signage.cli.application import OUTPUT, QuietOption, typer_application
from signage.cli.report import say
from signage.ground.errors import MissingFromMachineError, WrongUsageError
from signage.ground.quotation import quoted

OWN_MACHINE = "127.0.0.1"
_ANY = {"0.0.0.0", "::"}  # noqa: S104 - recognised, and used only when the person asks for it
_NOWHERE = ("192.0.2.1", 9)
"""An address for documents (RFC 5737): connecting a datagram socket sends nothing and chooses a route."""


@typer_application.command()
def serve(
    site: Annotated[Path, typer.Option(help="The folder that 'signage pages' made.")] = OUTPUT / "site",
    address: Annotated[
        str, typer.Option(help="127.0.0.1: only this machine. 0.0.0.0: every phone on the network.")
    ] = OWN_MACHINE,
    port: Annotated[int, typer.Option(min=0, max=65535, help="0 takes any free one.")] = 8080,
    quiet: QuietOption = False,
) -> int:
    """Serve the training pages until Ctrl-C; nothing can be changed through it."""
    import uvicorn

    from signage.pages.address import FILE_LIST
    from signage.pages.server import SiteFolder, server_application

    if not (site / "index.html").is_file():
        raise WrongUsageError(
            f"There are no pages in {site}/. Run 'signage pages' first, or name them by --site."
        )
    listener = _listener(address, port)
    port = listener.getsockname()[1]
    if not quiet:
        _announce(site, address, port)
    settings = uvicorn.Config(
        server_application(SiteFolder(site, FILE_LIST)),
        log_level="error",
        access_log=False,
        server_header=False,
        lifespan="off",
        timeout_keep_alive=10,
        limit_concurrency=1000,
    )
    uvicorn.Server(settings).run(sockets=[listener])
    return 0


def _listener(address: str, port: int) -> socket.socket:
    family = socket.AF_INET6 if ":" in address else socket.AF_INET
    listener = socket.socket(family, socket.SOCK_STREAM)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((address, port))
    except (TypeError, ValueError) as error:
        listener.close()
        raise WrongUsageError(
            f"{quoted(address)} is no address. Write one such as 127.0.0.1, 0.0.0.0 or ward-pages.internal."
        ) from error
    except (OSError, OverflowError) as error:
        listener.close()
        reason = getattr(error, "strerror", None) or error
        raise MissingFromMachineError(
            f"{quoted(address)}, port {port}, cannot be used: {reason}. "
            "Choose another with --port, or an address of this machine with --address."
        ) from error
    return listener


def _announce(site: Path, address: str, port: int) -> None:
    from signage.cli.terminal_code import print_code

    found = own_addresses() if address in _ANY else [address]
    links = [f"http://{f'[{each}]' if ':' in each else each}:{port}/" for each in found]
    say(f"Showing {site}/, to read only. Ctrl-C ends it.")
    if address == OWN_MACHINE:
        say(f"  {links[0]}")
        say("Only this machine can open it. For phones: signage serve --address 0.0.0.0")
        return
    for link in links:
        say(f"  {link}")
    if links:
        print_code(links[0])
        say(
            "A phone on the same network can scan this. Codes on sheets lead to the training address instead."
        )
    else:
        say("This machine has no address on a network.")
    sys.stdout.flush()


def own_addresses() -> list[str]:
    """The addresses under which others on the network may reach this machine, the usual one first."""
    found: list[str] = []
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(_NOWHERE)
            found.append(str(probe.getsockname()[0]))
        except OSError:
            pass
    try:
        entries = socket.getaddrinfo(socket.gethostname(), None, family=socket.AF_INET)
    except OSError:
        entries = []
    found += [str(entry[4][0]) for entry in entries]
    return [each for each in dict.fromkeys(found) if not each.startswith(("127.", "169.254.", "0."))]
