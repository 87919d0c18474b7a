"""Server time of the officers' pages with five thousand nurseries, as a lead sees them.

Behind them stand a season of texts (two hundred thousand out, one in for most), the results of
a season that is over, and a year of a country's alerts. The floor is the same application
answering its smallest page, the door: what Flask, the locks and the headers cost with no work
behind them. The pages are held to 200 ms of server time; files to download, each a row a
nursery, are not.
"""

from collections.abc import Iterator
from dataclasses import asdict, replace
from datetime import timedelta
from functools import partial
from typing import Any

from sqlalchemy import insert, text, update

from assistant.reminders.values import State
from assistant.service.day_counts import count_days
from assistant.service.house import House
from assistant.store import Store
from assistant.store.engine import open_engine
from assistant.store.tables import ReminderRow
from assistant.store.tables_alerts import AlertRow
from assistant.store.values_alerts import AlertWords, Became
from assistant.web.app import create_app
from tests.benchmarks.crowd import (
    FARMERS,
    MORNING,
    TODAY,
    Crowd,
    a_season_of_texts,
    house_at,
)
from tests.benchmarks.databases import Kind
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized
from tests.cap import cap, info
from tests.unit.web.conftest import PASSWORD, Browser

LEAD = "+999009999998"
# In full season; the oldest are past their days, and a part has not answered.
DAYS = tuple(range(-2, 23))
SILENT_EVERY = 10  # each tenth task that was asked is not answered
PATHS = (
    "/morning",
    "/morning?by=reason",
    "/morning/counts",
    "/round",
    "/season",
    "/season?village=3",
    "/season?stage=covered",
    "/farmers",
    "/farmers?search=00012",
    "/farmers?stage=covered",
    "/farmers?standing=unanswered",
    "/farmers?standing=dead",
    "/find?q=kijiji",
    "/farmers/77",
    "/nurseries/77",
    "/villages",
    "/villages/3",
    "/villages/3/calendar",
    "/villages/3/calendar.ics",
    "/warnings",
    "/alerts",
    "/alerts?ours=1",
    "/lists",
    "/messages",
    "/messages?month=2026-05",
    "/messages?month=2026-05&which=expired",
    "/messages?which=heard",
    "/messages?village=3",
    "/messages/months",
    "/messages/unread",
    "/results",
    "/results?village=3",
    "/officers",
    "/officers/1",
    "/trail",
    "/sent",
    "/broadcasts",
    "/questions",
    "/programme",
    "/programme/settings",
    "/lines",
    "/stop-texts",
    "/account",
    "/deeds?deed=text&line=bed-77",
)
FILES = ("/results.csv", "/results.xlsx")
ALERTS, OURS_EVERY = sized(20_000, small=100), 50
TOLD_EVERY = 3  # each third nursery has told its result; a tenth of those ran short


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Each page, asked for by the same signed-in browser."""
    for kind in kinds:
        with kind.fresh() as url:
            Crowd(DAYS, villages=25, told_today=True).settle(url)
            _silence(url)
            a_season_of_texts(url)
            _tell_results(url)
            _alerts(url)
            store = Store(url)
            yield from _pages(replace(house_at(store), **_QUICK), kind.name, runs)
            store.close()


# Hashes are made to be slow; here only the pages are timed.
_QUICK: dict[str, Any] = {
    "second_factor": False,  # else each page is the one that asks a lead to add it
    "hash_code": lambda code: f"hash of {code}",
    "check_code": lambda code, code_hash: code_hash == f"hash of {code}",
}


def _silence(url: str) -> None:
    """A part of the answers never came."""
    engine = open_engine(url)
    asked = update(ReminderRow).where(ReminderRow.state == State.DONE)
    with engine.begin() as connection:
        unanswered = asked.where(ReminderRow.id % SILENT_EVERY == 0)
        connection.execute(unanswered.values(state=State.UNANSWERED))
    engine.dispose()


def _tell_results(url: str) -> None:
    """Seasons that are over: on the mats of 0.4 ha, some left, some short."""
    engine = open_engine(url)
    with engine.begin() as connection:
        connection.execute(
            text(
                "INSERT INTO season_result (nursery_id, farmer_id, ended_on, field_area_m2, "
                "planted_area_m2, mats, mats_left, resown, establishment, seed_share) "
                "SELECT id, "
                "farmer_id, '2026-07-01', field_area_m2, field_area_m2 * "
                "CASE WHEN id % 10 = 0 THEN 0.9 "
                "ELSE 1 END, 267, id % 30, false, establishment, 1 FROM nursery "
                f"WHERE id % {TOLD_EVERY} = 0"
            )
        )
    engine.dispose()


def _alerts(url: str) -> None:
    """What a country's service said in a year; one in fifty led to a draft, all over the
    district."""
    engine = open_engine(url)
    raw = cap(info=info(description="Heavy rain is to come. " * 300))
    said = AlertWords(
        language="en",
        event="Heavy rain",
        headline="Orange: heavy rain",
        urgency="Expected",
        severity="Severe",
        certainty="Likely",
        area="Lindara valley",
        sender_name="Lindara weather service",
    )
    message = {
        "source": "https://weather.example.org/",
        "raw": raw,
        "sender": "weather@example.org",
        "sent": MORNING,
        "status": "Actual",
        "kind": "Alert",
        "scope": "Public",
        "signed": False,
        "told": [asdict(said)],
        "starts_at": MORNING,
        "ends_at": MORNING + timedelta(hours=6),
    }
    alerts = [
        {
            **message,
            "id": number,
            "digest": str(number),
            "identifier": str(number),
            "became": Became.BELOW if number % OURS_EVERY else Became.DRAFTED,
            "received_at": MORNING - timedelta(minutes=20 * (ALERTS - number)),
        }
        for number in range(1, ALERTS + 1)
    ]
    with engine.begin() as connection:
        connection.execute(insert(AlertRow), alerts)
        connection.execute(
            text(
                "INSERT INTO alert_village (alert_id, village_id) SELECT alert.id, village.id "
                f"FROM alert, village WHERE alert.id % {OURS_EVERY} = 0"
            )
        )
    engine.dispose()


def _pages(house: House, kind: str, runs: int) -> Iterator[Result]:
    with house.store.work() as work:
        lead = work.people.add_officer(LEAD, "Neema", "no code", "en", (), is_lead=True)
        work.accounts.set_password(lead.id, f"hash of {PASSWORD}", None)
    while count_days(house, MORNING):
        pass  # as the worker does, day by day
    app = create_app(house, secret="wire", wake=lambda: None, clock=lambda: MORNING)
    door, browser = Browser(app.test_client()), Browser(app.test_client())
    floor = Side("the door's page, no work", lambda: door.open("/sign-in"))
    browser.sign_in(LEAD)
    routes = app.url_map.bind("")
    for path in (*PATHS, *FILES):
        if not routes.test(path.partition("?")[0], "GET"):
            continue  # a page of another release
        what = f"page {path} of {FARMERS:,} on {TODAY:%d %b}, {kind}"
        yield compare(what, 1, "page", partial(browser.open, path), floor, runs=runs)
        assert browser.page.status_code == 200, path
        assert browser.path == path.partition("?")[0], f"{path} sent on to {browser.path}"
