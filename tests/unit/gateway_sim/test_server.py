"""The operator's addresses for people, and for the assistant, as HTTP shows them."""

from threading import Thread
from typing import Any

import pytest
import requests

from gateway_sim import OperatorController, Phone

NUMBER = "+447700900101"


def get(op: OperatorController, path: str, **headers: str) -> requests.Response:
    return requests.get(op.url + path, headers=headers, timeout=60)


def post(op: OperatorController, path: str, fields: Any) -> requests.Response:
    return requests.post(op.url + path, json=fields, timeout=60)


def test_an_unsigned_text_is_refused(operator: OperatorController) -> None:
    """401, and nothing arrives."""
    answer = post(operator, "/texts", {"id": "1"})
    assert answer.status_code == 401
    assert "X-Nursery-Signature" in answer.json()["detail"]


def test_a_signed_text_with_faults_is_told_them(assistant: Any, phone: Phone) -> None:
    """400 with the name of the field."""
    answer = assistant.hand_in("hi", not_after="soon")
    assert (answer.status_code, phone.texts) == (400, [])
    assert "not_after is 'soon'" in answer.json()["detail"]


def test_a_phone_is_used_over_http(operator: OperatorController, assistant: Any) -> None:
    """Text, inbox, dial, keys, hang up."""
    assistant.screens["1"] = ("One", True)
    sent = post(operator, f"/phones/{NUMBER}/texts", {"text": "hi"})
    assistant.hand_in("ho")
    (received,) = get(operator, f"/phones/{NUMBER}/inbox").json()["messages"]
    dialled = post(operator, f"/phones/{NUMBER}/dial", {"code": "*555*7#"}).json()
    pressed = post(operator, f"/phones/{NUMBER}/keys", {"text": "1"}).json()
    ended = post(operator, f"/phones/{NUMBER}/hang-up", {}).json()
    assert (sent.status_code, sent.json()["segments"], assistant.texts) == (202, 1, ["hi"])
    assert (received["text"], received["sender"]) == ("ho", "+447700900000")
    assert (dialled["screen"]["text"], dialled["in_session"]) == ("Menu", True)
    assert pressed["screen"]["text"] == "One"
    assert ended["in_session"] is False


def test_only_newer_texts_are_given(operator: OperatorController, assistant: Any) -> None:
    """After the last turn that the reader has."""
    assistant.hand_in("a", id="a")
    seen = get(operator, f"/phones/{NUMBER}/inbox").json()["messages"][-1]["turn"]
    assistant.hand_in("b", id="b")
    newer = get(operator, f"/phones/{NUMBER}/inbox?after={seen}").json()["messages"]
    assert [message["text"] for message in newer] == ["b"]


def test_a_reader_who_waits_hears_at_once(operator: OperatorController, assistant: Any) -> None:
    """A question with wait= is answered when the text comes, not when the time is over."""
    heard: list[str] = []

    def listen() -> None:
        found = get(operator, f"/phones/{NUMBER}/inbox?wait=30").json()["messages"]
        heard.extend(message["text"] for message in found)

    listener = Thread(target=listen)
    listener.start()
    assistant.hand_in("hi")
    listener.join(60)
    assert heard == ["hi"]


def test_several_phones_are_followed_with_one_question(
    operator: OperatorController, assistant: Any
) -> None:
    """What they got and what they sent, in order, and how they are."""
    assistant.hand_in("a", id="a")
    assistant.hand_in("b", id="b", to="+447700900102")
    operator.phone("+447700900102").text("c")
    news = get(operator, "/news?phone=07700900101&phone=07700900102").json()
    assert [(m["phone"][-3:], m["text"], m["sender"] is None) for m in news["messages"]] == [
        ("101", "a", False),
        ("102", "b", False),
        ("102", "c", True),
    ]
    assert [state["on"] for state in news["phones"]] == [True, True]


REFUSED = {
    "a number of somebody": (
        "/phones/+447911123456/texts",
        {"text": "hi"},
        400,
        "use +4477009",
    ),
    "no session": (f"/phones/{NUMBER}/keys", {"text": "1"}, 409, "dial *555*7#"),
    "a text that is none": (f"/phones/{NUMBER}/texts", {"text": 1}, 400, "expected a JSON"),
    "a list": (f"/phones/{NUMBER}/texts", ["hi"], 400, "expected a JSON object with 'text'"),
    "an unknown key": (f"/phones/{NUMBER}/shout", {"text": "hi"}, 404, ""),
}


@pytest.mark.parametrize(("path", "fields", "code", "says"), REFUSED.values(), ids=REFUSED)
def test_what_makes_no_sense_is_refused_with_a_reason(
    operator: OperatorController, path: str, fields: Any, code: int, says: str
) -> None:
    """A code, and words for the person."""
    answer = post(operator, path, fields)
    assert answer.status_code == code
    assert says in answer.json()["error"]


def test_a_form_of_a_foreign_page_cannot_send(operator: OperatorController) -> None:
    """Only JSON is taken, which a browser does not send elsewhere unasked."""
    answer = requests.post(
        f"{operator.url}/phones/{NUMBER}/texts", data='{"text":"hi"}', timeout=60
    )
    assert answer.status_code == 415


def test_another_name_for_this_machine_is_refused(operator: OperatorController) -> None:
    """A page from elsewhere cannot reach the phones under its own name."""
    assert get(operator, "/phones", Host="elsewhere.example").status_code == 400


def test_a_phone_is_switched_off_and_on(operator: OperatorController, phone: Phone) -> None:
    """And listed so."""
    post(operator, f"/phones/{NUMBER}/power", {"on": False})
    assert get(operator, "/phones").json()["phones"] == [
        {"number": NUMBER, "on": False, "texts": 0}
    ]
    post(operator, f"/phones/{NUMBER}/power", {"on": True})
    assert phone.on


def test_the_page_shows_the_phones_asked_for(operator: OperatorController) -> None:
    """In the order asked, each once; all its parts come from this machine."""
    page = get(operator, "/?phone=07700900103&phone=%2B447700900101&phone=07700900103")
    html = page.text
    assert [part[:13] for part in html.split('data-phone="')[1:]] == ["+447700900103", NUMBER]
    assert page.headers["Content-Security-Policy"] == "default-src 'self'"
    assert "http" not in html.replace("http-equiv", "")


@pytest.mark.parametrize("name", ["phones.css", "phones.js", "septets.js", "icon.svg"])
def test_the_pages_parts_are_served(operator: OperatorController, name: str) -> None:
    """They are in the package."""
    assert get(operator, f"/static/{name}").ok


def test_the_page_says_which_numbers_to_use(operator: OperatorController) -> None:
    """And shows a phone all the same; what was asked for is not taken for HTML."""
    html = get(operator, "/?phone=<b>911</b>").text
    assert "use +447700900000 to +447700900999" in html
    assert "<b>911" not in html
    assert f'data-phone="{NUMBER}"' in html
