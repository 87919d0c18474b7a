"""The commands for a service that holds back, and for copies of its database."""

import stat
from datetime import timedelta
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from sqlalchemy import create_engine, text

from assistant.__main__ import main
from assistant.commands.deployment import settings_now
from assistant.service.dispatch import dispatch
from assistant.service.pulse import SENDING, Beat, pulse
from assistant.store import Store, StoreError, schema
from assistant.store.schema import Tables
from assistant.wiring.journal import Journal, stopped_of
from assistant.wiring.own_key import open_key
from assistant.worker import wall_clock
from tests.unit.test_worker import Listening
from tests.valley import AMINA, BARAKA, Valley, house_of, settle

LEASE = timedelta(minutes=1)
BEFORE_LAST = schema._chain()[schema._last(schema._chain())] or ""


def nursery(*words: str) -> Result:
    """The command with these words."""
    return CliRunner().invoke(main, words)


def done(*words: str) -> str:
    """What a command says that succeeds."""
    result = nursery(*words)
    assert result.exit_code == 0, result.output
    return result.output


@pytest.fixture(autouse=True)
def deployment(database_url: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its settings, on each kind of database."""
    url = database_url.replace("postgresql+psycopg:", "postgresql:")
    monkeypatch.setenv("NURSERY_DATABASE_URL", url)
    monkeypatch.setenv("NURSERY_JOURNAL_FILE", str(tmp_path / "stops"))


@pytest.fixture
def valley(store: Store) -> Valley:
    """Two farmers, of this moment; the texts of one who is new wait."""
    valley = Valley(house_of(store), wall_clock())
    settle(valley)
    for phone in (AMINA, BARAKA):
        valley.enrol(phone)
    valley.post("+447700900150", "hello")
    return valley


def test_held_texts_wait_until_a_person_lets_them_go(valley: Valley) -> None:
    """Nothing of them is lost."""
    gateway, house = Listening(), valley.house
    assert "No text leaves" in done("texts", "hold", "the operator sends twice")
    now = wall_clock()
    assert dispatch(house, gateway, now, limit=9, lease=LEASE) == 0
    assert "the operator sends twice" in done("texts", "look")
    assert pulse(house, now).faults[0] == "held"
    done("texts", "go")
    assert dispatch(house, gateway, now, limit=9, lease=LEASE) == 1


def test_a_copy_is_its_owners_only_and_changes_nothing(valley: Valley, tmp_path: Path) -> None:
    """Names and numbers stand in it."""
    copy = tmp_path / "copy"
    done("backup", str(copy))
    assert stat.S_IMODE(copy.stat().st_mode) == 0o600
    again = nursery("backup", str(copy))
    assert again.exit_code == 1 and "name another" in again.output


def test_a_copy_that_is_put_back_texts_nobody_and_knows_who_stopped(
    valley: Valley, tmp_path: Path
) -> None:
    """Amina stopped after the copy was made; Baraka stopped and started."""
    copy = str(tmp_path / "copy")
    done("backup", copy)
    journal = Journal(tmp_path / "stops", open_key(settings_now()))
    now = wall_clock()
    for phone, stopped in ((BARAKA, True), (BARAKA, False)):
        journal(phone, stopped, now)
    with (tmp_path / "stops").open("a") as lines:
        lines.write('["2026-')  # the power went here
    journal(AMINA, True, now)
    valley.house.store.close()
    said = done("restore", copy, "--hold")
    assert "1 phones were stopped again" in said
    house = valley.house
    with house.store.look() as work:
        found = [work.people.on_roll(each) for each in (AMINA, BARAKA)]
    assert [each is not None and each.stopped_at is not None for each in found] == [True, False]
    assert dispatch(house, Listening(), wall_clock(), limit=9, lease=LEASE) == 0
    done("texts", "go")
    assert dispatch(house, Listening(), wall_clock(), limit=9, lease=LEASE) == 1


def test_the_journal_of_stops_names_nobody(valley: Valley, tmp_path: Path) -> None:
    """Nor does one of an earlier release, once the next line is written; who stopped in it
    stays stopped."""
    path, key = tmp_path / "stops", open_key(settings_now())
    now = wall_clock()
    path.write_text(f'["{now.isoformat()}", "{AMINA}", "stop"]\n')
    Journal(path, key)(BARAKA, True, now)
    text = path.read_text()
    assert AMINA not in text and BARAKA not in text and AMINA[-9:] not in text
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    found = stopped_of(path, (AMINA, BARAKA, "+447700900199"), settings_now())
    assert [phone for phone, _ in found] == [AMINA, BARAKA]


def test_a_journal_of_another_key_is_refused_and_texts_stay_held(
    valley: Valley, tmp_path: Path
) -> None:
    """Else who said STOP would be texted, and nobody would know."""
    copy = str(tmp_path / "copy")
    done("backup", copy)
    Journal(tmp_path / "stops", b"another key altogether")(AMINA, True, wall_clock())
    valley.house.store.close()
    refused = nursery("restore", copy, "--hold")
    assert refused.exit_code == 1 and "put the key file back" in refused.output
    assert dispatch(valley.house, Listening(), wall_clock(), limit=9, lease=LEASE) == 0


def test_no_copy_is_put_under_a_worker_that_runs(valley: Valley, tmp_path: Path) -> None:
    """It would go on writing into a file that is gone."""
    copy = tmp_path / "copy"
    done("backup", str(copy))
    Beat(valley.house, SENDING)(wall_clock())
    refused = nursery("restore", str(copy), "--hold")
    assert refused.exit_code == 1 and "Stop web and worker" in refused.output


def test_what_is_no_copy_leaves_the_database_as_it_was(valley: Valley, tmp_path: Path) -> None:
    """Whatever it is."""
    other = tmp_path / "letter.txt"
    other.write_text("Dear officer, " * 500)
    assert nursery("restore", str(other), "--hold").exit_code == 1
    assert nursery("restore", str(tmp_path / "gone"), "--hold").exit_code == 1
    with valley.house.store.look() as work:
        assert work.people.farmer(AMINA) is not None


def test_tables_of_another_release_are_left_alone_and_named(
    valley: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """By every command but the one that was asked to change them."""
    monkeypatch.setattr(schema, "LOWEST", BEFORE_LAST)
    wanted = valley.house.store.tables().wanted
    assert f"tables of this release: {wanted}" in done("status")
    done("downgrade", BEFORE_LAST)
    behind = nursery("village", "list")
    assert behind.exit_code == 1 and "nursery migrate" in behind.output
    assert "nursery migrate" in done("status")
    done("migrate")
    done("village", "list")


def test_tables_of_a_later_release_are_not_touched(valley: Valley, database_url: str) -> None:
    """The text says which release to start; it is no traceback."""
    valley.house.store.close()
    engine = create_engine(database_url.replace("postgresql:", "postgresql+psycopg:"))
    with engine.begin() as connection:
        before = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
        connection.execute(text("UPDATE alembic_version SET version_num = 'v9000'"))
    try:
        for words in (("village", "list"), ("check",)):
            later = nursery(*words)
            assert later.exit_code == 1 and "a later release" in later.output
        assert "v9000" in done("status")
    finally:
        with engine.begin() as connection:
            connection.execute(text(f"UPDATE alembic_version SET version_num = '{before}'"))
        engine.dispose()


@pytest.mark.parametrize("to", ["v0056", "v0071"])
def test_tables_go_back_to_those_of_0_2_0_and_below_by_a_copy(valley: Valley, to: str) -> None:
    """What 0.2.0 keeps of people would be lost, and nobody would learn of it."""
    refused = nursery("downgrade", to)
    assert refused.exit_code == 1
    assert "restore the copy" in refused.output and "release 0.2.0" in refused.output
    assert valley.house.store.tables().fit


def test_tables_of_before_the_first_release_are_named() -> None:
    """A copy of a later one would not help."""
    assert "older than the first release" in Tables("v0025", "v0071", False).advice


@pytest.mark.parametrize("to", ["v9999", "yesterday", "head"])
def test_tables_go_back_to_known_states_only(valley: Valley, to: str) -> None:
    """Nothing is half done."""
    with pytest.raises(StoreError, match="nursery status"):
        valley.house.store.downgrade(to)
