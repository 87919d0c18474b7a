"""SMPP against programs that no one here wrote: two client libraries of other hands bind to our
message centre, and Wireshark's dissector reads what passes between our two sides.

smpplib 2.2.4 is PyPI's; Net::SMPP 1.19 is CPAN's, by Debian's libnet-smpp-perl; tshark is
Debian's. What is missing is skipped, unless NURSERY_REQUIRE_TELECOM is set.
"""

import contextlib
import os
import shutil
import socket
import struct
import subprocess
import threading
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from assistant.channel import Fate, Incoming, Outgoing, Receipt, Screen
from assistant.gateways.smpp import SmppGateway, SmppTerms
from gateway_sim import OperatorController
from gateway_sim.smpp import Centre
from tests.contract.lines import SENDER, SOON, Heard

try:
    from smpplib import client as smpp_client
    from smpplib import consts, gsm
except ImportError:  # a library of the dev extra: its test is skipped
    pass

AMINA = "+447700900101"
LONG = "Soak the seed for a day and a night, then drain it. " * 6


def needs(found: object, what: str) -> None:
    """Skips, or fails where everything must be there."""
    if not found:
        assert not os.environ.get("NURSERY_REQUIRE_TELECOM"), f"{what} is not installed"
        pytest.skip(f"{what} is not installed")


@contextlib.contextmanager
def centre() -> Iterator[tuple[OperatorController, Centre]]:
    made: list[Centre] = []

    def side(clock: object) -> Centre:
        made.append(Centre(clock, answer_seconds=60))  # type: ignore[arg-type]
        return made[0]

    with OperatorController(side=side, limits=SOON) as operator:
        yield operator, made[0]


def test_smpplib_exchanges_long_texts_and_receipts_with_our_centre() -> None:
    """A client written in Python by others: it cuts, we join; we report, it reads."""
    pytest.importorskip("smpplib")
    with centre() as (operator, there):
        client, heard = bound_smpplib(there.port)
        parts, coding, flag = gsm.make_parts(LONG)
        for part in parts:
            client.send_message(
                source_addr_ton=1,
                source_addr=SENDER[1:],
                dest_addr_ton=1,
                destination_addr=AMINA[1:],
                short_message=part,
                data_coding=coding,
                esm_class=flag,
                registered_delivery=True,
            )
        while len(heard) < len(parts):
            client.read_once()
        assert operator.phone(AMINA).texts == [LONG]
        assert all(b"stat:DELIVRD" in pdu.short_message for pdu in heard)
        assert {pdu.message_state for pdu in heard} == {consts.SMPP_MESSAGE_STATE_DELIVERED}
        operator.phone(AMINA).text("help me")
        while len(heard) == len(parts):
            client.read_once()
        assert heard[-1].short_message == b"help me"
        client.unbind()
        client.disconnect()


def bound_smpplib(port: int) -> tuple[Any, list[Any]]:
    """smpplib's client, and what it is brought."""
    client, heard = (
        smpp_client.Client("127.0.0.1", port, timeout=60, allow_unknown_opt_params=True),
        [],
    )

    def keep(pdu: Any) -> None:
        heard.append(pdu)

    client.set_message_received_handler(keep)
    client.set_message_sent_handler(lambda pdu: None)
    client.connect()
    client.bind_transceiver(system_id="nursery", password="secret")
    return client, heard


PERL = r"""
use Net::SMPP;
my ($port, $from, $to) = @ARGV;
my $smpp = Net::SMPP->new_transceiver('127.0.0.1', port => $port, system_id => 'nursery',
    password => 'secret', interface_version => 0x34) or die "no bind: $!";
for my $part (1, 2) {
    my $answer = $smpp->submit_sm(source_addr_ton => 1, source_addr_npi => 1,
        source_addr => $from, dest_addr_ton => 1, dest_addr_npi => 1,
        destination_addr => $to, esm_class => 0x40, registered_delivery => 1,
        data_coding => 0, short_message => pack('C6', 5, 0, 3, 9, 2, $part) . "part $part ")
        or die "no answer";
    print "status $answer->{status}\n";
}
my $seen = 0;
while ($seen < 3) {
    my $pdu = $smpp->read_pdu() or last;
    if ($pdu->{cmd} == 5) {
        $smpp->deliver_sm_resp(message_id => '', seq => $pdu->{seq});
        print "got $pdu->{short_message}\n";
        $seen++;
    }
}
$smpp->unbind();
"""


def test_net_smpp_exchanges_long_texts_and_receipts_with_our_centre(tmp_path: Path) -> None:
    """A client written in Perl by others."""
    perl = shutil.which("perl")
    has = perl and subprocess.run([perl, "-MNet::SMPP", "-e", "1"], check=False).returncode == 0
    needs(has, "Net::SMPP")
    script = tmp_path / "client.pl"
    script.write_text(PERL)
    with centre() as (operator, there):
        client = subprocess.Popen(
            [str(perl), str(script), str(there.port), SENDER[1:], AMINA[1:]],
            stdout=subprocess.PIPE,
            text=True,
        )
        assert operator.phone(AMINA).wait_for(1, 60)
        operator.phone(AMINA).text("help me")
        said, _ = client.communicate(timeout=120)
    assert operator.phone(AMINA).texts == ["part 1 part 2 "]
    lines = said.splitlines()
    assert lines[:2] == ["status 0", "status 0"]
    assert sum("stat:DELIVRD" in line for line in lines) == 2 and "got help me" in lines


# --- Wireshark's dissector --------------------------------------------------------------------


class Relay:
    """Between the two sides: passes octets on and keeps them, whole PDU by whole PDU."""

    def __init__(self, port: int) -> None:
        self._there = port
        self._door = socket.create_server(("127.0.0.1", 0))
        self.port: int = self._door.getsockname()[1]
        self.pdus: list[bytes] = []
        self._ends: list[socket.socket] = []
        self._threads = [threading.Thread(target=self._run, daemon=True)]
        self._threads[0].start()

    def _run(self) -> None:
        near, _ = self._door.accept()
        far = socket.create_connection(("127.0.0.1", self._there))
        self._ends = [near, far]
        for one, other in ((near, far), (far, near)):
            thread = threading.Thread(target=self._pass, args=(one, other), daemon=True)
            self._threads.append(thread)
            thread.start()

    def _pass(self, one: socket.socket, other: socket.socket) -> None:
        held = b""
        with contextlib.suppress(OSError):
            while octets := one.recv(65_536):
                other.sendall(octets)
                held += octets
                while len(held) >= 16 and len(held) >= struct.unpack(">I", held[:4])[0]:
                    (length,) = struct.unpack(">I", held[:4])
                    self.pdus.append(held[:length])
                    held = held[length:]
            other.shutdown(socket.SHUT_WR)

    def close(self) -> None:
        """Once both sides are done."""
        for thread in list(self._threads):
            thread.join(60)
        for each in (*self._ends, self._door):
            each.close()


def dissected(pdus: list[bytes], folder: Path) -> list[list[str]]:
    """What tshark says of each PDU: command, status, coding, message, and what is malformed."""
    dump, packets = folder / "pdus.txt", folder / "pdus.pcap"
    dump.write_text("\n".join(f"000000 {pdu.hex(' ')}\n" for pdu in pdus))
    subprocess.run(
        ["text2pcap", "-q", "-T", "40000,2775", str(dump), str(packets)],
        check=True,
        capture_output=True,
    )
    fields = (
        "smpp.command_id",
        "smpp.command_status",
        "smpp.data_coding",
        "smpp.ussd_service_op",
        "smpp.message_state",
        "_ws.malformed",
        "_ws.expert.message",
    )
    command = ["tshark", "-r", str(packets), "-d", "tcp.port==2775,smpp", "-T", "fields"]
    command += ["-E", "separator=|"]
    for field in fields:
        command += ["-e", field]
    said = subprocess.run(command, check=True, capture_output=True, text=True).stdout
    return [line.split("|") for line in said.splitlines()]


def passed(long: str) -> list[bytes]:
    """The PDUs of a talk of every kind between our gateway and our message centre."""
    heard = Heard(screen=Screen("1 Yes\n2 না", more=True))
    with centre() as (operator, there):
        relay = Relay(there.port)
        terms = SmppTerms(
            "127.0.0.1", "nursery", "secret", SENDER, relay.port, long=long, answer_s=60
        )
        gateway = SmppGateway(terms)
        gateway.open(heard.take, lambda: datetime.now(UTC))
        assert gateway.wait_up(60) and there.wait_bound(60)
        end = datetime.now(UTC) + timedelta(hours=1)
        for number, words in enumerate(("1 € {a}", "বীজ 🌾", LONG, "বীজতলা " * 30)):
            text = Outgoing(f"t-{number}", AMINA, words, end)
            assert gateway.send(text, datetime.now(UTC)).fate is Fate.ACCEPTED
        operator.phone(AMINA).text("হ্যাঁ " * 30)
        assert "না" in operator.phone(AMINA).dial("*555*7#")
        operator.phone(AMINA).answer("1")
        assert heard.of(Receipt, 4)
        assert heard.of(Incoming, 4)
        gateway.close()
        relay.close()
    return relay.pdus


@pytest.mark.parametrize("long", ["udh", "sar", "payload"])
def test_wireshark_reads_all_that_passes(long: str, tmp_path: Path) -> None:
    """Binds, texts in every coding, receipts, USSD: nothing malformed, nothing unknown."""
    needs(shutil.which("tshark") and shutil.which("text2pcap"), "tshark")
    pdus = passed(long)
    said = dissected(pdus, tmp_path)
    assert len(said) == len(pdus)
    requests = {"0x00000004", "0x00000005", "0x00000006", "0x00000009"}
    answers = {f"0x8000000{each[-1]}" for each in requests}
    assert requests | answers <= {line[0] for line in said}
    assert not [line for line in said if line[5]], "malformed"
    assert not {line[6] for line in said if "SMPP" in line[6] or "nknown" in line[6]}
    assert {"0x00", "0x08", "0x0f"} <= {line[2] for line in said}
    operations = {int(line[3], 0) for line in said if line[3]}
    assert {1, 2, 18} <= operations
