"""Where the rest of the house takes a nursery from; it lives in `life`."""

from assistant.agronomy.life.nursery import Nursery as Nursery
