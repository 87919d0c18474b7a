"""The forms on the page of a village."""

from wtforms import BooleanField

from assistant.people import Village
from assistant.service.desk.village_office import LONGEST_HELPER, LONGEST_NUMBER, Helpers
from assistant.service.desk.villages import Stays, VillageStory
from assistant.service.land_units import units_text
from assistant.service.village_beds import VillageBeds
from assistant.web.fields import (
    ChosenRow,
    Day,
    Needed,
    Number,
    TickedWords,
    TypedLines,
    TypedWords,
)
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_alerts as web_alerts
from assistant.wording import messages_web_beds as web_beds
from assistant.wording import messages_web_desk as web_desk
from assistant.wording import messages_web_office as web_office
from assistant.wording import messages_web_rain as web_rain

LONGEST_NAME = 20  # of a village, in the texts that name it


class PlaceForm(OfficerForm):
    """Where it lies; `sure` that the two numbers are not turned round."""

    place = TypedWords(web_rain.PLACE_LABEL, longest=40)
    sure = BooleanField()


class WarmthForm(OfficerForm):
    """The mean temperature by which leaves are counted."""

    degrees = Number(web_beds.DEGREES, [Needed()])
    on = Day(web_beds.ON, [Needed(web_beds.NO_DAY)])


class ClimateForm(OfficerForm):
    """How warm its months are."""

    months = TypedWords(web_beds.CLIMATE_LABEL, longest=120)

    def read(self) -> tuple[float, ...] | None:
        """Twelve numbers with blanks between; None where nothing is written, none where it
        cannot be read."""
        words = self.months.data.split()
        try:
            return tuple(float(word.replace(",", ".")) for word in words) or None
        except ValueError:
            return ()


class KindsForm(OfficerForm):
    """The beds that are offered there."""

    practice = TickedWords()


class VillageForm(OfficerForm):
    """Its name, and whom to turn to."""

    name = TypedWords(web_office.VILLAGE_NAME, [Needed()], longest=LONGEST_NAME)
    emergency = TypedWords(web_office.EMERGENCY, longest=LONGEST_NUMBER)
    health_post = TypedWords(web_office.HEALTH_POST, longest=LONGEST_HELPER)
    vet = TypedWords(web_office.VET, longest=LONGEST_HELPER)

    def helpers(self) -> Helpers:
        """Whom to turn to."""
        return Helpers(self.emergency.data, self.health_post.data, self.vet.data)


class NewVillageForm(OfficerForm):
    """A village that is added."""

    name = TypedWords(web_office.VILLAGE_NAME, [Needed()], longest=LONGEST_NAME)


class UnitsForm(OfficerForm):
    """What land units are there."""

    units = TypedLines(web_office.UNITS_LABEL, longest=500)


class CodesForm(OfficerForm):
    """By what codes the weather service names it."""

    codes = TypedLines(web_alerts.CODES, longest=4000)


class JoinForm(OfficerForm):
    """The village into which it goes."""

    into = ChosenRow(web_office.JOIN_INTO, [Needed()])
    sure = BooleanField(validators=[Needed(web_desk.TICK_SURE)])


class HandOverForm(OfficerForm):
    """Who serves it from now on."""

    giver = ChosenRow(web.FROM_WHOM)
    taker = ChosenRow(web.TO_WHOM, [Needed(web.STAYS[Stays.NO_TAKER])])
    words = TypedLines(web.HAND_OVER_WORDS, [Needed(web.STAYS[Stays.NO_NOTE])])


def forms_of(story: VillageStory, beds: VillageBeds | None) -> dict[str, OfficerForm]:
    """As they stand before anybody has typed."""
    village = story.line.village
    codes = "\n".join(f"{code.name}={code.value}" for code in story.codes)
    return {
        "place": PlaceForm(place=_point(village)),
        "warmth": WarmthForm(on=beds.today if beds else None),
        "climate": ClimateForm(months=" ".join(map(str, village.climate or ()))),
        "data": VillageForm(
            name=village.name,
            emergency=village.emergency or "",
            health_post=village.health_post or "",
            vet=village.vet or "",
        ),
        "units": UnitsForm(units=units_text(village.units)),
        "codes": CodesForm(codes=codes),
        "join": JoinForm(),
        "hand_over": HandOverForm(),
    }


def _point(village: Village) -> str:
    placed = village.latitude is not None
    return f"{village.latitude}, {village.longitude}" if placed else ""
