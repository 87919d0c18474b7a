"""What the operator calls: signed, in form, and answered in the same call where it must be."""

import hashlib
import hmac
import json
from collections.abc import Iterator
from datetime import datetime, timedelta

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from assistant.gateways import wire_hooks
from assistant.service.pulse import SENDING, TICKING, Beat
from assistant.store import DatabaseAwayError, DatabaseFailedError, Store
from assistant.web.app import LARGEST_BODY, create_app
from assistant.wording import messages_talk as m
from tests.valley import AMINA, Valley, at, house_of, like, numbered, settle

SECRET = "a secret of two"
NOW = "2026-06-01T05:00:00+00:00"
EIGHT = datetime.fromisoformat(NOW)


class Operator:
    """Calls the web side as the wire says."""

    def __init__(self, client: FlaskClient) -> None:
        self._client = client

    def call(
        self, path: str, body: object, *, secret: str = SECRET, at: str = ""
    ) -> TestResponse:
        """One signed call."""
        raw = body if isinstance(body, bytes) else json.dumps(body).encode()
        at = at or str(int(EIGHT.timestamp()))
        # As WIRE.md says: HMAC-SHA256 over time, path and body, in hex.
        said = f"{at}\n{path}\n".encode() + raw
        signature = hmac.new(secret.encode(), said, hashlib.sha256).hexdigest()
        headers = {"X-Nursery-At": at, "X-Nursery-Signature": signature}
        return self._client.post(path, data=raw, headers=headers)


@pytest.fixture
def woken() -> list[bool]:
    return []


@pytest.fixture
def valley(_copied_sqlite: str) -> Iterator[Valley]:
    store = Store(_copied_sqlite)
    valley = Valley(house_of(store), at("1 Jun 08:00"))
    settle(valley)
    yield valley
    store.close()


@pytest.fixture
def client(valley: Valley, woken: list[bool]) -> FlaskClient:
    """The web side at eight in the morning of 1 June."""
    app = create_app(
        valley.house,
        secret=SECRET,
        wake=lambda: woken.append(True),
        clock=lambda: valley.now,
    )
    return app.test_client()


@pytest.fixture
def operator(client: FlaskClient) -> Operator:
    return Operator(client)


def text(words: str, message_id: str = "m1") -> dict[str, str]:
    """A text from Amina's phone."""
    return {"id": message_id, "from": AMINA, "to": "+447700900000", "text": words, "at": NOW}


def turn(words: str, step: str, message_id: str) -> dict[str, str]:
    """A turn of her USSD session."""
    return {
        "id": message_id,
        "session": "s1",
        "from": AMINA,
        "code": "*555*7#",
        "step": step,
        "text": words,
        "at": NOW,
    }


def test_a_text_is_taken_and_its_answer_waits(
    operator: Operator, valley: Valley, woken: list[bool]
) -> None:
    """The worker is woken for it."""
    response = operator.call("/gateway/text", text("hello"))
    assert (response.status_code, response.data) == (204, b"")
    assert woken == [True]
    valley.send()
    assert valley.heard(AMINA) == [like(m.ASK_LANGUAGE, ...)]


def test_a_text_that_comes_twice_is_taken_once(operator: Operator, valley: Valley) -> None:
    """Both calls are answered the same."""
    for _ in range(2):
        assert operator.call("/gateway/text", text("hello")).status_code == 204
    valley.send()
    assert len(valley.heard(AMINA)) == 1


def test_a_turn_of_ussd_is_answered_with_its_screen(operator: Operator) -> None:
    """The same call twice gets the same screen; the end of a session gets none."""
    first = operator.call("/gateway/ussd", turn("", "begin", "t1"))
    assert first.status_code == 200
    screen = like(m.ASK_LANGUAGE, *numbered("English", "Kiswahili"))
    assert first.get_json() == {"text": screen, "more": True}
    second = operator.call("/gateway/ussd", turn("1", "answer", "t2"))
    assert second.get_json() == {"text": like(m.ASK_VILLAGE, ...), "more": True}
    again = operator.call("/gateway/ussd", turn("1", "answer", "t2"))
    assert again.get_json() == second.get_json()
    end = operator.call("/gateway/ussd", turn("", "end", "t3"))
    assert (end.status_code, end.data) == (204, b"")


def test_a_receipt_is_kept(operator: Operator, valley: Valley) -> None:
    """Of a text that is ours; of another it is taken and means nothing."""
    valley.operator.receipts = False
    valley.text(AMINA, "hello")
    (sent,) = valley.operator.delivered
    for message_id in (sent.message_id, "strange"):
        receipt = {"id": message_id, "fate": "delivered", "at": NOW}
        assert operator.call("/gateway/receipt", receipt).status_code == 204
    with valley.house.store.work() as work:
        kept = work.outbox.get(sent.message_id)
    assert kept is not None and kept.state == "delivered"


# --- refused ----------------------------------------------------------------------------------


@pytest.mark.parametrize("path", ["/gateway/text", "/gateway/ussd", "/gateway/receipt"])
def test_who_does_not_know_the_secret_is_refused(
    operator: Operator, client: FlaskClient, valley: Valley, path: str
) -> None:
    """A wrong secret, no signature, a signature of five minutes and a second ago."""
    old = str(int(EIGHT.timestamp()) - 301)
    late = operator.call(path, text("hello"), at=old)
    wrong = operator.call(path, text("hello"), secret="another")
    none = client.post(path, json=text("hello"))
    assert [each.status_code for each in (late, wrong, none)] == [401, 401, 401]
    with valley.house.store.work() as work:
        assert work.outbox.of_phone(AMINA) == ()


MALFORMED = {
    "no JSON": b"hello",
    "no object": b"[1, 2]",
    "no UTF-8": b"\xff\xfe",
    "deep": b"[" * 100_000,
    "no fields": b"{}",
    "a phone that is none": text("hello") | {"from": "amina"},
    "an id that is none": text("hello") | {"id": ""},
    "a time without a zone": text("hello") | {"at": "2026-06-01T05:00:00"},
    "a text that is none": text("hello") | {"text": 7},
}


@pytest.mark.parametrize("body", MALFORMED.values(), ids=MALFORMED.keys())
def test_what_is_out_of_form_is_refused_with_the_reason(
    operator: Operator, body: object
) -> None:
    """And need not be sent again."""
    response = operator.call("/gateway/text", body)
    assert response.status_code == 400
    assert b"expected" in response.data


def test_a_body_that_is_too_large_is_refused(operator: Operator) -> None:
    """Before it is read."""
    assert operator.call("/gateway/text", b" " * (LARGEST_BODY + 1)).status_code == 413


ODD = {
    "half an emoji": b'"\\ud83c"',
    "a null": b'"a\\u0000b"',
    "forty thousand characters": json.dumps("x" * 40_000).encode(),
    "nothing": b'""',
}


@pytest.mark.parametrize("words", ODD.values(), ids=ODD.keys())
def test_odd_words_in_a_good_form_are_taken(
    operator: Operator, valley: Valley, words: bytes
) -> None:
    """A phone can send anything."""
    body = json.dumps(text("WORDS")).encode().replace(b'"WORDS"', words)
    assert operator.call("/gateway/text", body).status_code == 204
    valley.send()
    assert len(valley.heard(AMINA)) == 1


def test_a_call_that_is_not_posted_is_refused(client: FlaskClient) -> None:
    """GET is not for changing anything."""
    assert client.get("/gateway/text").status_code == 405


def test_a_database_that_is_away_asks_the_operator_to_come_again(
    operator: Operator, valley: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing was kept, so it must not be thought taken."""

    def away() -> None:
        raise DatabaseFailedError("the disk is full")

    monkeypatch.setattr(valley.house.store, "work", away)
    assert operator.call("/gateway/text", text("hello")).status_code == 500


def test_health_is_told_to_anybody(client: FlaskClient) -> None:
    """Whoever watches the process."""
    response = client.get("/health")
    assert (response.status_code, response.get_json()) == (200, {"status": "ok"})


def test_what_the_database_could_not_keep_is_to_be_sent_again(
    operator: Operator, monkeypatch: pytest.MonkeyPatch, valley: Valley
) -> None:
    """No apology: it might have been STOP, or a cry for help. Nothing is kept of it."""

    def away(*given: object) -> object:
        raise DatabaseAwayError("the disk is full")

    with monkeypatch.context() as patch:
        patch.setattr(type(valley.house.store), "work", away)
        answer = operator.call("/gateway/text", text("STOP"))
    assert (answer.status_code, answer.headers["Retry-After"]) == (503, "5")
    assert operator.call("/gateway/text", text("STOP")).status_code == 204


def test_a_call_that_was_not_let_in_is_logged_with_why(
    operator: Operator, caplog: pytest.LogCaptureFixture
) -> None:
    """Clocks apart, or secrets; no words and no number."""
    late = str(int(EIGHT.timestamp()) + 400)
    assert operator.call("/gateway/text", text("hello"), at=late).status_code == 401
    assert operator.call("/gateway/text", text("hello"), secret="other").status_code == 401
    assert "+400 s from ours" in caplog.text and "compare the secrets" in caplog.text
    assert AMINA not in caplog.text


def test_ready_says_what_stands_still(client: FlaskClient, valley: Valley) -> None:
    """Nobody sends here, and a text has waited for eleven minutes."""
    valley.post(AMINA, "hello")
    valley.now += timedelta(minutes=11)
    answer = client.get("/health/ready")
    assert answer.status_code == 503
    assert answer.json == {"faults": ["sending", "ticking", "waiting"]}
    for part in (SENDING, TICKING):
        Beat(valley.house, part)(valley.now)
    valley.send()
    assert client.get("/health/ready").json == {"faults": []}


def test_while_the_secret_is_changed_both_are_good(valley: Valley) -> None:
    """The operator changes its own a little later; no text is refused meanwhile."""
    hooks = {"": wire_hooks("the new secret of two", before=SECRET)}
    app = create_app(
        valley.house, secret="", wake=lambda: None, clock=lambda: valley.now, hooks=hooks
    )
    operator = Operator(app.test_client())
    for secret, status in ((SECRET, 204), ("the new secret of two", 204), ("a third", 401)):
        answer = operator.call(
            "/gateway/text", text("hello", secret.replace(" ", "-")), secret=secret
        )
        assert answer.status_code == status


def test_another_host_is_not_answered(client: FlaskClient) -> None:
    """Nobody can have us write an address of theirs into a page or a calendar. Operators sign,
    and whoever watches may come by any address."""
    elsewhere = "http://evil.example/"
    assert client.get("/sign-in", base_url=elsewhere).status_code == 421
    assert client.get("/health", base_url=elsewhere).status_code == 200
    assert client.post("/gateway/text", base_url=elsewhere).status_code == 401
