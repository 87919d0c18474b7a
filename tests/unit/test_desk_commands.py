"""`nursery village` and `nursery officer`: typed at a desk, told in words."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from assistant.__main__ import main
from assistant.store import Store
from assistant.wiring.house import check_code

OFFICER = "+447700900001"


@pytest.fixture
def url(_copied_sqlite: str) -> str:
    """A database with its tables, to save the time of making them."""
    return _copied_sqlite


@pytest.fixture(autouse=True)
def deployment(url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its settings, in the environment."""
    monkeypatch.setenv("NURSERY_DATABASE_URL", url)
    monkeypatch.setenv("NURSERY_ZONE", "Africa/Nairobi")


def nursery(*words: str) -> Result:
    """The command with these words."""
    return CliRunner().invoke(main, words)


def told(*words: str) -> str:
    """What a command that fails tells; it is no traceback."""
    result = nursery(*words)
    assert result.exit_code in (1, 2), result.output
    assert result.exception is None or isinstance(result.exception, SystemExit)
    assert "Traceback" not in result.output
    return result.output


def test_villages_are_added_and_listed_with_their_zones() -> None:
    """The programme's zone where none is given."""
    assert nursery("village", "add", "  Mto   Mwanga ").exit_code == 0
    assert nursery("village", "add", "Sonar", "--zone", "Asia/Dhaka").exit_code == 0
    listed = nursery("village", "list").output.splitlines()
    assert listed == ["Mto Mwanga\tAfrica/Nairobi", "Sonar\tAsia/Dhaka"]


def test_a_village_is_given_its_place() -> None:
    """When it is added or later; it can be taken away."""
    assert nursery("village", "add", "Mtoni", "--at", "-0.68, 37.35").exit_code == 0
    assert nursery("village", "place", "mtoni", "--at", "-0.7,37.4").output == (
        "Mtoni: -0.7, 37.4\n"
    )
    assert nursery("village", "place", "Mtoni").output == "Mtoni: place not known\n"


REFUSED = {
    "a place that is none": (("village", "add", "X", "--at", "91, 10"), "degrees north"),
    "a place of no village": (("village", "place", "Nowhere", "--at", "1, 2"), "Kijani"),
    "a village twice": (("village", "add", "Kijani"), "Kijani"),
    "a village twice in other letters": (("village", "add", "KIJANI"), "Kijani"),
    "a village without a name": (("village", "add", "  "), "a word"),
    "a village of digits": (("village", "add", "12"), "a word"),
    "a name that no text has room for": (("village", "add", "x" * 21), "20 letters"),
    "a zone that there is not": (("village", "add", "X", "--zone", "Africa"), "Africa/Nairobi"),
    "an officer of no village": (
        ("officer", "add", "--phone", OFFICER, "--name", "Asha"),
        "--village",
    ),
    "an officer of an unknown village": (
        ("officer", "add", "--phone", OFFICER, "--name", "Asha", "--village", "Nowhere"),
        "there are: Kijani",
    ),
    "an officer without a phone": (
        ("officer", "add", "--phone", "asha", "--name", "Asha", "--village", "Kijani"),
        "+447700900001",
    ),
    "an officer in a language that is not spoken": (
        ("officer", "add", "--phone", OFFICER, "--name", "A", "--lead", "--lang", "xx"),
        "en, sw",
    ),
    "a password for nobody": (("officer", "password", "--phone", OFFICER), OFFICER),
}


@pytest.mark.parametrize(("words", "says"), REFUSED.values(), ids=REFUSED.keys())
def test_a_slip_is_told_with_what_to_write(words: tuple[str, ...], says: str) -> None:
    """And nothing is changed."""
    nursery("village", "add", "Kijani")
    assert says in told(*words)
    assert nursery("village", "list").output.splitlines() == ["Kijani\tAfrica/Nairobi"]


def code_of(result: Result) -> str:
    """The code that was shown."""
    (code,) = re.findall(r"^Code, shown only this once: (\d{6})$", result.output, re.MULTILINE)
    return str(code)


def test_an_officers_code_is_shown_once_and_kept_as_a_hash(url: str) -> None:
    """Argon2 knows it again; the file does not hold it."""
    nursery("village", "add", "Kijani")
    words = ("officer", "add", "--phone", "+44 7700 900001", "--name", "Asha")
    code = code_of(nursery(*words, "--village", "kijani"))
    store = Store(url)
    with store.work() as work:
        officer = work.people.officer(OFFICER)
    store.close()
    assert officer is not None and officer.village_ids == (1,) and not officer.is_lead
    assert officer.code_hash.startswith("$argon2")
    assert check_code(code, officer.code_hash)
    assert not check_code("000000", officer.code_hash) or code == "000000"
    raw = Path(url.removeprefix("sqlite:///")).read_bytes()
    assert code.encode() not in raw


def test_adding_an_officer_again_gives_a_new_code_and_one_more_village(url: str) -> None:
    """The old code is no good any more."""
    for village in ("Kijani", "Sonar"):
        nursery("village", "add", village)
    words = ("officer", "add", "--phone", OFFICER, "--name", "Asha", "--village")
    old = code_of(nursery(*words, "Kijani"))
    new = code_of(nursery(*words, "Sonar"))
    store = Store(url)
    with store.work() as work:
        officer = work.people.officer(OFFICER)
    store.close()
    assert officer is not None and officer.village_ids == (1, 2)
    assert check_code(new, officer.code_hash)
    assert old == new or not check_code(old, officer.code_hash)


def test_a_hash_that_is_none_fits_no_code() -> None:
    """Nor does it raise."""
    assert not check_code("123456", "hash")


def test_faulty_settings_end_a_command_with_all_of_them(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """On standard error, with status 2."""
    monkeypatch.setenv("NURSERY_ZONE", "Africa")
    monkeypatch.setenv("NURSERY_PORT", "x")
    result = nursery("village", "list")
    assert result.exit_code == 2
    assert "NURSERY_ZONE" in result.stderr and "NURSERY_PORT" in result.stderr
    assert result.stdout == ""


def test_a_database_that_cannot_be_opened_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """In words."""
    monkeypatch.setenv("NURSERY_DATABASE_URL", "mysql://localhost/nursery")
    assert "SQLite or PostgreSQL" in told("village", "list")


def test_a_language_that_is_not_spoken_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """With those that are."""
    monkeypatch.setenv("NURSERY_LANGUAGES", "en,xx")
    assert "xx" in told("village", "list")
