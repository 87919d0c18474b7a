"""What every use case needs, joined once by the wiring."""

import hmac
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum

from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.work.costs import PriceList
from assistant.alert_terms import Rules
from assistant.channel import Tariff
from assistant.hearing import Ears
from assistant.reading import Lexicon
from assistant.reminders.plan import Hours
from assistant.service.meter import Meter, NoMeter
from assistant.service.nearby import Phonebook
from assistant.service.recent import Recent
from assistant.store import Store
from assistant.wording.render import Catalogue
from assistant.wording.screens import Limits

CheckAlert = Callable[[bytes, datetime], str | None]
"""A signed alert and the time -> whose key signed it; None where that is nobody's."""


KeepStop = Callable[[str, bool, datetime], None]
"""Keeps beside the database that a phone stopped its texts, or wants them again, and when."""


Refit = Callable[["House", Mapping[str, str]], "House"]
"""The house with what a page says of its settings, by their names, in place of what it had."""


class SettingOrigin(StrEnum):
    """Who says a setting; the first of these who says it counts."""

    PAGE = "page"
    FILE = "file"  # the programme file
    MACHINE = "machine"  # the environment, or the settings file
    BUILT_IN = "built_in"


class Part(StrEnum):
    """What a deployment may leave out; nothing of it is opened then."""

    ALERTS = "alerts"  # official ones
    LISTS = "lists"  # of farmers, as an office keeps them


def no_journal(phone: str, stopped: bool, now: datetime) -> None:
    """Where nothing is kept beside the database."""


def _no_hash(code: str) -> str:
    raise LookupError("expected a way to hash codes, got none: give the house a hash_code")


@dataclass(frozen=True)
class House:
    """The parts of one deployment that the use cases work with.

    `zone` and `region` are the programme's; a village may have a zone of its own. `new_id`
    makes the ids of outgoing texts. `check_code` tells whether an officer's code or password
    fits a hash that `hash_code` made. `parts` are what is not left out. `tariff` is None where
    nobody said what a text costs; a
    season begins with each of `season_months`. Official alerts that `alert_rules` let through
    are drafts for an officer, or warn at once where `alerts_go_out`
    and, where `check_alert` is set, their signature is right. `prices` are what a
    nursery's things cost here, `varieties` those that are grown.
    `replies_free`: a reply costs a farmer nothing. `alarm_next` is
    how long a person has to answer an alarm before the next one is told; `phonebook` whom to
    turn to in need; `journal` keeps each STOP beside the database. `key` is the deployment's
    own and is in no database; leads need a `second_factor`; a code by SMS is good for
    `code_uses` texts, 0 for ever. After `day_segments` of a day or `month_money` of a month
    only dangers leave; the same of a village after `village_segments` of its
    day, or `village_month_money` of a month; an officer's letters to many and invitations go
    to `officer_day_texts` phones a day, `officer_month_texts` a month;
    unknown numbers together have `strangers_hour_answers` an hour;
    letters to more than `four_eyes` phones need two leads; 0: no limit. With `several_lines` an
    answer goes by the line that its reader last wrote by. `refit` makes the house of what a
    page says, where one may; `said_by` names who else says a setting. `alerts_from` are
    addresses that a page added. `meter` counts what is done, for who watches; `recent` keeps
    figures that took long to find.
    """

    store: Store
    catalogues: Mapping[str, Catalogue]
    lexicons: Mapping[str, Lexicon]
    ears: Ears
    languages: tuple[str, ...]
    zone: str
    region: str | None
    hours: Hours
    limits: Limits
    urgent_breaks_quiet: bool
    new_id: Callable[[], str]
    check_code: Callable[[str, str], bool]
    hash_code: Callable[[str], str] = _no_hash
    programme: str = ""
    replies_free: bool = False
    tariff: Tariff | None = None
    season_months: tuple[int, ...] = (1, 7)
    prices: PriceList | None = None
    varieties: tuple[ProgrammeVariety, ...] = ()
    parts: frozenset[Part] = frozenset(Part)
    alert_rules: Rules = Rules()
    alerts_go_out: bool = False
    check_alert: CheckAlert | None = None
    alarm_next: timedelta = timedelta(minutes=10)
    phonebook: Phonebook = Phonebook()
    journal: KeepStop = no_journal
    several_lines: bool = False
    key: bytes = field(default=b"", repr=False)
    second_factor: bool = False
    code_uses: int = 0
    day_segments: int = 0
    month_money: Decimal = Decimal(0)
    village_segments: int = 0
    village_month_money: Decimal = Decimal(0)
    officer_day_texts: int = 0
    officer_month_texts: int = 0
    strangers_hour_answers: int = 0
    four_eyes: int = 0
    refit: Refit | None = None
    said_by: Mapping[str, SettingOrigin] = field(default_factory=dict)
    alerts_from: tuple[str, ...] = ()
    meter: Meter = field(default=NoMeter(), repr=False)
    recent: Recent = field(default_factory=Recent, repr=False, compare=False)

    def key_for(self, what: str) -> bytes:
        """A key for one thing, made from the deployment's own.

        Raises:
            LookupError: the deployment has none.
        """
        if not self.key:
            raise LookupError("expected the deployment's key, got none: give the house a key")
        return hmac.digest(self.key, what.encode(), "sha256")

    def catalogue(self, language: str | None) -> Catalogue:
        """The catalogue of a language; the programme's first one where it has none."""
        return self.catalogues.get(language or "", self.catalogues[self.languages[0]])
