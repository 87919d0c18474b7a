"""10,000 texts in nine languages against codecs of other hands: alphabet, octets, segments.

`python -m tests.reference.gsm_codecs [COUNT]`; the tests take a few hundred of them. Texts are
drawn by one seed from all that the assistant says in each language, joined and cut to lengths
around the edges of segments, with signs that are told apart by few: brackets, euro, emoji.

The others: smsutil 1.1.3 (PyPI: alphabet, and what stands in each segment), smpplib 2.2.4
(PyPI: the octets of each; where it cuts through an escape or surrogate pair, which TS 23.040
9.2.3.24.1 forbids, all of them together), Encode of Perl (gsm0338: septets). gsmcodecs 1.0.0
(PyPI), where installed, encodes by the national tables what `from_septets` is to read; its
known wrong cells are left out (`gsm_national.tsv` names the source of ours).
"""

import random
import shutil
import subprocess
import sys
from collections.abc import Iterator, Sequence
from importlib import import_module

import smsutil
from babel.messages.pofile import read_po
from smpplib import gsm

from assistant.alphabet import Encoding, cost, from_septets, measure, split, to_septets
from assistant.alphabet.national import LOCKING, SINGLE, UNUSED
from assistant.people import LANGUAGES
from assistant.wiring.catalogues import SOURCE, locales_folder

SEED = 20261130
EDGES = (60, 67, 69, 70, 71, 133, 134, 135, 152, 153, 159, 160, 161, 305, 306, 307, 459, 460)
SIGNS = ("€", "[1]", "{a}", "~", "|", "\\", "^", "🌾", "👍", "é", "ñ", "@", "\n", "_", "Ω")
PERL = (
    "use Encode; binmode STDIN, ':utf8'; while (<STDIN>) { chomp; s/\\x{1}/\\n/g; "
    "print unpack('H*', encode('gsm0338', $_)), \"\\n\" }"
)
# gsmcodecs 1.0.0: a comma of the Indic and Urdu locking tables is an apostrophe there, DDA of
# Kannada is written as PA, and it has no euro for Telugu.
GSMCODECS_WRONG = frozenset(",'") | {"\u0ca1", "\u0caa"}


def languages() -> tuple[str, ...]:
    """Those that the assistant speaks."""
    there = {path.parent.parent.name for path in locales_folder().glob("*/*/messages.po")}
    return tuple(code for code in LANGUAGES if code in there | {SOURCE})


def sentences(language: str) -> list[str]:
    """All that is said in a language."""
    name = language if language != SOURCE else "sw"
    with (locales_folder() / name / "LC_MESSAGES" / "messages.po").open("rb") as file:
        found = [each for each in read_po(file) if each.id]
    said = [each.id if language == SOURCE else each.string for each in found]
    return [each for each in said if isinstance(each, str) and each]


def texts(count: int) -> Iterator[str]:
    """So many texts, the languages in turn; by one seed."""
    chance = random.Random(SEED)
    said = {language: sentences(language) for language in languages()}
    for number in range(count):
        words = said[languages()[number % len(said)]]
        text = ""
        while len(text) < 480 and chance.random() < 0.8:
            text += chance.choice(words) + " "
        if chance.random() < 0.5:
            text = text[: chance.choice(EDGES) + chance.randrange(-2, 3)]
        for _ in range(chance.randrange(3)):
            place = chance.randrange(len(text) + 1)
            text = text[:place] + chance.choice(SIGNS) + text[place:]
        yield text or "1"


def differences(wanted: Sequence[str]) -> Iterator[str]:
    """What the others say otherwise."""
    for text in wanted:
        yield from _by_smsutil(text)
        yield from _by_smpplib(text)
    yield from _by_perl([text for text in wanted if measure(text)[0] is Encoding.GSM7])


def _by_smsutil(text: str) -> Iterator[str]:
    ours, theirs = cost(text), smsutil.split(text)
    is_gsm = theirs.encoding == "gsm0338"
    if (ours.encoding is Encoding.GSM7) != is_gsm or ours.segments != len(theirs.parts):
        yield f"smsutil: {theirs.encoding}, {len(theirs.parts)} segments; ours {ours}: {text!r}"
    elif [part.content for part in theirs.parts] != list(split(text)):
        yield f"smsutil cuts otherwise: {text!r}"


def _by_smpplib(text: str) -> Iterator[str]:
    parts, coding, _ = gsm.make_parts(text)
    is_gsm = coding == 0
    if is_gsm != (cost(text).encoding is Encoding.GSM7):
        yield f"smpplib: coding {coding}: {text!r}"
        return
    ours = [to_septets(each) if is_gsm else each.encode("utf-16-be") for each in split(text)]
    theirs = [part[6:] if len(parts) > 1 else part for part in parts]
    same = theirs == ours or (b"".join(theirs) == b"".join(ours) and any(map(_cut, theirs)))
    if not same:
        yield f"smpplib: {len(parts)} segments, ours {len(ours)}: {text!r}"


def _cut(part: bytes) -> bool:
    """Whether a segment ends within a pair."""
    return part.endswith(b"\x1b") or (len(part) > 1 and 0xD8 <= part[-2] <= 0xDB)


def _by_perl(wanted: Sequence[str]) -> Iterator[str]:
    perl = shutil.which("perl")
    if perl is None:
        yield "perl is not installed"
        return
    lines = "".join(text.replace("\n", "\x01") + "\n" for text in wanted)
    done = subprocess.run(
        [perl, "-e", PERL], input=lines.encode(), capture_output=True, check=True
    )
    for text, said in zip(wanted, done.stdout.decode().splitlines(), strict=True):
        if bytes.fromhex(said) != to_septets(text):
            yield f"Perl's Encode: {said}, ours {to_septets(text).hex()}: {text!r}"


def national(count: int) -> Iterator[str]:
    """What gsmcodecs writes by national tables and we read otherwise; each pair of tables of a
    language, alone and together."""
    chance = random.Random(SEED)
    for language in sorted(SINGLE):
        for locking in {0, language} & {0, *LOCKING}:
            single = set(SINGLE[language].values())
            alphabet = sorted((single | set(LOCKING.get(locking, "a b"))) - {UNUSED, "\x1b"})
            if locking > 3:
                alphabet = [each for each in alphabet if each not in GSMCODECS_WRONG]
            if language == 12:
                alphabet.remove("€")
            for _ in range(count):
                text = "".join(chance.choices(alphabet, k=20))
                codes = text.encode(f"gsm23.038-{locking}-{language}")
                read = from_septets(codes, locking=locking, single=language)
                if read != text:
                    yield f"gsmcodecs, tables {locking} and {language}: {text!r}, read {read!r}"


def main() -> None:
    """Prints what differs, and how many texts were compared."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    wanted = list(texts(count))
    wide = sum(measure(text)[0] is Encoding.UCS2 for text in wanted)
    found = list(differences(wanted))
    sizes = sorted({cost(text).segments for text in wanted})
    said = f"{count:,} texts in {len(languages())} languages, {wide:,} of them UCS-2, "
    print(f"{said}{sizes[0]} to {sizes[-1]} segments: {len(found)} differ")  # noqa: T201
    try:
        import_module("gsmcodecs")  # it makes its codecs known by itself
    except ImportError:
        print("gsmcodecs is not installed: pip install gsmcodecs==1.0.0")
    else:
        odd = list(national(100))
        found += odd
        print(f"national tables against gsmcodecs: {len(odd)} differ")
    print("\n".join(found[:20]))
    raise SystemExit(bool(found))


if __name__ == "__main__":
    main()
