"""Two or three answers in one text: 0.4 ha 85% 10 June. Each is read by its own reader."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from assistant.reading.areas import area_spans, read_area_tokens
from assistant.reading.dates import date_spans, read_date_tokens
from assistant.reading.outcomes import Ask, Reading, slipped
from assistant.reading.percents import percent_spans, read_germination_tokens
from assistant.reading.text.fold import LONGEST_REPLY, Token
from assistant.reading.text.lexicon import Lexicon

AnyReading = Reading[float] | Reading[date] | Reading[str]
_Spans = dict[Ask, frozenset[int]]
_LAST_DAY = 31  # a greater bare number is no day


@dataclass(frozen=True)
class _Reply:
    """The tokens of a reply and what they are read against."""

    found: tuple[Token, ...]
    has_slip: bool
    lexicon: Lexicon
    today: date
    region: str | None
    past: bool

    def without(self, spans: Iterable[frozenset[int]]) -> tuple[Token, ...]:
        """The tokens that none of these spans takes."""
        taken = frozenset[int]().union(*spans)
        return tuple(token for token in self.found if token.at not in taken)

    def read(self, ask: Ask, found: tuple[Token, ...]) -> AnyReading:
        """Some of the tokens as an answer of one kind."""
        if ask is Ask.AREA:
            reading = read_area_tokens(found, self.lexicon, self.region)
            return slipped(reading, self.has_slip)
        if ask is Ask.DATE:
            day = read_date_tokens(found, self.lexicon, self.today, self.past)
            return slipped(day, self.has_slip)
        return slipped(read_germination_tokens(found, self.lexicon), self.has_slip)


def read_several(
    text: str,
    asks: Sequence[Ask],
    lexicon: Lexicon,
    today: date,
    region: str | None = None,
    past: bool = False,
) -> Mapping[Ask, AnyReading]:
    """The answers that a text holds among area, germination and date, by what was asked.

    A kind that the text does not speak of is left out. A single number without a sign goes to
    the one kind that is still open.
    """
    if len(text) > LONGEST_REPLY:
        return {}
    reply = _Reply(*lexicon.mend(text), lexicon, today, region, past)
    spans = _spans(reply)
    _give_bare(reply, spans, asks)
    readings: dict[Ask, AnyReading] = {}
    for ask in asks:
        if spans.get(ask):
            others = (span for other, span in spans.items() if other is not ask)
            readings[ask] = reply.read(ask, reply.without(others))
    return readings


def _spans(reply: _Reply) -> _Spans:
    """Which tokens speak of what. Where two readers claim one, the area's unit is the rarer
    word, unless it is the only percentage: Bengali shotangsho is a unit and a percent."""
    area = area_spans(reply.found, reply.lexicon, reply.region)
    share = percent_spans(reply.found, reply.lexicon)
    if share - area:
        share -= area
    else:
        area -= share
    days = date_spans(reply.found, reply.lexicon, reply.today) - area - share
    return {Ask.AREA: area, Ask.GERMINATION: share, Ask.DATE: days}


def _give_bare(reply: _Reply, spans: _Spans, asks: Sequence[Ask]) -> None:
    """0.4 ha 85: what is left after the others is germination, where it can be nothing else."""
    left = [token for token in reply.without(spans.values()) if token.is_number]
    if len(left) != 1 or not any(spans.values()):
        return
    open_asks = [ask for ask in asks if ask in (Ask.GERMINATION, Ask.DATE) and not spans[ask]]
    is_day = left[0].text.isdigit() and int(left[0].text) <= _LAST_DAY
    if not is_day and Ask.GERMINATION in open_asks:
        open_asks = [Ask.GERMINATION]
    if len(open_asks) == 1:
        spans[open_asks[0]] = frozenset({left[0].at})
