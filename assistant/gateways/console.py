"""A way out for trying things without a line: texts are written to a stream."""

from datetime import datetime
from typing import TextIO

from assistant.alphabet import cost
from assistant.channel import Fate, Handover, Outgoing

_CONTROLS = dict.fromkeys({*range(0x20), *range(0x7F, 0xA0)} - {ord("\n")}, "?")


class PrintGateway:
    """Writes each text to `stream` and accepts it; a repeat is accepted and not written."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._written: set[str] = set()

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Write one text with its time and segments. TRY_LATER when the stream is gone."""
        if outgoing.message_id in self._written:
            return Handover(Fate.ACCEPTED, "repeat")
        try:
            self._stream.write(self._writable(_lines(outgoing, now)))
            self._stream.flush()
        except (OSError, ValueError) as gone:  # ValueError: the stream was closed
            return Handover(Fate.TRY_LATER, str(gone))
        self._written.add(outgoing.message_id)
        return Handover(Fate.ACCEPTED)

    def _writable(self, text: str) -> str:
        """Keep what the stream can show: a typed name must not steer a terminal."""
        encoding = self._stream.encoding or "utf-8"
        return text.translate(_CONTROLS).encode(encoding, "replace").decode(encoding)


def _lines(outgoing: Outgoing, now: datetime) -> str:
    segments = cost(outgoing.text).segments
    indented = outgoing.text.replace("\n", "\n    ")
    return (
        f"{now:%Y-%m-%d %H:%M %Z} to {outgoing.phone}, segments: {segments}\n    {indented}\n"
    )
