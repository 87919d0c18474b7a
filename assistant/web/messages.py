"""Messages: how many, what became of them, what they cost; and replies nobody could read."""

from decimal import Decimal

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from assistant.service.desk.messages import MessageFilter, Which, messages, messages_by_month
from assistant.service.desk.unread import unread_replies
from assistant.web.desk import Desk, asked_number
from assistant.wording import messages_web_books as words
from assistant.wording.render import money


def pages(desk: Desk) -> Blueprint:
    """The counts and the log."""
    found = Blueprint("messages", __name__)

    @found.get("/messages")
    def ledger() -> ResponseReturnValue:
        wanted = MessageFilter(
            village_id=asked_number("village"),
            month=request.args.get("month", ""),
            which=request.args.get("which", ""),
            before=request.args.get("before", ""),
        )
        model = messages(desk.house, desk.sight, wanted, desk.now)

        def priced(amount: Decimal) -> str:
            return money(amount, model.currency, desk.catalogue.language)

        return desk.page("messages.html", model=model, b=words, kinds=Which, money=priced)

    @found.get("/messages/months")
    def months() -> ResponseReturnValue:
        model = messages_by_month(desk.house, desk.sight, desk.now)

        def priced(amount: Decimal) -> str:
            return money(amount, model.currency, desk.catalogue.language)

        return desk.page("messages_months.html", model=model, b=words, money=priced)

    @found.get("/messages/unread")
    def unread() -> ResponseReturnValue:
        model = unread_replies(
            desk.house,
            desk.sight,
            language=request.args.get("language"),
            before=asked_number("before"),
        )
        return desk.page("unread.html", model=model, b=words)

    return found
