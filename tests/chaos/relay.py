"""What stands between the service and its operator, in a process that can be killed: whatever
is on its way then is cut in the middle, and of a text that left nobody hears what became."""

import asyncio
from contextlib import suppress

from tests.chaos.parts import forked

CHUNK = 65_536


class Relay:
    """Passes bytes from a port of its own to that of the operator, until it is killed."""

    def __init__(self, port: int, to: int) -> None:
        self.port, self._to = port, to
        self._process = forked(pass_on, port, to)

    def start(self) -> None:
        """Listens again at the same place."""
        if not self._process.is_alive():
            self._process = forked(pass_on, self.port, self._to)
            self._process.start()

    def kill(self) -> None:
        """SIGKILL, by its own id."""
        if self._process.is_alive():
            self._process.kill()
            self._process.join()


def pass_on(port: int, to: int) -> None:
    """The whole life of the process."""
    asyncio.run(_serve(port, to))


async def _serve(port: int, to: int) -> None:
    async def met(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        try:
            theirs, ours = await asyncio.open_connection("127.0.0.1", to)
        except OSError:
            writer.close()
            return
        await asyncio.gather(_pass(reader, ours), _pass(theirs, writer))

    server = await asyncio.start_server(met, "127.0.0.1", port)
    async with server:
        await server.serve_forever()


async def _pass(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
    with suppress(OSError):
        while data := await reader.read(CHUNK):
            writer.write(data)
            await writer.drain()
    with suppress(OSError):
        writer.close()
