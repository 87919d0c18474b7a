"""Connections to the world outside only: what a name leads to is looked at when the connection
stands and before anything is said over it, so that no answer of a name server, however quickly
it changes, leads to a service of our own network.
"""

import socket
from ipaddress import IPv4Address, IPv6Address, ip_address, ip_network
from typing import Any

from requests.adapters import HTTPAdapter
from urllib3.connection import HTTPSConnection
from urllib3.connectionpool import HTTPSConnectionPool

_NAT64 = ip_network("64:ff9b::/96")  # RFC 6052: an IPv4 address in its last 32 bits


class InsideError(OSError):
    """A name led to an address of a private net, or of this machine."""


def is_outside(address: str) -> bool:
    """Whether an IP address is one of the public net (IANA's registries of special addresses),
    also where it carries another one."""
    found = ip_address(address.partition("%")[0])
    carried = _carried(found) if isinstance(found, IPv6Address) else None
    if carried is not None:
        return is_outside(str(carried))
    return found.is_global and not found.is_multicast


def _carried(found: IPv6Address) -> IPv4Address | None:
    if found in _NAT64:
        return IPv4Address(int(found) & 0xFFFFFFFF)
    return found.ipv4_mapped or found.sixtofour or (found.teredo[1] if found.teredo else None)


class _Connection(HTTPSConnection):
    def _new_conn(self) -> socket.socket:
        made = super()._new_conn()
        peer = str(made.getpeername()[0])
        if not is_outside(peer):
            made.close()
            raise InsideError(f"expected a public address behind {self.host}, got {peer}")
        return made


class _Pool(HTTPSConnectionPool):
    ConnectionCls = _Connection


class Outside(HTTPAdapter):
    """Mounted for https://, it lets a session reach public addresses only."""

    def init_poolmanager(self, *given: Any, **more: Any) -> None:
        """Makes the pools, which make the connections."""
        super().init_poolmanager(*given, **more)
        self.poolmanager.pool_classes_by_scheme = {"https": _Pool}
