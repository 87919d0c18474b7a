"""Long work of a page: it runs on beside the request, and the page looks how far it has come.

Kept in the memory of one process. Another process does not know of it; what must not be lost
or done twice is kept in the database by whoever does the work.
"""

import logging
from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass, field
from threading import Lock, Thread
from typing import Any

log = logging.getLogger(__name__)

KEPT = 16  # results that are still looked at; older ones are worked out again
WAIT_S = 1.5  # most lists are done by then, and nobody sees a page that waits


@dataclass
class Job:
    """One piece of work; `done` of `of` parts are over. `result` is None while it runs, and
    after a failure."""

    done: int = 0
    of: int = 0
    result: Any = None
    failed: bool = False
    thread: Thread | None = field(default=None, repr=False)

    @property
    def running(self) -> bool:
        """Whether it is still being worked on."""
        return self.result is None and not self.failed

    def told(self, done: int, of: int) -> None:
        """Takes down how far it has come."""
        self.done, self.of = done, of


class Jobs:
    """The pieces of work of one process, by what they are about."""

    def __init__(self) -> None:
        self._jobs: OrderedDict[Hashable, Job] = OrderedDict()
        self._lock = Lock()

    def job(self, key: Hashable, work: Callable[[Job], Any], *, wait_s: float = WAIT_S) -> Job:
        """The job of that key, begun if there is none or it failed; waits a moment for it."""
        with self._lock:
            found = self._jobs.get(key)
            if found is None or found.failed:
                found = self._begin(key, work)
            self._jobs.move_to_end(key)
        if found.thread is not None:
            found.thread.join(wait_s)
        return found

    def known(self, key: Hashable) -> Job | None:
        """The job of that key, if this process has it."""
        return self._jobs.get(key)

    def forget(self, key: Hashable) -> None:
        """What came of a job is asked for no more."""
        self._jobs.pop(key, None)

    def _begin(self, key: Hashable, work: Callable[[Job], Any]) -> Job:
        job = Job()

        def run() -> None:
            try:
                job.result = work(job)
            except Exception:
                log.exception("long work failed: %s", key)
                job.failed = True

        job.thread = Thread(target=run, name=f"job {key}", daemon=True)
        self._jobs[key] = job
        while len(self._jobs) > KEPT:
            self._jobs.popitem(last=False)
        job.thread.start()
        return job
