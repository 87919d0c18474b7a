"""Signatures of official alerts, checked with keys that the programme names.

signxml signs and checks; that a message is refused once anything in it has changed is the
W3C's XML Signature, 3.2.1.
"""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from assistant.service.house import CheckAlert
from assistant.settings import SettingsError
from assistant.settings.reading import read_settings
from assistant.wiring.alert_keys import open_alert_keys
from tests.cap import Raw, cap, info, part
from tests.seals import kept, key_of, signed

NOW = datetime(2026, 6, 12, 4, 0, tzinfo=UTC)
OURS, OTHERS = key_of("Lindara weather service"), key_of("Somebody")


def check(*paths: str) -> CheckAlert:
    found = open_alert_keys(read_settings({"NURSERY_ALERTS_KEYS": ",".join(paths)}))
    assert found is not None
    return found


@pytest.fixture
def ours(tmp_path: Path) -> CheckAlert:
    return check(kept(OTHERS, tmp_path), kept(OURS, tmp_path))


def test_a_right_signature_names_whose_key_it_is(ours: CheckAlert) -> None:
    """Of several keys that are set."""
    assert ours(signed(cap(), OURS), NOW) == "Lindara weather service"
    assert ours(signed(cap(), OTHERS), NOW) == "Somebody"


def test_nothing_is_checked_without_keys() -> None:
    """As it was before."""
    assert open_alert_keys(read_settings({})) is None


def wrapped() -> bytes:
    """A signed message inside another, which says something else."""
    inner = signed(cap(), OURS)
    return cap(info=info(event="Flood"), note=Raw(inner.decode()))


def moved() -> bytes:
    """The true signature under another message."""
    mark = b"<ds:Signature"
    seal = mark + signed(cap(), OURS).partition(mark)[2]
    return cap(info=info(event="Flood")).replace(b"</alert>", seal)


def in_part() -> bytes:
    """A signature over one block only, in a message with another."""
    raw = cap(info=Raw(info())).replace(b"<info>", b'<info Id="a">', 1)
    return signed(raw, OURS).replace(b'URI=""', b'URI="#a"')


WRONG = {
    "one word changed": signed(cap(), OURS).replace(b"Severe", b"Extreme"),
    "a key that is not set": signed(cap(), key_of("A stranger")),
    "the signature of another message": moved(),
    "a signed message inside another": wrapped(),
    "a part that is signed": in_part(),
    "not signed at all": cap(),
    "no XML": b"<alert",
    "a signature that holds nothing": cap().replace(
        b"</alert>", b'<Signature xmlns="http://www.w3.org/2000/09/xmldsig#"/></alert>'
    ),
    "a file it names": cap().replace(
        b"</alert>", part("Signature", Raw('<Reference URI="file:///etc/hostname"/>')).encode()
    ),
}


@pytest.mark.parametrize("what", WRONG)
def test_a_wrong_signature_is_nobodys(ours: CheckAlert, what: str) -> None:
    """Whatever was changed, and whatever is in it."""
    assert ours(WRONG[what], NOW) is None


def test_words_added_after_the_signing_are_seen(ours: CheckAlert) -> None:
    """Comments are not signed by most services, and are not read either."""
    raw = signed(cap(), OURS)
    assert ours(raw.replace(b"<event>", b"<event><!-- no -->"), NOW) is not None
    assert ours(raw.replace(b"<event>", b"<event>No "), NOW) is None


def test_a_certificate_counts_while_it_is_valid(tmp_path: Path) -> None:
    """A key of last year may be in other hands."""
    old = key_of("Lindara weather service", 2025)
    ours = check(kept(old, tmp_path))
    assert ours(signed(cap(), old), NOW) is None
    assert ours(signed(cap(), old), NOW.replace(year=2025)) == "Lindara weather service"


@pytest.mark.parametrize("content", [None, b"", b"no certificate"])
def test_a_file_without_a_certificate_is_told(tmp_path: Path, content: bytes | None) -> None:
    """By the name of the setting and of the file."""
    path = tmp_path / "key.pem"
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(SettingsError, match=r"NURSERY_ALERTS_KEYS=.*key\.pem: .*PEM"):
        check(str(path))
