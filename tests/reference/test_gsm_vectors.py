"""The GSM alphabet and its packing against published tables and other implementations.

Table: `gsm_default.tsv` beside this file (3GPP TS 23.038 clauses 6.2.1 and 6.2.1.1).
SMS vectors: each was given alike by libosmocore (gsm_septet_pack), smspdudecoder 2.2.0 and
pygsm7 1.0.6, and as septets by smsutil 1.1.3 and Perl's Encode (gsm0338).
USSD vectors: each was given alike by libosmocore (gsm_7bit_encode_n_ussd) and smspdudecoder
2.2.0; those marked "published" also stand in the tests of the Go library gomaja/go-sms.
The escapes without a character follow clause 6.2.1.1 as the tests of gomaja/go-sms read it.
Numbers and codes in the vectors are bytes for a codec and call nobody.
"""

import csv
from pathlib import Path

import pytest

from assistant.alphabet import from_septets, pack, septets, to_septets, unpack
from assistant.alphabet.tables import DEFAULT, ESCAPE, EXTENSION


def _cells() -> list[tuple[str, int, str, str]]:
    lines = Path(__file__).with_name("gsm_default.tsv").read_text("utf-8").splitlines()
    rows = csv.DictReader((x for x in lines if not x.startswith("#")), delimiter="\t")
    return [
        (row["table"], int(row["code"], 16), chr(int(row["codepoint"][2:], 16)), row["name"])
        for row in rows
    ]


CELLS = _cells()

SMS = [
    ("hello", "68656C6C6F", "E8329BFD06"),
    ("hellohello", "68656C6C6F68656C6C6F", "E8329BFD4697D9EC37"),
    ("How are you?", "486F772061726520796F753F", "C8F71D14969741F977FD07"),
    ("2 € par mois", "32201B6520706172206D6F6973", "32D0A60C8287E5A0F63B3D07"),
    ("1234567", "31323334353637", "31D98C56B3DD00"),
    ("12345678", "3132333435363738", "31D98C56B3DD70"),
    ("@@@@@@@", "00" * 7, "00000000000000"),
    ("{}", "1B281B29", "1BD42605"),
    ("€", "1B65", "9B32"),
    ("[~]|\\^", "1B3C1B3D1B3E1B401B2F1B14", "1BDEA6B7F16D809BD78602"),
    ("Ää", "5B7B", "DB3D"),
    ("ñÑ¿¡", "7D5D6040", "FD2E1808"),
    ("§", "5F", "5F"),
    ("Δ_ΦΓΛΩΠΨΣΘΞ", "101112131415161718191A", "90886442A9582E988C06"),
    ("line1\nline2", "6C696E65310A6C696E6532", "ECB4BB1C53B0D3EEB20C"),
    ("a" * 160, "61" * 160, "E170381C0E87C3" * 20),
]

# (text, packed, what the receiver reads)
USSD = [
    ("ABCDEFG", "41E19058341E1B", "ABCDEFG"),  # published
    ("ABCDEF@", "41E1905834021A", "ABCDEF@"),  # published
    ("ABCDEF\r", "41E1905834361A", "ABCDEF\r"),  # published
    ("ABCDEFGH", "41E19058341E91", "ABCDEFGH"),  # published
    ("ABCDEFG\r", "41E19058341E1B0D", "ABCDEFG\r\r"),  # published
    ("ABCDEFG@", "41E19058341E01", "ABCDEFG@"),  # published
    ("*123*456*789*0#", "AA986CA6A2D56CAA1B2EA7828D1A", "*123*456*789*0#"),  # published
    ("ABCDEFGHIJKLMNOP", "41E19058341E9149E592D9743EA1", "ABCDEFGHIJKLMNOP"),  # published
    (
        "ABCDEFGHIJKLMNO\r",
        "41E19058341E9149E592D9743E1B0D",
        "ABCDEFGHIJKLMNO\r\r",
    ),  # published
    ("A£", "C100", "A£"),  # published
    ("14", "311A", "14"),  # published: the last octet looks like a filler but is data
    ("47", "B41B", "47"),  # published: likewise
    ("1", "31", "1"),
    ("*#06#", "AA11CC3602", "*#06#"),  # a handset's own code, TS 22.030
    ("*555*7#", "AA5AADA6BA8D1A", "*555*7#"),  # smspdudecoder alone
    ("pattern", "F0309D5E96BB1B", "pattern"),
]


def test_the_published_table_is_whole() -> None:
    """The data file has every code of the default alphabet but the escape, and ten more."""
    default = [code for table, code, _, _ in CELLS if table == "default"]
    assert sorted([*default, 0x1B]) == list(range(128))
    assert len(CELLS) == 127 + 10


@pytest.mark.parametrize(
    ("table", "code", "character"),
    [pytest.param(*cell[:3], id=f"{cell[0]}-{cell[1]:02X}-{cell[3]}") for cell in CELLS],
)
def test_each_cell_encodes_and_decodes_as_published(
    table: str, code: int, character: str
) -> None:
    """A character has the published code, alone or after the escape."""
    codes = bytes([code]) if table == "default" else bytes([0x1B, code])
    assert to_septets(character) == codes
    assert from_septets(codes) == character
    assert septets(character) == len(codes)


def test_the_tables_hold_nothing_beyond_the_published_cells() -> None:
    """Neither table has an extra character."""
    assert len(DEFAULT) == 128 and DEFAULT[0x1B] == ESCAPE
    assert EXTENSION == {code: char for table, code, char, _ in CELLS if table == "extension"}


@pytest.mark.parametrize(("text", "codes", "packed"), SMS)
def test_sms_vectors_pack_and_unpack(text: str, codes: str, packed: str) -> None:
    """Text, septets and octets agree with the other implementations, both ways."""
    assert to_septets(text) == bytes.fromhex(codes)
    assert pack(to_septets(text)) == bytes.fromhex(packed)
    unpacked = unpack(bytes.fromhex(packed), len(codes) // 2)
    assert from_septets(unpacked) == text


@pytest.mark.parametrize(("text", "packed", "read"), USSD)
def test_ussd_vectors_pack_and_unpack(text: str, packed: str, read: str) -> None:
    """USSD octets agree with the other implementations, filler and all."""
    assert pack(to_septets(text), ussd=True) == bytes.fromhex(packed)
    assert from_septets(unpack(bytes.fromhex(packed), ussd=True)) == read


@pytest.mark.parametrize(("length", "octets"), [(181, 159), (182, 160)])
def test_the_longest_ussd_strings_take_the_published_octets(length: int, octets: int) -> None:
    """182 septets fill the 160 octets of a USSD string (TS 23.038 clause 6.1.2.3)."""
    packed = pack(to_septets("A" * length), ussd=True)
    assert len(packed) == octets
    assert packed.hex().upper().startswith("C16030180C0683C16030")
    assert from_septets(unpack(packed, ussd=True)) == "A" * length


@pytest.mark.parametrize(
    ("codes", "shown"),
    [
        pytest.param("411B42", "AB", id="no extension character shows the code's own"),
        pytest.param("411B0D42", "A\rB", id="the code of carriage return is void"),
        pytest.param("411B1B42", "A B", id="two escapes show one space"),
        pytest.param("411B", "A ", id="an escape at the end shows a space"),
    ],
)
def test_an_escape_without_a_character_falls_back(codes: str, shown: str) -> None:
    """Unknown escapes are shown as clause 6.2.1.1 asks and never refused."""
    assert from_septets(bytes.fromhex(codes)) == shown
