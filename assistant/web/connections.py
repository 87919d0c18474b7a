"""Connections that hold up nobody: waitress, with a time by which a request must be there, and
no more connections from one address than leave room for others.

The same process answers the operator. Half a request that goes on by a byte now and then would
otherwise keep its place for ever, and a thousand of them the operator out.
"""

import time
from typing import Any

from waitress.channel import HTTPChannel
from waitress.server import BaseWSGIServer, MultiSocketServer, create_server

CONNECTIONS = 1000  # an operator's, with room for people; more wait in the system's queue
MOST_OF_ONE = 250  # from one address, unless that is the proxy's
SILENT_S = 20  # a connection that says nothing for so long is closed
HEAD_S = 20  # so long a request's head may take, however it comes
BODY_S = 600  # and the whole of it: a list of farmers on a slow line
CLEANED_S = 5


class PromptChannel(HTTPChannel):
    """A connection whose requests must come in time."""

    _begun: float | None = None

    def __init__(self, server: Any, sock: Any, addr: Any, adj: Any, map: Any = None) -> None:  # noqa: A002  # waitress's own name
        super().__init__(server, sock, addr, adj, map=map)
        if _from_one(server, addr) > MOST_OF_ONE and addr[0] != adj.trusted_proxy:
            self.will_close = True

    def handle_read(self) -> None:
        """Reads on. What has come of an unfinished request does not put its end off."""
        super().handle_read()
        if self.request is None:
            self._begun = None
            return
        now = time.time()  # noqa: TID251  # waitress counts by it
        if self._begun is None:
            self._begun = now
        silent_s = self.adj.channel_timeout
        whole_s = BODY_S if self.request.headers_finished else min(HEAD_S, silent_s)
        self.last_activity = min(now, self._begun + whole_s - silent_s)


def _from_one(server: Any, addr: Any) -> int:
    return sum(each.addr[0] == addr[0] for each in tuple(server.active_channels.values()))


def listen(app: Any, host: str, port: int, **more: Any) -> BaseWSGIServer | MultiSocketServer:
    """A server that listens and does not run yet.

    Raises:
        OSError: the port is taken.
    """
    wanted = {
        "connection_limit": CONNECTIONS,
        "channel_timeout": SILENT_S,
        "cleanup_interval": CLEANED_S,
        "ident": None,  # what serves it is nobody's business
    }
    server = create_server(app, host=host, port=port, **{**wanted, **more})
    for each in _sockets(server):
        each.channel_class = PromptChannel
    return server


def _sockets(server: BaseWSGIServer | MultiSocketServer) -> list[Any]:
    """One for each address that is listened on."""
    if isinstance(server, BaseWSGIServer):
        return [server]
    return [each for each in (server.map or {}).values() if isinstance(each, BaseWSGIServer)]
