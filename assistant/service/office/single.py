"""One farmer enrolled on a form, by the same rules as a list of one row."""

from dataclasses import dataclass
from datetime import datetime

from assistant.service.consent import Enroller
from assistant.service.house import House
from assistant.service.office.cells import RefusedCell, phone_of
from assistant.service.office.choices import Choices
from assistant.service.office.columns import Field
from assistant.service.office.judging import Judge, Outlook, RowDeed, Verdict, WhoQuestion
from assistant.service.office.reader import reader_of, roll_of
from assistant.service.office.rows import SheetRow
from assistant.service.office.taking import PAGE, Taking
from assistant.service.sight import Sight
from assistant.wording import messages_web_people as web_people
from assistant.wording.message import Say

_ORDER = tuple(Field)


@dataclass(frozen=True)
class Form:
    """What was typed, by what it holds.

    `village` is an id and no cell; `owner` answers the question about a number that is known
    under another name; `moves`: one that is known elsewhere is moved to this village.
    """

    cells: dict[Field, str]
    village: int | None
    owner: str = ""
    moves: bool = False


@dataclass(frozen=True)
class EnrolledOne:
    """The farmer is on the roll; `says` what happened."""

    farmer_id: int
    says: Say


def enrol_by_form(
    house: House, sight: Sight, form: Form, now: datetime
) -> EnrolledOne | WhoQuestion | Say:
    """Enrols or mends one farmer; a question where the number is known under another name,
    or the reason why nothing was done."""
    row = SheetRow(1, tuple(form.cells.get(what, "") for what in _ORDER))
    try:
        phone = phone_of(row.cells[0], house.region)
    except RefusedCell as refused:
        return refused.why
    choices = Choices(
        columns=dict(enumerate(_ORDER)),
        village=form.village,
        owners={phone: form.owner} if form.owner else {},
        moves=form.moves,
    )
    with house.store.work() as work:
        work.enrolments.hold_roll()
        reader = reader_of(work, house, sight, choices, {}, now)
        found = Judge(reader, roll_of(work, sight, [phone])).outlook((row,))
        if found.judged[0].verdict is Verdict.REJECTED:
            return _why(found, form)
        who = Enroller(sight.officer.id, sight.officer.name)
        Taking(work, house, who, now, way=PAGE).take(found)
        farmer = work.people.farmer(phone)
    if farmer is None:
        raise LookupError(f"{phone} was enrolled and is not there")
    return EnrolledOne(farmer.id, _said(found.deeds, farmer.name or phone))


def _why(found: Outlook, form: Form) -> WhoQuestion | Say:
    if found.owners and not form.owner:
        return found.owners[0]
    return found.judged[0].says[0]


def _said(deeds: tuple[RowDeed, ...], name: str) -> Say:
    if not deeds:
        return web_people.ALREADY(name=name)
    return web_people.ENROLLED(name=name) if deeds[0].asks else web_people.MENDED(name=name)
