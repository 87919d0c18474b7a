"""How each language writes numbers, days and hours in a text: one row a language.

What is the same as in the data of CLDR is not said here. The hours are as people say them, a
speaker of each language has yet to sign them; pages keep to 24 hours.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

PLAIN_DIGITS = "0123456789"


@dataclass(frozen=True)
class HourWords:
    """How a time of day is said.

    whole, part_hour:  with {hour}, {minute} and {part}, for full hours and others
    parts:    from which hour on [0-23] the day bears which name
    first:    the hour of the day that is called twelve where hours are counted by twelve; None
              where they are counted by 24
    one:      the same two where the hour that is said is one
    names:    full hours that have a name of their own
    """

    whole: str
    part_hour: str
    parts: tuple[tuple[int, str], ...] = ()
    first: int | None = None
    one: tuple[str, str] | None = None
    names: tuple[tuple[int, str], ...] = ()


@dataclass(frozen=True)
class LanguageRow:
    """One language.

    hours: how a time of day is said
    digits: the ten digits that are written
    day:   CLDR pattern of a date in a text
    weekdays: names of the days, Monday first, where CLDR's short ones are other words too
    """

    hours: HourWords
    digits: str = PLAIN_DIGITS
    day: str = "EEE d MMM"
    weekdays: tuple[str, ...] = ()


LANGUAGE_ROWS: Mapping[str, LanguageRow] = MappingProxyType(
    {
        "en": LanguageRow(
            HourWords(
                "{hour} {part}",
                "{hour}:{minute} {part}",
                parts=((0, "am"), (12, "pm")),
                first=0,
                names=((0, "midnight"), (12, "noon")),
            )
        ),
        # Swahili counts the hours from sunrise: saa 1 is seven in the morning.
        "sw": LanguageRow(
            HourWords(
                "saa {hour} {part}",
                "saa {hour}:{minute} {part}",
                parts=(
                    (0, "usiku"),
                    (4, "alfajiri"),
                    (6, "asubuhi"),
                    (12, "mchana"),
                    (16, "jioni"),
                    (19, "usiku"),
                ),
                first=6,
            )
        ),
        # mar, mer and jeu are a mare, the sea and a game.
        "fr": LanguageRow(
            HourWords("{hour} h", "{hour} h {minute}"),
            weekdays=("lundi", "mardi", "mercredi", "jeudi", "vendredi", "samedi", "dimanche"),
        ),
        "hi": LanguageRow(
            HourWords(
                "{part} {hour} बजे",
                "{part} {hour}:{minute} बजे",
                parts=((0, "रात"), (4, "सुबह"), (12, "दोपहर"), (16, "शाम"), (20, "रात")),
                first=0,
            )
        ),
        # CLDR's short August is also the word for "before", so months are whole.
        "bn": LanguageRow(
            HourWords(
                "{part} {hour}টা",
                "{part} {hour}:{minute}",
                parts=(
                    (0, "রাত"),
                    (4, "ভোর"),
                    (6, "সকাল"),
                    (12, "দুপুর"),
                    (15, "বিকাল"),
                    (18, "সন্ধ্যা"),
                    (20, "রাত"),
                ),
                first=0,
            ),
            digits="০১২৩৪৫৬৭৮৯",
            day="EEE d MMMM",
        ),
        # Min (Sunday) and Sel are other words too.
        "id": LanguageRow(
            HourWords(
                "jam {hour} {part}",
                "jam {hour}.{minute} {part}",
                parts=(
                    (0, "malam"),
                    (1, "dini hari"),
                    (4, "pagi"),
                    (11, "siang"),
                    (15, "sore"),
                    (19, "malam"),
                ),
                first=0,
            ),
            weekdays=("Senin", "Selasa", "Rabu", "Kamis", "Jumat", "Sabtu", "Minggu"),
        ),
        # "Th 4" is Wednesday to a dictionary and the fourth to a farmer.
        "vi": LanguageRow(
            HourWords(
                "{hour} giờ {part}",
                "{hour} giờ {minute} {part}",
                parts=(
                    (0, "đêm"),
                    (1, "sáng"),
                    (11, "trưa"),
                    (13, "chiều"),
                    (18, "tối"),
                    (22, "đêm"),
                ),
                first=0,
            ),
            day="EEE d/M",
            weekdays=(
                "thứ Hai",
                "thứ Ba",
                "thứ Tư",
                "thứ Năm",
                "thứ Sáu",
                "thứ Bảy",
                "Chủ nhật",
            ),
        ),
        # ter and qui are "to have" and "who"; the part "-feira" is left out, as in speech.
        "pt": LanguageRow(
            HourWords("{hour} h", "{hour} h {minute}"),
            weekdays=("segunda", "terça", "quarta", "quinta", "sexta", "sábado", "domingo"),
        ),
        # Mar is March as well as Tuesday.
        "fil": LanguageRow(
            HourWords(
                "alas-{hour} ng {part}",
                "alas-{hour}:{minute} ng {part}",
                parts=(
                    (0, "hatinggabi"),
                    (1, "madaling-araw"),
                    (5, "umaga"),
                    (12, "tanghali"),
                    (13, "hapon"),
                    (18, "gabi"),
                ),
                first=0,
                one=("ala-{hour} ng {part}", "ala-{hour}:{minute} ng {part}"),
            ),
            weekdays=("Lun", "Martes", "Miy", "Huw", "Biy", "Sab", "Linggo"),
        ),
    }
)
