"""The officers' page on the clock of a valley, used without a browser."""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from urllib.parse import urlsplit

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from assistant.service.desk.accounts import give_one_time_password
from assistant.web.app import create_app
from tests.stages import staged, stages
from tests.valley import OFFICER, Staged, Valley, Way

__all__ = ["staged", "stages"]

PASSWORD = "two wet mats and a hat"
_TOKEN = re.compile(r'name="csrf_token" value="([^"]+)"')
_IN_NUMBER = re.compile(r"(?<=\d)\u00a0(?=\d)")
_TAGS = re.compile(r"<[^>]+>")


class Browser:
    """A person at the page: opens addresses, fills in forms, reads what is shown.

    comes_back: signs in anew where the session of an earlier day has ended, as people do
    """

    def __init__(
        self, client: FlaskClient, address: str = "127.0.0.1", comes_back: bool = True
    ) -> None:
        self._client, self._address = client, address
        self._token = ""
        self._entered: tuple[str, str] | None = None
        self.comes_back = comes_back
        self.page: TestResponse

    def open(self, path: str) -> str:
        """What a page shows, following where it sends one on to."""
        shown = self._took(self._client.get(path, environ_base=self._from()))
        if not self._comes_back():
            return shown
        return self._took(self._client.get(path, environ_base=self._from()))

    def send(self, path: str, **fields: object) -> str:
        """Sends a form with the token of the page that was opened last."""
        shown = self._post(path, fields)
        if not self._comes_back():
            return shown
        return self._post(path, fields)

    def _post(self, path: str, fields: Mapping[str, object]) -> str:
        form = {"csrf_token": self._token, **fields}
        return self._took(self._client.post(path, data=form, environ_base=self._from()))

    def _comes_back(self) -> bool:
        """Whether it had to sign in anew, and did."""
        is_out = self.page.mimetype == "text/html" and self.path == "/sign-in"
        if not (is_out and self.comes_back and self._entered):
            return False
        self.sign_in(*self._entered)
        return True

    def sign_in(self, phone: str = OFFICER, password: str = PASSWORD) -> str:
        """Signs in from the door."""
        self._entered = None
        self.open("/sign-in")
        shown = self.send("/sign-in", phone=phone, password=password)
        self._entered = (phone, password)
        return shown

    def come_in(self, phone: str = OFFICER, password: str = PASSWORD) -> None:
        """Signs in, and looks at nothing yet: for what begins elsewhere than in the morning."""
        self._entered = None
        self.open("/sign-in")
        form = {"csrf_token": self._token, "phone": phone, "password": password}
        self.page = self._client.post("/sign-in", data=form, environ_base=self._from())
        assert self.page.status_code == 303 and not self.page.location.endswith("/sign-in")
        self._entered = (phone, password)

    def _from(self) -> dict[str, str]:
        return {"REMOTE_ADDR": self._address}

    def _took(self, response: TestResponse) -> str:
        while response.status_code in (302, 303):
            onward = urlsplit(response.location)
            path = f"{onward.path}?{onward.query}" if onward.query else onward.path
            response = self._client.get(path, environ_base=self._from())
        self.page = response
        if response.mimetype != "text/html":
            return ""  # a file
        token = _TOKEN.search(response.text)
        self._token = token[1] if token else self._token
        return self.words()

    def words(self) -> str:
        """The page as it is read: without its tags, numbers of phones as they are kept."""
        shown = _IN_NUMBER.sub("", self.page.text)
        return " ".join(_TAGS.sub(" ", shown).split())

    @property
    def path(self) -> str:
        """Where one has ended."""
        return self.page.request.path


NewBrowser = Callable[..., Browser]


@pytest.fixture
def furnish() -> Callable[[Valley], object]:
    """Officers of these valleys can have passwords."""
    return with_page


@pytest.fixture
def way(request: pytest.FixtureRequest) -> Way:
    """How far a module's tests have come when they begin; a test may say another way."""
    found: Way = getattr(request.module, "way", nowhere)
    return found


def nowhere(valley: Valley) -> None:
    """The first of June, eight in the morning, with nobody there."""


@pytest.fixture
def valley(staged: Staged, way: Way) -> Valley:
    """Where the way ends; passwords are quick to check."""
    return staged(way)


def with_page(valley: Valley, programme: str = "Valley") -> Valley:
    """A valley whose officers can have passwords."""
    valley.house = replace(
        valley.house, hash_code=lambda code: f"hash of {code}", programme=programme
    )
    return valley


@pytest.fixture
def new_browser(valley: Valley, request: pytest.FixtureRequest) -> NewBrowser:
    """Makes browsers, each with its own cookies; a module's `COMES_BACK` says if they do."""
    comes_back: bool = getattr(request.module, "COMES_BACK", True)
    app = create_app(valley.house, secret="wire", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    return lambda address="127.0.0.1": Browser(app.test_client(), address, comes_back)


def give_password(valley: Valley, phone: str = OFFICER, password: str = PASSWORD) -> None:
    """An officer who has chosen a password already."""
    give_one_time_password(valley.house, phone, valley.now)
    with valley.house.store.work() as work:
        account = work.accounts.of_phone(phone)
        assert account is not None
        work.accounts.set_password(account.id, f"hash of {password}", None)
