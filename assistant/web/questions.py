"""The answering desk: questions that the office answers itself, and what is asked most."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.desk import questions as service
from assistant.service.desk.accounts import languages
from assistant.service.desk.questions import Draft, Refusal
from assistant.web.desk import Desk, asked_number, lead_only, typed
from assistant.wording import messages_web_books
from assistant.wording import messages_web_questions as q

_MOST_TYPED = 2000  # characters of a field; what is too long is told, not cut


def pages(desk: Desk) -> Blueprint:
    """The page, the form, and what is done with a question."""
    found = Blueprint("questions", __name__)

    @found.get("/questions")
    def shown() -> ResponseReturnValue:
        month, village = request.args.get("month", ""), asked_number("village")
        model = service.questions_page(desk.house, desk.sight, month, village, desk.now)
        return desk.page("questions.html", model=model, q=q, b=messages_web_books)

    _adding(found, desk)
    _deeds(found, desk)
    return found


def _adding(found: Blueprint, desk: Desk) -> None:
    @found.get("/questions/new")
    def form() -> ResponseReturnValue:
        lead_only(desk)
        unread, like = asked_number("unread"), asked_number("like")
        draft = service.draft_of(desk.house, desk.sight, unread_id=unread, like=like)
        return _form(desk, draft)

    @found.post("/questions/new")
    def add() -> ResponseReturnValue:
        lead_only(desk)
        ways = tuple(typed("ways", _MOST_TYPED).splitlines())
        draft = Draft(typed("language", 20), ways, typed("answer", _MOST_TYPED), typed("where"))
        kept = service.add_question(desk.house, desk.sight, draft, desk.now)
        if isinstance(kept, Refusal):
            return _form(desk, draft, kept)
        desk.tell(q.KEPT)
        return desk.to("questions.shown", anchor="to-read")


def _deeds(found: Blueprint, desk: Desk) -> None:
    @found.post("/questions/<int:question>/use")
    def use(question: int) -> ResponseReturnValue:
        if service.use_question(desk.house, desk.sight, question, desk.now) is None:
            abort(404)
        desk.tell(q.USED)
        return desk.to("questions.shown")

    @found.post("/questions/<int:question>/withdraw")
    def withdraw(question: int) -> ResponseReturnValue:
        if service.withdraw_question(desk.house, desk.sight, question, desk.now) is None:
            abort(404)
        desk.tell(q.WITHDRAWN)
        return desk.to("questions.shown")


def _form(desk: Desk, draft: Draft, refusal: Refusal | None = None) -> ResponseReturnValue:
    """The form as it was filled in; with what is wrong, where something is."""
    why = None
    if refusal is not None:
        message = q.NOT_KEPT[refusal.why]
        why = message(words=refusal.words) if refusal.words else message()
    return desk.page(
        "question_new.html",
        status=422 if why else 200,
        draft=draft,
        why=why,
        q=q,
        b=messages_web_books,
        spoken=languages(desk.house),
        villages=desk.sight.villages,
    )
