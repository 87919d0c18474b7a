"""Texts as SMPP carries them: codings, segments, pieces, and what receipts say.

Sources: SMPP v3.4 sections 5.2.12 (esm_class), 5.2.19 (data_coding), 5.2.28 (message_state),
5.3.2 (optional parameters), 7.1.1 (times), appendix B (receipts); 3GPP TS 23.040 clause
9.2.3.24 (the header of a segment).
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zlib import crc32

from assistant.alphabet import (
    Encoding,
    NotGsmError,
    measure,
    split,
    to_septets,
)
from assistant.channel import Fate, Piece
from assistant.gateways.headers import JOINED_8, NO_HEADER, Header, piece_of, read_header
from assistant.gateways.smpp.pdu import Short, Tag
from assistant.gateways.smpp.terms import SmppTerms

DEFAULT, UCS2 = 0x00, 0x08
UDHI = 0x40
RECEIPT, ON_THE_WAY = 0x04, 0x20
_KIND_BITS = 0x3C
_MOST = {"udh": 160, "sar": 160, "payload": 140}  # septets of a text in one short_message
_CODECS = {0x01: "ascii", 0x03: "latin-1", 0x05: "shift_jis", 0x06: "iso8859-5"}
_CODECS |= {0x07: "iso8859-8", 0x08: "utf-16-be", 0x0A: "iso2022_jp", 0x0E: "euc_kr"}


@dataclass(frozen=True)
class Segment:
    """What one submit_sm bears of a text."""

    message: bytes
    coding: int
    esm_class: int
    tlvs: Mapping[int, bytes]
    is_last: bool = True


def segments(text: str, message_id: str, terms: SmppTerms) -> tuple[Segment, ...]:
    """A text as this operator wants it. The same id makes the same segments, so that a text
    that was interrupted goes on where it stopped."""
    alone = _alone(text, terms)
    if alone is not None:
        return (alone,)
    coding = _coding(text, terms)
    if terms.long == "payload":
        octets = encoded(text, coding, terms)
        if len(octets) <= 140:
            return (Segment(octets, coding, 0, {}),)
        return (Segment(b"", coding, 0, {Tag.PAYLOAD: octets}),)
    words = split(text)
    if len(words) == 1:
        return (Segment(encoded(text, coding, terms), coding, 0, {}),)
    ref = crc32(message_id.encode())
    return tuple(
        _segment(encoded(each, coding, terms), coding, terms, ref, place, len(words))
        for place, each in enumerate(words, 1)
    )


def _alone(text: str, terms: SmppTerms) -> Segment | None:
    """Most texts: one segment of septets, found by encoding it once."""
    if terms.alphabet != "gsm":
        return None
    try:
        octets = to_septets(text)
    except NotGsmError:
        return None
    return Segment(octets, DEFAULT, 0, {}) if len(octets) <= _MOST[terms.long] else None


def _segment(
    octets: bytes, coding: int, terms: SmppTerms, ref: int, place: int, count: int
) -> Segment:
    if terms.long == "sar":
        tlvs: dict[int, bytes] = {
            Tag.SAR_REF: (ref & 0xFFFF).to_bytes(2, "big"),
            Tag.SAR_TOTAL: bytes([count]),
            Tag.SAR_SEGMENT: bytes([place]),
        }
        return Segment(octets, coding, 0, tlvs, is_last=place == count)
    header = bytes([5, JOINED_8, 3, ref & 0xFF, count, place])
    return Segment(header + octets, coding, UDHI, {}, is_last=place == count)


def _coding(text: str, terms: SmppTerms) -> int:
    """The operator's default where it holds the text, as our counting has it, else UCS-2."""
    if measure(text)[0] is Encoding.UCS2:
        return UCS2
    try:
        encoded(text, DEFAULT, terms)
    except UnicodeEncodeError:  # the operator's default is not the GSM alphabet
        return UCS2
    return DEFAULT


def encoded(text: str, coding: int, terms: SmppTerms) -> bytes:
    """A text in a coding. GSM septets go one an octet, as message centres want them."""
    if coding == UCS2:
        return text.encode("utf-16-be", "surrogatepass")
    if terms.alphabet == "gsm":
        return to_septets(text)
    return text.encode("latin-1" if terms.alphabet == "latin1" else "ascii")


def decoded(octets: bytes, coding: int, terms: SmppTerms, header: Header = NO_HEADER) -> str:
    """What octets in a coding say, below a header. What cannot be read becomes U+FFFD: a
    person sees more in half a text than in none."""
    if coding >= 0xF0:  # with a class: 3GPP TS 23.038 clause 4
        coding = 0x04 if coding & 0x04 else DEFAULT
    codec = _CODECS.get(coding)
    if codec is not None:
        return octets.decode(codec, "replace")
    if coding in (0x02, 0x04):
        return octets.decode("utf-8", "replace")
    if terms.alphabet != "gsm" and coding == DEFAULT:
        return octets.decode("latin-1")
    try:
        return header.words(octets)
    except NotGsmError:
        return octets.decode("latin-1")


def heard(pdu: Short, terms: SmppTerms) -> tuple[str, Piece | None]:
    """The words of a deliver_sm, and which piece of a long text they are."""
    octets, header = pdu.octets, NO_HEADER
    if pdu.esm_class & UDHI and octets:
        end = octets[0] + 1
        header, octets = read_header(octets[1:end]), octets[end:]
    return decoded(octets, pdu.coding, terms, header), header.piece or _sar(pdu.tlvs)


def _sar(tlvs: Mapping[int, bytes]) -> Piece | None:
    ref, total = tlvs.get(Tag.SAR_REF, b""), tlvs.get(Tag.SAR_TOTAL, b"")
    place = tlvs.get(Tag.SAR_SEGMENT, b"")
    if len(ref) != 2 or len(total) != 1 or len(place) != 1:
        return None
    return piece_of(ref, place[0], total[0])


# --- times -----------------------------------------------------------------------------------


def validity(not_after: datetime, now: datetime, terms: SmppTerms) -> str:
    """The end of a text's time, as the operator wants it told (7.1.1)."""
    if terms.validity == "none":
        return ""
    if terms.validity == "absolute":
        return f"{not_after.astimezone(UTC):%y%m%d%H%M%S}000+"
    left = max(int((not_after - now).total_seconds()), 1)
    days, rest = divmod(left, 86_400)
    hours, rest = divmod(rest, 3600)
    minutes, seconds = divmod(rest, 60)
    return f"0000{min(days, 30):02}{hours:02}{minutes:02}{seconds:02}000R"


# --- receipts --------------------------------------------------------------------------------

_STATES = {
    2: Fate.DELIVERED,
    3: Fate.EXPIRED,
    4: Fate.FAILED,
    5: Fate.FAILED,
    8: Fate.FAILED,
}
_WORDS = {
    "DELIVRD": Fate.DELIVERED,
    "EXPIRED": Fate.EXPIRED,
    "DELETED": Fate.FAILED,
    "UNDELIV": Fate.FAILED,
    "REJECTD": Fate.FAILED,
}
_ID = re.compile(r"\bid:\s*([^\s]+)", re.IGNORECASE)
_STAT = re.compile(r"\bstat:\s*([A-Za-z]+)", re.IGNORECASE)
_ERR = re.compile(r"\berr:\s*(\w+)", re.IGNORECASE)
_TEXT = re.compile(r"\btext:(.+)", re.IGNORECASE | re.DOTALL)
_DONE = re.compile(r"\bdone[ _]?date:\s*(\d{10}(?:\d\d)?)", re.IGNORECASE)


@dataclass(frozen=True)
class ReceiptSays:
    """What a receipt says: the operator's id, and the fate where it is one that lasts; our own
    mark and how the text begins, where it tells them."""

    part: str
    fate: Fate | None
    at: datetime
    detail: str
    mark: str = ""
    words: str = ""


def is_receipt(pdu: Short) -> bool:
    """Whether a deliver_sm tells of an earlier text."""
    return pdu.esm_class & _KIND_BITS in (RECEIPT, ON_THE_WAY)


def told(pdu: Short, now: datetime) -> ReceiptSays | None:
    """What a receipt says, by its fields or else by its text; None where it names no text."""
    words = pdu.octets.decode("latin-1")
    named = pdu.tlvs.get(Tag.RECEIPTED_MESSAGE_ID, b"").rstrip(b"\0").decode("latin-1")
    part = named or _found(_ID, words)
    if not part:
        return None
    state = pdu.tlvs.get(Tag.MESSAGE_STATE, b"")
    stat = _found(_STAT, words).upper()
    fate = _STATES.get(state[0]) if state else _WORDS.get(stat[:7])
    err = _found(_ERR, words)
    detail = f"{stat or f'state {state.hex()}'}{f' err {err}' if err.strip('0') else ''}"
    return ReceiptSays(
        part,
        fate,
        _done(words, now),
        "" if fate is Fate.DELIVERED else detail,
        pdu.tlvs.get(Tag.USER_REFERENCE, b"").hex(),
        _found(_TEXT, words),
    )


def mark(message_id: str, place: int) -> bytes:
    """A segment's user_message_reference (5.3.2.17): the same at each offer."""
    return (crc32(f"{message_id} {place}".encode()) & 0xFFFF).to_bytes(2, "big")


def _found(pattern: re.Pattern[str], words: str) -> str:
    found = pattern.search(words)
    return found[1] if found else ""


def _done(words: str, now: datetime) -> datetime:
    """When it was done. Receipts name no zone: only a time that is right in UTC is believed."""
    told = _found(_DONE, words)
    try:
        at = datetime.strptime(told, "%y%m%d%H%M%S" if len(told) == 12 else "%y%m%d%H%M")  # noqa: DTZ007 the zone follows
    except ValueError:
        return now
    at = at.replace(tzinfo=UTC)
    return at if now - timedelta(days=3) <= at <= now else now


def part_id(told_id: str, terms: SmppTerms) -> str:
    """An id of the hand-over as receipts will spell it."""
    try:
        if terms.ids == "hex then decimal":
            return str(int(told_id, 16))
        if terms.ids == "decimal then hex":
            return f"{int(told_id):X}"
    except ValueError:
        pass
    return told_id


def receipt_id(told_id: str, terms: SmppTerms) -> str:
    """An id of a receipt, its spelling made one."""
    return told_id.upper() if terms.ids == "decimal then hex" else told_id
