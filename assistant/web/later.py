"""When words are to go out, chosen from the lists in `_later.html`."""

from assistant.service.later import HOURS, ChosenHour
from assistant.web.fields import Day, OneOf
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web_groups as web_groups

USUAL_HOUR = "8"


class LaterForm(OfficerForm):
    """The part of a form that says when; no day is at once."""

    later_day = Day(web_groups.WHEN)
    later_hour = OneOf(web_groups.HOUR, [str(each) for each in HOURS], USUAL_HOUR)

    def later(self) -> ChosenHour | None:
        """The hour that was chosen; None: at once."""
        day = self.later_day.data
        return ChosenHour(day, int(self.later_hour.data)) if day else None
