"""SMPP octets and texts against octets that others made, and receipts as operators write them.

The PDUs are those that tshark 4.0.17 decoded without a malformed field and npm `smpp` 0.5.1
made again octet for octet, when the project's table of telecom facts was put together (24
November 2026). Sections are those of SMPP v3.4, Issue 1.2.
"""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from assistant.channel import Fate, Piece
from assistant.gateways.smpp import SmppTerms, texts
from assistant.gateways.smpp.pdu import (
    Address,
    Bind,
    Command,
    NamedResponse,
    Pdu,
    PduError,
    Short,
    Tag,
    decode,
    length_of,
    status_words,
)
from assistant.gateways.smpp.ussd import Menus

NOW = datetime(2026, 11, 24, 9, 5, tzinfo=UTC)
TERMS = SmppTerms("127.0.0.1", "esme1", "secret", "21333")
FROM, TO = Address("21333"), Address("254700000001")


def submit(sequence: int, **given: Any) -> Short:
    return Short(
        Command.SUBMIT_SM, sequence, source=FROM, destination=TO, registered=1, **given
    )


PDUS = {
    "0000001000000015000000000000000c": Pdu(Command.ENQUIRE_LINK, 12),
    "00000010800000040000005800000009": NamedResponse(0x80000004, 9, 0x58),
    "0000001080000004000000140000000a": NamedResponse(0x80000004, 10, 0x14),
    "0000001080000000000000030000000b": Pdu(Command.NACK, 11, 3),
    "0000002200000009000000000000000165736d653100736563726574000034000000": Bind(
        Command.BIND_TRANSCEIVER, 1, system_id="esme1", password="secret"
    ),
    "0000003a00000004000000000000000200010132313333330001013235343730303030303030310000000000000100"
    "00000868656c6c6f201b65": submit(2, message=b"hello \x1be"),
    "0000003e00000004000000000000000300010132313333330001013235343730303030303030310000000000000100"
    "08000c0928092e0938094d09240947": submit(3, message="नमस्ते".encode("utf-16-be"), coding=8),
    "0000004000000004000000000000000400010132313333330001013235343730303030303030310040000000000100"
    "00000e050003ab020170617274206f6e65": submit(
        4, message=b"\x05\x00\x03\xab\x02\x01part one", esm_class=0x40
    ),
    "0000004200000004000000000000000600010132313333330001013235343730303030303030310000000000000100"
    "0000000424000c7061796c6f61642074657874": submit(6, tlvs={Tag.PAYLOAD: b"payload text"}),
    "0000004600000004000000000000000700010132313333330001013235343730303030303030310000000000000100"
    "00000473656731020c00020007020e000102020f000101": submit(
        7,
        message=b"seg1",
        tlvs={Tag.SAR_REF: b"\x00\x07", Tag.SAR_TOTAL: b"\x02", Tag.SAR_SEGMENT: b"\x01"},
    ),
    "0000004a00000004000000000000000855535344000101323133333300010132353437303030303030303100000000"
    "000000000f0009312e204120322e20420501000102138300020700": Short(
        Command.SUBMIT_SM,
        8,
        source=FROM,
        destination=TO,
        service_type="USSD",
        message=b"1. A 2. B",
        coding=0x0F,
        tlvs={Tag.USSD_SERVICE_OP: b"\x02", Tag.ITS_SESSION_INFO: b"\x07\x00"},
    ),
}
RECEIPT = bytes.fromhex(
    "000000a10000000500000000000003e90001013231333333000101323534373030303030303031000400000000000000"
    "006369643a4131207375623a30303120646c7672643a303031207375626d697420646174653a323631313234303930"
    "3020646f6e6520646174653a3236313132343039303120737461743a44454c49565244206572723a3030302074657874"
    "3a68656c6c6f001e00034131000427000102"
)


@pytest.mark.parametrize("octets", PDUS)
def test_pdus_are_written_and_read_as_others_do(octets: str) -> None:
    """Octet for octet, both ways."""
    pdu = PDUS[octets]
    assert pdu.encode().hex() == octets
    assert decode(bytes.fromhex(octets)) == pdu
    assert length_of(bytes.fromhex(octets)) == len(octets) // 2


def test_a_receipt_is_read_by_its_fields_or_by_its_text() -> None:
    """The same from both (5.3.2.12, 5.3.2.35, appendix B)."""
    pdu = decode(RECEIPT)
    assert isinstance(pdu, Short) and texts.is_receipt(pdu)
    at = datetime(2026, 11, 24, 9, 1, tzinfo=UTC)
    expected = texts.ReceiptSays("A1", Fate.DELIVERED, at, "", words="hello")
    assert texts.told(pdu, NOW) == expected
    bare = Short(Command.DELIVER_SM, 1, message=pdu.message, esm_class=4)
    assert texts.told(bare, NOW) == expected


# As operators write them: appendix B calls the form typical, no more.
RECEIPTS = {
    b"id:77 sub:001 dlvrd:000 submit date:2611240900 done date:261124090130 stat:EXPIRED"
    b" err:00B Text:hi": ("77", Fate.EXPIRED, "EXPIRED err 00B"),
    b"id:7f-a1 stat:UNDELIV err:001": ("7f-a1", Fate.FAILED, "UNDELIV err 001"),
    b"ID: 9 STAT: REJECTD": ("9", Fate.FAILED, "REJECTD"),
    b"id:9 stat:DELETED err:000 text:": ("9", Fate.FAILED, "DELETED"),
    b"id:9 sub:001 dlvrd:000 stat:ENROUTE err:000": ("9", None, "ENROUTE"),
    b"id:9 stat:ACCEPTD": ("9", None, "ACCEPTD"),
    b"id:9 stat:UNKNOWN": ("9", None, "UNKNOWN"),
}


@pytest.mark.parametrize("words", RECEIPTS)
def test_receipts_of_all_kinds_are_read(words: bytes) -> None:
    """What is only on the way has no fate yet."""
    told = texts.told(Short(Command.DELIVER_SM, 1, message=words, esm_class=4), NOW)
    assert told is not None
    assert (told.part, told.fate, told.detail) == RECEIPTS[words]


def test_a_receipt_that_names_no_text_is_none() -> None:
    """It could only be guessed whose it is."""
    pdu = Short(Command.DELIVER_SM, 1, message=b"delivered!", esm_class=4)
    assert texts.told(pdu, NOW) is None


def test_ids_that_the_two_sides_spell_otherwise_meet() -> None:
    """The hand-over says hexadecimal, the receipt decimal; or the other way round."""
    hex_first = SmppTerms("h", "s", "p", "1", ids="hex then decimal")
    assert texts.part_id("1F4", hex_first) == texts.receipt_id("500", hex_first)
    decimal_first = SmppTerms("h", "s", "p", "1", ids="decimal then hex")
    assert texts.part_id("500", decimal_first) == texts.receipt_id("1f4", decimal_first)
    assert texts.part_id("not hex", hex_first) == "not hex"


def test_a_long_text_is_cut_alike_each_time() -> None:
    """So that it goes on where it stopped; at 153 septets a segment (TS 23.040 9.2.3.24.1)."""
    words = "a" * 152 + "€" + "b" * 10
    found = texts.segments(words, "t-1", TERMS)
    assert found == texts.segments(words, "t-1", TERMS) != texts.segments(words, "t-2", TERMS)
    assert [len(each.message) - 6 for each in found] == [152, 12]  # an escape is not split
    assert {each.message[:3] for each in found} == {b"\x05\x00\x03"}
    assert [each.message[4:6] for each in found] == [b"\x02\x01", b"\x02\x02"]
    assert {each.esm_class for each in found} == {texts.UDHI}


def test_what_an_operators_default_lacks_goes_as_ucs2() -> None:
    """Where data_coding 0 is ASCII there."""
    ascii_terms = SmppTerms("h", "s", "p", "1", alphabet="ascii")
    (segment,) = texts.segments("é", "t-1", ascii_terms)
    assert (segment.coding, segment.message) == (8, "é".encode("utf-16-be"))
    (segment,) = texts.segments("e", "t-1", ascii_terms)
    assert (segment.coding, segment.message) == (0, b"e")


# data_coding, octets, words (5.2.19; classes: TS 23.038 clause 4)
CODED = (
    (0x00, b"caf\x05 \x1b\x65", "café €"),
    (0x01, b"plain", "plain"),
    (0x03, b"caf\xe9", "café"),
    (0x08, "বীজ 🌾".encode("utf-16-be"), "বীজ 🌾"),
    (0x0F, b"caf\x05", "café"),
    (0xF0, b"caf\x05", "café"),
    (0x06, "Да".encode("iso8859-5"), "Да"),
    (0x08, b"\x00h\x00", "h\ufffd"),
)


@pytest.mark.parametrize("case", CODED, ids=lambda case: hex(case[0]))
def test_texts_are_read_in_every_coding(case: tuple[int, bytes, str]) -> None:
    """Half a character is shown as one that is missing."""
    coding, octets, words = case
    assert texts.decoded(octets, coding, TERMS) == words


PIECES = {
    b"\x05\x00\x03\xab\x02\x01one": ("one", Piece("ab", 1, 2)),
    b"\x06\x08\x04\x12\x34\x03\x02two": ("two", Piece("1234", 2, 3)),
    b"\x05\x00\x03\xab\x02\x00odd": ("odd", None),
    b"\x05\x00\x03\xab\x00\x01odd": ("odd", None),
    b"\x0b\x05\x04\x15\x81\x00\x00\x00\x03\xab\x02\x02ports": ("ports", Piece("ab", 2, 2)),
    b"\x03\x24\x01\x06x": ("x", None),
}


@pytest.mark.parametrize("octets", PIECES)
def test_headers_say_which_piece_it_is(octets: bytes) -> None:
    """One whose total or place cannot be is ignored (TS 23.040 9.2.3.24.1)."""
    pdu = Short(Command.DELIVER_SM, 1, message=octets, esm_class=0x40)
    assert texts.heard(pdu, TERMS) == PIECES[octets]


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ("absolute", "261125100530000+"),
        ("relative", "000001010030000R"),
        ("none", ""),
    ],
)
def test_the_end_of_a_texts_time_is_told(how: str, said: str) -> None:
    """In sixteen characters (7.1.1), a day, an hour and half a minute on."""
    terms = SmppTerms("h", "s", "p", "1", validity=how)
    end = NOW + timedelta(days=1, hours=1, seconds=30)
    assert texts.validity(end, NOW, terms) == said


BROKEN = {
    "cut short": "00000014000000050000000000000001" + "00010132",
    "a string without end": "00000013000000090000000000000001" + "616263",
    "a text longer than the PDU": "0000003a000000040000000000000002"
    "00010132313333330001013235343730303030303030310000000000000100"
    "0000ff68656c6c6f201b65",
    "half a field": "00000038000000040000000000000007"
    "00010132313333330001013235343730303030303030310000000000000100"
    "00000473656731020c00",
}


@pytest.mark.parametrize("case", BROKEN)
def test_octets_that_are_no_pdu_are_refused(case: str) -> None:
    """With the status that the other side is told."""
    with pytest.raises(PduError) as told:
        decode(bytes.fromhex(BROKEN[case]))
    assert told.value.status == 2
    for length in (0, 15, 10**6):
        with pytest.raises(PduError):
            length_of(length.to_bytes(4, "big"))


def test_fields_that_nobody_knows_are_passed_over() -> None:
    """Operators add their own (5.3): vendor tags, statuses from 0x400."""
    pdu = submit(1, message=b"x", tlvs={0x1400: b"\x01\x02", Tag.PAYLOAD: b"y"})
    assert decode(pdu.encode()) == pdu
    assert decode(Pdu(0x80000004, 1, 0x455).encode()).status == 0x455
    assert "of this operator" in status_words(0x455)


def test_a_session_is_one_from_its_beginning_to_its_end() -> None:
    """A number that comes again after that is another session."""
    menus = Menus(TERMS)

    def step(operation: int, info: bytes, words: bytes = b"") -> tuple[str, str, str]:
        tlvs: dict[int, bytes] = {
            Tag.USSD_SERVICE_OP: bytes([operation]),
            Tag.ITS_SESSION_INFO: info,
        }
        pdu = Short(Command.DELIVER_SM, 1, source=TO, message=words, coding=15, tlvs=tlvs)
        heard = menus.heard(pdu, NOW)
        assert heard is not None and heard.session_id is not None
        return heard.step, heard.text, heard.session_id

    begin, _, first = step(1, b"\x07\x00", b"*555*7#")
    assert step(18, b"\x07\x02", b"2") == ("answer", "2", first)
    assert begin == "begin" and step(18, b"\x07\x05") == ("end", "", first)
    assert step(1, b"\x07\x00")[2] != first
