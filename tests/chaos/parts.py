"""The processes of the service, forked from one that has everything imported, so that a kill
costs milliseconds and not the seconds of a start."""

import os
import resource
from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from multiprocessing import get_context
from multiprocessing.context import ForkServerProcess
from pathlib import Path

from assistant import worker
from assistant.commands import serve

CLOCK = "CHAOS_CLOCK"  # names the file that says by how many seconds the clock is wrong
PARTS = ("web", "worker")
_NO_LIMIT = resource.RLIM_INFINITY

_forked = get_context("forkserver")
_forked.set_forkserver_preload(["tests.chaos.warm"])


def forked(life: Callable[..., None], *given: object) -> ForkServerProcess:
    """A process that is about to live so."""
    return _forked.Process(target=life, args=given, daemon=True)


class Part:
    """One process, started again as often as it is killed."""

    def __init__(self, name: str, environment: Mapping[str, str], log: Path) -> None:
        self._name, self._environment, self._log = name, dict(environment), log
        self._process: ForkServerProcess | None = None

    def start(self) -> None:
        """Begins, unless it runs."""
        if self._process is None or not self._process.is_alive():
            self._process = forked(run, self._name, self._environment, str(self._log))
            self._process.start()

    def may_write(self, octets: int) -> None:
        """How long a file may become by its hand; what is longer takes no more (EFBIG)."""
        if self._process is not None and self._process.pid and self._process.is_alive():
            resource.prlimit(self._process.pid, resource.RLIMIT_FSIZE, (octets, _NO_LIMIT))

    def kill(self) -> None:
        """SIGKILL, by its own id."""
        if self._process is not None:
            self._process.kill()
            self._process.join()
            self._process = None


def run(name: str, environment: dict[str, str], log: str) -> None:
    """The whole life of a process of the service."""
    os.environ.update(environment)
    out = os.open(log, os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    os.dup2(out, 1)
    os.dup2(out, 2)
    right = worker.wall_clock

    def wrong() -> datetime:
        said = Path(environment[CLOCK]).read_text() or "0"
        return right() + timedelta(seconds=float(said))

    serve.wall_clock = wrong  # type: ignore[attr-defined]
    for kind in (worker.Worker, worker.LineWatch):
        defaults = kind.__init__.__kwdefaults__
        assert defaults is not None
        defaults["clock"] = wrong
    command = serve.web if name == "web" else serve.worker
    assert command.callback is not None
    command.callback()
