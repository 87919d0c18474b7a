"""Lists between sending in and taking in: kept with what the officer said, then forgotten."""

from dataclasses import asdict, dataclass
from datetime import datetime, timedelta

from assistant.service.brakes import left_to_spend
from assistant.service.consent import Enroller
from assistant.service.house import House
from assistant.service.limits import too_many
from assistant.service.lists.listing import Paper, guessed, outlook, read_paper, take_list
from assistant.service.lists.rejects import rejects_file
from assistant.service.office.choices import Choices
from assistant.service.office.judging import Outlook
from assistant.service.office.taking import Told, counts_of
from assistant.service.sight import Sight
from assistant.service.storms.broadcasts import NotSent
from assistant.store import OfficeList

KEPT = timedelta(days=7)  # a list holds names and numbers, and is nobody's archive
STALE = timedelta(minutes=10)  # work that takes longer was left by a process that ended
SHOWN = 20
LONGEST_FILE_NAME = 80


@dataclass(frozen=True)
class OpenedList:
    """A list that is not taken in yet."""

    kept: OfficeList
    paper: Paper
    choices: Choices


def send_in(house: House, sight: Sight, name: str, content: bytes, now: datetime) -> int:
    """Keeps a file and how it would be read; its number.

    Raises:
        SheetError: it cannot be read.
    """
    choices = guessed(house, sight, read_paper(content))
    called = " ".join(name.split())[-LONGEST_FILE_NAME:] or "-"
    with house.store.work() as work:
        work.lists.forget_before(now - KEPT)
        return work.lists.add(sight.officer.id, called, content, choices.kept(), now)


def latest(house: House, sight: Sight) -> tuple[OfficeList, ...]:
    """An officer's lists of the last days."""
    with house.store.look() as work:
        return work.lists.latest(sight.officer.id, SHOWN)


def find(house: House, sight: Sight, list_id: int) -> OfficeList | None:
    """A list of this officer's own."""
    with house.store.look() as work:
        found = work.lists.get(list_id)
    return found if found and found.officer_id == sight.officer.id else None


def opened(house: House, sight: Sight, list_id: int) -> OpenedList | None:
    """A list that can still be read, with what was said of it."""
    kept = find(house, sight, list_id)
    if kept is None or kept.content is None:
        return None
    choices = Choices.read(kept.choices)
    return OpenedList(kept, read_paper(kept.content, choices.sheet, choices.encoding), choices)


def choose(house: House, list_id: int, choices: Choices, now: datetime) -> None:
    """Keeps what the officer approved and decided."""
    with house.store.work() as work:
        work.lists.choose(list_id, choices.kept(), now)


def dry_run(house: House, sight: Sight, paper: OpenedList, now: datetime) -> Outlook:
    """What taking a list in would do now."""
    with house.store.look() as work:
        return outlook(work, house, sight, paper.paper, paper.choices, now)


def refused(house: House, sight: Sight, asked: int, now: datetime) -> NotSent | None:
    """Why so many may not be asked by text now, one segment each at least; None where they
    may."""
    with house.store.look() as work:
        if over := too_many(work, house, sight, asked, now):
            return NotSent(over=over)
        left = left_to_spend(work, house, now)
    return NotSent(left=left) if left is not None and asked > left else None


def begin(house: House, list_id: int, now: datetime) -> bool:
    """Claims a list for being taken in; False where it is at work or done already."""
    with house.store.work() as work:
        return work.lists.begin(list_id, now, now - STALE)


def take_in(
    house: House, sight: Sight, paper: OpenedList, seen: str, now: datetime, told: Told
) -> bool:
    """Takes a claimed list in; False, and it may be looked at again, where the roll has
    changed since it was seen."""
    who = Enroller(sight.officer.id, sight.officer.name)
    kept = paper.kept
    try:
        done = take_list(
            house,
            sight,
            who,
            paper.paper,
            paper.choices,
            kept.name,
            now,
            seen=seen,
            told=told,
        )
    except Exception:
        _give_back(house, kept.id, now)
        raise
    if done is None:
        _give_back(house, kept.id, now)
        return False
    counts = counts_of(done)
    rejects = rejects_of(paper.paper, done, house, sight) if counts.rejected else None
    with house.store.work() as work:
        work.lists.finish(kept.id, now, asdict(counts), rejects)
    return True


def _give_back(house: House, list_id: int, now: datetime) -> None:
    with house.store.work() as work:
        work.lists.give_back(list_id, now, {})


def rejects_of(paper: Paper, found: Outlook, house: House, sight: Sight) -> bytes:
    """The rows left out, in the officer's language."""
    catalogue = house.catalogue(sight.officer.language)
    return rejects_file(paper.heads, found.judged, catalogue, paper.sheet.delimiter)
