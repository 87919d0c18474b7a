"""One phone and the dialogue, with nothing between: texts in, turns out, changes carried out.

    phone = Phone.enrolled()
    phone.says("0.4 ha")        the Turn
    phone.hears("0.4 ha")       only the words of its texts

What a turn changes is made here in plain values, so that a test needs no database; a session
goes through its JSON form after each turn, as it does between two messages of a real phone.
"""

import json
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.alphabet import plain
from assistant.channel import Channel
from assistant.dialogue import values as v
from assistant.dialogue.turns import open_line, turn
from assistant.people import Farmer, Village
from assistant.store.codec import focus_json, read_focus, read_session, session_json
from assistant.wording.render import render_all
from tests.valley import AMINA, CATALOGUES, EARS, LEXICONS, NAIROBI

TODAY = date(2026, 6, 1)
VILLAGES = (Village(1, "Kijani", NAIROBI), Village(2, "Mto Mwanga", NAIROBI))


def noon(day: date) -> datetime:
    """Midday in the village."""
    return datetime.combine(day, time(12), ZoneInfo(NAIROBI))


def nursery(label: str = "A", sow: date = date(2026, 6, 10), **given: Any) -> Nursery:
    """Amina's field of 0.4 ha, but for what is given."""
    plain_one = Nursery(
        id=1,
        farmer_id=1,
        label=label,
        name=None,
        inputs=FieldInputs(field_area_m2=4000.0, germination=0.85),
        area_typed="0.4 ha",
        germination_known=True,
        sow_date=sow,
        made_on=date(2026, 6, 1),
    )
    return replace(plain_one, **given)


class Phone:
    """What is known of one phone, from turn to turn."""

    def __init__(self, known: v.Known) -> None:
        self.known = known
        self.changes: list[v.Change] = []

    @classmethod
    def new(cls, today: date = TODAY, channel: Channel = Channel.SMS) -> "Phone":
        """A phone that nobody knows."""
        return cls(
            v.Known(
                now=noon(today),
                today=today,
                zone=NAIROBI,
                phone=AMINA,
                channel=channel,
                catalogue=CATALOGUES["en"],
                lexicons=LEXICONS,
                ears=EARS,
                languages=("en", "sw"),
                villages=VILLAGES,
            )
        )

    @classmethod
    def enrolled(cls, *nurseries: Nursery, today: date = TODAY) -> "Phone":
        """Amina's, with these nurseries."""
        phone = cls.new(today)
        phone._carry_out(v.Enrol("en", 1))
        with_ids = tuple(
            replace(each, id=place) for place, each in enumerate(nurseries, start=1)
        )
        phone.known = replace(phone.known, nurseries=with_ids)
        return phone

    def asked(self, *items: v.Item) -> "Phone":
        """The same phone after a prompt for these tasks reached it."""
        focus = v.Focus(items=items)
        self.known = replace(
            self.known,
            items=(*self.known.items, *items),
            focuses=(focus, *self.known.focuses),
        )
        return self

    def warned(self, **given: Any) -> "Phone":
        """The same phone after a rain warning reached it."""
        standing = v.Standing(
            id=7,
            village_id=1,
            starts_at=self.known.now,
            ends_at=self.known.now + timedelta(hours=6),
        )
        self.known = replace(
            self.known,
            warning=replace(standing, **given),
            raining=True,
            focuses=(v.Focus(warning_id=7), *self.known.focuses),
        )
        return self

    def on(self, today: date) -> "Phone":
        """The same phone on another day."""
        self.known = replace(self.known, now=noon(today), today=today)
        return self

    def says(self, text: str) -> v.Turn:
        """The turn that a text leads to; what it changes is changed."""
        return self._keep(turn(text, self.known))

    def dials(self) -> v.Turn:
        """The first screen of a USSD session."""
        return self._keep(open_line(self.known))

    def hears(self, text: str) -> list[str]:
        """The words of the texts that answer a text."""
        return self.words(self.says(text))

    def words(self, outcome: v.Turn) -> list[str]:
        """The words of a turn's texts."""
        catalogue = CATALOGUES[outcome.language or self._speaks]
        return [plain(render_all(text.says, catalogue)) for text in outcome.texts]

    def _keep(self, outcome: v.Turn) -> v.Turn:
        self._speaks = self.known.catalogue.language
        self.changes = list(outcome.changes)
        for change in outcome.changes:
            self._carry_out(change)
            if isinstance(change, v.KeepSeason):
                self._remember_season(change.outcome)
        session = outcome.session
        if session is not None:
            kept = read_session(json.loads(json.dumps(session_json(session))))
            assert kept == session, "a session must survive being kept"
            session = kept
        self.known = replace(self.known, session=session)
        self._remember(outcome)
        return outcome

    def _remember(self, outcome: v.Turn) -> None:
        for text in outcome.texts:
            if text.focus is not None:
                kept = read_focus(json.loads(json.dumps(focus_json(text.focus))))
                assert kept == text.focus, "a focus must survive being kept"
                focuses = (text.focus, *self.known.focuses)[:8]
                self.known = replace(self.known, focuses=focuses)
        language = (self.known.farmer.language if self.known.farmer else None) or (
            self.known.session.answers.get("language") if self.known.session else None
        )
        catalogue = CATALOGUES[str(language or "en")]
        self.known = replace(self.known, catalogue=catalogue)

    # --- changes, as the service would make them -------------------------------------------

    def _carry_out(self, change: v.Change) -> None:
        match change:
            case v.Enrol(language=language, village_id=village_id):
                self._farmer(Farmer(1, AMINA, language, village_id, self.known.now, None))
            case v.SetLanguage(language=language):
                self._farmer(replace(self._known_farmer, language=language))
            case v.StopTexts() if self.known.farmer is not None:
                self._farmer(replace(self._known_farmer, stopped_at=self.known.now))
            case v.StartTexts():
                self._farmer(replace(self._known_farmer, stopped_at=None))
            case v.SaveNursery(nursery=saved):
                self._save(saved)
            case v.AnswerItem(item=item):
                left = tuple(each for each in self.known.items if each != item)
                self.known = replace(self.known, items=left)
            case v.AnswerWarning(answer=answer) if self.known.warning is not None:
                warning = replace(self.known.warning, answer=answer)
                self.known = replace(self.known, warning=warning)

    @property
    def _known_farmer(self) -> Farmer:
        assert self.known.farmer is not None, "nothing can be kept for who is not enrolled"
        return self.known.farmer

    def _farmer(self, farmer: Farmer) -> None:
        self.known = replace(self.known, farmer=farmer)

    def _remember_season(self, told: SeasonOutcome) -> None:
        others = (each for each in self.known.seasons if each.nursery_id != told.nursery_id)
        self.known = replace(self.known, seasons=(*others, told))

    def _save(self, saved: Nursery) -> None:
        assert self.known.farmer is not None, "a nursery is a farmer's"
        number = saved.id or 1 + max((each.id for each in self.known.nurseries), default=0)
        others = tuple(each for each in self.known.nurseries if each.id != number)
        kept = others if saved.closed else (*others, replace(saved, id=number))
        items = tuple(
            item
            for item in self.known.items
            if not (saved.closed and item.nursery_id == saved.id)
        )
        ordered = tuple(sorted(kept, key=lambda each: each.label))
        self.known = replace(self.known, nurseries=ordered, items=items)


def item(task: TaskCode, day: date = TODAY, nursery_id: int = 1) -> v.Item:
    """A task that was asked."""
    return v.Item(nursery_id, task, day)
