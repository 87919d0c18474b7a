"""Texts over SMPP, claimed from the database and recorded in it; and the line alone.

Floor: smpplib, a client library of other hands, sending the same texts one after another to the
same message centre, which stands in a process of its own and only answers; it records nothing.
On this machine that answer takes some 40 us, which no operator's does: so the same again with
a message centre that is a few milliseconds away, as over any network.
"""

import multiprocessing
import socket
import struct
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from itertools import islice
from typing import Any

from smpplib import client as smpp_client

from assistant.channel import Outgoing
from assistant.gateways.smpp import SmppGateway, SmppTerms
from assistant.service.dispatch import dispatch
from assistant.settings import Settings
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, NOON, a_text, house_at, phone
from tests.benchmarks.databases import Bare, Kind
from tests.benchmarks.dispatch import LEASE, UNDO
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized

TEXTS = sized(500, small=20)
HANDS = 16
BATCH = max(SmppGateway.at_once, Settings().send_batch)
SENDER = "447700900000"
AWAY_S = 0.005  # to an operator's message centre and back
BIND, SUBMIT, RESPONSE = 9, 4, 0x8000_0000


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """With each database, and without one."""
    for away_s, where in ((0.0, "on this machine"), (AWAY_S, f"{AWAY_S * 1e3:g} ms away")):
        with _centre(away_s) as port, _bound(port) as gateway, _smpplib(port) as floor:
            yield _alone(where, gateway, floor, runs)
            for kind in kinds:
                with kind.fresh() as url:
                    what = f"lines: a text by SMPP {where}, {kind.name}"
                    yield _recorded(what, url, gateway, floor, runs)


def _alone(where: str, gateway: SmppGateway, floor: Any, runs: int) -> Result:
    """The gateway by itself, in lists of the length that it takes."""
    numbers = iter(range(10**9))

    def ours() -> None:
        texts = [_outgoing(next(numbers)) for _ in range(TEXTS)]
        for some in _lists(texts, gateway.at_once):
            while some:  # a list has a second; what it did not come to is offered again
                said = gateway.send_all(some, NOON)
                assert all(each.parts for each in said if each)
                some = [text for text, each in zip(some, said, strict=True) if not each]

    what = f"lines: a text by SMPP {where}, not recorded"
    return compare(what, TEXTS, "texts", Side(what, ours), _floor(floor), runs=runs)


def _lists(texts: Sequence[Outgoing], length: int) -> Iterator[Sequence[Outgoing]]:
    rest = iter(texts)
    while some := list(islice(rest, length)):
        yield some


def _outgoing(number: int) -> Outgoing:
    text = a_text(phone(number % TEXTS + 1), MORNING)
    return Outgoing(f"alone-{number}", text.phone, text.text, text.not_after)


def _recorded(what: str, url: str, gateway: SmppGateway, floor: Any, runs: int) -> Result:
    """Claimed, sent, and recorded with the operator's ids."""
    store = Store(url)
    rounds = iter(range(10**9))
    house = house_at(store)
    with store.work() as work:
        work.outbox.add_all(a_text(phone(n), MORNING) for n in range(1, TEXTS + 1))
    with ThreadPoolExecutor(HANDS) as pool, Bare(url) as bare:

        def ours() -> None:
            while dispatch(
                house, gateway, NOON, limit=BATCH, lease=LEASE, hands=HANDS, carry=pool.map
            ):
                pass

        def undo() -> None:
            with bare.work():
                bare.execute(UNDO)
                bare.execute(f"UPDATE outbox SET message_id = 'r{next(rounds)}-' || id")

        found = compare(what, TEXTS, "texts", Side(what, ours, undo), _floor(floor), runs=runs)
    store.close()
    return found


def _floor(client: Any) -> Side:
    texts = [a_text(phone(n), MORNING) for n in range(1, TEXTS + 1)]

    def send() -> None:
        for text in texts:
            client.send_message(
                source_addr=SENDER,
                destination_addr=text.phone[1:],
                short_message=text.text.encode("ascii", "replace")[:160],
                registered_delivery=True,
            )
            client.read_once()

    return Side("smpplib, one after another, nothing recorded", send)


@contextmanager
def _bound(port: int) -> Iterator[SmppGateway]:
    terms = SmppTerms("127.0.0.1", "n", "s", SENDER, port, window=HANDS)
    gateway = SmppGateway(terms)
    gateway.open(lambda news: None, lambda: NOON)
    try:
        if not gateway.wait_up(10):
            raise RuntimeError(gateway.why)
        yield gateway
    finally:
        gateway.close()


@contextmanager
def _smpplib(port: int) -> Iterator[Any]:
    client = smpp_client.Client("127.0.0.1", port, timeout=10, allow_unknown_opt_params=True)
    client.set_message_sent_handler(lambda pdu: None)
    client.connect()
    client.bind_transceiver(system_id="n", password="s")
    try:
        yield client
    finally:
        client.unbind()
        client.disconnect()


@contextmanager
def _centre(away_s: float) -> Iterator[int]:
    """A message centre that takes everything, in a process of its own; its port."""
    context = multiprocessing.get_context("fork")
    door = socket.create_server(("127.0.0.1", 0))
    process = context.Process(target=_serve, args=(door, away_s), daemon=True)
    process.start()
    try:
        yield door.getsockname()[1]
    finally:
        process.terminate()
        process.join()
        door.close()


def _serve(door: socket.socket, away_s: float) -> None:
    with ThreadPoolExecutor(8) as pool:
        while True:
            pool.submit(_answer_all, door.accept()[0], away_s)


def _answer_all(client: socket.socket, away_s: float) -> None:
    client.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    held, number = b"", 0
    while octets := client.recv(65_536):
        if away_s:
            time.sleep(away_s)
        held += octets
        answers = []
        while len(held) >= 16 and len(held) >= (length := struct.unpack(">I", held[:4])[0]):
            _, command, _, sequence = struct.unpack(">IIII", held[:16])
            held = held[length:]
            if command & RESPONSE:
                continue
            number += 1
            name = {BIND: b"centre\0", SUBMIT: b"%d\0" % number}.get(command, b"")
            head = (16 + len(name), command | RESPONSE, 0, sequence)
            answers.append(struct.pack(">IIII", *head) + name)
        client.sendall(b"".join(answers))
