"""All that hears: the rules of every language and the learned table, opened by the wiring."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from assistant.acts import ActTable
from assistant.hearing.asking import Questions
from assistant.hearing.dating import DayWords
from assistant.hearing.kinds import Kind
from assistant.hearing.matching import MatchTable
from assistant.hearing.office import OfficeWords
from assistant.hearing.reporting import Reports
from assistant.reading.text.rules import RuleBook


class Mood(StrEnum):
    """What a rule says of its kind: the lists of a section."""

    SAID = "rules"
    PERHAPS = "perhaps"  # it is asked, never acted on: "wrong number"
    DENIED = "denied"  # it is not so: "nobody is hurt"


Place = tuple[Kind, Mood]


@dataclass(frozen=True, eq=False)
class Ear:
    """One language's rules; `is_tonal`: its accents make other words."""

    language: str
    is_tonal: bool
    book: RuleBook[Place]


@dataclass(frozen=True, eq=False)
class Ears:
    """The rules of all languages, since nobody can be held to the one they enrolled in; and the
    questions that are answered at once, the words around a day, and what is told of a bed.

    match:  which question a text is likest to; None before it was trained
    labels: language -> question -> how it is shown where it is offered
    office: language -> the words by which a programme's own questions are told
    """

    table: ActTable
    by_language: Mapping[str, Ear]
    questions: Questions = Questions()
    days: Mapping[str, DayWords] = field(default_factory=dict)
    reports: Reports = Reports()
    match: MatchTable | None = None
    labels: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    office: Mapping[str, OfficeWords] = field(default_factory=dict)

    def own_first(self, language: str) -> Iterator[Ear]:
        """Every language's, the person's own before the others."""
        yield self.by_language[language]
        yield from (ear for code, ear in self.by_language.items() if code != language)
