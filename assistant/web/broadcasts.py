"""Writing to many farmers: words, reach and cost, then it goes."""

from collections.abc import Mapping
from zoneinfo import ZoneInfo

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.days import local_date
from assistant.service.later import HOURS
from assistant.service.letters import LONGEST_WORDS
from assistant.service.storms import broadcasts as service
from assistant.service.storms.broadcasts import Asked, Group, NotSent
from assistant.web.desk import Desk, asked_number, may_reach, typed, typed_later
from assistant.web.storms import priced
from assistant.web.warnings import Filled, ticked_in
from assistant.wording import messages_web_brakes as web_brakes
from assistant.wording import messages_web_broadcast as web_broadcast
from assistant.wording import messages_web_groups as web_groups
from assistant.wording import messages_web_rain as web_rain
from assistant.wording.message import Say


def pages(desk: Desk) -> Blueprint:
    """The form, and a page for each broadcast."""
    found = Blueprint("broadcasts", __name__)

    @found.get("/broadcasts")
    def broadcasts() -> ResponseReturnValue:
        return _form(desk, _started(desk), ())

    @found.post("/broadcasts")
    def make() -> ResponseReturnValue:
        made = service.make(desk.house, desk.sight, _asked(), desk.now)
        if isinstance(made, tuple):
            return _form(desk, request.form, made, 422)
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


def _form(
    desk: Desk, filled: Mapping[str, str], faults: tuple[str, ...], status: int = 200
) -> ResponseReturnValue:
    """The form as it was filled in, and what was sent before."""
    return desk.page(
        "broadcasts.html",
        status,
        model=service.broadcasts_page(desk.house, desk.sight),
        b=web_broadcast,
        r=web_rain,
        filled=filled,
        ticked={int(each) for each in ticked_in(filled)},
        faults=faults,
        groups=tuple(Group),
        longest=LONGEST_WORDS,
        hours=HOURS,
        today=local_date(desk.now, desk.house.zone),
    )


def _started(desk: Desk) -> Mapping[str, str]:
    """An empty form, or one like a broadcast that is to be changed."""
    group = asked_number("group")
    if group:
        return {"group": str(group)}
    number = asked_number("like")
    model = service.broadcast_page(desk.house, desk.sight, number, desk.now) if number else None
    if model is None:
        return {}
    it = model.broadcast
    fields = {"words": it.words, "stage": it.stage, "practice": it.practice or ""}
    fields["group"] = str(it.group_id or "")
    if it.due_at:
        at = it.due_at.astimezone(ZoneInfo(desk.house.zone))
        fields |= {"later_day": at.date().isoformat(), "later_hour": str(at.hour)}
    return Filled(fields, tuple(map(str, it.village_ids)))


def _asked() -> Asked:
    stage, group = request.form.get("stage", ""), request.form.get("group", "")
    return Asked(
        words=typed("words"),
        village_ids={int(each) for each in ticked_in(request.form)},
        everywhere="all" in request.form,
        stage=Group(stage) if stage in Group.__members__.values() else Group.ALL,
        practice=typed("practice") or None,
        group_id=int(group) if group.isdecimal() and len(group) < 10 else None,
        later=typed_later(),
    )
