"""Amounts in measures that a farmer has: the own tin, a level spoon, the cap of a bottle.

Seed is told to the nearest; urea never more than computed. Each is told only where it comes
within a tenth, by the largest measure that does.
"""

from collections.abc import Callable
from enum import StrEnum
from typing import NamedTuple

from assistant.agronomy import constants_measures as measures
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.rounding import nearest, whole_down
from assistant.agronomy.told import is_near

ML_PER_L = 1_000.0
HALVES = 2
TINS_IN_PAIL = (1, 400)  # what a person may count
MOST = 30  # more than these nobody counts


class LevelMeasure(StrEnum):
    """What is filled level."""

    TIN = "tin"
    SPOON = "spoon"
    CAP = "cap"


class Level(NamedTuple):
    """So many level measures, whole or half ones."""

    measure: LevelMeasure
    amount: float


def tin_litres(pail_litres: float, tins_in_pail: float) -> float:
    """A tin [L], from how many of it fill the pail [L].

    Raises:
        AgronomyError: no tins.
    """
    if tins_in_pail <= 0:
        raise AgronomyError(f"expected how many tins fill the pail, got {tins_in_pail!r}")
    return pail_litres / tins_in_pail


def seed_measure(grams: float, tin_l: float | None = None) -> Level | None:
    """Sprouted seed [g] in level measures; None where none is near."""
    return _level(grams, measures.SPROUTED_KG_PER_L.value, tin_l, nearest)


def urea_measure(grams: float, tin_l: float | None = None) -> Level | None:
    """Urea [g] in level measures, never more of it; None where none is near."""
    return _level(grams, measures.UREA_KG_PER_L.value, tin_l, whole_down)


def mats_for_a_tin(sprouted_per_mat_g: float, tin_l: float) -> float:
    """Mats that one level tin of sprouted seed sows."""
    return tin_l * ML_PER_L * measures.SPROUTED_KG_PER_L.value / sprouted_per_mat_g


MOST_TINS = 10  # at once; more are counted wrong


class Shared(NamedTuple):
    """So many level tins of sprouted seed for so many mats."""

    tins: int
    mats: int


def shared_by_tin(sprouted_per_mat_g: float, tin_l: float) -> Shared | None:
    """The fewest whole tins that sow whole mats within a tenth; None where none do."""
    each = mats_for_a_tin(sprouted_per_mat_g, tin_l)
    found = (Shared(tins, nearest(tins * each)) for tins in range(1, MOST_TINS + 1))
    near = (told for told in found if told.mats and is_near(told.mats, told.tins * each))
    return next(near, None)


def _level(
    grams: float, kg_per_l: float, tin_l: float | None, way: Callable[[float], int]
) -> Level | None:
    sizes = {
        LevelMeasure.SPOON: measures.SPOON_ML.value,
        LevelMeasure.CAP: measures.CAP_ML.value,
    }
    if tin_l is not None:
        sizes = {LevelMeasure.TIN: tin_l * ML_PER_L, **sizes}
    for measure, size_ml in sorted(sizes.items(), key=lambda each: -each[1]):
        exact = grams / kg_per_l / size_ml
        told = way(exact * HALVES) / HALVES if exact < MOST / HALVES else float(way(exact))
        if told <= MOST and is_near(told, exact):
            return Level(measure, told)
    return None
