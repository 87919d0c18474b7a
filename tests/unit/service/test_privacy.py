"""People's own data: agreeing, being forgotten, keeping times, and the sealed trail."""

from dataclasses import replace
from datetime import timedelta

import pytest
from sqlalchemy import text as sql

from assistant.service.audit import TrailAct, note
from assistant.service.privacy import (
    ASKED_LASTS,
    KEEPING,
    erase_due,
    kept_of,
    thin_out,
    version_of,
)
from assistant.service.trail_seal import check, seal
from assistant.wiring.catalogues import open_catalogue
from assistant.wording import messages_aid as aid
from assistant.wording import messages_privacy as p
from tests.stages import stage
from tests.valley import AMINA, BARAKA, CODE, KIJANI, OFFICER, Valley, like

NAME = "Amina Odongo"


@stage
def amina(valley: Valley) -> None:
    """She has a nursery, a name, and has called for help."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "31 May")
    with valley.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, name=NAME))
    valley.text(AMINA, "my leaves are yellow please call me")
    for phone in (AMINA, OFFICER):
        valley.heard(phone)


def _everything(valley: Valley) -> str:
    """All rows of all tables, as a thief would read them."""
    with valley.house.store._engine.connect() as connection:
        names = connection.execute(sql("SELECT name FROM sqlite_master WHERE type = 'table'"))
        return "\n".join(
            str(tuple(row))
            for (name,) in names.all()
            for row in connection.execute(sql(f"SELECT * FROM {name}"))
        )


def test_who_asks_is_asked_back_and_forgotten_a_week_later(amina: Valley) -> None:
    """Name, number and words are nowhere any more."""
    assert amina.text(AMINA, "delete my data") == [like(p.ERASE_SURE), like(aid.ERASE_TOLD)]
    assert amina.heard(OFFICER)
    assert amina.text(AMINA, "Delete.") == [like(p.ERASE_DUE)]
    amina.now += timedelta(days=6, hours=23)
    assert erase_due(amina.house, amina.now) == 0
    amina.now += timedelta(hours=2)
    assert erase_due(amina.house, amina.now) == 1
    left = _everything(amina)
    assert AMINA not in left and NAME not in left and "yellow" not in left


@pytest.mark.parametrize("word", sorted(p.DELETE_WORDS))
def test_the_word_of_each_language_confirms(amina: Valley, word: str) -> None:
    """After it was asked for; else it is a word as any other."""
    assert like(p.ERASE_DUE) not in amina.text(AMINA, word)
    amina.text(AMINA, "delete my data")
    assert amina.text(AMINA, word) == [like(p.ERASE_DUE)]


def test_start_takes_it_back(amina: Valley) -> None:
    """A forged sender, or second thoughts: a week to say so."""
    for words in ("delete my data", "DELETE", "START"):
        amina.text(AMINA, words)
    amina.now += timedelta(days=8)
    assert erase_due(amina.house, amina.now) == 0
    assert NAME in _everything(amina)


def test_asked_and_not_confirmed_nothing_is_deleted(amina: Valley) -> None:
    """Nor when the word comes days later."""
    amina.text(AMINA, "delete my data")
    amina.now += timedelta(days=4)
    amina.text(AMINA, "DELETE")
    amina.now += timedelta(days=8)
    assert erase_due(amina.house, amina.now) == 0


def test_nobody_is_forgotten_in_danger(amina: Valley) -> None:
    """A warning stands, or a cry was not seen to."""
    for words in ("delete my data", "DELETE"):
        amina.text(AMINA, words)
    amina.now += timedelta(days=7, hours=1)
    amina.enrol(BARAKA)
    amina.sow(BARAKA, "7 Jun")
    amina.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    amina.text(OFFICER, "1")
    assert erase_due(amina.house, amina.now) == 0
    amina.text(OFFICER, f"CLEAR {CODE} Kijani")
    amina.text(AMINA, "a snake has bitten my son")
    assert erase_due(amina.house, amina.now) == 0


def test_what_is_kept_is_given_whole(amina: Valley) -> None:
    """Every table that names the phone; that it was taken leaves a line."""
    found = kept_of(amina.house, AMINA, amina.now)
    assert found is not None
    assert all(word in found for word in (NAME, AMINA, "yellow", "nursery", "outbox"))
    with amina.house.store.look() as work:
        assert work.audit.latest(1)[0].act == TrailAct.PERSON_TAKEN
    assert kept_of(amina.house, BARAKA, amina.now) is None


def test_agreeing_is_kept_with_channel_language_and_words(amina: Valley) -> None:
    """So that it can be shown later to what somebody agreed."""
    with amina.house.store._engine.connect() as connection:
        row = connection.execute(sql("SELECT channel, language, words FROM agreement")).one()
    assert tuple(row) == ("sms", "en", version_of(amina.house, "en"))
    assert version_of(amina.house, "en") != version_of(amina.house, "sw")


def test_what_is_old_is_thinned_out(amina: Valley) -> None:
    """Each kind in its time; counts stay."""
    amina.dial(BARAKA)
    amina.text(BARAKA, "hello")
    before = _everything(amina)
    assert "yellow" in before
    longest = max(each.days for each in KEEPING)
    assert sum(thin_out(amina.house, amina.now + timedelta(days=longest + 1))) > 0
    after = _everything(amina)
    assert BARAKA not in after
    assert sum(thin_out(amina.house, amina.now + timedelta(days=longest + 1))) == 0


def _trail(valley: Valley, count: int = 5) -> None:
    for number in range(count):
        with valley.house.store.work() as work:
            note(work, None, TrailAct.VISITED, valley.now, detail=f"{NAME} {number}")
    valley.now += timedelta(minutes=2)
    seal(valley.house, valley.now)


CHANGES = {
    "a line is deleted": "DELETE FROM audit WHERE id = (SELECT max(id) - 1 FROM audit)",
    "who did it is changed": "UPDATE audit SET act = 'signed_in' WHERE id = 2",
    "words are changed": "UPDATE audit SET detail = 'another' WHERE id = 2",
    "a line is put in": "UPDATE audit SET id = id + 100 WHERE id = 1",
    "a seal is taken away": "DELETE FROM trail_seal WHERE last_id = (SELECT min(last_id) FROM "
    "trail_seal)",
}


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES.keys())
def test_a_changed_trail_is_seen(valley: Valley, change: str) -> None:
    """By who knows the deployment's key, which is not in the database."""
    _trail(valley)
    _trail(valley)
    assert check(valley.house).broken is None and check(valley.house).lines == 10
    with valley.house.store._engine.begin() as connection:
        connection.execute(sql(change))
    assert check(valley.house).broken is not None


def test_an_erasure_leaves_the_chain_whole(amina: Valley) -> None:
    """The words go, their digests stay."""
    _trail(amina)
    for words in ("delete my data", "DELETE"):
        amina.text(AMINA, words)
    amina.now += timedelta(days=8)
    assert erase_due(amina.house, amina.now) == 1
    seal(amina.house, amina.now + timedelta(minutes=5))
    assert check(amina.house).broken is None


@pytest.mark.parametrize("code", ["en", "sw", "fr", "hi", "bn", "id", "vi", "pt", "fil"])
def test_the_word_that_is_told_is_one_that_confirms(code: str) -> None:
    """In each language, as its catalogue has it."""
    told = open_catalogue(code).translations.gettext(p.WORD_DELETE.text)
    assert told.casefold() in p.DELETE_WORDS
    assert f"{ASKED_LASTS.days} days" in p.ERASE_SURE.text
