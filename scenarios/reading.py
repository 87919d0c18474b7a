"""Reads a season file: its head, then blocks of lines under a time, downward."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from scenarios.errors import SeasonError
from scenarios.head import Head, read_head_line
from scenarios.heard import read_expected
from scenarios.season import (
    Act,
    AddsTo,
    Chooses,
    Clicks,
    Dials,
    Ends,
    Fills,
    Follows,
    HangsUp,
    Hears,
    HearsNothing,
    LooksAt,
    LosesTheLine,
    Mends,
    Opens,
    PageReads,
    Presses,
    Season,
    SeasonBlock,
    SeasonStep,
    Sees,
    SendsFile,
    SendsText,
    SignsIn,
    Switches,
    Ticks,
    Waits,
)
from scenarios.weather import read_network

_TIME = re.compile(r"(?:(\d{4}-\d{2}-\d{2})\s+)?(\d{1,2}:\d{2})")
_STEP = re.compile(r"(\w[\w'-]*)\s+(\S.*)")
_SPAN = re.compile(r"(\d+) (second|minute)s?")
_LONG = re.compile(r"(\d+) characters of (.+)")


def read_season(path: Path) -> Season:
    """The season in a file.

    Raises:
        SeasonError: the file is not there, is not UTF-8, or a line of it cannot be read.
    """
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as fault:
        raise SeasonError(
            str(path), 0, f"cannot be read as a text in UTF-8 ({fault})"
        ) from None
    return parse(text, str(path))


def parse(text: str, path: str) -> Season:
    """The season in a text; `path` is for its errors."""
    reader = _Reader(path)
    for number, line in _lines(text):
        try:
            reader.take(number, line)
        except ValueError as fault:
            raise SeasonError(path, number, str(fault)) from None
    return reader.season()


def _lines(text: str) -> Iterator[tuple[int, str]]:
    """Lines that say something, with their numbers."""
    for number, line in enumerate(text.splitlines(), start=1):
        line = line.strip()
        if line and not line.startswith("#"):
            yield number, line


@dataclass
class _Reader:
    """Holds what was read so far."""

    path: str
    head: Head = field(default_factory=Head)
    blocks: list[SeasonBlock] = field(default_factory=list)

    def take(self, number: int, line: str) -> None:
        time = _TIME.fullmatch(line)
        if time:
            self._begin(number, time)
        elif not self.blocks:
            read_head_line(line, self.head)
        else:
            block = self.blocks[-1]
            step = self._step(number, line)
            self.blocks[-1] = SeasonBlock(block.line, block.at, (*block.steps, step))

    def season(self) -> Season:
        if not self.blocks:
            raise SeasonError(self.path, 0, "no time in it; write one like 2026-06-01 09:00")
        head = self.head
        return Season(
            path=self.path,
            title=head.title or Path(self.path).stem,
            zone=head.zone,
            region=head.region,
            languages=head.languages,
            villages=head.villages,
            people=head.people,
            officers=head.officers,
            strict=head.strict,
            blocks=tuple(self.blocks),
        )

    def _begin(self, number: int, time: re.Match[str]) -> None:
        day, hour = time.groups()
        if day is None and not self.blocks:
            raise ValueError("the first time needs its day: 2026-06-01 09:00")
        day = day or self.blocks[-1].at.date().isoformat()
        at = self._moment(f"{day} {hour.zfill(5)}")
        if self.blocks and at <= self.blocks[-1].at:
            raise ValueError("this time is not after the one before it; times go forward")
        self.blocks.append(SeasonBlock(number, at, ()))

    def _moment(self, words: str) -> datetime:
        try:
            found = datetime.strptime(words, "%Y-%m-%d %H:%M")
        except ValueError:
            raise ValueError(
                f"no such time: {words}; write one like 2026-06-01 09:00"
            ) from None
        return found.replace(tzinfo=ZoneInfo(self.head.zone))

    def _step(self, number: int, line: str) -> SeasonStep:
        found = _STEP.fullmatch(line)
        who, words = (found[1], found[2].strip()) if found else (line, "")
        if who == "network":
            return SeasonStep(number, line, "", read_network(words, self.head.people))
        if who not in self.head.people:
            known = ", ".join([*self.head.people, "network"])
            raise ValueError(f"nobody is called {who!r}; the head names: {known}")
        return SeasonStep(number, line, who, self._act(words))

    def _act(self, words: str) -> Act:
        for verb, make in _VERBS.items():
            rest = words[len(verb) :]
            if words.startswith(verb) and (not rest or rest[0].isspace()):
                return make(rest.strip(), self)
        raise ValueError(f"no such act: {words!r}; write one of: {', '.join(_VERBS)}")

    def until(self, words: str) -> datetime:
        """The time of "until 20:00" or "until 2026-06-20 20:00"."""
        time = _TIME.fullmatch(words.removeprefix("until").strip())
        if time is None or not words.startswith("until"):
            raise ValueError("write: hears nothing, or: hears nothing until 20:00")
        day = time[1] or self.blocks[-1].at.date().isoformat()
        return self._moment(f"{day} {time[2].zfill(5)}")


def _texts(rest: str, reader: _Reader) -> Act:
    quoted = len(rest) >= 2 and rest[0] == rest[-1] == '"'
    return SendsText(rest[1:-1] if quoted else rest)


def _writes(rest: str, reader: _Reader) -> Act:
    found = _LONG.fullmatch(rest)
    if found is None:
        raise ValueError("write: writes 2000 characters of rice")
    length, piece = int(found[1]), found[2] + " "
    return SendsText((piece * (length // len(piece) + 1))[:length])


def _waits(rest: str, reader: _Reader) -> Act:
    found = _SPAN.fullmatch(rest)
    if found is None:
        raise ValueError("write: waits 40 seconds, or: waits 5 minutes")
    return Waits(timedelta(**{f"{found[2]}s": int(found[1])}))


def _nothing(rest: str, reader: _Reader) -> Act:
    return HearsNothing(reader.until(rest) if rest else None)


def _hears(rest: str, reader: _Reader) -> Act:
    return Hears(read_expected(rest))


def _exactly(rest: str, reader: _Reader) -> Act:
    if not rest:
        raise ValueError("write the whole text after: hears exactly")
    return Hears(read_expected(rest, whole=True))


def _sees(rest: str, reader: _Reader) -> Act:
    return Ends() if rest == "the end" else Sees(read_expected(rest))


def _dials(rest: str, reader: _Reader) -> Act:
    if not rest:
        raise ValueError("write the code: dials *555*7#")
    return Dials(rest)


def _alone(act: Act) -> "Callable[[str, _Reader], Act]":
    def make(rest: str, reader: _Reader) -> Act:
        if rest:
            raise ValueError(f"nothing may follow, but there is: {rest}")
        return act

    return make


def _pair(make: "Callable[[str, str], Act]", verb: str) -> "Callable[[str, _Reader], Act]":
    """A field and what is put into it, parted by the first colon."""

    def read(rest: str, reader: _Reader) -> Act:
        label, colon, words = rest.partition(": ")
        if not (label and colon):
            raise ValueError(
                f"write the name of a field, a colon, and words: {verb} Day: Monday"
            )
        return make(label.strip(), words.strip())

    return read


def _mends(rest: str, reader: _Reader) -> Act:
    file, _, words = rest.partition(": ")
    old, arrow, new = (part.strip() for part in words.partition(" -> "))
    if not (file and old and arrow and new):
        raise ValueError("write what stands there and what should: mends a.csv: 12 -> 0770")
    return Mends(file.strip(), old, new)


def _named(make: "Callable[[str], Act]", what: str) -> "Callable[[str, _Reader], Act]":
    def read(rest: str, reader: _Reader) -> Act:
        if not rest:
            raise ValueError(f"say {what}")
        return make(rest)

    return read


# A verb that begins with another verb's words stands before it.
_VERBS: "Mapping[str, Callable[[str, _Reader], Act]]" = {
    "texts": _texts,
    "writes": _writes,
    "waits": _waits,
    "hears nothing": _nothing,
    "hears exactly": _exactly,
    "hears": _hears,
    "dials": _dials,
    "presses": lambda rest, reader: Presses(rest),
    "sees": _sees,
    "hangs up": _alone(HangsUp()),
    "loses the line unnoticed": _alone(LosesTheLine(told=False)),
    "loses the line": _alone(LosesTheLine(told=True)),
    "signs in": _alone(SignsIn()),
    "opens": _named(Opens, "which page, as the list at the top names it"),
    "follows": _named(Follows, "which link"),
    "looks at": _named(LooksAt, "what: words of a card, a row or a part of the page"),
    "fills": _pair(Fills, "fills"),
    "unticks": _named(lambda rest: Ticks(rest, on=False), "which box"),
    "ticks": _named(lambda rest: Ticks(rest, on=True), "which box"),
    "chooses": _pair(Chooses, "chooses"),
    "adds to": _pair(AddsTo, "adds to"),
    "mends": _mends,
    "sends": _pair(SendsFile, "sends"),
    "clicks": _named(Clicks, "which button"),
    "reads": lambda rest, reader: PageReads(read_expected(rest)),
    "switches on": _alone(Switches(on=True)),
    "switches off": _alone(Switches(on=False)),
}
