"""What a mapping makes of a provider's answers and calls. The signatures are OpenSSL's."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import pytest

from assistant.channel import Brought, Fate, Incoming, NotTakenError, Receipt, Request, Step
from assistant.gateways.mapped import Secrets
from assistant.gateways.mapped_calls import mapped_hooks
from assistant.gateways.mapping import (
    CallFields,
    Check,
    Meets,
    Provider,
    Sends,
    Sign,
    found_at,
    nested,
    put,
    read_by,
)
from assistant.gateways.numbers import e164

NOW = datetime(2026, 6, 1, 5, 30, tzinfo=UTC)
SENDS = Sends("http://127.0.0.1:9/x", {"to": "{digits}"}, Meets((200,)), their_id="id")
TOKEN = Check(header="X-Key")
SECRETS = Secrets(token="t", secret="example-secret")


def asked(body: bytes, **headers: str) -> Request:
    given = {"X-Key": "t"} | {name.replace("_", "-"): value for name, value in headers.items()}
    return Request("POST", "/gateway/x/text", {}, given, body)


def brought(
    heard: CallFields, body: bytes, name: str = "text", check: Check = TOKEN
) -> Brought:
    provider = Provider(SENDS, check, **{name: heard}, country="+44")
    return mapped_hooks(provider, SECRETS)[name](asked(body), NOW)


def test_places_are_read_and_written_alike() -> None:
    """Objects and lists in each other."""
    fields = {"a.0.to": "x", "a.0.from": "y", "a.1.to": "z", "b.c": 3, "d": "e"}
    whole = nested(fields)
    assert whole == {
        "a": [{"to": "x", "from": "y"}, {"to": "z"}],
        "b": {"c": 3},
        "d": "e",
    }
    assert {place: found_at(whole, place) for place in fields} == fields
    assert found_at(whole, "a.7.to") is None and found_at(whole, "d.x") is None


def test_what_stands_in_a_slot_is_no_slot() -> None:
    """A person may write braces."""
    assert put("{text}!", {"text": "{token}", "token": "secret"}) == "{token}!"


NUMBERS = {
    "+447700900101": "+447700900101",
    "447700900101": "+447700900101",
    "00447700900101": "+447700900101",
    "07700 900-101": "+447700900101",
    "BIGBANK": "",
    "": "",
    "123": "",
}


@pytest.mark.parametrize("told", NUMBERS)
def test_numbers_are_read_as_operators_write_them(told: str) -> None:
    """What is no number is nobody's."""
    assert e164(told, "+44") == NUMBERS[told]


TIMES = {
    ("iso", '"2026-06-01T08:00:00+03:00"'): datetime(2026, 6, 1, 5, tzinfo=UTC),
    ("unix", "1780291800"): NOW,
    ("unix_ms", "1780291800000"): NOW,
    ("%d/%m/%Y %H:%M", '"01/06/2026 05:00"'): datetime(2026, 6, 1, 5, tzinfo=UTC),
    ("iso", '"soon"'): NOW,
    ("unix", '"9999999999999999"'): NOW,
}


@pytest.mark.parametrize("case", TIMES)
def test_times_are_read_as_the_mapping_says(case: tuple[str, str]) -> None:
    """One that cannot be read is now."""
    how, told = case
    heard = CallFields(phone="p", text="t", at="at", at_as=how)
    body = f'{{"p": "447700900101", "t": "1", "at": {told}}}'.encode()
    (text,) = brought(heard, body).news
    assert isinstance(text, Incoming) and text.at == TIMES[case]


def test_several_in_one_call_and_one_from_no_number() -> None:
    """An operator's advertisement is answered and dropped."""
    heard = CallFields(phone="p", text="t", each="all")
    body = b'{"all": [{"p": "07700900101", "t": "1"}, {"p": "OFFERS", "t": "Win!"}]}'
    (text,) = brought(heard, body).news
    assert isinstance(text, Incoming) and (text.phone, text.text) == ("+447700900101", "1")


def test_a_call_without_ids_gets_one_of_its_words() -> None:
    """The same call twice is one; another is another."""
    heard = CallFields(phone="p", text="t", at="at", at_as="unix")

    def id_of(at: int) -> str:
        body = f'{{"p": "07700900101", "t": "1", "at": {at}}}'.encode()
        (text,) = brought(heard, body).news
        assert isinstance(text, Incoming)
        return text.gateway_id

    assert id_of(1780291800) == id_of(1780291800) != id_of(1780291801)


@pytest.mark.parametrize(
    ("words", "step", "answer"),
    [("", Step.BEGIN, ""), ("2", Step.ANSWER, "2"), ("2*0.4 ha", Step.ANSWER, "0.4 ha")],
)
def test_a_session_told_whole_at_each_step(words: str, step: Step, answer: str) -> None:
    """The last of its answers counts."""
    heard = CallFields(phone="p", text="t", session="s", so_far="*")
    body = f'{{"p": "07700900101", "t": "{words}", "s": "9"}}'.encode()
    (turn,) = brought(heard, body, "ussd").news
    assert isinstance(turn, Incoming) and (turn.step, turn.text) == (step, answer)


def test_a_state_on_the_way_is_no_receipt() -> None:
    """Nor one that the mapping has no word for."""
    heard = CallFields(their_id="i", fate="f", fates={"ok": "delivered", "sent": "accepted"})
    assert not brought(heard, b'{"i": 7, "f": "sent"}', "receipt").news
    assert not brought(heard, b'{"i": 7, "f": "hm"}', "receipt").news
    (told,) = brought(heard, b'{"i": 7, "f": "ok"}', "receipt").news
    assert isinstance(told, Receipt) and (told.part, told.fate) == ("7", Fate.DELIVERED)


BODY = b'{"p": "07700900101", "t": "1"}'
# (printf '1780291800.'; cat BODY) | openssl dgst -sha256 -hmac example-secret
# cat BODY | openssl dgst -sha1 -hmac example-secret -binary | base64
SIGNED = {
    "f36f2a5e264f5e7f541d6a29f254b2f13ceed6d8e07a943a6429b9e7b9965acc": Sign(
        "X-S", "{now_unix}.{body}", time_header="X-T"
    ),
    "fihHPUD2RhmmI0X0s4l4/lC41kA=": Sign("X-S", digest="sha1", spelled="base64"),
}


@pytest.mark.parametrize("signature", SIGNED)
def test_a_signed_call_is_known(signature: str) -> None:
    """By the octets as they came; one octet more, or a call of yesterday, is another's."""
    heard = CallFields(phone="p", text="t")
    provider = Provider(SENDS, Check(sign=SIGNED[signature]), text=heard, country="+44")
    hook = mapped_hooks(provider, SECRETS)["text"]
    at = "1780291800"
    assert hook(asked(BODY, X_S=signature, X_T=at), NOW).news
    for body, when in ((BODY + b" ", NOW), (BODY, NOW + timedelta(days=1))):
        if when > NOW and not SIGNED[signature].time_header:
            continue
        with pytest.raises(NotTakenError):
            hook(asked(body, X_S=signature, X_T=at), when)


def test_a_call_that_is_not_the_providers_is_refused() -> None:
    """A wrong token, a missing one, none set."""
    heard = CallFields(phone="p", text="t")
    hook = mapped_hooks(Provider(SENDS, TOKEN, text=heard), SECRETS)["text"]
    for headers in ({"X_Key": "u"}, {"X_Key": ""}):
        with pytest.raises(NotTakenError) as told:
            hook(asked(BODY, **headers), NOW)
        assert told.value.status == 401
    open_door = mapped_hooks(Provider(SENDS, TOKEN, text=heard), Secrets())["text"]
    with pytest.raises(NotTakenError):
        open_door(asked(BODY, X_Key=""), NOW)


READ = {
    "OK 4711": {"state": "OK", "number": "4711"},
    "OK": {"state": "OK"},
    "NO, too (long) [160]\nsee 7": {"state": "NO", "cause": "too (long) [160]\nsee 7"},
    "": None,
}


@pytest.mark.parametrize("words", READ)
def test_an_answer_in_plain_words_is_read_by_its_form(words: str) -> None:
    """The first form that it has."""
    forms = ("{state}, {cause}", "{state} {number}", "{state}")
    assert read_by(forms, words) == READ[words]


FAULTY: dict[str, Callable[[], object]] = {
    "a form that tells nothing": lambda: Sends(
        "http://x", {"to": "{phone}"}, Meets((200,)), reads=("OK",)
    ),
    "a form with a number for a name": lambda: Sends(
        "http://x", {"to": "{phone}"}, Meets((200,)), reads=("OK {1}",)
    ),
    "a call signed over what it does not bear": lambda: Check(sign=Sign("X-S", "{phone}")),
    "an unknown slot": lambda: Sends("http://x", {"to": "{fone}"}, Meets((200,))),
    "no sign of success": lambda: Meets(),
    "no proof": lambda: Check(),
    "half of the pieces": lambda: CallFields(phone="p", text="t", ref="r"),
    "a fate of no kind": lambda: CallFields(fate="f", fates={"x": "eaten"}),
    "nowhere for the text": lambda: Provider(SENDS, TOKEN, text=CallFields(phone="p")),
    "a receipt of nothing": lambda: Provider(
        SENDS, TOKEN, receipt=CallFields(fate="f", fates={"x": "failed"})
    ),
}


@pytest.mark.parametrize("case", FAULTY)
def test_a_mapping_that_cannot_work_is_refused_at_once(case: str) -> None:
    """Not at the first text."""
    with pytest.raises(ValueError):
        FAULTY[case]()
