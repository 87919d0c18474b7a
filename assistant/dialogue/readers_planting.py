"""Readers for spacing, seedlings a hill, the weight of seed and the share for gaps."""

import re

from assistant.agronomy.constants_work import SCALE_STEP_G
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import LIMITS
from assistant.agronomy.lot.varieties import find_variety, variety_key
from assistant.agronomy.lot.weighing import GrainWeighing
from assistant.agronomy.seed import G_PER_KG
from assistant.dialogue.questions import Question
from assistant.dialogue.values import Known, Session
from assistant.reading import Outcome, read_count

_NUMBER = re.compile(r"\d{1,5}(?:[.,]\d{1,2})?")
_TENTHS = re.compile(r"\d[.,]\d")
FINE_SCALE_G = 0.1
MOST_FOR_GAPS = 20  # of 100


def _numbers(text: str) -> list[float]:
    return [float(found.replace(",", ".")) for found in _NUMBER.findall(text)]


def spacing_of(text: str, question: Question, session: Session, known: Known) -> str | None:
    """Rows and hills [cm] as "30x14"; one number is a square."""
    found = _numbers(text)
    if len(found) == 1:
        found *= 2
    if len(found) != 2:
        return None
    names = ("spacing_row_cm", "spacing_hill_cm")
    fits = all(
        LIMITS[name].low <= cm <= LIMITS[name].high
        for name, cm in zip(names, found, strict=True)
    )
    return f"{found[0]:g}x{found[1]:g}" if fits else None


def hill_of(text: str, question: Question, session: Session, known: Known) -> int | None:
    """Whole seedlings a hill."""
    return _whole(
        text, known, LIMITS["seedlings_per_hill"].low, LIMITS["seedlings_per_hill"].high
    )


def gaps_of(text: str, question: Question, session: Session, known: Known) -> int | None:
    """Seedlings of 100 that are raised over and above."""
    return _whole(text.replace("%", ""), known, 0, MOST_FOR_GAPS)


def _whole(text: str, known: Known, low: float, high: float) -> int | None:
    reading = read_count(text, known.lexicon)
    value = reading.value if reading.outcome is Outcome.UNDERSTOOD else None
    if value is None or value != int(value) or not low <= value <= high:
        return None
    return int(value)


def grains_of(text: str, question: Question, session: Session, known: Known) -> float | None:
    """Weight of 1000 grains [g]: of a variety, as weighed, or of a count and a weight."""
    variety = find_variety(text)
    weight = variety.grain_weight_g if variety else _own_weight(text, known) or _weighed(text)
    limits = LIMITS["grain_weight_g"]
    if weight is None or not limits.low <= weight <= limits.high:
        return None
    return round(weight, 1)


_KG = frozenset(
    {"kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes",
     "quilo", "quilos", "ki", "किलो", "किग्रा", "কেজি", "কিলো"}
)  # fmt: skip
_G = frozenset(
    {"g", "gm", "gms", "gr", "gram", "grams", "gramme", "grammes", "grama", "gramas", "gramu",
     "ग्राम", "গ্রাম"}
)  # fmt: skip
_T = frozenset(
    {"t", "ton", "tons", "tonne", "tonnes", "tonelada", "toneladas", "tani", "tonela", "tấn",
     "tan", "टन", "টন"}
)  # fmt: skip
KG_PER_T = 1000
_BAGS_OF = 2  # numbers: how many, and of how much
BAG_KG = (20, 120)  # that a sack may hold; common practice, no source
_THOUSANDS = re.compile(r"(?<=\d)[,. ](?=\d{3}(?!\d))")  # 1,600 and 1 600
FAR_OFF = 5.0  # times as much seed as was planned, or as little: rather a slip than a fact


def seed_kg_of(text: str, question: Question, session: Session, known: Known) -> float | None:
    """Dry seed [kg] in kilograms or grams; not bags or tins, nor what is far from the plan."""
    found = _numbers(text)
    planned = float(str(session.answers["seed"]))
    if len(found) != 1:
        return None
    words = [word.strip(".,!").casefold() for word in re.split(r"[\d\s]+", text)]
    units = [word for word in words if word]
    in_g = any(word in _G for word in units)
    if units and not in_g and not any(word in _KG for word in units):
        return None
    kg = found[0] / G_PER_KG if in_g else found[0]
    return kg if planned / FAR_OFF <= kg <= planned * FAR_OFF else None


def kilograms_of(text: str) -> float | None:
    """The one weight of a text [kg], in kilograms or tonnes; bags are of any size, but where
    it is told: "22 bags of 50 kg"."""
    found = _numbers(_THOUSANDS.sub("", text))
    words = {word.strip(".,!").casefold() for word in re.split(r"[\d\s]+", text)}
    if len(found) == _BAGS_OF and words & _KG and _is_bag(found[1]):
        return found[0] * found[1]
    if len(found) != 1 or not words & (_KG | _T):
        return None
    return found[0] if words & _KG else found[0] * KG_PER_T


def _is_bag(kg: float) -> bool:
    low, high = BAG_KG
    return low <= kg <= high


def _own_weight(text: str, known: Known) -> float | None:
    """The weight that the programme wrote down of a variety of this name."""
    key = variety_key(text)
    found = (v for v in known.varieties if key in (variety_key(v.name), variety_key(v.code)))
    return next((each.grain_weight_g for each in found), None)


def _weighed(text: str) -> float | None:
    found = _numbers(text)
    if len(found) == 1:
        return found[0]
    weighing = weighing_of(text)
    return weighing.grain_weight_g if weighing else None


def weighing_of(text: str) -> GrainWeighing | None:
    """A count and a weight, as "300 grains 8 g"; a scale that shows tenths is a finer one."""
    found = _numbers(text)
    if len(found) != 2:
        return None
    fine = _TENTHS.search(text)
    step_g = FINE_SCALE_G if fine else SCALE_STEP_G.value
    try:
        return GrainWeighing(int(max(found)), min(found), step_g)
    except AgronomyError:
        return None
