"""Writing to many farmers: words, reach and cost, then it goes."""

from zoneinfo import ZoneInfo

from flask import Blueprint, abort
from flask.typing import ResponseReturnValue
from wtforms import BooleanField

from assistant.service.days import local_date
from assistant.service.later import HOURS
from assistant.service.letters import LONGEST_WORDS
from assistant.service.storms import broadcasts as service
from assistant.service.storms.broadcasts import Asked, Group, NotSent
from assistant.web.desk import Desk, asked_number, may_reach
from assistant.web.fields import ChosenRow, OneOf, Ticked, TypedLines, TypedWords
from assistant.web.later import LaterForm
from assistant.web.storms import priced
from assistant.wording import messages_web_brakes as web_brakes
from assistant.wording import messages_web_broadcast as web_broadcast
from assistant.wording import messages_web_groups as web_groups
from assistant.wording import messages_web_rain as web_rain
from assistant.wording import messages_web_season as web_season
from assistant.wording.message import Say


class BroadcastForm(LaterForm):
    """Words, to whom, and when."""

    group = ChosenRow(web_groups.GROUP)
    all = BooleanField()
    village = Ticked()
    stage = OneOf(web_broadcast.TO_WHOM, tuple(Group), Group.ALL)
    practice = TypedWords(web_season.PRACTICE, longest=40)
    words = TypedLines(
        web_broadcast.YOUR_WORDS, render_kw={"required": True}, longest=LONGEST_WORDS
    )

    def asked(self) -> Asked:
        """What was filled in."""
        return Asked(
            words=self.words.data,
            village_ids=set(self.village.data),
            everywhere=self.all.data,
            stage=Group(self.stage.data),
            practice=self.practice.data or None,
            group_id=self.group.data,
            later=self.later(),
        )


def pages(desk: Desk) -> Blueprint:
    """The form, and a page for each broadcast."""
    found = Blueprint("broadcasts", __name__)

    @found.get("/broadcasts")
    def broadcasts() -> ResponseReturnValue:
        return _page(desk, _started(desk))

    @found.post("/broadcasts")
    def make() -> ResponseReturnValue:
        form = BroadcastForm.sent()
        if not form.validate():
            return _page(desk, form, 422)
        made = service.make(desk.house, desk.sight, form.asked(), desk.now)
        if isinstance(made, tuple):
            for fault in made:
                form.refuse(web_broadcast.FAULTS[fault])
            return _page(desk, form, 422)
        return desk.to("broadcasts.broadcast", broadcast=made.id)

    @found.get("/broadcasts/<int:broadcast>")
    def broadcast(broadcast: int) -> ResponseReturnValue:
        model = service.broadcast_page(desk.house, desk.sight, broadcast, desk.now)
        if model is None:
            abort(404)
        return desk.page(
            "broadcast.html", model=model, b=web_broadcast, r=web_rain, money=priced(desk)
        )

    _deeds(found, desk)
    return found


def _deeds(found: Blueprint, desk: Desk) -> None:
    @found.post("/broadcasts/<int:broadcast>/send")
    def send(broadcast: int) -> ResponseReturnValue:
        if not _may_go(desk, broadcast):
            return desk.to("broadcasts.broadcast", broadcast=broadcast)
        sent = service.send(desk.house, desk.sight, broadcast, desk.now)
        if sent is None:
            abort(404)
        if isinstance(sent, NotSent):
            desk.tell(why_not(sent), wrong=True)
            return desk.to("broadcasts.broadcast", broadcast=broadcast)
        desk.wake()
        model = service.broadcast_page(desk.house, desk.sight, broadcast, desk.now)
        if not sent:
            desk.tell(web_broadcast.WAS_SENT, wrong=True)
        elif model is not None and model.broadcast.due_at and model.waits:
            at = model.leaves_at
            desk.tell(web_groups.GOES_OUT(date=at.date(), time=at.time()))
        elif model is not None and model.waits:
            desk.tell(web_broadcast.IS_WAITING(time=model.leaves_at.time()))
        else:
            desk.tell(web_broadcast.IS_SENT)
        return desk.to("broadcasts.broadcast", broadcast=broadcast)

    _taking_back(found, desk)


def _taking_back(found: Blueprint, desk: Desk) -> None:
    @found.post("/broadcasts/<int:broadcast>/take-back")
    def take_back(broadcast: int) -> ResponseReturnValue:
        taken = service.take_back(desk.house, desk.sight, broadcast, desk.now)
        if taken is None:
            abort(404)
        desk.tell(web_broadcast.TAKEN_BACK(n=taken))
        return desk.to("broadcasts.broadcast", broadcast=broadcast)


def why_not(sent: NotSent) -> Say:
    """In words."""
    if sent.over:
        words = web_brakes.TOO_MANY_THIS_MONTH if sent.over.month else web_brakes.TOO_MANY_TODAY
        return words(count=sent.over.phones)
    return (
        web_brakes.NEEDS_ANOTHER(count=sent.phones)
        if sent.phones
        else web_brakes.TOO_DEAR(count=sent.left)
    )


def _may_go(desk: Desk, broadcast: int) -> bool:
    found = service.broadcast_page(desk.house, desk.sight, broadcast, desk.now)
    return found is None or may_reach(desk, found.phones)


def _page(desk: Desk, form: BroadcastForm, status: int = 200) -> ResponseReturnValue:
    """The form as it was filled in, and what was sent before."""
    return desk.page(
        "broadcasts.html",
        status,
        model=service.broadcasts_page(desk.house, desk.sight),
        b=web_broadcast,
        r=web_rain,
        form=form,
        groups=tuple(Group),
        hours=HOURS,
        longest=LONGEST_WORDS,
        today=local_date(desk.now, desk.house.zone),
    )


def _started(desk: Desk) -> BroadcastForm:
    """An empty form, or one like a broadcast that is to be changed."""
    group = asked_number("group")
    if group:
        return BroadcastForm(group=group)
    number = asked_number("like")
    model = service.broadcast_page(desk.house, desk.sight, number, desk.now) if number else None
    if model is None:
        return BroadcastForm()
    it = model.broadcast
    at = it.due_at.astimezone(ZoneInfo(desk.house.zone)) if it.due_at else None
    return BroadcastForm(
        words=it.words,
        stage=it.stage,
        practice=it.practice or "",
        group=it.group_id,
        village=it.village_ids,
        data={"later_day": at.date(), "later_hour": str(at.hour)} if at else {},
    )
