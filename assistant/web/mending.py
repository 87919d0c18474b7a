"""What was entered wrong is put right: a bed, a visit, two entries of one person, a list; and
what was sent, with what can still be taken back."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.dialogue.items_leaves import MOST_LEAVES
from assistant.service.days import local_date
from assistant.service.desk.visits import Wrong
from assistant.service.house import Part
from assistant.service.mending.beds import LEAST_LEAVES, NotMended, mend_bed
from assistant.service.mending.join import NotJoined, Pair, look_at_pair
from assistant.service.mending.join import join as join_two
from assistant.service.mending.sent import SHOWN_FOR, sent_by, take_text_back
from assistant.service.mending.visits import bed_of, drop_visit, mend_visit
from assistant.service.office.withdrawing import withdraw_list
from assistant.web.desk import Desk, typed
from assistant.web.nursery import nursery_shown
from assistant.web.nursery_forms import BedForm, OldVisitForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as k
from assistant.wording import messages_web_mend as web_mend
from assistant.wording.message import Say


def pages(desk: Desk) -> Blueprint:
    """The forms that mend, and Sent by me."""
    found = Blueprint("mending", __name__)
    _beds(found, desk)
    _people(found, desk)
    if Part.LISTS in desk.house.parts:
        _lists(found, desk)
    _sent(found, desk)
    return found


def _beds(found: Blueprint, desk: Desk) -> None:
    @found.post("/nurseries/<int:nursery>/bed")
    def bed(nursery: int) -> ResponseReturnValue:
        form = BedForm.sent()
        if not form.validate():
            return nursery_shown(desk, nursery, bed=form)
        outcome = mend_bed(desk.house, desk.sight, nursery, form.wanted(), desk.now)
        if outcome is None:
            abort(404)
        if isinstance(outcome, (NotMended, Say)):
            return nursery_shown(desk, nursery, bed=form.refuse(_said(outcome)))
        desk.tell(web_mend.BED_IS_RIGHT)
        return desk.to("nursery.nursery", nursery=nursery)

    _visits(found, desk)


def _visits(found: Blueprint, desk: Desk) -> None:
    @found.post("/visits/<int:visit>")
    def visit(visit: int) -> ResponseReturnValue:
        nursery = bed_of(desk.house, desk.sight, visit)
        if nursery is None:
            abort(404)
        if "away" in request.form:
            drop_visit(desk.house, desk.sight, visit, desk.now)
            desk.tell(web_mend.VISIT_GONE)
            return desk.to("nursery.nursery", nursery=nursery, anchor="visits")
        form = OldVisitForm.sent()
        if not form.validate() or not mended(visit, form):
            return nursery_shown(desk, nursery, **{f"visit-{visit}": form})
        desk.tell(web_mend.VISIT_RIGHT)
        return desk.to("nursery.nursery", nursery=nursery, anchor="visits")

    def mended(visit: int, form: OldVisitForm) -> bool:
        on, words = form.on.data, form.words.data
        outcome = mend_visit(desk.house, desk.sight, visit, on, words, desk.now)
        if isinstance(outcome, Wrong):
            form.refuse(web.WRONG[outcome])
        return not isinstance(outcome, Wrong)


def _said(outcome: object) -> Say:
    """Why a bed was not changed."""
    if isinstance(outcome, Say):
        return outcome
    if outcome is NotMended.LEAVES:
        return web_mend.BED_LEAVES_WRONG(low=LEAST_LEAVES, high=MOST_LEAVES)
    return web_mend.BED_SAME() if outcome is NotMended.SAME else web_mend.BED_AS_SOWN()


def _people(found: Blueprint, desk: Desk) -> None:
    @found.get("/farmers/<int:farmer>/join")
    def pair(farmer: int) -> ResponseReturnValue:
        other = request.args.get("other", "")[:40]
        seen = look_at_pair(desk.house, desk.sight, farmer, other)
        if isinstance(seen, Pair):
            for each in (seen.stays, seen.goes):
                desk.looks_at(each.farmer.id)
            return desk.page("pair.html", pair=seen)
        return _not_joined(desk, farmer, seen)

    @found.post("/farmers/<int:farmer>/join")
    def join(farmer: int) -> ResponseReturnValue:
        if "sure" not in request.form:
            desk.tell(k.TICK_SURE, wrong=True)
            return desk.to("mending.pair", farmer=farmer, other=typed("other", 40))
        outcome = join_two(desk.house, desk.sight, farmer, typed("other", 40), desk.now)
        if outcome is None or isinstance(outcome, NotJoined):
            return _not_joined(desk, farmer, outcome)
        desk.tell(web_mend.JOINED)
        return desk.to("nursery.farmer", farmer=farmer)


def _not_joined(desk: Desk, farmer: int, why: NotJoined | None) -> ResponseReturnValue:
    if why is None:
        abort(404)
    desk.tell(web_mend.JOIN_NOT[why], wrong=True)
    return desk.to("nursery.farmer", farmer=farmer)


def _lists(found: Blueprint, desk: Desk) -> None:
    @found.post("/lists/<int:number>/withdraw")
    def withdraw(number: int) -> ResponseReturnValue:
        if "sure" not in request.form:
            desk.tell(k.TICK_SURE, wrong=True)
            return desk.to("lists.outcome", number=number)
        gone = withdraw_list(desk.house, desk.sight, number, desk.now)
        if gone is None:
            abort(404)
        desk.tell(web_mend.LIST_WITHDRAWN(n=gone.farmers, count=gone.texts))
        return desk.to("lists.outcome", number=number)


def _sent(found: Blueprint, desk: Desk) -> None:
    @found.get("/sent")
    def sent() -> ResponseReturnValue:
        lines = sent_by(desk.house, desk.sight, desk.now)
        today = local_date(desk.now, desk.sight.zone(None, desk.house.zone))
        return desk.page("sent.html", lines=lines, days=SHOWN_FOR.days, today=today)

    @found.post("/sent/<message>")
    def take_back(message: str) -> ResponseReturnValue:
        taken = take_text_back(desk.house, desk.sight, message, desk.now)
        if taken is None:
            abort(404)
        desk.tell(web_mend.TAKEN_BACK_ONE if taken else web_mend.LEFT_ALREADY, wrong=not taken)
        return desk.to("mending.sent")
