"""What a row is read with and held against: the officer's villages and languages, the roll."""

from collections.abc import Collection, Mapping
from datetime import datetime

from assistant.reading import Lexicon
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.office.cells import CellReader, bare_name
from assistant.service.office.choices import Choices
from assistant.service.office.judging import JudgedRoll
from assistant.service.sight import Sight
from assistant.store import Work


def roll_of(work: Work, sight: Sight, phones: Collection[str]) -> JudgedRoll:
    """What is known of these numbers, and what the officer may touch."""
    listed = work.enrolments.listed(phones)
    beds = work.enrolments.beds_of({each.farmer.id for each in listed.values()})
    sees: set[int | None] = set(sight.village_ids)
    if sight.officer.is_lead:
        sees.add(None)
    return JudgedRoll(listed, beds, frozenset(sees), sight.officer.id or None)


def reader_of(
    work: Work,
    house: House,
    sight: Sight,
    choices: Choices,
    units: Mapping[int, str],
    now: datetime,
) -> CellReader:
    """Reads rows for this officer; `units` are those that heads name, by column."""
    mine = {bare_name(village.name): village for village in sight.villages}
    every = {bare_name(village.name) for village in work.people.villages()}
    return CellReader(
        choices=choices,
        villages=mine,
        others=frozenset(every - set(mine)),
        lexicons=lexicons_of(house, sight),
        languages=house.languages,
        region=house.region,
        today=local_date(now, house.zone),
        units=units,
    )


def lexicons_of(house: House, sight: Sight) -> tuple[Lexicon, ...]:
    """The officer's language first, then the programme's."""
    codes = dict.fromkeys((sight.officer.language, *house.languages, "en"))
    return tuple(house.lexicons[code] for code in codes if code in house.lexicons)
