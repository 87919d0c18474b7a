"""Pieces of long texts, kept until all of them are there."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import groupby

from sqlalchemy import and_, delete, select, update
from sqlalchemy.orm import Session

from assistant.channel import Channel, Incoming
from assistant.store.tables_lines import PieceRow

MISSING = "..."
SAME_TEXT = timedelta(minutes=30)  # a ref that comes again later is that of another text


class Pieces:
    def __init__(self, session: Session) -> None:
        self._session = session

    def keep(self, incoming: Incoming, now: datetime) -> Incoming | None:
        """Keeps a piece; the whole text, under the id of its first piece, once all are there.

        A piece that comes again changes nothing, and gives the whole text again where that is
        there: it may not have been taken.
        """
        piece = incoming.piece
        if piece is None:
            return incoming
        these = and_(
            PieceRow.line == incoming.line,
            PieceRow.phone == incoming.phone,
            PieceRow.ref == piece.ref,
            PieceRow.parts == piece.parts,
        )
        rows = list(self._session.scalars(select(PieceRow).where(these)))
        if _is_another(rows, incoming, now):
            self._session.execute(delete(PieceRow).where(these))
            rows = []
        if piece.part not in {row.part for row in rows}:
            rows.append(_row(incoming, now))
            self._session.add(rows[-1])
            self._session.flush()
        return _whole(rows) if len(rows) == piece.parts else None

    def incomplete(self, before: datetime) -> tuple[Incoming, ...]:
        """Texts of which no piece came since then and some are missing, as far as they go."""
        rows = self._session.scalars(
            select(PieceRow)
            .where(PieceRow.joined.is_(False))
            .order_by(PieceRow.line, PieceRow.phone, PieceRow.ref, PieceRow.parts)
        )
        texts = [list(each) for _, each in groupby(rows, _text_of)]
        return tuple(_whole(text) for text in texts if max(r.kept_at for r in text) <= before)

    def taken(self, gateway_id: str) -> None:
        """The text under this id was taken: its pieces are only known as repeats."""
        first = self._session.scalar(select(PieceRow).where(PieceRow.gateway_id == gateway_id))
        if first is not None:
            self._session.execute(
                update(PieceRow)
                .where(PieceRow.line == first.line, PieceRow.phone == first.phone)
                .where(PieceRow.ref == first.ref, PieceRow.parts == first.parts)
                .values(joined=True)
            )

    def forget(self, before: datetime) -> None:
        """Lets go of pieces that were taken before then."""
        old = and_(PieceRow.joined.is_(True), PieceRow.kept_at < before)
        self._session.execute(delete(PieceRow).where(old))


def _is_another(rows: Sequence[PieceRow], incoming: Incoming, now: datetime) -> bool:
    """Whether kept pieces of the same number belong to an earlier text."""
    piece = incoming.piece
    return any(
        row.kept_at < now - SAME_TEXT
        or (piece is not None and row.part == piece.part and row.text != incoming.text)
        for row in rows
    )


def _text_of(row: PieceRow) -> tuple[str, str, str, int]:
    return row.line, row.phone, row.ref, row.parts


def _row(incoming: Incoming, now: datetime) -> PieceRow:
    piece = incoming.piece
    assert piece is not None
    return PieceRow(
        line=incoming.line,
        phone=incoming.phone,
        ref=piece.ref,
        parts=piece.parts,
        part=piece.part,
        gateway_id=incoming.gateway_id,
        text=incoming.text,
        at=incoming.at,
        kept_at=now,
        joined=False,
    )


def _whole(rows: Sequence[PieceRow]) -> Incoming:
    by_part = {row.part: row for row in rows}
    first = by_part[min(by_part)]
    places = range(1, first.parts + 1)
    words = [by_part[place].text if place in by_part else MISSING for place in places]
    return Incoming(
        first.gateway_id, first.phone, "".join(words), Channel.SMS, first.at, line=first.line
    )
