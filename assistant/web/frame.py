"""The frame of every page: how much waits, and what was just done and can be undone."""

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.service.waiting.deeds import UNDO_FOR, undoable
from assistant.service.waiting.page import counts
from assistant.web.desk import Desk
from assistant.wording import messages_web_desk as web_desk
from assistant.wording.message import Say


@dataclass(frozen=True)
class LastDeed:
    """What was just done, and for how long [s] it can still be undone."""

    id: int
    say: Say
    left: int


def last_deed(desk: Desk) -> LastDeed | None:
    """What the officer did in the last minute from the list."""
    found = undoable(desk.house, desk.sight, desk.now)
    if found is None:
        return None
    left = int((found.at + UNDO_FOR - desk.now).total_seconds())
    did = web_desk.DID[found.kind]
    said = did(n=found.count) if did.plural else did()
    return LastDeed(found.id, said, left)


def counted(desk: Desk) -> Mapping[str, int]:
    """How much waits, by the name of the count."""
    found = counts(desk.house, desk.sight, desk.now)
    return {"morning": found.all, "warnings": found.warnings}
