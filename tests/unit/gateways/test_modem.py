"""The PDUs of a modem against those that others made, and what its refusals mean.

The vectors were agreed by libosmocore, python-messaging and npm node-pdu, and read back by
tshark 4.0.17, when the project's table of telecom facts was put together (24 November 2026);
clauses are those of 3GPP TS 23.040, but where another is named.
"""

import errno
from datetime import UTC, datetime, timedelta

import pytest
import serial

from assistant.channel import Fate, Piece
from assistant.gateways.modem import ModemTerms
from assistant.gateways.modem.credit import credit_words
from assistant.gateways.modem.tpdu import Delivered, Reported, TpduError, read, submits
from assistant.gateways.modem.trouble import (
    NO_CREDIT,
    network_words,
    port_words,
    refused,
    sim_words,
)

PHONE = "+254700000001"
NINE = datetime(2026, 11, 24, 6, 1, tzinfo=UTC)


def test_a_text_is_written_as_others_write_it() -> None:
    """But for the report that we ask for and the time that we set (first octet, TP-VP)."""
    (ready,) = submits(PHONE, "hellohello", "t-1", timedelta(days=1))
    theirs = "0001000C9152740000001000000AE8329BFD4697D9EC37"
    ours = "0031000C915274000000100000A70AE8329BFD4697D9EC37"
    assert (ready.hex, ready.length) == (ours, 23)
    assert ours.replace("31", "01", 1).replace("A70A", "0A", 1) == theirs


VALID = {
    timedelta(minutes=1): 0x00,  # five minutes are the least
    timedelta(minutes=5): 0x00,
    timedelta(minutes=14): 0x01,
    timedelta(hours=12): 0x8F,
    timedelta(hours=24): 0xA7,
    timedelta(days=30): 0xC4,
    timedelta(days=90): 0xC4,
}


@pytest.mark.parametrize("left", VALID)
def test_the_time_that_is_left_is_told(left: timedelta) -> None:
    """Never longer than it is, but for the first five minutes (9.2.3.12.1, as tshark reads)."""
    (ready,) = submits(PHONE, "x", "t-1", left)
    assert int(ready.hex[-6:-4], 16) == VALID[left]


def test_a_segment_begins_on_a_septets_boundary() -> None:
    """ "hello concat" as part 1 of 2 under AB, one bit of fill (9.2.3.24), read back; with a
    header of two octets' reference there is none."""
    head = "0044" + "0C91527400000010" + "0000" + "62114290100021"
    one = read(head + "13" + "050003AB0201D06536FB0D1ABFDDE3301D")
    two = read(head + "14" + "06080412340201E8329BFD068DDFEE71980E")
    assert isinstance(one, Delivered) and isinstance(two, Delivered)
    assert (one.text, one.piece) == ("hello concat", Piece("ab", 1, 2))
    assert (two.text, two.piece) == ("hello concat", Piece("1234", 1, 2))


def test_a_long_text_is_cut_alike_each_time() -> None:
    """So that it goes on where it stopped; 153 septets a segment, 140 octets in all."""
    words = "Soak the seed for a day. " * 13
    parts = submits(PHONE, words, "t-1", timedelta(hours=1))
    assert parts == submits(PHONE, words, "t-1", timedelta(hours=1)) and len(parts) == 3
    # first octet with a header, then 153 septets and 7 for the header: 160 of user data
    assert parts[0].hex.startswith("0071") and parts[0].hex[28:30] == "A0"
    assert parts[0].length == 14 + 140


def test_a_text_and_a_report_are_read_as_others_wrote_them() -> None:
    """With the centre's number in front, or none (TS 27.005 3.1)."""
    deliver = "040C915274000000100000621142901000210AE8329BFD4697D9EC37"
    expected = Delivered(PHONE, "hellohello", NINE, None)
    assert read("00" + deliver) == read("07917447000000F0" + deliver) == expected
    report = "062A0C91527400000010621142901000216211429011002100"
    done = NINE + timedelta(minutes=10)
    assert read("00" + report) == Reported(PHONE, 42, Fate.DELIVERED, done, "status 0x00")


STATES = {
    "00": Fate.DELIVERED,
    "01": Fate.DELIVERED,
    "20": None,
    "3F": None,
    "41": Fate.FAILED,
    "46": Fate.EXPIRED,
    "49": Fate.FAILED,
    "60": Fate.FAILED,
}


@pytest.mark.parametrize("status", STATES)
def test_a_reports_status_is_a_fate(status: str) -> None:
    """None while the network tries on (9.2.3.15)."""
    report = "00062A0C915274000000106211429010002162114290110021" + status
    told = read(report)
    assert isinstance(told, Reported) and told.fate is STATES[status]


def test_names_alphabets_and_zones() -> None:
    """A sender may be a name; text may be UCS-2; a zone may be behind UTC."""
    name = read("0004" + "09D0E8329BFD06" + "0008" + "62114290100000" + "04" + "09AC09C0")
    assert isinstance(name, Delivered)
    assert (name.sender, name.text) == ("hello", "বী")
    west = read("0004" + "0C91527400000010" + "0000" + "6211429010004A" + "00")
    assert isinstance(west, Delivered)
    assert west.at == datetime(2026, 11, 24, 15, 1, tzinfo=UTC)  # 09:01, six hours behind


@pytest.mark.parametrize("pdu", ["", "00", "0004", "xyz", "0001000C91", "000404914444000000"])
def test_what_is_no_message_is_refused(pdu: str) -> None:
    """It is then deleted, and not tried for ever."""
    with pytest.raises(TpduError):
        read(pdu)


PORTS = {
    errno.ENOENT: "plug the modem in",
    errno.EACCES: "into the group dialout",
    errno.EBUSY: "another program has it",
    errno.EIO: "plug the modem in",
}


@pytest.mark.parametrize("number", PORTS)
def test_why_a_port_cannot_be_opened_is_said_in_words(number: int) -> None:
    """As the library for serial ports raises it."""
    fault = serial.SerialException(number, f"could not open port: [Errno {number}]")
    said = port_words("/dev/ttyUSB0", fault)
    assert said.startswith("/dev/ttyUSB0 cannot be opened: ") and PORTS[number] in said


SIGNALS = {
    ("+CREG: 0,2", "+CSQ: 4,0"): "no network (signal weak): ",
    ("+CREG: 0,0", "+CSQ: 14,99"): "no network (signal fair): ",
    ("+CREG: 0,2", "+CSQ: 31,0"): "no network (signal good): ",
    ("+CREG: 0,2", "+CSQ: 99,99"): "no network (no signal): ",
    ("+CREG: 0,2", ""): "no network (no signal): ",
    ("+CREG: 0,3", "+CSQ: 20,0"): "the network refuses this SIM card: ask its seller",
    ("+CREG: 2,3,1A2B,0C3D", "+CSQ: 20,0"): "the network refuses this SIM card",
}


@pytest.mark.parametrize("said", SIGNALS)
def test_why_there_is_no_network_is_said_in_words(said: tuple[str, str]) -> None:
    """3GPP TS 27.007 7.2 and 8.5."""
    assert network_words(*said).startswith(SIGNALS[said])


def test_refusals_mean_the_number_the_card_or_the_network() -> None:
    """What an officer is told says what to do."""
    assert refused(28).fate is Fate.FAILED
    for code in (69, 310, 331, 42):
        handover = refused(code)
        assert handover.fate is Fate.TRY_LATER and handover.rest
    assert NO_CREDIT in refused(69).detail
    assert refused(9999).rest is None
    assert "PUK" in sim_words(12) and "PIN" in sim_words(11)


# AA180C3602 is *100#, packed as USSD (TS 23.038 6.1.2.3.1)
SAID = {
    '+CUSD: 0,"Credit 12.40",15': "Credit 12.40",
    '+CUSD: 0,"AA180C3602",15': "*100#",
    '+CUSD: 0,"0043007200E9",72': "Cré",
    '+CUSD: 0,"0043007200E9",15': "Cré",
    "+CUSD: 2": "",
}


@pytest.mark.parametrize("line", SAID)
def test_the_credit_is_read_as_modems_give_it(line: str) -> None:
    """Plain, packed, or UCS-2, whatever they say it is."""
    assert credit_words(line) == SAID[line]


@pytest.mark.parametrize("pin", ["12", "abcd", "123456789"])
def test_a_pin_that_is_none_is_refused_before_it_is_tried(pin: str) -> None:
    """Three wrong ones block the card."""
    with pytest.raises(ValueError):
        ModemTerms("/dev/null", pin=pin)
