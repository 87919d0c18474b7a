"""A rain warning before it goes, with its reach, and while it stands."""

from collections.abc import Callable
from decimal import Decimal
from zoneinfo import ZoneInfo

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.storms.rain_drafts import (
    MOST_LEFT_OUT,
    draft_page,
    drop_draft,
    send_draft,
)
from assistant.service.storms.storm import Recalled, all_clear, ask_again, recall, storm
from assistant.service.waiting import deeds
from assistant.web.desk import Desk, ticked
from assistant.wording import messages_web_desk as k
from assistant.wording import messages_web_rain as web_rain
from assistant.wording.message import Message, Say
from assistant.wording.render import money

RENEW_S = 20  # without the script
NO_VILLAGE = web_rain.FAULTS["no_village"]


def drafts(found: Blueprint, desk: Desk) -> None:
    """A draft: its reach, and the decision."""

    @found.get("/warnings/drafts/<int:draft>")
    def draft(draft: int) -> ResponseReturnValue:
        return _show(desk, draft)

    @found.post("/warnings/drafts/<int:draft>/send")
    def send(draft: int) -> ResponseReturnValue:
        if send_draft(desk.house, desk.sight, draft, desk.now) is None:
            abort(404)
        desk.wake()
        if _was_sent(desk, draft):  # pressed twice, it is sent once and said twice
            desk.tell(web_rain.IS_SENT)
            return desk.to("warnings.followed", draft=draft)
        desk.tell(web_rain.SENT_BEFORE, wrong=True)
        return desk.to("warnings.warnings")

    @found.post("/warnings/drafts/<int:draft>/drop")
    def drop(draft: int) -> ResponseReturnValue:
        dropped = drop_draft(desk.house, desk.sight, draft, desk.now)
        if dropped is None:
            abort(404)
        desk.tell(web_rain.IS_DROPPED if dropped else web_rain.SENT_BEFORE, wrong=not dropped)
        return desk.to("warnings.warnings")


def _show(desk: Desk, draft: int) -> ResponseReturnValue:
    model = draft_page(desk.house, desk.sight, draft, desk.now)
    if model is not None:
        shown = {"model": model, "r": web_rain, "money": priced(desk), "most": MOST_LEFT_OUT}
        return desk.page("warning_draft.html", 200, **shown)
    if _was_sent(desk, draft):  # by another, or by this browser's earlier press
        return desk.to("warnings.followed", draft=draft)
    abort(404)


def _was_sent(desk: Desk, draft: int) -> bool:
    return storm(desk.house, desk.sight, draft, desk.now) is not None


def storms(found: Blueprint, desk: Desk) -> None:
    """A warning that was sent: what comes back, and what can be done."""

    @found.get("/warnings/<int:draft>")
    def followed(draft: int) -> ResponseReturnValue:
        model = storm(desk.house, desk.sight, draft, desk.now)
        if model is None:
            abort(404)
        renew = RENEW_S if model.stands and "still" not in request.args else None
        # The script asks for the part that changes only; without it the page comes again.
        template = "_storm.html" if "part" in request.args else "warning.html"
        local = desk.now.astimezone(ZoneInfo(model.villages[0].village.zone))
        return desk.page(
            template, model=model, r=web_rain, renew=renew, local=local, money=priced(desk)
        )

    @found.post("/warnings/<int:draft>/rang")
    def rang(draft: int) -> ResponseReturnValue:
        ids = ticked("farmer")
        if not ids:
            desk.tell(k.NONE_TICKED, wrong=True)
        elif deeds.covered_by_phone(desk.house, desk.sight, draft, ids, desk.now) is None:
            abort(404)
        return desk.to("warnings.followed", draft=draft)

    what: dict[str, Callable[[Desk, int], Message | Say | None]] = {
        "again": _again,
        "clear": _clear,
        "recall": _call_back,
    }

    @found.post("/warnings/<int:draft>/<any(again, clear, recall):deed>")
    def act(draft: int, deed: str) -> ResponseReturnValue:
        told = what[deed](desk, draft)
        if told is None:
            abort(404)
        desk.wake()
        desk.tell(
            told, wrong=told in (web_rain.ASKED_NOBODY, web_rain.STANDS_NO_MORE, NO_VILLAGE)
        )
        return desk.to("warnings.followed", draft=draft)


def _again(desk: Desk, draft: int) -> Message | Say | None:
    asked = ask_again(desk.house, desk.sight, draft, desk.now)
    if asked is None:
        return None
    return web_rain.ASKED_AGAIN(n=asked) if asked else web_rain.ASKED_NOBODY


def _clear(desk: Desk, draft: int) -> Message | Say | None:
    only = _only()
    if only is not None and not only:
        return NO_VILLAGE
    cleared = all_clear(desk.house, desk.sight, draft, desk.now, only)
    if cleared is None:
        return None
    return web_rain.IS_CLEARED_NOW if cleared else web_rain.STANDS_NO_MORE


def _call_back(desk: Desk, draft: int) -> Message | Say | None:
    only = _only()
    if only is not None and not only:
        return NO_VILLAGE
    done = recall(desk.house, desk.sight, draft, desk.now, only)
    if isinstance(done, Recalled):
        return web_rain.IS_CALLED_BACK(count=done.taken_back, asked=done.corrected)
    return None if done is None else web_rain.STANDS_NO_MORE


def _only() -> list[int] | None:
    """The villages that were ticked, where boxes were offered; None is all of them."""
    return ticked("village") if "some" in request.form else None


def priced(desk: Desk) -> Callable[[Decimal], str]:
    """Money in the language of the page."""
    tariff = desk.house.tariff
    currency = tariff.currency if tariff else ""
    return lambda amount: money(amount, currency, desk.catalogue.language)
