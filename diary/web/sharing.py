"""Being reached from a phone in the same house: this machine's addresses, and a QR code."""

import io
import ipaddress
import socket

LEAST_PHRASE = 8  # characters; tries are few a minute, so that is enough in a house


def own_addresses() -> tuple[str, ...]:
    """The IPv4 addresses by which others in the local network may reach this machine.

    The one that would be used comes first. Nothing is sent: a datagram socket that is only
    connected tells which of its addresses the machine would use (192.0.2.1 is set aside for
    documentation, RFC 5737).
    """
    found: list[str] = []
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))
            found.append(probe.getsockname()[0])
        except OSError:
            pass  # no network at all
    try:
        for entry in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET):
            found.append(str(entry[4][0]))
    except OSError:
        pass  # the machine's own name is not known to it
    return tuple(
        address
        for address in dict.fromkeys(found)
        if not ipaddress.ip_address(address).is_loopback
        and not ipaddress.ip_address(address).is_unspecified
    )


def qr_text(address: str) -> str:
    """The address as a QR code (ISO/IEC 18004) of block characters, for a terminal."""
    import segno

    drawn = io.StringIO()
    segno.make(address, error="m", micro=False).terminal(out=drawn, compact=True, border=2)
    return drawn.getvalue()
