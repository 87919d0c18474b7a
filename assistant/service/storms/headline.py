"""What of an alert goes to farmers beside our own words: its headline, as the service wrote it.

It is left out where it would make a text dearer than it must be: too long, or in letters that
would halve the room of every other line.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.alphabet import Encoding, measure, plain
from assistant.store import AlertWords, Draft, Work
from assistant.wording.checks import UCS2_LANGUAGES

LONGEST = 100  # characters; with its lead-in it fits one segment


@dataclass(frozen=True)
class Headline:
    """An alert's headline by the code of its language; empty where there is none that fits."""

    words: Mapping[str, str] = field(default_factory=dict)

    def told(self, language: str | None) -> str:
        """What is said in a language; else in English; empty where neither is there."""
        return self.words.get(language or "en", self.words.get("en", ""))


NO_HEADLINE = Headline()


def headline(work: Work, draft: Draft) -> Headline:
    """The headline of the alert that a draft was made from; none for other drafts, and where
    several dangers of one alert have headlines of their own."""
    kept = work.alerts.get(draft.alert_id) if draft.alert_id is not None else None
    told = kept.told if kept else ()
    languages = [_primary(each) for each in told]
    if len(set(languages)) < len(languages):
        return NO_HEADLINE
    return Headline({_primary(each): _line(each) for each in told if _fits(each)})


def _primary(told: AlertWords) -> str:
    return told.language.lower().split("-")[0]


def _line(told: AlertWords) -> str:
    return plain(" ".join(told.headline.split()))


def _fits(told: AlertWords) -> bool:
    line = _line(told)
    wide = measure(line)[0] is Encoding.UCS2 and _primary(told) not in UCS2_LANGUAGES
    return 0 < len(line) <= LONGEST and not wide
