"""The answering desk: questions that the office answers itself, and what is asked most."""

from typing import Self

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.desk import questions as service
from assistant.service.desk.accounts import languages
from assistant.service.desk.questions import Draft, Refusal
from assistant.web.desk import Desk, asked_number, lead_only
from assistant.web.fields import Needed, TypedLines, TypedWords
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_books
from assistant.wording import messages_web_questions as q
from assistant.wording.message import Say

_MOST_TYPED = 2000  # characters of a field; what is too long is told, not cut


class QuestionForm(OfficerForm):
    """What farmers ask, and the office's answer."""

    language = TypedWords(messages_web_books.A_LANGUAGE, longest=20)
    where = TypedWords(web.VILLAGE)
    ways = TypedLines(q.WAYS, [Needed()], longest=_MOST_TYPED)
    # How long an answer may be the service says, in segments.
    answer = TypedLines(q.ANSWER, [Needed()], longest=_MOST_TYPED)

    @classmethod
    def of(cls, draft: Draft) -> Self:
        """A draft that was begun elsewhere."""
        return cls(
            language=draft.language,
            where=draft.village,
            ways="\n".join(draft.ways),
            answer=draft.answer,
        )

    def draft(self) -> Draft:
        """What was filled in."""
        ways = tuple(self.ways.data.splitlines())
        return Draft(self.language.data, ways, self.answer.data, self.where.data)


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
        return _shown(desk, QuestionForm.of(draft))

    @found.post("/questions/new")
    def add() -> ResponseReturnValue:
        lead_only(desk)
        form = QuestionForm.sent()
        if not form.validate():
            return _shown(desk, form, 422)
        kept = service.add_question(desk.house, desk.sight, form.draft(), desk.now)
        if isinstance(kept, Refusal):
            return _shown(desk, form.refuse(_why(kept)), 422)
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


def _why(refusal: Refusal) -> Say:
    message = q.NOT_KEPT[refusal.why]
    return message(words=refusal.words) if refusal.words else message()


def _shown(desk: Desk, form: QuestionForm, status: int = 200) -> ResponseReturnValue:
    """The form as it was filled in."""
    return desk.page(
        "question_new.html",
        status,
        form=form,
        q=q,
        b=messages_web_books,
        spoken=languages(desk.house),
        villages=desk.sight.villages,
    )
