"""The officers' page in a real browser: Debian's Chromium, driven by Playwright.

Where no browser is to be had these tests are skipped with the reason;
NURSERY_REQUIRE_BROWSER=1 makes that a failure. NURSERY_SCREENSHOTS names a folder that pictures
of the pages are written to; NURSERY_ALL_SIZES=1 plays the stories on a smaller window too.
"""

import os
import re
import shutil
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path
from typing import Any, Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from flask import Flask
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright
from playwright.sync_api import Error as BrowserError
from werkzeug.serving import WSGIRequestHandler, make_server

from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.channel import Fate, Handover, Tariff
from assistant.settings import Settings
from assistant.store import Store, Work
from assistant.web.app import create_app
from assistant.wiring.refit import refit_of
from tests.unit.web.conftest import PASSWORD, give_password, with_page
from tests.valley import CODE, LEAD, NAIROBI, OFFICER, Valley, at, house_of

CHROMIUM = Path("/usr/bin/chromium")
WAITS_MS = 60_000  # for anything that a busy machine may be slow at
expect.set_options(timeout=WAITS_MS)
SIZES = {"desk": (1280, 800)}
if os.environ.get("NURSERY_ALL_SIZES") == "1":  # the stories again on a smaller window
    SIZES["small laptop"] = (1024, 640)
# Rules of WCAG 2.1 and 2.2 at levels A and AA, by axe's own names for them.
LEVELS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
ROOM = {"type": "rule", "values": ["target-size", "scrollable-region-focusable"]}
_SEEN_DARK: set[str] = set()
CONTRAST = {"type": "rule", "values": ["color-contrast", "link-in-text-block"]}


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """One browser for all tests."""
    if not CHROMIUM.is_file():
        reason = f"no browser at {CHROMIUM} (Debian: apt install chromium)"
        if os.environ.get("NURSERY_REQUIRE_BROWSER") == "1":
            pytest.fail(f"NURSERY_REQUIRE_BROWSER=1, but {reason}", pytrace=False)
        pytest.skip(reason)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=str(CHROMIUM), args=["--no-sandbox"], timeout=2 * WAITS_MS
        )
        yield browser
        browser.close()


class _Quiet(WSGIRequestHandler):
    def log(self, type: str, message: str, *args: Any) -> None:
        """Says nothing."""


@dataclass
class Office:
    """A deployment whose page is really served, on the clock of a valley."""

    valley: Valley
    url: str
    line: "Line"


@dataclass
class Line:
    """The way to a page: it can be cut, and mended at the same address."""

    app: Flask
    port: int = 0

    def mend(self) -> None:
        """The page is served."""
        self._server = make_server(
            "127.0.0.1", self.port, self.app, threaded=True, request_handler=_Quiet
        )
        self.port = self._server.server_port
        serve = self._server.serve_forever
        self._thread = threading.Thread(target=serve, kwargs={"poll_interval": 0.02})
        self._thread.start()

    def cut(self) -> None:
        """Nothing answers any more."""
        self._server.shutdown()
        self._thread.join()
        self._server.server_close()


@contextmanager
def _served(valley: Valley) -> Iterator[Office]:
    app = create_app(valley.house, secret="wire", wake=valley.send, clock=lambda: valley.now)
    line = Line(app)
    line.mend()
    yield Office(valley, f"http://127.0.0.1:{line.port}", line)
    line.cut()


NAMES = ("Amina Juma", "Baraka Mosi", "Zawadi Asha", "Tatu Neema", "Rehema Paulo", "Juma Elia")
PHONES = tuple(f"+44770090010{number}" for number in range(1, 7))
STORM = "10 Jun 05:02"


@dataclass(frozen=True)
class _Played:
    """A valley that has been played, and its database."""

    valley: Valley
    path: Path


@pytest.fixture(scope="session")
def _stormy(_sqlite_tables: Path, tmp_path_factory: pytest.TempPathFactory) -> _Played:
    """Ten days of two villages, played once for all tests."""
    path = tmp_path_factory.mktemp("storm") / "nursery.db"
    shutil.copy(_sqlite_tables, path)
    valley = with_page(
        Valley(house_of(Store(f"sqlite:///{path}")), at("1 Jun 08:00")), "Rice of the valley"
    )
    price = Tariff(Decimal("0.80"), "KES")
    valley.house = replace(valley.house, tariff=price)
    set_by = Settings(
        zone=NAIROBI,
        programme=valley.house.programme,
        price_per_segment=price.per_segment,
        currency=price.currency,
    )
    valley.house = replace(valley.house, refit=refit_of(set_by, valley.house))
    _ten_days(valley)
    valley.house.store.close()
    return _Played(valley, path)


@pytest.fixture
def storm(_stormy: _Played, tmp_path: Path) -> Iterator[Office]:
    """The morning of a storm: six farmers of two villages, each with something else."""
    path = Path(shutil.copy(_stormy.path, tmp_path))
    valley = _stormy.valley.copied(Store(f"sqlite:///{path}"))
    with _served(valley) as office:
        yield office
    valley.house.store.close()


def _ten_days(valley: Valley) -> None:
    kijani, mwanga = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani, mwanga)
    give_password(valley)
    for number, phone in enumerate(PHONES):
        valley.enrol(phone, village=1 + number % 2)
        _name(valley, phone, NAMES[number])
    _beds(valley)
    valley.go("9 Jun 19:30")
    valley.text(PHONES[3], "OFFICER")
    valley.text(PHONES[3], "Water runs over the bed since noon, what shall I do with the mats?")
    valley.go(STORM)
    for village in ("Kijani", "Mto Mwanga"):
        valley.text(OFFICER, f"RAIN {CODE} {village} 6-14")
        valley.text(OFFICER, "1")
    valley.text(PHONES[0], "1")
    valley.text(PHONES[2], "2")


def _name(valley: Valley, phone: str, name: str) -> None:
    with valley.house.store.work() as work:
        farmer = work.people.farmer(phone)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, name=name))


def _beds(valley: Valley) -> None:
    """Beds at several stages, some silent, one yellow."""
    for phone, sows in zip(PHONES, ("6", "7", "8", "1", "2", "12"), strict=True):
        if int(sows) <= 2:
            valley.sow(phone, f"{sows} June" if sows == "1" else "31 May")
        else:
            valley.plan(phone, f"{sows} June")
    for day in range(2, 10):
        valley.go(f"{day} Jun 07:00")
        for phone, sown in zip(PHONES, (6, 7, 8, 1, 0, 12), strict=True):
            if day == sown:
                valley.text(phone, "done")
            if phone == PHONES[4] and day == 5:
                valley.text(phone, "1")
            if phone == PHONES[4] and day == 7:
                valley.text(phone, "2")


@pytest.fixture
def busy(storm: Office) -> Office:
    """The storm with a lead, texts that were lost, replies nobody could read, and three seasons
    that are over: one whole, one short, one of which nobody told."""
    valley = storm.valley
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    valley.operator.answers = [Handover(Fate.FAILED, "422 number not in use")] * 2
    valley.text(PHONES[0], "wot do i do wiv the mats")
    valley.text(PHONES[2], "xyzzy plugh")
    with valley.house.store.work() as work:
        for number, (planted, left) in {1: (4000.0, 20.0), 4: (3400.0, 0.0)}.items():
            nursery = work.nurseries.get(number)
            assert nursery is not None
            work.seasons.save(_told(number, nursery.farmer_id, planted, left))
            over = replace(nursery, closed=True, transplanted_on=date(2026, 6, 25))
            work.nurseries.save(over, valley.now)
        silent = work.nurseries.get(5)
        assert silent is not None
        work.nurseries.save(replace(silent, closed=True, no_result=True), valley.now)
        _office_answers(work, valley.now)
    valley.text(PHONES[0], "is it free?")
    return storm


def _office_answers(work: Work, now: datetime) -> None:
    """A question of the office in use, and one that waits for its second reader."""
    said = (
        (("when does the ferry run", "ferry hours"), "The ferry runs at 7 and at 16."),
        (("where is the seed shop",), "Beside the mill in Kijani, Monday to Friday."),
    )
    made = [work.questions.add("en", None, ways, answer, 1, now) for ways, answer in said]
    work.questions.read(made[0].id, 1, now)


def _told(nursery_id: int, farmer_id: int, planted_m2: float, left: float) -> SeasonOutcome:
    return SeasonOutcome(
        nursery_id, farmer_id, date(2026, 7, 3), 4000.0, planted_m2, 267, left, False, 0.65
    )


def window_of(
    chromium: Browser, width: int, height: int, *, scripts: bool = True
) -> BrowserContext:
    """A browser window of its own, which is waited for however busy the machine is."""
    context = chromium.new_context(
        viewport={"width": width, "height": height}, java_script_enabled=scripts
    )
    context.set_default_timeout(WAITS_MS)
    return context


@pytest.fixture(params=SIZES)
def page(request: pytest.FixtureRequest, chromium: Browser) -> Iterator[Page]:
    """An empty browser window, once of each size."""
    width, height = SIZES[request.param]
    context = window_of(chromium, width, height)
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda said: complaints.append(f"{said.type}: {said.text}"))
    page.on("pageerror", lambda fault: complaints.append(str(fault)))
    page.name = request.param  # type: ignore[attr-defined]
    yield page
    context.close()
    # A test may type sooner than the page sets its own focus.
    usual = ("status of", "Autofocus processing was blocked")
    unexpected = [each for each in complaints if not any(part in each for part in usual)]
    assert unexpected == [], "the browser complained"


def enter(page: Page, office: Office, phone: str, password: str) -> None:
    """Types number and password at the door, by keyboard."""
    page.goto(office.url)
    page.get_by_label("Phone number").fill(phone)
    page.get_by_label("Password").fill(password)
    page.keyboard.press("Enter")


def sign_in(page: Page, office: Office, phone: str = OFFICER) -> None:
    """Signs in as a person would."""
    enter(page, office, phone, PASSWORD)
    page.wait_for_url("**/morning")


def picture(page: Page, name: str) -> None:
    """A picture of the page for people to look at, where a folder was named."""
    folder = os.environ.get("NURSERY_SCREENSHOTS")
    if folder:
        size = getattr(page, "name", "").replace(" ", "-")
        Path(folder).mkdir(parents=True, exist_ok=True)
        page.screenshot(path=str(Path(folder) / f"{name}-{size}.png"))
        page.screenshot(path=str(Path(folder) / f"{name}-{size}-whole.png"), full_page=True)


def audit(page: Page) -> None:
    """Holds the page to the rules of axe: labels, landmarks, headings, names; and contrast by
    day and, each kind of page once, before dawn. In a smaller window the words and colours are
    the same: there only what depends on the room is looked at (`crowded`)."""
    if getattr(page, "name", "") == "small laptop":
        faults = [*crowded(page)]
    else:
        faults = [*_faults(page, "light", {"runOnly": LEVELS})]
        kind = re.sub(r"\d+", "1", page.url.partition("?")[0].split("/", 3)[-1])
        if kind not in _SEEN_DARK:
            _SEEN_DARK.add(kind)
            faults += _faults(page, "dark", {"runOnly": CONTRAST})
            page.emulate_media(color_scheme="light")
    assert faults == [], "\n".join(faults)


def crowded(page: Page) -> Iterator[str]:
    """Targets too close for a finger, and what scrolls and cannot be reached by keyboard."""
    return _faults(page, "light", {"runOnly": ROOM})


def _faults(
    page: Page, scheme: Literal["dark", "light"], options: Mapping[str, Any]
) -> Iterator[str]:
    page.emulate_media(color_scheme=scheme)
    for each in _violations(page, options):
        for node in each["nodes"]:
            yield f"{scheme}: {each['id']}: {node['target']} {node.get('failureSummary', '')}"


def _violations(page: Page, options: Mapping[str, Any], tries: int = 3) -> list[dict[str, Any]]:
    """What axe says of the page. A press may still be bringing the next page, which takes the
    document away from under axe; that is no verdict, and the page that came is looked at."""
    page.wait_for_load_state()
    try:
        found: list[dict[str, Any]] = (
            Axe().run(page, options=dict(options)).response["violations"]
        )
    except BrowserError:
        if tries == 1:
            raise
        return _violations(page, options, tries - 1)
    return found


def fits(page: Page) -> None:
    """Nothing stands out at the side of the window."""
    wide = page.evaluate("document.documentElement.scrollWidth")
    assert wide <= page.evaluate("window.innerWidth")
