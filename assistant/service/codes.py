"""Officers' codes in texts: wrong ones are counted, and after five in an hour none is looked
at until the hour has passed."""

from dataclasses import dataclass
from datetime import datetime

from assistant.people import Officer
from assistant.service import tries
from assistant.service.audit import Act, note
from assistant.service.house import House
from assistant.store import Work


@dataclass(frozen=True)
class CodeCheck:
    """Whether a code that came by text was right; `locked_until` where none is looked at."""

    right: bool
    locked_until: datetime | None = None


def check_text_code(
    work: Work, house: House, officer: Officer, code: str | None, now: datetime
) -> CodeCheck:
    """Looks at the code in an officer's text, if there is one."""
    if code is None:
        return CodeCheck(False)
    tried = (tries.TEXT_CODE, officer.phone)
    until = tries.locked_until(work, [tried], now)
    if until is not None:
        return CodeCheck(False, until)
    if house.check_code(code, officer.code_hash):
        tries.forget(work, tried)
        return CodeCheck(True)
    tries.count(work, [tried], now)
    until = tries.locked_until(work, [tried], now)
    if until is not None:
        note(work, officer.id, Act.CODE_LOCKED, now)
    return CodeCheck(False, until)
