"""The address for the phone, and the QR code that carries it."""

import ipaddress

from diary.web.sharing import own_addresses, qr_text


def test_own_addresses_are_reachable_ones() -> None:
    for address in own_addresses():
        assert not ipaddress.ip_address(address).is_loopback


def test_the_code_is_a_square_of_blocks_that_differs_by_address() -> None:
    """ISO/IEC 18004: 17 + 4 * version modules a side, here with a border of 2 and two a line."""
    lines = [line for line in qr_text("http://192.168.7.5:8642/").splitlines() if line.strip()]
    assert len(lines) >= (25 + 4) // 2
    assert qr_text("http://192.168.7.5:8642/") != qr_text("http://192.168.7.6:8642/")
