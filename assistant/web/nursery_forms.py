"""The forms on the pages of a nursery and of a farmer."""

from typing import Self

from wtforms import BooleanField

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.service.desk.nursery_page import NurseryPage
from assistant.service.desk.visits import Dates, Visit, Wrong
from assistant.service.letters import LONGEST_WORDS
from assistant.service.mending.beds import WantedBed
from assistant.service.mending.people import Mended
from assistant.web.fields import ChosenRow, Day, Needed, TickedWords, TypedLines, TypedWords
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as web_desk
from assistant.wording import messages_web_mend as web_mend

LONGEST_NOTE = 2000
LONGEST_WHY = 200
NO_DAY = web.WRONG[Wrong.NO_DAY]


class VisitForm(OfficerForm):
    """A visit, and what was seen done there."""

    on = Day(web.VISITED_ON, [Needed(NO_DAY)])
    done = TickedWords()
    words = TypedLines(web.VISIT_WORDS, longest=LONGEST_NOTE)

    def noted(self) -> Visit:
        """What was filled in."""
        done = [code for code in TaskCode if code.value in self.done.data]
        return Visit(self.on.data, self.words.data, done)


class OldVisitForm(OfficerForm):
    """A visit put right."""

    on = Day(web.VISITED_ON, [Needed(NO_DAY)])
    words = TypedLines(web.VISIT_WORDS, longest=LONGEST_NOTE)


class DatesForm(OfficerForm):
    """The days of a bed."""

    sow = Day(web.SOWING_DAY, [Needed(NO_DAY)])
    sown = BooleanField()
    uncovered_on = Day(web.UNCOVERED_DAY)
    transplant = Day(web.WISHED_DAY)
    transplanted_on = Day(web.PLANTED_DAY)
    tell = BooleanField(default=True)

    @classmethod
    def of(cls, nursery: Nursery) -> Self:
        """As they are."""
        return cls(
            sow=nursery.sow_date,
            sown=nursery.sown,
            uncovered_on=nursery.anchors.uncover_date if nursery.uncovered else None,
            transplant=nursery.transplant_date,
            transplanted_on=nursery.transplanted_on,
        )

    def wanted(self) -> Dates:
        """What was filled in."""
        return Dates(
            sow=self.sow.data,
            sown=self.sown.data,
            uncovered_on=self.uncovered_on.data,
            transplant=self.transplant.data,
            transplanted_on=self.transplanted_on.data,
        )


class BedForm(OfficerForm):
    """What a bed is."""

    kind = TypedWords(web_mend.BED_KIND, longest=40)
    area = TypedWords(web_mend.BED_AREA, longest=40)
    percent = TypedWords(web_mend.BED_PERCENT, longest=10)
    leaves = TypedWords(web_mend.BED_LEAVES, longest=5)

    @classmethod
    def of(cls, nursery: Nursery) -> Self:
        """As it is."""
        known = nursery.germination_known
        return cls(
            kind=nursery.practice.code,
            area=nursery.area_typed,
            percent=f"{nursery.inputs.germination * 100:g}" if known else "",
        )

    def wanted(self) -> WantedBed:
        """What was filled in."""
        return WantedBed(self.kind.data, self.area.data, self.percent.data, self.leaves.data)


class CloseForm(OfficerForm):
    """Why nothing more is to be sent for a bed."""

    why = TypedWords(web.CLOSE_WHY, [Needed()], longest=LONGEST_WHY)


class LetterForm(OfficerForm):
    """An officer's words to a farmer."""

    words = TypedLines(web.YOUR_WORDS, [Needed(web.CANNOT_EMPTY)], longest=LONGEST_WORDS)
    urgent = BooleanField()


class PersonForm(OfficerForm):
    """What is kept of a farmer."""

    name = TypedWords(web_desk.NAME, longest=40)
    village = ChosenRow(web.VILLAGE)
    language = TypedWords(web_desk.LANGUAGE, longest=20)

    @classmethod
    def of(cls, farmer: Farmer) -> Self:
        """As it is."""
        return cls(
            name=farmer.name or "",
            village=farmer.village_id,
            language=farmer.language or "",
        )

    def wanted(self) -> Mended:
        """What was filled in."""
        return Mended(self.name.data, self.village.data, self.language.data)


class NumberForm(OfficerForm):
    """Another number for a farmer."""

    phone = TypedWords(web.PHONE, [Needed()], longest=40)


def forms_of(page: NurseryPage) -> dict[str, OfficerForm]:
    """The forms of a nursery's page, as they stand before anybody has typed."""
    visits = {
        f"visit-{each.id}": OldVisitForm(on=each.visited_on, words=each.note)
        for each in page.visits
    }
    return {
        "visit": VisitForm(on=page.person.today),
        "dates": DatesForm.of(page.nursery),
        "bed": BedForm.of(page.nursery),
        "close": CloseForm(),
        "write": LetterForm(),
        **visits,
    }
