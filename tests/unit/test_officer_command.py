"""`nursery officer password`, and the officer that a demo makes for itself."""

import re

import pytest
from click.testing import CliRunner, Result

from assistant.commands import officer, village
from assistant.commands.demo import DEMO_PHONE, demo_officer
from assistant.commands.deployment import opened
from assistant.service.audit import TrailAct
from assistant.service.desk.accounts import DoorVisit, Welcome, sign_in
from assistant.settings import Settings
from assistant.worker import wall_clock

PASSWORD = re.compile(r"\b[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}\b")


@pytest.fixture
def settings(_copied_sqlite: str, monkeypatch: pytest.MonkeyPatch) -> Settings:
    """A deployment of its own, as the environment names it."""
    monkeypatch.setenv("NURSERY_DATABASE_URL", _copied_sqlite)
    return Settings(database_url=_copied_sqlite)


def _nursery(command: object, *arguments: str) -> Result:
    return CliRunner().invoke(command, arguments)  # type: ignore[arg-type]


def _signs_in(settings: Settings, phone: str, password: str) -> bool:
    with opened(settings) as house:
        outcome = sign_in(house, phone, password, DoorVisit("127.0.0.1"), wall_clock())
    return isinstance(outcome, Welcome)


def test_a_one_time_password_opens_the_page(settings: Settings) -> None:
    """It is printed once and kept only as a hash."""
    _nursery(village.command, "add", "Kijani")
    _nursery(
        officer.command,
        *("add", "--phone", "+447700900005", "--name", "Asha", "--village", "Kijani"),
    )
    said = _nursery(officer.command, "password", "--phone", "+44 7700 900005").output
    password = PASSWORD.search(said)
    assert password is not None and "Asha" in said
    assert _signs_in(settings, "+447700900005", password[0])
    with opened(settings) as house, house.store.look() as work:
        account = work.accounts.of_phone("+447700900005")
    assert account is not None and password[0] not in str(account)


def test_only_an_officer_gets_a_password(settings: Settings) -> None:
    """The fault is told in words."""
    result = _nursery(officer.command, "password", "--phone", "+447700900006")
    assert result.exit_code == 1
    assert "nursery officer add" in result.output


def test_a_demo_makes_an_officer_once(settings: Settings) -> None:
    """The next start finds one and tells only how to get another password."""
    with opened(settings) as house:
        said = demo_officer(house)
        password = PASSWORD.search(said)
        assert password is not None and DEMO_PHONE in said
        assert PASSWORD.search(demo_officer(house)) is None
    assert _signs_in(settings, DEMO_PHONE, password[0])


def test_who_was_made_a_lead_at_the_command_line_stands_in_the_trail(
    settings: Settings,
) -> None:
    """With the number, and without an officer who did it; a new code leaves a line, too."""
    for _ in range(2):
        _nursery(
            officer.command, *("add", "--phone", "+447700900005", "--name", "Asha", "--lead")
        )
    with opened(settings) as house, house.store.look() as work:
        lines = work.audit.latest(9)
    assert [(each.act, each.detail) for each in lines] == [
        (TrailAct.OFFICER_ADDED, "Asha, +447700900005, lead")
    ] * 2
