"""Counting and encoding 1,000 mixed texts. Floor: Python's UTF-16 codec and str.translate."""

from collections.abc import Callable, Iterator
from functools import partial

from assistant.alphabet import cost, plain, septets, to_septets
from tests.benchmarks.databases import Kind
from tests.benchmarks.harness import Result, Side, compare

# One a script and kind; repeated and shifted they make texts of one to five segments.
_KINDS = (
    "Nursery A, day 5: the shoots are up? Uncover and flood, 1 cm of water. 1 Done 2 Not yet ",
    "Kitalu A, siku ya 5: miche imeota? Funua na weka maji, sentimita 1. 1 Tayari 2 Bado ",
    "Pépinière A, jour 5 : découvrez et inondez, 1 cm d'eau. 1 Fait 2 Pas encore ",
    "Viveiro A, dia 5: não descubra hoje, há aviso de chuva. 1 Coberto 2 Ajuda ",
    "Vườn mạ A, ngày 5: bỏ lớp phủ và cho nước vào, 1 cm. 1 Xong 2 Chưa ",
    "नर्सरी A, दिन 5: ढकना हटाएं और 1 सेमी पानी भरें। 1 हो गया 2 अभी नहीं ",
    "বীজতলা A, দিন ৫: ঢাকনা সরান, ১ সেমি পানি দিন। ১ হয়েছে ২ এখনও না ",
    "Persemaian A, hari 5: buka penutup, genangi 1 cm. [1] Sudah {2} Belum ~ 0.4 ha | 85% ",
    "40 pails \N{EN DASH} not 45 \N{EM DASH} at \N{LEFT DOUBLE QUOTATION MARK}dawn\N{PRIME} ",
    "ok \N{THUMBS UP SIGN} \N{EAR OF RICE} done \N{SMILING FACE WITH SMILING EYES} ",
)
TEXTS = tuple(
    (_KINDS[number % len(_KINDS)] * 6)[: 20 + 37 * number % 500] for number in range(1_000)
)
_SAME = {point: point for point in range(0x400)}


def _encode(text: str) -> bytes:
    return to_septets(text) if septets(text) is not None else text.encode("utf-16-be")


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Counts, encodes and makes plain the same texts."""
    utf16 = Side("str.encode('utf-16-be')", lambda: [t.encode("utf-16-be") for t in TEXTS])
    translate = Side("str.translate", lambda: [text.translate(_SAME) for text in TEXTS])
    for what, work, floor in (
        ("alphabet: segments of a text", cost, utf16),
        ("alphabet: text to octets", _encode, utf16),
        ("alphabet: look-alikes made plain", plain, translate),
    ):
        ours = Side(what, partial(_each, work))
        yield compare(what, len(TEXTS), "texts", ours, floor, runs=runs)


def _each(work: Callable[[str], object]) -> None:
    for text in TEXTS:
        work(text)
