"""What fills the slots when a text is measured: a usual case, and the widest there is.

The widest plan is one of a field of 40 ha, from where the size is asked back, in pails of one
litre; dates are the widest of the language. A village may have 20 letters, a farmer's own
words 100 (longer ones are cut).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, time, timedelta
from functools import lru_cache

from babel.dates import format_date

from assistant.alphabet import Encoding, measure, plain
from assistant.wording import messages_amounts as amounts
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_officer as o
from assistant.wording import messages_practice as p
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.figures import FIGURES
from assistant.wording.message import Country, Listed, Message, Slot
from assistant.wording.render import Catalogue, day, slot_text, spoken_hour
from assistant.wording.texts import Declared

_DAY = date(2026, 6, 10)
_YEARS = 7  # so that every day of the month meets every day of the week
_VILLAGE = "Mtoni kwa Bibi Asha "  # 20 letters
_POST = "Demo health post Mto Mwanga +447700900113"  # 41 letters
_NAME = "Bondeni Juu "  # 12 letters, the longest name of a nursery


@dataclass(frozen=True)
class Values:
    """What a slot holds in a usual text, and what else it may hold that could be wider."""

    usual: Slot
    wide: tuple[Slot, ...] = ()


def _texts(module: object, start: str) -> tuple[Slot, ...]:
    """Texts that stand in a slot of another: all of a family."""
    found = [text for name, text in vars(module).items() if name.startswith(start)]
    return tuple(text() for text in found if isinstance(text, Message))


_DATE = Values(_DAY)
_HOUR = Values(time(14, 0))
_COUNT = Values(12, (1000,))
_WATER = Values(amounts.PAILS(n=40), (amounts.PAILS(n=10_000), amounts.HALF_PAILS(amount=19.5)))
_SEED = Values(amounts.KILOGRAMS(amount=9.1), (amounts.KILOGRAMS(amount=1279),))
_WIDE_AREA = "12,345.5 hectares"
_SLOTS: Mapping[str, Values] = {
    "answer": Values("w" * 100),
    "programme": Values("Lindara valley rice programme"),
    "about": Values(o.ABOUT_YELLOW(), _texts(o, "ABOUT_")),
    "amount": Values(600, (99.5,)),
    "area": Values("0.4 ha", (_WIDE_AREA,)),
    "asked": _COUNT,
    "batches": Values(160, (159_600,)),
    "bed": Values(40, (1100,)),
    "calls": _COUNT,
    "code": Values("48213077"),
    "cans": _WATER,
    "count": Values(3, (10_000_000,)),
    "currency": Values("KES"),
    "kg": Values(12.5, (1_300,)),
    "labour": Values(1800, (450_000,)),
    "country": Values(Country("PH"), (Country("BD"), Country("IN"))),
    "covered": _COUNT,
    "danger": Values(dangers.N_COLD(), _texts(dangers, "N_")),
    "date": _DATE,
    "chosen": _DATE,
    "done_on": _DATE,
    "day": Values(5, (120,)),
    "early": _DATE,
    "farmers": _COUNT,
    "late": _DATE,
    "name": Values("Amina Juma", ("Mwanahamisi Ramadhan Juma wa Mtoni",)),
    "needed": Values(50, (1000,)),
    "officer": Values("Asha Mwema", ("Mwanahamisi Ramadhan",)),
    "salt": Values(amounts.GRAMS(amount=805), (amounts.KILOGRAMS(amount=4.05),)),
    "shoots": Values(23, (1000,)),
    "sowing": _DATE,
    "days": Values(24, (180,)),
    "degrees": Values(24, (22.5,)),
    "felt": Values(17, (22.5,)),
    "depth": Values(2.5),
    "delivered": _COUNT,
    "digit": Values(1),
    "emergency": Values("+447700900112", ("demo +44 7700 900112",)),
    "health_post": Values("Kijani clinic, +447700900113", (_POST,)),
    "person": Values("Neema +447700900001", (_POST,)),
    "vet": Values("Asha, +447700900114", (_POST,)),
    "digits": Values("0101"),
    "again": _DATE,
    "latest": _DATE,
    "ripe": _DATE,
    "share": Values(67, (100,)),
    "drain": _DATE,
    "before": Values(3),
    "drained": _DATE,
    "dry": _SEED,
    "every": Values(2),
    "example": Values("RAIN", ("CLEAR", "COUNT")),
    "few": Values(3, (2.5,)),
    "first": _DATE,
    "from_time": _HOUR,
    "ground": Values(57, (1600,)),
    "gaps": Values(5, (20,)),
    "good": Values(80),
    "grams": Values(25, (25.5,)),
    "help": _COUNT,
    "high": Values(30.5),
    "hill": Values(20, (22.5,)),
    "hills": Values(100_000, (10_000_000,)),
    "hull": Values(16, (15_960,)),
    "label": Values("A", (_NAME,)),
    "labels": Values("A", (f"{_NAME}, {_NAME}",)),
    "last": _DATE,
    "litres": Values(10, (22.7,)),
    "least": Values(60),
    "low": Values(20.5),
    "hours": Values(24),
    "lie": Values(24),
    "many": Values(4, (3.6,)),
    "manure": Values(32, (31_920,)),
    "mat": Values(7),
    "heaps": Values(
        amounts.HEAPS_MAT(n=267, grams=42), (amounts.HEAPS_MAT(n=26_600, grams=42.5),)
    ),
    "plants": Values(15, (120,)),
    "mats": Values(amounts.MATS(n=267), (amounts.MATS(n=26_600),)),
    "minutes": Values(30),
    "named": Values("Amina (A), Baraka (B)"),
    "moist": Values(2),
    "string": Values(10),
    "hands": Values(4),
    "mix": Values(1600, (159_600,)),
    "most": Values(2, (2.5,)),
    "n": Values(3, (1, 2, 99)),
    "per_ha": Values(4000, (18_000,)),
    "tin": Values(0.4, (22.75,)),
    "tins": Values(1, (10,)),
    "old": Values("A", (_NAME,)),
    "own": Values(58, (100,)),
    "parts": Values(
        Listed((p.PART_SOIL(amount=7), p.PART_MANURE(amount=2), p.PART_HULL(amount=1)))
    ),
    "pails": _WATER,
    "percent": Values(85, (99.9,)),
    "phone": Values("+447700900101", ("+99900" + "1" * 10,)),
    "phones": _COUNT,
    "practice": Values("wet bed", ("kalat na punlaan",)),
    "rate": Values(22.7),
    "reading": Values("0.4 ha", (_WIDE_AREA,)),
    "reason": Values(
        o.CALLED(about=o.ABOUT_YELLOW()),
        (
            o.OPEN_TASK(what=t.N_SOAK()),
            o.CALLED_SAYING(about=o.ABOUT_YELLOW(), words="w" * 24),
        ),
    ),
    "row": Values(20, (22.5,)),
    "seed": _SEED,
    "second": Values(60, (15_960,)),
    "seedlings": Values(2),
    "seeds": Values(100, (1000,)),
    "sheet": Values(44, (1100,)),
    "soak": _DATE,
    "soil": Values(112, (111_720, 17.5)),
    "soon": _COUNT,
    "sow": _DATE,
    "spacing": Values("20x20", ("22.5x22.5",)),
    "speaks": Values("Kiswahili", ("Bahasa Indonesia",)),
    "spread": Values(12, (100,)),
    "sprouted": Values(amounts.KILOGRAMS(amount=11.5), (amounts.KILOGRAMS(amount=1599),)),
    "fill_by": _DATE,
    "tasks": Values(
        Listed((t.N_COLLECT(), t.N_MIX(), t.N_FIELD_PLOUGH())),
    ),
    "thick": Values(4, (2.5,)),
    "length": Values(50, (58,)),
    "width": Values(30, (28,)),
    "thousand": Values(25, (22.5,)),
    "time": _HOUR,
    "to_time": _HOUR,
    "transplant": _DATE,
    "total": Values(6197, (1_250_000,)),
    "typed": Values("0.4 ha", (_WIDE_AREA,)),
    "uncover": _DATE,
    "until": _DATE,
    "usual": Values(65),
    "urea": Values(amounts.GRAMS(amount=600), (amounts.KILOGRAMS(amount=59.5),)),
    "village": Values("Mtoni", (_VILLAGE,)),
    "villages": Values("Mtoni, Bondeni", (", ".join([_VILLAGE] * 3),)),
    "water": Values(120, (11_970,)),
    "weight": Values(7.5),
    "heavy": Values(48),
    "what": Values(t.N_SOAK(), _texts(t, "N_")),
    "word": Values("COLD", ("SECHERESSE",)),
    "words": Values("Panya wanakula mbegu", ("w" * 100,)),
    "young": _COUNT,
    "pail_low": Values(11, (25,)),
    "pail_high": Values(13, (29.5,)),
    **{name: Values(figure) for name, figure in FIGURES.items()},
}
_CRY = {"words": Values("Panya wanakula mbegu", ("w" * 300,))}
_ALERT = {  # two villages and a count; the service's word for a danger, cut
    "villages": Values("Mtoni", (f"{_VILLAGE}, {_VILLAGE} +12",)),
    "words": Values("Heavy rain", ("w" * 60,)),
}
# The same name means something else in these texts.
_OF_TEXT: Mapping[str, Mapping[str, Values]] = {
    "planting.COSTS": {"seed": Values(1357, (450_000,))},
    "answers.PRICES": {
        "urea": Values(150, (12_500,)),
        "seed": Values(150, (12_500,)),
        "sheet": Values(150, (12_500,)),
    },
    "answers.SOAK_LONG": {"least": Values(2)},
    "answers.ROOTS": {"least": Values(2)},
    "answers.PEOPLE": {"low": Values(20), "n": Values(4)},
    "officer.ALERT_DRAFTED": _ALERT,
    "officer.ALERT_SENT": _ALERT,
    "officer.ALERT_OVER": _ALERT,
    "officer.ALERT_CLEARED": _ALERT,
    "alarms.HURT": _CRY,
    "alarms.HURT_UNSURE": _CRY,
    "alarms.PRIVATE": _CRY,
    "alarms.BED": _CRY,
    "care.FILL_NOTED": {
        "mats": Values(amounts.MORE_MATS(n=267), (amounts.MORE_MATS(n=26_600),))
    },
    "web_running.HELD": {"why": Values("the line sends twice")},
    "result.AGAIN_LEFT": {"mats": Values(267, (26_600,))},
    "result.ASK_SEED_USED": {"seed": Values(9.1, (1279,))},
    "result.SEED_USED_KEPT": {"seed": Values(9.1, (1279,))},
    "seed.MIXED": {"first": Values(207, (15_960,))},
    "care.SPARE": {"least": Values(5), "most": Values(10)},
    "practice.SPARE": {"least": Values(5), "most": Values(10)},
    "care.NEXT_LEAF_AT": {"day": _DATE},
    "talk.NUMBERED": {"label": Values(m.MENU_TODAY(), _texts(m, "S_") + _texts(m, "MENU_"))},
    "plan.HILLS": {"seedlings": Values(200_000)},
    "delay.AGAIN_LOST": {"mats": Values(267, (26_600,))},
    "delay.LOST_NOTED": {"mats": Values(267, (26_600,)), "lost": Values(20, (26_600,))},
    "story.LOST": {"mats": Values(20, (26_600,))},
    "story.PUT_OFF_WHY": {"why": Values("Field not ready")},
    "plan.WAS": {"row": Values("10 Jun: -")},
}


def undeclared(text: Declared) -> list[str]:
    """The slots of a text for phones whose values nobody has declared."""
    if text.printed:
        return []
    own = _OF_TEXT.get(text.place, {})
    return sorted(slot for slot in text.slots if slot not in own and slot not in _SLOTS)


def _values(text: Declared, slot: str) -> Values:
    return _OF_TEXT.get(text.place, {}).get(slot) or _SLOTS[slot]


def usual(text: Declared, slot: str) -> Slot:
    """A slot's value in a usual text; on paper its name will do where none is declared."""
    if text.printed and slot not in _OF_TEXT.get(text.place, {}) and slot not in _SLOTS:
        return "{" + slot + "}"
    return _values(text, slot).usual


def widest(text: Declared, slot: str, catalogue: Catalogue) -> str:
    """The words of a slot that cost most in this language."""
    found = _values(text, slot)
    candidates = [slot_text(value, catalogue) for value in (found.usual, *found.wide)]
    if isinstance(found.usual, date):
        candidates.append(widest_day(catalogue.language))
    if isinstance(found.usual, time) and text.message.spoken:
        candidates.append(_widest_hour(catalogue.language))
    if slot == "reading" and text.message is not m.ABSURD_AREA:
        candidates.append(_widest_long_day(catalogue.language))
    return max(map(plain, candidates), key=_price)


def _price(words: str) -> tuple[bool, int]:
    encoding, units = measure(words)
    return encoding is Encoding.UCS2, units


@lru_cache(maxsize=32)
def widest_day(language: str) -> str:
    """The date that takes most room in a text."""
    days = (date(2026, 1, 1) + timedelta(days=n) for n in range(_YEARS * 366))
    return max((plain(day(each, language)) for each in days), key=_price)


@lru_cache(maxsize=32)
def _widest_hour(language: str) -> str:
    """The hour, full or half, that takes most room where it is said as people say it."""
    hours = (time(hour, minute) for hour in range(24) for minute in (0, 30))
    return max((plain(spoken_hour(each, language)) for each in hours), key=_price)


@lru_cache(maxsize=32)
def _widest_long_day(language: str) -> str:
    """The same for a date that is read back in full."""
    days = (date(2026, 1, 1) + timedelta(days=n) for n in range(366))
    return max((plain(format_date(d, "full", locale=language)) for d in days), key=_price)
