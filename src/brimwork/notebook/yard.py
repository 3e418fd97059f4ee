"""Other devices on the own network, let in only when that was asked for: to the pages without code and to nothing else, by an address with a code in it.

It is plain HTTP: who listens on that network can read along. This is said wherever the address is shown.
"""

from __future__ import annotations

import hmac
import ipaddress
import re
import secrets
import socket
from contextlib import suppress
from dataclasses import dataclass

from brimwork.units import InputError

WARNING = (
    "Whoever is on this network and has this address can open your pages and change your designs, and what is typed goes over the network unprotected. Use it only "
    "on a network that you trust, and stop Brimwork when you are done."
)
_LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"  # those that cannot be taken for one another
_ANYWHERE = "192.0.2.1"  # kept for examples; asked only which of our own addresses would be used, and nothing is sent


@dataclass(frozen=True)
class Yard:
    """How other devices come in: by which address of this machine, and with which code."""

    address: str
    code: str

    def url(self, port: int, base: str = "/") -> str:
        """What to type on the other device."""
        return f"http://{self.host(port)}{base}brimwork/{self.code}"

    def host(self, port: int) -> str:
        return f"{self.address}:{port}"

    def opens(self, code: str) -> bool:
        return hmac.compare_digest(code.encode(), self.code.encode())

    def reaches(self, path: str, base: str = "/") -> bool:
        """Whether another device may ask for a path: a page without code, or what belongs to one."""
        return bool(re.fullmatch(re.escape(base) + r"brimwork(/|/[a-z0-9-]{11}|/page/[\w-]+(\.ipynb)?|/line/[0-9a-f]{24}|/static/[\w.-]+|/print/.+)?", path))


def yard_at(asked: str) -> Yard:
    """Let other devices in by the address `asked` for, or by the one that this machine has on its network. Raises InputError."""
    address = asked or _own_address()
    try:
        private = ipaddress.IPv4Address(address)
    except ValueError:
        raise InputError(f"'{address}' is no address of a network: type one such as 192.168.1.20 after --yard, or --yard alone") from None
    if not private.is_private or private.is_loopback or private.is_unspecified or private.is_link_local:
        raise InputError(
            f"{address} is no address of a network of your own; pages are not shown to others: type --yard alone, or an address such as 192.168.1.20"
        )
    try:
        with socket.socket() as probe:
            probe.bind((address, 0))
    except OSError:
        raise InputError(f"this machine has no address {address}: type --yard alone, or look up its address in the settings of the network") from None
    part = "".join(secrets.choice(_LETTERS) for _ in range(10))
    return Yard(address, f"{part[:5]}-{part[5:]}")


def _own_address() -> str:
    with suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        probe.connect((_ANYWHERE, 9))
        return probe.getsockname()[0]
    raise InputError("this machine is on no network, so that no other device can reach it: join your own network first, then type brimwork open --yard again")
