"""Figures for Prometheus, on a port of this machine only: numbers, no names, no phones.

What stands in the database (texts that wait, signs of life, nurseries set aside) is read when
it is asked for, so that each process tells the same of it; what a process does (turns, texts
handed over, receipts) it counts itself.
"""

from collections.abc import Iterator
from contextlib import contextmanager

import click
from prometheus_client import CollectorRegistry, Counter, Histogram, start_http_server
from prometheus_client.core import GaugeMetricFamily, Metric
from prometheus_client.registry import Collector

from assistant.channel import Channel, Clock, Fate
from assistant.service.house import House
from assistant.service.pulse import SENDING, TICKING, ServiceFault
from assistant.service.watched import ServiceFigures, figures

HERE = "127.0.0.1"
_TURN_S = (0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5)


class ProcessCounts:
    """What this process does, as a `Meter`."""

    def __init__(self) -> None:
        self.registry = CollectorRegistry()
        self._turns = Histogram(
            "nursery_turn_seconds",
            "Texts and dials answered",
            ["channel"],
            buckets=_TURN_S,
            registry=self.registry,
        )
        self._handed = Counter(
            "nursery_texts_handed",
            "Texts offered to operators, by what they said",
            ["fate"],
            registry=self.registry,
        )
        self._receipts = Counter(
            "nursery_receipts", "Receipts that were of ours", registry=self.registry
        )
        for fate in Fate:  # a figure that appears late looks like a jump
            self._handed.labels(fate.value)

    def turned(self, channel: Channel, seconds: float) -> None:
        """A text or a dial was answered."""
        self._turns.labels(channel.value).observe(seconds)

    def handed(self, fate: Fate) -> None:
        """What an operator said of a text."""
        self._handed.labels(fate.value).inc()

    def receipts(self, count: int) -> None:
        """Receipts that were of ours."""
        self._receipts.inc(count)


class DatabaseCounts(Collector):
    """What stands in the database; where that is away, only that it is."""

    def __init__(self, house: House, clock: Clock) -> None:
        self._house, self._clock = house, clock

    def describe(self) -> list[Metric]:
        """Nothing is read before somebody asks."""
        return []

    def collect(self) -> Iterator[Metric]:
        """The figures of this moment."""
        try:
            found = figures(self._house, self._clock())
        except Exception:  # whatever it is, the other figures are wanted now
            yield GaugeMetricFamily("nursery_database_up", "The database answers", 0)
            return
        yield GaugeMetricFamily("nursery_database_up", "The database answers", 1)
        yield from _told(found)


def _told(found: ServiceFigures) -> Iterator[Metric]:
    lanes = GaugeMetricFamily(
        "nursery_texts_waiting", "Texts that could leave", labels=["lane"]
    )
    for lane, count in found.waiting.items():
        lanes.add_metric([lane.name.lower()], count)
    yield lanes
    pulse = found.pulse
    yield GaugeMetricFamily(
        "nursery_oldest_waiting_seconds",
        "How long the oldest text has waited",
        pulse.waits.total_seconds(),
    )
    beats = GaugeMetricFamily(
        "nursery_beat_timestamp_seconds", "Last sign of life; 0 for none", labels=["part"]
    )
    for part, at in ((TICKING, pulse.ticking), (SENDING, pulse.sending)):
        beats.add_metric([part], at.timestamp() if at else 0)
    yield beats
    faults = GaugeMetricFamily("nursery_fault", "What is wrong: 1", labels=["fault"])
    for fault in ServiceFault:
        faults.add_metric([fault.value], fault in pulse.faults)
    yield faults
    yield GaugeMetricFamily(
        "nursery_set_aside", "Nurseries whose rows cannot be read", found.set_aside
    )


@contextmanager
def watched(house: House, port: int, clock: Clock) -> Iterator[None]:
    """Figures at http://127.0.0.1:PORT/metrics until the block ends; none for port 0."""
    if not port or not isinstance(house.meter, ProcessCounts):
        yield
        return
    registry = house.meter.registry
    registry.register(DatabaseCounts(house, clock))
    try:
        server, thread = start_http_server(port, addr=HERE, registry=registry)
    except OSError as fault:
        raise click.ClickException(
            f"Port {port} for figures is taken ({fault}). Set NURSERY_METRICS_PORT to another "
            "one; each process needs its own."
        ) from fault
    try:
        yield
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
