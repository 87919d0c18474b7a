"""Opens the rules and the learned table that hear a text, as frozen values."""

import tomllib
from collections.abc import Iterator, Mapping
from functools import lru_cache
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

import assistant
from assistant.acts import ActTable, read_table
from assistant.hearing import Ears, Kind
from assistant.hearing.asking import Questions, Row, Tongue
from assistant.hearing.dating import DayWords
from assistant.hearing.dating import Idea as DayIdea
from assistant.hearing.ears import Ear, Mood, Place
from assistant.hearing.office import OfficeWords
from assistant.hearing.reporting import Idea as ReportIdea
from assistant.hearing.reporting import Reports
from assistant.hearing.topics import Topic
from assistant.people import LANGUAGES
from assistant.reading.text.rules import RULE_VALUES, Rule, bound, read_rule
from assistant.wiring.asked import open_labels, open_match
from assistant.wiring.day_words import open_day_words
from assistant.wiring.kept import kept, word_sources
from assistant.wiring.lasting import lasting
from assistant.wiring.lexicons import open_lexicons
from assistant.wiring.mapped import mapped
from assistant.wiring.office_words import open_office_words
from assistant.wiring.questions import open_questions
from assistant.wiring.reports import open_reports

_MANNERS = "manners"  # the one list that is of no section


class HearingError(Exception):
    """Rules or a table that cannot be used; the text names every fault and what to write."""


@lru_cache(maxsize=1)
@lasting()
def open_ears() -> Ears:
    """The rules of all languages and the table. Raises HearingError with all faults."""
    rules = kept("rules", word_sources(), _made, _VALUES)
    return Ears(
        table=open_table(),
        by_language=rules.by_language,
        questions=rules.questions,
        days=rules.days,
        reports=rules.reports,
        match=open_match(),
        labels=rules.labels,
        office=rules.office,
    )


class _Rules(NamedTuple):
    """What of the ears is made from lists, and kept."""

    by_language: Mapping[str, Ear]
    questions: Questions
    days: Mapping[str, DayWords]
    reports: Reports
    labels: Mapping[str, Mapping[str, str]]
    office: Mapping[str, OfficeWords]


_VALUES = (
    *(_Rules, Ear, Kind, Mood, Questions, Row, Topic, Tongue),
    *(DayWords, DayIdea, Reports, ReportIdea, OfficeWords, *RULE_VALUES),
)


def _made() -> _Rules:
    opened = [_open(language) for language in LANGUAGES]
    faults = [fault for _, found in opened for fault in found]
    if faults:
        raise HearingError("rules of hearing with faults:\n" + "\n".join(faults))
    return _Rules(
        MappingProxyType({ear.language: ear for ear, _ in opened}),
        open_questions(),
        open_day_words(),
        open_reports(),
        open_labels(),
        open_office_words(),
    )


def open_table() -> ActTable:
    """The learned table as it is shipped. Raises HearingError."""
    try:
        return read_table(mapped(Path(assistant.__file__).parent / "acts" / "table.bin"))
    except (OSError, ValueError) as fault:  # TableError is a ValueError
        raise HearingError(f"assistant/acts/table.bin: {fault}") from fault


@lasting()
def _open(language: str) -> tuple[Ear, tuple[str, ...]]:
    name = f"{language}.toml"
    is_tonal = open_lexicons()[language].is_tonal
    try:
        table = tomllib.loads((files("assistant.hearing") / "words" / name).read_text("utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as fault:
        return Ear(language, is_tonal, bound(())), (f"{name}: {fault}; expected a TOML file",)
    faults: list[str] = [f"{name}: {fault}" for fault in _unknown(table)]
    rules = list(_rules(table, faults, name))
    heard = {kind for (kind, mood), _ in rules if mood is Mood.SAID}
    faults += [f"{name}: [{kind}] has no rules" for kind in Kind if kind not in heard]
    manners = [str(word) for word in table.get(_MANNERS, ())]
    return Ear(language, is_tonal, bound(rules, manners)), tuple(faults)


def _unknown(table: Mapping[str, Any]) -> Iterator[str]:
    """A mistyped section would not be heard, in silence."""
    for section, lists in table.items():
        if section not in {*Kind, _MANNERS}:
            yield f"[{section}] is not known; known are {', '.join(Kind)}"
        for key in lists if isinstance(lists, dict) else ():
            if key not in set(Mood):
                yield f"[{section}] {key} is not known; write {' or '.join(Mood)}"


def _rules(
    table: Mapping[str, Any], faults: list[str], name: str
) -> Iterator[tuple[Place, Rule]]:
    for kind in Kind:
        for mood in Mood:
            for line in table.get(kind, {}).get(mood, ()):
                try:
                    yield (kind, mood), read_rule(str(line))
                except ValueError as fault:
                    faults.append(f"{name} [{kind}] {mood}: {line!r}: {fault}")
