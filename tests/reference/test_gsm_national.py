"""The national shift tables as phones use them: each cell, and whole segments of the two lines.

Table: `gsm_national.tsv` beside this file. Vectors: septets compared by hand with V20.0.0 of
3GPP TS 23.038 as gomaja/go-sms prints it, packed alike by libosmocore; tshark 4.0.17 names the
elements, languages and fill bits of each (24 November 2026).
"""

import csv
from pathlib import Path

import pytest

from assistant.alphabet import from_septets, unpack
from assistant.alphabet.national import LOCKING, SINGLE, UNUSED
from assistant.gateways.modem.tpdu import Delivered, read
from assistant.gateways.smpp import SmppTerms
from assistant.gateways.smpp.pdu import Command, Short
from assistant.gateways.smpp.texts import UDHI, heard

# (what the phone wrote, locking and single table, septets, header and packed septets)
VECTORS = (
    ("¡Buenos días!", (0, 2), 19, "03240102000AEB65F77B0E226FD2E17908"),
    ("Yağış, 5 gün", (1, 0), 17, "03250101C88619870E0B54039DFD6E"),
    ("Yağış, 5 gün", (0, 1), 20, "03240101C88637E74D7A3367816AA0B3DF0D"),
    ("amanhã não", (3, 3), 18, "06240103250103E176D88DDE83DCFB37"),
    ("amanhã não", (0, 3), 17, "0324010308B7C36EF4660F726FF66F"),
    ("वर्षा, 10 मि", (6, 6), 20, "0624010625010649E277096581623090300A"),
    ("मक्का € 20", (6, 6), 19, "06240106250106C2CAB702056DCA20190C"),
    ("মৌসম, ৫", (4, 4), 16, "06240104250104422F53C8026D3E"),
    ("வானிலை, 3", (11, 11), 17, "0624010B25010B49282F6AD4B24033"),
    ("ధర, 5", (12, 12), 13, "0624010C25010C2D220B5403"),
    ("بارش, 5", (13, 13), 15, "0624010D25010D0240C9C702D500"),
)
TERMS = SmppTerms("127.0.0.1", "n", "s", "447700900000")


def _cells() -> list[dict[str, str]]:
    lines = Path(__file__).with_name("gsm_national.tsv").read_text("utf-8").splitlines()
    return list(csv.DictReader((x for x in lines if not x.startswith("#")), delimiter="\t"))


def test_each_cell_reads_as_published() -> None:
    """All 2,294, and no table has a cell more."""
    cells, wrong = _cells(), []
    for cell in cells:
        code, language = int(cell["code"], 16), int(cell["lang_id"])
        if cell["table"] == "locking":
            found = from_septets(bytes([code]), locking=language)
        else:
            found = from_septets(bytes([0x1B, code]), single=language)
        if found != chr(int(cell["codepoint"][2:], 16)):
            wrong.append((cell, found))
    assert not wrong and len(cells) == 2294
    used = sum(127 - table.count(UNUSED) for table in LOCKING.values())
    assert used + sum(map(len, SINGLE.values())) == len(cells)


@pytest.mark.parametrize("vector", VECTORS)
def test_a_segment_is_read_by_its_tables_on_both_lines(
    vector: tuple[str, tuple[int, int], int, str],
) -> None:
    """From a SIM card in packed septets, over SMPP with a septet an octet."""
    text, _, length, octets = vector
    head = "0044" + "0C91447700091010" + "0000" + "62114290100021"
    stored = read(f"{head}{length:02X}{octets}")
    assert isinstance(stored, Delivered) and stored.text == text
    whole = bytes.fromhex(octets)
    end = whole[0] + 1
    septets = unpack(whole, length)[-(-end * 8 // 7) :]
    pdu = Short(Command.DELIVER_SM, 1, message=whole[:end] + septets, esm_class=UDHI)
    assert heard(pdu, TERMS) == (text, None)


def test_a_piece_of_a_long_text_has_its_own_tables() -> None:
    """Piece and tables stand in one header, in any order (TS 23.040 9.2.3.24)."""
    header = bytes.fromhex("0B" + "250106" + "0003AB0201" + "240106")
    pdu = Short(Command.DELIVER_SM, 1, message=header + b"\x42\x15", esm_class=UDHI)
    words, piece = heard(pdu, TERMS)
    assert words == "मक" and piece is not None and (piece.part, piece.parts) == (1, 2)


def test_a_language_that_nobody_knows_changes_nothing() -> None:
    """6.2.1.2.5: the default tables hold; Spanish has no locking table."""
    for language in (0, 2, 14, 255):
        assert from_septets(b"A\x1b\x65", locking=language) == "A€"
    assert from_septets(b"A\x1b\x65", single=99) == "A€"
