"""Villages and officers, added from the desk."""

from collections.abc import Callable, Mapping
from datetime import datetime

from assistant.agronomy.practices import MAT
from assistant.people import Officer, Village
from assistant.service.audit import TrailAct, note
from assistant.service.climate import set_climate
from assistant.service.house import House
from assistant.store import Work


def add_village(house: House, name: str, zone: str | None = None) -> Village:
    """A new village; without a zone it keeps the programme's time.

    Raises:
        AlreadyThereError: a village of that name is there, in whatever letters.
    """
    with house.store.work() as work:
        kept = {village.name.casefold(): village.name for village in work.people.villages()}
        return work.people.add_village(kept.get(name.casefold(), name), zone or house.zone)


def add_villages_if_none(house: House, villages: tuple[tuple[str, str | None], ...]) -> int:
    """The programme's villages, where none were added yet; how many were added."""
    with house.store.work() as work:
        if work.people.villages():
            return 0
        for name, zone in villages:
            work.people.add_village(name, zone or house.zone)
        return len(villages)


def list_villages(house: House) -> tuple[Village, ...]:
    """All villages by name."""
    with house.store.work() as work:
        return work.people.villages()


def place_village(
    house: House, village: str, latitude: float | None, longitude: float | None
) -> Village:
    """Keeps where a village lies [degrees north and east], or that nobody knows.

    Raises:
        LookupError: no such village; the text names those that are.
    """
    with house.store.work() as work:
        found = _named(work, village)
        return work.people.place_village(found.id, latitude, longitude)


def enter_climate(
    house: House, village: str, months: tuple[float, ...] | None, now: datetime
) -> Village:
    """Keeps the mean temperature of each month of a village [C], or that nobody knows.

    Raises:
        LookupError: no such village; the text names those that are.
    """
    with house.store.work() as work:
        return set_climate(work, house, _named(work, village), months, now)


def enter_climates(
    house: House, climates: Mapping[str, tuple[float, ...]], now: datetime
) -> None:
    """The programme file's temperatures of villages, where nobody has said them yet."""
    with house.store.work() as work:
        for village in work.people.villages():
            if village.climate is None and village.name in climates:
                set_climate(work, house, village, climates[village.name], now)


def _named(work: Work, village: str) -> Village:
    found = {each.name.casefold(): each for each in work.people.villages()}
    if village.casefold() not in found:
        names = ", ".join(each.name for each in found.values()) or "none yet"
        raise LookupError(f"no village {village}; there are: {names}")
    return found[village.casefold()]


def offer_practices(house: House, village: str, codes: tuple[str, ...]) -> Village:
    """The practices that are offered in a village from now on; the mat is always one.

    Raises:
        LookupError: no such village or practice; the text names those that are.
    """
    known = house.store.practices
    unknown = [code for code in codes if code not in known]
    if unknown:
        raise LookupError(f"no practice {', '.join(unknown)}; there are: {', '.join(known)}")
    with house.store.work() as work:
        offered = dict.fromkeys((MAT.code, *codes))
        return work.people.offer_practices(_named(work, village).id, tuple(offered))


def count_officers(house: House) -> int:
    """How many officers there are."""
    with house.store.work() as work:
        return len(work.people.officers())


def add_officer(
    house: House,
    *,
    phone: str,
    name: str,
    villages: tuple[str, ...],
    language: str,
    is_lead: bool,
    code: str,
    hash_code: Callable[[str], str],
    now: datetime,
) -> Officer:
    """An officer for some villages, known from now on by number and this code; a line of the
    trail says so, and whether it is a lead.

    Raises:
        LookupError: a village is not there; the text names those that are.
    """
    with house.store.work() as work:
        known = {village.name.casefold(): village for village in work.people.villages()}
        missing = [name for name in villages if name.casefold() not in known]
        if missing:
            names = ", ".join(village.name for village in known.values()) or "none yet"
            raise LookupError(
                f"no village {', '.join(missing)}; there are: {names}. "
                "Add it with: nursery village add NAME"
            )
        ids = tuple(known[village.casefold()].id for village in villages)
        officer = work.people.add_officer(
            phone, name, hash_code(code), language, ids, is_lead=is_lead
        )
        what = f"{name}, {phone}{', lead' if is_lead else ''}"
        note(work, None, TrailAct.OFFICER_ADDED, now, detail=what)
        return officer
