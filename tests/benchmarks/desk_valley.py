"""An officer's valley of twelve villages, on a morning of rain in full season.

    valley = settle(url, farmers=600)
    app = valley.app()      the pages, on that morning's clock; OFFICER and LEAD may sign in

Sixty-three calls, words and silent beds wait in it, three warnings stand, the weather service
has sent one more and taken one back, two phones cannot be reached.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal
from typing import Any

from flask import Flask
from sqlalchemy import text

from assistant.channel import Channel, Fate, Handover, Incoming, Outgoing, Receipt, Tariff
from assistant.service.alerts.taking import take_alert
from assistant.service.day_counts import count_days
from assistant.service.dispatch import dispatch, take_receipt
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.sight import sight_of
from assistant.service.storms.drafts import draft
from assistant.service.storms.rain_drafts import send_draft
from assistant.settings import Settings
from assistant.store import AlertCertainty, Draft, Store
from assistant.store.engine import open_engine
from assistant.web.app import create_app
from assistant.wiring.refit import refit_of
from tests.benchmarks.crowd import MORNING, OFFICER, ZONE, Crowd, house_at, phone
from tests.cap import area, cap, info
from tests.unit.web.conftest import PASSWORD

LEAD = "+999009999998"
NOW = MORNING + timedelta(minutes=44)
LEASE = timedelta(minutes=1)
NEAR_STORM = "06:14 to 15:14"  # the hours of the warning that was sent by hand
DAYS = tuple(range(-2, 22))  # of the nurseries, from sowing
VILLAGES = (
    "Kijani",
    "Mto Mwanga",
    "Chemchemi",
    "Bonde Jipya",
    "Mlima Mweupe",
    "Daraja Mbili",
    "Kisima cha Juu",
    "Shamba Kubwa",
    "Mwembe Tano",
    "Njia Panda",
    "Ziwa Dogo",
    "Ukingo",
)
FIRST = ("Amina", "Baraka", "Zawadi", "Tatu", "Rehema", "Juma", "Neema", "Hassan", "Imani")
LAST = ("Mwende", "Mosi", "Asha", "Paulo", "Elia", "Kombo", "Sefu", "Makame", "Bahati", "Tano")
ASKS = (
    "Water runs over the bed since noon, what shall I do with the mats?",
    "The leaves turn pale on one side, is it bad?",
    "Can you come by, I do not know when to drain",
    "Nimefunika lakini upepo ni mkali",
)
STRANGE = (
    "wot do i do wiv the mats",
    "xyzzy plugh gorp",
    "kwa hivyo basi je",
    "ok ok then how",
)
BROKEN = "422 number not in use"
SILENT = (  # every tenth bed did not answer what was asked in the last days
    "UPDATE reminder SET state = 'unanswered' WHERE state = 'done' AND due_at >= :since "
    "AND nursery_id % 10 = 3"
)


class Arrives:
    """An operator that takes everything, and says of which texts."""

    def __init__(self) -> None:
        self.taken_now: list[str] = []

    def send(self, outgoing: Outgoing, now: object) -> Handover:
        """The hand-over of one text."""
        self.taken_now.append(outgoing.message_id)
        return Handover(Fate.ACCEPTED)

    def time(self) -> None:
        """It tells none."""


@dataclass(frozen=True)
class DeskValley:
    """The valley, as `settle` leaves it."""

    house: House
    now: datetime = NOW

    def app(self) -> Flask:
        """The officers' pages."""
        app = create_app(self.house, secret="wire", wake=self.send, clock=lambda: self.now)
        app.config["SESSION_COOKIE_SECURE"] = False
        return app

    def send(self) -> None:
        """Hands over what is due, all of which arrives."""
        line = Arrives()
        while dispatch(self.house, line, self.now, limit=500, lease=LEASE):
            for each in line.taken_now:
                receipt = Receipt(each, Fate.DELIVERED, self.now)
                take_receipt(self.house, receipt, self.now)
            line.taken_now.clear()

    def hears(self, number: int, words: str, at: datetime) -> None:
        """A farmer's text comes in."""
        key = f"in-{number}-{at:%H%M%S}"
        receive(self.house, Incoming(key, phone(number), words, Channel.SMS, at), at)


def settle(
    url: str, farmers: int = 600, languages: tuple[str, ...] = ("en", "sw")
) -> DeskValley:
    """Fills a database that has its tables and no rows."""
    Crowd(DAYS, villages=len(VILLAGES), told_today=True, farmers=farmers).settle(url)
    _name(url)
    valley = DeskValley(_house(Store(url), languages))
    _officers(valley.house)
    _storms(valley)
    _talk(valley)
    valley.send()
    _lost(url)
    while count_days(valley.house, NOW):
        pass
    return valley


def _house(store: Store, languages: tuple[str, ...]) -> House:
    price = Tariff(Decimal("0.80"), "KES")
    house = replace(
        house_at(store, languages),
        hash_code=lambda code: f"hash of {code}",
        check_code=lambda code, code_hash: code_hash == f"hash of {code}",
        programme="Rice of the valley",
        second_factor=False,
        tariff=price,
    )
    settings = Settings(
        zone=ZONE,
        languages=languages,
        programme=house.programme,
        price_per_segment=price.per_segment,
        currency=price.currency,
    )
    return replace(house, refit=refit_of(settings, house))


def _name(url: str) -> None:
    """People and villages get names and places; a tenth has been silent for days."""
    engine = open_engine(url)
    with engine.begin() as connection:
        run: Callable[..., object] = lambda sql, **of: connection.execute(text(sql), of)  # noqa: E731
        for number, name in enumerate(VILLAGES, start=1):
            place = {"north": -1.0 + number % 4 * 0.03, "east": 37.0 + number // 4 * 0.04}
            run(
                "UPDATE village SET name = :name, latitude = :north, longitude = :east "
                "WHERE id = :id",
                name=name,
                id=number,
                **place,
            )
        for at, first in enumerate(FIRST):
            for other, last in enumerate(LAST):
                run(
                    "UPDATE farmer SET name = :name "
                    "WHERE id % 9 = :at AND id / 9 % 10 = :other",
                    name=f"{first} {last}",
                    at=at,
                    other=other,
                )
        # Neighbours sow on different days: the days of the crowd go round by fours.
        run("UPDATE farmer SET village_id = 1 + (village_id + id / 24 * 5) % 12")
        run(SILENT, since=MORNING - timedelta(days=4))
    engine.dispose()


def _officers(house: House) -> None:
    with house.store.work() as work:
        lead = work.people.add_officer(LEAD, "Neema", "no code", "en", (), is_lead=True)
        officer = work.people.officer(OFFICER)
        assert officer is not None
        for each in (lead, officer):
            work.accounts.set_password(each.id, f"hash of {PASSWORD}", None)


def _storms(valley: DeskValley) -> None:
    """Two warnings that stand, one of them from an alert that was cancelled; one to decide."""
    house = valley.house
    with house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        sight = sight_of(work, officer)
    start = NOW - timedelta(minutes=30)
    with house.store.work() as work:
        made = draft(
            work,
            Draft(
                (1, 2, 3, 4, 5), start, start + timedelta(hours=9), start, AlertCertainty.LIKELY
            ),
        )
    send_draft(house, sight, made.id, start)
    for name, hours in (("LWS-1", (14, 20)), ("LWS-2", (15, 21))):
        take_alert(house, _alert(name, *hours), "https://weather.example.org/", start)
    with house.store.look() as work:
        first = min(each.id for each in work.drafts.open(start))
    send_draft(house, sight, first, start)
    replace(valley, now=start + timedelta(minutes=1)).send()
    _answered(valley)
    cancel = _alert(
        "LWS-3", 14, 20, msgType="Cancel", references=_reference("LWS-1"), sent=_sent(5)
    )
    take_alert(house, cancel, "https://weather.example.org/", NOW - timedelta(minutes=5))


def _answered(valley: DeskValley) -> None:
    """Half of the phones have answered the warning."""
    at = NOW - timedelta(minutes=25)
    with valley.house.store.work() as work:
        phones = list(work.warnings.asked(1))
    for place, number in enumerate(phones[: len(phones) // 2]):
        key = f"answer-{number}"
        words = "2" if place % 11 == 0 else "1"
        receive(valley.house, Incoming(key, number, words, Channel.SMS, at), at)


def _sent(minute: int) -> str:
    return f"2026-06-15T06:{minute:02}:00+03:00"


def _reference(name: str) -> str:
    return f"weather@lindara.example.org,{name},{_sent(0)}"


def _alert(name: str, start: int, end: int, **changes: object) -> bytes:
    said = info(
        onset=f"2026-06-15T{start}:00:00+03:00",
        expires=f"2026-06-15T{end}:00:00+03:00",
        area=area(polygon="-0.8,36.9 -0.8,37.3 -1.2,37.3 -1.2,36.9 -0.8,36.9"),
    )
    given: dict[str, Any] = {"identifier": name, "sent": _sent(0), "info": said} | changes
    return cap(**given)


def _lost(url: str) -> None:
    """Texts to two phones come back."""
    engine = open_engine(url)
    with engine.begin() as connection:
        lost = text(
            "UPDATE outbox SET state = 'failed', detail = :detail, delivered_at = NULL "
            "WHERE phone IN (:one, :other) AND created_at >= :since"
        )
        since = MORNING - timedelta(days=3)
        phones = {"one": phone(30), "other": phone(31)}
        connection.execute(lost, {"detail": BROKEN, "since": since, **phones})
    engine.dispose()


def _talk(valley: DeskValley) -> None:
    """Calls, words that nobody can read, and answers to the warning."""
    at = NOW - timedelta(minutes=20)
    for number in range(40, 52):
        valley.hears(number, "OFFICER", at)
        valley.hears(number, ASKS[number % len(ASKS)], at + timedelta(minutes=2))
    for number, words in enumerate(STRANGE, start=60):
        valley.hears(number, words, at)
