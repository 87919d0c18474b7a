"""Two or three answers in one text: 0.4 ha 85% 10 June. Each is read by its own reader."""

from collections.abc import Mapping, Sequence
from datetime import date

from assistant.reading.areas import area_spans, read_area_tokens
from assistant.reading.dates import date_spans, read_date_tokens
from assistant.reading.fold import LONGEST_REPLY, Kind, Token, cut, fold
from assistant.reading.lexicon import Lexicon
from assistant.reading.outcomes import Ask, Outcome, Reading
from assistant.reading.percents import percent_spans, read_germination_tokens

AnyReading = Reading[float] | Reading[date] | Reading[str]


def read_several(
    text: str,
    asks: Sequence[Ask],
    lexicon: Lexicon,
    today: date,
    region: str | None = None,
    past: bool = False,
) -> Mapping[Ask, AnyReading]:
    """The answers that a text holds among area, germination and date, by what was asked.

    A kind that the text does not speak of is left out. A number without a sign goes to
    germination only where it is the only thing left.
    """
    if len(text) > LONGEST_REPLY:
        return {}
    found = cut(fold(text))
    spans = {
        Ask.DATE: date_spans(found, lexicon, today),
        Ask.AREA: area_spans(found, lexicon, region),
        Ask.GERMINATION: percent_spans(found, lexicon),
    }
    spans[Ask.DATE] -= spans[Ask.AREA] | spans[Ask.GERMINATION]
    readings: dict[Ask, AnyReading] = {}
    for ask in asks:
        own = _left(found, [span for other, span in spans.items() if other is not ask])
        if spans.get(ask):
            readings[ask] = _read(ask, own, lexicon, today, region, past)
    if Ask.GERMINATION in asks and Ask.GERMINATION not in readings and readings:
        _add_bare(readings, _left(found, list(spans.values())), lexicon)
    return readings


def _left(found: Sequence[Token], spans: Sequence[frozenset[int]]) -> tuple[Token, ...]:
    taken = frozenset[int]().union(*spans)
    return tuple(token for token in found if token.at not in taken)


def _read(
    ask: Ask,
    found: tuple[Token, ...],
    lexicon: Lexicon,
    today: date,
    region: str | None,
    past: bool,
) -> AnyReading:
    if ask is Ask.AREA:
        return read_area_tokens(found, lexicon, region)
    if ask is Ask.DATE:
        return read_date_tokens(found, lexicon, today, past)
    return read_germination_tokens(found, lexicon)


def _add_bare(
    readings: dict[Ask, AnyReading], left: tuple[Token, ...], lexicon: Lexicon
) -> None:
    """0.4 ha 85: what is left after the others is germination, where it can be nothing else."""
    if sum(token.kind is Kind.NUMBER for token in left) != 1:
        return
    reading = read_germination_tokens(left, lexicon)
    if reading.outcome is Outcome.UNDERSTOOD:
        readings[Ask.GERMINATION] = reading
