"""Joins the parts of one deployment: settings -> store, catalogues, word lists, gateway."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from uuid import uuid4

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.practices import Practice
from assistant.people import LANGUAGES
from assistant.reminders.plan import Hours
from assistant.service.house import House, KeepStop, no_journal
from assistant.service.meter import Meter, NoMeter
from assistant.service.nearby import Phonebook
from assistant.settings import Settings, SettingsError
from assistant.store import Store, StoreError
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.hearing import open_ears
from assistant.wiring.journal import Journal, journal_path
from assistant.wiring.lexicons import open_lexicons
from assistant.wiring.own_key import open_key
from assistant.wiring.parts import alert_check, alert_rules, parts_of
from assistant.wiring.practices import open_practices
from assistant.wiring.prices import open_prices
from assistant.wiring.programme import read_programme
from assistant.wiring.refit import refit_of, said_by, tariff_of
from assistant.wiring.varieties import open_varieties
from assistant.wording.screens import Limits

_HASHER = PasswordHasher()


def hash_code(code: str) -> str:
    """An officer's code as it may be stored (Argon2)."""
    return _HASHER.hash(code)


def check_code(code: str, code_hash: str) -> bool:
    """Whether a code is the one that was hashed."""
    try:
        return _HASHER.verify(code_hash, code)
    except (VerificationError, InvalidHashError):
        return False


def bare_store(settings: Settings) -> Store:
    """The database as it is, its tables not looked at; the folder of a SQLite file is made."""
    url = settings.database_url
    if url.startswith("sqlite:///") and ":memory:" not in url:
        _make_file(Path(url.removeprefix("sqlite:///")))
    return Store(url, _practices(settings))


def _make_file(database: Path) -> None:
    """An empty file that only its owner may read, where there is none: SQLite keeps to its
    rights for the log beside it too. Names, numbers and the key of the sessions stand in it."""
    database.parent.mkdir(parents=True, exist_ok=True)
    database.touch(mode=0o600)


def open_store(settings: Settings, *, migrate: bool = False) -> Store:
    """The database with the tables of this release. Those of a new one are made; others are
    changed only where that was asked for, since an earlier release beside this one, or the one
    to go back to, could not work with them.

    Raises:
        StoreError: its tables are those of another release; the text says what to do.
    """
    store = bare_store(settings)
    found = store.tables()
    if found.there is None or (migrate and found.known and not found.fit):
        store.migrate()
    elif not found.fit:
        store.close()
        raise StoreError(found.advice)
    return store


def _practices(settings: Settings) -> Mapping[str, Practice]:
    folder = settings.practices_folder
    return open_practices(Path(folder) if folder else None)


def _varieties(settings: Settings) -> tuple[ProgrammeVariety, ...]:
    if not settings.varieties_file:
        return ()
    return tuple(open_varieties(Path(settings.varieties_file)).values())


def open_house(settings: Settings, store: Store) -> House:
    """What the use cases work with.

    Raises:
        SettingsError: a language is set that the assistant does not speak, or the programme's
            thresholds for official alerts, or its price list, cannot be used.
    """
    unknown = [code for code in settings.languages if code not in LANGUAGES]
    if unknown:
        raise SettingsError(
            f"NURSERY_LANGUAGES: no {', '.join(unknown)}; set some of {', '.join(LANGUAGES)}"
        )
    base = House(
        store=store,
        catalogues={code: open_catalogue(code) for code in settings.languages},
        lexicons=open_lexicons(),
        ears=open_ears(),
        languages=settings.languages,
        zone=settings.zone,
        region=settings.region or None,
        hours=Hours(
            prompt=settings.prompt_at,
            second=settings.second_at,
            quiet_from=settings.quiet_from,
            quiet_until=settings.quiet_until,
        ),
        limits=Limits(settings.screen_septets, settings.screen_ucs2),
        urgent_breaks_quiet=settings.urgent_breaks_quiet,
        new_id=lambda: uuid4().hex,
        check_code=check_code,
        hash_code=hash_code,
        programme=settings.programme,
        replies_free=settings.replies_free,
        tariff=tariff_of(settings),
        season_months=settings.season_months,
        prices=open_prices(Path(settings.prices_file)) if settings.prices_file else None,
        varieties=_varieties(settings),
        parts=parts_of(settings),
        alert_rules=alert_rules(settings),
        alerts_go_out=settings.alerts_then == "sent",
        check_alert=alert_check(settings),
        phonebook=_phonebook(settings),
        alarm_next=timedelta(minutes=settings.alarm_next_minutes),
        journal=_journal(settings),
        several_lines=bool(settings.lines_file),
        key=open_key(settings),
        second_factor=settings.second_factor,
        code_uses=settings.code_uses,
        day_segments=settings.day_segments,
        month_money=settings.month_money,
        village_segments=settings.village_segments,
        village_month_money=settings.village_month_money,
        officer_day_texts=settings.officer_day_texts,
        officer_month_texts=settings.officer_month_texts,
        strangers_hour_answers=settings.strangers_hour_answers,
        four_eyes=settings.four_eyes,
        said_by=said_by(settings),
        meter=_meter(settings),
    )
    return replace(base, refit=refit_of(settings, base))


def _journal(settings: Settings) -> KeepStop:
    path = journal_path(settings)
    return Journal(path, open_key(settings)) if path else no_journal


def _phonebook(settings: Settings) -> Phonebook:
    path = settings.programme_file
    return read_programme(Path(path)).phonebook if path else Phonebook()


def _meter(settings: Settings) -> Meter:
    """Only who is asked for figures opens the library that gives them."""
    if not settings.metrics_port:
        return NoMeter()
    from assistant.wiring.watching import ProcessCounts  # noqa: PLC0415  # see above

    return ProcessCounts()
