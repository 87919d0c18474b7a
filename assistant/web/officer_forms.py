"""The forms of officers and of one's own account."""

from typing import Self

from wtforms import BooleanField

from assistant.people import Officer
from assistant.service.desk.officers import NewOfficer
from assistant.web.fields import Needed, Ticked, TypedWords
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_books as web_books
from assistant.wording import messages_web_office as web_office


class NewOfficerForm(OfficerForm):
    """Somebody who is to serve villages."""

    name = TypedWords(web_books.NAME, [Needed(web_books.UNFIT_NAME)], longest=60)
    phone = TypedWords(web.PHONE, [Needed(web_books.UNFIT_PHONE)], longest=40)
    language = TypedWords(web_books.A_LANGUAGE, longest=10)
    village = Ticked()
    lead = BooleanField()

    def new(self) -> NewOfficer:
        """What was filled in."""
        return NewOfficer(
            phone=self.phone.data,
            name=self.name.data,
            village_ids=self.village.data,
            is_lead=self.lead.data,
            language=self.language.data,
        )


class OfficerDataForm(OfficerForm):
    """What is kept of one."""

    name = TypedWords(web_books.NAME, [Needed(web_books.UNFIT_NAME)], longest=60)
    phone = TypedWords(web.PHONE, [Needed(web_books.UNFIT_PHONE)], longest=40)
    language = TypedWords(web_office.LANGUAGE, longest=10)

    @classmethod
    def of(cls, officer: Officer) -> Self:
        """As it is."""
        return cls(name=officer.name, phone=officer.phone, language=officer.language)

    def wanted(self) -> NewOfficer:
        """What was filled in."""
        return NewOfficer(self.phone.data, self.name.data, (), language=self.language.data)


class ServedForm(OfficerForm):
    """Which villages one serves."""

    village = Ticked()
