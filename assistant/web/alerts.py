"""Official alerts: the list, one of them, its message, and the codes that name a village."""

from flask import Blueprint, Response, abort, request
from flask.typing import ResponseReturnValue

from assistant.alerts.document import LARGEST_BYTES
from assistant.service import placing as alert_codes
from assistant.service.alerts import page as alert_page
from assistant.service.alerts.pasted import paste_alert
from assistant.web.desk import Desk, asked_number, lead_only, typed
from assistant.web.village_forms import CodesForm
from assistant.web.villages import village_shown
from assistant.wording import messages_web_alerts as web_alerts


def pages(desk: Desk) -> Blueprint:
    """The list and a page for each."""
    found = Blueprint("alerts", __name__)
    _shown(found, desk)
    _done(found, desk)
    _pasted(found, desk)
    return found


def _shown(found: Blueprint, desk: Desk) -> None:
    @found.get("/alerts")
    def alerts() -> ResponseReturnValue:
        model = alert_page.alerts_page(
            desk.house,
            desk.sight,
            before=asked_number("before"),
            only_ours="ours" in request.args,
        )
        return desk.page("alerts.html", model=model)

    @found.get("/alerts/<int:alert>")
    def alert(alert: int) -> ResponseReturnValue:
        model = alert_page.alert_page(desk.house, desk.sight, alert, desk.now)
        if model is None:
            abort(404)
        return desk.page("alert.html", model=model)

    @found.get("/alerts/<int:alert>/message.xml")
    def raw(alert: int) -> ResponseReturnValue:
        message = alert_page.raw_alert(desk.house, alert)
        if message is None:
            abort(404)
        # Never shown in the browser: it was written by others.
        kept = {"Content-Disposition": f"attachment; filename=alert-{alert}.xml"}
        return Response(message, mimetype="application/octet-stream", headers=kept)


def _done(found: Blueprint, desk: Desk) -> None:
    @found.post("/alerts/<int:alert>/all-clear")
    def all_clear(alert: int) -> ResponseReturnValue:
        cleared = alert_page.clear_after_alert(desk.house, desk.sight, alert, desk.now)
        if cleared is None:
            abort(404)
        if cleared:
            desk.wake()
            desk.tell(web_alerts.CLEAR_GIVEN(villages=", ".join(cleared)))
        else:
            desk.tell(web_alerts.CLEAR_NONE, wrong=True)
        return desk.to("alerts.alert", alert=alert)

    @found.post("/villages/<int:village>/codes")
    def codes(village: int) -> ResponseReturnValue:
        lead_only(desk)
        form = CodesForm.sent()
        if not form.validate():
            return village_shown(desk, village, codes=form)
        done = alert_codes.set_codes(desk.house, desk.sight, village, form.codes.data, desk.now)
        if done is None:
            abort(404)
        if isinstance(done, alert_codes.NoCode):
            form.refuse(web_alerts.CODES_WRONG(line=done.line))
            return village_shown(desk, village, codes=form)
        desk.tell(web_alerts.CODES_KEPT(village=done.name))
        return desk.to("villages.village", "codes", village=village)


def _pasted(found: Blueprint, desk: Desk) -> None:
    @found.post("/alerts")
    def paste() -> ResponseReturnValue:
        kept = paste_alert(desk.house, desk.sight, typed("message", LARGEST_BYTES), desk.now)
        if kept is None:
            abort(404)
        if isinstance(kept, bool):
            desk.tell(web_alerts.PASTED_BEFORE, wrong=True)
            return desk.to("alerts.alerts")
        desk.wake()
        desk.tell(web_alerts.PASTED)
        return desk.to("alerts.alert", alert=kept.id)
