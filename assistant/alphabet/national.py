"""The national shift tables of the GSM alphabet, for reading what phones write.

Source: 3GPP TS 23.038 clauses 6.2.1.2.2 to 6.2.1.2.5 and Annex A.2 (single shift), A.3 (locking
shift). A locking table stands in for the default alphabet; a single one for the extension table
after an ESCAPE. The Indic and Urdu tables fill the same free places, in the order of Unicode:
they are written as runs of code points, a dot for a place that is not used. Where V20.0.0 of
the standard misprints a cell (Kannada locking 0x24, Punjabi single 0x23, Tamil single 0x24,
Telugu single 0x22 and 0x23) the cell that its order asks for stands here.

We never write by them: phones that lack a table show garbage.
"""

from collections.abc import Iterable, Mapping
from itertools import zip_longest

from assistant.alphabet.tables import DEFAULT, ESCAPE, EXTENSION

UNUSED = "\N{REPLACEMENT CHARACTER}"
"""Shown for a place of a locking table that holds no character."""

_TURKISH_LOCKING = {0x04: "€", 0x07: "ı", 0x0B: "Ğ", 0x0C: "ğ", 0x1C: "Ş", 0x1D: "ş"}
_TURKISH_LOCKING |= {0x40: "İ", 0x60: "ç"}
_TURKISH = {0x47: "Ğ", 0x49: "İ", 0x53: "Ş", 0x63: "ç", 0x67: "ğ", 0x69: "ı", 0x73: "ş"}
_SPANISH = {0x09: "ç", 0x41: "Á", 0x49: "Í", 0x4F: "Ó", 0x55: "Ú"}
_SPANISH |= {0x61: "á", 0x69: "í", 0x6F: "ó", 0x75: "ú"}
_PORTUGUESE_LOCKING = {
    **dict(zip(range(0x12, 0x1A), "ªÇÀ∞^\\€Ó", strict=True)),
    **{0x04: "ê", 0x06: "ú", 0x07: "í", 0x08: "ó", 0x09: "ç", 0x0B: "Ô", 0x0C: "ô"},
    **{0x0E: "Á", 0x0F: "á", 0x1A: "|", 0x1C: "Â", 0x1D: "â", 0x1E: "Ê", 0x24: "º"},
    **{0x40: "Í", 0x5B: "Ã", 0x5C: "Õ", 0x5D: "Ú", 0x60: "~", 0x7B: "ã", 0x7C: "õ", 0x7D: "`"},
}
_PORTUGUESE = {
    **{0x05: "ê", 0x09: "ç", 0x0B: "Ô", 0x0C: "ô", 0x0E: "Á", 0x0F: "á", 0x12: "Φ", 0x13: "Γ"},
    **dict(zip(range(0x15, 0x1A), "ΩΠΨΣΘ", strict=True)),
    **{0x1F: "Ê", 0x41: "À", 0x49: "Í", 0x4F: "Ó", 0x55: "Ú", 0x5B: "Ã", 0x5C: "Õ", 0x61: "Â"},
    **{0x69: "í", 0x6F: "ó", 0x75: "ú", 0x7B: "ã", 0x7C: "õ", 0x7F: "â"},
}

_KEPT = {ord(ch): ch for ch in "\n\r !,.0123456789:;?abcdefghijklmnopqrstuvwxyz"}
_KEPT |= {0x28: ")", 0x29: "("}  # the standard has them so
_FREE = tuple(code for code in range(0x80) if code not in _KEPT and code != ord(ESCAPE))
_RUNS = {
    4: "0981-0983 0985-098C .. 098F-0990 .. 0993-09A8 . 09AA-09B0 . 09B2 ... 09B6-09B9"
    " 09BC-09C4 .. 09C7-09C8 .. 09CB-09CE 09D7 09DC-09DD 09F0-09F1",
    5: "0A81-0A83 0A85-0A8D . 0A8F-0A91 . 0A93-0AA8 . 0AAA-0AB0 . 0AB2-0AB3 . 0AB5-0AB9"
    " 0ABC-0AC5 . 0AC7-0AC9 . 0ACB-0ACD 0AD0 0AE0-0AE3 0AF1",
    6: "0901-0903 0905-0939 093C-094D 0950 0972 097B-097C 097E-097F",
    7: ". 0C82-0C83 0C85-0C8C . 0C8E-0C90 . 0C92-0CA8 . 0CAA-0CB3 . 0CB5-0CB9 0CBC-0CC4"
    " . 0CC6-0CC8 . 0CCA-0CCD 0CD5-0CD6 0CE0-0CE3",
    8: ". 0D02-0D03 0D05-0D0C . 0D0E-0D10 . 0D12-0D28 . 0D2A-0D39 . 0D3D-0D44 . 0D46-0D48"
    " . 0D4A-0D4D 0D57 0D60-0D63 0D79",
    9: "0B01-0B03 0B05-0B0C .. 0B0F-0B10 .. 0B13-0B28 . 0B2A-0B30 . 0B32-0B33 . 0B35-0B39"
    " 0B3C-0B44 .. 0B47-0B48 .. 0B4B-0B4D 0B56-0B57 0B60-0B63",
    10: "0A01-0A03 0A05-0A0A .... 0A0F-0A10 .. 0A13-0A28 . 0A2A-0A30 . 0A32-0A33 ."
    " 0A35-0A36 . 0A38-0A39 0A3C . 0A3E-0A42 .... 0A47-0A48 .. 0A4B-0A4D 0A51 0A70-0A74",
    11: ". 0B82-0B83 0B85-0B8A ... 0B8E-0B90 . 0B92-0B95 ... 0B99-0B9A . 0B9C . 0B9E-0B9F"
    " ... 0BA3-0BA4 ... 0BA8-0BAA ... 0BAE-0BB9 .. 0BBE-0BC2 ... 0BC6-0BC8 . 0BCA-0BCD"
    " 0BD0 0BD7 0BF0-0BF2 0BF9",
    12: "0C01-0C03 0C05-0C0C . 0C0E-0C10 . 0C12-0C28 . 0C2A-0C33 . 0C35-0C39 . 0C3D-0C44"
    " . 0C46-0C48 . 0C4A-0C4D 0C55-0C56 0C60-0C63",
    13: "0627 0622 0628 067B 0680 067E 06A6 062A 06C2 067F 0679 067D 067A 067C 062B-062C"
    " 0681 0684 0683 0685-0687 062D-062F 068C 0688-068A 068F 068D 0630-0631 0691 0693 0699"
    " 0632 0696 0698 069A 0633-0639 0641-0642 06A9-06AB 06AF 06B3 06B1 0644-0646 06BA-06BC"
    " 0648 06C4 06D5 06C1 06BE 0621 06CC 06D0 06D2 064D 0650 064F 0657 0654-0655 0651 0653"
    " 0656 0670",
}

_SHARED = {
    **dict(enumerate("@£$¥¿\"¤%&'\f*+")),
    **dict(zip(range(0x0E, 0x19), "-/<=>¡^¡_#*", strict=True)),
    **{0x28: "{", 0x29: "}", 0x2F: "\\", 0x3C: "[", 0x3D: "~", 0x3E: "]", 0x40: "|"},
    **{code: chr(code) for code in range(0x41, 0x5B)},
    0x65: "€",
}
_OPEN = tuple(code for code in range(0x19, 0x40) if code not in _SHARED and code != ord(ESCAPE))
_SINGLE_RUNS = {
    4: "09E6-09EF 09DF-09E3 09F2-09FA",
    5: "0964-0965 0AE6-0AEF",
    6: "0964-096F 0951-0954 0958-0963 0970-0971",
    7: "0964-0965 0CE6-0CEF 0CDE 0CF1-0CF2",
    8: "0964-0965 0D66-0D75 0D7A-0D7F",
    9: "0964-0965 0B66-0B6F 0B5C-0B5D 0B5F 0B70-0B71",
    10: "0964-0965 0A66-0A6F 0A59-0A5C 0A5E 0A75",
    11: "0964-0965 0BE6-0BEF 0BF3-0BF8 0BFA",
    12: ".. 0C66-0C6F 0C58-0C59 0C78-0C7F",
    13: "0600-0601 06F0-06F9 060C-0614 061B 061F 0640 0652 0658 066B-066C 0672-0673 06CD 06D4",
}


def _characters(runs: str) -> Iterable[str]:
    for run in runs.split():
        if run.startswith("."):
            yield from UNUSED * len(run)
            continue
        first, _, last = run.partition("-")
        yield from map(chr, range(int(first, 16), int(last or first, 16) + 1))


def _indic(runs: str) -> str:
    filled = dict(zip_longest(_FREE, _characters(runs), fillvalue=UNUSED)) | _KEPT
    return "".join(filled.get(code, ESCAPE) for code in range(0x80))


def _changed(cells: Mapping[int, str]) -> str:
    return "".join(cells.get(code, found) for code, found in enumerate(DEFAULT))


def _single(runs: str) -> Mapping[int, str]:
    placed = zip(_OPEN, _characters(runs), strict=False)
    return _SHARED | {code: found for code, found in placed if found != UNUSED}


LOCKING: Mapping[int, str] = {
    1: _changed(_TURKISH_LOCKING),
    3: _changed(_PORTUGUESE_LOCKING),
    **{language: _indic(runs) for language, runs in _RUNS.items()},
}
"""The character of each code by the language's number (6.2.1.2.4); Spanish has none."""

SINGLE: Mapping[int, Mapping[int, str]] = {
    1: EXTENSION | _TURKISH,
    2: EXTENSION | _SPANISH,
    3: EXTENSION | _PORTUGUESE,
    **{language: _single(runs) for language, runs in _SINGLE_RUNS.items()},
}
"""The character of each code after an ESCAPE; codes not listed show that of the main table."""
