"""What only an SMPP line can meet: binds that break, late answers, octets in pieces."""

import socket
import struct
import subprocess
import threading
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from ssl import PROTOCOL_TLS_SERVER, SSLContext

import pytest

from assistant.channel import Fate, Handover, Incoming, Outgoing, Receipt, Screen
from assistant.gateways.smpp import SmppGateway, SmppTerms
from gateway_sim import OperatorController
from gateway_sim.smpp import Centre, SmppAccount
from tests.contract.lines import SENDER, SOON, Heard

AMINA = "+447700900101"
LONG = "Soak the seed for a day and a night. " * 12


def now() -> datetime:
    return datetime.now(UTC)


class Bound:
    """A gateway bound to a message centre of its own."""

    def __init__(
        self,
        context: SSLContext | None = None,
        account: SmppAccount | None = None,
        **terms: object,
    ) -> None:
        self.heard = Heard()
        self.operator = OperatorController(
            side=lambda clock: Centre(clock, account, tls=context, answer_seconds=60),
            limits=SOON,
        )
        self.centre: Centre = self.operator.network.core.assistant  # type: ignore[assignment]
        given = {"answer_s": 60.0, "enquire_s": 60.0, "port": self.centre.port} | terms
        host = str(given.pop("host", "127.0.0.1"))
        password = str(given.pop("password", "secret"))
        self.terms = SmppTerms(host, "nursery", password, SENDER, **given)  # type: ignore[arg-type]
        self.gateway = SmppGateway(self.terms)

    def send(self, words: str = "hi", message_id: str = "t-1", phone: str = AMINA) -> Handover:
        text = Outgoing(message_id, phone, words, now() + timedelta(hours=1))
        return self.gateway.send(text, now())

    def unanswered(self, words: str = "hi") -> Handover:
        """What is said of a text that nobody will answer."""
        with waiting(self.terms, 0.3):
            return self.send(words)

    def shown(self, count: int) -> list[str]:
        phone = self.operator.phone(AMINA)
        assert phone.wait_for(count, 60), self.operator.record
        return phone.texts


@contextmanager
def waiting(terms: SmppTerms, seconds: float) -> Iterator[None]:
    """Answers are waited for only so long, where none will come; else for a minute, however
    busy the machine is."""
    object.__setattr__(terms, "answer_s", seconds)
    try:
        yield
    finally:
        object.__setattr__(terms, "answer_s", 60.0)


@contextmanager
def bound(
    context: SSLContext | None = None, account: SmppAccount | None = None, **terms: object
) -> Iterator[Bound]:
    found = Bound(context, account, **terms)
    with found.operator:
        found.gateway.open(found.heard.take, now)
        try:
            assert found.gateway.wait_up(60), found.gateway.why
            yield found
        finally:
            found.gateway.close()


@pytest.fixture
def line() -> Iterator[Bound]:
    with bound() as found:
        yield found


def until(true: Callable[[], bool], seconds: float = 60) -> bool:
    """Waits (real time) until something is true; whether it is."""
    end = time.monotonic() + seconds
    while not true() and time.monotonic() < end:
        time.sleep(0.01)
    return true()


@pytest.mark.parametrize("fault", ["throttle", "full"])
def test_an_operator_that_wants_it_slower_is_left_in_peace(line: Bound, fault: str) -> None:
    """The whole line rests, for as long as is set."""
    line.centre.faults.append(fault)
    handover = line.send()
    assert (handover.fate, handover.rest) == (Fate.TRY_LATER, timedelta(seconds=5))
    assert line.send().fate is Fate.ACCEPTED


@pytest.mark.parametrize("fault", ["drop", "half", "crash"])
def test_a_bind_that_breaks_is_opened_again(line: Bound, fault: str) -> None:
    """The text is offered again, and what phones write meanwhile is brought then. Where only
    the answer was lost it comes twice: SMPP has no id that would tell."""
    line.centre.faults.append(fault)
    handover = line.send()
    assert (handover.fate, handover.answered) == (Fate.TRY_LATER, False)
    assert handover.in_doubt
    line.operator.phone(AMINA).text("help")
    assert line.gateway.wait_up(60)
    assert until(lambda: line.send().fate is Fate.ACCEPTED)
    assert set(line.shown(1)) == {"hi"}
    (text,) = line.heard.of(Incoming, 1)
    assert isinstance(text, Incoming) and text.text == "help"


TOLD = {
    "by our mark": ("crash", SmppAccount()),
    "by our mark, all in fields": ("half", SmppAccount(receipts="fields")),
    "by how it begins": ("crash", SmppAccount(receipts="text", marks=False)),
    "by how it begins, though bound": ("silent", SmppAccount(receipts="text", marks=False)),
}


@pytest.mark.parametrize("how", TOLD)
def test_a_text_whose_answer_was_lost_is_found_by_its_receipt(how: str) -> None:
    """It waits a little, its receipt tells of it, and it is not sent again."""
    fault, account = TOLD[how]
    with bound(account=account) as line:
        line.centre.faults.append(fault)
        handover = line.unanswered("Soak the seed today")
        assert handover.put_off_until is not None and not handover.answered
        (told,) = line.heard.of(Receipt, 1)
        assert isinstance(told, Receipt) and told.message_id == "t-1"
        answers: list[Handover] = []

        def taken() -> bool:
            answers.append(line.send("Soak the seed today"))
            return answers[-1].fate is Fate.ACCEPTED

        assert until(taken)
        assert answers[-1].parts == (told.part,)
        assert line.shown(1) == ["Soak the seed today"] and line.centre.submitted == 1


def test_a_receipt_of_the_first_copy_counts_for_the_second(line: Bound) -> None:
    """A phone that was off: the text went again before it had the first."""
    line.operator.phone(AMINA).power(False)
    line.centre.faults.append("silent")
    assert line.unanswered().in_doubt
    handover = line.send()
    assert (handover.fate, len(handover.parts)) == (Fate.ACCEPTED, 1)
    line.operator.phone(AMINA).power(True)
    told = [each.part for each in line.heard.of(Receipt, 2) if isinstance(each, Receipt)]
    assert told == [*handover.parts] * 2


def test_a_text_whose_answer_was_lost_goes_again_where_nothing_tells_of_it() -> None:
    """A warning twice is better than none: this operator's receipts name only its own ids."""
    with bound(account=SmppAccount(receipts="fields", marks=False)) as line:
        line.centre.faults.append("crash")
        line.send()
        assert line.heard.of(Receipt, 1)
        assert until(lambda: line.send().fate is Fate.ACCEPTED)
        assert line.shown(2) == ["hi", "hi"]


def test_a_text_handed_over_before_a_crash_is_found_by_the_next_process() -> None:
    """Who has the bind then hears its receipt, with our mark; a text of another id goes."""
    with bound() as line:
        line.operator.phone(AMINA).power(on=False)
        assert line.send().fate is Fate.ACCEPTED
        line.gateway.close()  # it died before it wrote this down
        line.gateway = SmppGateway(line.terms)
        line.gateway.open(line.heard.take, now)
        assert line.gateway.wait_up(60)
        line.operator.phone(AMINA).power(on=True)
        (told,) = line.heard.of(Receipt, 1)
        assert isinstance(told, Receipt) and line.send().parts == (told.part,)
        assert line.send(message_id="t-2").fate is Fate.ACCEPTED
        assert line.shown(2) == ["hi", "hi"] and line.centre.submitted == 2
        line.gateway.close()


def test_an_answer_that_comes_too_late_is_an_answer(line: Bound) -> None:
    """The text is not sent a second time."""
    taken: list[tuple[object, ...]] = []
    write = line.centre._write
    held = threading.Event()

    def late(bind: object, command: int, *rest: object) -> None:
        if command == 0x80000004 and not held.is_set():
            taken.append((bind, command, *rest))
            held.set()
            return
        write(bind, command, *rest)  # type: ignore[arg-type]

    line.centre._write = late  # type: ignore[method-assign, assignment]
    assert line.unanswered().fate is Fate.TRY_LATER
    assert held.wait(60)
    write(*taken[0])  # type: ignore[arg-type]
    assert until(lambda: bool(line.gateway._taken.of("t-1")))
    assert line.send().fate is Fate.ACCEPTED
    assert line.shown(1) == ["hi"] and line.centre.submitted == 1


# --- many within the window -------------------------------------------------------------------

MANY = [f"+4477009001{n:02}" for n in range(1, 31)]


def listed(line: Bound, phones: list[str], words: str = "hi") -> list[Handover | None]:
    """What is said of a list of one text a phone."""
    end = now() + timedelta(hours=1)
    texts = [Outgoing(f"t-{phone[-2:]}", phone, words, end) for phone in phones]
    return line.gateway.send_all(texts, now())


@pytest.mark.parametrize("words", ["hi", LONG, "\u0906\u0917\u0947 " * 30])
def test_a_list_arrives_whole_each_phone_once(line: Bound, words: str) -> None:
    """More than the window holds, in segments too; each text bears its own ids."""
    said = listed(line, MANY, words)
    parts = [each.parts for each in said if each and each.fate is Fate.ACCEPTED]
    assert len(parts) == len(MANY)
    assert len({part for of in parts for part in of}) == sum(map(len, parts))
    for phone in MANY:
        assert line.operator.phone(phone).wait_for(1, 60)
        assert line.operator.phone(phone).texts == [words]


def test_nothing_more_of_a_list_is_offered_to_who_is_too_fast(line: Bound) -> None:
    """What was within the window is answered; the rest loses no try."""
    line.centre.faults.extend(["", "", "throttle"])
    said = listed(line, MANY)
    assert said[2] is not None and said[2].rest == timedelta(seconds=5)
    assert said[-1] is None and line.centre.submitted <= line.terms.window + 2
    assert listed(line, MANY).count(None) == 0
    assert all(len(line.operator.phone(phone).texts) == 1 for phone in MANY)


@pytest.mark.parametrize("fault", ["drop", "crash", "silent"])
def test_what_of_a_list_was_not_answered_is_in_doubt(line: Bound, fault: str) -> None:
    """It waits for its receipt and then goes again; the answered stay so, the rest was not
    offered."""
    line.centre.faults.extend(["", "", fault])
    with waiting(line.terms, 3.0):  # two of them are answered
        said = listed(line, MANY)
    doubtful = [each for each in said if each and not each.answered]
    taken = [each for each in said if each and each.fate is Fate.ACCEPTED]
    assert doubtful and all(each.put_off_until for each in doubtful)
    assert len(taken) >= 2
    if fault != "silent":
        assert said[-1] is None
        assert line.gateway.wait_up(60)
    assert until(lambda: all(each and each.parts for each in listed(line, MANY)))
    for phone in MANY:
        assert line.operator.phone(phone).wait_for(1, 60)
    twice = [phone for phone in MANY if len(line.operator.phone(phone).texts) > 1]
    assert len(twice) <= line.terms.window


def test_a_list_without_a_bind_is_offered_to_nobody(line: Bound) -> None:
    """One says why, for all."""
    line.gateway.close()
    first, *rest = listed(line, MANY)
    assert first is not None and not first.answered and rest == [None] * (len(MANY) - 1)


def test_a_long_text_goes_on_where_it_stopped(line: Bound) -> None:
    """Segments that were taken are not sent again, and it is one text on the phone."""
    line.centre.faults.extend(["", "throttle"])
    assert line.send(LONG).fate is Fate.TRY_LATER
    handover = line.send(LONG)
    assert (handover.fate, len(handover.parts)) == (Fate.ACCEPTED, 3)
    assert line.shown(1) == [LONG] and line.centre.submitted == 4
    told = {each.part for each in line.heard.of(Receipt, 3) if isinstance(each, Receipt)}
    assert told == set(handover.parts)


def test_many_threads_send_within_one_window(line: Bound) -> None:
    """Each text once, each answer to its own request."""
    with ThreadPoolExecutor(16) as pool:
        ids = [f"t-{number}" for number in range(200)]
        answers = list(pool.map(lambda each: line.send(f"text {each}", each), ids))
    assert all(each.fate is Fate.ACCEPTED for each in answers)
    assert len({each.parts for each in answers}) == 200
    assert sorted(line.shown(200)) == sorted(f"text {each}" for each in ids)


def test_a_wrong_password_is_said_in_words() -> None:
    """And the line says so at each text, until it is mended."""
    found = Bound(password="wrong")
    with found.operator:
        found.gateway.open(found.heard.take, now)
        try:
            assert until(lambda: "password is wrong" in found.gateway.why)
            handover = found.send()
            assert (handover.fate, handover.answered) == (Fate.TRY_LATER, False)
            assert "password is wrong" in handover.detail
        finally:
            found.gateway.close()


def test_a_line_that_is_not_open_here_takes_nothing() -> None:
    """Another process may have the bind."""
    found = Bound()
    assert found.send().fate is Fate.TRY_LATER
    found.centre.close()


def test_a_silent_message_centre_is_noticed() -> None:
    """enquire_link is not answered: the bind is dropped, and said so."""
    with socket.create_server(("127.0.0.1", 0)) as door:
        terms = SmppTerms(
            "127.0.0.1",
            "nursery",
            "secret",
            SENDER,
            door.getsockname()[1],
            enquire_s=1,
            answer_s=60,
        )
        gateway = SmppGateway(terms)
        gateway.open(Heard().take, now)
        connection, _ = door.accept()
        connection.recv(100)
        body = b"centre\0"
        connection.sendall(struct.pack(">IIII", 16 + len(body), 0x80000009, 0, 1) + body)
        assert gateway.wait_up(60)
        with waiting(terms, 0.3):
            assert until(lambda: "enquire_link" in gateway.why, 120)
        connection.close()
        gateway.close()


def test_octets_may_come_one_by_one_and_nonsense_ends_the_bind() -> None:
    """What is cut by the network is whole again; what is no SMPP is answered and left."""
    with socket.create_server(("127.0.0.1", 0)) as door:
        heard = Heard()
        terms = SmppTerms("127.0.0.1", "n", "s", SENDER, door.getsockname()[1], answer_s=60)
        gateway = SmppGateway(terms)
        gateway.open(heard.take, now)
        connection, _ = door.accept()
        connection.recv(100)
        body = b"centre\0"
        connection.sendall(struct.pack(">IIII", 16 + len(body), 0x80000009, 0, 1) + body)
        assert gateway.wait_up(60)
        words = b"\0\x01\x01447700900101\0\x01\x01447700900000\0"
        words += bytes([0, 0, 0, 0, 0, 0, 0, 0, 0, 2]) + b"hi"
        for octet in struct.pack(">IIII", 16 + len(words), 5, 0, 77) + words:
            connection.sendall(bytes([octet]))
        (text,) = heard.of(Incoming, 1)
        assert isinstance(text, Incoming) and text.text == "hi"
        assert connection.recv(100)[4:16].hex() == "80000005000000000000004d"
        connection.sendall(struct.pack(">IIII", 16, 0x7777, 0, 78))  # a command nobody knows
        assert connection.recv(16).hex() == "0000001080000000000000030000004e"
        connection.sendall(b"GET / HTTP/1.1\r\n\r\n")
        assert connection.recv(16)[4:12].hex() == "8000000000000002"
        assert until(lambda: "no SMPP" in gateway.why)
        connection.close()
        gateway.close()


TEXTS = 25


def test_a_bind_may_be_encrypted(tmp_path: Path) -> None:
    """By TLS, and only with a message centre that its certificate proves."""
    key, certificate = tmp_path / "key.pem", tmp_path / "certificate.pem"
    made = "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 1"
    names = ["-subj", "/CN=localhost", "-addext", "subjectAltName=DNS:localhost"]
    files = ["-keyout", str(key), "-out", str(certificate)]
    subprocess.run([*made.split(), *names, *files], check=True, capture_output=True)
    context = SSLContext(PROTOCOL_TLS_SERVER)
    context.load_cert_chain(certificate, key)
    with bound(context, host="localhost", tls=True, ca_file=str(certificate)) as line:
        for number in range(1, TEXTS + 1):  # while receipts and texts of a phone come in
            assert line.send(message_id=f"t-{number}").fate is Fate.ACCEPTED
            line.operator.phone(AMINA).text(f"text {number}")
        assert line.shown(TEXTS) == ["hi"] * TEXTS
        assert (
            len(line.heard.of(Receipt, TEXTS)) == len(line.heard.of(Incoming, TEXTS)) == TEXTS
        )
    stranger = Bound(context, host="localhost", tls=True)
    with stranger.operator:
        stranger.gateway.open(stranger.heard.take, now)
        assert until(lambda: "certificate" in stranger.gateway.why)
        stranger.gateway.close()


def test_a_screen_is_shown_once_the_message_centre_has_time(line: Bound) -> None:
    """A person who looks at the phone is not made to dial again."""
    line.heard.screen = Screen("1 Yes", more=True)
    line.centre.screen_faults.extend(["throttle", "full"])
    assert line.operator.phone(AMINA).dial("*555*7#") == "1 Yes"
    assert line.centre.submitted == 3
