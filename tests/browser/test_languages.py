"""What an officer does every day, in four languages, at a laptop and on a phone.

Each thing is found by the words of its language, as a person would; a text that is missing in a
catalogue, is cut or pushes the page wider than the window fails here.
"""

import shutil
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import product
from os import environ
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from assistant.settings import Settings
from assistant.store import Store
from assistant.wiring.house import open_house
from assistant.wording import messages_phrases as phrases
from assistant.wording import messages_web as w
from assistant.wording import messages_web_broadcast as b
from assistant.wording import messages_web_desk as k
from assistant.wording import messages_web_groups as g
from assistant.wording import messages_web_mend as mend
from assistant.wording import messages_web_rain as r
from assistant.wording.message import Message, Say, Slot
from assistant.wording.render import render
from tests.browser.conftest import (
    Office,
    _Played,
    _served,
    audit,
    fits,
    picture,
    sign_in,
    window_of,
)
from tests.unit.web.conftest import give_password
from tests.valley import LEAD, OFFICER

LANGUAGES = ("en", "sw", "hi", "bn")
SIZES = {"laptop": (1366, 768), "phone": (390, 844)}
# Each language, and each script, at one of the windows; all of both where somebody asks for it.
WINDOWS = (
    tuple(product(LANGUAGES, SIZES))
    if environ.get("NURSERY_EVERY_WINDOW")
    else (("en", "phone"), ("sw", "laptop"), ("hi", "phone"), ("bn", "laptop"))
)
CALLER = "Tatu Neema"


@dataclass
class Reading:
    """An office, a window, and the words of an officer's language."""

    office: Office
    page: Page
    language: str

    def say(self, what: Message | Say, **slots: Slot) -> str:
        """Words as they stand on the page."""
        catalogue = self.office.valley.house.catalogue(self.language)
        return render(what(**slots) if isinstance(what, Message) else what, catalogue)

    def go(self, path: str) -> None:
        """Opens a page."""
        self.page.goto(self.office.url + path)

    def press(self, what: Message, **slots: Slot) -> None:
        """Presses a button by its whole name."""
        self.button(what, **slots).click()

    def button(self, what: Message, **slots: Slot) -> Locator:
        """A button in sight."""
        named = self.page.get_by_role("button", name=self.say(what, **slots), exact=True)
        return named.filter(visible=True).first

    def field(self, what: Message) -> Locator:
        """A field by its label."""
        return self.page.get_by_label(self.say(what), exact=True)

    def did(self, what: Message, **slots: Slot) -> None:
        """What was done is said."""
        expect(self.page.get_by_role("status").first).to_contain_text(self.say(what, **slots))

    def look(self, name: str) -> None:
        """The page keeps the rules and fits the window."""
        picture(self.page, f"{name}-{self.language}")
        audit(self.page)
        fits(self.page)


@pytest.fixture(params=WINDOWS, ids="-".join)
def spoken(
    request: pytest.FixtureRequest, _stormy: _Played, tmp_path: Path
) -> Iterator[tuple[Office, str, str]]:
    """The storm, with an officer and a lead who read one language, and the size of a window."""
    language, size = request.param
    path = Path(shutil.copy(_stormy.path, tmp_path))
    valley = _stormy.valley.copied(Store(f"sqlite:///{path}"))
    spoken = open_house(
        Settings(zone=valley.house.zone, languages=LANGUAGES), valley.house.store
    )
    valley.house = replace(
        valley.house, languages=LANGUAGES, catalogues=spoken.catalogues, refit=None
    )
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    with valley.house.store.work() as work:
        for each in work.people.officers():
            work.accounts.set_language(each.id, language)
    with _served(valley) as office:
        yield office, language, size
    valley.house.store.close()


@pytest.fixture
def reading(chromium: Browser, spoken: tuple[Office, str, str]) -> Iterator[Reading]:
    """Signed in, at the first page."""
    office, language, size = spoken
    context = window_of(chromium, *SIZES[size])
    page = context.new_page()
    page.name = size  # type: ignore[attr-defined]
    sign_in(page, office, OFFICER)
    yield Reading(office, page, language)
    context.close()


def test_a_call_is_given_on_and_answered(reading: Reading) -> None:
    """Given to a colleague, taken back within a minute, answered by a ready-made text."""
    reading.look("waiting")
    call = reading.page.get_by_role("article", name=CALLER)
    call.get_by_role("link", name=reading.say(k.HAND)).click()
    reading.field(g.HAND_TO).select_option(index=1)
    reading.look("hand-on")
    reading.press(k.DO_HAND, n=1)
    reading.did(k.DID_HAND, n=1)
    reading.press(k.UNDO)
    call.get_by_role("link", name=reading.say(w.ANSWER_IT)).click()
    reading.page.get_by_label(reading.say(phrases.COME_TODAY)).check()
    reading.look("answer")
    reading.press(w.SEND_ANSWER)
    expect(reading.page.get_by_role("article", name=CALLER)).to_have_count(0)


def test_all_of_a_village_are_visited_and_undone(reading: Reading) -> None:
    """Ticked together, noted with one form."""
    reading.go("/morning?village=1")
    group = reading.page.locator("details.group").first
    group.get_by_role("button", name=reading.say(k.TICK_ALL)).click()
    count = reading.page.locator("input[name=line]:checked").count()
    bar = reading.page.locator(".deed-bar")
    bar.get_by_role("button", name=reading.say(k.VISITED), exact=True).click()
    reading.look("visited")
    reading.press(k.DO_VISITED, n=count)
    reading.did(k.DID_VISITED, n=count)
    reading.press(k.UNDO)
    reading.did(k.UNDONE)


def test_words_for_later_are_taken_back(reading: Reading) -> None:
    """They stand on the page of what was sent."""
    reading.go("/deeds?deed=text&line=bed-1")
    reading.field(k.OWN_WORDS).fill("I come by on Friday.")
    reading.field(g.WHEN).select_option("2026-06-12")
    reading.field(g.HOUR).select_option("14")
    reading.look("later")
    reading.press(k.DO_TEXT, n=1)
    reading.did(k.DID_TIMED, n=1)
    reading.go("/sent")
    reading.look("sent")
    reading.press(mend.TAKE_BACK_ONE)
    expect(reading.button(mend.TAKE_BACK_ONE)).to_have_count(0)


def test_a_group_is_kept_and_written_to(reading: Reading) -> None:
    """From the list of farmers to the text."""
    reading.go("/farmers")
    for name in ("Amina Juma", "Baraka Mosi"):
        reading.page.get_by_label(reading.say(k.TICK, name=name)).check()
    reading.field(g.GROUP_NAME).fill("A7")
    reading.look("farmers")
    reading.press(g.KEEP_GROUP)
    reading.did(g.GROUP_KEPT, n=2, name="A7")
    reading.look("groups")
    reading.page.get_by_role("link", name=reading.say(g.WRITE_TO_THEM)).click()
    reading.field(b.YOUR_WORDS).fill("Seed comes on Monday.")
    reading.look("many")
    reading.press(b.SHOW_REACH)
    reading.look("reach")
    reading.press(b.SEND, n=2)
    expect(reading.page.get_by_role("status").first).to_be_visible()


def test_a_warning_is_sent(reading: Reading) -> None:
    """By hand, to one village."""
    reading.go("/warnings")
    reading.page.get_by_label("Mto Mwanga").check()
    reading.page.locator("[name=from_time]").fill("16:00")
    reading.page.locator("[name=to_time]").fill("20:00")
    reading.look("warnings")
    reading.press(r.SHOW_REACH)
    reading.look("draft")
    reading.page.locator("form[action$='/send'] button").click()
    reading.did(r.IS_SENT)
    reading.look("warned")


def test_every_page_of_the_menu_fits(reading: Reading) -> None:
    """Also those of one farmer, one nursery and one village."""
    links = reading.page.locator("nav a").all()
    menu = [link.get_attribute("href") or "" for link in links]
    below = (
        "/farmers/1",
        "/nurseries/1",
        "/villages/1",
        "/round",
        "/messages/unread",
        "/lists",
    )
    for path in (*menu, *below):
        reading.go(path)
        fits(reading.page)
