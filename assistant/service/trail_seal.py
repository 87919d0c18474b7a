"""The trail's seals: a keyed digest of each part and of the seal before it. Whoever changes or
deletes lines in the database breaks the chain, and cannot mend it without the deployment's key.

What a line says in words may be erased with a person; the digest of it stays and is what is
sealed.
"""

import hmac
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from assistant.service.house import House
from assistant.store import Seal, TrailLine

AT_ONCE = 500
RIPE = timedelta(minutes=1)  # a line of a transaction that began before may still come


@dataclass(frozen=True)
class Checked:
    """Lines that are sealed and right, and the first seal that is broken."""

    lines: int
    broken: Seal | None = None


def seal(house: House, now: datetime) -> int:
    """Seals the lines that are new; how many."""
    with house.store.work() as work:
        work.lock("the trail")
        last = work.privacy.last_seal()
        found = work.privacy.trail_lines(last.last_id if last else 0, None, AT_ONCE)
        lines = [line for line in found if line.at <= now - RIPE]
        if not lines:
            return 0
        digests = [(line.id, _words(house, line.detail)) for line in lines]
        sealed = [_line(line, said) for line, (_, said) in zip(lines, digests, strict=True)]
        digest = _digest(house, last.digest if last else "", sealed)
        work.privacy.seal(Seal(lines[-1].id, now, len(lines), digest), digests)
    return len(lines)


def check(house: House) -> Checked:
    """Goes through the whole chain."""
    before, after, count = "", 0, 0
    with house.store.look() as work:
        for one in work.privacy.seals():
            lines = work.privacy.trail_lines(after, one.last_id, one.count + 1)
            if not _holds(house, before, one, lines):
                return Checked(count, one)
            before, after, count = one.digest, one.last_id, count + one.count
    return Checked(count)


def _holds(house: House, before: str, one: Seal, lines: Sequence[TrailLine]) -> bool:
    words = all(
        line.detail == "" or line.detail_digest == _words(house, line.detail) for line in lines
    )
    sealed = [_line(line, line.detail_digest or "") for line in lines]
    digest = _digest(house, before, sealed)
    return words and len(lines) == one.count and hmac.compare_digest(digest, one.digest)


def _words(house: House, detail: str) -> str:
    return hmac.digest(house.key_for("trail words"), detail.encode(), "sha256").hex()


def _line(line: TrailLine, said: str) -> str:
    at = line.at.astimezone(UTC).isoformat()
    parts = (line.id, at, line.officer_id, line.act, line.farmer_id, line.village_id, said)
    return "|".join(map(str, parts))


def _digest(house: House, before: str, lines: Sequence[str]) -> str:
    said = "\n".join((before, *lines)).encode()
    return hmac.digest(house.key_for("trail"), said, "sha256").hex()
