"""The answering desk: questions that an office answers, and how often each question comes."""

from collections.abc import Collection, Sequence
from datetime import date, datetime

from sqlalchemy import ColumnElement, func, or_, select, update
from sqlalchemy.orm import Session

from assistant.hearing.office import OfficeQuestion
from assistant.store import memo, rows
from assistant.store.errors import NotThereError
from assistant.store.inserts import add_up
from assistant.store.tables import CallRow, FarmerRow, UnreadRow
from assistant.store.tables_questions import OfficeQuestionRow, QuestionCountRow
from assistant.store.values_questions import AskedCount, KeptQuestion

NO_VILLAGE = 0
_PASSED_ON = "question"  # what a call is about that hands a question on
Scope = Collection[int] | None


class QuestionQueries:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- what the office answers -------------------------------------------------------------

    def in_use(self) -> tuple[OfficeQuestion, ...]:
        """The questions that are answered, in the order they were added; kept by the process
        until one of them or a village changes."""
        kept = memo.kept_questions(self._session)
        if kept is not None:
            return kept
        found = tuple(each.question for each in self.all() if each.in_use)
        memo.keep_questions(self._session, found)
        return found

    def all(self) -> tuple[KeptQuestion, ...]:
        """All that were not withdrawn, in the order they were added."""
        wanted = (
            select(OfficeQuestionRow)
            .where(OfficeQuestionRow.withdrawn_at.is_(None), OfficeQuestionRow.answer != "")
            .order_by(OfficeQuestionRow.id)
        )
        return tuple(map(_kept, self._session.scalars(wanted)))

    def to_read(self, scope: Scope, officer_id: int) -> tuple[KeptQuestion, ...]:
        """Those that wait for a second reader who may be this officer; `scope`: villages, None
        everywhere."""
        row = OfficeQuestionRow
        wanted = select(row).where(
            row.withdrawn_at.is_(None),
            row.answer != "",
            row.read_at.is_(None),
            row.added_by.is_distinct_from(officer_id),
        )
        if scope is not None:
            wanted = wanted.where(or_(row.village_id.is_(None), row.village_id.in_(scope)))
        return tuple(map(_kept, self._session.scalars(wanted.order_by(row.id))))

    def get(self, question_id: int) -> KeptQuestion | None:
        """One question, also one that was withdrawn."""
        row = self._session.get(OfficeQuestionRow, question_id)
        return _kept(row) if row else None

    def add(
        self,
        language: str,
        village_id: int | None,
        ways: Sequence[str],
        answer: str,
        officer_id: int | None,
        now: datetime,
    ) -> KeptQuestion:
        """Keeps a question that nobody else has read yet."""
        row = OfficeQuestionRow(
            language=language,
            village_id=village_id,
            ways=list(ways),
            answer=answer,
            added_by=officer_id,
            added_at=now,
        )
        self._session.add(row)
        self._session.flush()
        return _kept(row)

    def read(self, question_id: int, officer_id: int, now: datetime) -> None:
        """A second person has read it: it is used from now on."""
        row = self._row(question_id)
        row.read_by, row.read_at = officer_id, now
        self._session.flush()

    def withdraw(self, question_id: int, now: datetime) -> None:
        """It is used no more."""
        self._row(question_id).withdrawn_at = now
        self._session.flush()

    def move(self, gone_id: int, into_id: int) -> None:
        """Those of one village are of another."""
        theirs = update(OfficeQuestionRow).where(OfficeQuestionRow.village_id == gone_id)
        self._session.execute(theirs.values(village_id=into_id))

    def _row(self, question_id: int) -> OfficeQuestionRow:
        row = self._session.get(OfficeQuestionRow, question_id)
        if row is None:
            raise NotThereError(f"expected a kept question, got id {question_id}")
        return row

    # --- how often -------------------------------------------------------------------------

    def count(
        self,
        month: date,
        village_id: int | None,
        answered: Collection[str],
        offered: Collection[str],
    ) -> None:
        """Counts questions that a text asked."""
        for code in sorted({*answered, *offered}):
            row = {"month": month, "village_id": village_id or NO_VILLAGE, "code": code}
            add_up(
                self._session,
                QuestionCountRow,
                row | {"answered": code in answered, "offered": code in offered},
            )

    def asked(self, month: date, scope: Scope) -> tuple[AskedCount, ...]:
        """How often each question came in a month, the one asked most first; `scope`: villages,
        None everywhere."""
        row = QuestionCountRow
        answered, offered = func.sum(row.answered), func.sum(row.offered)
        wanted = select(row.code, answered, offered).where(row.month == month)
        if scope is not None:
            wanted = wanted.where(row.village_id.in_(scope))
        wanted = wanted.group_by(row.code).order_by((answered + offered).desc(), row.code)
        return tuple(
            AskedCount(code, int(said), int(perhaps))
            for code, said, perhaps in self._session.execute(wanted)
        )

    def months(self) -> tuple[date, ...]:
        """The months in which questions were counted, the latest first."""
        wanted = select(QuestionCountRow.month).distinct()
        return tuple(self._session.scalars(wanted.order_by(QuestionCountRow.month.desc())))

    def unread(self, start: datetime, end: datetime, scope: Scope) -> int:
        """How many replies of a time could not be read."""
        wanted = select(func.count()).select_from(UnreadRow)
        if scope is not None:
            wanted = wanted.join(FarmerRow, FarmerRow.id == UnreadRow.farmer_id)
        spans = (UnreadRow.at >= start, UnreadRow.at < end, *_within(scope))
        return self._session.scalar(wanted.where(*spans)) or 0

    def passed_on(self, start: datetime, end: datetime, scope: Scope) -> int:
        """How many questions of a time went to a person."""
        wanted = select(func.count()).select_from(CallRow)
        if scope is not None:
            wanted = wanted.join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
        about = CallRow.about == _PASSED_ON
        spans = (CallRow.at >= start, CallRow.at < end, *_within(scope))
        return self._session.scalar(wanted.where(about, *spans)) or 0

    def unread_words(self, unread_id: int, scope: Scope) -> tuple[str, str] | None:
        """Language and words of one reply that could not be read, where it is in sight."""
        wanted = select(UnreadRow.language, UnreadRow.text).where(UnreadRow.id == unread_id)
        if scope is not None:
            wanted = wanted.join(FarmerRow, FarmerRow.id == UnreadRow.farmer_id)
            wanted = wanted.where(*_within(scope))
        found = self._session.execute(wanted).first()
        return (found[0], found[1]) if found else None


def _within(scope: Scope) -> list[ColumnElement[bool]]:
    return [] if scope is None else [FarmerRow.village_id.in_(scope)]


def _kept(row: OfficeQuestionRow) -> KeptQuestion:
    return rows.value(KeptQuestion, row, ways=tuple(row.ways))
